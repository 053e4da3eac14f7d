"""What a set of quote lines comes to: sums by kind, the fees by rule, each tax once on its sum.

Freight on a line of its own counts as it comes to with the parts among these lines (`freight_at_cost.py`).
Rule: lines are rounded first and then added; a tax is rounded once on the sum it is charged on (EN 16931, rules
BR-CO-10 and BR-CO-17), never line by line. An add-on's price is the difference of two such totals.
"""

from collections.abc import Iterable
from datetime import date

from ..basics.money import Money, percent_of, total
from ..basics.quote import AddOnPrice, DocumentTotal, Quote, QuoteLine, TaxAmount
from ..basics.settings import ChargeRules, PriceKind, Tax
from .fees import fee_amounts
from .freight_at_cost import at_cost


def document_total(lines: Iterable[QuoteLine], rules: ChargeRules, day: date, currency: str) -> DocumentTotal:
    """The total of these lines as one document on that day."""
    counted = at_cost(tuple(lines))
    fees = fee_amounts(counted, rules, day, currency)
    job_fees = (line.fee_price for line in counted if line.fee_price is not None)
    sums: dict[PriceKind, Money] = {
        "parts": total((line.parts_price for line in counted), currency),
        "freight": total((line.freight_price for line in counted), currency),
        "labour": total((line.labour_price for line in counted), currency),
        "fees": total((*job_fees, *(fee.amount for fee in fees)), currency),
    }
    before_tax = total(sums.values(), currency)
    charged = () if rules.tax_exempt else taxes_on(rules.taxes, day)
    taxes = tuple(_tax(tax, sums, currency) for tax in charged)
    return DocumentTotal(
        labels=tuple(line.label for line in counted),
        sums=tuple(sums.items()),
        before_tax=before_tax,
        taxes=taxes,
        total=before_tax + total((tax.amount for tax in taxes), currency),
        fees=fees,
    )


def total_of(quote: Quote, labels: Iterable[str]) -> DocumentTotal:
    """What those lines of a quote come to, by the rules frozen in it."""
    wanted = set(labels)
    lines = [line for line in quote.lines if line.label in wanted]
    return document_total(lines, quote.charge_rules, quote.made_at.date(), quote.currency)


def taxes_on(taxes: Iterable[Tax], day: date) -> tuple[Tax, ...]:
    """For each tax by name the newest entry that has started by the day."""
    newest: dict[str, Tax] = {}
    for tax in sorted(taxes, key=lambda tax: tax.starts_on):
        if tax.starts_on <= day:
            newest[tax.name] = tax
    return tuple(newest.values())


def add_on_prices(lines: Iterable[QuoteLine], rules: ChargeRules, day: date, currency: str) -> tuple[AddOnPrice, ...]:
    """Each add-on's price with tax and fees: the total with it less the total of the agreed lines alone."""
    every = tuple(lines)
    agreed = [line for line in every if line.kind == "agreed"]
    base = document_total(agreed, rules, day, currency).total
    prices = []
    for line in every:
        if line.kind == "add-on":
            with_it = document_total([*agreed, line], rules, day, currency).total
            prices.append(AddOnPrice(label=line.label, price=with_it - base, total_with_it=with_it))
    return tuple(prices)


def _tax(tax: Tax, sums: dict[PriceKind, Money], currency: str) -> TaxAmount:
    taxable = total((sums[kind] for kind in tax.on), currency)
    amount = percent_of(taxable, tax.percent)
    return TaxAmount(name=tax.name, percent=tax.percent, taxable=taxable, amount=amount)
