"""A discount at the counter: so much off a line of the bill, before tax, and never more than the line costs.

What is taken off is parts first, then labour, freight, fee. Fees by rule and taxes are worked out on what is left: the
allowance of a line lowers its net amount, on which sums and taxes stand (EN 16931, BT-131 and BT-136, from memory).
"""

from collections import Counter
from collections.abc import Sequence
from decimal import Decimal

from ..basics.bill import LineOff, Off
from ..basics.currency import minor_units
from ..basics.money import Money, zero
from ..basics.problem import Problem, Refused, problem
from ..basics.quote import QuoteLine
from ..basics.value import changed


def less_off(lines: Sequence[QuoteLine], off: Off, job: str) -> tuple[tuple[QuoteLine, ...], tuple[LineOff, ...]]:
    """The lines with what is left of them, and what was taken off each. `lines` are all that is billed.

    Refuses every amount that can't be taken off, all at once, and a discount without a reason.
    """
    wrong = list(_wrong(lines, off, job))
    if wrong:
        raise Refused(*wrong)
    amounts = dict(off.amounts)
    taken = {
        line.label: _taken(line, Money(amount=amounts[line.label], currency=line.price.currency).rounded(), off.words)
        for line in lines
        if line.label in amounts
    }
    left = tuple(_left(line, taken[line.label]) if line.label in taken else line for line in lines)
    return left, tuple(taken.values())


def off_words(off: LineOff) -> str:
    """A discount in words for the owner: how much, of what, and why."""
    of = (("parts", off.parts), ("labour", off.labour), ("freight", off.freight), ("fee", off.fee))
    told = ", ".join(f"{amount.amount} off {name}" for name, amount in of if amount.amount)
    return f"{off.amount} off line {off.label} ({told}): {off.words}"


def _wrong(lines: Sequence[QuoteLine], off: Off, job: str) -> list[Problem]:
    by_label = {line.label: line for line in lines}
    found = [problem("off-why", job=job)] if off.amounts and not off.words.strip() else []
    named = Counter(label for label, _ in off.amounts)
    found += [problem("off-twice", job=job, label=label) for label, times in named.items() if times > 1]
    for label, amount in off.amounts:
        line = by_label.get(label)
        if line is None:
            found.append(problem("off-unknown", job=job, label=label))
            continue
        found += _wrong_amount(line, amount, job)
    return found


def _wrong_amount(line: QuoteLine, amount: Decimal, job: str) -> list[Problem]:
    currency = line.price.currency
    asked, places = Money(amount=amount, currency=currency), minor_units(currency)
    if amount.is_finite() and line.price < asked:  # asked first: rounding takes no amount of any length
        told = f"{amount} {currency}"
        return [problem("off-above-line", job=job, label=line.label, found=told, price=line.price)]
    if not amount.is_finite() or amount <= 0 or asked.rounded() != asked:
        return [problem("off-amount", job=job, label=line.label, found=amount, currency=currency, places=places)]
    return []


def _taken(line: QuoteLine, amount: Money, words: str) -> LineOff:
    rest, shares = amount, []
    for there in (line.parts_price, line.labour_price, line.freight_price, line.fee_price or zero(amount.currency)):
        share = min(rest, there, key=lambda one: one.amount)
        shares.append(share)
        rest = rest - share
    parts, labour, freight, fee = shares
    return LineOff(
        label=line.label, amount=amount, parts=parts, labour=labour, freight=freight, fee=fee, words=words.strip()
    )


def _left(line: QuoteLine, off: LineOff) -> QuoteLine:
    return changed(
        line,
        parts_price=line.parts_price - off.parts,
        labour_price=line.labour_price - off.labour,
        freight_price=line.freight_price - off.freight,
        fee_price=None if line.fee_price is None else line.fee_price - off.fee,
    )
