"""The order of one part's offers, its reasons and ties, and what the user's wishes take out."""

from datetime import timedelta
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.choice import Priced, Ranking, RankWishes
from sourcing.basics.problem import Refused
from sourcing.choosing.figures import figures, in_order
from sourcing.choosing.ranking import rank
from tests.choosing.priced_values import ASKED, priced

NOTHING = RankWishes()
SUPPLIERS = ("larkmoor", "pellbrook")


def names(ranking: Ranking) -> list[str]:
    """Suppliers in order."""
    return [one.priced.offer.supplier for one in ranking.ranked]


@st.composite
def offers(draw: st.DrawFn) -> list[Priced]:
    """Offers with few different costs and days, so that ties are many; each with a number of its own."""
    cents, days = st.integers(1, 2), st.one_of(st.none(), st.integers(1, 2))
    return [
        priced(
            draw(st.sampled_from(SUPPLIERS)),
            goods=f"{draw(cents)}.00",
            days=draw(days),
            standing=draw(st.sampled_from(("fitted", "maker"))),
            number=f"N{at}",
            freight=f"{draw(cents)}.50",
        )
        for at in range(draw(st.integers(1, 9)))
    ]


@given(st.data())
def test_the_order_of_the_input_never_matters(data: st.DataObject) -> None:
    some = data.draw(offers())
    wishes = RankWishes(value_per_day=data.draw(st.sampled_from((None, Decimal("0.50"), Decimal("0.333")))))
    assert rank(data.draw(st.permutations(some)), wishes, ASKED) == rank(some, wishes, ASKED)


@given(offers(), st.sampled_from((None, Decimal(0), Decimal("0.50"), Decimal("1.25"))))
def test_nothing_is_lost_and_what_counts_least_is_first(some: list[Priced], value: Decimal | None) -> None:
    """Counted by hand here: landed cost, plus days times the price of one."""
    found = rank(some, RankWishes(value_per_day=value), ASKED)
    assert len(found.ranked) + len(found.open_offers) + len(found.set_aside) == len(some)
    counted = [one.priced.landed.total.amount + (value or 0) * (one.days or 0) for one in found.ranked]
    assert counted == sorted(counted)
    if value is not None:
        assert all(one.counted and one.counted.amount == what for one, what in zip(found.ranked, counted, strict=True))


@given(offers())
def test_the_parts_of_a_difference_sum_to_it(some: list[Priced]) -> None:
    """What a reason names part by part is the whole difference."""
    for one in in_order(some, NOTHING, ASKED):
        assert sum(one.parts.values()) == one.total == one.priced.landed.total.minor()


def test_the_first_is_explained_by_what_the_lowest_price_costs_on_top() -> None:
    """103.20 + 0 against 100.00 + 17.30: dearer by 3.20 each, cheaper by 14.10, for 17.30 freight less 3.20 goods."""
    near = priced("larkmoor", "103.20", freight="0.00", rule="free from 100.00 USD of goods; this order has 103.20")
    far = priced("pellbrook", "100.00", freight="17.30")
    first, second = rank([far, near], NOTHING, ASKED).ranked
    assert first.reason == (
        "3.20 USD dearer each than Pellbrook, 14.10 USD cheaper at the door: there freight 17.30 more, goods 3.20 less"
        "; no freight here: free from 100.00 USD of goods; this order has 103.20"
    )
    assert second.reason == (
        "14.10 USD dearer at the door than Larkmoor, here by the same day, though 3.20 USD cheaper each: "
        "freight 17.30 more, goods 3.20 less"
    )


def test_break_shelf_and_duty_are_named() -> None:
    """Twelve in a pack for ten needed: 9.00 of the 54.00 lie on the shelf."""
    packed = priced(
        "kesselried",
        "54.00",
        days=9,
        needed=10,
        ordered=12,
        shelf="9.00",
        duty="1.62",
        breaks=[(1, "5.00"), (12, "4.50")],
    )
    loose = priced("larkmoor", "50.00", needed=10)
    first, second = rank([packed, loose], NOTHING, ASKED).ranked
    assert first.priced == loose
    assert second.reason == (
        "5.62 USD dearer at the door than Larkmoor, here 6 days later, though 0.50 USD cheaper each: "
        "pieces for the shelf 9.00 and duty 1.62 more, goods 5.00 less; the price from 12 pieces on is reached"
    )


@pytest.mark.parametrize(
    ("fields", "words"),
    [
        ({"days": 5}, "costs the same as Larkmoor, here 2 days later"),
        ({"standing": "maker"}, "level with Larkmoor in cost and day, after it for the standing (fitted first)"),
        ({}, "level with Larkmoor in cost, day and standing, after it by name and number only"),
        ({"days": None}, "costs the same as Larkmoor, day of arrival not known"),
    ],
)
def test_ties_are_told(fields: dict[str, Any], words: str) -> None:
    second = rank([priced("pellbrook", **fields), priced("larkmoor")], NOTHING, ASKED).ranked[1]
    assert second.reason.replace("costs the same at the door as", "costs the same as").find(words) >= 0


