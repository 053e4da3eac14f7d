"""Take in a supplier's sheet that was sent to the counter: its bytes and its name, not a file of the shop's folders.

The file is read before the transaction begins, so that nobody who writes waits for it; only what was read is kept in
one. A sheet that leaves a question open is answered with the question and some rows beside it.
"""

from collections.abc import Sequence
from pathlib import Path, PurePosixPath

from sqlalchemy import Connection

from ..basics.judgement import LeftByImport
from ..basics.problem import Problem, Refused, problem, refused
from ..basics.sheet import KeptSheet
from ..basics.sheet_sample import SheetSample
from ..basics.terms import Terms
from ..basics.value import Value, changed
from ..sheets.reading import SheetReading, Tell, silent
from ..sheets.sample import sheet_samples
from ..storage.sheets import kept_sheets, same_sheet
from ..storage.shop import terms_on
from .desk import Desk
from .import_answers import refuse_unknown_headers
from .import_sheets import (
    Imported,
    Said,
    day_in,
    keep_reading,
    prices_missing,
    read_with,
    sha256_of,
)
from .left_by_import import left_by_import
from .remembered_columns import KnownColumns, known_columns

LONGEST_NAME = 120
MOST_SHOWN = 50
FEW, MUCH_SHORTER = 5, 2
"""A sheet of fewer offers than one in so many of those before it may be a part of a sheet, or another table."""
NO_HELP = frozenset(
    (
        *("not-a-sheet", "file-empty", "workbook-damaged", "password-protected", "unpacks-too-large"),
        *("worksheet-too-wide", "quote-not-closed", "text-too-large", "cell-too-long", "too-many-cells"),
        *("too-many-merged", "too-many-errors", "workbook-declares"),
    )
)
"""What no word about the columns can help: then no rows are looked for."""


class SheetTaken(Value, frozen=True, kw_only=True):
    """What came of a sheet that was sent: it was kept as `sheet`, or it was not, and `problems` say why.

    `again`: the same bytes were there already, and nothing was done. `samples`: rows and columns of a sheet about
    whose columns something is asked. `left`: what waits for a person. `rows_wrong`: the first rows with a problem of a
    sheet without any offer.
    """

    supplier: str = ""
    sheet: int | None = None
    again: bool = False
    left: LeftByImport | None = None
    problems: tuple[Problem, ...] = ()
    samples: tuple[SheetSample, ...] = ()
    rows_wrong: tuple[Problem, ...] = ()


def take_in_sent(
    desk: Desk, content: bytes, name: str, said: Said, tell: Tell = silent, look: bool = False
) -> SheetTaken:
    """Keep the sheet, or say what is asked first; nothing of a sheet that is asked about is kept.

    `look`: the person wants to see first what every column is read as, also where nothing is to be asked.
    Whose it is: as said, else the supplier whose short name its own begins with, as in 'larkmoor-2026-01-07.xlsx'.
    """
    try:
        supplier = whose_sheet(desk, name, said).supplier
    except Refused as refusal:
        return _without_supplier(content, name, refusal)
    try:
        done = _take_in(desk, content, name, changed(said, supplier=supplier), tell, look)
    except _Asked as asked:
        samples = _samples(desk, content, name, changed(said, supplier=supplier), asked.problems)
        return SheetTaken(
            supplier=supplier, problems=asked.problems[:MOST_SHOWN], samples=samples, rows_wrong=asked.rows_wrong
        )
    except Refused as refusal:
        samples = _samples(desk, content, name, changed(said, supplier=supplier), refusal.problems)
        return SheetTaken(supplier=supplier, problems=refusal.problems[:MOST_SHOWN], samples=samples)
    (done,) = left_by_import(desk, [done], tell)
    return SheetTaken(supplier=supplier, sheet=done.kept.sheet, again=done.again, left=done.left)


def whose_sheet(desk: Desk, name: str, said: Said) -> Terms:
    """The terms of the supplier whose sheet it is. Refuses where that is not known."""
    with desk.store.reading() as connection:
        known = terms_on(connection, desk.at.date())
    named = [slug for slug in known if Path(name).stem.casefold().startswith(f"{slug}-")]
    if not said.supplier:
        if len(named) != 1:
            raise refused("supplier-not-named", found=name, known=", ".join(sorted(known)) or "none yet")
        return known[named[0]]
    if said.supplier not in known:
        raise refused("no-terms", supplier=said.supplier, day=desk.at.date())
    return known[said.supplier]


