"""What reading a supplier's sheet gave, as text: where every row went, what the columns mean, what is wrong where."""

from collections.abc import Sequence

from ..basics.judgement import LeftByImport
from ..basics.problem import Problem
from ..basics.sheet import Accounting, Column, KeptSheet, Region, SheetSummary
from .plain_text import count, document, table, wrapped, yes_no

MOST_PROBLEMS = 20
KEPT_HEADER = ("sheet", "supplier", "sheet of", "offers", "problems", "newest", "file")
KEPT_MOST = (6, 16, 10, 8, 8, 7, 40)
COLUMN_HEADER = ("column", "header", "means", "because")
COLUMN_MOST = (6, 30, 24, 36)


def import_text(
    kept: KeptSheet, summary: SheetSummary, changed: Sequence[Problem] = (), left: LeftByImport | None = None
) -> str:
    """The account of one import: it visibly adds up, or says that it does not (which is a bug of the program).

    Last what waits for a person, with the command that shows it.
    """
    head = f"{summary.file}: kept as sheet {kept.sheet} of {kept.supplier}, dated {kept.sheet_date}"
    head += "; it counts from that day on, and not yet" if kept.not_yet else ""
    return document([*wrapped(head), *_account(summary, changed), *(_left(kept, left) if left else [])])


def _left(kept: KeptSheet, left: LeftByImport) -> list[str]:
    if not left.looked:
        words = f"Nobody has looked yet which of its {count(kept.offers, 'offer')} may be our parts; it takes a while:"
        return [*wrapped(words, 2), f"    sourcing candidates {kept.supplier}"]
    words = f"Our parts by number and table: {count(left.ours, 'row')}."
    if not left.waiting:
        return wrapped(f"{words} No other row waits to be judged.", 2)
    likely = f", {left.likely:,} of them likely" if left.likely else ""
    words += f" {count(left.waiting, 'more row')} may be ours{likely}; a person judges:"
    return [*wrapped(words, 2), f"    sourcing candidates {kept.supplier}"]


def same_bytes_text(kept: KeptSheet, with_columns: bool) -> str:
    """That the file is there already; what was said of its columns then has no effect."""
    text = f"{kept.file}: the same bytes are there already as sheet {kept.sheet}; nothing was done."
    again = f" To read it with other columns, take it out first: sourcing undo {kept.sheet}."
    return text + (again if with_columns else "")


def summary_text(summary: SheetSummary) -> str:
    """The same for a file that was read and not kept, with each column's meaning and the reason for it."""
    dated = f"dated {summary.sheet_date}" if summary.sheet_date else "no date found"
    how = f"read as {summary.reading}; " if summary.reading else ""
    head = f"{summary.file}: {how}{dated}, prices in {summary.currency or 'a currency it does not state'}; not kept"
    asked = frozenset(one.found for one in summary.questions)
    regions = [line for region in summary.regions for line in _region(region, asked)]
    return document([*wrapped(head), *_counts(summary), *regions, *_asked(summary), *_problems(summary)])


def worked_out_text(sheet: int, found: Sequence[tuple[str, str, str, str]]) -> str:
    """Which open quotes and orders were worked out from the sheet: job, customer, order (blank: the quote), lines."""
    if not found:
        return f"No open quote or order was worked out from sheet {sheet}."
    head = f"Worked out from sheet {sheet} and still open; look at each once the sheet is out:"
    lines = [f"job {job}, {customer}: {order or 'quote'}, {words}" for job, customer, order, words in found]
    return document([*wrapped(head), *(line for one in lines for line in wrapped(one, 2))])


def sheets_text(kept: Sequence[KeptSheet]) -> str:
    """The sheets kept, as a table. 'not yet': the sheet counts from its day on, and an older one until then."""
    if not kept:
        return "No sheet is kept yet.\n"
    rows = [
        (
            str(one.sheet),
            one.supplier,
            str(one.sheet_date),
            f"{one.offers:,}",
            f"{one.problem_rows:,}",
            "not yet" if one.not_yet else yes_no(one.is_newest),
            one.file,
        )
        for one in kept
    ]
    return document(table([KEPT_HEADER, *rows], KEPT_MOST, frozenset((0, 3, 4))))


