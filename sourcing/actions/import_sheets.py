"""Take suppliers' sheets in: read, check, keep; all of the named files, or none. The same bytes twice do nothing."""

import hashlib
import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from sqlalchemy import Connection

from ..basics.judgement import LeftByImport
from ..basics.problem import Place, Problem, Refused, problem, refused
from ..basics.sheet import Field, KeptSheet, SheetSummary
from ..basics.terms import Terms
from ..basics.value import Value
from ..sheets.headers.changed_headers import changes, now_worked_out
from ..sheets.reading import Hints, SheetReading, Tell, read_sheet, silent
from ..storage.sheets import (
    NewSheet,
    add_sheet,
    kept_sheets,
    remember_meanings,
    remove_sheet,
    same_sheet,
    sheet_summary,
)
from ..storage.shop import terms_on
from .desk import Desk, Pen
from .files import read_bytes
from .import_answers import (
    refuse_unknown_everywhere,
    refuse_unknown_headers,
    told_of_one_of_many,
    unknown_headers,
)
from .remembered_columns import KnownColumns, known_columns
from .sheet_users import UNDO, note_gone, still_open

ENDINGS = (".csv", ".tsv", ".txt", ".xlsx", ".xlsm", ".xls", ".ods")
DAY = re.compile(r"(?<!\d)(\d{4})-(\d{2})-(\d{2})(?!\d)")


class Said(Value, frozen=True, kw_only=True):
    """What the clerk says about the files: whose they are, from which day, what some columns mean (by header).

    `quantities`: for columns she says are net prices, from how many pieces on they hold. `looked_over`: she has seen
    what a sheet shows before it is kept, where nothing is asked. `without_prices`: it is to be kept though no row of it
    has a net price.
    """

    supplier: str = ""
    dated: date | None = None
    columns: Mapping[str, Field] = {}
    quantities: Mapping[str, int] = {}
    looked_over: bool = False
    without_prices: bool = False


class Imported(Value, frozen=True, kw_only=True):
    """One file: what was kept and found. `again`: the same bytes were there already and nothing was done.

    `changed`: how its headers differ from those of the supplier's sheet before it, and that it has no prices. `left`:
    what waits for a person on it, None where nobody has looked or it does not count (see `left_by_import`).
    """

    kept: KeptSheet
    summary: SheetSummary | None
    again: bool
    changed: tuple[Problem, ...] = ()
    left: LeftByImport | None = None


def import_sheets(desk: Desk, paths: Sequence[Path], said: Said, tell: Tell = silent) -> tuple[Imported, ...]:
    """Import every file, or the sheets in every folder. One transaction: one refused file keeps all of them out.

    What is said of columns is for every file that has them; what no file has is refused. `tell` is given a few words at
    each step of a long import.
    """
    files = [file for path in paths for file in _sheet_files(path)]
    with desk.writing("import") as pen:
        if len(files) == 1:
            return (_import_one(pen, files[0], said, tell),)
        done = tuple(_one_of_many(pen, file, said, tell) for file in files)
        found = [one.summary or sheet_summary(pen.connection, one.kept.sheet) for one in done] if said.columns else []
        refuse_unknown_everywhere(found, said.columns)
        return done


def undo_import(desk: Desk, sheet: int) -> KeptSheet:
    """Take one sheet and its offers out again; the supplier's older sheet counts once more. The deed stays.

    It is entered under every open quote and order that was worked out from the sheet too.
    """
    with desk.writing(UNDO) as pen:
        kept = next((one for one in kept_sheets(pen.connection, desk.at.date()) if one.sheet == sheet), None)
        if kept is None:
            raise refused("no-sheet-number", found=sheet)
        note_gone(pen, kept, tuple(still_open(pen.connection, kept)))
        remove_sheet(pen.connection, sheet, desk.at.date())
        pen.note(f"sheet {sheet}", f"took {kept.file} of {kept.supplier} out again")
        return kept


def sheets(desk: Desk) -> tuple[KeptSheet, ...]:
    """Every sheet kept; each supplier's newest on the desk's day is marked, and those of a later day."""
    with desk.store.reading() as connection:
        return tuple(kept_sheets(connection, desk.at.date()))


def _sheet_files(path: Path) -> list[Path]:
    if not path.is_dir():
        return [path]
    found = sorted(file for file in path.rglob("*") if file.suffix.casefold() in ENDINGS and file.parent != path)
    found = found or sorted(file for file in path.iterdir() if file.suffix.casefold() in ENDINGS)
    if not found:
        raise refused("no-sheets", found=path.name)
    return found


def _one_of_many(pen: Pen, file: Path, said: Said, tell: Tell) -> Imported:
    try:
        return _import_one(pen, file, said, tell, alone=False)
    except Refused as error:
        raise told_of_one_of_many(error, file, said.supplier) from error


def _import_one(pen: Pen, file: Path, said: Said, tell: Tell, alone: bool = True) -> Imported:
    data = read_bytes(file)
    terms = _terms_for(pen.connection, file, said, pen.desk.at.date())
    there = same_sheet(pen.connection, terms.supplier, sha256_of(data), pen.desk.at.date())
    if there:
        return Imported(kept=there, summary=None, again=True)
    reading = read_with(known_columns(pen.connection, terms.supplier), data, file.name, terms, said, tell)
    if alone:
        refuse_unknown_headers(reading.summary, said.columns)
    tell(f"{file.name}: keeping {len(reading.offers):,} offers")
    return keep_reading(pen, reading, sha256_of(data), terms.supplier, said)


