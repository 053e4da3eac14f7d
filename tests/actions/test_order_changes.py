"""After an order was placed: confirmed, changed, cancelled; every word kept, the yes let go only of what never came."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.history import history
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.order_changes import Confirmation, cancel, change_order, confirm, order_at_change
from sourcing.actions.orders import all_orders, list_orders, one_order_now, place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.order import LineEvent
from sourcing.basics.problem import Refused
from sourcing.storage.after_order import promises, standing_lines
from tests.actions.order_shop import BELT, IDLER, KEEPER, MONDAY, approved, orders_shop
from tests.builders import usd
from tests.journeys.small_shop import desk_at, sheet

ORDER = "PO-2026-0001"


def refusal(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of the first problem."""
    return caught.value.problems[0].code


def came(**pieces: int) -> Delivery:
    """A delivery of these lines, such as line_1=2."""
    quantities = {int(name.removeprefix("line_")): count for name, count in pieces.items()}
    return Delivery(paper=f"DN-{sum(quantities.values())}", freight=Decimal(0), quantities=quantities)


@pytest.fixture
def placed(tmp_path: Path) -> Path:
    """A belt and two keepers ordered on Monday: 170.60, freight free. The shop's folder."""
    desk = orders_shop(tmp_path)
    place_orders(desk, [approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 2))])
    return tmp_path


def test_a_confirmation_is_kept_with_its_days_as_promises(placed: Path) -> None:
    """18 March, then 1 April: three promises of the belt stand side by side, none written over."""
    desk = desk_at(placed, MONDAY)
    for day in (date(2026, 3, 18), date(2026, 4, 1)):
        done = confirm(desk, ORDER, Confirmation(lines=(LineEvent(line=1, latest=day),), said_by="Ilse"))
    assert [one.latest for one in done.now.lines[0].days] == [date(2026, 3, 4), date(2026, 3, 18), date(2026, 4, 1)]
    assert "the day has moved 2 times" in done.differs[0]
    with desk.store.reading() as connection:
        kept = [one for one in promises(connection, "2026-0001") if one.line == 1]
    assert [(one.latest, one.said_by) for one in kept[1:]] == [(date(2026, 3, 18), "Ilse"), (date(2026, 4, 1), "Ilse")]
    assert history(desk, "2026-0001")[-1].deed == "confirm order"


def test_as_ordered_raises_no_alarm(placed: Path) -> None:
    """But it is on record that he confirmed it."""
    done = confirm(desk_at(placed, MONDAY), ORDER, Confirmation())
    assert (done.differs, done.alarms) == ((), ()) and done.now.confirmed


def test_a_dearer_price_is_no_longer_what_was_approved(placed: Path) -> None:
    """The alarm names the line and both figures; the order keeps both prices."""
    said = LineEvent(line=1, unit_price=Decimal("152.90"))
    done = confirm(desk_at(placed, MONDAY), ORDER, Confirmation(lines=(said,)))
    assert len(done.differs) == 1 and "job 2026-0001 line 1" in done.alarms[0] and "152.90" in done.alarms[0]
    now = one_order_now(desk_at(placed, MONDAY), ORDER)
    assert (now.order.lines[0].unit_price, now.lines[0].unit_price) == (Decimal("139.00"), Decimal("152.90"))


def test_a_refused_word_leaves_nothing_behind(placed: Path) -> None:
    """One bad line among good ones: all or nothing."""
    desk = desk_at(placed, MONDAY)
    said = (LineEvent(line=2, latest=date(2026, 3, 9)), LineEvent(line=9, latest=date(2026, 3, 9)))
    with pytest.raises(Refused):
        confirm(desk, ORDER, Confirmation(lines=said))
    assert one_order_now(desk, ORDER).events == ()


