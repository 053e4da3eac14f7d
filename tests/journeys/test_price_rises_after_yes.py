"""A supplier's price rises between the customer's yes and the order: told, three ways out, each taken to its end.

Quoted on Monday at 126.90, valid to the 16th, approved on Tuesday: 357.29 in all. On Thursday the belt costs 139.59.
"""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record, standing
from sourcing.actions.decide import Agreed, decide
from sourcing.actions.desk import Desk
from sourcing.actions.margins import margins
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import write_quote
from sourcing.basics.alarm import Alarm, WayOut
from sourcing.basics.money import Money
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from tests.builders import usd
from tests.journeys.small_shop import desk_at, sheet, shop, take_in
from tests.journeys.test_worked_days import paper, yes

MONDAY, TUESDAY = datetime(2026, 3, 9, 10, 0), datetime(2026, 3, 10, 9, 0)
THURSDAY, FRIDAY = datetime(2026, 3, 12, 13, 0), datetime(2026, 3, 13, 10, 0)
JOB = 'ready_by = 2026-03-20\n[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5'
QUOTED = "NW-77120,Norrowby,Belt B88,189.50,126.90,2,In stock"
RISEN = "NW-77120,Norrowby,Belt B88,208.45,139.59,2,In stock"
OTHER = "CV-B880K,Corrivane,Belt B88,199.00,131.00,2,In stock"


