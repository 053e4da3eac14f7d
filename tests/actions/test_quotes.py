"""Writing a quote in a shop: whose plan, what the owner is told first, figures explained."""

from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.actions.quote_owner import owners_quote
from sourcing.actions.quotes import check_quote, write_quote
from sourcing.basics.problem import Refused
from tests.actions.quoted_shop import (
    AFTERNOON,
    BELT,
    BELT_LINE,
    IDLER,
    KEEPER,
    KEEPERS,
    MONDAY,
    THREE,
    paper,
    settle,
)
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, job_file, sheet, shop, take_in


def two_dealers(folder: Path) -> tuple[Desk, str]:
    """Belt, two keepers and an idler at two dealers: S02's day."""
    desk = shop(folder, AFTERNOON)
    stonegarth = ["NW-77120,Norrowby,Belt B88,195.00,128.00,5,In stock", KEEPER, IDLER]
    pellbrook = [
        "NW-77120,Norrowby,Belt B88,189.00,119.50,5,In stock",
        "NW-31207,Norrowby,Keeper,12.00,5.10,50,In stock",
        "NW-22203,Norrowby,Idler,44.00,24.75,5,In stock",
    ]
    sheet(desk, folder, "stonegarth", "2026-03-01", stonegarth)
    sheet(desk, folder, "pellbrook", "2026-03-01", pellbrook)
    return desk, take_in(desk, folder, THREE)


def test_the_owner_sees_that_the_customer_would_pay_less_elsewhere(tmp_path: Path) -> None:
    """The shop's cheapest is quoted at 441.50; the other is 3.55 less and earns 75.33 against 79.75."""
    desk, number = two_dealers(tmp_path)
    written = write_quote(desk, number, paper)
    assert written.frozen.quote.agreed_total.total == usd("441.50")
    (note,) = written.notes
    assert note == (
        "the customer would pay least with everything from Pellbrook Power Parts: 437.95 USD with tax against 441.50 "
        "USD, 3.55 USD less; parts would earn 75.33 USD (margin 31.42 % on price, markup 45.82 % on cost) against "
        "79.75 USD (margin 32.81 % on price, markup 48.84 % on cost); to quote that: --plan customer"
    )


def test_she_lets_the_customer_pay_least_and_it_stays_so_until_she_says_otherwise(tmp_path: Path) -> None:
    """437.95 as revision 2; the next look does not fall back; --plan shop does."""
    desk, number = two_dealers(tmp_path)
    write_quote(desk, number, paper)
    hers = write_quote(desk, number, paper, plan_for="customer")
    assert hers.is_new and hers.frozen.quote.agreed_total.total == usd("437.95")
    assert {line.behind.supplier for line in hers.frozen.quote.lines if line.behind} == {"pellbrook"}
    assert "as the customer pays least" in hers.notes[0]
    assert not write_quote(desk, number, paper).is_new
    assert write_quote(desk, number, paper, plan_for="shop").frozen.quote.agreed_total.total == usd("441.50")
    assert "the customer pays least" in [one.detail for one in history(desk, number)][2]


def test_where_the_shops_plan_is_the_customers_too_nothing_is_said(tmp_path: Path) -> None:
    """One dealer only."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    written = write_quote(desk, take_in(desk, tmp_path, BELT_LINE), paper)
    assert written.notes == () and written.frozen.quote.plan_for == "shop"


def test_margins_under_the_floor_are_told_with_both_words(tmp_path: Path) -> None:
    """126.90 sold at 177.66 earns 50.76: margin 28.57 %, markup 40.00 %; with freight 26.35 % and 35.78 %."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, BELT_LINE)
    settle(desk, tmp_path, "[shop]", "margin_floor_percent = 28.57\n[shop]", shop=SHOP)
    told = write_quote(desk, number, paper).warnings
    assert told == (
        "agreed lines alone, parts with freight: margin 26.35 % on price, markup 35.78 % on cost; under the floor of "
        "28.57 % on price",
    )
    settle(desk, tmp_path, "[shop]", "margin_floor_percent = 28.58\n[shop]", shop=SHOP)
    told = check_quote(desk, number).warnings
    assert told[0].startswith("1 Belt: margin 28.57 % on price, markup 40.00 % on cost; under the floor of 28.58 %")


