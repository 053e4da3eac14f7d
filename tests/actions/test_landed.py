"""An offer and a placed order at the door, from a shop's database."""

from datetime import date, datetime
from pathlib import Path

import pytest

from sourcing.actions.compare import compare
from sourcing.actions.landed import landed_again, landed_offers
from sourcing.basics.landed_view import LandedAgain
from sourcing.basics.money import total
from sourcing.basics.offer import LeadTime
from sourcing.basics.problem import Refused
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import MONDAY, SHEET_DAY, new_terms, ordered, priced
from tests.builders import usd
from tests.journeys.small_shop import desk_at, shop


def test_an_offer_in_any_quantity_ordered_alone(tmp_path: Path) -> None:
    """Two belts at 126.90 pass free freight; the third costs its price and the order comes in two days."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "126.90"))
    (one,) = landed_offers(desk, "stonegarth", "nw 77120", 2)
    assert one.landed is not None and one.landed.total == usd("253.80") and one.why_not == ""
    assert one.arrival is not None and one.arrival.latest == date(2026, 3, 4)
    assert one.one_more is not None and one.one_more.difference == usd("126.90")
    assert one.cheaper is None


def test_what_one_more_would_pass_is_said(tmp_path: Path) -> None:
    """146.00 and freight; one more at 146.00 is free of it, two belts cost 131.05 more."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "146.00"), priced("NW-31207", "5.00") | {"row": 5})
    (belt,) = landed_offers(desk, "stonegarth", "NW-77120")
    assert belt.one_more is not None and belt.one_more.difference == usd("131.05")
    assert "Freight: 0.00 USD instead of 14.95 USD" in belt.one_more.changes[0]
    (keeper,) = landed_offers(desk, "stonegarth", "NW-31207", 28)
    assert keeper.cheaper is not None and (keeper.cheaper.ordered, keeper.cheaper.difference) == (30, usd("-4.95"))


def test_a_price_that_is_not_firm_is_worked_out_and_marked(tmp_path: Path) -> None:
    """The clerk sees what it would be, and that it can't be ranked; with no price there is nothing."""
    desk = shop(tmp_path, MONDAY)
    old = priced("NW-77120", "126.90", valid_to=date(2026, 3, 1))
    keep(desk, "stonegarth", SHEET_DAY, old, priced("NW-2", "1.00", breaks=()) | {"row": 5})
    (held,) = landed_offers(desk, "stonegarth", "NW-77120")
    assert held.landed is not None and "not firm: it held until 2026-03-01" in held.why_not
    (none,) = landed_offers(desk, "stonegarth", "NW-2")
    assert none.landed is None and none.why_not == "the sheet gives no net price"


def test_unknown_freight_and_a_refused_order_stand_in_why_not(tmp_path: Path) -> None:
    """Neither can be ordered as it stands; what is known is shown."""
    desk = shop(tmp_path, MONDAY)
    freight = 'freight = { rule = "flat", charge = 14.95, free_from = 150.00 }'
    new_terms(desk, tmp_path, (freight, "minimum_order = 200"), starts="2026-02-01")
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "126.90"))
    (one,) = landed_offers(desk, "stonegarth", "NW-77120")
    assert "freight of Stonegarth Trade Parts is not known" in one.why_not
    assert "takes no order below 200 USD" in one.why_not


def test_every_row_under_the_number_is_shown(tmp_path: Path) -> None:
    """A single and a pack of ten under one number: which is meant is for a person to say."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-1", "1.00"), priced("NW-1", "8.00", pack=10) | {"row": 5})
    found = landed_offers(desk, "stonegarth", "NW-1")
    assert [one.landed.items[0].item.ordered for one in found if one.landed] == [1, 10]


def test_a_later_delivery_of_an_offer_alone_costs_what_the_terms_say(tmp_path: Path) -> None:
    """Two of three in stock, the rest in a week; sent as ready with 6.00 for the second delivery."""
    desk = shop(tmp_path, MONDAY)
    split = ("transit_days = [2, 2]", 'transit_days = [2, 2]\nsplit = { sends = "as ready", later_charge = 6 }')
    new_terms(desk, tmp_path, split, starts="2026-02-01")
    week = LeadTime(text="1 week", least=5, most=5)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-1", "10.00", stock=2, lead_time=week))
    (one,) = landed_offers(desk, "stonegarth", "NW-1", 3)
    assert one.landed is not None and one.landed.total == usd("50.95")
    assert one.one_more is not None and one.one_more.difference == usd("10.00")
    (two,) = landed_offers(desk, "stonegarth", "NW-1", 2)
    assert two.one_more is not None and two.one_more.difference == usd("16.00")


@pytest.mark.parametrize(
    ("supplier", "number", "quantity", "code"),
    [
        ("stonegarth", "NW-77121", 1, "number-not-on-sheet"),
        ("stonegarth", "---", 1, "number-not-on-sheet"),
        ("tavishollow", "NW-77120", 1, "no-sheet-of-supplier"),
        ("stonegarth", "NW-77120", 0, "quantity-below-one"),
    ],
)
def test_what_is_not_there_is_told(tmp_path: Path, supplier: str, number: str, quantity: int, code: str) -> None:
    """A near number is a suggestion and never taken."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "126.90"))
    with pytest.raises(Refused) as told:
        landed_offers(desk, supplier, number, quantity)
    assert told.value.problems[0].code == code
    if number == "NW-77121":
        assert told.value.problems[0].suggestions == ("NW77120",)


