"""A workbook (XLSX, XLSM, XLSB, XLS, ODS) to worksheets of cells; python-calamine reads all but ODS.

The reader unpacks without limit and lays a worksheet out as a full rectangle, so a small file can ask for more
memory than there is and end the whole process. The archive is therefore looked over before it is handed over, and
what the reader does not tell (see `workbook_marks`, `workbook_xls`) is put on its cells. Of XLSB there is what the
reader gives: values and hidden worksheets; no hidden rows, no number formats, error cells are blank.
"""

import io
import re
import zipfile
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal
from typing import Any, NoReturn

import numpy as np
from python_calamine import (
    CalamineError,
    CalamineSheet,
    CalamineWorkbook,
    PasswordError,
    SheetTypeEnum,
    SheetVisibleEnum,
)

from sourcing.basics.collecting import without_collecting
from sourcing.basics.problem import Place, refused
from sourcing.basics.quiet import quiet

from ..worksheet import Cell, Worksheet, without_blank_end
from .archive import Archive
from .workbook_formats import NumberFormat, shown_as_percent, shown_with_basis, shown_with_zeros
from .workbook_found import Found
from .workbook_marks import WORKBOOK, BookMarks, read_marks, refusing
from .workbook_numbers import value_cell
from .workbook_ods import CONTENT, read_ods
from .workbook_xls import Locked, read_xls_marks
from .workbook_xlsb import check_xlsb

BINARY_WORKBOOK = "xl/workbook.bin"
ENCRYPTED = "EncryptedPackage".encode("utf-16-le")
ERROR_CELL = re.compile(rb"""(<(?:\w+:)?c\s[^<>]*\bt=)["']e["']""")
PADDED = re.compile(rb"(<(?:\w+:)?v(?:\s[^<>]*)?>)[ \t\r\n]*([-+0-9.eE]+)[ \t\r\n]*(</)")


def read_workbook(data: bytes, file: str) -> list[Worksheet]:
    """Every worksheet in the workbook's order; hidden ones are marked. Refuses what can't be read, in one sentence.

    Formulas without a stored value are '=' and the formula; a formula that only repeats another's is '=…'.
    """
    if not data.startswith(b"PK"):
        if ENCRYPTED in data:
            raise refused("password-protected", place=Place(file=file))
        return _read_by_calamine(data, file, _xls_marks(data, file))
    archive = Archive(data, file)
    if CONTENT in archive.parts and WORKBOOK not in archive.parts:
        with without_collecting():
            return read_ods(archive)
    if BINARY_WORKBOOK in archive.parts:
        with refusing(file):
            check_xlsb(archive)
        return _read_by_calamine(data, file, None)
    if WORKBOOK not in archive.parts:
        raise refused("not-a-sheet", place=Place(file=file), found="an archive without a workbook in it")
    marks = read_marks(archive)
    if any(found.odd_errors or found.padded for found in marks.sheets.values()):
        data = _made_readable(archive)
    return _read_by_calamine(data, file, marks)


def _xls_marks(data: bytes, file: str) -> BookMarks:
    try:
        with refusing(file):
            return read_xls_marks(data)
    except Locked as error:
        raise refused("password-protected", place=Place(file=file)) from error


def _read_by_calamine(data: bytes, file: str, marks: BookMarks | None) -> list[Worksheet]:
    try:
        with without_collecting(), quiet():
            return _worksheets(data, marks)
    except PasswordError as error:
        raise refused("password-protected", place=Place(file=file)) from error
    except (CalamineError, ValueError, OverflowError, OSError) as error:
        _refuse_damaged(file, error)
    except BaseException as error:
        # The reader is compiled code; its own failures arrive as this class, which is no Exception and can't be
        # imported. Anything else (an interrupt, say) goes on.
        if type(error).__name__ != "PanicException":
            raise
        _refuse_damaged(file, error)


def _refuse_damaged(file: str, error: BaseException) -> NoReturn:
    raise refused("workbook-damaged", place=Place(file=file)) from error


def _made_readable(archive: Archive) -> bytes:
    """The workbook with error cells as text cells: the reader gives up on errors younger than itself ('#SPILL!').

    And without white space around numbers, which XML allows and the reader does not know.
    """
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as changed:
        for name in archive.names():
            text = b"".join(archive.pieces(name))
            text = PADDED.sub(rb"\1\2\3", ERROR_CELL.sub(rb'\1"str"', text))
            changed.writestr(archive.parts[name].filename, text)
    return out.getvalue()


def _worksheets(data: bytes, marks: BookMarks | None) -> list[Worksheet]:
    marks = marks or BookMarks()
    if marks.sheets and len(marks.rows) == len(marks.sheets):
        return [_kept_worksheet(name, marks) for name in marks.sheets]
    with CalamineWorkbook.from_filelike(io.BytesIO(data)) as book:
        names = [sheet.name for sheet in book.sheets_metadata]
        if len(set(names)) < len(names):
            raise ValueError("the reader finds worksheets by their name")
        kept = [(at, sheet) for at, sheet in enumerate(book.sheets_metadata) if sheet.typ == SheetTypeEnum.WorkSheet]
        return [
            _kept_worksheet(sheet.name, marks)
            if sheet.name in marks.rows
            else _worksheet(book.get_sheet_by_index(at), sheet.visible != SheetVisibleEnum.Visible, marks)
            for at, sheet in kept
        ]