def test_words_for_the_owner_make_no_new_revision(tmp_path: Path) -> None:
    """A raised floor and another sheet with the same price change nothing for the customer; the owner is told all the
    same."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, BELT_LINE)
    assert not write_quote(desk, number, paper).warnings
    settle(desk, tmp_path, "[shop]", "margin_floor_percent = 40\n[shop]", shop=SHOP)
    sheet(desk, tmp_path, "stonegarth", "2026-03-02", [BELT])
    again = write_quote(desk, number, paper)
    assert not again.is_new and again.frozen.quote.revision == 1 and len(again.warnings) == 2


def test_freight_that_is_carried_and_add_ons_that_do_not_bear_theirs(tmp_path: Path) -> None:
    """Keepers earn 12.80; alone from Stonegarth they cost 14.95 of freight."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [KEEPER])
    sheet(desk, tmp_path, "pellbrook", "2026-03-01", ["CV-B880K,Corrivane,Belt B88,109.00,71.25,2,In stock"])
    number = take_in(desk, tmp_path, 'freight_to_customer = "carried"\n' + BELT_LINE + KEEPERS)
    told = write_quote(desk, number, paper).warnings
    assert told == (
        "A Keepers: margin -8.40 % on price, markup -7.75 % on cost; under the floor of 0 % on price",
        "inbound freight of 24.90 USD is carried: it comes out of the markup",
        "A Keepers alone earns 12.80 USD before its freight of 14.95 USD: a loss by itself",
    )
    billed = change_job_from(desk, number, job_file(tmp_path, BELT_LINE + KEEPERS.replace("= 2", "= 1")))
    assert billed.freight_to_customer == ""
    told = check_quote(desk, number).warnings
    assert told == ("A Keepers alone costs 14.95 USD of freight, more than the part's 12.80 USD",)


def test_agreed_freight_is_that_of_the_quoted_orders_alone(tmp_path: Path) -> None:
    """With the add-on declined it costs 14.95, and that is what the agreed pay; together the order is sent free, and
    then nothing of it is counted."""
    desk = shop(tmp_path, MONDAY)
    bar = "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock"
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT, bar])
    number = take_in(desk, tmp_path, BELT_LINE + '[[add_ons]]\ntitle = "Bar"\npart = "BAR"\nquantity = 1\n')
    written = write_quote(desk, number, paper)
    freight = {line.label: line.freight_price for line in written.frozen.quote.lines if line.freight_price.amount}
    assert freight == {"2": usd("14.95")}
    assert written.warnings == ()
    quote = written.frozen.quote
    assert dict(quote.agreed_total.sums)["freight"] == usd("14.95")
    assert dict(quote.everything_total.sums)["freight"] == usd("0.00")


def test_a_price_that_ends_before_the_quote_is_told(tmp_path: Path) -> None:
    """The sheet of 1 March holds 5 days, to the 6th; the quote binds the shop to the 9th. A day later all is well."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, BELT_LINE)
    for days, told in ((7, 1), (8, 0)):
        held = SUPPLIERS.replace("transit_days = [2, 2]", f"transit_days = [2, 2]\nprices_hold_days = {days}", 1)
        settle(desk, tmp_path, suppliers=held)
        found = check_quote(desk, number).warnings
        assert len(found) == told
        assert all("holds until 2026-03-08, the quote until 2026-03-09" in words for words in found)


def test_a_machine_that_is_to_be_ready_before_its_parts(tmp_path: Path) -> None:
    """The parts come on 4 March, the day the customer wants the machine."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, "ready_by = 2026-03-04\n" + BELT_LINE)
    (told,) = write_quote(desk, number, paper).warnings
    assert told == "the parts may come as late as 2026-03-04, the machine is to be ready on 2026-03-04"


def test_the_owners_look_at_a_kept_revision(tmp_path: Path) -> None:
    """Supplier by name, margin and markup of the part without the freight billed apart, and figures explained."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, tmp_path, BELT_LINE)
    with pytest.raises(Refused, match="has no quote"):
        owners_quote(desk, number)
    write_quote(desk, number, paper)
    found = owners_quote(desk, number)
    (line,) = found.lines
    assert (line.supplier_name, line.supplier_number) == ("Stonegarth Trade Parts", "NW-77120")
    assert (line.margin.cost, line.margin.earned) == (usd("126.90"), usd("50.76"))
    assert (found.agreed.cost, found.agreed.earned) == (usd("141.85"), usd("50.76"))
    assert {one.figure: one.amount for one in found.explained}["agreed work, with tax"] == usd("357.29")


def test_figures_are_exact_decimals_all_the_way(tmp_path: Path) -> None:
    """No price of a line has a trace of a binary fraction."""
    desk, number = two_dealers(tmp_path)
    for line in write_quote(desk, number, paper).frozen.quote.lines:
        assert line.price.amount == line.price.amount.quantize(Decimal("0.01"))
