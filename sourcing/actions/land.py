"""Items of one supplier as one order: what it costs at the door and when all of it is here."""

from collections.abc import Sequence
from datetime import datetime

from ..basics.landed_cost import OrderItem
from ..basics.plan import PlannedOrder
from ..landed_cost.arrival import deliveries_of, order_arrival
from ..landed_cost.door import Door
from ..landed_cost.order import landed_order


def land_at(items: Sequence[OrderItem], door: Door, at: datetime) -> PlannedOrder:
    """Items as one order placed at that moment, in as many deliveries as they come in."""
    here = order_arrival(items, door, at)
    deliveries = deliveries_of([here], door.terms.split)
    return PlannedOrder(landed=landed_order(items, door, deliveries), arrival=here)
