"""What the shop asks before it orders. A deposit is the customer's money until the work is billed, and no margin."""

from collections.abc import Iterable, Sequence
from datetime import date

from ..basics.money import Money, percent_of, total, zero
from ..basics.quote import DepositAsked, Quote, QuoteLine
from ..basics.settings import ChargeRules, DepositRule
from .totals import document_total


def deposit_asked(
    lines: Sequence[QuoteLine], rules: ChargeRules, rule: DepositRule | None, day: date, currency: str
) -> DepositAsked | None:
    """What is asked with the agreed lines, and with all of them; None where none is asked or it comes to nothing."""
    if rule is None:
        return None
    agreed = deposit_on([line for line in lines if line.kind == "agreed"], rules, rule, day, currency)
    everything = deposit_on(lines, rules, rule, day, currency)
    if not agreed.amount and not everything.amount:
        return None
    of = {
        "special-order parts": "the special-order parts before tax",
        "parts": "the parts before tax",
        "everything": "the total",
    }
    return DepositAsked(agreed=agreed, everything=everything, rule=f"{rule.percent} % of {of[rule.of]}")


def deposit_on(lines: Iterable[QuoteLine], rules: ChargeRules, rule: DepositRule, day: date, currency: str) -> Money:
    """The deposit on these lines, rounded once: of parts before tax, or of the document's total with tax."""
    counted = tuple(lines)
    if rule.of == "everything":
        base = document_total(counted, rules, day, currency).total
    else:
        every = rule.of == "parts"
        base = total((line.parts_price for line in counted if line.part and (every or line.special_order)), currency)
    asked = percent_of(base, rule.percent)
    return asked if asked.amount >= rule.from_amount else zero(currency)


def deposit_of(quote: Quote, labels: Iterable[str]) -> Money:
    """What is asked for those lines of a quote, by the rule frozen in it; nothing where it asks none."""
    if quote.deposit_rule is None:
        return zero(quote.currency)
    wanted = set(labels)
    lines = [line for line in quote.lines if line.label in wanted]
    return deposit_on(lines, quote.charge_rules, quote.deposit_rule, quote.made_at.date(), quote.currency)
