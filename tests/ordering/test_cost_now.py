"""What a placed order costs as it stands now: prices confirmed, later deliveries, lines dropped; to the cent."""

from datetime import datetime
from decimal import Decimal

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.landed_cost import CostLine
from sourcing.basics.money import Money, from_minor, total
from sourcing.basics.order import LineEvent, OrderEvent, PurchaseOrder
from sourcing.basics.value import changed
from sourcing.ordering.cost_now import LATER, Further, costs_now
from sourcing.ordering.order_now import order_now
from tests.builders import usd
from tests.ordering.placed_order import FREIGHT, ORDER, placed

PLAIN = Further(later_each=usd("14.95"))


def costs(order: PurchaseOrder, further: Further = PLAIN, *lines: LineEvent) -> dict[int, Money]:
    """The cost of each line after such a word of the supplier's."""
    said = OrderEvent(order=order.number, what="confirmed", at=datetime(2026, 3, 4, 9, 0), who="Oona", lines=lines)
    return {at: one.cost for at, one in costs_now(order_now(order, [said] if lines else []), further).items()}


def whole(found: dict[int, Money]) -> Money:
    """All lines together."""
    return total(found.values(), "USD")


def test_unchanged_it_costs_what_was_kept() -> None:
    """Goods 138.30 and freight 14.95."""
    assert whole(costs(ORDER)) == usd("153.25") == ORDER.landed_total


def test_a_confirmed_price_moves_its_own_line_only() -> None:
    """10 % on the belt's 100.00; the freight was agreed and stays."""
    before, after = costs(ORDER), costs(ORDER, PLAIN, LineEvent(line=1, unit_price=Decimal("110.00")))
    assert after[1] - before[1] == usd("10.00")
    assert (after[2], after[3]) == (before[2], before[3])


def test_a_later_delivery_is_borne_by_what_waits() -> None:
    """Two deliveries, the first is in the order: 14.95 more, on the belt."""
    later = changed(PLAIN, deliveries=2, waiting=(1,))
    assert costs(ORDER, later)[1] - costs(ORDER)[1] == usd("14.95")
    assert whole(costs(ORDER, later)) - whole(costs(ORDER)) == usd("14.95")


def test_later_deliveries_that_were_reckoned_with_are_not_charged_twice() -> None:
    """The order knew of two from the start."""
    known = CostLine(name=LATER, kind="freight", amount=usd("14.95"), rule="2 deliveries")
    order = changed(ORDER, charges=(*ORDER.charges, known))
    two, three = (whole(costs(order, changed(PLAIN, deliveries=some, waiting=(1,)))) for some in (2, 3))
    assert two == whole(costs(order))
    assert three - two == usd("14.95")


def test_dropping_a_line_leaves_its_freight_to_the_rest() -> None:
    """Only its goods fall away: the 14.95 was for the order."""
    found = costs(ORDER, changed(PLAIN, dropped=(1,)))
    assert set(found) == {2, 3}
    assert whole(found) == usd("15.80") + usd("22.50") + FREIGHT
    assert costs(ORDER, changed(PLAIN, dropped=(1, 2, 3))) == {}


def test_free_freight_lost_by_dropping_is_added() -> None:
    """What freight of the rest rises by."""
    found = costs(ORDER, changed(PLAIN, dropped=(1,), freight_more=usd("9.00")))
    assert whole(found) == usd("15.80") + usd("22.50") + FREIGHT + usd("9.00")


def test_duty_on_a_dropped_line_is_not_due() -> None:
    """3.00 of duty on the belt: with the belt it goes."""
    duty = CostLine(name="Duty NW-1", kind="duty", amount=usd("3.00"), rule="3 %")
    belt, *rest = ORDER.lines
    order = changed(
        ORDER, charges=(*ORDER.charges, duty), lines=(changed(belt, landed=belt.landed + usd("3.00")), *rest)
    )
    assert whole(costs(order, changed(PLAIN, dropped=(1,)))) == whole(costs(ORDER, changed(PLAIN, dropped=(1,))))


def test_what_goes_on_the_shelf_is_taken_out_at_the_price_of_now() -> None:
    """Ten of which two are needed: 20.00 of 100.00, at 11.00 each 22.00 of 110.00."""
    order = placed(("10.00", "10.00", "10.00"), pieces=10, needed=2)
    before, after = costs(order), costs(order, PLAIN, LineEvent(line=1, unit_price=Decimal("11.00")))
    assert after[1] - before[1] == usd("2.00")


@given(
    st.tuples(*(st.integers(1, 90_000),) * 3),
    st.integers(1, 90_000),
    st.sets(st.sampled_from((1, 2, 3)), max_size=2),
    st.integers(0, 4),
)
def test_nothing_is_lost_or_counted_twice(
    prices: tuple[int, int, int], now: int, gone: set[int], deliveries: int
) -> None:
    """Any prices, lines dropped and deliveries: goods of now, the freight of the order, each later delivery."""
    order = placed(tuple(str(from_minor(one, "USD").amount) for one in prices))
    waiting = tuple(at for at in (1, 2, 3) if at not in gone)
    further = changed(PLAIN, dropped=tuple(sorted(gone)), deliveries=deliveries, waiting=waiting)
    price = from_minor(now, "USD").amount
    found = costs(order, further, *(LineEvent(line=at, unit_price=price) for at in waiting))
    later = usd("14.95") * max(deliveries - 1, 0)
    assert whole(found) == from_minor(now * len(waiting), "USD") + FREIGHT + later