def test_a_change_goes_up_only_as_far_as_approved(placed: Path) -> None:
    """Two keepers are approved: one is fewer, back to two is free, three is a question for the customer."""
    desk = desk_at(placed, MONDAY)
    done = change_order(desk, ORDER, {2: 1}, "one broke no more")
    assert done.change == 1 and done.now.wanted == {1: 1, 2: 1} and done.now.goods_total == usd("154.80")
    assert "job 2026-0001 needs 2 for line 2, 1 stand on this order" in done.notes[0]
    with pytest.raises(Refused) as caught:
        change_order(desk, ORDER, {2: 3})
    assert refusal(caught) == "more-than-approved"
    assert change_order(desk, ORDER, {2: 2}).change == 2
    assert "(one broke no more)" in history(desk, "2026-0001")[-2].detail


def test_what_was_taken_off_and_ordered_elsewhere_can_not_come_back(placed: Path) -> None:
    """One of two keepers is taken off, the rest ordered anew: two stand on two orders, and two are approved."""
    desk = desk_at(placed, MONDAY)
    change_order(desk, ORDER, {2: 1})
    (rest,) = place_orders(desk, ["2026-0001"]).orders
    assert [(line.label, line.ordered) for line in rest.lines] == [("2", 1)]
    with pytest.raises(Refused) as caught:
        change_order(desk, ORDER, {2: 2})
    assert refusal(caught) == "more-than-approved"
    with pytest.raises(Refused) as caught:
        place_orders(desk, ["2026-0001"])
    assert refusal(caught) == "all-on-order"


def test_a_change_does_not_go_below_what_came(placed: Path) -> None:
    """Both keepers have come."""
    desk = desk_at(placed, datetime(2026, 3, 4, 9, 0))
    receive(desk, ORDER, came(line_2=2))
    with pytest.raises(Refused) as caught:
        change_order(desk, ORDER, {2: 1})
    assert refusal(caught) == "fewer-than-came"


def test_a_price_break_follows_the_pieces(tmp_path: Path) -> None:
    """Three at 10.00, from five on 9.00: five are ordered of six approved at 9.00; three are 10.00 again, and said."""
    desk = orders_shop(tmp_path)
    (tmp_path / "stonegarth" / "prices-2026-03-02.csv").write_text(
        "Part Number,Brand,1-4,5+,Stock\nNW-31207,Norrowby,10.00,9.00,50\n"
    )
    import_sheets(desk, [tmp_path / "stonegarth" / "prices-2026-03-02.csv"], Said())
    place_orders(desk, [approved(desk, tmp_path, ("KEEPER", 6))])
    done = change_order(desk, ORDER, {1: 3})
    assert done.now.lines[0].unit_price == Decimal("10.00") and done.now.goods_total == usd("30.00")
    assert "10.00 USD for 3 pieces by the sheet, 9.00 agreed; the sheet's is put on the order" in done.notes[0]
    confirm(desk, ORDER, Confirmation(lines=(LineEvent(line=1, unit_price=Decimal("9.50")),)))
    again = change_order(desk, ORDER, {1: 6})
    assert again.now.lines[0].unit_price == Decimal("9.50")
    assert any("9.00 USD for 6 pieces by the sheet, 9.50 agreed; ask which holds" in words for words in again.notes)


def test_cancelling_one_line_tells_of_the_freight_that_is_lost(placed: Path) -> None:
    """Without the belt 31.60 of goods remain: 14.95 by the terms, free as ordered. As in the case of the backorder."""
    done = cancel(desk_at(placed, MONDAY), ORDER, [1], "backordered to April")
    assert done.now.wanted == {2: 2}
    lost = [words for words in done.notes if "freight" in words]
    assert lost[0].startswith("free freight is no longer passed: freight 14.95 USD, 0.00 USD before")
    assert any("job 2026-0001 line 1 (NW-77120) is approved and waits again" in words for words in done.notes)


def test_nothing_is_lost_where_nothing_is_left(placed: Path) -> None:
    """The whole order cancelled bears no freight."""
    done = cancel(desk_at(placed, MONDAY), ORDER)
    assert done.now.cancelled and not [words for words in done.notes if "freight" in words]


