"""Alarms over the shop's database: what is looked at, what it costs for the whole job, and what is never offered."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record, standing
from sourcing.actions.decide import Agreed, decide
from sourcing.actions.desk import Desk
from sourcing.actions.order_changes import Confirmation, cancel, confirm
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.setup import set_up
from sourcing.actions.terms import set_terms
from sourcing.basics.order import LineEvent
from sourcing.basics.part_number import PartNumber
from sourcing.basics.problem import Refused
from sourcing.storage.after_quote import decisions
from tests.builders import usd
from tests.journeys.small_shop import SHOP, desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import paper, yes

MONDAY, TUESDAY = datetime(2026, 3, 2, 10, 0), datetime(2026, 3, 3, 9, 0)
LINES = """
ready_by = 2026-03-20
[[agreed]]
title = "Belt"
part = "BELT"
quantity = 1
[[agreed]]
title = "Keepers"
part = "KEEPER"
quantity = 2
"""
BELT = "NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock"
KEEPER = "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"
ELSEWHERE = "CV-B880K,Corrivane,Belt B88,199.00,131.00,2,In stock"


def approved(folder: Path, lines: str = LINES, *rows: str) -> tuple[Desk, str]:
    """Belt and keepers quoted at Stonegarth and approved on Monday; the job's number."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", rows or (BELT, KEEPER))
    number = take_in(desk, folder, lines)
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    return desk, number


def tuesday(folder: Path, *rows: str, supplier: str = "stonegarth") -> Desk:
    """Tuesday with a new sheet of that supplier."""
    desk = desk_at(folder, TUESDAY)
    sheet(desk, folder, supplier, "2026-03-03", rows)
    return desk


def test_the_whole_jobs_cost_is_worked_out_anew_in_each_way(tmp_path: Path) -> None:
    """Belt 139.59 and keepers 12.80 pass free freight at 152.39; without the belt the keepers pay 14.95 themselves."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", [ELSEWHERE])
    (alarm,) = alarms(desk, number)
    hold, _, switch = alarm.ways
    assert alarm.label == "1"
    assert hold.margin is not None and hold.margin.cost == usd("152.39")
    assert switch.margin is not None and switch.margin.cost == usd("131.00") + usd("9.95") + usd("12.80") + usd("14.95")


def test_bands_changed_after_the_order_raise_no_alarm(tmp_path: Path) -> None:
    """Before the order the new price is told; placed and partly here, nothing is left to decide."""
    _, number = approved(tmp_path)
    bands = SHOP.replace("multiplier = 1.40", "multiplier = 1.45").replace("multiplier = 2.00", "multiplier = 2.05")
    (tmp_path / "shop.toml").write_text(bands)
    later = desk_at(tmp_path, TUESDAY)
    set_up(later, tmp_path)
    assert [one.label for one in alarms(later, number)] == ["1", "2"]
    (tmp_path / "shop.toml").write_text(SHOP)
    set_up(later, tmp_path)
    (order,) = place_orders(later, [number]).orders
    receive(later, order.number, Delivery(paper="D-1", freight=Decimal("14.95"), quantities={2: 1}))
    (tmp_path / "shop.toml").write_text(bands)
    set_up(later, tmp_path)
    assert alarms(later, number) == ()


def test_an_offer_that_is_gone_can_not_be_held(tmp_path: Path) -> None:
    """The sheet no longer has it: told with the reason; asked and switched is the other one, with its number."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, KEEPER)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", [ELSEWHERE])
    (alarm,) = alarms(desk, number)
    hold, ask, switch = alarm.ways
    assert [one.what for one in alarm.differs] == ["gone"]
    assert "not on the newest sheet of Stonegarth Trade Parts" in hold.why_not
    assert (ask.supplier, switch.supplier) == ("pellbrook", "pellbrook")
    with pytest.raises(Refused, match="can't be settled by 'hold'"):
        decide(desk, number, "1", "hold")


def test_with_nobody_else_to_buy_from_the_way_is_closed(tmp_path: Path) -> None:
    """And where the offer is gone too, no way shows a figure; other lines' margins are not made up either."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, KEEPER.replace("6.40", "7.00"))
    belt, keepers = alarms(desk, number)
    assert all(way.why_not and way.margin is None for way in belt.ways)
    assert keepers.ways[0].margin is None
    assert keepers.ways[0].notes == ("no margin is shown: line 1 can't be had as quoted",)


def test_a_candidate_is_never_offered_as_a_switch(tmp_path: Path) -> None:
    """An unverified number is cheaper, and is not what a person of the shop has vouched for."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", ["DM-15880,Dunmarrow,Belt B88,24.99,18.60,9,In stock"])
    (alarm,) = alarms(desk, number)
    assert alarm.ways[2].why_not == "nobody else has it in good standing today"


