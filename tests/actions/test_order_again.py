"""What counts when goods are ordered again, later, or for a job that is done: words said, ways out taken, the bill."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.alarms import alarms
from sourcing.actions.bill import write_bill
from sourcing.actions.decide import decide
from sourcing.actions.desk import Desk
from sourcing.actions.order_changes import Confirmation, cancel, change_order, confirm
from sourcing.actions.orders import look_at_orders, place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.bill import LeftOut
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from tests.actions.order_shop import BELT, MONDAY, approved, orders_shop, quote_again, quoted, say_yes
from tests.builders import usd
from tests.journeys.small_shop import desk_at, sheet

NOON, TUESDAY = datetime(2026, 3, 2, 9, 20), datetime(2026, 3, 3, 9, 0)
DEARER = BELT.replace("139.00", "152.90")


def refusal(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of the first problem."""
    return caught.value.problems[0].code


def cancelled(folder: Path, said: LineEvent) -> tuple[Desk, str]:
    """The belt ordered, confirmed so, and cancelled again; the job."""
    desk = orders_shop(folder)
    job = approved(desk, folder, ("BELT", 1))
    (order,) = place_orders(desk, [job]).orders
    confirm(desk, order.number, Confirmation(lines=(said,)))
    cancel(desk, order.number, [1], "too late")
    return desk, job


def dearer(folder: Path) -> tuple[Desk, str]:
    """The belt approved at 139.00 costs 152.90 now, and 140.00 at Pellbrook; the job."""
    job = approved(orders_shop(folder), folder, ("BELT", 1), head="ready_by = 2026-03-20\n")
    desk = desk_at(folder, NOON)
    sheet(desk, folder, "stonegarth", "2026-03-02", [DEARER])
    sheet(desk, folder, "pellbrook", "2026-03-02", [BELT.replace("139.00", "140.00")])
    return desk, job


def test_a_day_he_has_taken_back_counts_after_the_line_is_cancelled(tmp_path: Path) -> None:
    """He said 19 March of what his sheet has in stock: held, and an alarm, until a sheet of a later day speaks."""
    desk, job = cancelled(tmp_path, LineEvent(line=1, latest=date(2026, 3, 19)))
    with pytest.raises(Refused) as caught:
        place_orders(desk, [job])
    words = caught.value.problems[0].sentence()
    assert "it would be here by 2026-03-19, approved was by 2026-03-04" in words
    assert "Stonegarth Trade Parts said on 2026-03-02 of order PO-2026-0001: here 2026-03-19" in words
    assert [(one.what, one.now) for one in alarms(desk, job)[0].differs] == [("date", "2026-03-19")]
    later = desk_at(tmp_path, TUESDAY)
    sheet(later, tmp_path, "stonegarth", "2026-03-03", [BELT])
    assert len(look_at_orders(later, [job]).held) == 1  # it would be here on 5 March
    assert "2026-03-19" not in look_at_orders(later, [job]).held[0]


def test_a_price_and_a_number_he_has_named_are_told_when_it_is_ordered_again(tmp_path: Path) -> None:
    """The sheet has not changed, but he said otherwise."""
    desk, job = cancelled(tmp_path, LineEvent(line=1, unit_price=Decimal("152.90"), number="NW-77121"))
    placed = place_orders(desk, [job])
    assert [words.partition("cancelled since: ")[2] for words in placed.warnings] == [
        "152.90 USD instead of 139.00",
        "NW-77121 instead of NW-77120",
    ]


def test_a_line_to_be_bought_elsewhere_is_not_ordered_as_before(tmp_path: Path) -> None:
    """Decided, and on no quote yet: it waits. With the quote it is bought from Pellbrook."""
    desk, job = dearer(tmp_path)
    decide(desk, job, "1", "switch")
    with pytest.raises(Refused) as caught:
        place_orders(desk, [job])
    assert refusal(caught) == "switch-not-quoted"
    assert "Pellbrook Power Parts under NW-77120" in caught.value.problems[0].sentence()
    quote_again(desk, job)
    assert [order.supplier for order in place_orders(desk, [job]).orders] == ["pellbrook"]


def test_a_decision_can_be_taken_again_until_it_is_ordered(tmp_path: Path) -> None:
    """Hold, then switch, then hold after all: the last one counts; and it is said how."""
    desk, job = dearer(tmp_path)
    decided = decide(desk, job, "1", "hold")
    assert decided.next_steps[-1] == f"Until it is ordered, 'sourcing decide {job} 1' changes it."
    assert alarms(desk, job) == ()
    assert decide(desk, job, "1", "switch").decision.supplier == "pellbrook"
    decide(desk, job, "1", "hold")
    placed = place_orders(desk, [job])
    assert [order.supplier for order in placed.orders] == ["stonegarth"]
    with pytest.raises(Refused) as caught:
        decide(desk, job, "1", "switch")
    assert refusal(caught) == "no-alarm"


