"""Purchase orders from approved lines, and the check that holds back what the customer's yes no longer covers."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime

from ..basics.landed_cost import LandedItem
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.plan import PlannedOrder
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..basics.value import Value


class Wanted(Value, frozen=True, kw_only=True):
    """An approved line: the job, the quote's revision and label, and our part."""

    job: str
    revision: int
    label: str
    part: str

    @property
    def need(self) -> str:
        """The name under which its item stands in a planned order: job and label, so that jobs can share an order."""
        return f"{self.job}/{self.label}"


class Placing(Value, frozen=True, kw_only=True):
    """Who places the order, when, and by when the parts are needed."""

    at: datetime
    by: str
    need_by: date | None


def purchase_order(
    number: str,
    planned: PlannedOrder,
    wanted: Mapping[str, Wanted],
    terms: Terms,
    settings: Settings,
    placing: Placing,
) -> PurchaseOrder:
    """The order for one supplier's share; `wanted` by need. Its landed total is the plan's, to the cent."""
    landed = planned.landed
    arrives = planned.arrival
    goods = landed.order_value
    return PurchaseOrder(
        number=number,
        supplier=landed.supplier,
        supplier_name=landed.supplier_name,
        supplier_address=terms.address,
        shop_name=settings.shop.name,
        ship_to=settings.shop.address,
        currency=terms.currency,
        placed_at=placing.at,
        placed_by=placing.by,
        need_by=placing.need_by,
        expected=(arrives.earliest, arrives.latest) if arrives.earliest and arrives.latest else None,
        lines=tuple(_line(at, item, wanted[item.item.need]) for at, item in enumerate(landed.items, 1)),
        charges=tuple(line for line in landed.lines if not line.is_goods),
        goods_total=goods,
        landed_total=landed.total,
        discount_percent=terms.discount_percent,
    )


def not_yet_ordered(wanted: Sequence[Wanted], orders: Sequence[PurchaseOrder]) -> list[Wanted]:
    """The approved lines that stand on no order yet. A line counts by job and label, whatever its revision."""
    done = {(line.job, line.label) for order in orders for line in order.lines}
    return [one for one in wanted if (one.job, one.label) not in done]


def _line(at: int, item: LandedItem, wanted: Wanted) -> PurchaseOrderLine:
    offer = item.item.offer
    return PurchaseOrderLine(
        line=at,
        job=wanted.job,
        revision=wanted.revision,
        label=wanted.label,
        part=wanted.part,
        supplier_number=offer.supplier_number,
        maker_number=offer.maker_number,
        description=offer.description,
        needed=item.item.needed,
        ordered=item.item.ordered,
        pack=offer.pack,
        price_basis=offer.price_basis,
        unit_price=item.unit_price,
        goods=item.goods,
        goods_cost=item.goods_cost,
        landed=item.landed,
        surplus_cost=item.surplus_cost,
    )
