"""A placed order as a value: belt and bar for one job, an idler for another, 14.95 freight shared by value."""

from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.landed_cost import CostLine
from sourcing.basics.money import from_minor, share_out, total
from sourcing.basics.order import PurchaseOrder, PurchaseOrderLine
from tests.builders import usd

PLACED = datetime(2026, 3, 2, 11, 0)
WHOSE = (("2026-0001", "1", "BELT", "100.00"), ("2026-0001", "2", "BAR", "15.80"), ("2026-0002", "1", "IDLER", "22.50"))
PRICES = tuple(price for *_, price in WHOSE)
FREIGHT = usd("14.95")


def placed(prices: tuple[str, ...] = PRICES, pieces: int = 1, needed: int = 1) -> PurchaseOrder:
    """The order at these prices, every line in so many pieces of which so many are needed."""
    goods = [(usd(price) * pieces).rounded() for price in prices]
    shares = share_out(FREIGHT, [one.minor() for one in goods])
    lines = tuple(
        PurchaseOrderLine(
            line=at,
            job=job,
            revision=1,
            label=label,
            part=part,
            supplier_number=f"NW-{at}",
            maker_number="",
            description="",
            needed=needed,
            ordered=pieces,
            pack=1,
            price_basis=1,
            unit_price=Decimal(prices[at - 1]),
            goods=goods[at - 1],
            goods_cost=goods[at - 1],
            landed=goods[at - 1] + shares[at - 1],
            surplus_cost=from_minor(goods[at - 1].minor() * (pieces - needed) // pieces, "USD"),
        )
        for at, (job, label, part, _) in enumerate(WHOSE, 1)
    )
    return PurchaseOrder(
        number="PO-2026-0001",
        supplier="stonegarth",
        supplier_name="Stonegarth Trade Parts",
        supplier_address=(),
        shop_name="Wickenby Yard Machine Repair",
        ship_to=(),
        currency="USD",
        placed_at=PLACED,
        placed_by="Oona Brandeth",
        need_by=None,
        expected=(date(2026, 3, 4), date(2026, 3, 4)),
        lines=lines,
        charges=(CostLine(name="Freight", kind="freight", amount=FREIGHT, rule="flat"),),
        goods_total=total(goods, "USD"),
        landed_total=total(goods, "USD") + FREIGHT,
        rate=Decimal(1),
    )


ORDER = placed()