def test_a_switch_can_be_taken_back_though_nothing_differs_any_more(tmp_path: Path) -> None:
    """The old price is back on the sheet: no alarm, but the decision still has to be taken back."""
    desk, job = dearer(tmp_path)
    decide(desk, job, "1", "switch")
    sheet(desk, tmp_path, "stonegarth", "2026-03-02b", [BELT])
    assert alarms(desk, job) == ()
    with pytest.raises(Refused) as caught:
        place_orders(desk, [job])
    assert refusal(caught) == "switch-not-quoted"
    decide(desk, job, "1", "hold")
    assert [order.supplier for order in place_orders(desk, [job]).orders] == ["stonegarth"]


def test_a_line_that_is_none_is_told_with_those_there_are(tmp_path: Path) -> None:
    """Neither 'Z' nor the waiting line 2 stands as approved."""
    desk = orders_shop(tmp_path)
    job = quoted(desk, tmp_path, ("BELT", 1), ("IDLER", 1))
    say_yes(desk, job, "1")
    for label in ("Z", "2"):
        with pytest.raises(Refused) as caught:
            decide(desk, job, label, "hold")
        assert refusal(caught) == "nothing-to-decide-on"
        assert "name one of: 1" in caught.value.problems[0].sentence()
    with pytest.raises(Refused) as caught:
        decide(desk, job, "1", "hold")
    assert refusal(caught) == "no-alarm"


def test_what_costs_more_than_quoted_is_told_though_the_price_stays(tmp_path: Path) -> None:
    """Held by decision: the shop bears 13.90, and whoever orders sees it, at the look and at the order."""
    desk, job = dearer(tmp_path)
    decide(desk, job, "1", "hold")
    words = (
        f"{job} line 1: the part costs more than quoted, 139.00, now 152.90 each: 13.90 more, 10.00 %; "
        "the price to the customer stays"
    )
    assert words in look_at_orders(desk, [job]).warnings
    assert words in place_orders(desk, [job]).warnings


def test_lines_that_still_wait_for_the_customer_are_told(tmp_path: Path) -> None:
    """One call might let them go with the order."""
    desk = orders_shop(tmp_path)
    job = quoted(desk, tmp_path, ("BELT", 1), ("IDLER", 1))
    say_yes(desk, job, "1")
    words = f"job {job}: the customer has not answered yet on 2 (IDLER); nothing of it is ordered"
    assert words in look_at_orders(desk, [job]).warnings
    assert words in place_orders(desk, [job]).warnings


def test_free_freight_is_not_lost_where_the_order_never_had_it(tmp_path: Path) -> None:
    """Placed at 139.70 with freight of 14.95; 12.00 a keeper lifts it over 150.00 by word only. Switching the keepers
    costs 32.00 and 9.95 elsewhere, and 14.95 once, not twice."""
    desk = orders_shop(tmp_path, [BELT.replace("139.00", "126.90"), "NW-31207,Norrowby,Keeper,13.50,6.40,50,In stock"])
    job = approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 2))
    (order,) = place_orders(desk, [job]).orders
    assert order.landed_total == usd("154.65")
    sheet(desk, tmp_path, "pellbrook", "2026-03-02", ["NW-31207,Norrowby,Keeper,33.00,16.00,50,In stock"])
    confirm(desk, order.number, Confirmation(lines=(LineEvent(line=2, unit_price=Decimal("12.00")),)))
    (alarm,) = alarms(desk, job)
    hold, switch = alarm.ways[0].margin, alarm.ways[2].margin
    assert hold is not None and hold.cost == usd("165.85")
    assert switch is not None and switch.cost == usd("183.80")


def test_a_billed_job_is_closed_to_orders(tmp_path: Path) -> None:
    """What would come for it could never be billed: neither a line left out nor more pieces of another."""
    desk = orders_shop(tmp_path)
    job = approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 2))
    (order,) = place_orders(desk, [job], ["1"]).orders
    receive(desk, order.number, Delivery(paper="DN-1", freight=Decimal(0)))
    write_bill(desk, job, lambda bill: bill.number, LeftOut(labels=("2",), words="she waits"))
    for act in (lambda: place_orders(desk, [job]), lambda: change_order(desk, order.number, {1: 2})):
        with pytest.raises(Refused) as caught:
            act()
        assert refusal(caught) == "billed-no-order"


@pytest.mark.parametrize(
    ("at", "dated", "code"),
    [
        (datetime(2026, 3, 2, 8, 59), None, "came-before-order"),
        (NOON, date(2026, 3, 1), "dated-before-order"),
        (NOON, date(2025, 3, 2), "dated-before-order"),
        (NOON, date(2026, 3, 2), ""),
    ],
)
def test_goods_never_come_before_they_are_ordered(tmp_path: Path, at: datetime, dated: date | None, code: str) -> None:
    """Neither by the clock nor by the day on the paper; the day of the order itself is fine."""
    desk = orders_shop(tmp_path)
    (order,) = place_orders(desk, [approved(desk, tmp_path, ("BELT", 1))]).orders
    assert order.placed_at == MONDAY
    came = Delivery(paper="DN-1", freight=Decimal(0), dated=dated)
    if not code:
        assert receive(desk_at(tmp_path, at), order.number, came).receipt.dated == dated
        return
    with pytest.raises(Refused) as caught:
        receive(desk_at(tmp_path, at), order.number, came)
    assert refusal(caught) == code