def test_what_only_the_day_decides_is_told_at_every_place() -> None:
    """90.00 twice, 100.00 twice: each pair costs the same, the earlier day goes first."""
    some = [priced(name, goods, days) for name, goods, days in (
        ("larkmoor", "90.00", 2), ("pellbrook", "90.00", 3), ("stonegarth", "100.00", 4), ("kesselried", "100.00", 5),
    )]  # fmt: skip
    reasons = [one.reason for one in rank(some, NOTHING, ASKED).ranked]
    assert reasons[0].endswith("; costs the same as Pellbrook, before it for the day")
    assert reasons[1] == "costs the same at the door as Larkmoor, here 1 day later"
    assert "costs the same" not in reasons[2]
    assert reasons[3].endswith("; costs the same as Stonegarth, after it for the day")


def test_a_stated_price_of_a_day_decides() -> None:
    """100.00 in 10 days or 112.00 in 3: at 2.00 a day 120.00 against 118.00; at 1.00 a day 110.00 against 115.00."""
    late, soon = priced("larkmoor", "100.00", days=10), priced("pellbrook", "112.00", days=3)
    assert names(rank([late, soon], RankWishes(value_per_day=Decimal(1)), ASKED)) == ["larkmoor", "pellbrook"]
    first, second = rank([late, soon], RankWishes(value_per_day=Decimal(2)), ASKED).ranked
    assert (first.days, str(first.waiting), str(first.counted)) == (3, "6.00 USD", "118.00 USD")
    assert first.reason == (
        "least with waiting counted: 112.00 at the door and 6.00 for 3 days; "
        "12.00 USD dearer at the door than Larkmoor, here 7 days sooner, which is worth 14.00"
    )
    assert second.reason == (
        "2.00 USD more than Pellbrook with waiting counted: 100.00 at the door and 20.00 for 10 days; "
        "12.00 cheaper at the door, here 7 days later"
    )


def test_without_a_last_day_waiting_can_not_be_priced() -> None:
    found = rank([priced("larkmoor", days=None), priced("pellbrook")], RankWishes(value_per_day=Decimal(5)), ASKED)
    assert names(found) == ["pellbrook"]
    assert found.open_offers[0].reason == (
        "100.00 USD at the door; the day of arrival is not known, so waiting at 5 USD a day can't be counted"
    )


BY = ASKED + timedelta(days=3)


@pytest.mark.parametrize(
    ("fields", "wish", "why"),
    [
        (
            {"standing": "supplier"}, {"trusted_only": True},
            "the match is not trusted: its weakest statement is 'supplier'",
        ),
        ({"stock": 2, "ordered": 4}, {"in_stock_only": True}, "not in stock for the quantity: 2 of 4"),
        ({"stock": None}, {"in_stock_only": True}, "not known to be in stock: the sheet states no stock"),
        (
            {"needed": 3, "ordered": 4}, {"without_surplus": True},
            "1 piece more than needed: 4 is the least that can be ordered",
        ),
        (
            {"days": 4}, {"need_by": BY, "only_in_time": True},
            "not in time: here by 2026-01-17, needed by 2026-01-16",
        ),
        (
            {"days": None}, {"need_by": BY, "only_in_time": True},
            "the day of arrival is not known, needed by 2026-01-16: ask him when it can be here",
        ),
    ],
)  # fmt: skip
def test_a_wish_takes_out_what_does_not_fit_and_says_why(
    fields: dict[str, Any], wish: dict[str, Any], why: str
) -> None:
    away, fits = priced("larkmoor", "10.00", **fields), priced("pellbrook", "99.00", stock=4)
    found = rank([away, fits], RankWishes(**wish), ASKED)
    assert names(found) == ["pellbrook"]
    (one,) = found.set_aside
    assert one.reason.startswith(f"{why}; 10.00 USD at the door, ") and not one.rejected
    assert names(rank([away, fits], NOTHING, ASKED)) == ["larkmoor", "pellbrook"]


def test_without_only_in_time_the_day_needed_is_only_told() -> None:
    found = rank([priced(days=3), priced(days=4), priced(days=None)], RankWishes(need_by=BY), ASKED)
    assert [one.in_time for one in found.ranked] == [True, False, None]


def test_wishes_that_mean_nothing_are_refused() -> None:
    for price in ("-0.01", "NaN", "Infinity"):
        with pytest.raises(Refused, match="the price of a day of waiting is given as"):
            RankWishes(value_per_day=Decimal(price))
    with pytest.raises(Refused, match="and no day"):
        RankWishes(only_in_time=True)


def test_each_is_the_goods_of_a_piece_without_charges() -> None:
    assert figures(priced(goods="50.00", needed=4, freight="9.00"), NOTHING, ASKED).each == Decimal(1250)
