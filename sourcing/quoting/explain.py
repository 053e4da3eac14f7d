"""Every figure on a quote's paper and how it came, for the owner, out of what the quote itself says.

Each `how` begins with figures of the quote that give the amount when they are put together as it says.
"""

from collections.abc import Iterable, Iterator, Sequence
from decimal import Decimal

from ..basics.money import Money, total
from ..basics.quote import DocumentTotal, Explained, Quote, QuoteLine
from ..basics.settings import PriceKind
from .freight_at_cost import at_cost
from .totals import taxes_on, total_of

KINDS: dict[PriceKind, str] = {"parts": "parts", "labour": "labour", "freight": "freight", "fees": "fees"}


def explain(quote: Quote) -> tuple[Explained, ...]:
    """Lines in order, then the totals, each add-on, the deposit. Amounts are those of the quote, to the cent."""
    return (
        *(one for line in quote.lines for one in _line(line)),
        *_document("agreed work", quote.agreed_total, quote),
        *_document("everything", quote.everything_total, quote),
        *_add_ons(quote),
        *_deposit(quote),
    )


def _line(line: QuoteLine) -> Iterator[Explained]:
    what = f"{line.label} {line.title}"
    parts: list[Money] = []
    if line.part:
        rule = line.behind.price_rule if line.behind else "the rule was not kept"
        yield Explained(figure=f"{what}, each", amount=line.unit_price, how=rule)
        how = f"{line.unit_price.amount} x {line.quantity}"
        yield Explained(figure=f"{what}, parts", amount=line.parts_price, how=how)
        parts.append(line.parts_price)
    if line.labour_price.amount or line.hours:
        yield Explained(figure=f"{what}, labour", amount=line.labour_price, how=_labour(line))
        parts.append(line.labour_price)
    if line.freight_price.amount:
        less = " at most, for it comes to less with some choices of parts" if line.freight_cases else ""
        how = f"{line.freight_price.amount}: what suppliers and carriers charge, at cost{less}"
        yield Explained(figure=f"{what}, freight", amount=line.freight_price, how=how)
        parts.append(line.freight_price)
    if line.fee_price is not None:
        how = f"{line.fee_price.amount}: as the job says"
        yield Explained(figure=f"{what}, fee", amount=line.fee_price, how=how)
        parts.append(line.fee_price)
    if len(parts) != 1:
        yield Explained(figure=f"{what}, before tax", amount=line.price, how=_sum(parts))


def _labour(line: QuoteLine) -> str:
    if line.labour_rate is not None:
        return f"{line.hours} h x {line.labour_rate}, rounded once"
    amount = line.labour_price.amount
    if not line.hours:
        return f"{amount}: a flat price"
    return f"{amount}: a flat price for {line.hours} h of work, or of a time when rates were not kept with a quote"


def _document(name: str, found: DocumentTotal, quote: Quote) -> Iterator[Explained]:
    lines = [line for line in quote.lines if line.label in found.labels]
    sums = dict(found.sums)
    for kind, words in KINDS.items():
        if sums[kind].amount:
            yield Explained(figure=f"{name}, {words}", amount=sums[kind], how=_sum(_of_kind(kind, lines, found)))
    for fee in found.fees:
        yield Explained(figure=f"{name}, {fee.name}", amount=fee.amount, how=fee.rule)
    yield Explained(figure=f"{name}, before tax", amount=found.before_tax, how=_sum(sums.values()))
    yield from _taxes(name, found, quote)
    taxes = [tax.amount for tax in found.taxes]
    yield Explained(figure=f"{name}, with tax", amount=found.total, how=_sum([found.before_tax, *taxes]))


def _of_kind(kind: PriceKind, lines: Sequence[QuoteLine], found: DocumentTotal) -> list[Money]:
    """The amounts of a kind's sum. Papers of before list no fees by rule: what is left of the sum is theirs."""
    if kind == "parts":
        return [line.parts_price for line in lines if line.parts_price.amount]
    if kind == "labour":
        return [line.labour_price for line in lines if line.labour_price.amount]
    if kind == "freight":
        return [line.freight_price for line in at_cost(lines) if line.freight_price.amount]
    fees = [line.fee_price for line in lines if line.fee_price is not None] + [fee.amount for fee in found.fees]
    left = dict(found.sums)["fees"] - total(fees, found.total.currency)
    return [*fees, left] if left.amount else fees


def _taxes(name: str, found: DocumentTotal, quote: Quote) -> Iterator[Explained]:
    if quote.charge_rules.tax_exempt:
        why = f"{Decimal(0)}: free of tax, by the customer's certificate: {quote.customer.exempt_because}"
        nothing = found.total - found.before_tax
        yield Explained(figure=f"{name}, tax", amount=nothing, how=why)
        return
    on = {tax.name: tax.on for tax in taxes_on(quote.charge_rules.taxes, quote.made_at.date())}
    for tax in found.taxes:
        kinds = ", ".join(KINDS[kind] for kind in on.get(tax.name, ()))
        of = f" ({kinds})" if kinds else ""
        how = f"{tax.percent} % of {tax.taxable.amount}{of}, rounded once"
        yield Explained(figure=f"{name}, {tax.name}", amount=tax.amount, how=how)


def _add_ons(quote: Quote) -> Iterator[Explained]:
    agreed = quote.agreed_total.total
    for price in quote.add_on_prices:
        line = quote.line(price.label)
        what = f"{price.label} {line.title}" if line else price.label
        with_it = total_of(quote, (*quote.labels("agreed"), price.label))
        how = _sum([with_it.before_tax, *(tax.amount for tax in with_it.taxes)])
        yield Explained(figure=f"{what}, agreed work with it", amount=price.total_with_it, how=how)
        how = f"{price.total_with_it.amount} - {agreed.amount}: with it less without it"
        yield Explained(figure=f"{what}, with tax", amount=price.price, how=how)


def _deposit(quote: Quote) -> Iterator[Explained]:
    asked, rule = quote.deposit, quote.deposit_rule
    if asked is None:
        return
    documents = (("agreed work", asked.agreed, quote.agreed_total), ("everything", asked.everything, None))
    for name, amount, document in documents:
        found = document or quote.everything_total
        how = f"{amount.amount}: {asked.rule}"
        if rule is not None:
            base = _deposit_base(rule.of, found, quote)
            how = f"{rule.percent} % of {base.amount}, rounded once: {asked.rule}"
            if not amount.amount and base.amount:
                how = f"{amount.amount}: it would come to less than {rule.from_amount}"
        yield Explained(figure=f"deposit, {name}", amount=amount, how=how)


def _deposit_base(of: str, found: DocumentTotal, quote: Quote) -> Money:
    if of == "everything":
        return found.total
    lines = [line for line in quote.lines if line.label in found.labels and line.part]
    return total((line.parts_price for line in lines if of == "parts" or line.special_order), quote.currency)


def _sum(amounts: Iterable[Money]) -> str:
    """'109.00 + 9.95'; what is nothing is left out, and nothing at all is 0."""
    return " + ".join(str(one.amount) for one in amounts if one.amount) or "0"
