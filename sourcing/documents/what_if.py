"""Past jobs priced by other markup bands, for the owner: text and XLSX. Both words wherever a figure stands."""

from collections.abc import Sequence

from ..basics.margin import WhatIf
from ..basics.settings import MarkupBand
from .csv_text import Cell, csv_text
from .margin_words import FIGURES, HEADS, bare_cells, figures
from .plain_text import count, document, table, wrapped
from .workbook import Table, workbook_bytes

MOST = (34, 12, 11, 11, 15, 14)


def what_if_text(found: WhatIf) -> str:
    """By band and in all: as priced, and as it would have been."""
    if not found.lines:
        return "No approved line of a past job can be priced by bands.\n"
    rows: list[tuple[str, ...]] = [("", *HEADS)]
    for one in found.by_band:
        rows.append((f"{one.band}: as priced", *bare_cells(one.before)))
        rows.append((f"  {count(one.changed, 'line')} of {one.lines:,} changed", *bare_cells(one.after)))
    rows.append(("all lines: as priced", *bare_cells(found.before)))
    rows.append(("  by the other bands", *bare_cells(found.after)))
    lines = [
        *wrapped(f"Other markup bands: {found.bands}"),
        *wrapped(
            f"Approved lines of past jobs at their quoted costs; parts with freight, before tax, in {found.currency}"
        ),
        *table(rows, MOST, frozenset(range(1, 6))),
    ]
    return document([*lines, *(text for sentence in what_if_told(found) for text in wrapped(sentence))])


def what_if_told(found: WhatIf) -> tuple[str, ...]:
    """What came of it in sentences: in all, under the floor, held down by the list price, left as they are."""
    told = [
        _in_all(found),
        f"Under the floor: {found.under_floor_before:,} lines as priced, {found.under_floor_after:,} by the others.",
    ]
    if found.capped:
        told.append(f"The list price holds {count(found.capped, 'line')} down by the other bands.")
    if found.not_repriced:
        why = "their price is not by the bands of its day (held, or the list price is gone)"
        told.append(f"{count(found.not_repriced, 'line')} left as they are: {why}.")
    return (*told, *(f"Note: {note}." for note in found.notes))


def bands_lines(bands: Sequence[MarkupBand]) -> str:
    """Bands as they are typed, a line for each: '50 = 1.60'."""
    return "\n".join(f"{one.from_cost} = {one.multiplier}" for one in bands)


def _in_all(found: WhatIf) -> str:
    more = found.after.earned - found.before.earned
    word = "less" if more.amount < 0 else "more"
    lines = f"{found.lines_changed:,} of {count(found.lines, 'line')}"
    jobs = f"{found.jobs_changed:,} of {count(found.jobs, 'job')}"
    return f"Earned {-more if more.amount < 0 else more} {word} in all: {lines} on {jobs} would have another price."


def what_if_xlsx(found: WhatIf) -> bytes:
    """One worksheet: each band as priced and by the others, then all."""
    return workbook_bytes((_table(found),))


def what_if_csv(found: WhatIf) -> str:
    """The same as CSV."""
    made = _table(found)
    return csv_text(made.headers, made.rows)


def _table(found: WhatIf) -> Table:
    rows: list[tuple[Cell, ...]] = []
    for one in found.by_band:
        rows.append((one.band, "as priced", one.lines, one.changed, *figures(one.before)))
        rows.append((one.band, "by the other bands", one.lines, one.changed, *figures(one.after)))
    rows.append(("all", "as priced", found.lines, found.lines_changed, *figures(found.before)))
    rows.append(("all", "by the other bands", found.lines, found.lines_changed, *figures(found.after)))
    headers = ("Band", "Which price", "Lines", "Lines changed", *FIGURES)
    return Table(title="Other bands", headers=headers, rows=tuple(rows))