def keep_reading(pen: Pen, reading: SheetReading, sha256: str, supplier: str, said: Said) -> Imported:
    """Keep a sheet that was read, and what was said of its columns. `sha256` is that of its bytes, hex.

    Refuses one that leaves a question open, holds no offer, has no date, has lost its net prices, or has none in any
    row unless somebody says that it is to be kept so.
    """
    file = Path(reading.summary.file)
    _refuse_open(reading, file)
    elsewhere = unknown_headers(reading.summary, said.columns)
    columns = {header: field for header, field in said.columns.items() if header not in elsewhere}
    if columns:
        steps = {header: pieces for header, pieces in said.quantities.items() if header in columns}
        remember_meanings(pen.connection, supplier, columns, pen.desk.who, pen.desk.at, steps)
    new = NewSheet(
        supplier=supplier,
        sheet_date=_sheet_date(file, said, reading.summary),
        sha256=sha256,
        imported_at=pen.desk.at,
        imported_by=pen.desk.who,
    )
    changed = (*_changed(pen, supplier, reading, said), *_without_prices(pen, reading, supplier, said))
    kept = add_sheet(pen.connection, reading.summary, reading.offers, new)
    pen.note(f"sheet {kept.sheet}", f"{kept.file} of {kept.supplier}: {kept.offers} offers")
    return Imported(kept=kept, summary=reading.summary, again=False, changed=changed)


def prices_missing(reading: SheetReading) -> Problem | None:
    """What is asked of a sheet none of whose rows has a net price; None where one has."""
    if reading.offers["breaks"].map(len).any():
        return None
    return problem("sheet-without-prices", found=reading.summary.file, count=len(reading.offers))


def _without_prices(pen: Pen, reading: SheetReading, supplier: str, said: Said) -> tuple[Problem, ...]:
    """Told of a sheet that is kept without prices. Refused unless that is said, or that a column which had the prices
    before and is gone is not used any more."""
    asked = prices_missing(reading)
    if asked is None:
        return ()
    headers = {column.header for column in reading.summary.columns}
    gone = [header for header in _net_headers(pen, _latest(pen, supplier)) if header not in headers]
    if not said.without_prices and not any(said.columns.get(header) == "not used" for header in gone):
        raise Refused(asked)
    return (problem("kept-without-prices", place=Place(file=reading.summary.file), count=len(reading.offers)),)


def sha256_of(data: bytes) -> str:
    """What tells the bytes of one sheet from those of another, in hex digits."""
    return hashlib.sha256(data).hexdigest()


def read_with(known: KnownColumns, data: bytes, name: str, terms: Terms, said: Said, tell: Tell) -> SheetReading:
    """The sheet read with what is remembered and said. A day said is the sheet's, else one in `name`, the file's."""
    hints = Hints(
        supplier=terms.supplier,
        currency=terms.currency,
        meanings={**known.meanings, **said.columns},
        quantities={**known.quantities, **said.quantities},
        ours=known.ours,
        dated=said.dated or day_in(Path(name)),
        tell=tell,
    )
    return read_sheet(data, name, hints)


def _refuse_open(reading: SheetReading, file: Path) -> None:
    """Refuses a sheet that leaves a question open or holds no offer."""
    if reading.summary.questions:
        raise Refused(*reading.summary.questions)
    if reading.offers.empty:
        count = sum(one.problem_rows for one in reading.summary.accounting)
        raise refused("sheet-without-offers", found=file.name, problems=count)


def _changed(pen: Pen, supplier: str, reading: SheetReading, said: Said) -> tuple[Problem, ...]:
    """How the sheet differs from the supplier's latest in headers and length; nothing where he has none yet.

    The latest by date, also where its day is still to come.

    Refuses one whose net prices are gone, unless somebody says so: they would vanish without a word.
    """
    before, summary = _latest(pen, supplier), reading.summary
    if before is None:
        return ()
    columns, nets = sheet_summary(pen.connection, before.sheet).columns, _net_headers(pen, before)
    said_gone = said.without_prices or any(said.columns.get(header) == "not used" for header in nets)
    notes: tuple[Problem, ...] = ()
    if nets and not any(column.field == "net price" for column in summary.columns):
        place = Place(file=summary.file)
        if prices_missing(reading) is None:
            notes = now_worked_out(summary.columns, nets[0], place)
        elif not said_gone:
            raise refused("net-price-gone", place=place, found=nets[0])
    return (*changes(columns, summary.columns), *notes, *_fewer(before, summary))


def _latest(pen: Pen, supplier: str) -> KeptSheet | None:
    kept = [one for one in kept_sheets(pen.connection, pen.desk.at.date()) if one.supplier == supplier]
    return max(kept, key=lambda one: (one.sheet_date, one.sheet), default=None)


def _net_headers(pen: Pen, before: KeptSheet | None) -> list[str]:
    """The headers under which a sheet that is kept had its net prices."""
    columns = sheet_summary(pen.connection, before.sheet).columns if before else ()
    return [column.header for column in columns if column.field == "net price"]


def _fewer(before: KeptSheet, summary: SheetSummary) -> tuple[Problem, ...]:
    count = sum(one.offers for one in summary.accounting)
    if 2 * count >= before.offers:
        return ()
    return (problem("fewer-offers", place=Place(file=summary.file), count=count, before=before.offers),)


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


def _sheet_date(file: Path, said: Said, summary: SheetSummary) -> date:
    """The day said, else the one in the file's name, else the one a line above the table names."""
    found = said.dated or day_in(file) or summary.sheet_date
    if found is None:
        raise refused("sheet-not-dated", found=file.name)
    return found


def day_in(file: Path) -> date | None:
    """The day the file's name says, None where it says none."""
    match = DAY.search(file.stem)
    try:
        return date(*(int(part) for part in match.groups())) if match else None
    except ValueError:
        return None