def test_a_cancelled_line_is_ordered_anew_and_no_other(placed: Path) -> None:
    """The yes was let go, by the database too; the keepers stay where they are."""
    desk = desk_at(placed, MONDAY)
    cancel(desk, ORDER, [1])
    with desk.store.reading() as connection:
        assert standing_lines(connection) == {("2026-0001", "2")}
    (again,) = place_orders(desk, ["2026-0001"]).orders
    assert again.number == "PO-2026-0002" and [line.label for line in again.lines] == ["1"]
    with pytest.raises(Refused):
        cancel(desk, ORDER, [1])


def test_what_came_stays_when_the_rest_is_cancelled(placed: Path) -> None:
    """One keeper of two came: one stays on the order, one waits again; the line keeps its yes for what came."""
    desk = desk_at(placed, datetime(2026, 3, 2, 12, 0))
    receive(desk, ORDER, came(line_2=1))
    done = cancel(desk, ORDER)
    assert done.now.wanted == {2: 1}
    with desk.store.reading() as connection:
        assert standing_lines(connection) == {("2026-0001", "2")}
    (again,) = place_orders(desk, ["2026-0001"]).orders
    assert [(line.label, line.ordered) for line in again.lines] == [("1", 1), ("2", 1)]


def test_goods_that_came_damaged_can_be_cancelled_and_ordered_elsewhere(placed: Path) -> None:
    """The belt came torn: nothing good came, so it can be cancelled and ordered anew, and the receipt stays."""
    desk = desk_at(placed, datetime(2026, 3, 2, 12, 0))
    delivery = Delivery(paper="DN-1", freight=Decimal(0), quantities={1: 1}, damaged={1: 1})
    receive(desk, ORDER, delivery)
    assert cancel(desk, ORDER, [1]).now.wanted == {2: 2}
    (again,) = place_orders(desk, ["2026-0001"]).orders
    assert [line.label for line in again.lines] == ["1"]


def test_cancelling_does_not_hang_on_a_sheet(placed: Path) -> None:
    """The number is gone from the newest sheet: the order can be cancelled in part all the same."""
    desk = desk_at(placed, MONDAY)
    sheet(desk, placed, "stonegarth", "2026-03-02", [IDLER])
    done = cancel(desk, ORDER, [1])
    assert done.now.wanted == {2: 2} and any("freight 14.95" in words for words in done.notes)


def test_every_change_can_be_printed_again(placed: Path) -> None:
    """As the order stood after it, whatever came later; an unknown one names those there are."""
    desk = desk_at(placed, MONDAY)
    change_order(desk, ORDER, {2: 1})
    confirm(desk, ORDER, Confirmation())
    cancel(desk, ORDER)
    assert order_at_change(desk, ORDER, 1).now.wanted == {1: 1, 2: 1}
    assert order_at_change(desk, ORDER, 2).now.cancelled
    with pytest.raises(Refused, match="use one of: 1, 2"):
        order_at_change(desk, ORDER, 3)


def test_an_order_as_placed_never_changes(placed: Path) -> None:
    """What happened is beside it."""
    desk = desk_at(placed, MONDAY)
    before = all_orders(desk, None)
    change_order(desk, ORDER, {2: 1})
    cancel(desk, ORDER)
    assert all_orders(desk, None) == before
    assert [one.left for one in list_orders(desk, None)] == [{}]


def test_a_shared_order_notes_the_deed_at_the_jobs_it_is_about(tmp_path: Path) -> None:
    """Cancelling the second job's line is no news of the first."""
    desk = orders_shop(tmp_path, (BELT, KEEPER, IDLER))
    jobs = [approved(desk, tmp_path, ("BELT", 1)), approved(desk, tmp_path, ("KEEPER", 2))]
    place_orders(desk, jobs)
    cancel(desk, ORDER, [2])
    assert history(desk, jobs[0])[-1].deed == "order"
    assert history(desk, jobs[1])[-1].deed == "cancel order"
