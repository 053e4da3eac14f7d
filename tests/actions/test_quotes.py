"""Writing a quote in a shop: whose plan, what the owner is told first, what a new revision would change."""

import re
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import place_orders
from sourcing.actions.quote_owner import owners_quote
from sourcing.actions.quotes import check_quote, write_quote
from sourcing.actions.setup import set_up
from sourcing.basics.alarm import Decision, Way
from sourcing.basics.problem import Refused
from sourcing.basics.quote import Quote
from sourcing.storage.after_quote import add_decision
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, desk_at, job_file, sheet, shop, take_in

MONDAY = datetime(2026, 3, 2, 10, 15)
AFTERNOON = datetime(2026, 3, 2, 14, 40)
BELT = "NW-77120,Norrowby,Belt B88,189.50,126.90,5,In stock"
RISEN = "NW-77120,Norrowby,Belt B88,208.45,139.59,5,In stock"
KEEPER = "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"
IDLER = "NW-22203,Norrowby,Idler,39.95,22.50,5,In stock"
BELT_LINE = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
KEEPERS = '[[add_ons]]\ntitle = "Keepers"\npart = "KEEPER"\nquantity = 2\nhours = 0.3\n'
THREE = """
need_by = 2026-03-05
[[agreed]]
title = "Belt"
part = "BELT"
quantity = 1
hours = 1.8
[[agreed]]
title = "Keepers"
part = "KEEPER"
quantity = 2
[[agreed]]
title = "Idler"
part = "IDLER"
quantity = 1
"""


def paper(quote: Quote) -> str:
    """A paper that is good enough to freeze."""
    return f"{quote.job} {quote.revision} {quote.everything_total.total}"


def settle(desk: Desk, folder: Path, old: str = "", new: str = "", **files: str) -> None:
    """Edit shop.toml and suppliers.toml and set the shop up again."""
    text = files.get("shop", SHOP)
    assert old in text
    (folder / "shop.toml").write_text(text.replace(old, new, 1))
    (folder / "suppliers.toml").write_text(files.get("suppliers", SUPPLIERS))
    set_up(desk, folder)


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
    """Together the order is sent free; with the add-on declined it costs 14.95, and that is what the agreed pay."""
    desk = shop(tmp_path, MONDAY)
    bar = "NW-52626,Norrowby,Bar,109.00,64.00,5,In stock"
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT, bar])
    number = take_in(desk, tmp_path, BELT_LINE + '[[add_ons]]\ntitle = "Bar"\npart = "BAR"\nquantity = 1\n')
    written = write_quote(desk, number, paper)
    freight = {line.label: line.freight_price for line in written.frozen.quote.lines if line.freight_price.amount}
    assert freight == {"2": usd("14.95")}
    assert written.warnings == (
        "with every add-on the inbound freight would be 0.00 USD, and 14.95 USD is billed for the agreed lines",
    )


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


def decided(desk: Desk, number: str, way: Way, **fields: object) -> None:
    """Greta Lindqvare's word on line 1."""
    values = {"job": number, "revision": 1, "label": "1", "way": way, "at": desk.at, "who": "Greta Lindqvare"}
    with desk.writing("decide") as pen:
        add_decision(pen.connection, Decision(**{**values, **fields}))  # type: ignore[arg-type]


