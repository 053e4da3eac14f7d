"""Set the shop up from files a person edits: settings, suppliers' terms, exchange rates, equivalence table."""

from datetime import date
from pathlib import Path

from ..basics.currency import minor_units
from ..basics.equivalence import EquivalenceTable
from ..basics.problem import Refused, problem, refused
from ..basics.settings import Settings
from ..basics.table_change import TableChanges
from ..basics.terms import Terms
from ..basics.value import Value, changed
from ..landed_cost.calendars import is_working_day
from ..matching.equivalences.table_file import read_table
from ..storage.equivalence import equivalence_table
from ..storage.shop import has_settings, put_rates, put_settings, put_terms
from ..storage.statements import kept_statements
from .desk import Desk, Pen
from .files import read_bytes, read_rates, read_toml
from .table_compare import NOT_IN_FILE, Rule, compare_tables
from .table_keep import keep_shops_table

FILES = ("shop.toml", "suppliers.toml", "rates.csv", "equivalence.xlsx")
ALWAYS = date(1970, 1, 1)
"""The first settings hold from the beginning, so that older papers can be worked out too."""


class SetUp(Value, frozen=True, kw_only=True):
    """What was read: files and counts; and what the equivalence table changes in the one that was there."""

    files: tuple[str, ...]
    suppliers: int
    rates: int
    parts: int
    statements: int
    changes: TableChanges | None = None


def set_up(desk: Desk, folder: Path) -> SetUp:
    """Read whichever of the four files the folder has and keep them all, or none of them if one can't be used."""
    present = tuple(name for name in FILES if (folder / name).is_file())
    if not present:
        raise refused("nothing-to-set-up", found=folder.name or str(folder))
    settings = _settings(folder) if "shop.toml" in present else None
    terms = _terms(folder) if "suppliers.toml" in present else ()
    rates = read_rates(folder / "rates.csv") if "rates.csv" in present else ()
    table = _table(folder) if "equivalence.xlsx" in present else None
    with desk.writing("set up") as pen:
        if settings:
            starts_on = desk.at.date() if has_settings(pen.connection) else ALWAYS
            put_settings(pen.connection, settings, starts_on)
        put_terms(pen.connection, terms)
        put_rates(pen.connection, rates)
        changes = _replace(pen, table) if table else None
        pen.note("shop", f"read {', '.join(present)}")
    return SetUp(
        files=present,
        suppliers=len(terms),
        rates=len(rates),
        parts=len(table.parts) if table else 0,
        statements=len(table.statements) if table else 0,
        changes=changes,
    )


def _settings(folder: Path) -> Settings:
    settings = read_toml(folder / "shop.toml", Settings)
    minor_units(settings.currency)
    is_working_day(date(2026, 1, 1), settings.calendar)  # an unknown country is told now, not at the first order
    return settings


def _terms(folder: Path) -> tuple[Terms, ...]:
    every = read_toml(folder / "suppliers.toml", tuple[Terms, ...], top="supplier")
    for terms in every:
        minor_units(terms.currency)
        is_working_day(date(2026, 1, 1), terms.calendar)
    return every


def _table(folder: Path) -> EquivalenceTable:
    table, problems = read_table(read_bytes(folder / "equivalence.xlsx"), "equivalence.xlsx")
    if problems:
        raise Refused(problem("table-has-problems", count=len(problems)), *problems)
    return table


def _replace(pen: Pen, table: EquivalenceTable) -> TableChanges:
    """Make it the shop's table. Statements that only the file knew go with it; those made at the desk stay."""
    rule = Rule(file="equivalence.xlsx", why_gone=NOT_IN_FILE, is_the_shops=True)
    changes, same = compare_tables(kept_statements(pen.connection), equivalence_table(pen.connection), table, rule)
    if changes.problems:
        raise Refused(problem("table-has-problems", count=len(changes.problems)), *changes.problems)
    keep_shops_table(pen, changes, same, table.parts)
    return changed(changes, done=True)
