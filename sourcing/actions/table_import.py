"""Take an edited equivalence table in: from a workbook, from a folder of CSV files, or statements from one CSV file."""

import csv
import io
import tempfile
from collections.abc import Mapping
from datetime import date
from pathlib import Path

from sqlalchemy import Connection

from ..basics.equivalence import EquivalenceTable
from ..basics.problem import Place, Problem, Refused, problem, refused
from ..basics.table_change import TableChanges
from ..basics.value import Value, changed
from ..matching.equivalences.table_file import read_table, read_table_csv
from ..matching.equivalences.table_sheets import table_sheets
from ..storage.equivalence import maker_aliases, our_parts
from ..storage.statements import kept_statements, last_changes
from .desk import Desk
from .files import read_bytes
from .parts_at_desk import without_numbers_of_others
from .table_compare import Rule, compare_tables
from .table_keep import keep_changes

SUBJECT = "equivalence table"
TABLE_FILES = ("parts.csv", "statements.csv", "makers.csv")


class Wanted(Value, frozen=True, kw_only=True):
    """What the person wants of the file. `look`: only say what would change. `keep_good`: leave bad rows out.

    `withdraw_missing`: withdraw statements that are not in the file, for this reason; blank: they stay. `file_wins`:
    also change what was changed since the file was written.
    """

    look: bool = False
    keep_good: bool = False
    withdraw_missing: str = ""
    file_wins: bool = False


def import_sent(desk: Desk, files: Mapping[str, bytes], wanted: Wanted) -> TableChanges:
    """The same of files that were sent: one workbook or CSV file, or parts.csv, statements.csv, makers.csv together.

    Their names are file names without folders. Refuses a file of another name among several.
    """
    if not files:
        raise refused("no-file-chosen")
    with tempfile.TemporaryDirectory(prefix="sourcing-table-") as folder:
        if len(files) == 1:
            ((name, content),) = files.items()
            path = Path(folder) / name
            path.write_bytes(content)
            return import_table(desk, path, wanted)
        for name, content in files.items():
            if name.casefold() not in TABLE_FILES:
                raise refused("table-file-kind", found=name)
            (Path(folder) / name.casefold()).write_bytes(content)
        changes = import_table(desk, Path(folder), wanted)
        return changed(changes, file="CSV files")


def import_table(desk: Desk, path: Path, wanted: Wanted) -> TableChanges:
    """Say what the file changes, and keep it unless only looking. One deed; nothing is kept where it is refused.

    Refuses rows that can't be used unless the good ones are to be kept, and never withdraws what is missing while
    there are such rows: the one that can't be read may be the one that is missed.
    """
    if wanted.look:
        with desk.store.reading() as connection:
            return _changes(connection, path, wanted, desk.at.date())
    with desk.writing("import table") as pen:
        changes = _changes(pen.connection, path, wanted, desk.at.date())
        _refuse(changes, wanted)
        if changes.is_nothing:
            return changed(changes, done=True)
        keep_changes(pen, changes)
        pen.note(SUBJECT, _deed_words(changes))
        return changed(changes, done=True)


def _changes(connection: Connection, path: Path, wanted: Wanted, today: date) -> TableChanges:
    # The statements come with their histories below: once in memory is enough for a long table.
    before = EquivalenceTable(parts=our_parts(connection), statements=(), aliases=maker_aliases(connection))
    table, problems = _read(path, before)
    rule = Rule(
        file=path.name,
        why_gone=wanted.withdraw_missing.strip(),
        last=last_changes(connection),
        file_wins=wanted.file_wins,
        today=today,
    )
    changes, _ = compare_tables(kept_statements(connection), before, table, rule)
    changes = without_numbers_of_others(connection, changes)
    return changed(changes, problems=(*problems, *changes.problems))


def _refuse(changes: TableChanges, wanted: Wanted) -> None:
    if not changes.problems:
        return
    rows = len(changes.problems)
    count = "1 row" if rows == 1 else f"{rows} rows"
    if wanted.withdraw_missing.strip():
        raise Refused(problem("withdraw-with-problems", file=changes.file, count=count), *changes.problems)
    if not wanted.keep_good:
        raise Refused(problem("table-import-problems", file=changes.file, count=count), *changes.problems)


def _read(path: Path, before: EquivalenceTable) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    if path.is_dir():
        files = {name: read_bytes(path / name) for name in TABLE_FILES if (path / name).is_file()}
        if not files:
            raise refused("no-table-file", found=path.name)
        return read_table_csv({"parts.csv": _parts_as_they_are(before), **files}, path.name)
    data = read_bytes(path)
    if path.suffix.casefold() != ".csv":
        return read_table(data, path.name)
    table, problems = read_table_csv({"parts.csv": _parts_as_they_are(before), "statements.csv": data}, path.name)
    return table, tuple(changed(one, place=_in_file(one.place, path.name)) for one in problems)


def _parts_as_they_are(before: EquivalenceTable) -> bytes:
    """The kept parts as a file that says only them: statements alone can then be read against them."""
    header, rows = table_sheets(before)["parts"]
    out = io.StringIO()
    csv.writer(out).writerows([header, *rows])
    return out.getvalue().encode()


def _in_file(place: Place | None, file: str) -> Place:
    return changed(place, file=file) if place else Place(file=file)


def _deed_words(changes: TableChanges) -> str:
    numbers = (
        (len(changes.added), "added"),
        (len(changes.changed) + len(changes.replaced), "changed"),
        (len(changes.withdrawn), "withdrawn"),
    )
    said = ", ".join(f"{number} {words}" for number, words in numbers if number) or "no statement changed"
    return f"{changes.file}: {said}"