def approved(folder: Path) -> tuple[Desk, str]:
    """The belt quoted on Monday and approved on Tuesday; Tuesday's desk and the job's number."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-08", [QUOTED])
    number = take_in(desk, folder, JOB)
    assert write_quote(desk, number, paper).frozen.quote.agreed_total.total == usd("357.29")
    tuesday = desk_at(folder, TUESDAY)
    record(tuesday, number, yes("agreed"))
    return tuesday, number


def risen(folder: Path) -> tuple[Desk, str]:
    """Thursday: Stonegarth's new sheet is 10 % dearer, and Pellbrook has another maker's belt."""
    _, number = approved(folder)
    desk = desk_at(folder, THURSDAY)
    sheet(desk, folder, "stonegarth", "2026-03-12", [RISEN])
    sheet(desk, folder, "pellbrook", "2026-03-12", [OTHER])
    return desk, number


def earned(way: WayOut) -> tuple[Money, Decimal | None]:
    """What parts with freight earn by that way, and the margin in per cent."""
    assert way.margin is not None
    return way.margin.earned, way.margin.margin_percent


def check_three_ways(alarm: Alarm) -> None:
    """The worked figures, whether it is told by a sheet before the order or by the supplier after it."""
    assert [one.words for one in alarm.differs] == ["approved on 126.90, now 139.59 each: 12.69 more, 10.00 %"]
    assert (alarm.approved_total, alarm.margin_as_approved.earned) == (usd("357.29"), usd("50.76"))
    hold, ask, switch = alarm.ways
    assert (hold.total, earned(hold), hold.asks) == (usd("357.29"), (usd("38.07"), Decimal("19.77")), "")
    assert (ask.total, ask.extra, ask.extra_percent) == (usd("376.31"), usd("19.02"), Decimal("5.32"))
    assert earned(ask)[0] == usd("55.84")
    assert (switch.total, earned(switch)) == (usd("357.29"), (usd("51.66"), Decimal("26.82")))
    assert switch.asks == "May we fit Corrivane CV-B880K instead of Norrowby NW-77120, same price?"
    assert "parts earn 46.66 USD" in switch.notes[0]
    assert any("valid to 2026-03-16: as printed it binds the shop to 357.29 USD" in words for words in alarm.notes)


def test_the_alarm_comes_before_the_order(tmp_path: Path) -> None:
    """All three ways to the cent; nothing is ordered meanwhile."""
    desk, number = risen(tmp_path)
    (alarm,) = alarms(desk, number)
    check_three_ways(alarm)
    with pytest.raises(Refused, match=r"its price would now be 195\.43 USD each, approved was 177\.66 USD"):
        place_orders(desk, [number])


def test_no_alarm_while_all_stands_as_approved(tmp_path: Path) -> None:
    """On Tuesday nothing has changed, and there is nothing to decide."""
    desk, number = approved(tmp_path)
    assert alarms(desk) == ()
    with pytest.raises(Refused, match="stands as it was approved"):
        decide(desk, number, "1", "hold")


def test_the_price_held_is_ordered_at_the_new_cost(tmp_path: Path) -> None:
    """357.29 stays; the margin kept is 38.07 and never the 50.76 of the old cost."""
    desk, number = risen(tmp_path)
    decide(desk, number, "1", "hold", "our word counts")
    assert alarms(desk) == ()
    (order,) = place_orders(desk, [number]).orders
    assert order.landed_total == usd("154.54")
    (found,) = margins(desk, number)
    assert dict(found.parts)["ordered"].earned == usd("38.07")
    assert standing(desk, number).approved.total == usd("357.29")


def test_a_price_held_that_rises_again_is_a_new_alarm(tmp_path: Path) -> None:
    """Held up to 139.59; on Friday it is 142.00."""
    desk, number = risen(tmp_path)
    decide(desk, number, "1", "hold")
    friday = desk_at(tmp_path, FRIDAY)
    sheet(friday, tmp_path, "stonegarth", "2026-03-13", [RISEN.replace("139.59", "142.00")])
    (alarm,) = alarms(friday)
    assert alarm.differs[0].words == "approved on 126.90, now 142.00 each: 15.10 more, 11.90 %"
    assert any(words.startswith("decided before: hold, by Oona Brandeth") for words in alarm.notes)
    with pytest.raises(Refused, match=r"held up to a cost of 139\.59 USD only, now 142\.00 USD"):
        place_orders(friday, [number])


def test_asked_anew_the_line_waits_for_her_answer(tmp_path: Path) -> None:
    """The decision alone changes nothing; the new revision asks for 376.31, silence is no yes, a yes is ordered."""
    desk, number = risen(tmp_path)
    told = decide(desk, number, "1", "ask")
    assert "Until the customer has said yes the line waits." in told.next_steps
    with pytest.raises(Refused):
        place_orders(desk, [number])
    new = write_quote(desk, number, paper).frozen.quote
    assert (new.revision, new.agreed_total.total, new.lines[0].unit_price) == (2, usd("376.31"), usd("195.43"))
    assert standing(desk, number).words()["1"] == "waiting"
    with pytest.raises(Refused):
        place_orders(desk, [number])
    record(desk, number, yes("agreed"))
    assert alarms(desk) == ()
    (order,) = place_orders(desk, [number]).orders
    assert order.lines[0].unit_price == Decimal("139.59")
    assert dict(margins(desk, number)[0].parts)["ordered"].earned == usd("55.84")


def test_switched_the_number_waits_for_her_answer(tmp_path: Path) -> None:
    """Another belt at the price approved: a new revision of 357.29, and no order before she said yes to the number."""
    desk, number = risen(tmp_path)
    told = decide(desk, number, "1", "switch", "fitted before")
    assert (told.decision.supplier, told.decision.supplier_number) == ("pellbrook", "CV-B880K")
    with pytest.raises(Refused):
        place_orders(desk, [number])
    new = write_quote(desk, number, paper).frozen.quote
    assert (new.agreed_total.total, new.lines[0].number) == (usd("357.29"), "Corrivane CV-B880K")
    assert standing(desk, number).words()["1"] == "waiting"
    with pytest.raises(Refused):
        place_orders(desk, [number])
    record(desk, number, yes("agreed"))
    (order,) = place_orders(desk, [number]).orders
    assert (order.supplier, order.landed_total) == ("pellbrook", usd("140.95"))
    assert dict(margins(desk, number)[0].parts)["ordered"].earned == usd("51.66")


def test_the_supplier_confirms_a_higher_price_after_the_order(tmp_path: Path) -> None:
    """The same three ways, told from his confirmation; his new sheet gives the new list price."""
    tuesday, number = approved(tmp_path)
    (order,) = place_orders(tuesday, [number]).orders
    desk = desk_at(tmp_path, THURSDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-12", [RISEN])
    sheet(desk, tmp_path, "pellbrook", "2026-03-12", [OTHER])
    assert alarms(desk) == ()  # ordered is ordered: the sheet of today is not its price
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, unit_price=Decimal("139.59")),)))
    (alarm,) = alarms(desk)
    assert (alarm.order, alarm.order_line) == (order.number, 1)
    check_three_ways(alarm)
    decide(desk, number, "1", "hold")
    assert alarms(desk) == ()


def test_after_the_order_a_switch_cancels_only_with_her_yes(tmp_path: Path) -> None:
    """Without it the order stands; with it the line is cancelled in the same deed, and bought after the new yes."""
    tuesday, number = approved(tmp_path)
    (order,) = place_orders(tuesday, [number]).orders
    desk = desk_at(tmp_path, THURSDAY)
    sheet(desk, tmp_path, "pellbrook", "2026-03-12", [OTHER])
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, unit_price=Decimal("139.59")),)))
    first = decide(desk, number, "1", "switch")
    assert first.cancelled == "" and "The order stands" in first.next_steps[1]
    assert len(alarms(desk)) == 1
    second = decide(desk, number, "1", "switch", "", Agreed(who="Maud Tilbrook", how="telephone", contact="555-0142"))
    assert second.cancelled == order.number
    new = write_quote(desk, number, paper).frozen.quote
    assert (new.agreed_total.total, new.lines[0].number) == (usd("357.29"), "Corrivane CV-B880K")
    record(desk, number, yes("agreed"))
    (again,) = place_orders(desk, [number]).orders
    assert (again.supplier, again.landed_total) == ("pellbrook", usd("140.95"))
    assert alarms(desk) == ()


def test_only_who_may_answer_can_agree_and_a_new_price_is_answered_on_paper(tmp_path: Path) -> None:
    """A neighbour's word is none; a yes to a new price belongs on the new revision."""
    desk, number = risen(tmp_path)
    with pytest.raises(Refused, match="not named as someone who may answer"):
        decide(desk, number, "1", "switch", "", Agreed(who="Piet Halloway-Rusk", how="telephone"))
    with pytest.raises(Refused, match="recorded on a new revision"):
        decide(desk, number, "1", "ask", "", Agreed(who="Maud Tilbrook", how="telephone"))
    assert alarms(desk)[0].notes == alarms(desk)[0].notes and len(alarms(desk)) == 1


def test_later_than_covered_is_asked_beside_the_price(tmp_path: Path) -> None:
    """Ordered on Thursday it is here on Monday; without a day of her own her yes covers Thursday the 12th."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-08", [QUOTED])
    number = take_in(desk, tmp_path, JOB.replace("ready_by = 2026-03-20\n", ""))
    write_quote(desk, number, paper)
    record(desk_at(tmp_path, TUESDAY), number, yes("agreed"))
    (alarm,) = alarms(desk_at(tmp_path, THURSDAY))
    told = "2026-03-12 (the customer's paper says the parts by 2026-03-11, and the answer came later)"
    assert [one.words for one in alarm.differs] == [f"approved was by {told}, now 2026-03-16: 4 days later"]
    agreed = Agreed(who="Maud Tilbrook", how="telephone")
    decide(desk_at(tmp_path, THURSDAY), number, "1", "hold", "Monday is early enough", agreed)
    assert alarms(desk_at(tmp_path, THURSDAY)) == ()
    (order,) = place_orders(desk_at(tmp_path, THURSDAY), [number]).orders
    assert order.expected == (date(2026, 3, 16), date(2026, 3, 16))