def _worksheet(sheet: CalamineSheet, hidden: bool, marks: BookMarks) -> Worksheet:
    values = sheet.to_python(skip_empty_area=False)
    merged = tuple((*first, *last) for first, last in sheet.merged_cell_ranges or ())
    found = marks.sheets.get(sheet.name, Found())
    width = max(map(len, values), default=0)
    rows, numbers = _as_cells(values)
    if numbers < found.numbers or len(rows) < found.sure_height or width < found.sure_width:
        raise ValueError("the reader left out cells that are in the file")
    _put_texts(rows, found)
    return _marked(Worksheet(sheet.name, without_blank_end(rows), range(0), hidden, merged=merged), marks)


def _kept_worksheet(name: str, marks: BookMarks) -> Worksheet:
    return _marked(Worksheet(name, marks.rows[name].without_blank_end(), range(0), name in marks.hidden), marks)


def _marked(worksheet: Worksheet, marks: BookMarks) -> Worksheet:
    """The worksheet with what was found beside its values. Changes its rows: copies of long lists cost time."""
    found = marks.sheets.get(worksheet.name, Found())
    height = len(worksheet.rows)
    return replace(
        worksheet,
        row_numbers=range(1, height + 1),
        hidden_rows=frozenset(at for at in found.hidden_rows if at < height),
        hidden_columns=frozenset(at for at in found.hidden_columns if at < found.width),
        currencies=_put_formats(worksheet.rows, found, marks.formats),
        struck=_struck(found, height),
    )


def _struck(found: Found, height: int) -> dict[int, frozenset[int]]:
    """The rows of the cells struck through, by column."""
    rows: dict[int, set[int]] = {}
    for down, across in found.struck:
        for column in np.unique(across).tolist():
            rows.setdefault(column, set()).update(down[(across == column) & (down < height)].tolist())
    return {column: frozenset(some) for column, some in rows.items()}


ROWS_AT_ONCE = 4096


class _Numbers(dict[float, Cell]):
    """Each different number made exact once."""

    def __missing__(self, value: float) -> Cell:
        cell = self[value] = value_cell(value)
        return cell


def _as_cells(rows: list[list[Any]]) -> tuple[list[list[Cell]], int]:
    """The same lists with their numbers made exact, and how many cells were no text.

    Some thousand rows at a time, column by column: a whole column, or each row by itself, is far slower to reach.
    """
    numbers, count = _Numbers(), 0
    for first in range(0, len(rows), ROWS_AT_ONCE):
        block = rows[first : first + ROWS_AT_ONCE]
        for at in range(len(block[0])):
            column = [row[at] for row in block]
            kinds = set(map(type, column))
            if kinds != {str}:
                count += len(column) if kinds == {float} else sum(type(value) is not str for value in column)
                for row, value in zip(block, column, strict=True):
                    if type(value) is float:
                        row[at] = numbers[value]
                    elif type(value) is not str:
                        row[at] = value_cell(value)
    return rows, count


def _put_texts(rows: list[list[Cell]], found: Found) -> None:
    """Error cells and formulas without a value: blank to the reader, or not there at all; numbers it took for days."""
    values = {place: value_cell(number) for place, number in found.values.items()}
    for (row, column), text in {**found.texts, **values}.items():
        rows.extend([] for _ in range(row + 1 - len(rows)))
        cells = rows[row]
        cells.extend([""] * (column + 1 - len(cells)))
        cells[column] = text


def _put_formats(
    rows: Sequence[list[Cell]], found: Found, formats: dict[int, NumberFormat]
) -> dict[int, dict[str, list[int]]]:
    """Makes text of numbers that are shown with zeros or as per cents; gives the currencies the others show."""
    currencies: dict[int, dict[str, list[int]]] = {}
    for style, pairs in sorted(found.styled.items()):
        shown = formats[style]
        down, across = (np.concatenate(arrays) for arrays in zip(*pairs, strict=True))
        for column in np.flatnonzero(np.bincount(across)).tolist():
            at = down[across == column]
            at = at[at < len(rows)]
            at_rows = (at if (np.diff(at) > 0).all() else np.unique(at)).tolist()
            if shown.currency and not shown.per:
                by_sign = currencies.setdefault(column, {})
                by_sign[shown.currency] = sorted(by_sign.get(shown.currency, []) + at_rows)
            else:
                _show(rows, at_rows, column, shown)
    return currencies


def _show(rows: Sequence[list[Cell]], at_rows: list[int], column: int, shown: NumberFormat) -> None:
    for at in at_rows:
        cell = rows[at][column] if column < len(rows[at]) else ""
        if isinstance(cell, str):
            continue
        text = _shown_text(cell, shown)
        rows[at][column] = cell if text is None else text


def _shown_text(number: Decimal, shown: NumberFormat) -> str | None:
    if shown.per:
        return shown_with_basis(number, shown)
    return shown_as_percent(number) if shown.percent else shown_with_zeros(number, shown.mask)
