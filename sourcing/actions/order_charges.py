"""What a change does to what an order costs: the price in another number of pieces, freight and fees it now bears."""

from collections.abc import Iterator, Mapping
from datetime import date, datetime
from decimal import Decimal

from sqlalchemy import Connection

from ..basics.landed_cost import CostLine, LandedOrder, OrderItem
from ..basics.offer import Offer, PriceBreak, SheetRow
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..basics.problem import Refused
from ..basics.value import changed
from ..landed_cost.quantity import price_each
from ..storage.offers import offers_by_keys
from .desk import shop_now
from .land import land_at
from .sorted_offers import ShopAt


def charges_lost(connection: Connection, at: datetime, before: OrderNow, after: OrderNow) -> tuple[str, ...]:
    """What else the order costs by the terms of today once lines were changed or cancelled: freight that is no longer
    free, a small-order fee, a minimum that is no longer reached. Nothing where all of it is cancelled."""
    if after.cancelled:
        return ()
    try:
        here = ShopAt(at=at, shop=shop_now(connection, at))
        old, new = _landed(connection, here, before), _landed(connection, here, after)
    except Refused as refusal:
        return (f"what the change does to freight and fees can't be told: {refusal.problems[0].what}",)
    return tuple(_lost(old, new))


def prices_for(
    connection: Connection, at: datetime, now: OrderNow, pieces: Mapping[int, int]
) -> tuple[dict[int, Decimal], tuple[str, ...]]:
    """The price of each line in its new number of pieces where it is another than agreed; and what is to be asked.

    Only where the price agreed is the sheet's own does the sheet's price for the new number take its place.
    """
    terms = shop_now(connection, at).terms.get(now.order.supplier)
    prices: dict[int, Decimal] = {}
    asked: list[str] = []
    for at_line, count in pieces.items():
        line = now.line(at_line)
        if line is None or line.cancelled or count < 1:  # refused by the caller, in its own words
            continue
        offer = _offer_of(connection, now.order, line.line, at.date())
        if offer is None or terms is None:
            asked.append(f"line {at_line}: not on the newest sheet; ask whether the price holds for {count} pieces")
            continue
        old, new = (price_each(offer, some, terms.breaks) for some in (line.pieces, count))
        what = f"{new} {now.order.currency} for {count} pieces by the sheet, {line.unit_price} agreed"
        if new != line.unit_price and old == line.unit_price:
            prices[at_line] = new
            asked.append(f"line {at_line}: {what}; the sheet's is put on the order")
        elif new != old:
            asked.append(f"line {at_line}: {what}; ask which holds")
    return prices, tuple(asked)


def _landed(connection: Connection, here: ShopAt, now: OrderNow) -> LandedOrder:
    items = [_item(connection, here, now, line) for line in now.lines if line.pieces]
    return land_at(items, here.door(now.order.supplier), here.at).landed


def _item(connection: Connection, here: ShopAt, now: OrderNow, line: LineNow) -> OrderItem:
    """The line's pieces at the price agreed; all else of the goods as the newest sheet says it, or as it was noted."""
    offer = _offer_of(connection, now.order, line.line, here.at.date()) or _as_noted(now.order, line.line)
    agreed = changed(offer, breaks=(PriceBreak(from_quantity=1, price=line.unit_price),))
    placed = line.line
    needed = min(placed.needed, line.pieces)
    return OrderItem(need=f"{placed.job}/{placed.label}", offer=agreed, needed=needed, ordered=line.pieces)


def _offer_of(connection: Connection, order: PurchaseOrder, line: PurchaseOrderLine, day: date) -> Offer | None:
    """The one offer of the line's numbers on the supplier's newest sheet; None where there is none, or several."""
    own = (order.supplier, line.supplier_number, line.maker_number, line.price_basis)
    found = [
        one
        for one in offers_by_keys(connection, {number_key(line.supplier_number)}, day)
        if (one.supplier, one.supplier_number, one.maker_number, one.price_basis) == own and one.breaks
    ]
    return found[0] if len(found) == 1 else None


def _as_noted(order: PurchaseOrder, line: PurchaseOrderLine) -> Offer:
    nowhere = SheetRow(sheet=0, file="", worksheet="", row=0, sheet_date=order.placed_at.date())
    return Offer(
        supplier=order.supplier,
        supplier_number=line.supplier_number,
        currency=order.currency,
        source=nowhere,
        maker_number=line.maker_number,
        price_basis=line.price_basis,
        pack=line.pack,
        weight_kg=line.weight_kg,
    )


def _lost(old: LandedOrder, new: LandedOrder) -> Iterator[str]:
    if new.missing or old.missing:
        what = "; ".join(one.what for one in new.missing or old.missing)
        yield f"what the change does to freight and fees can't be told: {what}"
    before = {_name(line): line for line in old.lines if not line.is_goods}
    for line in new.lines:
        was = before.get(_name(line))
        if line.is_goods or line.kind == "duty" or line.amount.amount <= (was.amount.amount if was else 0):
            continue
        free = was is not None and not was.amount.amount and line.is_freight
        start = "free freight is no longer passed: " if free and was and was.rule.startswith("free") else ""
        then = f"{was.amount} before" if was else "none before"
        yield f"{start}{line.name.lower()} {line.amount}, {then} ({line.rule}); ask the supplier whether he charges it"
    kept = {_name(line) for line in new.lines}
    for name, line in before.items():
        if line.amount.amount < 0 and name not in kept:
            yield f"{line.name.lower()} {line.amount} is no longer passed ({line.rule})"
    if new.refusal and not old.refusal:
        yield f"{new.refusal}: ask the supplier whether he still takes it"


def _name(line: CostLine) -> tuple[str, str]:
    return line.kind, line.name
