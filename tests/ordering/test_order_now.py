"""An order as it stands now: what happened is folded in, nothing that was said is lost."""

from datetime import date
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as some

from sourcing.basics.order import LineEvent, OrderEvent
from sourcing.basics.value import changed
from sourcing.ordering.order_now import good_pieces, line_goods, open_pieces, order_now, pieces_standing
from tests.builders import usd
from tests.ordering.order_values import event, line, order, receipt


def test_without_events_it_is_as_placed() -> None:
    """Every line with its pieces, price, number and the day reckoned when it was placed."""
    now = order_now(order())
    assert now.wanted == {1: 1, 2: 4} and now.goods_total == usd("202.20")
    assert not now.confirmed and not now.cancelled
    assert [(day.latest, day.said_by) for day in now.lines[0].days] == [(date(2026, 3, 4), "")]


def test_a_backorder_that_slips_twice_keeps_every_day() -> None:
    """4 March reckoned, 18 March said, 1 April said: three words, the last one holds."""
    slips = (
        event("confirmed", LineEvent(line=1, latest=date(2026, 3, 18)), said_by="Ilse"),
        event("confirmed", LineEvent(line=1, earliest=date(2026, 4, 1)), day=9),
    )
    first = order_now(order(), slips).lines[0]
    assert [day.latest for day in first.days] == [date(2026, 3, 4), date(2026, 3, 18), date(2026, 4, 1)]
    assert [day.said_by for day in first.days] == ["", "Ilse", "Stonegarth Trade Parts"]
    assert first.latest == date(2026, 4, 1)


def test_what_a_word_does_not_say_stays() -> None:
    """A new price alone changes neither pieces, number nor day; a new number alone not the price."""
    said = (
        event("confirmed", LineEvent(line=2, unit_price=Decimal("16.00"))),
        event("confirmed", LineEvent(line=2, number="NW-31207B"), day=4),
    )
    first, second = order_now(order(), said).lines
    assert first == order_now(order()).lines[0]
    assert (second.pieces, second.unit_price, second.number) == (4, Decimal("16.00"), "NW-31207B")
    assert second.goods == usd("64.00") and len(second.days) == 1


def test_events_of_another_order_are_nobodys() -> None:
    """And a line the order does not have is left out."""
    other = changed(event("cancelled", LineEvent(line=1, pieces=0)), order="PO-2026-0002")
    strange = event("changed", LineEvent(line=7, pieces=3))
    now = order_now(order(), (other, strange))
    assert now.wanted == {1: 1, 2: 4} and now.events == (strange,)


def test_a_cancelled_line_costs_nothing_and_is_not_open() -> None:
    """All lines cancelled: nothing of the order is wanted."""
    one = event("cancelled", LineEvent(line=1, pieces=0))
    now = order_now(order(), (one,))
    assert now.wanted == {2: 4} and now.goods_total == usd("63.20") and now.lines[0].cancelled
    assert open_pieces(now, {}) == {2: 4}
    assert order_now(order(), (one, event("cancelled", LineEvent(line=2, pieces=0)))).cancelled


def test_goods_of_a_changed_line_are_rounded_once_and_discounted() -> None:
    """3 pieces at 8.125 for 100 are 0.24375, so 0.24; 5 % off is 0.01 after rounding. As placed stays as placed."""
    placed = order(line(1, "KR-5", 20, "8.125", "1.55", price_basis=100), discount_percent=Decimal(5))
    assert line_goods(placed, placed.lines[0], 20, Decimal("8.125")) == usd("1.55")
    assert line_goods(placed, placed.lines[0], 3, Decimal("8.125")) == usd("0.23")


def test_damaged_pieces_have_not_come() -> None:
    """Two of three can be used: one is still open."""
    now = order_now(order(line(1, "NW-31207", 3, "15.80", "47.40")))
    assert good_pieces([receipt({1: 3}, damaged=1)]) == {1: 2}
    assert open_pieces(now, good_pieces([receipt({1: 3}, damaged=1)])) == {1: 1}
    assert open_pieces(now, {1: 3}) == {} and open_pieces(now, {1: 9}) == {}


def test_pieces_stand_by_job_label_and_part() -> None:
    """Two orders of one line add up; a cancelled line stands nowhere."""
    half = changed(order(), number="PO-2026-0002")
    gone = changed(event("cancelled", LineEvent(line=1, pieces=0)), order="PO-2026-0002")
    standing = pieces_standing([order_now(order()), order_now(half, (gone,))])
    assert standing == {("2026-0001", "1", "PART-1"): 1, ("2026-0001", "2", "PART-2"): 8}


SAID = some.builds(
    LineEvent,
    line=some.integers(1, 2),
    pieces=some.none() | some.integers(0, 9),
    unit_price=some.none() | some.decimals(0, 500, places=2),
    latest=some.none() | some.dates(date(2026, 3, 2), date(2026, 6, 1)),
)


def _events(said: list[LineEvent]) -> list[OrderEvent]:
    return [event("changed", one, day=at % 20 + 1) for at, one in enumerate(said)]


@given(some.lists(SAID, max_size=12))
def test_the_last_word_holds_and_every_day_stays(said: list[LineEvent]) -> None:
    """Whatever happens in whatever order: pieces and price are the last said, the days are all said, sums agree."""
    now = order_now(order(), _events(said))
    for one in now.lines:
        mine = [each for each in said if each.line == one.line.line]
        pieces = [each.pieces for each in mine if each.pieces is not None]
        prices = [each.unit_price for each in mine if each.unit_price is not None]
        assert one.pieces == (pieces[-1] if pieces else one.line.ordered)
        assert one.unit_price == (prices[-1] if prices else one.line.unit_price)
        assert [day.latest for day in one.days[1:]] == [each.latest for each in mine if each.latest]
    assert now.goods_total.amount == sum(one.goods.amount for one in now.lines)
    assert now.wanted == {one.line.line: one.pieces for one in now.lines if one.pieces}


@given(some.lists(SAID, max_size=8), some.integers(0, 8))
def test_folding_in_two_goes_is_folding_in_one(said: list[LineEvent], at: int) -> None:
    """What stood before an event never depends on what comes after it."""
    every = _events(said)
    before, after = order_now(order(), every[:at]), order_now(order(), every)
    for early, late in zip(before.lines, after.lines, strict=True):
        assert late.days[: len(early.days)] == early.days
