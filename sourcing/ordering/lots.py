"""What of a line can go back, in lots: old parts of good pieces, pieces at fault, good pieces; receipt by receipt."""

from collections.abc import Iterator, Sequence
from datetime import date

from ..basics.money import Money
from ..basics.order import Receipt, ReceiptLine
from ..basics.order_now import OrderNow
from ..basics.value import Value
from .claims import line_differences, over_pieces
from .receiving import goods_at, ordered_line


class Lot(Value, frozen=True, kw_only=True):
    """Pieces alike: what stands on them, why they go or may go back, the day they came, what was charged for all of
    them in the supplier's currency, and whether they go back at his cost (old parts bear no fee either)."""

    pieces: int
    number: str
    why: str
    since: date
    amount: Money
    at_his_cost: bool


def core_lots(now: OrderNow, at: int, came: Sequence[Receipt]) -> Iterator[Lot]:
    """An old part for every good piece whose paper charges one; what goes back as too much takes its charge along."""
    for before, receipt, line in _lines(came, at):
        charge, paper = line.core_charge, line.charged_pieces
        pieces = line.good if line.keeps_more else line.good - over_pieces(now, before, line)
        if charge is not None and charge.amount > 0 and pieces > 0 and paper:
            amount = Money(amount=charge.amount * min(pieces, paper) / paper, currency=charge.currency).rounded()
            yield Lot(
                pieces=pieces,
                number=ordered_line(now.order, at).supplier_number,
                why=f"old part, charged on paper {receipt.paper}",
                since=receipt.at.date(),
                amount=amount,
                at_his_cost=True,
            )


def goods_lots(now: OrderNow, at: int, came: Sequence[Receipt]) -> Iterator[Lot]:
    """Pieces at fault with what they were charged, as it is claimed; and good pieces at the price charged."""
    for before, receipt, line in _lines(came, at):
        over = 0 if line.keeps_more else over_pieces(now, before, line)
        lost: dict[str, Money] = {
            one.kind: one.amount for one in line_differences(now, before, receipt, line) if one.amount is not None
        }
        ordered = ordered_line(now.order, at).supplier_number
        faults = (
            ("damaged", line.damaged, ordered, f"came damaged on paper {receipt.paper}"),
            ("number", line.wrong, line.number, f"came instead of {ordered} on paper {receipt.paper}: {line.came}"),
            ("over", over, ordered, f"more than ordered, on paper {receipt.paper}"),
        )
        since = receipt.at.date()
        for kind, pieces, number, why in faults:
            amount = lost.get(kind)
            if pieces and amount is not None:
                yield Lot(pieces=pieces, number=number, why=why, since=since, amount=amount, at_his_cost=True)
        kept = line.good - over
        if kept > 0:
            charged = goods_at(now.order, at, min(kept, line.charged_pieces), line.unit_price)
            why = f"came on paper {receipt.paper}"
            yield Lot(pieces=kept, number=ordered, why=why, since=since, amount=charged, at_his_cost=False)


def _lines(came: Sequence[Receipt], at: int) -> Iterator[tuple[Sequence[Receipt], Receipt, ReceiptLine]]:
    """Each receipt line of the order's line with its receipt and those before it."""
    for place, receipt in enumerate(came):
        for line in receipt.lines:
            if line.line == at:
                yield came[:place], receipt, line
