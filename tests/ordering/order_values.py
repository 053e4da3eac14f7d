"""Orders and what happened to them, as values written out by hand."""

from datetime import date, datetime
from decimal import Decimal

from sourcing.basics.money import Money
from sourcing.basics.order import (
    EventKind,
    LineEvent,
    OrderEvent,
    PurchaseOrder,
    PurchaseOrderLine,
    Receipt,
    ReceiptLine,
)
from sourcing.basics.value import changed
from tests.builders import usd

PLACED = datetime(2026, 3, 2, 11, 0)


def line(at: int, number: str, ordered: int, price: str, goods: str, **fields: object) -> PurchaseOrderLine:
    """A line for line `at` of job 2026-0001; goods in USD."""
    made = PurchaseOrderLine(
        line=at,
        job="2026-0001",
        revision=1,
        label=str(at),
        part=f"PART-{at}",
        supplier_number=number,
        maker_number="",
        description="",
        needed=ordered,
        ordered=ordered,
        pack=1,
        price_basis=1,
        unit_price=Decimal(price),
        goods=usd(goods),
        goods_cost=usd(goods),
        landed=usd(goods),
        surplus_cost=usd("0.00"),
    )
    return changed(made, **fields)


def order(*lines: PurchaseOrderLine, **fields: object) -> PurchaseOrder:
    """An order of a belt and four keepers in packs of two, placed on Monday, expected on Wednesday."""
    own = lines or (
        line(1, "NW-77120", 1, "139.00", "139.00"),
        line(2, "NW-31207", 4, "15.80", "63.20", pack=2, needed=3),
    )
    made = PurchaseOrder(
        number="PO-2026-0001",
        supplier="stonegarth",
        supplier_name="Stonegarth Trade Parts",
        supplier_address=(),
        shop_name="Wickenby Yard Machine Repair",
        ship_to=(),
        currency="USD",
        placed_at=PLACED,
        placed_by="Oona Brandeth",
        need_by=date(2026, 3, 6),
        expected=(date(2026, 3, 4), date(2026, 3, 4)),
        lines=own,
        charges=(),
        goods_total=Money(amount=sum((one.goods.amount for one in own), Decimal(0)), currency="USD"),
        landed_total=usd("202.20"),
    )
    return changed(made, **fields)


def event(what: EventKind, *lines: LineEvent, day: int = 3, said_by: str = "") -> OrderEvent:
    """Something that happened in March."""
    return OrderEvent(
        order="PO-2026-0001",
        what=what,
        at=datetime(2026, 3, day, 10, 0),
        who="Oona Brandeth",
        said_by=said_by,
        lines=lines,
    )


def receipt(pieces: dict[int, int], damaged: int = 0) -> Receipt:
    """A delivery of these pieces by line; `damaged` of the first line's."""
    first = min(pieces)
    return Receipt(
        order="PO-2026-0001",
        paper="DN-1",
        at=datetime(2026, 3, 4, 9, 0),
        received_by="Piet Halloway-Rusk",
        lines=tuple(
            ReceiptLine(line=at, quantity=count, unit_price=Decimal(1), damaged=damaged if at == first else 0)
            for at, count in pieces.items()
        ),
        freight=usd("0.00"),
        rate=Decimal(1),
    )
