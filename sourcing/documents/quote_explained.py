"""A revision for the owner: warnings first, what each part earns, then every figure and how it came. Text and XLSX.

These papers carry costs, suppliers and margins and never go to a customer. Margin (on price) and markup (on cost) stand
together wherever one of them does.
"""

from decimal import Decimal

from ..basics.margin import Margin
from ..basics.owners_quote import CheckedQuote, LineEarns, OwnersQuote
from ..basics.quote import Quote
from .amounts import percent_text
from .csv_text import Cell
from .plain_text import document, table, wrapped, yes_no
from .workbook import Table, workbook_bytes

HEAD = ("part", "from", "price", "cost", "earned", "margin on price", "markup on cost")
MOST = (30, 34, 10, 10, 10, 8, 8)
RIGHT = frozenset(range(2, len(HEAD)))


def owners_text(one: OwnersQuote) -> str:
    """All of it as plain text, at most 100 columns but for the table of what parts earn."""
    quote = one.frozen.quote
    lines = wrapped(
        f"Job {quote.job}, revision {quote.revision}, {quote.customer.name}: for the owner, never for the customer"
    )
    lines += [text for words in quote.warnings for text in wrapped(f"Mind: {words}")]
    lines += [
        "",
        f"What the parts earn, before tax, in {quote.currency}; floor {percent_text(one.floor_percent)} on price",
    ]
    lines += table([HEAD, *map(_line_row, one.lines), *_sum_rows(one)], MOST, RIGHT)
    lines += ["", "How every figure came"]
    for figure in one.explained:
        lines += wrapped(f"{figure.figure}: {figure.amount} = {figure.how}")
    return document(lines)


def checked_text(one: CheckedQuote) -> str:
    """What a new revision would change, and what the owner should mind before it goes out."""
    number, now = one.now.job, one.now
    if one.last is None:
        said = (
            f"Job {number} has no quote yet; the first would come to {now.agreed_total.total} with tax for the agreed"
        )
        lines = wrapped(f"{said} work, {now.everything_total.total} with everything.")
    elif one.same:
        lines = wrapped(f"Revision {one.last.revision} of job {number} says what a new one would say.")
    else:
        lines = wrapped(f"Revision {now.revision} of job {number} would differ from revision {one.last.revision}:")
        lines += [text for words in one.changes or (_only_late(one.last),) for text in wrapped(f"- {words}")]
    told = [text for words in (*one.warnings, *one.notes) for text in wrapped(f"For the owner: {words}")]
    return document([*lines, *([""] if told else []), *told, "Nothing was written."])


def _only_late(last: Quote) -> str:
    return f"nothing but its days; revision {last.revision} was valid to {last.valid_to}"


def owners_xlsx(one: OwnersQuote) -> bytes:
    """Worksheets Figures, Earned, Mind."""
    quote = one.frozen.quote
    figures = tuple((each.figure, each.amount.amount, each.amount.currency, each.how) for each in one.explained)
    earned: list[tuple[Cell, ...]] = [
        (line.label, line.title, line.supplier_name, line.supplier_number, *_cells(line.margin), _under(line))
        for line in one.lines
    ]
    earned += [("", name, "", "", *_cells(margin), "") for name, margin in _sums(one)]
    heads = ("Line", "Title", "Supplier", "Supplier's number", "Price", "Cost", "Earned")
    percents = ("Margin on price, %", "Markup on cost, %", "Under the floor")
    return workbook_bytes(
        (
            Table(title="Figures", headers=("Figure", "Amount", "Currency", "How it came"), rows=figures),
            Table(title="Earned", headers=(*heads, *percents), rows=tuple(earned)),
            Table(title="Mind", headers=("Before it goes out",), rows=tuple((words,) for words in quote.warnings)),
        )
    )


def _under(line: LineEarns) -> str:
    return yes_no(line.under_floor)


def _sums(one: OwnersQuote) -> list[tuple[str, Margin]]:
    sums = [("agreed work alone, with freight", one.agreed)]
    return [*sums, ("everything, with freight", one.everything)] if one.frozen.quote.labels("add-on") else sums


def _line_row(line: LineEarns) -> tuple[str, ...]:
    under = " (under the floor)" if line.under_floor else ""
    return f"{line.label} {line.title}{under}", f"{line.supplier_name} {line.supplier_number}", *_texts(line.margin)


def _sum_rows(one: OwnersQuote) -> list[tuple[str, ...]]:
    return [(name, "", *_texts(margin)) for name, margin in _sums(one)]


def _texts(margin: Margin) -> tuple[str, ...]:
    money = (str(amount.amount) for amount in (margin.price, margin.cost, margin.earned))
    return (*money, percent_text(margin.margin_percent), percent_text(margin.markup_percent))


def _cells(margin: Margin) -> tuple[Decimal | None, ...]:
    amounts = (margin.price.amount, margin.cost.amount, margin.earned.amount)
    return (*amounts, margin.margin_percent, margin.markup_percent)
