"""What a customer is asked, what follows her answers by itself, and what every choice comes to."""

from collections.abc import Mapping
from datetime import date, datetime
from decimal import Decimal
from itertools import product
from typing import Literal

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.approval import Approval
from sourcing.basics.money import percent_of
from sourcing.basics.quote import Answered, Quote, QuoteLine
from sourcing.basics.settings import ChargeRules, FeeRule, Supplies, Tax
from sourcing.basics.value import changed
from sourcing.quoting.choices import (
    MOST_CHOICES,
    asked_about,
    choice_total,
    choice_totals,
    is_reconsidered,
    with_freight_along,
)
from sourcing.quoting.totals import total_of
from tests.builders import usd
from tests.documents.values import QUOTE
from tests.documents.values import line as any_line

RULES = ChargeRules(
    taxes=(
        Tax(name="Sales tax", percent=Decimal("6.5"), on=("parts", "freight"), starts_on=date(2025, 1, 1)),
        Tax(name="Town tax", percent=Decimal("0.875"), on=("parts", "labour", "fees"), starts_on=date(2025, 1, 1)),
    ),
    supplies=Supplies(percent_of_labour=Decimal(5), most=Decimal("6.00")),
    fee_rules=(FeeRule(name="Disposal", of="document", charge=Decimal("3.50"), starts_on=date(2025, 1, 1)),),
)


def line(label: str, price: str, hours: str = "0", **fields: object) -> QuoteLine:
    """A line with a part."""
    return any_line(label, f"Line {label}", price, 1, hours, part=f"P-{label}", **fields)


def freight(label: str, price: str, brings: str = "") -> QuoteLine:
    """A line of inbound freight, for those labels or for all of its kind."""
    made = any_line(label, "Inbound freight", "0.00", 0, freight_price=usd(price), freight_for=tuple(brings))
    return changed(made, part="")


LINES = (
    line("1", "166.60", "1.2"), line("2", "3.33", "0.1"), freight("3", "12.95"),
    line("A", "14.97", "0.3"), line("B", "21.51", "0.3"), freight("C", "9.95"),
)  # fmt: skip


def paper(*lines: QuoteLine) -> Quote:
    """A quote of these lines with two taxes, capped supplies and a fee once for the document."""
    return changed(QUOTE, lines=lines or LINES, charge_rules=RULES)


def said(quote: Quote, label: str, answer: Literal["approved", "declined"], revision: int | None = None) -> Approval:
    """An answer that holds."""
    return Approval(
        job=quote.job,
        revision=quote.revision if revision is None else revision,
        label=label,
        answer=answer,
        amount=usd("1.00"),
        who="Greta Lindqvare",
        how="telephone",
        at=datetime(2026, 1, 13, 9, 0),
        taken_by="Oona Brandeth",
    )


def test_freight_of_agreed_work_is_not_asked_about_and_the_extras_freight_is() -> None:
    """As the paper says: it goes with its parts; the extras' is charged once for all of them."""
    assert asked_about(paper(), {}) == ("1", "2", "A", "B", "C")


def test_freight_that_brings_no_agreed_part_is_asked_about() -> None:
    """A job that only has freight of its own on an agreed line: nothing it could go with."""
    only = any_line("1", "Labour", "0.00", 0, "1.0", part="")
    assert asked_about(paper(only, freight("2", "9.00")), {}) == ("1", "2")


def test_what_holds_is_not_asked_again() -> None:
    """Neither a yes nor a no to this revision."""
    quote = paper()
    holding = {"1": said(quote, "1", "approved"), "B": said(quote, "B", "declined")}
    assert asked_about(quote, holding) == ("2", "A", "C")


def test_an_answer_to_an_older_revision_is_asked_again_where_the_paper_asks() -> None:
    """The parts come later than was approved: the paper has boxes, so the page has them too."""
    quote = paper()
    older = {"1": said(quote, "1", "approved", quote.revision - 1)}
    assert "1" in asked_about(quote, older) and is_reconsidered(quote, "1", older)
    printed = Answered(answer="approved", who="Greta Lindqvare", how="telephone", on=date(2026, 1, 13))
    settled = paper(changed(LINES[0], answered=printed), *LINES[1:])
    assert "1" not in asked_about(settled, older) and not is_reconsidered(settled, "1", older)
    assert "1" in asked_about(settled, {}), "taken back since: it waits, so it is asked"


@pytest.mark.parametrize(
    ("yes", "no", "approved", "declined"),
    [
        (("1",), (), ("1", "3"), ()),
        (("1",), ("2",), ("1", "3"), ("2",)),
        ((), ("1", "2"), (), ("1", "2", "3")),
        ((), ("1",), (), ("1",)),
        (("A",), (), ("A",), ()),
        ((), (), (), ()),
    ],
)
def test_freight_goes_with_the_answers_to_its_parts(
    yes: tuple[str, ...], no: tuple[str, ...], approved: tuple[str, ...], declined: tuple[str, ...]
) -> None:
    """A yes to any part brings it in; it is declined with the last part; a line left open leaves it open."""
    assert with_freight_along(paper(), yes, no, {}) == (approved, declined)