def file_name(sent: str) -> str:
    """The name a browser gave a file, for showing and keeping: never a path, nothing in it that turns or hides text."""
    last = PurePosixPath(sent.replace("\\", "/")).name
    kept = "".join(letter if letter.isprintable() else "_" for letter in last).strip() or "sheet"
    if len(kept) <= LONGEST_NAME:
        return kept
    ending = Path(kept).suffix[:8]
    return kept[: LONGEST_NAME - len(ending)] + ending


def _without_supplier(content: bytes, name: str, refusal: Refused) -> SheetTaken:
    """Rows of the sheet beside the question whose it is; a file that is no sheet is told as such before."""
    try:
        return SheetTaken(problems=refusal.problems, samples=sheet_samples(content, name, {}))
    except Refused as no_sheet:
        return SheetTaken(problems=no_sheet.problems[:MOST_SHOWN])


class _Asked(Refused):
    """Refused, with the first rows that are wrong."""

    def __init__(self, problems: Sequence[Problem], rows_wrong: Sequence[Problem]) -> None:
        super().__init__(*problems)
        self.rows_wrong = tuple(rows_wrong[:MOST_SHOWN])


def _take_in(desk: Desk, content: bytes, name: str, said: Said, tell: Tell, look: bool) -> Imported:
    sha256 = sha256_of(content)
    with desk.store.reading() as connection:
        terms = terms_on(connection, desk.at.date())[said.supplier]
        there = same_sheet(connection, terms.supplier, sha256, desk.at.date())
        known = known_columns(connection, terms.supplier)
        before = _offers_before(connection, terms.supplier, desk)
        whose = tuple(one for one in kept_sheets(connection, desk.at.date()) if one.sha256 == sha256)
    if there:
        return Imported(kept=there, summary=None, again=True)
    reading = read_with(known, content, name, terms, said, tell)
    _check(reading, name, said)
    shown = _to_look_over(reading, name, look, before) + [_of_another(name, one) for one in whose[-1:]]
    if not said.looked_over and shown:
        raise _Asked(shown, ())
    tell(f"{name}: keeping {len(reading.offers):,} offers")
    with desk.writing("import") as pen:
        there = same_sheet(pen.connection, terms.supplier, sha256, desk.at.date())
        if there:
            return Imported(kept=there, summary=None, again=True)
        if _still(pen.connection, terms, known, desk):
            return keep_reading(pen, reading, sha256, terms.supplier, said)
    return _take_in(desk, content, name, said, tell, look)  # somebody said something of it meanwhile: read it with that


def _check(reading: SheetReading, name: str, said: Said) -> None:
    """All that is asked, at once: what columns mean, and the day."""
    refuse_unknown_headers(reading.summary, said.columns)
    asked = list(reading.summary.questions)
    if reading.summary.sheet_date is None and said.dated is None and day_in(Path(name)) is None:
        asked.append(problem("sheet-not-dated", found=name))
    if reading.offers.empty and not asked:
        count = sum(one.problem_rows for one in reading.summary.accounting)
        asked.append(problem("sheet-without-offers", found=name, problems=count))
    if asked:
        raise _Asked(asked, reading.summary.problems if reading.offers.empty else ())


def _to_look_over(reading: SheetReading, name: str, look: bool, before: int) -> list[Problem]:
    """What is shown though nothing is asked: where the person wants to look, and a sheet that may be a part of one."""
    found = [problem("columns-shown-first", found=name)] if look else []
    if asked := prices_missing(reading):
        found.append(asked)
    offers = len(reading.offers)
    if before >= FEW and offers * MUCH_SHORTER < before:
        found.append(problem("sheet-much-shorter", found=name, count=offers, before=before))
    return found


def _of_another(name: str, kept: KeptSheet) -> Problem:
    """The very file is kept as another supplier's: his prices would be taken for theirs."""
    return problem("sheet-of-another", found=name, supplier=kept.supplier, sheet=kept.sheet)


def _offers_before(connection: Connection, supplier: str, desk: Desk) -> int:
    """How many the sheet has that counts now; 0 where there is none."""
    kept = kept_sheets(connection, desk.at.date())
    return next((one.offers for one in kept if one.supplier == supplier and one.is_newest), 0)


def _still(connection: Connection, terms: Terms, known: KnownColumns, desk: Desk) -> bool:
    """Whether what the sheet was read with holds still."""
    now = terms_on(connection, desk.at.date()).get(terms.supplier)
    return now == terms and known_columns(connection, terms.supplier) == known


def _samples(desk: Desk, content: bytes, name: str, said: Said, problems: Sequence[Problem]) -> tuple[SheetSample, ...]:
    if all(one.code in NO_HELP for one in problems):
        return ()
    with desk.store.reading() as connection:
        remembered = known_columns(connection, said.supplier).meanings
    try:
        return sheet_samples(content, name, {**remembered, **said.columns})
    except Refused:
        return ()
