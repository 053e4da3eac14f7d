"""A shop that lets a price rise by 4 %: two small rises together are too much; freight that rose is asked about anew.

Approved at 321.66 before tax (belt 177.66, labour 144.00): 334.52 is the most. First the belt costs 5.00 more (328.66),
then 5.00 more again (335.66): each is under 4 %, both together are 4.35 %.
"""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.answers import record, standing
from sourcing.actions.bill import look_at_bill
from sourcing.actions.desk import Desk
from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.orders import place_orders
from sourcing.actions.quotes import check_quote, write_quote
from sourcing.actions.setup import set_up
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from tests.actions.answered_shop import at, quoted, said, torn_down
from tests.builders import usd
from tests.journeys.small_shop import SHOP, SUPPLIERS, desk_at, sheet
from tests.journeys.test_price_rises_after_yes import OTHER, QUOTED, approved
from tests.journeys.test_worked_days import paper, yes

ONCE, TWICE = (QUOTED.replace("189.50,126.90", f"208.45,{net}") for net in ("131.90", "136.90"))
TOLD = "the line was approved at 321.66 USD before tax, now it would be 335.66 USD"


def risen_once(folder: Path) -> tuple[Desk, str]:
    """Revision 2 says 7.00 more, and the yes to revision 1 covers it."""
    desk, number = approved(folder)
    (folder / "shop.toml").write_text(SHOP.replace("[shop]", "tolerance = { percent = 4 }\n[shop]"))
    set_up(desk, folder)
    sheet(desk, folder, "stonegarth", "2026-03-09", [ONCE])
    second = write_quote(desk, number, paper).frozen.quote
    assert (second.revision, second.lines[0].price) == (2, usd("328.66"))
    assert standing(desk, number).words()["1"] == "approved"
    assert alarms(desk, number) == ()
    return desk, number


def risen_twice(folder: Path) -> tuple[Desk, str]:
    """The sheet is dearer again, before the order."""
    desk, number = risen_once(folder)
    sheet(desk, folder, "stonegarth", "2026-03-10", [TWICE])
    return desk, number


def test_one_small_rise_is_ordered(tmp_path: Path) -> None:
    """As the shop wants it."""
    desk, number = risen_once(tmp_path)
    assert len(place_orders(desk, [number]).orders) == 1


def test_two_small_rises_are_held_at_the_order(tmp_path: Path) -> None:
    """From revision 2 it would be 2.13 % only; the sentence names what she approved."""
    desk, number = risen_twice(tmp_path)
    with pytest.raises(Refused, match=r"would now be 335\.66 USD before tax, approved was 321\.66 USD"):
        place_orders(desk, [number])


def test_two_small_rises_are_an_alarm_before_and_after_the_order(tmp_path: Path) -> None:
    """By the sheet, and by the supplier's confirmation."""
    desk, number = risen_twice(tmp_path)
    assert [one.words for alarm in alarms(desk, number) for one in alarm.differs] == [TOLD]
    (tmp_path / "later").mkdir()
    desk, number = risen_once(tmp_path / "later")
    (order,) = place_orders(desk, [number]).orders
    assert alarms(desk, number) == ()
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=1, unit_price=Decimal("136.90")),)))
    assert [one.words for alarm in alarms(desk, number) for one in alarm.differs] == [TOLD]


def test_two_small_rises_are_not_billed(tmp_path: Path) -> None:
    """The owner is told before revision 3 is written; once it is, the line waits for her word."""
    desk, number = risen_twice(tmp_path)
    told = "1 Belt: approved at 321.66 USD, now 335.66 USD before tax: a new question to the customer"
    assert told in check_quote(desk, number).warnings
    assert write_quote(desk, number, paper).frozen.quote.lines[0].price == usd("335.66")
    with pytest.raises(Refused, match="line 1 of job 2026-0001 is waiting, so it can't be billed"):
        look_at_bill(desk, number)
    record(desk, number, yes("agreed"))
    assert len(place_orders(desk, [number]).orders) == 1


def test_the_offer_approved_is_not_kept_once_it_must_be_asked_about_anyway(tmp_path: Path) -> None:
    """After one small rise the belt approved stays though another is cheaper; after two the cheaper one is bought."""
    desk, number = risen_once(tmp_path)
    sheet(desk, tmp_path, "pellbrook", "2026-03-10", [OTHER])
    assert check_quote(desk, number).now.lines[0].number == "Norrowby NW-77120"
    sheet(desk, tmp_path, "stonegarth", "2026-03-10", [TWICE])
    assert check_quote(desk, number).now.lines[0].number == "Corrivane CV-B880K"


def test_a_part_whose_freight_rose_waits_for_a_yes_to_the_freight(tmp_path: Path) -> None:
    """A stays approved when D, its freight, is dearer in revision 3: silence holds it, a yes orders it."""
    number = quoted(tmp_path)
    torn_down(tmp_path, number)
    desk = at(tmp_path)
    record(desk, number, said("agreed", "A", "D", no=("B", "C")))
    (tmp_path / "suppliers.toml").write_text(SUPPLIERS.replace("charge = 14.95", "charge = 19.95"))
    set_up(desk, tmp_path)
    assert write_quote(desk, number, paper).frozen.quote.revision == 3
    assert {label: word for label, word in standing(desk, number).words().items() if label in "AD"} == {
        "A": "approved",
        "D": "waiting",
    }
    with pytest.raises(Refused, match=f"line A of job {number} can't be ordered yet: its freight on line D is waiting"):
        place_orders(desk, [number], ["A"])
    later = desk_at(tmp_path, datetime(2026, 3, 4, 12, 0))
    placed = place_orders(later, [number])
    assert [line.label for order in placed.orders for line in order.lines] == ["1"]
    assert [words for words in placed.held if "its freight on line D" in words]
    record(later, number, said("D"))
    assert [line.label for order in place_orders(later, [number]).orders for line in order.lines] == ["A"]