def check_sums(again: LandedAgain) -> None:
    """The parts are the totals, and the differences the difference."""
    assert total((one.kept for one in again.differences if one.kept), "USD") == again.kept
    assert again.now is not None and again.difference is not None
    assert total((one.now for one in again.differences if one.now), "USD") == again.now.total
    assert total((one.difference for one in again.differences if one.difference), "USD") == again.difference


def test_a_placed_order_by_the_terms_it_was_placed_under_costs_the_same(tmp_path: Path) -> None:
    """Nothing changed: nothing differs."""
    number = ordered(tmp_path)
    again = landed_again(desk_at(tmp_path, MONDAY), number)
    check_sums(again)
    assert again.difference == usd("0.00") and again.terms_from == date(2025, 1, 1)


def test_a_placed_order_by_later_terms_and_a_later_sheet(tmp_path: Path) -> None:
    """Freight 14.95 to 19.50, keepers 2 x 0.55 dearer, a handling fee of 2.00; the past is as it was."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    handling = ("transit_days = [2, 2]", "transit_days = [2, 2]\nhandling = 2.00")
    new_terms(later, tmp_path, ("14.95", "19.50"), handling)
    keep(later, "stonegarth", date(2026, 4, 1), priced("NW-77120", "126.90"), priced("NW-31207", "6.75") | {"row": 5})
    again = landed_again(later, number)
    check_sums(again)
    assert {one.name: str(one.difference) for one in again.differences} == {
        "Goods NW-77120": "0.00 USD",
        "Goods NW-31207": "1.10 USD",
        "Freight": "4.55 USD",
        "Handling": "2.00 USD",
    }
    assert (again.difference, again.terms_from) == (usd("7.65"), date(2026, 4, 1))
    past = landed_again(desk_at(tmp_path, MONDAY), number)
    assert past.difference == usd("0.00")


@pytest.mark.parametrize(
    ("rows", "words"),
    [
        ([priced("NW-77120", "126.90")], "line 2, NW-31207: not on the newest sheet"),
        (
            [priced("NW-77120", "126.90"), priced("NW-31207", "6.20", pack=10) | {"row": 5}],
            "line 2, NW-31207: 2 pieces were ordered, now it would have to be 10",
        ),
        (
            [priced("NW-77120", "126.90"), priced("NW-31207", "6.20", no_longer_available=True) | {"row": 5}],
            "line 2, NW-31207: no longer available",
        ),
        (
            [priced("NW-77120", "126.90"), *(priced("NW-31207", each) | {"row": 5} for each in ("6.20", "5.10"))],
            "line 2, NW-31207: 2 rows of the newest sheet bear the number",
        ),
    ],
)
def test_an_order_that_cannot_be_placed_again_is_not_half_worked_out(
    tmp_path: Path, rows: list[dict[str, object]], words: str
) -> None:
    """A total without a line would look cheaper."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    keep(later, "stonegarth", date(2026, 4, 1), *rows)
    again = landed_again(later, number)
    assert again.open_questions == (words,)
    assert (again.now, again.difference) == (None, None)
    assert all(one.now is None and one.difference is None for one in again.differences)


