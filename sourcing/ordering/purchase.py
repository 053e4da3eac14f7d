"""Purchase orders from approved lines: what is still to be ordered of them, and the order for one supplier's share."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime
from decimal import Decimal

from ..basics.landed_cost import LandedItem
from ..basics.money import Money
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.plan import PlannedOrder
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..basics.value import Value


class Wanted(Value, frozen=True, kw_only=True):
    """An approved line: the job, the quote's revision and label, our part, the pieces approved, and for the shop's own
    eyes the category and the reasons for this offer."""

    job: str
    revision: int
    label: str
    part: str
    quantity: int
    category: str = ""
    reasons: tuple[str, ...] = ()

    @property
    def need(self) -> str:
        """The name under which its item stands in a planned order: job and label, so that jobs can share an order."""
        return f"{self.job}/{self.label}"

    @property
    def key(self) -> tuple[str, str, str]:
        """What it is known by on earlier orders: job, label and part."""
        return self.job, self.label, self.part


class StillToOrder(Value, frozen=True, kw_only=True):
    """An approved line of which pieces are on no order yet. `counted`: what was taken as ordered though its label
    differs, for a person to see."""

    wanted: Wanted
    pieces: int
    counted: tuple[str, ...] = ()


class Placing(Value, frozen=True, kw_only=True):
    """Who places the order, when, and by when the parts are needed; the rate of the day, a note for the supplier, and
    why the goods are bought together."""

    at: datetime
    by: str
    need_by: date | None
    rate: Decimal | None = None
    note: str = ""
    reasons: tuple[str, ...] = ()


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
        reasons=placing.reasons,
        rate=placing.rate,
        shop_telephone=settings.shop.telephone,
        shop_email=settings.shop.email,
        supplier_note=placing.note,
        locale=settings.locale,
        paper_size=settings.paper_size,
    )


def still_to_order(wanted: Sequence[Wanted], standing: Mapping[tuple[str, str, str], int]) -> list[StillToOrder]:
    """The approved lines of which pieces are still to be ordered, with how many. `wanted` are all approved lines of
    their jobs, `standing` the pieces on orders by job, label and part, cancelled ones left out.

    A line counts by job, label and part, whatever its revision. Pieces under a label that no approved line of that part
    has any more (a line was taken out of the job and the others moved up) are counted for the part, and that is said.
    """
    loose = {key: pieces for key, pieces in standing.items() if key not in {one.key for one in wanted}}
    result = []
    for one in wanted:
        left = one.quantity - standing.get(one.key, 0)
        counted = []
        for key in [key for key, pieces in loose.items() if pieces > 0 and (key[0], key[2]) == (one.job, one.part)]:
            if left > 0:
                taken = min(left, loose[key])
                loose[key] -= taken
                left -= taken
                counted.append(f"{taken} ordered as line {key[1]} of job {key[0]} count for line {one.label}")
        if left > 0 or counted:
            result.append(StillToOrder(wanted=one, pieces=max(left, 0), counted=tuple(counted)))
    return result


def _line(at: int, item: LandedItem, wanted: Wanted) -> PurchaseOrderLine:
    offer = item.item.offer
    pieces = item.item.ordered
    core = offer.core_charge
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
        ordered=pieces,
        pack=offer.pack,
        price_basis=offer.price_basis,
        unit_price=item.unit_price,
        goods=item.goods,
        goods_cost=item.goods_cost,
        landed=item.landed,
        surplus_cost=item.surplus_cost,
        core_charge=None if core is None else Money(amount=core * pieces, currency=offer.currency).rounded(),
        weight_kg=offer.weight_kg,
        reasons=wanted.reasons,
        category=wanted.category,
    )
