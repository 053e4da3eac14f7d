"""Fees by rule on a document: shop supplies, and what else the owner charges by rule, each with its cap.

Some places refuse such fees, cap them, or want them as an amount of money on the estimate: here a fee is always an
amount on the paper, and whether it is charged at all is the owner's setting.
"""

from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal

from ..basics.money import Money, percent_of, total
from ..basics.quote import FeeAmount, QuoteLine
from ..basics.settings import ChargeRules, FeeRule, Supplies

SUPPLIES = "Shop supplies"
"""What the fee for rags, grease and the like is called on papers."""


def fee_amounts(lines: Sequence[QuoteLine], rules: ChargeRules, day: date, currency: str) -> tuple[FeeAmount, ...]:
    """Every fee by rule on these lines that comes to something, each rounded once."""
    found = []
    if rules.supplies:
        found.append(_supplies(total((line.labour_price for line in lines), currency), rules.supplies))
    found += [_fee(rule, lines, currency) for rule in rules_on(rules.fee_rules, day)]
    return tuple(fee for fee in found if fee.amount.amount)


def rules_on(rules: Iterable[FeeRule], day: date) -> tuple[FeeRule, ...]:
    """For each fee by name the newest rule that has started by the day; one of nothing has ended the fee."""
    newest: dict[str, FeeRule] = {}
    for rule in sorted(rules, key=lambda rule: rule.starts_on):
        if rule.starts_on <= day:
            newest[rule.name] = rule
    return tuple(newest.values())


def _supplies(labour: Money, supplies: Supplies) -> FeeAmount:
    amount, rule = percent_of(labour, supplies.percent_of_labour), f"{supplies.percent_of_labour} % of labour {labour}"
    return _capped(SUPPLIES, amount, supplies.most, rule)


def _fee(rule: FeeRule, lines: Sequence[QuoteLine], currency: str) -> FeeAmount:
    parts = [line for line in lines if line.part and _counts(line, rule)]
    if rule.of == "document":
        here = bool(parts) if rule.categories else bool(lines)
        amount, words = Money(amount=rule.charge if here else Decimal(0), currency=currency), "once for the document"
    elif rule.of == "piece":
        pieces = sum(line.quantity for line in parts)
        amount, words = Money(amount=rule.charge * pieces, currency=currency), f"{pieces} x {rule.charge}"
    else:
        labour = total((line.labour_price for line in lines if "labour" in rule.of), currency)
        goods = total((line.parts_price for line in parts if "parts" in rule.of), currency)
        amount, words = percent_of(labour + goods, rule.percent), f"{rule.percent} % of {rule.of} {labour + goods}"
    return _capped(rule.name, amount.rounded(), rule.most, words)


def _counts(line: QuoteLine, rule: FeeRule) -> bool:
    wanted = {category.strip().casefold() for category in rule.categories}
    return not wanted or line.category.strip().casefold() in wanted


def _capped(name: str, amount: Money, most: Decimal | None, rule: str) -> FeeAmount:
    cap = None if most is None else Money(amount=most, currency=amount.currency).rounded()
    if cap is not None and cap < amount:
        return FeeAmount(name=name, amount=cap, rule=f"{rule} = {amount.amount}, at most {cap.amount}")
    return FeeAmount(name=name, amount=amount, rule=rule)
