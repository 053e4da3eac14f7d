"""When an answer to a line of one revision holds for a later one, and which line that is."""

from decimal import Decimal
from itertools import pairwise
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.money import Money
from sourcing.basics.quote import Quote, QuoteLine
from sourcing.basics.settings import Tolerance
from sourcing.basics.value import changed
from sourcing.quoting.approvals import record_answers, standing_answers
from sourcing.quoting.carry_over import line_now
from sourcing.quoting.tolerance import may_rise_to
from tests.builders import usd
from tests.quoting.answered_quotes import GIVEN, of_lines
from tests.quoting.test_pricing_and_totals import line

CENTS = st.integers(min_value=1, max_value=50_000)
NONE = Tolerance()


def at(price: str, label: str = "A", **fields: object) -> QuoteLine:
    """A part without labour at that price."""
    return changed(line(label, price), title="Idler", **fields)


def holds(old: QuoteLine, new: QuoteLine, answer: Literal["yes", "no"] = "yes", tolerance: Tolerance = NONE) -> bool:
    """Whether the answer to the one line of revision 1 holds for the one line of revision 2."""
    first, second = of_lines(old), changed(of_lines(new, revision=2), tolerance=tolerance)
    said = ([old.label], []) if answer == "yes" else ([], [old.label])
    return new.label in standing_answers(second, record_answers(first, *said, GIVEN), {1: first})


@pytest.mark.parametrize(
    ("change", "carried"),
    [
        ({}, True),
        ({"label": "C"}, True),
        ({"found": "worse than thought", "why": "x", "if_declined": "y", "description": "z"}, True),
        ({"title": "Idler pulley"}, False),
        ({"part": "OTHER"}, False),
        ({"number": "CV-B880K"}, False),
        ({"quantity": 2}, False),
        ({"hours": Decimal("0.1")}, False),
        ({"parts_price": usd("99.99")}, True),
        ({"parts_price": usd("100.01")}, False),
        ({"labour_price": usd("0.01")}, False),
        ({"fee_price": usd("0.01")}, False),
    ],
)
def test_a_yes_carries_over_only_where_work_part_number_and_amounts_are_the_same(
    change: dict[str, object], carried: bool
) -> None:
    """A lower price is covered; no tolerance unless the shop states one."""
    assert holds(at("100.00"), changed(at("100.00"), **change)) is carried


@pytest.mark.parametrize(("price", "carried"), [("99.99", False), ("100.00", True), ("120.00", True)])
def test_a_no_carries_over_only_where_it_is_not_cheaper(price: str, carried: bool) -> None:
    """She may want it for less."""
    assert holds(at("100.00"), at(price), "no") is carried


@pytest.mark.parametrize(
    ("percent", "amount", "most"),
    [
        ("0", "0", "200.00"),
        ("5", "0", "210.00"),
        ("0", "4.00", "204.00"),
        ("5", "4.00", "204.00"),
        ("1", "4.00", "202.00"),
    ],
)
def test_a_rise_is_covered_up_to_the_smaller_tolerance_and_not_a_cent_more(
    percent: str, amount: str, most: str
) -> None:
    """Of 200.00 approved."""
    tolerance = Tolerance(percent=Decimal(percent), amount=Decimal(amount))
    assert holds(at("200.00"), at(most), tolerance=tolerance)
    assert not holds(at("200.00"), at(str(Decimal(most) + Decimal("0.01"))), tolerance=tolerance)


def test_the_tolerance_is_that_of_the_new_revision() -> None:
    """What the old one allowed is past."""
    first = changed(of_lines(at("100.00")), tolerance=Tolerance(percent=Decimal(10)))
    second = of_lines(at("101.00"), revision=2)
    kept = record_answers(first, ["A"], [], GIVEN)
    assert standing_answers(second, kept, {1: first}) == {}
    assert "A" in standing_answers(changed(second, tolerance=first.tolerance), kept, {1: first})


def test_a_part_of_a_cent_of_tolerance_allows_no_cent() -> None:
    """10 % of 0.05 is half a cent; rounding it up would let the price rise by a fifth."""
    assert not holds(at("0.05"), at("0.06"), tolerance=Tolerance(percent=Decimal(10)))


def test_another_currency_is_another_price() -> None:
    """And no crash."""
    euros = Money(amount=Decimal("1.00"), currency="EUR")
    nothing = Money(amount=Decimal(0), currency="EUR")
    new = at("100.00", parts_price=euros, labour_price=nothing, freight_price=nothing)
    first, second = of_lines(at("100.00")), changed(of_lines(at("100.00"), revision=2), lines=(new,))
    for yes, no in ((["A"], []), ([], ["A"])):
        assert standing_answers(second, record_answers(first, yes, no, GIVEN), {1: first}) == {}


