"""Revisions after something changed: what a new one would change, prices held, offers pinned, lines on order."""

from datetime import date, datetime
from pathlib import Path

import pytest

from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.jobs import change_job_from
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import check_quote, write_quote
from sourcing.actions.setup import set_up
from sourcing.basics.alarm import Decision, Way
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.after_quote import add_decision
from tests.actions.quoted_shop import (
    BELT,
    BELT_LINE,
    IDLER,
    KEEPER,
    KEEPERS,
    MONDAY,
    RISEN,
    paper,
    settle,
)
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, desk_at, job_file, sheet, shop, take_in


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
    words = "line 1 of job 2026-0001 is to come from Pellbrook Power Parts under CV-B880K, as decided, but can't be"
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
    assert changed(second.lines[0], answered=None) == first.lines[0]
    assert [(line.label, line.price) for line in second.lines[2:]] == [("A", usd("54.40")), ("B", usd("14.95"))]
    fewer = KEEPERS.replace("quantity = 2", "quantity = 1")
    change_job_from(tuesday, number, job_file(tmp_path, BELT_LINE.replace("quantity = 1", "quantity = 2") + fewer))
    assert "1 Belt: 1 ordered already, the job asks for 2 now" in check_quote(tuesday, number).warnings


OTHER_BELT = "CV-B880K,Corrivane,Belt B88,150.00,100.00,5,In stock"


def approved_then_cheaper(folder: Path) -> tuple[Desk, str]:
    """The belt is approved as Stonegarth's NW-77120; on Tuesday Pellbrook sells another for less."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", [BELT, KEEPER])
    number = take_in(desk, folder, BELT_LINE)
    write_quote(desk, number, paper)
    record(desk, number, Spoken(yes=("agreed",), who="Maud Tilbrook", how="telephone", contact="555-0142"))
    tuesday = desk_at(folder, datetime(2026, 3, 3, 10, 15))
    sheet(tuesday, folder, "pellbrook", "2026-03-03", [OTHER_BELT])
    change_job_from(tuesday, number, job_file(folder, BELT_LINE + KEEPERS))
    return tuesday, number


def test_what_is_approved_keeps_its_number_though_another_is_cheaper_now(tmp_path: Path) -> None:
    """She need not be asked again for the belt; --plan shop buys anew."""
    desk, number = approved_then_cheaper(tmp_path)
    kept = check_quote(desk, number).now
    assert (kept.lines[0].number, kept.lines[0].unit_price) == ("Norrowby NW-77120", usd("177.66"))
    assert kept.line("A") is not None
    assert check_quote(desk, number, plan_for="shop").now.lines[0].number == "Corrivane CV-B880K"


def test_a_price_over_what_was_approved_is_told_unless_the_shop_tolerates_it(tmp_path: Path) -> None:
    """The belt rose from 177.66 to 195.43, 17.77 more: so much tolerance keeps it, a cent less buys anew and tells."""
    desk, number = approved_then_cheaper(tmp_path)
    sheet(desk, tmp_path, "stonegarth", "2026-03-03", [RISEN, KEEPER])
    for amount, bought in (("17.76", "Corrivane CV-B880K"), ("17.77", "Norrowby NW-77120")):
        settle(desk, tmp_path, "[shop]", f"tolerance = {{ amount = {amount} }}\n[shop]", shop=SHOP)
        assert check_quote(desk, number).now.lines[0].number == bought
    sheet(desk, tmp_path, "pellbrook", "2026-03-04", [KEEPER])
    later = desk_at(tmp_path, datetime(2026, 3, 4, 9, 0))
    told = "1 Belt: approved at 321.66 USD, now 339.43 USD before tax: a new question to the customer"
    for amount, asked in (("17.76", True), ("17.77", False)):
        settle(later, tmp_path, "[shop]", f"tolerance = {{ amount = {amount} }}\n[shop]", shop=SHOP)
        assert (told in check_quote(later, number).warnings) is asked


def test_what_was_approved_for_less_is_bought_where_it_is_cheapest(tmp_path: Path) -> None:
    """The approved belt rose, so she must be asked anyway: the cheaper one is offered."""
    desk, number = approved_then_cheaper(tmp_path)
    assert not any("a new question" in words for words in check_quote(desk, number).warnings)
    sheet(desk, tmp_path, "stonegarth", "2026-03-03", [RISEN, KEEPER])
    found = check_quote(desk, number)
    assert found.now.lines[0].number == "Corrivane CV-B880K"
    told = "1 Belt: approved as Norrowby NW-77120, now Corrivane CV-B880K: a new question to the customer"
    assert told in found.warnings


def test_what_is_approved_and_would_come_too_late_is_not_kept(tmp_path: Path) -> None:
    """Wanted by the 5th, Stonegarth's cut-off of Tuesday is past: Pellbrook's belt is here in time."""
    desk, number = approved_then_cheaper(tmp_path)
    keeper = "NW-31207,Norrowby,Keeper,12.00,5.10,50,In stock"
    sheet(desk, tmp_path, "pellbrook", "2026-03-04", [OTHER_BELT, keeper])
    late = desk_at(tmp_path, datetime(2026, 3, 4, 14, 30))
    assert check_quote(late, number).now.lines[0].number == "Norrowby NW-77120"
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS.replace("transit_days = [2, 2]", "transit_days = [5, 5]", 1))
    set_up(late, tmp_path)
    found = check_quote(late, number, need_by=date(2026, 3, 9)).now
    assert found.lines[0].number == "Corrivane CV-B880K"
