"""Suppliers' terms as a table to take along (CSV, XLSX), and what pages of the counter say of versions and changes."""

from collections.abc import Sequence
from datetime import date, timedelta

from ..basics.problem import at_counter
from ..basics.terms_view import SupplierTerms, TermsChange
from ..basics.value import Value
from .csv_text import Cell, csv_text
from .setup_words import cut
from .terms import differences
from .terms_words import terms_words
from .workbook import Table, workbook_bytes

FIRST = ("Supplier", "Name", "Holds from", "Currency")
LAST = "Not known"
MOST = 3


class VersionWords(Value, frozen=True, kw_only=True):
    """A version of terms: from when till when (None: until others begin), and what it says otherwise than before."""

    starts_on: date
    until: date | None
    holds: bool
    changes: tuple[str, ...]


def version_words(found: SupplierTerms) -> tuple[VersionWords, ...]:
    """Every version, the newest first."""
    made = []
    for at, one in enumerate(found.versions):
        after = found.versions[at + 1 : at + 2]
        made.append(
            VersionWords(
                starts_on=one.starts_on,
                until=after[0].starts_on - timedelta(days=1) if after else None,
                holds=one is found.holds,
                changes=tuple(differences(found.versions[at - 1], one)) if at else (),
            )
        )
    return tuple(reversed(made))


def terms_csv(found: Sequence[SupplierTerms]) -> str:
    """A row for each supplier, a column for each thing terms settle."""
    table = _table(found)
    return csv_text(table.headers, table.rows)


def terms_xlsx(found: Sequence[SupplierTerms]) -> bytes:
    """The same as a workbook."""
    return workbook_bytes((_table(found),))


def _table(found: Sequence[SupplierTerms]) -> Table:
    words = [terms_words(one.holds) if one.holds else {} for one in found]
    names = list(dict.fromkeys(name for one in words for name in one))
    rows: list[tuple[Cell, ...]] = []
    for one, told in zip(found, words, strict=True):
        holds = one.holds
        first = (one.supplier, one.name, holds.starts_on if holds else None, holds.currency if holds else None)
        rows.append((*first, *(told.get(name) for name in names), "; ".join(what.what for what in one.not_known)))
    return Table(title="Terms", headers=(*FIRST, *names, LAST), rows=tuple(rows))


def terms_told(done: Sequence[TermsChange]) -> str:
    """What a file of terms changed, in one sentence, and what to mind of it."""
    if not done:
        return "Nothing changed: all of it is kept already."
    said = ", ".join(f"{one.name} from {one.starts_on} on" for one in done[:MOST])
    more = f" and {len(done) - MOST} more" if len(done) > MOST else ""
    told = [at_counter(problem).sentence() for one in done for problem in one.told][:MOST]
    return cut(" ".join([f"Kept: {said}{more}.", *(f"Mind: {sentence}" for sentence in told)]))
