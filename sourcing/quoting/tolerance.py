"""How far a price may rise without a new question: the shop's tolerance, from the amount the customer approved.

Every rise is measured against that amount, so that small ones never add up, whatever revisions lie between.
"""

from decimal import Decimal

from ..basics.money import Money
from ..basics.quote import QuoteLine
from ..basics.settings import Tolerance


def may_rise_to(approved: Money, tolerance: Tolerance) -> Money:
    """The dearest price that needs no new question. Not rounded: a price has to be at or below it.

    Per cent and amount: the smaller of the two where both are above zero; neither is no rise at all.
    """
    by_percent = approved.amount * tolerance.percent / 100
    rises = [rise for rise in (by_percent, tolerance.amount) if rise > 0]
    return Money(amount=approved.amount + min(rises, default=Decimal(0)), currency=approved.currency)


def line_at(line: QuoteLine, each: Money) -> Money:
    """What the whole line would come to before tax with its pieces at that price each."""
    return line.price + (each - line.unit_price) * line.quantity


def rises_too_far(line: QuoteLine, each: Money, approved: Money | None, tolerance: Tolerance) -> bool:
    """Whether the line at that price each would be dearer than the customer's yes allows.

    `approved` is the line's amount as she approved it, None where it is the line's own. A later revision that says less
    than she approved is what the shop has promised since: then that counts.
    """
    said = line.price if approved is None else min(approved, line.price)
    return may_rise_to(said, tolerance) < line_at(line, each)