def test_a_charge_that_is_gone_differs_by_all_of_it(tmp_path: Path) -> None:
    """The shop drives now: no freight, 46 miles and an hour instead."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    flat = 'freight = { rule = "flat", charge = 14.95, free_from = 150.00 }'
    drive = 'freight = { rule = "pick-up", round_trip_miles = 46, round_trip_hours = 1.0 }'
    new_terms(later, tmp_path, (flat, drive))
    again = landed_again(later, number)
    check_sums(again)
    by_name = {one.name: one.difference for one in again.differences}
    assert by_name["Freight"] == usd("-14.95") and by_name["Pick-up, miles"] == usd("33.35")


def test_a_charge_not_known_now_is_no_saving(tmp_path: Path) -> None:
    """Freight that became unknown has no difference, and the whole has none."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    new_terms(later, tmp_path, ('freight = { rule = "flat", charge = 14.95, free_from = 150.00 }', ""))
    again = landed_again(later, number)
    freight = next(one for one in again.differences if one.name == "Freight")
    assert (freight.now, freight.difference, again.difference) == (None, None, None)
    assert again.open_questions == ("freight of Stonegarth Trade Parts is not known",)


def told_ahead(folder: Path, at: datetime, starts: str = "2026-03-02") -> tuple[str, ...]:
    """What is told of a belt asked for at that moment; the terms change on a Monday, or on the day named."""
    desk = shop(folder, datetime(2026, 2, 27, 9, 0))
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "126.90"))
    new_terms(desk, folder, ("14.95", "19.50"), starts=starts)
    (one,) = landed_offers(desk_at(folder, at), "stonegarth", "NW-77120")
    assert one.landed is not None and one.landed.freight == usd("19.50" if str(at.date()) >= starts else "14.95")
    return one.notes


def test_a_comparison_tells_of_terms_ahead_too(tmp_path: Path) -> None:
    """The same sentence stands among its notes."""
    (told,) = told_ahead(tmp_path, datetime(2026, 2, 28, 12, 0))
    assert told in compare(desk_at(tmp_path, datetime(2026, 2, 28, 12, 0)), "NW-77120", None).notes


def test_terms_that_change_before_the_order_counts_are_told(tmp_path: Path) -> None:
    """Asked on Saturday, it counts on Monday, when freight is dearer; the cost shown is Saturday's."""
    assert told_ahead(tmp_path, datetime(2026, 2, 28, 12, 0)) == (
        "the terms of Stonegarth Trade Parts from 2026-03-02 on hold on the day this order counts, 2026-03-02: not "
        "used here, they change freight.charge",
    )


@pytest.mark.parametrize(
    ("at", "starts"),
    [
        (datetime(2026, 2, 27, 10, 0), "2026-03-02"),
        (datetime(2026, 3, 2, 10, 0), "2026-03-02"),
        (datetime(2026, 2, 28, 12, 0), "2026-03-03"),
    ],
)
def test_nothing_is_told_where_the_order_counts_under_the_terms_used(tmp_path: Path, at: datetime, starts: str) -> None:
    """On Friday before the cut-off, on the day itself, and where they change a day later."""
    assert told_ahead(tmp_path, at, starts) == ()


def test_a_kept_order_is_told_with_its_goods_before_discount_and_the_discount_by_itself(tmp_path: Path) -> None:
    """By hand: 126.90 and 2 x 6.20, 2 % off each line is 2.54 and 0.25; now 3 %, 3.81 and 0.37."""
    discount = ("transit_days = [2, 2]", "transit_days = [2, 2]\ndiscount_percent = 2")
    number = ordered(tmp_path, discount)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    new_terms(later, tmp_path, (discount[0], discount[1].replace("= 2", "= 3")))
    again = landed_again(later, number)
    check_sums(again)
    told = {one.name: (str(one.kept), str(one.now), one.rule) for one in again.differences}
    assert told["Goods NW-77120"] == ("126.90 USD", "126.90 USD", "1 x 126.90 USD")
    assert told["Goods NW-31207"] == ("12.40 USD", "12.40 USD", "2 x 6.20 USD")
    assert told["Discount"] == ("-2.79 USD", "-4.18 USD", "3 % on each line")


def test_a_discount_that_is_gone_differs_by_all_of_it(tmp_path: Path) -> None:
    """The terms of later give none."""
    number = ordered(tmp_path, ("transit_days = [2, 2]", "transit_days = [2, 2]\ndiscount_percent = 2"))
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    new_terms(later, tmp_path)
    again = landed_again(later, number)
    check_sums(again)
    (gone,) = (one for one in again.differences if one.name == "Discount")
    assert (gone.kept, gone.now, gone.difference) == (usd("-2.79"), None, usd("2.79"))
