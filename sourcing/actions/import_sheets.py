"""Take suppliers' sheets in: read, check, keep; all of the named files, or none. The same bytes twice do nothing."""

import hashlib
import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from sqlalchemy import Connection

from ..basics.problem import refused
from ..basics.sheet import Field, KeptSheet, SheetSummary
from ..basics.terms import Terms
from ..basics.value import Value
from ..sheets.reading import Hints, SheetReading, read_sheet
from ..storage.sheets import (
    NewSheet,
    add_sheet,
    kept_sheets,
    meanings,
    remember_meanings,
    remove_sheet,
    same_sheet,
)
from ..storage.shop import terms_on
from .desk import Desk, Pen
from .files import read_bytes

ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".ods")
DAY = re.compile(r"(?<!\d)(\d{4})-(\d{2})-(\d{2})(?!\d)")


class Said(Value, frozen=True, kw_only=True):
    """What the clerk says about the files: whose they are, from which day, what some columns mean (by header)."""

    supplier: str = ""
    dated: date | None = None
    columns: Mapping[str, Field] = {}


class Imported(Value, frozen=True, kw_only=True):
    """One file: what was kept and found. `again`: the same bytes were there already and nothing was done."""

    kept: KeptSheet
    summary: SheetSummary | None
    again: bool


def import_sheets(desk: Desk, paths: Sequence[Path], said: Said) -> tuple[Imported, ...]:
    """Import every file, or the sheets in every folder. One transaction: one refused file keeps all of them out."""
    files = [file for path in paths for file in _sheet_files(path)]
    with desk.writing("import") as pen:
        return tuple(_import_one(pen, file, said) for file in files)


def undo_import(desk: Desk, sheet: int) -> KeptSheet:
    """Take one sheet and its offers out again; the supplier's older sheet counts once more. The deed stays."""
    with desk.writing("undo import") as pen:
        kept = next((one for one in kept_sheets(pen.connection) if one.sheet == sheet), None)
        if kept is None:
            raise refused("no-sheet-number", found=sheet)
        remove_sheet(pen.connection, sheet)
        pen.note(f"sheet {sheet}", f"took {kept.file} of {kept.supplier} out again")
        return kept


def read_only(path: Path, said: Said, currency: str) -> SheetReading:
    """Read a sheet without keeping anything; `currency` where the sheet does not state its own, else blank."""
    hints = Hints(supplier=said.supplier, currency=currency, meanings=said.columns)
    return read_sheet(read_bytes(path), path.name, hints)


def sheets(desk: Desk) -> tuple[KeptSheet, ...]:
    """Every sheet kept, newest of each supplier marked."""
    with desk.store.reading() as connection:
        return tuple(kept_sheets(connection))


def _sheet_files(path: Path) -> list[Path]:
    if not path.is_dir():
        return [path]
    found = sorted(file for file in path.rglob("*") if file.suffix.casefold() in ENDINGS and file.parent != path)
    found = found or sorted(file for file in path.iterdir() if file.suffix.casefold() in ENDINGS)
    if not found:
        raise refused("no-sheets", found=path.name)
    return found


def _import_one(pen: Pen, file: Path, said: Said) -> Imported:
    data = read_bytes(file)
    terms = _terms_for(pen.connection, file, said, pen.desk.at.date())
    sha256 = hashlib.sha256(data).hexdigest()
    there = same_sheet(pen.connection, terms.supplier, sha256)
    if there:
        return Imported(kept=there, summary=None, again=True)
    columns = {**meanings(pen.connection, terms.supplier), **said.columns}
    reading = read_sheet(data, file.name, Hints(supplier=terms.supplier, currency=terms.currency, meanings=columns))
    if reading.offers.empty:
        count = sum(one.problem_rows for one in reading.summary.accounting)
        raise refused("sheet-without-offers", found=file.name, problems=count)
    if said.columns:
        remember_meanings(pen.connection, terms.supplier, said.columns, pen.desk.who, pen.desk.at)
    new = NewSheet(
        supplier=terms.supplier,
        sheet_date=_sheet_date(file, said),
        sha256=sha256,
        imported_at=pen.desk.at,
        imported_by=pen.desk.who,
    )
    kept = add_sheet(pen.connection, reading.summary, reading.offers, new)
    pen.note(f"sheet {kept.sheet}", f"{kept.file} of {kept.supplier}: {kept.offers} offers")
    return Imported(kept=kept, summary=reading.summary, again=False)


def _terms_for(connection: Connection, file: Path, said: Said, day: date) -> Terms:
    known = terms_on(connection, day)
    if said.supplier:
        if said.supplier not in known:
            raise refused("no-terms", supplier=said.supplier, day=day)
        return known[said.supplier]
    folder = file.resolve().parent.name.casefold()
    named = [slug for slug in known if slug == folder or file.stem.casefold().startswith(f"{slug}-")]
    if len(named) != 1:
        raise refused("supplier-not-named", found=file.name, known=", ".join(sorted(known)) or "none yet")
    return known[named[0]]


def _sheet_date(file: Path, said: Said) -> date:
    if said.dated:
        return said.dated
    match = DAY.search(file.stem)
    try:
        return date(*(int(part) for part in match.groups()))  # type: ignore[union-attr]
    except (AttributeError, ValueError):
        raise refused("sheet-not-dated", found=file.name) from None
