"""What to do about a delivery, told from what was kept of it: first the goods, then what the paper charges."""

from collections.abc import Iterator, Sequence

from ..basics.order import Receipt
from ..basics.order_now import OrderNow
from ..ordering.claims import freight_reckoned, over_pieces, paper_total
from ..ordering.number_came import what_to_do


def numbers_to_do(now: OrderNow, receipt: Receipt) -> Iterator[str]:
    """What came under another number, line by line in the order of the receipt."""
    for came in receipt.lines:
        line = now.line(came.line)
        words = what_to_do(line.line, came.number, came.came) if line else ""
        if words:
            yield words


def over_to_do(now: OrderNow, before: Sequence[Receipt], receipt: Receipt) -> Iterator[str]:
    """What came beyond the order and was not kept."""
    for line in receipt.lines:
        over = over_pieces(now, before, line)
        if over and not line.keeps_more:
            yield f"line {line.line}: {over} more than ordered: send them back, or ask what the supplier wants"


def money_to_do(now: OrderNow, papers: Sequence[Receipt], receipt: Receipt) -> Iterator[str]:
    """What is to be asked of the paper's amounts. `papers`: all of the order so far, this one among them."""
    if receipt.only_counted:
        yield f"what paper {receipt.paper} charges is not taken in yet: say it when the paper is at hand"
    yield from _total(now, receipt)
    yield from _no_freight(now, papers)


def _total(now: OrderNow, receipt: Receipt) -> Iterator[str]:
    said, comes_to = receipt.supplier_total, paper_total(now, receipt)
    if said is not None and said != comes_to:
        look = "look for a price, charge or count not said"
        yield f"{said - comes_to} of paper {receipt.paper} is not explained by its lines: {look}"


def _no_freight(now: OrderNow, papers: Sequence[Receipt]) -> Iterator[str]:
    reckoned = freight_reckoned(now)
    if reckoned is not None and reckoned.amount and not any(one.freight.amount for one in papers):
        yield f"no freight was charged yet, and {reckoned} was reckoned with: an invoice for it may follow"