def test_the_same_number_elsewhere_needs_no_question(tmp_path: Path) -> None:
    """It is the number she approved, at the price she approved, in time."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", [BELT.replace("126.90", "128.00")])
    (alarm,) = alarms(desk, number)
    assert alarm.ways[2].asks == "" and alarm.ways[2].why_not == ""


def test_in_time_comes_before_cheaper(tmp_path: Path) -> None:
    """Larkmoor is dearer with the drive and has it today; Pellbrook's comes after the day approved."""
    _, number = approved(tmp_path, LINES.replace("2026-03-20", "2026-03-05"))
    desk = tuesday(tmp_path, KEEPER)
    sheet(desk, tmp_path, "pellbrook", "2026-03-03", [ELSEWHERE])
    sheet(desk, tmp_path, "larkmoor", "2026-03-03", ["OV-20417,Ostrevik,Belt B88,184.99,118.40,2,In stock"])
    belt = alarms(desk, number)[0]
    assert belt.ways[2].supplier == "larkmoor"


def test_a_sheet_of_today_is_no_alarm_for_what_is_ordered(tmp_path: Path) -> None:
    """Only the supplier's word changes an order; a cancelled line is looked at as not ordered again."""
    desk, number = approved(tmp_path)
    (order,) = place_orders(desk, [number]).orders
    late = tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)
    assert alarms(late, number) == ()
    cancel(late, order.number, [1])
    (alarm,) = alarms(late, number)
    assert (alarm.order, alarm.order_line, alarm.differs[0].what) == ("", None, "price")


def test_another_number_confirmed_needs_her_yes(tmp_path: Path) -> None:
    """Holding the price is open, and asks; without a name the alarm stays, with it that number is covered."""
    desk, number = approved(tmp_path)
    (order,) = place_orders(desk, [number]).orders
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, number="NW-77121"),)))
    (alarm,) = alarms(desk, number)
    assert [one.words for one in alarm.differs] == ["approved was Norrowby NW-77120, now it is NW-77121"]
    assert alarm.ways[0].asks == "May we fit NW-77121 instead of Norrowby NW-77120, same price?"
    assert "Ask the customer" in decide(desk, number, "1", "hold").next_steps[0]
    assert len(alarms(desk, number)) == 1
    kept = decide(desk, number, "1", "hold", "", Agreed(who="Maud Tilbrook", how="in person")).decision
    assert (kept.number, kept.agreed_by, kept.agreed_how) == ("NW-77121", "Maud Tilbrook", "in person")
    assert alarms(desk, number) == ()
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, number="NW-77122"),)))
    assert len(alarms(desk, number)) == 1


def test_what_came_under_another_number_is_told_before_it_is_fitted(tmp_path: Path) -> None:
    """Another maker's number of the same part: it came, so it can't be switched, and she is asked."""
    desk, number = approved(tmp_path)
    (order,) = place_orders(desk, [number]).orders
    other = PartNumber(printed="OV-20417", maker="Ostrevik")
    receive(desk, order.number, Delivery(paper="D-1", freight=Decimal(0), numbers={1: other}))
    (alarm,) = alarms(desk, number)
    assert alarm.differs[0].now == "OV-20417"
    assert alarm.ways[2].why_not == "1 of it came already"


def test_all_jobs_are_looked_at_and_an_unknown_one_is_refused(tmp_path: Path) -> None:
    """Two jobs, one alarm each; a job without a quote has none."""
    desk, first = approved(tmp_path)
    second = take_in(desk, tmp_path, LINES)
    write_quote(desk, second, paper)
    record(desk, second, yes("agreed"))
    take_in(desk, tmp_path, LINES)
    late = tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)
    assert [one.job for one in alarms(late)] == [first, second]
    with pytest.raises(Refused):
        alarms(late, "2026-0099")


