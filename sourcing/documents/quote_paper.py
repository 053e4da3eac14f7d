"""The customer's paper for one revision of a quote: a self-contained HTML file, the same as PDF, and a plain text.

The owner's side (costs, suppliers, warnings) is taken off the value before a template sees it, so that no template
can print it. The same quote gives the same bytes: no clock, no random names.
"""

from collections.abc import Mapping
from typing import get_args

from ..basics.approval import How
from ..basics.money import Money
from ..basics.quote import DocumentTotal, FrozenQuote, Quote, QuoteLine
from ..basics.value import changed
from .amounts import date_text, money_text, page_language
from .pages import render
from .paper_size import paper_size
from .pdf import pdf_bytes
from .plain_text import document, wrapped
from .quote_words import (
    Row,
    add_on_lines,
    answered_words,
    arrival_words,
    customer_facts,
    deposit_words,
    exempt_words,
    freight_words,
    goes_with,
    line_rows,
    machine_facts,
    ready_words,
    rule_fees,
    tax_rows,
    taxed,
    tolerance_words,
    total_rows,
)

TEXT_WIDTH = 72
"""Columns of the plain text, which goes into messages."""


def quote_html(quote: Quote) -> str:
    """The paper, ready to print and sign. Refuses a locale that does not exist."""
    page_size = paper_size(quote.paper_size, quote.locale)
    return render("quote.html", **paper_values(quote), ways=get_args(How), page_size=page_size)


def paper_values(quote: Quote) -> dict[str, object]:
    """What the paper and the customer's page are made of: the quote without the owner's side, and its sentences.

    Refuses a locale that does not exist."""
    paper = for_customer(quote)
    locale = paper.locale
    return {
        "quote": paper,
        **_blocks(paper),
        "customer_facts": customer_facts(paper),
        "machine_facts": machine_facts(paper),
        "arrival": arrival_words(paper),
        "ready_by": ready_words(paper),
        "exempt": exempt_words(paper),
        "deposit": deposit_words(paper.deposit, locale) if paper.deposit else "",
        "tolerance": tolerance_words(paper.tolerance, paper.currency, locale),
        "with_tax": " with tax" if taxed(paper) else "",
        "locale": locale,
        "language": page_language(locale),
    }


def quote_pdf(frozen: FrozenQuote) -> bytes:
    """The kept paper as a PDF, word for word. Refuses with 'no-pdf' where the library is missing."""
    quote = frozen.quote
    title = f"Quote for job {quote.job}, revision {quote.revision}"
    return pdf_bytes(frozen.paper, paper_size(quote.paper_size, quote.locale), title)


def for_customer(quote: Quote) -> Quote:
    """The quote without what is the owner's alone: what stands behind each line, how a fee came, and the warnings."""
    return changed(
        quote,
        lines=tuple(changed(line, behind=None) for line in quote.lines),
        agreed_total=_without_rules(quote.agreed_total),
        everything_total=_without_rules(quote.everything_total),
        warnings=(),
    )


def _without_rules(document: DocumentTotal) -> DocumentTotal:
    return changed(document, fees=tuple(changed(fee, rule="") for fee in document.fees))


def _blocks(paper: Quote) -> dict[str, object]:
    """The lines and totals with their rows made, as the template takes them."""
    prices = {line.label: price for line, price in add_on_lines(paper)}
    extras = [
        {**_line(line, paper), "adds": prices[line.label].price, "total_with_it": prices[line.label].total_with_it}
        for line in paper.lines
        if line.kind == "add-on"
    ]
    return {
        "agreed": [{**_line(line, paper), "adds": None} for line in paper.lines if line.kind == "agreed"],
        "add_ons": extras,
        "agreed_total": _total(paper.agreed_total, paper),
        "everything_total": _total(paper.everything_total, paper),
    }


def _line(line: QuoteLine, paper: Quote) -> Mapping[str, object]:
    """A line of one thing is one row that says so; of several the sum is a row of its own."""
    rows: list[Row] = line_rows(line, paper.locale)
    if len(rows) > 1:
        rows = [*rows, ("Before tax" if taxed(paper) else "Together", line.price)]
    elif taxed(paper):
        rows = [(f"{words}, before tax", amount) for words, amount in rows]
    return {"line": line, "rows": rows, "freight": _freight(line, paper), "settled": _settled(line, paper)}


def _freight(line: QuoteLine, paper: Quote) -> str:
    return freight_words(line, [one.label for one in paper.lines], paper.locale)


def _settled(line: QuoteLine, paper: Quote) -> str:
    """Why the line has no boxes to mark; blank where it has."""
    return answered_words(line, paper.locale) or goes_with(line, paper)


def _total(document: DocumentTotal, paper: Quote) -> Mapping[str, object]:
    return {
        "rows": total_rows(document, paper),
        "before_tax": document.before_tax,
        "taxes": tax_rows(document, paper.locale),
        "total": document.total,
    }


def quote_text(quote: Quote) -> str:
    """The same proposal as plain text for an e-mail: lines, prices, totals, validity. Add-ons are with tax."""
    locale, agreed, paid = quote.locale, quote.agreed_total, " with tax" if taxed(quote) else ""
    lines = [f"{quote.shop.name}: quote for job {quote.job}, revision {quote.revision}"]
    lines += _wrap(quote.machine.description)
    lines += [line for finding in quote.findings for line in _wrap(f"Seen: {finding.what}")]
    lines += ["", "Work you asked for (before tax)" if paid else "Work you asked for"]
    lines += [text for line in quote.lines if line.kind == "agreed" for text in _text_line(line, line.price, quote)]
    charged = [*rule_fees(agreed, quote), *((tax.name, tax.amount) for tax in agreed.taxes)]
    lines += [f"  {words}: {money_text(amount, locale)}" for words, amount in charged]
    lines += [f"  Total{paid}: {money_text(agreed.total, locale)}"]
    if quote.add_on_prices:
        lines += ["", f"Extra work we found (each your choice{';' if paid else ''}{paid})"]
        for line, price in add_on_lines(quote):
            lines += _text_line(line, price.price, quote)
            lines += _wrap(f"If declined: {line.if_declined}", 5) if line.if_declined else []
        lines += [f"  Total with everything: {money_text(quote.everything_total.total, locale)}"]
    return document([*lines, "", *_text_end(quote)])


def _wrap(text: str, indent: int = 0) -> list[str]:
    return wrapped(text, indent, TEXT_WIDTH)


def _text_line(line: QuoteLine, amount: Money, quote: Quote) -> list[str]:
    special = [f"Ordered specially for you. {' '.join(line.return_words)}".rstrip()] if line.special_order else []
    head = _wrap(f"{line.label}  {line.title}: {money_text(amount, quote.locale)}", 2)
    below = [*special, " ".join(line.core_words), _freight(line, quote), _settled(line, quote)]
    return [*head, *(text for words in below if words for text in _wrap(words, 5))]


def _text_end(quote: Quote) -> list[str]:
    valid_to = date_text(quote.valid_to, quote.locale)
    sentences = [
        f"Valid to {valid_to}.",
        f"Parts expected: {arrival_words(quote)}.",
        f"You want it back by {ready_words(quote)}." if quote.ready_by else "",
        exempt_words(quote),
        deposit_words(quote.deposit, quote.locale) if quote.deposit else "",
        "Please answer with the labels you approve and those you decline; no answer is not a yes.",
        f"A yes covers that work and part at that price, given by {valid_to}.",
        tolerance_words(quote.tolerance, quote.currency, quote.locale),
    ]
    return [line for sentence in sentences if sentence for line in _wrap(sentence)]
