"""After a partial yes: what is approved and not ordered is planned by itself, and what is cheaper so is told.

All figures are worked out by hand from the two sheets and the suppliers' terms below.
"""

from datetime import date
from pathlib import Path

import pytest

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import look_at_orders, place_orders
from sourcing.actions.plan import plan_job
from sourcing.actions.quotes import write_quote
from sourcing.actions.setup import set_up
from sourcing.basics.problem import Refused
from tests.actions.order_shop import BELT, IDLER, MONDAY, quote_again
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, job_file, sheet, shop, take_in

IDLERS = '[[agreed]]\ntitle = "Idlers"\npart = "IDLER"\nquantity = 2\nhours = 0.5\n'
BELT_FOUND = '[[add_ons]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1\n'
DEARER_IDLER = "NW-22203,Norrowby,Idler,39.95,23.00,5,In stock"
OTHER_BELT = "CV-B880K,Corrivane,Belt B88,214.00,160.00,2,In stock"


def declined_belt(
    folder: Path, way: str = "billed", idler: str = DEARER_IDLER, days: str = "[3, 3]"
) -> tuple[Desk, str]:
    """Idlers (1) and belt (A) quoted from Stonegarth, 184.00 with free freight; then the belt is declined."""
    desk = shop(folder, MONDAY)
    (folder / "shop.toml").write_text(SHOP.replace('"billed"', f'"{way}"'))
    (folder / "suppliers.toml").write_text(SUPPLIERS.replace("[3, 3]", days))
    set_up(desk, folder)
    sheet(desk, folder, "stonegarth", "2026-03-01", [BELT, IDLER])
    sheet(desk, folder, "pellbrook", "2026-03-01", [idler, OTHER_BELT])
    number = take_in(desk, folder, IDLERS + BELT_FOUND)
    quote_again(desk, number)
    record(desk, number, Spoken(yes=("agreed",), no=("A",), who="Maud Tilbrook", how="telephone"))
    return desk, number


def test_what_is_left_is_told_to_be_cheaper_bought_anew(tmp_path: Path) -> None:
    """As quoted 45.00 and 14.95 freight; from Pellbrook 46.00 and 9.95, which is 4.00 less and a day later."""
    desk, job = declined_belt(tmp_path)
    seen = look_at_orders(desk, [job])
    assert [(one.supplier, one.landed_total) for one in seen.orders] == [("stonegarth", usd("59.95"))]
    assert seen.otherwise == (
        "as quoted, what is approved and not ordered yet costs 59.95 USD at the door from Stonegarth Trade Parts, here "
        "by 2026-03-04; bought anew by itself it costs 55.95 USD from Pellbrook Power Parts, here by 2026-03-05, "
        "4.00 USD less",
        f"to buy it so for job {job}: take out of the job what was declined (line A), then write a new revision by "
        "--plan shop",
        "on it a yes holds where number, price and day are as approved; what is not is asked again: line 1 of "
        f"job {job} at 126.20 USD before tax, approved was 124.50 USD; line 1 of job {job} by 2026-03-05, approved was "
        "by 2026-03-04",
    )


def test_what_is_told_to_be_done_does_it(tmp_path: Path) -> None:
    """Line A out of the job, a new revision by the shop's plan, a yes to price and day: the order costs 55.95."""
    desk, job = declined_belt(tmp_path)
    change_job_from(desk, job, job_file(tmp_path, IDLERS))
    assert write_quote(desk, job, lambda quote: f"{quote.revision}", plan_for="shop").is_new
    record(desk, job, Spoken(yes=("agreed",), who="Maud Tilbrook", how="telephone"))
    assert look_at_orders(desk, [job]).otherwise == ()
    assert [(one.supplier, one.landed_total) for one in place_orders(desk, [job]).orders] == [
        ("pellbrook", usd("55.95"))
    ]


def test_a_yes_that_holds_is_not_asked_again(tmp_path: Path) -> None:
    """At the same price and by the same day nothing of it is new to the customer."""
    desk, job = declined_belt(tmp_path, idler=IDLER, days="[2, 2]")
    said = look_at_orders(desk, [job]).otherwise[2]
    assert said == "on it a yes holds where number, price and day are as approved; what is not is asked again"
    change_job_from(desk, job, job_file(tmp_path, IDLERS))
    write_quote(desk, job, lambda quote: f"{quote.revision}", plan_for="shop")
    assert [(one.supplier, one.landed_total) for one in place_orders(desk, [job]).orders] == [
        ("pellbrook", usd("54.95"))
    ]


def test_a_plan_for_what_is_left_alone(tmp_path: Path) -> None:
    """The plan of all takes Stonegarth's free freight; of what is approved Pellbrook is the least."""
    desk, job = declined_belt(tmp_path)
    every, left = plan_job(desk, job, None), plan_job(desk, job, None, left_to_order=True)
    assert [(one.landed.supplier, one.landed.total) for one in every.orders] == [("stonegarth", usd("184.00"))]
    assert [(one.landed.supplier, one.landed.total) for one in left.orders] == [("pellbrook", usd("55.95"))]
    assert [need.label for need in left.needs] == ["1"]


def test_a_plan_for_what_is_left_needs_something_left(tmp_path: Path) -> None:
    """Once all of it is on order the order is named."""
    desk, job = declined_belt(tmp_path)
    (order,) = place_orders(desk, [job]).orders
    with pytest.raises(Refused) as caught:
        plan_job(desk, job, None, left_to_order=True)
    assert caught.value.problems[0].code == "all-on-order" and order.number in str(caught.value)


def test_nothing_is_told_where_the_quoted_way_is_the_least(tmp_path: Path) -> None:
    """With the belt approved too, Stonegarth's 184.00 is the least."""
    desk, job = declined_belt(tmp_path)
    record(desk, job, Spoken(yes=("A",), who="Maud Tilbrook", how="telephone", instead=True))
    assert look_at_orders(desk, [job]).otherwise == ()


def test_a_sooner_day_is_not_given_up_for_the_price(tmp_path: Path) -> None:
    """Wanted by March 4, Pellbrook's day is too late: nothing is told of him."""
    desk, job = declined_belt(tmp_path)
    change_job_from(desk, job, job_file(tmp_path, "need_by = 2026-03-04\n" + IDLERS + BELT_FOUND))
    seen = look_at_orders(desk, [job])
    assert seen.orders[0].need_by == date(2026, 3, 4) and seen.otherwise == ()


def test_freight_that_nobody_is_billed_for_is_told(tmp_path: Path) -> None:
    """Carried, and free when it was quoted: now the line bears 14.95 that stands on no bill."""
    desk, job = declined_belt(tmp_path, "carried")
    assert look_at_orders(desk, [job]).otherwise[-1] == (
        f"job {job}: line 1 bears 14.95 USD of freight and fees, the quote counted 0.00 USD; nobody is billed for "
        "14.95 USD of it"
    )


def test_freight_that_is_billed_is_not_told(tmp_path: Path) -> None:
    """Billed, line 2 of the quote is the freight of the agreed work alone, 14.95: that is what the order bears."""
    desk, job = declined_belt(tmp_path)
    assert not any("nobody is billed" in words for words in look_at_orders(desk, [job]).otherwise)
