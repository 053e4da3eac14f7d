"""CSV that a spreadsheet cannot be tricked by: RFC 4180 with every text cell quoted and formulas defused.

Rule: OWASP's advice against CSV injection: a cell that begins with = + - @ (also their full-width forms), tab or
carriage return gets an apostrophe in front, so that a spreadsheet shows it and does not run it. Leading blanks are
looked past. The price of it: a part number that truly begins with such a mark carries the apostrophe in the file.
"""

import csv
import io
from collections.abc import Iterable, Sequence
from datetime import date
from decimal import Decimal

from .plain_text import shown

RISKY = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n")

Cell = str | int | Decimal | date | None
"""What a table's cell may hold. None is a blank cell: not known, not stated, never zero."""


def csv_text(headers: Sequence[str], rows: Iterable[Sequence[Cell]]) -> str:
    """The table as CSV with a header row and CRLF line ends. Decimals keep their digits, dates are ISO 8601."""
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    writer.writerow([defused(header) for header in headers])
    writer.writerows([_written(cell) for cell in row] for row in rows)
    return out.getvalue()


def defused(text: str) -> str:
    """The text with an apostrophe in front where a spreadsheet would take it for a formula."""
    risky = text.startswith(RISKY) or text.lstrip().startswith(RISKY)
    return f"'{shown(text)}" if risky else shown(text)


def _written(cell: Cell) -> str | int | Decimal:
    if isinstance(cell, (int, Decimal)):
        return cell
    if isinstance(cell, date):
        return cell.isoformat()
    return "" if cell is None else defused(cell)
