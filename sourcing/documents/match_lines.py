"""What matching two files found, as CSV for people and spreadsheets."""

from collections.abc import Sequence

from ..basics.match_line import MatchLine
from .csv_text import csv_text
from .workbook import Table, workbook_bytes

COLUMNS = (
    *("row", "number", "maker", "description", "part_row", "part", "part_maker", "part_description"),
    *("tier", "score", "rank", "against", "reasons"),
)


def match_csv(lines: Sequence[MatchLine]) -> str:
    """One line for each candidate, with a header; the score as text with four decimals, reasons one after the other."""
    return csv_text(COLUMNS, map(_cells, lines))


def match_xlsx(lines: Sequence[MatchLine]) -> bytes:
    """The same as a workbook with a blank column 'answer', to be filled in with yes or no."""
    rows = tuple((*_cells(line), "") for line in lines)
    return workbook_bytes([Table(title="matches", headers=(*COLUMNS, "answer"), rows=rows)])


def _cells(line: MatchLine) -> tuple[str | int | None, ...]:
    return (
        *(line.row, line.number, line.maker, line.description),
        *(line.part_row, line.part, line.part_maker, line.part_description),
        *(line.tier, f"{line.score:.4f}", line.rank, "yes" if line.against else ""),
        "; ".join(line.reasons),
    )