def risen(folder: Path) -> tuple[Desk, str]:
    """The belt quoted at 357.29 on Monday; on Tuesday it is 139.59 there, and 131.00 under another number elsewhere."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", [BELT])
    number = take_in(desk, folder, BELT_LINE)
    assert write_quote(desk, number, paper).frozen.quote.agreed_total.total == usd("357.29")
    tuesday = desk_at(folder, datetime(2026, 3, 3, 10, 15))
    sheet(tuesday, folder, "stonegarth", "2026-03-03", [RISEN])
    return tuesday, number


def test_check_says_what_a_new_revision_would_change_and_keeps_nothing(tmp_path: Path) -> None:
    """The price rose: 357.29 to 376.31; no deed, no revision."""
    desk, number = risen(tmp_path)
    before = len(history(desk, number))
    found = check_quote(desk, number)
    assert not found.same and found.now.agreed_total.total == usd("376.31")
    assert any("376.31" in words and "357.29" in words for words in found.changes)
    assert len(history(desk, number)) == before
    assert write_quote(desk, number, paper).frozen.quote.revision == 2
    assert check_quote(desk, number).same and check_quote(desk, number).changes == ()


def test_a_held_price_goes_into_the_next_revision(tmp_path: Path) -> None:
    """Held up to goods of 139.59: 357.29 again, and the owner sees what it earns now: 38.07, 19.77 %."""
    desk, number = risen(tmp_path)
    decided(desk, number, "hold", held_price=usd("177.66"), up_to_cost=usd("139.59"))
    settle(desk, tmp_path, "[shop]", "margin_floor_percent = 28\n[shop]", shop=SHOP)
    written = write_quote(desk, number, paper)
    assert written.frozen.quote.agreed_total.total == usd("357.29")
    assert "parts with freight: margin 19.77 % on price, markup 24.63 % on cost; under the floor" in written.warnings[1]
    assert "1 Belt: the price of 177.66 USD is held; by the bands it would be 195.43: 139.59 x 1.40" in written.warnings


def test_a_decision_about_another_part_holds_nothing(tmp_path: Path) -> None:
    """Line 1 asks for an idler now: the belt's held price is not the idler's."""
    desk, number = risen(tmp_path)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", [IDLER])
    decided(desk, number, "hold", held_price=usd("177.66"))
    idler = BELT_LINE.replace("Belt", "Idler").replace("BELT", "IDLER")
    change_job_from(desk, number, job_file(tmp_path, idler))
    assert check_quote(desk, number).now.lines[0].unit_price == usd("38.25")


def test_a_switch_pins_supplier_and_number_though_another_is_cheaper(tmp_path: Path) -> None:
    """Pellbrook's CV-B880K at the approved price, though Larkmoor would be cheaper."""
    desk, number = risen(tmp_path)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", ["CV-B880K,Corrivane,Belt B88,199.00,131.00,5,In stock"])
    sheet(desk, tmp_path, "larkmoor", "2026-03-03", ["OV-20417,Ostrevik,Belt B88,150.00,60.00,5,In stock"])
    pinned = {"supplier": "pellbrook", "supplier_number": "CV-B880K"}
    decided(desk, number, "switch", held_price=usd("177.66"), up_to_cost=usd("131.00"), **pinned)
    line = check_quote(desk, number).now.lines[0]
    assert line.behind is not None and (line.number, line.unit_price) == ("Corrivane CV-B880K", usd("177.66"))
    assert line.behind.cost == usd("140.95") and line.behind.held


def test_a_held_price_keeps_the_number_that_was_approved(tmp_path: Path) -> None:
    """Larkmoor's belt under another number would be cheaper: the price is held for the number she said yes to."""
    desk, number = risen(tmp_path)
    sheet(desk, tmp_path, "larkmoor", "2026-03-03", ["OV-20417,Ostrevik,Belt B88,150.00,60.00,5,In stock"])
    assert check_quote(desk, number).now.lines[0].number == "Ostrevik OV-20417"
    quoted = {"supplier": "stonegarth", "supplier_number": "NW-77120"}
    decided(desk, number, "hold", held_price=usd("177.66"), up_to_cost=usd("139.59"), **quoted)
    line = check_quote(desk, number).now.lines[0]
    assert (line.number, line.unit_price) == ("Norrowby NW-77120", usd("177.66"))


def test_a_switch_to_what_is_gone_is_refused_with_the_reason(tmp_path: Path) -> None:
    """Nothing else is bought in its place."""
    desk, number = risen(tmp_path)
    decided(desk, number, "switch", supplier="pellbrook", supplier_number="CV-B880K", held_price=usd("177.66"))
    words = "line 1 of job 2026-0001 is to come from Pellbrook Power Parts under CV-B880K, as decided, but it can't be"
    with pytest.raises(Refused, match=f"{words} had now: it is not on the newest sheet"):
        write_quote(desk, number, paper)


