"""Receipts against an order: what may be taken in, and what each line then costs and bears of the freight."""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.money import Money, is_amount, round_half_up, share_out
from ..basics.order import Came, PurchaseOrder, PurchaseOrderLine, Receipt, ReceiptLine
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..basics.problem import refused
from ..basics.value import Value
from .order_now import line_goods

MOST_PIECES = 999_999_999
"""Pieces of a line: more is a slip of the hand."""


class LineCame(Value, frozen=True, kw_only=True):
    """What is said of one line of a delivery. `pieces` all that came. None: as many, or as much, as ordered or as came.

    `price` is per the order's price basis in the supplier's currency. The rest as in `ReceiptLine`.
    """

    pieces: int
    price: Decimal | None = None
    on_paper: int | None = None
    damaged: int = 0
    number: str = ""
    under_number: int | None = None
    came: Came = "as ordered"
    why: str = ""
    keeps_more: bool = False
    core: Decimal | None = None


def receipt_lines(now: OrderNow, came: Mapping[int, LineCame]) -> tuple[ReceiptLine, ...]:
    """The lines of a receipt. Prices are those agreed now and core charges the order's, where none is said.

    Refuses a line the order does not have, goods of a cancelled line, counts that can't hold together, amounts below
    zero.
    """
    order = now.order
    for at, said in came.items():
        line = now.line(at)
        if line is None:
            known = ", ".join(str(one.line) for one in order.lines)
            raise refused("no-such-order-line", line=at, order=order.number, known=known)
        if line.cancelled and said.pieces:
            raise refused("line-was-cancelled", line=at, order=order.number)
        _refuse_counts(order.number, at, said)
        for amount in (said.price, said.core):
            if amount is not None and not is_amount(amount):
                raise refused("not-an-amount", found=amount)
            if amount is not None and amount < 0:
                raise refused("charged-below-zero", line=at, order=order.number, found=amount)
    return tuple(_receipt_line(line, came[line.line.line]) for line in now.lines if line.line.line in came)


def _refuse_counts(order: str, at: int, said: LineCame) -> None:
    """Where no pieces came it is a receipt only if the paper charges some. The wrong and the damaged are apart."""
    if said.pieces < 0 or (said.pieces == 0 and not said.on_paper):
        raise refused("nothing-received", line=at, order=order, found=said.pieces)
    for found in (said.pieces, said.on_paper or 0):
        if not 0 <= found <= MOST_PIECES:
            raise refused("not-so-many", line=at, order=order, found=found)
    bear = said.under_number
    if bear is not None and not (said.number and 1 <= bear <= said.pieces):
        raise refused("more-than-came", line=at, order=order, found=f"{bear} under another number", came=said.pieces)
    wrong = 0 if said.came in ("as ordered", "same part") else said.pieces if bear is None else bear
    if said.damaged < 0 or said.damaged + wrong > said.pieces:
        told = f"{said.damaged} damaged" + (f" beside {wrong} under another number" if wrong else "")
        raise refused("more-than-came", line=at, order=order, found=told, came=said.pieces)


def _receipt_line(now: LineNow, said: LineCame) -> ReceiptLine:
    line = now.line
    on_paper = said.pieces if said.on_paper is None else said.on_paper
    core = core_for(line, on_paper) if said.core is None else in_currency(said.core, line.goods.currency)
    return ReceiptLine(
        line=line.line,
        quantity=said.pieces,
        unit_price=now.unit_price if said.price is None else said.price,
        damaged=said.damaged,
        number=said.number,
        came=said.came,
        why=said.why,
        on_paper=said.on_paper,
        under_number=said.under_number,
        keeps_more=said.keeps_more,
        core_charge=core,
    )


def core_for(line: PurchaseOrderLine, pieces: int) -> Money | None:
    """The order's core charge for so many pieces of the line, rounded once; None where none is stated."""
    charge = line.core_charge
    if charge is None or not charge.amount:
        return None
    return Money(amount=charge.amount * pieces / line.ordered, currency=charge.currency).rounded()


def in_currency(amount: Decimal, currency: str) -> Money:
    """A typed amount in that currency, half up to its minor unit. Refuses what no amount can be."""
    if not is_amount(amount):
        raise refused("not-an-amount", found=amount)
    return Money(amount=round_half_up(amount, minor_units(currency)), currency=currency)


def same_paper(receipts: Sequence[Receipt], paper: str) -> Receipt | None:
    """The receipt that has this paper's number already, whatever its case, blanks and hyphens; None: there is none."""
    key = number_key(paper)
    return next((one for one in receipts if number_key(one.paper) == key), None)


def charged(order: PurchaseOrder, line: ReceiptLine) -> Money:
    """What all pieces that came on a receipt line cost at the price charged, see `charged_for`."""
    return charged_for(order, line, line.quantity)


def charged_for(order: PurchaseOrder, line: ReceiptLine, pieces: int) -> Money:
    """What so many pieces of a receipt line cost at the price charged, in the supplier's currency."""
    return goods_at(order, line.line, pieces, line.unit_price)


def goods_at(order: PurchaseOrder, at: int, pieces: int, unit_price: Decimal) -> Money:
    """Pieces of a line at a price: rounded at the line, then less the supplier's discount, rounded again."""
    return line_goods(order, ordered_line(order, at), pieces, unit_price)


def ordered_line(order: PurchaseOrder, at: int) -> PurchaseOrderLine:
    """The order's line of that number. StopIteration is a bug: the caller checked it."""
    return next(line for line in order.lines if line.line == at)


def freight_shares(order: PurchaseOrder, receipt: Receipt) -> dict[int, Money]:
    """The receipt's freight over its lines, by the value of what came or by its weight; the shares sum to it.

    A line of which nothing came bears none. Refuses a sharing by weight where the weight of a line is not known.
    """
    lines = [line for line in receipt.lines if line.quantity]
    if receipt.freight_by == "weight":
        _refuse_unknown_weight(order, receipt)
        weights = [(ordered_line(order, line.line).weight_kg or Decimal(0)) * line.quantity for line in lines]
    else:
        weights = [charged(order, line).amount for line in lines]
    shares = share_out(receipt.freight, weights)
    return {line.line: share for line, share in zip(lines, shares, strict=True)}


def _refuse_unknown_weight(order: PurchaseOrder, receipt: Receipt) -> None:
    blank = [line.line for line in receipt.lines if line.quantity and ordered_line(order, line.line).weight_kg is None]
    if blank:
        raise refused("weight-not-known", order=order.number, lines=", ".join(map(str, blank)))
