"""The worksheets of an edited table to parts, statements and makers' names; what can't be read is told by its row.

Rows that can't be understood become problems with their place; the good rows go on. Columns are found by their header,
in any order; a header nobody knows is a problem too, for it may be a slip of the pen.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from ...basics.equivalence import EquivalenceTable, OurPart, Statement
from ...basics.part_number import OURS, PartNumber, number_key
from ...basics.problem import Place, Problem, Refused, problem, refused
from ...basics.value import changed
from .makers import Makers
from .number_cells import cell_text
from .table_columns import NUMBER_COLUMNS, SHEETS
from .table_rows import Row, alias_of, as_of, part_of, statement_of

T = TypeVar("T")
Cells = Iterable[Sequence[object]]


@dataclass(frozen=True)
class Pages:
    """The rows of each worksheet by its name ('parts', 'statements', 'makers'), header first; and how places read.

    `files`: the name of the file a worksheet stands in, where each is a file of its own.
    """

    file: str
    rows: Mapping[str, Cells]
    files: Mapping[str, str] = field(default_factory=dict)

    def place(self, name: str, row: int) -> Place:
        """Where a row stands."""
        if name in self.files:
            return Place(file=self.files[name], row=row)
        return Place(file=self.file, worksheet=name, row=row)


def table_from(pages: Pages) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    """The table and the problems of its rows, in the order of the rows. Refuses where 'parts' or 'statements' lacks."""
    problems: list[Problem] = []
    aliases = tuple(one for _, one in _read(pages, "makers", alias_of, problems)) if "makers" in pages.rows else ()
    bad: dict[str, int] = {}
    parts = _parts(_read(pages, "parts", part_of, problems, bad), pages, problems)
    told = _Told(Makers(aliases), frozenset(number_key(part.code) for part in parts), bad)
    statements: list[Statement] = []
    known_to: dict[int, int] = {}
    for at, (statement, change) in _read(pages, "statements", _statement, problems):
        wrong = told.take(statement, statements)
        problems += [changed(one, place=pages.place("statements", at)) for one in wrong]
        if change is not None and not wrong:
            known_to[at] = change
    table = EquivalenceTable(parts=tuple(parts), statements=tuple(statements), aliases=aliases, as_of=known_to)
    return table, tuple(problems)


def _statement(row: Row, at: int) -> tuple[Statement, int | None]:
    return statement_of(row, at), as_of(row)


def _parts(read: Iterator[tuple[int, OurPart]], pages: Pages, problems: list[Problem]) -> list[OurPart]:
    rows: dict[str, int] = {}
    parts = []
    for at, part in read:
        first = rows.setdefault(number_key(part.code), at)
        if first == at:
            parts.append(part)
        else:
            place = pages.place("parts", at)
            problems.append(problem("part-twice", place=place, found=part.code, first=first))
    return parts


class _Told:
    """What the statements so far have said: one that says it again, or something impossible, is a problem.

    Hashes are kept and not contents, for tables of a million rows.
    """

    def __init__(self, makers: Makers, codes: frozenset[str], bad: Mapping[str, int]) -> None:
        """`bad`: the keys of codes whose row of 'parts' can't be used, with that row."""
        self._makers, self._codes, self._bad = makers, codes, bad
        self._places: dict[int, int] = {}

    def take(self, statement: Statement, kept: list[Statement]) -> list[Problem]:
        """Keep the statement, or tell what makes it unusable."""
        content = self._content(statement)
        if content[0] == content[1]:
            return [problem("statement-about-itself", found=str(statement.left))]
        found = [
            self._no_part(number)
            for number in (statement.left, statement.right)
            if number.maker == OURS and number_key(number.printed) not in self._codes
        ]
        if found:
            return found
        first = self._places.setdefault(hash(content), len(kept))
        if first < len(kept) and self._content(kept[first]) == content:
            return [problem("statement-twice", found=str(statement), first=kept[first].row)]
        kept.append(statement)
        return []

    def _no_part(self, number: PartNumber) -> Problem:
        row = self._bad.get(number_key(number.printed))
        if row is None:
            return problem("no-such-part", found=number.printed)
        return problem("part-row-unusable", found=number.printed, part_row=row)

    def _content(self, statement: Statement) -> tuple[object, ...]:
        ends = [self._makers.node(statement.left), self._makers.node(statement.right)]
        if statement.relation == "same part":
            ends.sort()
        bare = (statement.relation, statement.count, statement.condition, statement.machine, statement.number)
        span = (statement.serial_from, statement.serial_to, statement.standing, statement.doubt)
        return *ends, *bare, *span, statement.source, statement.stated_on, statement.stated_by


def _read(
    pages: Pages, name: str, make: Callable[[Row, int], T], problems: list[Problem], bad: dict[str, int] | None = None
) -> Iterator[tuple[int, T]]:
    """Each row that can be used, with its place. `bad` is told the others: the key of their first column, their row."""
    rows = iter(pages.rows.get(name, ()))
    first = next(rows, None)
    if first is None:
        raise refused("worksheet-missing", found=name, file=pages.file)
    header = [str(cell or "").strip().casefold() for cell in first]
    wrong, stops = _header_problems(name, header, pages.place(name, 1))
    problems += wrong
    text_of = _Texts(header)
    for at, cells in enumerate(() if stops else rows, 2):
        if not any(cells):
            continue
        try:
            row = text_of.row(cells)
            if any(row.values()):
                yield at, make(row, at)
        except Refused as wrong_row:
            problems += [changed(one, place=pages.place(name, at)) for one in wrong_row.problems]
            if bad is not None:
                bad.setdefault(_key_of(SHEETS[name].columns[0], header, cells), at)


def _key_of(column: str, header: Sequence[str], cells: Sequence[object]) -> str:
    at = header.index(column)
    return number_key(str(cells[at] or "")) if at < len(cells) else ""


def _header_problems(name: str, header: Sequence[str], place: Place) -> tuple[list[Problem], bool]:
    """What is wrong with the header, and whether it keeps the rows from being read."""
    sheet = SHEETS[name]
    known = ", ".join(sheet.columns)
    found = [
        problem("unknown-table-column", place=place, found=title, known=known)
        for title in sorted(set(header) - set(sheet.columns) - {""})
    ]
    missing = [problem("table-column-missing", place=place, found=one) for one in sheet.needed if one not in header]
    twice = [problem("table-column-twice", place=place, found=one) for one in sheet.columns if header.count(one) > 1]
    return [*found, *missing, *twice], bool(missing or twice)


class _Texts:
    """Rows of cells to rows of text. Texts that come again and again are kept once, numbers as they come."""

    def __init__(self, header: Sequence[str]) -> None:
        self._columns = [
            (at, title, None if title in NUMBER_COLUMNS else dict[object, str]())
            for at, title in enumerate(header)
            if title
        ]

    def row(self, cells: Sequence[object]) -> dict[str, str]:
        """The texts by column; refuses with every damaged cell of the row."""
        row: dict[str, str] = {}
        problems: list[Problem] = []
        for at, title, known in self._columns:
            cell = cells[at] if at < len(cells) else None
            try:
                row[title] = cell_text(title, cell) if known is None else self._known(title, cell, known)
            except Refused as damaged:
                problems += damaged.problems
        if problems:
            raise Refused(*problems)
        return row

    def _known(self, title: str, cell: object, known: dict[object, str]) -> str:
        if not isinstance(cell, str):
            return cell_text(title, cell)
        text = known.get(cell)
        if text is None:
            text = cell_text(title, cell)
            if len(known) < 50_000:
                known[cell] = text
        return text
