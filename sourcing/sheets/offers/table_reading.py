"""A table's body to offers, structure and problem rows. Each row is one of the three; the counts always add up."""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from typing import cast

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from sourcing.basics.problem import Place, Problem, problem
from sourcing.basics.sheet import StructureKind, StructureRow

from ..cells.cell import Bad
from ..frame import OFFER_COLUMNS
from ..headers.columns import name_of
from ..region.body import Body, Objects, objects
from ..region.rows import TOTAL, RowKind, last_headings_are_notes, row_kind
from ..region.table import MOST_HEADER_ROWS
from ..worksheet import is_blank
from .break_rows import joined_breaks
from .column_reader import BadCells
from .fields import Fields, read_fields

MOST_NOTES = 20
"""How many cells of one kind in one column are named one by one."""


@dataclass(frozen=True)
class TableReading:
    """What one table gave: the columns of its offers, its structure, the number of its problem rows, what is wrong."""

    columns: dict[str, Objects]
    structure: tuple[StructureRow, ...]
    problem_rows: int
    problems: tuple[Problem, ...]
    notes: tuple[Problem, ...]


def read_body(body: Body, currency: str, file: str, dated: date | None) -> TableReading:
    """The offers of a table."""
    fields = read_fields(body, currency, dated)
    bad = _with_row_problems(body, fields.bad)
    joined = joined_breaks(body, fields.columns, bad)
    kinds = {at: kind for at, kind in _kinds(body, fields, bad).items() if at not in joined}
    for at, kind in kinds.items():
        if kind == "no number":
            bad.setdefault(at, []).append(_number_missing(body, at))
    structure = {at: kind for at, kind in kinds.items() if kind not in ("part", "no number")}
    bad = {at: bad[at] for at in sorted(bad) if at not in structure}
    left_out = {at: fields.left_out[at] for at in sorted(fields.left_out) if at not in structure and at not in bad}
    keep = np.ones(body.height, dtype=bool)
    keep[[*structure, *bad, *joined]] = False
    return TableReading(
        columns=_offer_columns(body, fields, keep),
        structure=tuple(_structure(body, structure, joined)),
        problem_rows=len(bad),
        problems=tuple(_problems(body, bad, file)),
        notes=(*_notes(body, left_out, file), *_two_prices(body, fields, keep, file)),
    )


def _with_row_problems(body: Body, bad: BadCells) -> BadCells:
    """The bad cells and the rows that are bad as a whole; what is wrong in the cells of such a row only misleads."""
    rows = [(at, "row-too-wide") for at in body.too_wide] + [(at, "row-swallowed-lines") for at in body.swallowed]
    rows += [(at, "row-struck-through") for at in body.struck]
    found = {at: list(cells) for at, cells in bad.items()}
    for at, code in rows:
        found[at] = [("", Bad(code, found=body.shown(at)))]
    return found


def _kinds(body: Body, fields: Fields, bad: BadCells) -> dict[int, RowKind]:
    """What the rows are that lack a number or a readable price, begin like a total or have a bad cell.

    All others are parts.
    """
    number_at = body.table.at("supplier number") or 0
    numbers = fields.columns["supplier_number"]
    sure = fields.priced & np.not_equal(numbers, "").astype(bool) & ~_totals(body, number_at)
    sure[list(bad)] = False
    sure[:MOST_HEADER_ROWS] = False
    kinds = {int(at): _kind(body, int(at), number_at, bool(fields.priced[at])) for at in np.flatnonzero(~sure)}
    for at in (at for at, kind in kinds.items() if kind == "part" and not numbers[at] and at not in bad):
        kinds[at] = "no number"  # only marks that are set aside stand in its place, such as a lone apostrophe
    last_part = next((at for at in range(body.height - 1, -1, -1) if kinds.get(at, "part") == "part"), -1)
    return last_headings_are_notes(kinds, last_part)


def _totals(body: Body, number_at: int) -> NDArray[np.bool_]:
    """Where a sum or a page line stands in the number's place: it may have an amount under a price header."""
    coded, found = body.coded(number_at), np.zeros(body.height, dtype=bool)
    cells = ((number, coded.different[number]) for number in coded.without_digits)
    found[coded.rows_with(number for number, cell in cells if isinstance(cell, str) and TOTAL.match(cell.strip()))] = (
        True
    )
    return found


