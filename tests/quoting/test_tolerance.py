"""How far a price may rise without a new question. How far is for the shop to say (common practice, no source)."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.money import from_minor
from sourcing.basics.settings import Tolerance
from sourcing.quoting.tolerance import line_at, may_rise_to, rises_too_far
from tests.builders import usd
from tests.quoting.alarm_values import belt

CENTS = st.integers(1, 50_000)
PERCENT, AMOUNT = st.decimals(0, 20, places=2), st.decimals(0, 100, places=2)


@pytest.mark.parametrize(
    ("percent", "amount", "most"),
    [
        ("0", "0", "321.66"),
        ("10", "0", "353.826"),
        ("0", "5", "326.66"),
        ("10", "5", "326.66"),
        ("1", "50", "324.8766"),
    ],
)
def test_it_is_the_smaller_of_the_two_given(percent: str, amount: str, most: str) -> None:
    """One that is not given does not make it nothing; a part of a cent is not rounded up to one."""
    tolerance = Tolerance(percent=Decimal(percent), amount=Decimal(amount))
    assert may_rise_to(usd("321.66"), tolerance).amount == Decimal(most)


@given(CENTS, PERCENT, AMOUNT)
def test_it_is_never_more_than_either_bound(cents: int, percent: Decimal, amount: Decimal) -> None:
    """And never below what was approved."""
    approved = from_minor(cents, "USD")
    rise = (may_rise_to(approved, Tolerance(percent=percent, amount=amount)) - approved).amount
    assert rise >= 0
    assert not percent or rise * 100 <= approved.amount * percent
    assert not amount or rise <= amount
    assert percent or amount or rise == 0


def test_the_whole_line_is_looked_at() -> None:
    """Four pieces at 1.25 more, and the labour as it was."""
    line = belt(quantity=4)
    assert line_at(line, usd("178.91")) == line.price + usd("5.00")


def test_a_second_small_rise_is_too_far() -> None:
    """100, 104, 108 with 4 %, on a line without labour: 104 passes, 108 does not, though it is 3.85 % above 104."""
    tolerance = Tolerance(percent=Decimal(4))
    lines = {each: belt(each, labour_price=usd("0.00")) for each in ("100.00", "104.00")}
    assert not rises_too_far(lines["100.00"], usd("104.00"), usd("100.00"), tolerance)
    assert rises_too_far(lines["104.00"], usd("108.00"), usd("100.00"), tolerance)
    assert not rises_too_far(lines["104.00"], usd("108.00"), None, tolerance)


@given(st.lists(CENTS, min_size=2, max_size=5), PERCENT, AMOUNT)
def test_rises_never_add_up_whatever_revisions_lie_between(
    prices: list[int], percent: Decimal, amount: Decimal
) -> None:
    """Each price is let through from the line before it only if it would be from the amount approved."""
    tolerance = Tolerance(percent=percent, amount=amount)
    approved = belt(str(from_minor(prices[0], "USD").amount)).price
    line = belt(str(from_minor(prices[0], "USD").amount))
    for cents in prices[1:]:
        each = from_minor(cents, "USD")
        if not rises_too_far(line, each, approved, tolerance):
            assert line_at(line, each) <= may_rise_to(approved, tolerance)
            line = belt(str(each.amount))
