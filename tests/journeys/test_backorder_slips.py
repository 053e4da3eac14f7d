"""A backorder that slips twice: every day is kept, waiting and switching are weighed, nothing is decided by silence.

Ordered on Monday 2 March: belt 139.00 and bar 15.80, freight free. The bar comes on Wednesday, the belt is put off to
18 March, and on the 9th to 1 April. The customer wants her machine on the 6th and has paid half of the parts ahead.
"""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record, standing
from sourcing.actions.decide import Agreed, decide
from sourcing.actions.deposits import give_back, take_deposit
from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import one_order, place_orders
from sourcing.actions.promises import open_promises, promises_of
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.revisions import answer_record
from sourcing.actions.terms import set_terms
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from sourcing.basics.promise import OpenPromise
from sourcing.documents.authorisation import record_text
from tests.builders import usd
from tests.journeys.small_shop import desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import paper, yes
from tests.journeys.test_worked_waits import BAR, BELT, BELT_AND_BAR, CAME, ORDERED, OTHER_BELT, SENT_AS_READY, SLIPPED

AGREED = Agreed(who="Maud Tilbrook", how="telephone", contact="555-0142")
FIRST, SECOND, THIRD = date(2026, 3, 4), date(2026, 3, 18), date(2026, 4, 1)


def ordered(folder: Path) -> tuple[Desk, str, str]:
    """Belt and bar approved, half of the parts paid ahead, ordered at Stonegarth; job and order."""
    desk = shop(folder, ORDERED)
    set_terms(desk, "stonegarth", {f"split.{name}": found for name, found in SENT_AS_READY.items()})
    sheet(desk, folder, "stonegarth", "2026-03-01", [f"{BELT},2,In stock", BAR])
    sheet(desk, folder, "pellbrook", "2026-03-01", [OTHER_BELT])
    number = take_in(desk, folder, f"ready_by = 2026-03-06\n{BELT_AND_BAR}")
    write_quote(desk, number, paper)
    record(desk, number, yes("agreed"))
    take_deposit(desk, number, Decimal("113.10"), "card")
    (order,) = place_orders(desk, [number]).orders
    return desk, number, order.number


def put_off(desk: Desk, order: str, latest: date | None = None, earliest: date | None = None) -> None:
    """Stonegarth names another day for the belt."""
    line = next(one.line for one in one_order(desk, order).lines if one.part == "BELT")
    confirm(
        desk,
        order,
        Confirmation(
            lines=(LineEvent(line=line, latest=latest, earliest=earliest),), said_by="Stonegarth, by telephone"
        ),
    )


def slipped(folder: Path) -> tuple[Desk, str, str]:
    """Monday 9 March: the bar has come, the belt was put off twice."""
    _, number, order = ordered(folder)
    wednesday = desk_at(folder, CAME)
    bar = next(one.line for one in one_order(wednesday, order).lines if one.part == "BAR")
    receive(wednesday, order, Delivery(paper="L-1", freight=Decimal(0), quantities={bar: 1}))
    put_off(wednesday, order, latest=SECOND)
    monday = desk_at(folder, SLIPPED)
    put_off(monday, order, earliest=THIRD)
    return monday, number, order


def parts_here(desk: Desk) -> OpenPromise:
    """The one thing not come yet."""
    (one,) = [each for each in open_promises(desk) if each.kind == "parts here"]
    return one


def test_nothing_is_told_while_the_first_day_holds(tmp_path: Path) -> None:
    """Here on Wednesday, bench on Thursday, ready on Friday."""
    desk, _, _ = ordered(tmp_path)
    assert alarms(desk) == ()
    assert {one.due for one in open_promises(desk) if one.kind == "parts here"} == {FIRST}


def test_waiting_and_switching_to_the_cent(tmp_path: Path) -> None:
    """169.75 on 1 April at the earliest against 170.00 on 12 March: 0.25 for 20 days."""
    desk, _, order = slipped(tmp_path)
    (alarm,) = alarms(desk)
    told = "2026-03-05 (the customer's paper says the parts by 2026-03-04 and the machine by 2026-03-06)"
    assert [one.words for one in alarm.differs] == [f"approved was by {told}, now 2026-04-01: 27 days later"]
    hold, ask, switch = alarm.ways
    assert hold.margin is not None and switch.margin is not None
    assert (hold.margin.cost, hold.margin.earned, hold.margin.margin_percent) == (
        usd("169.75"), usd("56.45"), Decimal("24.96"),
    )  # fmt: skip
    assert (switch.margin.cost, switch.margin.earned, switch.margin.margin_percent) == (
        usd("170.00"), usd("56.20"), Decimal("24.85"),
    )  # fmt: skip
    assert alarm.margin_as_approved.earned == usd("71.40")
    assert (hold.latest, switch.latest) == (THIRD, date(2026, 3, 12))
    assert hold.notes == ("2026-04-01 at the earliest",)
    assert (hold.total, switch.total, ask.total) == (alarm.approved_total, alarm.approved_total, alarm.approved_total)
    assert ask.why_not  # the price is no question here
    assert switch.asks == (
        "Belt would be here by 2026-03-12 instead of 2026-03-04, the machine ready by 2026-03-13 "
        "instead of 2026-03-06: is that all right?"
    )
    assert "here by 2026-04-01 instead of 2026-03-04, the machine ready by 2026-04-02" in hold.asks
    assert (switch.supplier, alarm.order) == ("pellbrook", order)