def _kind(body: Body, at: int, number_at: int, priced: bool) -> RowKind:
    row = body.row(at)
    makers_at = body.table.at("maker number")
    if (
        makers_at is not None
        and is_blank(row[number_at : number_at + 1])
        and not is_blank(row[makers_at : makers_at + 1])
    ):
        number_at = makers_at
    return row_kind(row, body.table, number_at, priced, at)


def _number_missing(body: Body, at: int) -> tuple[str, Bad]:
    column = next(iter(body.columns("supplier number")), None)
    return (name_of(column) if column else "", Bad("number-missing", found=body.shown(at)))


def _structure(body: Body, kinds: dict[int, RowKind], joined: set[int]) -> Iterable[StructureRow]:
    name = body.table.worksheet.name
    for at in sorted({*kinds, *joined}):
        kind = kinds.get(at, "price break")
        yield StructureRow(worksheet=name, row=body.row_number(at), kind=cast(StructureKind, kind))


def _place(body: Body, at: int, file: str, column: str = "") -> Place:
    return Place(file=file, worksheet=body.table.worksheet.name, row=body.row_number(at), column=column)


def _problems(body: Body, bad: BadCells, file: str) -> Iterable[Problem]:
    for at, cells in bad.items():
        for column, one in cells:
            yield one.problem(_place(body, at, file, column))


def _notes(body: Body, left_out: BadCells, file: str) -> Iterable[Problem]:
    """The cells left blank; of one kind in one column no more than a few are named, the rest are counted."""
    flat = sorted(
        ((column, one.code, at, one) for at, cells in left_out.items() for column, one in cells),
        key=lambda entry: entry[:3],
    )
    for (column, _), entries in groupby(flat, key=lambda entry: entry[:2]):
        some = list(entries)
        for _, _, at, one in some[:MOST_NOTES]:
            yield one.problem(_place(body, at, file, column))
        if len(some) > MOST_NOTES:
            place = Place(file=file, worksheet=body.table.worksheet.name, column=column)
            yield problem("more-left-blank", place=place, count=len(some) - MOST_NOTES)


def _two_prices(body: Body, fields: Fields, keep: NDArray[np.bool_], file: str) -> Iterable[Problem]:
    """Numbers of one maker that stand twice with different prices: both offers are kept, nobody knows which holds."""
    number_at = body.table.at("supplier number")
    if number_at is None or len(body.coded(number_at).different) == body.height:
        return
    names = ("supplier_number", "maker", "breaks", "list_price")
    frame = pd.DataFrame({name: fields.columns[name] for name in names}, dtype=object, copy=False)[keep]
    twice = frame[frame.duplicated(["supplier_number", "maker"], keep=False).to_numpy()]
    if twice.empty:
        return
    found = 0
    for (number, _), rows in twice.groupby(["supplier_number", "maker"], sort=False):
        if len(set(zip(rows["breaks"], rows["list_price"], strict=True))) == 1:
            continue
        found += 1
        if found <= MOST_NOTES:
            lines = ", ".join(str(body.row_number(int(at))) for at in rows.index[:5])
            place = _place(body, int(rows.index[0]), file)
            yield problem("number-with-two-prices", place=place, found=number, rows=lines)
    if found > MOST_NOTES:
        place = Place(file=file, worksheet=body.table.worksheet.name)
        yield problem("more-with-two-prices", place=place, count=found - MOST_NOTES)


def _offer_columns(body: Body, fields: Fields, keep: NDArray[np.bool_]) -> dict[str, Objects]:
    """The columns of the rows kept, with the place each came from."""
    table = body.table
    numbers = table.worksheet.row_numbers[table.body : table.end]
    name = np.full(body.height, table.worksheet.name, dtype=object)
    columns = fields.columns | {"worksheet": name, "row": objects(numbers, body.height)}
    if keep.all():
        return {column: columns[column] for column in OFFER_COLUMNS}
    return {column: columns[column][keep] for column in OFFER_COLUMNS}