def test_rises_within_the_tolerance_never_add_up() -> None:
    """100, 104, 108 with 5 %: each is near the one before, the third is beyond what she approved."""
    revisions = [
        changed(of_lines(at(price), revision=number), tolerance=Tolerance(percent=Decimal(5)))
        for number, price in enumerate(("100.00", "104.00", "108.00"), 1)
    ]
    kept = record_answers(revisions[0], ["A"], [], GIVEN)
    found = [bool(standing_answers(one, kept, {1: revisions[0]})) for one in revisions]
    assert found == [True, True, False]


@given(CENTS, CENTS, st.decimals(0, 30, places=2), st.decimals(0, 50, places=2))
def test_no_yes_covers_more_than_approved_plus_tolerance(
    approved: int, now: int, percent: Decimal, amount: Decimal
) -> None:
    """Reckoned here in whole fractions, apart from the code: rise x 100 <= approved x per cent, rise <= amount."""
    tolerance = Tolerance(percent=percent, amount=amount)
    rise = now - approved
    allowed = rise <= 0
    if rise > 0 and (percent or amount):
        allowed = (not percent or rise * 100 <= approved * percent) and (not amount or rise <= amount * 100)
    old, new = (at(f"{cents // 100}.{cents % 100:02d}") for cents in (approved, now))
    assert holds(old, new, tolerance=tolerance) is allowed
    assert holds(old, new, "no", tolerance) is (rise >= 0)
    assert old.price <= may_rise_to(old.price, tolerance)


ALIKE = st.lists(
    st.tuples(st.sampled_from(("Keeper", "Idler")), st.sampled_from(("10.00", "12.00")), st.sampled_from(("", "bent"))),
    min_size=1,
    max_size=5,
)


def _with(lines: list[tuple[str, str, str]], revision: int) -> Quote:
    made = [
        changed(line("ABCDE"[place], price), title=title, found=found)
        for place, (title, price, found) in enumerate(lines)
    ]
    return of_lines(*made, revision=revision)


@given(ALIKE, ALIKE)
def test_no_two_lines_ever_share_one_answer(
    before: list[tuple[str, str, str]], after: list[tuple[str, str, str]]
) -> None:
    """However alike they look: a line of one revision is at most one line of another, and no line is two."""
    first, second = _with(before, 1), _with(after, 2)
    found = [now.label for one in first.lines if (now := line_now(second, first, one))]
    assert len(found) == len(set(found))
    kept = record_answers(first, [one.label for one in first.lines], [], GIVEN)
    holding = standing_answers(second, kept, {1: first})
    assert len({id(one) for one in holding.values()}) == len(holding)
    for label, one in holding.items():
        line_then, line_then_now = first.line(one.label), second.line(label)
        assert line_then and line_then_now and line_then_now.price <= line_then.price


def test_lines_that_look_alike_are_told_apart_by_label_and_finding() -> None:
    """Yes to the left keeper only: the right one, alike in all else, waits in every later revision."""
    left, right = at("10.00", "A", found="left is bent"), at("10.00", "B", found="right is bent")
    first = of_lines(left, right)
    kept = record_answers(first, ["A"], [], GIVEN)
    assert list(standing_answers(first, kept, {1: first})) == ["A"]
    assert list(standing_answers(changed(first, revision=2), kept, {1: first})) == ["A"]
    swapped = of_lines(changed(right, label="A"), changed(left, label="B"), revision=2)
    assert standing_answers(swapped, kept, {1: first}) == {}
    only_right = of_lines(changed(right, label="A"), revision=2)
    assert standing_answers(only_right, kept, {1: first}) == {}


def test_prices_of_a_chain_of_revisions_are_compared_with_the_answer_alone() -> None:
    """Up and down again: the yes to 100 holds at 100, whatever came between, as long as nobody said otherwise."""
    prices = ("100.00", "130.00", "100.00")
    revisions = [of_lines(at(price), revision=number) for number, price in enumerate(prices, 1)]
    kept = record_answers(revisions[0], ["A"], [], GIVEN)
    assert [bool(standing_answers(one, kept, {1: revisions[0]})) for one in revisions] == [True, False, True]
    assert all(one.revision < two.revision for one, two in pairwise(revisions))
    no = record_answers(revisions[1], [], ["A"], GIVEN)
    both = {1: revisions[0], 2: revisions[1]}
    assert standing_answers(revisions[2], [*kept, *no], both) == {}


@pytest.mark.parametrize(
    ("now", "carried"),
    [("Norrowby NB61455", True), ("norrowby nb 61.455", True), ("Norrowby NB-6145S", False), ("NB-61455", False)],
)
def test_a_number_is_its_letters_and_digits_however_it_is_written(now: str, carried: bool) -> None:
    """Another character is another part, and so is a number without its maker."""
    then = at("100.00", number="Norrowby NB 61-455")
    assert holds(then, at("100.00", number=now)) is carried
