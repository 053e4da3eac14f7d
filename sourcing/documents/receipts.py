"""What came as text: the receipt just taken in, and every difference of an order."""

from collections.abc import Iterable, Mapping, Sequence

from ..basics.money import Money
from ..basics.order import Difference, PurchaseOrder, Receipt
from .plain_text import count, document, wrapped


def received_text(
    order: PurchaseOrder,
    receipt: Receipt,
    differences: Sequence[Difference],
    to_do: Sequence[str],
    open_lines: Mapping[int, int],
) -> str:
    """What came and what to do first, then what differs, what is open. Differences of earlier papers are left out."""
    pieces = sum(line.quantity for line in receipt.lines)
    good = sum(line.good for line in receipt.lines)
    beside = "" if good == pieces else f", {good} of them good"
    lines = [f"{order.number}: {count(pieces, 'piece')} taken in on paper {receipt.paper}{beside}."]
    lines += [line for words in to_do for line in wrapped(f"Look: {words}.")]
    lines += [line for one in differences if one.paper == receipt.paper for line in _difference(one)]
    if open_lines:
        still = ", ".join(f"{at} ({count(left, 'piece')})" for at, left in open_lines.items())
        lines.append(f"Lines still open: {still}.")
    else:
        lines.append("The order is complete.")
    return document(lines)


def freight_text(receipt: Receipt, shares: Mapping[int, Money]) -> str:
    """How the freight of a paper is shared; blank where there is none, or one line bears it all."""
    if not receipt.freight.amount or len(shares) < 2:
        return ""
    parts = ", ".join(f"line {at} {share}" for at, share in shares.items())
    return document(wrapped(f"Freight {receipt.freight} shared by {receipt.freight_by}: {parts}."))


def differences_text(order: str, supplier: str, found: Sequence[Difference], claimed: Money, credited: Money) -> str:
    """Every difference of an order, and what of it can be claimed."""
    if not found:
        return document([f"{order}: all that came so far is as ordered from {supplier}."])
    lines = [f"{order}, {supplier}:"]
    lines += [line for one in found for line in _difference(one, 2)]
    if claimed.amount:
        back = f", {credited} of it given back already" if credited.amount else ""
        lines.append(f"To be claimed: {claimed}{back} ('sourcing claim {order}' writes the paper).")
    return document(lines)


def _difference(one: Difference, indent: int = 0) -> Iterable[str]:
    amount = f", {one.amount}" if one.amount else ""
    return wrapped(f"Differs: {one.what}{amount}.", indent)
