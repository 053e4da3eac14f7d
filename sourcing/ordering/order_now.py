"""An order as it stands now: as it was placed, with everything that happened to it since folded in, oldest first."""

from collections.abc import Iterable, Mapping, Sequence
from decimal import Decimal

from ..basics.money import Money, percent_of
from ..basics.order import LineEvent, OrderEvent, PurchaseOrder, PurchaseOrderLine, Receipt
from ..basics.order_now import LineNow, OrderNow, SaidDays
from ..basics.value import changed


def order_now(order: PurchaseOrder, events: Sequence[OrderEvent] = ()) -> OrderNow:
    """The order after its events, which are taken in the order recorded; those of another order are left out.

    What an event does not say of a line stays as it was. A day said is added to those said before, never put over one.
    """
    own = tuple(event for event in events if event.order == order.number)
    lines = {line.line: _as_placed(order, line) for line in order.lines}
    for event in own:
        for said in event.lines:
            if said.line in lines:
                lines[said.line] = _after(order, lines[said.line], said, event)
    return OrderNow(order=order, lines=tuple(lines.values()), events=own)


def line_goods(order: PurchaseOrder, line: PurchaseOrderLine, pieces: int, unit_price: Decimal) -> Money:
    """What so many pieces of a line cost at that price (per its price basis): rounded at the line, then less the
    supplier's discount. As placed where neither differs, for a price by breaks may be of several parts."""
    if pieces == line.ordered and unit_price == line.unit_price:
        return line.goods
    full = Money(amount=unit_price * pieces / Decimal(line.price_basis), currency=order.currency).rounded()
    return full - percent_of(full, order.discount_percent)


def pieces_standing(some: Iterable[OrderNow]) -> dict[tuple[str, str, str], int]:
    """Pieces on order and not cancelled, by job, label and part."""
    found: dict[tuple[str, str, str], int] = {}
    for now in some:
        for one in now.lines:
            if one.pieces:
                key = (one.line.job, one.line.label, one.line.part)
                found[key] = found.get(key, 0) + one.pieces
    return found


def good_pieces(receipts: Sequence[Receipt]) -> dict[int, int]:
    """Good pieces received so far by line number: what is damaged or wrong is not among them."""
    came: dict[int, int] = {}
    for receipt in receipts:
        for line in receipt.lines:
            came[line.line] = came.get(line.line, 0) + line.good
    return came


def open_pieces(now: OrderNow, came: Mapping[int, int]) -> dict[int, int]:
    """Pieces wanted and not yet received by line number; complete and cancelled lines are left out."""
    left = {at: pieces - came.get(at, 0) for at, pieces in now.wanted.items()}
    return {at: pieces for at, pieces in left.items() if pieces > 0}


def _as_placed(order: PurchaseOrder, line: PurchaseOrderLine) -> LineNow:
    days = order.expected
    said = (SaidDays(earliest=days[0], latest=days[1], at=order.placed_at),) if days else ()
    return LineNow(
        line=line,
        pieces=line.ordered,
        unit_price=line.unit_price,
        goods=line.goods,
        number=line.supplier_number,
        days=said,
    )


def _after(order: PurchaseOrder, now: LineNow, said: LineEvent, event: OrderEvent) -> LineNow:
    pieces = now.pieces if said.pieces is None else said.pieces
    price = now.unit_price if said.unit_price is None else said.unit_price
    days = now.days
    latest = said.latest or said.earliest
    if latest is not None:
        said_by = event.said_by or order.supplier_name
        days += (SaidDays(earliest=said.earliest or latest, latest=latest, at=event.at, said_by=said_by),)
    return changed(
        now,
        pieces=pieces,
        unit_price=price,
        goods=line_goods(order, now.line, pieces, price),
        number=said.number or now.number,
        days=days,
    )
