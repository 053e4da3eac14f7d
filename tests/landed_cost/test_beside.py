"""Beside the cost: whether goods go back, at what loss and until when; a core charge both ways."""

from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.landed_cost import Beside
from sourcing.basics.offer import LeadTime, Offer
from sourcing.basics.terms import CoreReturn, Returns
from sourcing.landed_cost.beside import beside
from tests.builders import door, item, offer, usd

D = Decimal
KNOWN = Returns(returnable=True, restocking_percent=D(20), freight=D("8.50"), within_days=30)


def stands(of: Offer, goods: str = "126.90", pieces: int = 1, **terms: Any) -> Beside:
    """What stands beside an item of that offer."""
    return beside(item(of, pieces), usd(goods), door(**terms))


def test_what_it_costs_to_send_it_back() -> None:
    """20 % of 126.90 is 25.38, and 8.50 of freight: 33.88."""
    found = stands(offer(), return_terms=KNOWN)
    assert (found.returnable, found.return_loss, found.return_within_days) == (True, usd("33.88"), 30)
    assert "restocking 20 %, return freight 8.50 USD, 30 days after it came" in found.words[0]


@pytest.mark.parametrize("unknown", ["restocking_percent", "freight"])
def test_a_loss_that_is_half_known_is_not_known(unknown: str) -> None:
    """Restocking without freight would be too little, and freight alone too."""
    fields = {"returnable": True, "restocking_percent": D(20), "freight": D("8.50")} | {unknown: None}
    found = stands(offer(), return_terms=Returns(**fields))  # type: ignore[arg-type]
    assert found.return_loss is None and "not known" in found.words[0]


@pytest.mark.parametrize(
    ("sheet", "terms", "expected"),
    [(None, None, None), (None, True, True), (False, True, False), (True, False, True), (True, None, True)],
)
def test_the_sheets_word_goes_before_the_terms(sheet: bool | None, terms: bool | None, expected: bool | None) -> None:
    """A row that says 'no returns' holds against terms that take goods back."""
    assert stands(offer(returnable=sheet), return_terms=Returns(returnable=terms)).returnable is expected


def test_nothing_said_is_a_question() -> None:
    """Neither yes nor no, no loss, no deadline."""
    found = stands(offer())
    assert (found.returnable, found.return_loss, found.return_within_days) == (None, None, None)
    assert found.words == ("whether it can go back is not known: ask before ordering",)


def test_what_does_not_go_back_has_no_loss_and_no_deadline() -> None:
    """A loss beside goods that stay would read as if they could go."""
    found = stands(offer(returnable=False), return_terms=KNOWN)
    assert (found.return_loss, found.return_within_days) == (None, None)
    assert found.words[0] == "can't go back, by the sheet"


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"superseded_by": "NW-2"}, "superseded by NW-2: ask"),
        ({"note": "Special Order item"}, "special order: ask"),
        ({"lead_time": LeadTime(text="special order 3 wks")}, "special order: ask"),
    ],
)
def test_superseded_and_special_order_are_notes_only(fields: dict[str, Any], words: str) -> None:
    """They change nobody's word on returning; where it can't go back anyway they are not said."""
    found = stands(offer(**fields), return_terms=KNOWN)
    assert found.returnable is True and words in found.words[1]
    assert len(stands(offer(returnable=False, core_charge=D(0), **fields)).words) == 1


def test_a_core_both_ways() -> None:
    """Two starters at 25.00: 11.00 of freight if the old ones go back in time, 50.00 lost if not."""
    starter = offer(core_charge=D("25.00"))
    found = stands(starter, pieces=2, core_return=CoreReturn(within_days=45, freight=D(11)))
    assert (found.core_returned, found.core_lost, found.core_within_days) == (usd("11.00"), usd("50.00"), 45)
    assert "comes back, freight 11.00 USD, 45 days to send it" in found.words[-1]


def test_a_core_abroad_is_charged_in_the_suppliers_currency() -> None:
    """25.00 EUR at 1.10; the shop's freight is in its own."""
    starter = offer(core_charge=D("25.00"), currency="EUR")
    at = door(rate="1.10", currency="EUR", core_return=CoreReturn(freight=D(11)))
    found = beside(item(starter), usd("100.00"), at)
    assert (found.core_lost, found.core_returned) == (usd("27.50"), usd("11.00"))


@pytest.mark.parametrize("charge", [None, D(0)])
def test_no_core_no_sides(charge: Decimal | None) -> None:
    """Neither side, and no deadline, where there is no core charge or none stated."""
    found = stands(offer(core_charge=charge), core_return=CoreReturn(within_days=45, freight=D(11)))
    assert (found.core_returned, found.core_lost, found.core_within_days) == (None, None, None)


def test_a_core_whose_way_back_is_not_known() -> None:
    """What is lost is known, what returning costs is not."""
    found = stands(offer(core_charge=D("25.00")))
    assert (found.core_returned, found.core_lost) == (None, usd("25.00"))
    assert "freight not known, deadline not known" in found.words[-1]


def test_the_terms_own_words_are_told() -> None:
    """As the person wrote them; a text is neither yes nor no."""
    assert (
        "the terms say: unused, in its box" in stands(offer(), returns="unused, in its box", return_terms=KNOWN).words
    )
    open_one = stands(offer(core_charge=D(0)), returns="unused, in its box")
    assert open_one.returnable is None
    assert open_one.words == ("whether it can go back is not stated by yes or no; the terms say: unused, in its box",)


@pytest.mark.parametrize(
    ("words", "said"),
    [("Démarreur 12 V (consigne 95,00 €)", "consigne 95,00 €"),
     ("Anlasser, zzgl. Altteilpfand 120 EUR", "Altteilpfand 120 EUR"),
     ("Starter + core charge $85.00", "core charge $85.00"), ("Starter, deposit on old part", "deposit"),
     ("Anlasser Pfand: 40,-", "Pfand: 40"), ("Starter, core deposit", "core deposit")],
)  # fmt: skip
def test_a_deposit_in_words_alone_is_said_and_not_counted(words: str, said: str) -> None:
    """The words are common practice of price sheets, no source."""
    for fields in ({"description": words}, {"note": words}):
        found = stands(offer(**fields))
        told = f"its words on the sheet speak of a deposit ('{said}') that is not counted: ask how much it is"
        assert told in found.words and found.core_lost is None


@pytest.mark.parametrize(
    "words", ["Cleaner, carbon deposits", "Deposit remover", "Caution decal", "2-core cable", "Démarreur sans consigne",
              "Anlasser ohne Pfand", "Starter, no core charge", "Starter, exchange"]
)  # fmt: skip
def test_other_words_say_nothing_of_a_deposit(words: str) -> None:
    assert "deposit" not in " ".join(stands(offer(description=words)).words)


def test_a_deposit_the_sheet_states_is_counted_and_needs_no_word() -> None:
    found = stands(offer(description="Starter (consigne 95,00)", core_charge=D(95)))
    assert "not counted" not in " ".join(found.words) and found.core_lost is not None
