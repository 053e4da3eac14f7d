"""Receipts against an order: what may be taken in, what is still open, what differs from the order."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.money import Money, percent_of
from ..basics.order import Difference, PurchaseOrder, PurchaseOrderLine, Receipt, ReceiptLine
from ..basics.problem import refused


def receipt_lines(
    order: PurchaseOrder, quantities: Mapping[int, int], prices: Mapping[int, Decimal]
) -> tuple[ReceiptLine, ...]:
    """The lines of a receipt: pieces by line number, prices charged where they differ from the order.

    Refuses a line the order does not have, a quantity below one, a price below zero, a price for a line that did not
    come. Prices are per the order's price basis, in the supplier's currency.
    """
    lines = {line.line: line for line in order.lines}
    for at in (*quantities, *prices):
        if at not in lines:
            raise refused("no-such-order-line", line=at, order=order.number, known=", ".join(map(str, lines)))
    for at, price in prices.items():
        if at not in quantities:
            raise refused("price-without-goods", line=at, order=order.number)
        if price < 0:
            raise refused("charged-below-zero", line=at, order=order.number, found=price)
    for at, count in quantities.items():
        if count < 1:
            raise refused("nothing-received", line=at, order=order.number, found=count)
    return tuple(
        ReceiptLine(line=at, quantity=count, unit_price=prices.get(at, lines[at].unit_price))
        for at, count in sorted(quantities.items())
    )


def still_open(order: PurchaseOrder, receipts: Sequence[Receipt]) -> dict[int, int]:
    """Pieces not yet received by line number; lines that are complete are left out."""
    came = received_pieces(receipts)
    left = {line.line: line.ordered - came.get(line.line, 0) for line in order.lines}
    return {at: pieces for at, pieces in left.items() if pieces > 0}


def received_pieces(receipts: Sequence[Receipt]) -> dict[int, int]:
    """Pieces received so far by line number."""
    came: dict[int, int] = {}
    for receipt in receipts:
        for line in receipt.lines:
            came[line.line] = came.get(line.line, 0) + line.quantity
    return came


def differences(order: PurchaseOrder, receipts: Sequence[Receipt]) -> tuple[Difference, ...]:
    """What did not come as ordered: price, more than ordered, still open."""
    found = [
        difference
        for receipt in receipts
        for line in receipt.lines
        for difference in _price_difference(order, line, receipt.paper)
    ]
    came = received_pieces(receipts)
    for ordered in order.lines:
        gap = came.get(ordered.line, 0) - ordered.ordered
        if gap:
            what = f"{gap} more than ordered" if gap > 0 else f"{-gap} of {ordered.ordered} still open"
            words = f"{ordered.supplier_number}: {what}"
            found.append(Difference(order=order.number, line=ordered.line, what=words, amount=None))
    return tuple(found)


def charged(order: PurchaseOrder, line: ReceiptLine) -> Money:
    """What a receipt line costs in the supplier's currency: rounded at the line, then less his discount."""
    basis = Decimal(_ordered(order, line.line).price_basis)
    full = Money(amount=line.unit_price * line.quantity / basis, currency=order.currency).rounded()
    return full - percent_of(full, order.discount_percent)


def _ordered(order: PurchaseOrder, at: int) -> PurchaseOrderLine:
    return next(line for line in order.lines if line.line == at)


def _price_difference(order: PurchaseOrder, line: ReceiptLine, paper: str) -> list[Difference]:
    ordered = _ordered(order, line.line)
    if line.unit_price == ordered.unit_price:
        return []
    basis = Decimal(ordered.price_basis)
    gap = (line.unit_price - ordered.unit_price) * line.quantity / basis
    amount = Money(amount=gap, currency=order.currency).rounded()
    what = f"{ordered.supplier_number}: charged {line.unit_price} instead of {ordered.unit_price} on paper {paper}"
    return [Difference(order=order.number, line=line.line, what=what, amount=amount)]
