"""The quote as a workbook (XLSX) for the customer: its lines, its extra lines, what it comes to. No owner's figure.

Amounts are numbers in the quote's currency, which stands in the headers. A blank is a thing the line has not.
"""

from collections import Counter
from decimal import Decimal

from ..basics.money import Money
from ..basics.quote import DocumentTotal, Quote, QuoteLine
from .csv_text import Cell
from .quote_words import (
    add_on_lines,
    arrival_words,
    customer_facts,
    deposit_words,
    exempt_words,
    machine_facts,
    ready_words,
    tax_rows,
    tolerance_words,
    total_rows,
)
from .workbook import Table, workbook_bytes


def quote_xlsx(quote: Quote) -> bytes:
    """Four worksheets: Lines, Extra work (where there is any), Totals, About. The same quote gives the same bytes."""
    extra = [_extra_work(quote)] if quote.add_on_prices else []
    return workbook_bytes([_lines(quote), *extra, _totals(quote), _about(quote)])


def _lines(quote: Quote) -> Table:
    money = quote.currency
    headers = (
        "Line", "Kind", "Work", "Part number", "Description", "Pieces", f"Price each, {money}", f"Parts, {money}",
        "Labour, h", f"Labour per h, {money}", f"Labour, {money}", f"Freight, {money}", f"Fee, {money}",
        f"Before tax, {money}", "What we found", "Why it matters", "If you decline", "Ordered specially", "Old part",
        "Photos",
    )  # fmt: skip
    return Table(title="Lines", headers=headers, rows=tuple(_line(line) for line in quote.lines))


def _line(line: QuoteLine) -> tuple[Cell, ...]:
    has_part = bool(line.quantity)
    special = " ".join(line.return_words) or "yes" if line.special_order else None
    return (
        line.label, "asked for" if line.kind == "agreed" else "extra", line.title, line.number or None,
        line.description or None, line.quantity or None, line.unit_price.amount if has_part else None,
        line.parts_price.amount if has_part else None, line.hours or None, line.labour_rate if line.hours else None,
        _amount(line.labour_price), _amount(line.freight_price),
        None if line.fee_price is None else line.fee_price.amount, line.price.amount, line.found or None,
        line.why or None, line.if_declined or None, special, " ".join(line.core_words) or None,
        ", ".join(line.photos) or None,
    )  # fmt: skip


def _amount(money: Money) -> Decimal | None:
    return money.amount if money.amount else None


def _extra_work(quote: Quote) -> Table:
    rows = tuple(
        (line.label, line.title, price.price.amount, price.total_with_it.amount) for line, price in add_on_lines(quote)
    )
    headers = ("Line", "Work", f"A yes adds, {quote.currency}", f"Work asked for and this line, {quote.currency}")
    return Table(title="Extra work", headers=headers, rows=rows)


def _totals(quote: Quote) -> Table:
    """A column for the work asked for, one for everything; a row's place is blank where only the other has it."""
    agreed, everything = _rows(quote.agreed_total, quote), _rows(quote.everything_total, quote)
    keys = sorted({**everything, **agreed}, key=lambda key: key[0])
    rows = tuple((key[1], agreed.get(key), everything.get(key)) for key in keys)
    headers = ("", f"Only the work you asked for, {quote.currency}", f"Everything, {quote.currency}")
    return Table(title="Totals", headers=headers, rows=rows)


def _rows(document: DocumentTotal, quote: Quote) -> dict[tuple[int, str, int], Decimal]:
    """Amounts by place in the table, words, and which one of that name it is: two fees may bear one name."""
    taxes = [(tax.name, tax.amount) for tax in document.taxes]
    parts = [total_rows(document, quote), [("Before tax", document.before_tax)], taxes, [("Total", document.total)]]
    seen: Counter[tuple[int, str]] = Counter()
    rows = {}
    for place, part in enumerate(parts):
        for words, amount in part:
            seen[place, words] += 1
            rows[place, words, seen[place, words]] = amount.amount
    return rows


def _about(quote: Quote) -> Table:
    machine = [(f"Machine: {words}", value) for words, value in machine_facts(quote)]
    rows: list[tuple[str, Cell]] = [
        ("Shop", quote.shop.name), ("Job", quote.job), ("Revision", quote.revision),
        ("Made on", quote.made_at.date()), ("Valid to", quote.valid_to), *customer_facts(quote),
        ("Machine", quote.machine.description), *machine, ("What you told us", quote.complaint),
        *(("What we saw", finding.what) for finding in quote.findings), ("Parts expected", arrival_words(quote)),
        ("You want it back by", ready_words(quote)),
        ("Deposit", deposit_words(quote.deposit, quote.locale) if quote.deposit else ""),
        *(("Tax", words) for words, _ in tax_rows(quote.everything_total, quote.locale)), ("Tax", exempt_words(quote)),
        ("A yes covers", "that work and part number, at that price, given by the day it is valid to. "
         + tolerance_words(quote.tolerance, quote.currency, quote.locale)),
        *(("Terms", sentence) for sentence in quote.terms_text),
        *(("What the rules of your place may ask", sentence) for sentence in quote.law_text),
        *(("Cautions", sentence) for sentence in quote.cautions),
        ("Cautions", "The manual of the machine's maker and the rules of your place come first."),
    ]  # fmt: skip
    return Table(title="About", headers=("", "This quote"), rows=tuple(row for row in rows if row[1]))
