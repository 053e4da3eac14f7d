"""Which line of a later revision a line is, and whether the customer's answer to the one holds for the other.

A yes covers that work, that number, so many pieces, so many hours, at that price and by those terms of return. One
given where nothing was said of the old part covers no line whose old part goes back to the supplier. A lower
price is covered too, a higher one only as far as the shop's tolerance, reckoned from the amount approved, so that rises
never add up. A no to a price is none to a lower one: she may want it for less.
"""

from ..basics.approval import Approval
from ..basics.money import Money
from ..basics.part_number import number_key
from ..basics.quote import Quote, QuoteLine
from ..basics.settings import Tolerance
from .tolerance import may_rise_to


def line_now(newest: Quote, old: Quote, line: QuoteLine) -> QuoteLine | None:
    """The same work in the newest revision, whatever its label, price and number are now; None where there is none.

    Where lines look alike, each is taken for the one of the same label and finding: two never share one answer.
    """
    mine = [one for one in newest.lines if _work(one) == _work(line)]
    theirs = [one for one in old.lines if _work(one) == _work(line)]
    if len(mine) == len(theirs) == 1:
        return mine[0]
    return next((one for one in mine if one.label == line.label and one.found == line.found), None)


def why_not_covered(approval: Approval, line: QuoteLine, now: QuoteLine, tolerance: Tolerance) -> str:
    """Why the answer to `line` does not hold for it as it is `now`; blank where it holds."""
    if number_key(now.number) != number_key(line.number):
        return f"the part number is now {now.number or 'none'}, then it was {line.number or 'none'}"
    if now.quantity != line.quantity:
        return f"it is now {now.quantity} pieces, then it was {line.quantity}"
    if now.hours != line.hours:
        return f"it is now {now.hours:f} hours, then it was {line.hours:f}"
    if approval.answer == "approved" and now.special_order and _back(now) != _back(line):
        return "the terms on which it can go back are not what they were then"
    if approval.answer == "approved" and now.core_words and not line.core_words:
        return "the old part goes back to the supplier now, which was not said then"
    return _price_speaks_against(approval, now.price, tolerance)


def _back(line: QuoteLine) -> tuple[bool, tuple[str, ...]]:
    return line.special_order, line.return_words


def _price_speaks_against(approval: Approval, price: Money, tolerance: Tolerance) -> str:
    amount = approval.amount
    figures = f"the price is now {price} before tax, then it was {amount}"
    if price.currency != amount.currency:
        return figures
    if approval.answer == "approved":
        return "" if price <= may_rise_to(amount, tolerance) else figures
    return "" if amount <= price else figures


def _work(line: QuoteLine) -> tuple[str, str, bool]:
    """Freight is no labour, though a line of either may bear the same title."""
    return line.title, line.part, bool(not line.part and line.freight_price.amount)
