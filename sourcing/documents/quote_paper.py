"""The customer's paper for one revision of a quote, as a self-contained HTML file and as a short plain text.

The owner's side (costs, suppliers, warnings) is taken off the value before a template sees it, so that no template
can print it. The same quote gives the same bytes: no clock, no random names.
"""

from typing import get_args

from ..basics.approval import How
from ..basics.quote import AddOnPrice, Quote, QuoteLine
from ..basics.settings import PriceKind
from ..basics.value import changed
from .amounts import date_text, money_text, page_language
from .pages import render
from .plain_text import document, wrapped

KIND_WORDS: dict[PriceKind, str] = {
    "parts": "Parts",
    "labour": "Labour",
    "freight": "Freight",
    "fees": "Shop supplies and fees",
}
TEXT_WIDTH = 72
"""Columns of the short text, which goes into messages."""


def quote_html(quote: Quote) -> str:
    """The paper, ready to print and sign. Refuses a locale that does not exist."""
    paper = for_customer(quote)
    return render(
        "quote.html",
        quote=paper,
        agreed=[line for line in paper.lines if line.kind == "agreed"],
        add_ons=_add_ons(paper),
        machine_facts=_machine_facts(paper),
        ways=get_args(How),
        kind_words=KIND_WORDS,
        locale=paper.locale,
        language=page_language(paper.locale),
    )


def quote_text(quote: Quote) -> str:
    """The same proposal for a message: lines, prices, totals, validity. Amounts of add-ons are with tax."""
    locale, agreed = quote.locale, quote.agreed_total
    lines = [f"{quote.shop.name}: quote for job {quote.job}, revision {quote.revision}"]
    lines += wrapped(quote.machine.description, width=TEXT_WIDTH)
    lines += ["", "Work you asked for (before tax)"]
    for line in quote.lines:
        if line.kind == "agreed":
            lines += _text_line(line, money_text(line.price, locale))
    lines += _text_taxes(quote)
    lines += [f"  Total with tax: {money_text(agreed.total, locale)}"]
    if quote.add_on_prices:
        lines += ["", "Extra work we found (each your choice; with tax)"]
        for line, price in _add_ons(quote):
            lines += _text_line(line, money_text(price.price, locale))
            lines += wrapped(f"If declined: {line.if_declined}", 5, TEXT_WIDTH) if line.if_declined else []
        lines += [f"  Total with everything: {money_text(quote.everything_total.total, locale)}"]
    return document([*lines, "", *_text_end(quote)])


def for_customer(quote: Quote) -> Quote:
    """The quote without what is the owner's alone: what stands behind each line, and the warnings."""
    return changed(quote, lines=tuple(changed(line, behind=None) for line in quote.lines), warnings=())


def _add_ons(quote: Quote) -> list[tuple[QuoteLine, AddOnPrice]]:
    """Each add-on with its price; a line without one is a bug and raises KeyError."""
    prices = {price.label: price for price in quote.add_on_prices}
    return [(line, prices[line.label]) for line in quote.lines if line.kind == "add-on"]


def _machine_facts(quote: Quote) -> list[tuple[str, str]]:
    machine = quote.machine
    facts = [("maker", machine.maker), ("model", machine.model), ("serial", machine.serial)]
    return [(words, value) for words, value in [*facts, ("with", machine.component)] if value]


def _text_line(line: QuoteLine, amount: str) -> list[str]:
    return wrapped(f"{line.label}  {line.title}: {amount}", 2, TEXT_WIDTH)


def _text_taxes(quote: Quote) -> list[str]:
    locale, agreed = quote.locale, quote.agreed_total
    fees = [amount for kind, amount in agreed.sums if kind == "fees" and amount.amount]
    lines = [f"  {KIND_WORDS['fees']}: {money_text(fee, locale)}" for fee in fees]
    return lines + [f"  {tax.name}: {money_text(tax.amount, locale)}" for tax in agreed.taxes]


def _text_end(quote: Quote) -> list[str]:
    locale = quote.locale
    lines = [f"Valid to {date_text(quote.valid_to, locale)}."]
    if quote.arrives is None:
        lines.append("The day the parts arrive is not known yet.")
    else:
        first, last = (date_text(day, locale) for day in quote.arrives)
        lines.append(f"Parts expected {first}." if first == last else f"Parts expected {first} to {last}.")
    answer = "Please answer with the labels you approve and those you decline; no answer is not a yes."
    return [*lines, *wrapped(answer, width=TEXT_WIDTH)]
