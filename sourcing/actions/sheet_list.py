"""Suppliers with their sheets as a clerk looks at them: which counts, how long it holds; and one sheet whole."""

from collections.abc import Iterable
from datetime import date, datetime, timedelta

from sqlalchemy import Connection

from ..basics.problem import Problem, refused
from ..basics.sheet import Field, KeptSheet, SheetSummary
from ..basics.terms import Terms
from ..basics.value import Value
from ..sheets.headers.changed_headers import changes
from ..storage.candidates import looked_through
from ..storage.sheet_origin import taken_in_by
from ..storage.sheets import break_quantities, has_net_prices, kept_sheets, meanings, sheet_summary
from ..storage.shop import terms_on
from .desk import Desk

ROWS = 50
"""Rows of a page of problems."""


class SupplierSheets(Value, frozen=True, kw_only=True):
    """A supplier and his sheets, the newest first. `counts` is the one that counts today, None where none does.

    `held_until`: the last day its prices hold by the supplier's terms, None where they hold until the next sheet.
    `is_over`: that day is past. `days_old` is counted from the day of the sheet.
    """

    supplier: str
    name: str
    sheets: tuple[KeptSheet, ...] = ()
    counts: KeptSheet | None = None
    days_old: int | None = None
    held_until: date | None = None
    is_over: bool = False


class Remembered(Value, frozen=True, kw_only=True):
    """What a person said a column of a supplier's means."""

    header: str
    field: Field
    from_quantity: int | None


class SheetWhole(Value, frozen=True, kw_only=True):
    """One sheet: what was found in it, who took it in, and what is before it.

    `changed`: how its headers differ from those of `before`. `ours`: rows that are parts of ours by number and table,
    `like`: further rows that may be (None: nobody has looked). `instead`: what counts once it is taken out.
    `has_prices`: whether any row has a net price.
    """

    kept: KeptSheet
    name: str
    summary: SheetSummary
    taken_in_at: datetime
    taken_in_by: str
    before: KeptSheet | None
    instead: KeptSheet | None
    changed: tuple[Problem, ...]
    held_until: date | None
    is_over: bool
    ours: int | None
    like: int | None
    has_prices: bool


class ProblemsShown(Value, frozen=True, kw_only=True):
    """One page of the problems and notes of a sheet. `first`: number of its first row, counted from 1."""

    rows: tuple[Problem, ...]
    first: int
    total: int
    page: int
    pages: int


def supplier_sheets(desk: Desk) -> tuple[SupplierSheets, ...]:
    """Every supplier with terms or sheets, by name."""
    with desk.store.reading() as connection:
        known = terms_on(connection, desk.at.date())
        kept = kept_sheets(connection, desk.at.date())
    every = {*known, *(one.supplier for one in kept)}
    found = [_of_supplier(slug, known.get(slug), kept, desk.at.date()) for slug in every]
    return tuple(sorted(found, key=lambda one: (one.name.casefold(), one.supplier)))


def sheets_of(desk: Desk, supplier: str) -> tuple[SupplierSheets, tuple[Remembered, ...]]:
    """One supplier's sheets, and what is remembered of his columns. Refuses one without terms and sheets."""
    with desk.store.reading() as connection:
        terms = terms_on(connection, desk.at.date()).get(supplier)
        found = _of_supplier(supplier, terms, kept_sheets(connection, desk.at.date()), desk.at.date())
        if terms is None and not found.sheets:
            raise refused("no-sheet-of-supplier", found=supplier)
        steps = break_quantities(connection, supplier)
        said = [
            Remembered(header=header, field=field, from_quantity=steps.get(header))
            for header, field in meanings(connection, supplier).items()
        ]
    return found, tuple(said)


def sheet_whole(desk: Desk, sheet: int) -> SheetWhole:
    """One sheet with all that was found. Refuses a number no sheet has."""
    day = desk.at.date()
    with desk.store.reading() as connection:
        every = kept_sheets(connection, day)
        kept = next((one for one in every if one.sheet == sheet), None)
        if kept is None:
            raise refused("no-sheet-number", found=sheet)
        terms = terms_on(connection, day).get(kept.supplier)
        summary = sheet_summary(connection, sheet)
        mine = _newest_first(every, kept.supplier)
        before = next(iter(mine[mine.index(kept) + 1 :]), None)
        at, who = taken_in_by(connection, sheet)
        looked = looked_through(connection, sheet)
        until = _held_until(kept, terms)
        return SheetWhole(
            kept=kept,
            name=terms.name if terms else kept.supplier,
            summary=summary,
            taken_in_at=at,
            taken_in_by=who,
            before=before,
            instead=next((one for one in mine if one != kept and not one.not_yet), None),
            changed=_changed(connection, before, summary),
            held_until=until,
            is_over=until is not None and until < day,
            ours=looked[0] if looked else None,
            like=looked[1] if looked else None,
            has_prices=has_net_prices(connection, sheet),
        )


def problems_page(summary: SheetSummary, page: int) -> ProblemsShown:
    """One page of what is wrong and what is to be known, lost rows first. A page beyond the last is the last."""
    every = (*summary.problems, *summary.notes)
    pages = max(-(-len(every) // ROWS), 1)
    here = min(max(page, 1), pages)
    first = (here - 1) * ROWS
    return ProblemsShown(rows=every[first : first + ROWS], first=first + 1, total=len(every), page=here, pages=pages)


def _of_supplier(slug: str, terms: Terms | None, kept: Iterable[KeptSheet], day: date) -> SupplierSheets:
    mine = _newest_first(kept, slug)
    counts = next((one for one in mine if one.is_newest), None)
    until = _held_until(counts, terms) if counts else None
    return SupplierSheets(
        supplier=slug,
        name=terms.name if terms else slug,
        sheets=tuple(mine),
        counts=counts,
        days_old=(day - counts.sheet_date).days if counts else None,
        held_until=until,
        is_over=until is not None and until < day,
    )


def _newest_first(kept: Iterable[KeptSheet], supplier: str) -> list[KeptSheet]:
    mine = (one for one in kept if one.supplier == supplier)
    return sorted(mine, key=lambda one: (one.sheet_date, one.sheet), reverse=True)


def _held_until(kept: KeptSheet, terms: Terms | None) -> date | None:
    days = terms.prices_hold_days if terms else None
    return None if days is None else kept.sheet_date + timedelta(days=days)


def _changed(connection: Connection, before: KeptSheet | None, summary: SheetSummary) -> tuple[Problem, ...]:
    return changes(sheet_summary(connection, before.sheet).columns, summary.columns) if before else ()
