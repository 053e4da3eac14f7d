"""A small order and what may come of it, as values: a belt, keepers by the hundred, a starter with an old part."""

from collections.abc import Sequence
from datetime import date, datetime
from decimal import Decimal
from typing import Any

from sourcing.basics.landed_cost import CostLine
from sourcing.basics.money import Money
from sourcing.basics.order import GoodsBack, LineEvent, OrderEvent, PurchaseOrder, PurchaseOrderLine, Receipt
from sourcing.basics.order_now import OrderNow
from sourcing.basics.value import changed
from sourcing.ordering.order_now import order_now
from sourcing.ordering.receiving import LineCame, in_currency, receipt_lines
from tests.builders import usd

MONDAY = datetime(2026, 3, 2, 10, 0)


def bought(**fields: Any) -> PurchaseOrder:
    """Line 1: 2 belts at 10.00; 2: 30 keepers at 45.00 per hundred; 3: a starter at 80.00 with 25.00 for the old one.

    In all 113.50 of goods, freight 14.95.
    """
    lines = (
        _line(1, "NW-77120", 2, "10.00", 1, "20.00", weight_kg=Decimal("0.4")),
        _line(2, "NW-31207", 30, "45.00", 100, "13.50", weight_kg=Decimal("0.01")),
        _line(3, "NW-60031", 1, "80.00", 1, "80.00", core_charge=usd("25.00"), weight_kg=Decimal("3.2")),
    )
    values: dict[str, Any] = {
        "number": "PO-2026-0001",
        "supplier": "stonegarth",
        "supplier_name": "Stonegarth Trade Parts",
        "supplier_address": (),
        "shop_name": "Wickenby Yard Machine Repair",
        "ship_to": (),
        "currency": "USD",
        "placed_at": MONDAY,
        "placed_by": "Oona Brandeth",
        "need_by": None,
        "expected": None,
        "lines": lines,
        "charges": (CostLine(name="Freight", kind="freight", amount=usd("14.95"), rule="flat 14.95 USD per order"),),
        "goods_total": usd("113.50"),
        "landed_total": usd("128.45"),
        "rate": Decimal(1),
    }
    return PurchaseOrder(**{**values, **fields})


def in_euro(rate: str = "1.10") -> PurchaseOrder:
    """The same order in euros for a shop in US dollars, at that rate: freight 14.95 EUR is 16.45 USD (16.445)."""
    lines = tuple(
        changed(
            line,
            goods=Money(amount=line.goods.amount, currency="EUR"),
            core_charge=line.core_charge and Money(amount=line.core_charge.amount, currency="EUR"),
        )
        for line in bought().lines
    )
    here = Money(amount=Decimal("14.95") * Decimal(rate), currency="USD").rounded()
    charges = (CostLine(name="Freight", kind="freight", amount=here, rule="flat 14.95 EUR per order"),)
    return bought(currency="EUR", lines=lines, charges=charges, rate=Decimal(rate))


def _line(at: int, number: str, pieces: int, price: str, basis: int, goods: str, **more: Any) -> PurchaseOrderLine:
    return PurchaseOrderLine(
        line=at,
        job="2026-0001",
        revision=1,
        label=str(at),
        part=f"PART-{at}",
        supplier_number=number,
        maker_number="",
        description="",
        needed=pieces,
        ordered=pieces,
        pack=1,
        price_basis=basis,
        unit_price=Decimal(price),
        goods=usd(goods),
        goods_cost=usd(goods),
        landed=usd(goods),
        surplus_cost=usd("0.00"),
        **more,
    )


def now_of(order: PurchaseOrder | None = None, *events: OrderEvent) -> OrderNow:
    """The order as it stands after these events."""
    return order_now(order or bought(), events)


def cancelled(*lines: int) -> OrderEvent:
    """Lines of which nothing is wanted any more."""
    gone = tuple(LineEvent(line=at, pieces=0) for at in lines)
    return OrderEvent(order="PO-2026-0001", what="cancelled", at=MONDAY, who="Oona Brandeth", lines=gone)


def confirmed(line: int, price: str) -> OrderEvent:
    """A price the supplier confirmed."""
    said = (LineEvent(line=line, unit_price=Decimal(price)),)
    return OrderEvent(order="PO-2026-0001", what="confirmed", at=MONDAY, who="Oona Brandeth", lines=said)


def came(now: OrderNow, paper: str, lines: dict[int, LineCame], freight: str = "0", **fields: Any) -> Receipt:
    """A receipt of these lines, on Wednesday 4 March unless said."""
    currency = now.order.currency
    values: dict[str, Any] = {"at": datetime(2026, 3, 4, 9, 0), "rate": now.order.rate, **fields}
    return Receipt(
        order=now.order.number,
        paper=paper,
        received_by="Piet Halloway-Rusk",
        lines=receipt_lines(now, lines),
        freight=in_currency(Decimal(freight), currency),
        **values,
    )


def back(line: int, kind: str, step: str, pieces: int = 1, day: date = date(2026, 3, 6), **fields: Any) -> GoodsBack:
    """A step of goods or an old part going back."""
    values: dict[str, Any] = {"kind": kind, "step": step, "at": datetime(day.year, day.month, day.day, 9), **fields}
    return GoodsBack(order="PO-2026-0001", line=line, pieces=pieces, who="Oona Brandeth", **values)


def codes(some: Sequence[Any]) -> list[tuple[str, str | None]]:
    """Kind and amount of differences."""
    return [(one.kind, None if one.amount is None else str(one.amount.amount)) for one in some]