def test_freight_is_declined_with_what_was_declined_before() -> None:
    """Line 2 by telephone, line 1 now; and freight approved already is not approved again."""
    quote = paper()
    assert with_freight_along(quote, (), ("1",), {"2": said(quote, "2", "declined")}) == ((), ("1", "3"))
    held = {"2": said(quote, "2", "approved"), "3": said(quote, "3", "approved")}
    assert with_freight_along(quote, ("1",), (), held) == (("1",), ())
    assert with_freight_along(quote, (), ("1",), held) == ((), ("1",))


def test_freight_goes_with_its_own_parts_only() -> None:
    """A further order's freight names the lines it is for."""
    lines = (line("1", "10.00"), line("2", "20.00"), freight("3", "5.00", "1"), freight("4", "7.00", "2"))
    assert with_freight_along(paper(*lines), ("2",), ("1",), {}) == (("2", "4"), ("1", "3"))


def test_every_choice_comes_to_what_the_document_of_those_lines_comes_to() -> None:
    """All 32, tax and capped supplies and freight that goes along; the place of each is its pattern of bits."""
    quote, totals = paper(), choice_totals(paper(), {})
    assert len(totals) == 32
    for chosen in product((False, True), repeat=5):
        labels = {label for label, is_in in zip(("1", "2", "A", "B", "C"), chosen, strict=True) if is_in}
        place = sum(1 << at for at, is_in in enumerate(chosen) if is_in)
        assert totals[place] == total_of(quote, labels | ({"3"} if labels & {"1", "2"} else set())).total


def test_a_total_added_up_by_hand() -> None:
    """Lines 1 and A with freight 3. Parts 166.60 + 14.97 = 181.57, freight 12.95, labour 1.5 h at 96.00 = 144.00.

    Supplies 5 % of 144.00 = 7.20, capped at 6.00; disposal 3.50: fees 9.50. Tax 6.5 % of 194.52 = 12.6438 -> 12.64 and
    0.875 % of 181.57 + 144.00 + 9.50 = 335.07 -> 2.9318... -> 2.93. Together 348.02 + 15.57 = 363.59.
    """
    assert percent_of(usd("194.52"), Decimal("6.5")) == usd("12.64")
    assert choice_total(paper(), ("1", "A"), {}) == usd("363.59")


def test_what_is_approved_already_is_in_every_total() -> None:
    """And what was declined in none."""
    quote = paper()
    holding: Mapping[str, Approval] = {"A": said(quote, "A", "approved"), "B": said(quote, "B", "declined")}
    assert choice_totals(quote, holding)[0] == total_of(quote, {"A"}).total
    assert choice_total(quote, ("B", "1"), holding) == total_of(quote, {"A", "1", "3"}).total


def test_with_very_many_lines_no_list_of_totals_is_made() -> None:
    """1,024 totals at most; a total can still be asked for."""
    lines = [line(str(at), "10.00") for at in range(1, MOST_CHOICES + 2)]
    assert choice_totals(paper(*lines), {}) == ()
    assert len(choice_totals(paper(*lines[:MOST_CHOICES]), {})) == 1024
    assert choice_total(paper(*lines), ("1",), {}) == total_of(paper(*lines), {"1"}).total


CENTS = st.integers(1, 50_000).map(lambda cents: str(Decimal(cents) / 100))
TENTHS = st.integers(0, 30).map(lambda tenths: str(Decimal(tenths) / 10))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.tuples(CENTS, TENTHS), min_size=1, max_size=3), st.lists(CENTS, max_size=3), CENTS)
def test_every_choice_of_any_quote(agreed: list[tuple[str, str]], extras: list[str], charge: str) -> None:
    """Whatever the prices: the listed total is that of the lines which would be recorded as approved."""
    lines = [line(str(at), price, hours) for at, (price, hours) in enumerate(agreed, 1)]
    lines += [freight(str(len(lines) + 1), charge)]
    lines += [line("ABC"[at], price) for at, price in enumerate(extras)]
    quote = paper(*lines)
    asked = asked_about(quote, {})
    for place, total in enumerate(choice_totals(quote, {})):
        yes = tuple(label for at, label in enumerate(asked) if place & 1 << at)
        no = tuple(label for label in asked if label not in yes)
        approved, declined = with_freight_along(quote, yes, no, {})
        assert total == total_of(quote, approved).total
        assert not set(approved) & set(declined)
        assert {*approved, *declined} == {one.label for one in lines}
