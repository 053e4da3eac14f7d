"""Priced offers with figures said outright: what they cost, part by part, and when they come."""

from datetime import date, timedelta
from decimal import Decimal
from typing import Any

from sourcing.basics.choice import Priced
from sourcing.basics.equivalence import Path, Standing
from sourcing.basics.landed_cost import Arrival, CostKind, CostLine, LandedItem, LandedOrder, Missing
from sourcing.basics.money import Money, total
from tests.builders import item, number, offer, statement, usd

ASKED = date(2026, 1, 13)
"""The day of asking in these tests: a Tuesday."""
KINDS: tuple[CostKind, ...] = ("freight", "duty", "entry fee", "small-order fee", "tax")


def priced(
    supplier: str = "larkmoor",
    goods: str = "100.00",
    days: int | None = 3,
    standing: Standing = "fitted",
    missing: tuple[Missing, ...] = (),
    **fields: Any,
) -> Priced:
    """An offer of one piece (or `needed`, `ordered`) whose goods cost that much, here after so many days.

    Charges are named by their kind with '_' for a blank: `freight='12.50'`, `entry_fee='13.00'`. `shelf` is the part of
    the goods that lies on the shelf. What else is given is the offer's own.
    """
    charges = [(kind, fields.pop(kind.replace(" ", "_").replace("-", "_"), None)) for kind in KINDS]
    rule, shelf = fields.pop("rule", "flat"), usd(fields.pop("shelf", "0.00"))
    needed = fields.pop("needed", 1)
    ordered = fields.pop("ordered", needed)
    of = offer(supplier, **fields)
    lines = [CostLine(name=f"Goods {of.supplier_number}", amount=usd(goods), rule="1 x", kind="goods")]
    lines += [
        CostLine(name=kind.capitalize(), amount=usd(amount), rule=rule, kind=kind)
        for kind, amount in charges
        if amount is not None
    ]
    return Priced(
        offer=of,
        supplier_name=supplier.title(),
        path=_path(standing),
        matched_number="Norrowby NW-40388",
        landed=_landed(lines, item(of, needed, ordered), shelf, missing),
        arrival=_arrival(days),
    )


def _path(standing: Standing) -> Path:
    if standing == "fitted":
        return Path()
    return Path(links=(statement(number("BELT"), "same part", number("NW-40388", "Norrowby"), standing),))


def _arrival(days: int | None) -> Arrival:
    last = None if days is None else ASKED + timedelta(days=days)
    return Arrival(earliest=last, latest=last, steps=())


def _landed(lines: list[CostLine], of: Any, shelf: Money, missing: tuple[Missing, ...]) -> LandedOrder:
    goods = lines[0].amount
    whole = total((line.amount for line in lines), "USD")
    one = LandedItem(
        item=of, unit_price=Decimal(goods.amount / of.ordered), goods=goods, goods_cost=goods, duty=usd("0.00"),
        landed=whole, surplus_cost=shelf, core_charge=usd("0.00"),
    )  # fmt: skip
    return LandedOrder(
        supplier=of.offer.supplier, supplier_name=of.offer.supplier.title(), items=(one,), lines=tuple(lines),
        total=whole, order_value=goods, core_charge=usd("0.00"), missing=missing,
        freight=total((line.amount for line in lines if line.is_freight), "USD"),
    )  # fmt: skip
