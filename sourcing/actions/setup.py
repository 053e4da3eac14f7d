"""Set the shop up from files a person edits: settings, suppliers' terms, exchange rates, equivalence table."""

from collections.abc import Iterator
from datetime import date
from pathlib import Path

from sqlalchemy import Connection

from ..basics.equivalence import EquivalenceTable
from ..basics.problem import Place, Problem, Refused, problem, refused
from ..basics.rate import Rate
from ..basics.settings import Settings
from ..basics.table_change import TableChanges
from ..basics.terms import Terms
from ..basics.value import Value, changed
from ..matching.equivalences.table_file import read_table
from ..storage.after_quote import billed_jobs
from ..storage.equivalence import equivalence_table
from ..storage.jobs import jobs
from ..storage.shop import every_terms, has_settings, put_rates, put_settings, put_terms, rates, settings_on
from ..storage.statements import kept_statements
from .desk import Desk, Pen
from .far_asked import ask, far_rates, far_settings, far_terms
from .files import read_bytes
from .parts_at_desk import with_parts_at_desk
from .rates_file import read_rates
from .rates_gone import come_back
from .settings_file import read_settings
from .setup_warnings import after_it_is_kept, of_bands, of_rates, of_the_past
from .table_compare import NOT_IN_FILE, Rule, compare_tables
from .table_keep import keep_shops_table
from .terms_compare import change_words, subject, terms_changes
from .terms_file import read_terms

FILES = ("shop.toml", "suppliers.toml", "rates.csv", "equivalence.xlsx")
TABLE_STAYS = "; the equivalence table stays as it was"
"""The end of a deed that changed nothing of what matching goes by."""
RATE_CHANGED = "past-rate-changed"
"""Told of a rate that stands in the place of another of the same day; the ledger keeps what was there."""
ALWAYS = date(1970, 1, 1)
"""The first settings hold from the beginning, so that older papers can be worked out too."""


class SetUp(Value, frozen=True, kw_only=True):
    """What was read: files and counts; and what the equivalence table changes in the one that was there.

    `warnings`: what is worth a look in terms and rates, though all of it was kept.
    """

    files: tuple[str, ...]
    suppliers: int
    rates: int
    parts: int
    statements: int
    changes: TableChanges | None = None
    problems: tuple[Problem, ...] = ()
    warnings: tuple[Problem, ...] = ()


def set_up(desk: Desk, folder: Path, keep_good: bool = False, sure: bool = False) -> SetUp:
    """Read whichever of the four files the folder has and keep them all, or none of them if one can't be used.

    `keep_good`: leave rows of the equivalence table that can't be used out and keep the others; nothing is then
    withdrawn or taken out for being missing, for the row that can't be read may be the one that is missed.
    `sure`: figures that lie far off are right as they stand; without it they are asked about, and nothing is kept.
    """
    present = tuple(name for name in FILES if (folder / name).is_file())
    if not present:
        raise refused("nothing-to-set-up", found=folder.name or str(folder))
    settings = read_settings(folder / "shop.toml") if "shop.toml" in present else None
    terms = read_terms(folder / "suppliers.toml") if "suppliers.toml" in present else ()
    rates = read_rates(folder / "rates.csv") if "rates.csv" in present else ()
    table, problems = _table(folder, keep_good) if "equivalence.xlsx" in present else (None, ())
    with desk.writing("set up") as pen:
        warnings = _keep_figures(pen, settings, terms, rates, sure)
        changes = _replace(pen, table, problems, keep_good) if table else None
        stays = TABLE_STAYS if changes is None or changes.is_nothing else ""
        pen.note("shop", f"read {', '.join(present)}{stays}")
    return SetUp(
        files=present,
        suppliers=len({one.supplier for one in terms}),
        rates=len(rates),
        parts=len(table.parts) if table else 0,
        statements=len(table.statements) if table else 0,
        changes=changes,
        problems=changes.problems if changes else (),
        warnings=warnings,
    )