def account_words(account: Accounting) -> str:
    """'612 rows = 598 offers + 11 headings, totals and notes + 3 rows with a problem'."""
    where = f"worksheet '{account.worksheet}': " if account.worksheet else ""
    words = (
        f"{where}{count(account.rows, 'row')} = {count(account.offers, 'offer')}"
        f" + {account.structure:,} headings, totals and notes"
        f" + {count(account.problem_rows, 'row')} with a problem"
    )
    return (
        words if account.adds_up else f"{words}: THIS DOES NOT ADD UP, which is a bug of the program; please report it"
    )


def columns_file(file: str, columns: Sequence[Column]) -> str:
    """A TOML file of what the columns mean, for a person to correct and give back with --columns.

    A column nobody knows, and one that is a question, has '?' and is left open.
    """
    lines = [f"# What the columns of {file} mean. Put a meaning for each '?'; 'not used' leaves a column out."]
    lines += ["[columns]"]
    named: set[str] = set()
    for column in columns:
        header = column.header if column.header not in named else ""  # TOML takes no key twice
        named.add(column.header)
        name = (header or f"column {column.letter}").replace("\\", "\\\\").replace('"', '\\"')
        hint = f"  # perhaps: {column.suggested}" if column.suggested else ""
        lines.append(f'"{name}" = "{_meaning(column) or "?"}"{hint}')
    return document(lines)


def _account(summary: SheetSummary, changed: Sequence[Problem]) -> list[str]:
    return [
        *_counts(summary),
        *_columns(summary.columns),
        *_list("changed header", changed),
        *_asked(summary),
        *_problems(summary),
    ]


def _counts(summary: SheetSummary) -> list[str]:
    return [line for account in summary.accounting for line in wrapped(account_words(account), 2)]


def _region(region: Region, asked: frozenset[str]) -> list[str]:
    where = f"worksheet '{region.worksheet}', " if region.worksheet else ""
    head = f"Table: {where}{_header_words(region)}, last row {region.last_row}"
    cells = [(one.letter, one.header, _meaning(one) or _open(one, asked), one.why) for one in region.columns]
    return [*wrapped(head, 2), *(f"    {line}" for line in table([COLUMN_HEADER, *cells], COLUMN_MOST))]


def _header_words(region: Region) -> str:
    if region.header_row is None:
        return "no header"
    if region.header_row == region.last_header_row:
        return f"header in row {region.header_row}"
    return f"header in rows {region.header_row} to {region.last_header_row}"


def _open(column: Column, asked: frozenset[str]) -> str:
    if column.suggested:
        return f"? perhaps {column.suggested}"
    return "? see the question" if column.header in asked else "not used"


def _columns(columns: Sequence[Column]) -> list[str]:
    used = [one for one in columns if one.field not in (None, "not used")]
    unknown = [one.header or f"column {one.letter}" for one in columns if one.field is None]
    lines = wrapped(f"Columns used: {'; '.join(column_words(one) for one in used) or 'none'}", 2)
    if unknown:
        lines += wrapped(f"Columns not known, so not used: {'; '.join(unknown)}", 2)
    return lines


def column_words(column: Column) -> str:
    """'Your cost = net price', with the quantity a price break holds from or the warehouse of a stock."""
    return f"{column.header or f'column {column.letter}'} = {_meaning(column)}"


def _meaning(column: Column) -> str:
    quantity = f" from {column.from_quantity}" if column.from_quantity is not None else ""
    place = f" in {column.place}" if column.place else ""
    return f"{column.field}{quantity}{place}" if column.field else ""


def _asked(summary: SheetSummary) -> list[str]:
    return [*_list("question", summary.questions), *_list("note", summary.notes)]


def _problems(summary: SheetSummary) -> list[str]:
    return _list("problem", summary.problems) or ["  No problems."]


def _list(name: str, problems: Sequence[Problem]) -> list[str]:
    """The sentences under their count, the first few of them; nothing where there are none."""
    if not problems:
        return []
    lines = [f"  {count(len(problems), name)}:"]
    lines += [line for one in problems[:MOST_PROBLEMS] for line in wrapped(one.sentence(), 4)]
    more = len(problems) - MOST_PROBLEMS
    return lines + ([f"    and {more:,} more."] if more > 0 else [])