def test_what_is_said_beside_the_ways(tmp_path: Path) -> None:
    """What a person needs to choose, and what she must not keep."""
    desk, _, _ = slipped(tmp_path)
    notes = alarms(desk)[0].notes
    assert notes[0] == (
        "Switching costs 0.25 USD more, and the parts are here 20 days sooner: 2026-03-12 instead of 2026-04-01."
    )
    assert "the day has moved twice already: 2026-03-04, then 2026-03-18, then 2026-04-01" in notes
    assert "113.10 USD is held as deposit: if Maud Tilbrook cancels, all of it goes back, special order or not" in notes
    assert any("30 days" in words and "ask, do not decide" in words for words in notes)


def test_no_promised_day_is_ever_overwritten(tmp_path: Path) -> None:
    """Three days, each with who said it and when; the first is the shop's own reckoning."""
    desk, number, order = slipped(tmp_path)
    one = parts_here(desk)
    assert (one.due, one.moved, one.order) == (THIRD, 2, order)
    assert [(said.latest, said.said_by, said.said_at) for said in one.history] == [
        (FIRST, "Wickenby Yard Machine Repair", ORDERED),
        (SECOND, "Stonegarth, by telephone", CAME),
        (THIRD, "Stonegarth, by telephone", SLIPPED),
    ]
    assert [said.latest for said in promises_of(desk, number) if said.line == one.line][-2:] == [SECOND, THIRD]


def test_silence_leaves_the_alarm_and_moves_nothing(tmp_path: Path) -> None:
    """A week on nobody has said anything: the alarm stands, the order too, and no yes came about."""
    _, number, order = slipped(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 3, 16, 9, 0))
    decide(later, number, "1", "hold", "she will call back")
    (alarm,) = alarms(later)
    assert any(words.startswith("decided before: hold") for words in alarm.notes)
    assert parts_here(later).order == order


def test_waiting_needs_her_yes_and_covers_that_day_only(tmp_path: Path) -> None:
    """With her yes the alarm is quiet until the day moves a third time."""
    desk, number, order = slipped(tmp_path)
    decide(desk, number, "1", "hold", "she waits", AGREED)
    assert alarms(desk) == ()
    put_off(desk_at(tmp_path, datetime(2026, 3, 20, 9, 0)), order, latest=date(2026, 4, 10))
    (alarm,) = alarms(desk_at(tmp_path, datetime(2026, 3, 20, 9, 0)))
    assert alarm.differs[0].now == "2026-04-10"
    assert any("Maud Tilbrook said yes (telephone)" in words for words in alarm.notes)


def test_her_yes_to_the_later_day_stands_among_her_answers(tmp_path: Path) -> None:
    """With who, how, number called, who took it down, and the day it covers; a decision without a yes does not."""
    desk, number, _ = slipped(tmp_path)
    decide(desk, number, "1", "hold", "she will call back")
    assert answer_record(desk, number).agreed == ()
    decide(desk, number, "1", "hold", "she waits", AGREED)
    found = answer_record(desk, number)
    (agreed,) = found.agreed
    assert (agreed.who, agreed.how, agreed.contact, agreed.taken_by) == (
        "Maud Tilbrook", "telephone", "555-0142", "Oona Brandeth",
    )  # fmt: skip
    assert (agreed.revision, agreed.line) == (1, "1 Belt")
    assert agreed.what == "Norrowby NW-77120, here by 2026-04-01, at the price approved"
    text = record_text(found)
    assert "Mar 9, 2026, 11:00: Maud Tilbrook by telephone (555-0142); taken down by Oona Brandeth" in text
    assert "Yes to revision 1, line 1 Belt: Norrowby NW-77120, here by 2026-04-01" in text


def test_switched_with_her_yes_to_the_end(tmp_path: Path) -> None:
    """The line is cancelled, the same number bought at Pellbrook at the price approved, 170.00 in all."""
    desk, number, order = slipped(tmp_path)
    told = decide(desk, number, "1", "switch", "sooner", AGREED)
    assert told.cancelled == order
    assert "--need-by 2026-03-12" in " ".join(told.next_steps)
    new = write_quote(desk, number, paper, date(2026, 3, 12)).frozen.quote
    assert new.agreed_total.total == usd("242.03")  # no freight comes on the bill that she did not approve
    assert new.lines[0].number == "Norrowby NW-77120"
    record(desk, number, yes("agreed"))
    (again,) = place_orders(desk, [number]).orders
    assert (again.supplier, again.landed_total, again.expected) == (
        "pellbrook", usd("154.20"), (date(2026, 3, 12), date(2026, 3, 12)),
    )  # fmt: skip
    assert alarms(desk) == ()
    assert parts_here(desk).who == "Pellbrook Power Parts"
    deeds = [one.deed for one in history(desk, number)]
    assert deeds.index("decide") < deeds.index("cancel order") if "cancel order" in deeds else "decide" in deeds


def test_what_came_already_can_not_be_switched(tmp_path: Path) -> None:
    """The bar is at the shop: there is no alarm for it, and nothing to decide."""
    desk, number, _ = slipped(tmp_path)
    with pytest.raises(Refused, match="stands as it was approved"):
        decide(desk, number, "2", "switch")


def test_the_deposit_goes_back_in_full(tmp_path: Path) -> None:
    """113.10, though the belt was ordered for her; until then it stands among what is open."""
    desk, number, _ = slipped(tmp_path)
    (deposit,) = [one for one in open_promises(desk) if one.kind == "deposit"]
    assert (deposit.amount, deposit.who) == (usd("113.10"), "Maud Tilbrook")
    give_back(desk, number, Decimal("113.10"), "card", "she cancels")
    assert not [one for one in open_promises(desk) if one.kind == "deposit"]
    assert standing(desk, number).words()["1"] == "approved"