def test_a_line_nobody_approved_is_no_alarm(tmp_path: Path) -> None:
    """There is no yes that could cover less."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", [BELT, KEEPER])
    write_quote(desk, take_in(desk, tmp_path, LINES), paper)
    assert alarms(tuesday(tmp_path, BELT.replace("126.90", "139.59"), KEEPER)) == ()


def test_a_refused_decision_keeps_nothing(tmp_path: Path) -> None:
    """All or nothing: no decision, no deed, the order as it was."""
    desk, number = approved(tmp_path)
    (order,) = place_orders(desk, [number]).orders
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, latest=date(2026, 4, 1)),)))
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", [ELSEWHERE])
    with pytest.raises(Refused):
        decide(desk, number, "1", "switch", "", Agreed(who="somebody", how="telephone"))
    with desk.store.reading() as connection:
        assert decisions(connection, number) == []
    assert alarms(desk, number)[0].order == order.number


def test_lost_free_freight_is_in_the_cost_of_switching(tmp_path: Path) -> None:
    """Nothing of the order has come: without the belt the keepers' 12.80 pay 14.95 freight, which was free before."""
    _, number = approved(tmp_path, LINES, BELT.replace("126.90", "140.00"), KEEPER)
    desk = desk_at(tmp_path, MONDAY)
    (order,) = place_orders(desk, [number]).orders
    assert order.landed_total == usd("152.80")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", [ELSEWHERE])
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, latest=date(2026, 4, 1)),)))
    (alarm,) = alarms(desk, number)
    switch = alarm.ways[2]
    assert switch.margin is not None
    assert switch.margin.cost == usd("12.80") + usd("14.95") + usd("131.00") + usd("9.95")


def test_a_yes_carried_over_covers_the_day_she_was_told_and_no_later_one(tmp_path: Path) -> None:
    """The second revision names 1 April at the same price: her yes carries over, the day does not."""
    _, number = approved(tmp_path)
    desk = tuesday(tmp_path, BELT.replace("2,In stock", "0,Backorder until 2026-03-30"), KEEPER)
    new = write_quote(desk, number, paper).frozen.quote
    assert (new.revision, new.arrives) == (2, (date(2026, 4, 1), date(2026, 4, 1)))
    assert standing(desk, number).words()["1"] == "approved"
    (alarm,) = alarms(desk, number)
    told = "2026-03-19 (the customer's paper says the parts by 2026-03-04 and the machine by 2026-03-20)"
    assert [one.words for one in alarm.differs] == [f"approved was by {told}, now 2026-04-01: 13 days later"]
    with pytest.raises(Refused, match="it would be here by 2026-04-01, approved was by 2026-03-19"):
        place_orders(desk, [number], ["1"])
    record(desk, number, yes("1"))
    assert alarms(desk, number) == ()


def test_a_rate_that_is_gone_does_not_stop_the_list(tmp_path: Path) -> None:
    """A supplier whose prices can't be turned into the shop's currency today is told as gone, with the reason."""
    _, number = approved(tmp_path)
    set_terms(desk_at(tmp_path, TUESDAY), "stonegarth", {"currency": "CAD"})
    found = alarms(desk_at(tmp_path, TUESDAY), number)
    assert {one.what for alarm in found for one in alarm.differs} == {"gone"}


def test_a_day_past_what_was_quoted_and_wanted_is_no_longer_approved(tmp_path: Path) -> None:
    """Wanted by the 10th for a machine ready on the 20th: ordered on the 12th it is held; in time it stands."""
    _, number = approved(tmp_path, f"need_by = 2026-03-10\n{LINES}")
    desk = desk_at(tmp_path, datetime(2026, 3, 12, 9, 0))
    told = [differs.words for one in alarms(desk, number) for differs in one.differs]
    assert len(told) == 2 and all(words.startswith("approved was by 2026-03-10 (the customer") for words in told)
    assert all("), now 2026-03-1" in words for words in told)
    with pytest.raises(Refused):
        place_orders(desk, [number])
    place_orders(desk_at(tmp_path, TUESDAY), [number])
    assert alarms(desk_at(tmp_path, TUESDAY), number) == ()


def test_parts_for_a_machine_wanted_on_a_monday_are_approved_by_the_friday_before(tmp_path: Path) -> None:
    """The shop is closed in between, and her paper names no such day."""
    _, number = approved(tmp_path, LINES.replace("ready_by = 2026-03-20", "ready_by = 2026-03-23"))
    desk = tuesday(tmp_path, BELT.replace("2,In stock", "0,Backorder until 2026-03-30"), KEEPER)
    (alarm,) = alarms(desk, number)
    told = "2026-03-20 (the customer's paper says the parts by 2026-03-04 and the machine by 2026-03-23)"
    assert [one.words for one in alarm.differs] == [f"approved was by {told}, now 2026-04-01: 12 days later"]
    assert "would be here by 2026-04-01 instead of 2026-03-04" in alarm.ways[0].asks