def refuse_other_currency(pen: Pen, new: Settings) -> None:
    """Jobs on their way stand in the currency they were quoted and ordered in; none of it can be worked out anew."""
    if not has_settings(pen.connection):
        return
    before, billed = settings_on(pen.connection, pen.desk.at.date()).currency, billed_jobs(pen.connection)
    still = [one.number for one in jobs(pen.connection) if one.number not in billed]
    if new.currency != before and still:
        first = f"job {still[0]}" if len(still) == 1 else f"{len(still)} open jobs ({still[0]} is the first)"
        raise refused("currency-of-open-jobs", found=new.currency, before=before, jobs=first)


def _keep_figures(
    pen: Pen, settings: Settings | None, terms: tuple[Terms, ...], rates: tuple[Rate, ...], sure: bool
) -> tuple[Problem, ...]:
    """Keep settings, rates and terms, and say what to mind about them. What lies far off is asked about first."""
    connection, today = pen.connection, pen.desk.at.date()
    far = [*_far_settings(connection, settings, today), *_far_rates(connection, rates), *come_back(connection, rates)]
    if settings:
        refuse_other_currency(pen, settings)
        put_settings(connection, settings, today if has_settings(connection) else ALWAYS)
    told = tuple(of_rates(connection, rates, today))
    for one in told:
        if one.code == RATE_CHANGED:
            pen.note("rates", one.what)
    put_rates(connection, rates)
    far += far_terms(connection, terms_changes(every_terms(connection), terms), today, Place(file="suppliers.toml"))
    ask(far, sure)
    cliffs = of_bands(settings) if settings else ()
    return (*cliffs, *_keep_terms(pen, terms), *told, *after_it_is_kept(connection, today))


def _far_settings(connection: Connection, settings: Settings | None, today: date) -> Iterator[Problem]:
    if settings:
        before = settings_on(connection, today) if has_settings(connection) else None
        yield from far_settings(before, settings, place=Place(file="shop.toml"))


def _far_rates(connection: Connection, new: tuple[Rate, ...]) -> Iterator[Problem]:
    kept = (one for into in {one.into for one in new} for one in rates(connection, into).rates)
    return far_rates(kept, new)


def _keep_terms(pen: Pen, terms: tuple[Terms, ...]) -> tuple[Problem, ...]:
    """Keep the terms, enter what they change for suppliers known before, and tell what of it is of days gone by."""
    kept = every_terms(pen.connection)
    known = {one.supplier for one in kept}
    changes = [one for one in terms_changes(kept, terms) if one.supplier in known]
    put_terms(pen.connection, terms)
    for one in changes:
        pen.note(subject(one.supplier), f"from {one.starts_on} on (suppliers.toml); {change_words(one)}")
    return of_the_past(changes, pen.desk.at.date())


def _table(folder: Path, keep_good: bool) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    table, problems = read_table(read_bytes(folder / "equivalence.xlsx"), "equivalence.xlsx")
    if not keep_good:
        _refuse(problems)
    return table, problems


def _refuse(problems: tuple[Problem, ...]) -> None:
    if problems:
        raise Refused(problem("table-has-problems", count=len(problems)), *problems)


def _replace(pen: Pen, table: EquivalenceTable, problems: tuple[Problem, ...], keep_good: bool) -> TableChanges:
    """Make it the shop's table. Statements that only the file knew go with it; those made at the desk stay."""
    rule = Rule(file="equivalence.xlsx", why_gone=NOT_IN_FILE, is_the_shops=True, today=pen.desk.at.date())
    kept, before = kept_statements(pen.connection), equivalence_table(pen.connection)
    table, parts_stay = with_parts_at_desk(pen.connection, before.parts, table)
    changes, same = compare_tables(kept, before, table, rule)
    problems = (*problems, *changes.problems)
    if problems:
        if not keep_good:
            _refuse(problems)
        codes = {part.code for part in table.parts}
        stay = tuple(part for part in before.parts if part.code not in codes)
        table, rule = changed(table, parts=(*table.parts, *stay)), changed(rule, why_gone="")
        changes, same = compare_tables(kept, before, table, rule)
    keep_shops_table(pen, changes, same, table.parts)
    return changed(changes, done=True, problems=problems, parts_stay=parts_stay)
