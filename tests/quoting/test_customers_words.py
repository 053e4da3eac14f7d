"""What the customer reads of a part: our own name of it, and what becomes of her old part where it goes back."""

from decimal import Decimal

import pytest

from sourcing.basics.value import changed
from sourcing.documents.quote_message import quote_message
from sourcing.documents.quote_paper import for_customer, quote_html, quote_text
from sourcing.quoting.approvals import last_words, record_answers
from sourcing.quoting.core_words import core_words
from tests.builders import offer
from tests.quoting.answered_quotes import GIVEN
from tests.quoting.answered_quotes import quote as answered_quote
from tests.quoting.quoted import bought, job, need, quote

TRADE = "BELT AUGER OEM FITS 77120 *SPCL*"
BELT = offer("stonegarth", "NW-77120", "126.90", description=TRADE)
GEARBOX = offer("stonegarth", "NW-22203", "310.00", description="GBX RMFD EXCH", core_charge=Decimal("80.00"))
NAMES = {"BELT": "Auger drive belt", "GEARBOX": "Auger gearbox"}
WANTED = job([need("New belt", "BELT")], [need("New gearbox", "GEARBOX")])
BOUGHT = bought({"1": BELT, "A": GEARBOX}, {"1": 1, "A": 1}, names=NAMES)


def test_the_customer_reads_our_name_of_a_part_and_never_the_suppliers_words() -> None:
    """On the paper the name stands before the number that a yes covers."""
    found = quote(WANTED, BOUGHT)
    assert [found.lines[0].description, found.line("A").description] == list(NAMES.values())  # type: ignore[union-attr]
    assert TRADE not in repr(found) and "GBX" not in repr(found)
    html = quote_html(found)
    assert html.index("Auger drive belt") < html.index("NW-77120")


def test_a_part_without_a_name_is_known_by_its_number_alone() -> None:
    found = quote(WANTED, changed(BOUGHT, names={}))
    assert found.lines[0].description == "" and TRADE not in repr(for_customer(found))
    assert 'Part: <span class="number">NW-77120</span></p>' in quote_html(found)


def test_a_line_that_is_ordered_has_our_name_too_though_its_first_paper_had_not() -> None:
    """Papers kept before had the supplier's words; what was said of the old part stays as it was approved."""
    first = quote(WANTED, BOUGHT)
    before = changed(first.lines[0], description=TRADE, core_words=("As it was said then.",))
    again = quote(WANTED, bought({"A": GEARBOX}, {"A": 1}, names=NAMES, settled={"1": before}))
    assert again.lines[0].description == "Auger drive belt"
    assert again.lines[0].core_words == ("As it was said then.",)


def test_the_customer_is_told_that_her_old_part_goes_back_and_what_keeping_it_means() -> None:
    """Wherever she reads the quote; no amount of the supplier's deposit, which is the shop's cost."""
    found = quote(WANTED, BOUGHT)
    assert found.lines[0].core_words == ()
    goes, keep, law = found.line("A").core_words  # type: ignore[union-attr]
    assert goes == "Your old part goes back to the supplier in exchange for the new one; this price counts on that."
    assert keep.startswith("If you want to keep it, tell us before you say yes: the supplier then keeps a deposit")
    assert law == "Where the rules of your place give you a right to your old parts, they come first."
    assert f"<strong>{goes}</strong> {keep} {law}" in quote_html(found)
    assert " ".join(quote_text(found).split()).count(f"{goes} {keep} {law}") == 1
    assert "80" not in goes + keep + law
    assert "New gearbox" in quote_message(found) and quote_message(found).count("old part goes back") == 1


@pytest.mark.parametrize("stated", [None, Decimal(0)])
def test_where_no_core_charge_is_stated_nothing_is_said_of_the_old_part(stated: Decimal | None) -> None:
    assert core_words(stated, 1) == ()


def test_several_old_parts_are_spoken_of_as_several() -> None:
    goes, keep, _ = core_words(Decimal("2.50"), 2)
    assert goes.startswith("Your old parts go back to the supplier in exchange for the new ones;")
    assert keep.startswith("If you want to keep them,")


def test_a_yes_given_when_nothing_was_said_of_the_old_part_does_not_cover_its_going_back() -> None:
    """A no holds. Other words about the same are no new question."""
    first = answered_quote()
    told, otherwise = ("It goes back.",), ("Back.",)
    exchange = changed(first, revision=2, lines=tuple(changed(one, core_words=told) for one in first.lines))
    kept = record_answers(first, ["A"], ["B"], GIVEN)
    last = last_words(exchange, kept, {1: first})
    assert last["A"][1] == "the old part goes back to the supplier now, which was not said then" and not last["B"][1]
    again = [changed(one, revision=2) for one in kept]
    reworded = changed(first, revision=3, lines=tuple(changed(one, core_words=otherwise) for one in first.lines))
    for newest in (reworded, changed(first, revision=3)):
        assert last_words(newest, again, {2: exchange})["A"][1] == ""
