"""A table's body to offers, structure and problem rows. Each row is one of the three; the counts always add up."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import compress

from sourcing.basics.problem import Place, Problem, refused
from sourcing.basics.sheet import Accounting

from .body import Body
from .cells import Bad
from .columns import name_of
from .fields import BadCells, Fields, read_fields
from .frame import OFFER_COLUMNS
from .rows import TOTAL, RowKind, row_kind
from .worksheet import is_blank


@dataclass(frozen=True)
class TableReading:
    """What one worksheet gave: the columns of its offers, where its rows went, and what is wrong."""

    columns: dict[str, list[object]]
    accounting: Accounting
    problems: tuple[Problem, ...]


def read_body(body: Body, currency: str, file: str) -> TableReading:
    """The offers of a table. Refuses a worksheet in which another table begins: its columns would be misread."""
    fields = read_fields(body, currency)
    bad = _with_row_problems(body, fields.bad)
    kinds = _kinds(body, fields, bad)
    _refuse_other_table(body, kinds, file)
    for at, kind in kinds.items():
        if kind == "no number":
            bad.setdefault(at, []).append(_number_missing(body, at))
    structure = {at for at, kind in kinds.items() if kind == "structure"}
    problems = tuple(_problems(body, {at: bad[at] for at in sorted(bad) if at not in structure}, file))
    kept = _kept(len(body.rows), structure, bad)
    return TableReading(_offer_columns(body, fields, kept), _accounting(body, structure, bad, len(kept)), problems)


def _with_row_problems(body: Body, bad: BadCells) -> BadCells:
    """The bad cells and the rows that are bad as a whole."""
    rows = [(at, "row-too-wide") for at in body.too_wide] + [(at, "row-swallowed-lines") for at in body.swallowed]
    found = {at: list(cells) for at, cells in bad.items()}
    for at, code in rows:
        found.setdefault(at, []).append(("", Bad(code, found=body.shown(at))))
    return found


def _kinds(body: Body, fields: Fields, bad: BadCells) -> dict[int, RowKind]:
    """What the rows are that lack a number or a readable price, begin like a total or have a bad cell.

    All others are parts.
    """
    number_at = body.table.at("supplier number") or 0
    numbers, priced = fields.columns["supplier_number"], fields.priced
    doubtful = {at for at, number in enumerate(numbers) if not number or not priced[at] or _totals(number)}
    return {at: _kind(body, at, number_at, priced[at]) for at in sorted(doubtful.union(bad))}


def _totals(number: object) -> bool:
    """Whether a sum or a page line stands where the number should: it may have an amount under a price header."""
    return isinstance(number, str) and number[:3].isalpha() and bool(TOTAL.match(number))


def _kind(body: Body, at: int, number_at: int, priced: bool) -> RowKind:
    row = body.rows[at]
    makers_at = body.table.at("maker number")
    if (
        makers_at is not None
        and is_blank(row[number_at : number_at + 1])
        and not is_blank(row[makers_at : makers_at + 1])
    ):
        number_at = makers_at
    return row_kind(row, body.table, number_at, priced)


def _refuse_other_table(body: Body, kinds: dict[int, RowKind], file: str) -> None:
    others = [at for at, kind in kinds.items() if kind == "other header"]
    if others:
        place = _place(body, others[0], file)
        raise refused("second-table", place=place, found=body.shown(others[0]))


def _number_missing(body: Body, at: int) -> tuple[str, Bad]:
    column = next(column for column in body.table.columns if column.field == "supplier number")
    return name_of(column), Bad("number-missing", found=body.shown(at))


def _place(body: Body, at: int, file: str, column: str = "") -> Place:
    worksheet = body.table.worksheet
    row = worksheet.row_numbers[body.table.body + at]
    return Place(file=file, worksheet=worksheet.name, row=row, column=column)


def _problems(body: Body, bad: BadCells, file: str) -> Iterable[Problem]:
    for at, cells in bad.items():
        for column, one in cells:
            yield one.problem(_place(body, at, file, column))


def _kept(rows: int, structure: set[int], bad: BadCells) -> list[int]:
    return [at for at in range(rows) if at not in structure and at not in bad]


def _accounting(body: Body, structure: set[int], bad: BadCells, offers: int) -> Accounting:
    worksheet = body.table.worksheet
    return Accounting(
        worksheet=worksheet.name,
        rows=len(worksheet.rows),
        offers=offers,
        structure=body.table.body + len(structure),
        problem_rows=len(bad.keys() - structure),
    )


def _offer_columns(body: Body, fields: Fields, kept: Sequence[int]) -> dict[str, list[object]]:
    """The columns of the rows kept, with the place each came from."""
    worksheet, first = body.table.worksheet, body.table.body
    columns = fields.columns | {
        "worksheet": [worksheet.name] * len(body.rows),
        "row": list(worksheet.row_numbers[first:]),
    }
    if len(kept) == len(body.rows):
        return {name: columns[name] for name in OFFER_COLUMNS}
    mask = [False] * len(body.rows)
    for at in kept:
        mask[at] = True
    return {name: list(compress(columns[name], mask)) for name in OFFER_COLUMNS}
