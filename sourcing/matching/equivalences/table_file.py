"""The equivalence table from a file a person edits: a workbook (XLSX), or one CSV file for each worksheet.

Worksheets 'parts' and 'statements', and 'makers' for the other names of makers, which may be missing.
"""

import csv
import io
import re
import zipfile
from collections.abc import Iterator, Mapping, Sequence
from typing import Any

import openpyxl
from openpyxl.utils.exceptions import InvalidFileException

from ...basics.equivalence import EquivalenceTable
from ...basics.problem import Problem, refused
from .number_cells import PLAIN_FORMATS, ShownOtherwise
from .table_columns import SHEETS
from .table_read import Pages, table_from

Rows = Iterator[Sequence[object]]
_BROKEN = (InvalidFileException, zipfile.BadZipFile, KeyError, ValueError, OSError, EOFError, SyntaxError)
_DELIMITERS = ",;\t|"
_LINE = re.compile(r"[^\r\n]*(?:\r\n|\r|\n)|[^\r\n]+")


def read_table(data: bytes, file: str) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    """The table of a workbook and the problems of its rows. Refuses what is no workbook or lacks a worksheet."""
    try:
        book = openpyxl.load_workbook(io.BytesIO(data), data_only=True, read_only=True)
        sheets = {sheet.title.strip().casefold(): sheet for sheet in book.worksheets}
    except _BROKEN:
        raise refused("no-equivalence-workbook", found=file) from None
    return table_from(Pages(file, {name: _sheet_rows(sheets[name], file) for name in SHEETS if name in sheets}))


def read_table_csv(files: Mapping[str, bytes], file: str) -> tuple[EquivalenceTable, tuple[Problem, ...]]:
    """The table of 'parts.csv', 'statements.csv' and 'makers.csv', given as bytes by name; `file` is what holds them.

    UTF-8, UTF-16 with its mark, or else Windows-1252; the delimiter is the one that shows the header's columns.
    """
    names = {name.replace("\\", "/").rpartition("/")[2].partition(".")[0].casefold(): name for name in files}
    rows = {name: _csv_rows(name, names[name], files[names[name]]) for name in SHEETS if name in names}
    try:
        return table_from(Pages(file, rows, {name: names[name] for name in rows}))
    except csv.Error as wrong:
        raise refused("file-not-understood", file=file, found=str(wrong)) from None


def _sheet_rows(sheet: Any, file: str) -> Rows:
    sheet.reset_dimensions()  # what a workbook says of its own size may be wrong
    rows = sheet.iter_rows()
    while True:
        try:
            cells = [_value(cell) for cell in next(rows)]
        except StopIteration:
            return
        except _BROKEN:
            raise refused("no-equivalence-workbook", found=file) from None
        yield cells


def _value(cell: Any) -> object:
    value = cell.value
    if type(value) is int and cell.number_format not in PLAIN_FORMATS:
        return ShownOtherwise(value, cell.number_format)
    return value


def _csv_rows(sheet: str, name: str, data: bytes) -> Rows:
    text = _text(data)
    if "\x00" in text:
        raise refused("file-not-understood", file=name, found="it holds zero characters")
    header = text.partition("\n")[0].strip("\r")
    # Line by line: a StringIO of a long table takes four bytes for each of its characters.
    lines = (found[0] for found in _LINE.finditer(text))
    yield from csv.reader(lines, delimiter=_delimiter(sheet, header))


def _delimiter(sheet: str, header: str) -> str:
    """The one that finds the most columns of this worksheet; a comma where none finds any."""
    known = set(SHEETS[sheet].columns)
    titles = {mark: re.split(re.escape(mark), header.casefold()) for mark in _DELIMITERS}
    return max(_DELIMITERS, key=lambda mark: len(known.intersection(one.strip(' "') for one in titles[mark])))


def _text(data: bytes) -> str:
    if data[:2] in (b"\xff\xfe", b"\xfe\xff"):
        return data.decode("utf-16", "replace")
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return data.decode("cp1252", "replace")