def test_what_is_ordered_is_not_planned_or_priced_anew(tmp_path: Path) -> None:
    """The belt is on order at 126.90; the sheet rises; keepers found since are quoted beside the belt as approved."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT, KEEPER])
    number = take_in(desk, tmp_path, BELT_LINE)
    first = write_quote(desk, number, paper).frozen.quote
    said = Spoken(yes=("agreed",), who="Maud Tilbrook", how="telephone", contact="555-0142")
    record(desk, number, said)
    place_orders(desk, [number])
    tuesday = desk_at(tmp_path, datetime(2026, 3, 3, 10, 15))
    sheet(tuesday, tmp_path, "stonegarth", "2026-03-03", [RISEN, KEEPER])
    change_job_from(tuesday, number, job_file(tmp_path, BELT_LINE + KEEPERS))
    second = write_quote(tuesday, number, paper).frozen.quote
    assert second.agreed_total.total == first.agreed_total.total == usd("357.29")
    assert second.lines[0] == first.lines[0]
    assert [(line.label, line.price) for line in second.lines[2:]] == [("A", usd("54.40")), ("B", usd("14.95"))]
    fewer = KEEPERS.replace("quantity = 2", "quantity = 1")
    change_job_from(tuesday, number, job_file(tmp_path, BELT_LINE.replace("quantity = 1", "quantity = 2") + fewer))
    assert "1 Belt: 1 ordered already, the job asks for 2 now" in check_quote(tuesday, number).warnings


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


@pytest.mark.parametrize(
    ("body", "words"),
    [
        ('fees = [{ name = "Pick-up", amount = 0 }]\n', "'fees.1.amount' is 0; leave the fee out"),
        ('fees = [{ name = " ", amount = 1 }]\n', "'fees.1.name' is blank"),
        ('fees = [{ name = "Pick-up", amount = 1.005 }]\n', "'fees.1.amount' is 1.005, finer than the smallest coin"),
        ("ready_by = 2026-03-01\n", "'ready_by' is 2026-03-01, before the machine came on 2026-03-02"),
        ("need_by = 2026-03-09\nready_by = 2026-03-06\n", "'need_by' is 2026-03-09, after the machine is to be ready"),
        ('findings = [{ what = "" }]\n', "'findings.1.what' is blank"),
        ('findings = [{ what = "Bent", photos = ["a.jpg", "a.jpg"] }]\n', "'findings.1.photos.2' is 'a.jpg' a second"),
    ],
)
def test_what_cannot_hold_in_a_job_file_is_told_with_its_place(tmp_path: Path, body: str, words: str) -> None:
    """File, field, and what is wrong; nothing is kept."""
    desk = shop(tmp_path, MONDAY)
    with pytest.raises(Refused, match=re.escape(f"job.toml: {words}")):
        take_in(desk, tmp_path, body + BELT_LINE)
    assert not [one for one in history(desk, None) if one.deed == "take in job"]


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ("labour_rate = 90\nlabour_flat = 10\n", "job.toml: the job can't hold: 'Look' has both a labour rate and"),
        ("labour_rate = 90\n", "job.toml: 'agreed.1.labour_rate' is given, but no hours are"),
        ("special_order = true\n", "job.toml: 'agreed.1.special_order' is given, but the line has no part"),
        ('category = "belts"\n', "job.toml: 'agreed.1.category' is given, but the line has no part"),
        ("labour_flat = 10.001\n", "job.toml: 'agreed.1.labour_flat' is 10.001, finer than the smallest coin, 0.01"),
    ],
)
def test_what_cannot_hold_in_a_line_is_told_with_its_place(tmp_path: Path, more: str, words: str) -> None:
    """The same for a line without a part."""
    desk = shop(tmp_path, MONDAY)
    with pytest.raises(Refused, match=re.escape(words)):
        take_in(desk, tmp_path, f'[[agreed]]\ntitle = "Look"\n{more}')


def test_tax_free_customers_need_their_words_and_words_need_the_customer(tmp_path: Path) -> None:
    """Each without the other is a question."""
    desk = shop(tmp_path, MONDAY)
    for fields, words in (
        ("tax_exempt = true", "'customer.exempt_because' is blank, but tax_exempt is true"),
        ('exempt_because = "certificate 88-2"', "'customer.exempt_because' is given, but tax_exempt is not true"),
    ):
        path = job_file(tmp_path, BELT_LINE)
        path.write_text(path.read_text().replace("[customer]\n", f"[customer]\n{fields}\n"))
        with pytest.raises(Refused, match=re.escape(f"job.toml: {words}")):
            change_job_from(desk, take_in_plain(desk, tmp_path), path)


def take_in_plain(desk: Desk, folder: Path) -> str:
    """A job that is there, from a file of its own."""
    other = folder / "plain"
    other.mkdir(exist_ok=True)
    return take_in(desk, other, BELT_LINE)


def test_figures_are_exact_decimals_all_the_way(tmp_path: Path) -> None:
    """No price of a line has a trace of a binary fraction."""
    desk, number = two_dealers(tmp_path)
    for line in write_quote(desk, number, paper).frozen.quote.lines:
        assert line.price.amount == line.price.amount.quantize(Decimal("0.01"))
