"""What reading a supplier's sheet gave, as text: where every row went, what the columns mean, what is wrong where."""

from collections.abc import Sequence

from ..basics.sheet import Accounting, Column, KeptSheet, SheetSummary
from .plain_text import count, document, table, wrapped, yes_no

MOST_PROBLEMS = 20
KEPT_HEADER = ("sheet", "supplier", "sheet of", "offers", "problems", "newest", "file")
KEPT_MOST = (6, 16, 10, 8, 8, 6, 40)


def import_text(kept: KeptSheet, summary: SheetSummary) -> str:
    """The account of one import: it visibly adds up, or says that it does not (which is a bug of the program)."""
    head = f"{summary.file}: kept as sheet {kept.sheet} of {kept.supplier}, dated {kept.sheet_date}"
    return document([*wrapped(head), *_account(summary)])


def summary_text(summary: SheetSummary) -> str:
    """The same for a file that was read and not kept."""
    dated = f"dated {summary.sheet_date}" if summary.sheet_date else "no date found"
    head = f"{summary.file}: {dated}, prices in {summary.currency or 'a currency it does not state'}; not kept"
    return document([*wrapped(head), *_account(summary)])


def sheets_text(kept: Sequence[KeptSheet]) -> str:
    """The sheets kept, as a table."""
    if not kept:
        return "No sheet is kept yet.\n"
    rows = [
        (
            str(one.sheet),
            one.supplier,
            str(one.sheet_date),
            f"{one.offers:,}",
            f"{one.problem_rows:,}",
            yes_no(one.is_newest),
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


def _account(summary: SheetSummary) -> list[str]:
    counts = [line for account in summary.accounting for line in wrapped(account_words(account), 2)]
    return [*counts, *_columns(summary.columns), *_problems(summary)]


def _columns(columns: Sequence[Column]) -> list[str]:
    used = [one for one in columns if one.field not in (None, "not used")]
    unknown = [one.header or f"column {one.at + 1}" for one in columns if one.field is None]
    lines = wrapped(f"Columns used: {'; '.join(column_words(one) for one in used) or 'none'}", 2)
    if unknown:
        lines += wrapped(f"Columns not known, so not used: {'; '.join(unknown)}", 2)
    return lines


def column_words(column: Column) -> str:
    """'Your cost = net price', with the quantity a price break holds from."""
    header = column.header or f"column {column.at + 1}"
    quantity = f" from {column.from_quantity}" if column.from_quantity is not None else ""
    return f"{header} = {column.field}{quantity}"


def _problems(summary: SheetSummary) -> list[str]:
    problems = summary.problems
    if not problems:
        return ["  No problems."]
    lines = [f"  {count(len(problems), 'problem')}:"]
    lines += [line for one in problems[:MOST_PROBLEMS] for line in wrapped(one.sentence(), 4)]
    more = len(problems) - MOST_PROBLEMS
    return lines + ([f"    and {more:,} more."] if more > 0 else [])
