"""A workbook (XLSX, XLSB, XLS, ODS) to worksheets of cells, through python-calamine.

The reader unpacks without limit and lays a worksheet out as a full rectangle, so a small file can ask for more
memory than there is and end the whole process. The archive is therefore looked at before it is handed over.
"""

import io
import re
import zipfile
import zlib
from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any, NoReturn

from python_calamine import CalamineError, CalamineWorkbook, PasswordError, SheetTypeEnum, SheetVisibleEnum

from sourcing.basics.problem import Place, refused

from .worksheet import Cell, Worksheet, number_of, without_blank_end

MOST_UNPACKED = 400_000_000
MOST_UNPACKED_UNASKED = 50_000_000
MOST_RATIO = 200
MOST_CELLS = 40_000_000
"""Cells of the rectangle of one worksheet; the reader takes about 32 bytes for each."""

WORKBOOK_PARTS = ("xl/workbook.xml", "xl/workbook.bin", "content.xml")
WIDE_CELL = re.compile(rb"""\sr=["']([A-Z]{2,3})\d""")
CELL = re.compile(rb"""\sr=["']([A-Z]{1,3})(\d+)["']""")
ENCRYPTED = "EncryptedPackage".encode("utf-16-le")


def read_workbook(data: bytes, file: str) -> list[Worksheet]:
    """Every worksheet in the workbook's order; hidden ones are marked. Refuses what can't be read, in one sentence."""
    if data.startswith(b"PK"):
        _check_archive(data, file)
    elif ENCRYPTED in data:
        raise refused("password-protected", place=Place(file=file))
    try:
        return _worksheets(data)
    except PasswordError as error:
        raise refused("password-protected", place=Place(file=file)) from error
    except (CalamineError, ValueError, OverflowError) as error:
        _refuse_damaged(file, error)
    except BaseException as error:
        # The reader is compiled code; its own failures arrive as this class, which is no Exception and can't be
        # imported. Anything else (an interrupt, say) goes on.
        if type(error).__name__ != "PanicException":
            raise
        _refuse_damaged(file, error)


def _refuse_damaged(file: str, error: BaseException) -> NoReturn:
    raise refused("workbook-damaged", place=Place(file=file)) from error


def _worksheets(data: bytes) -> list[Worksheet]:
    with CalamineWorkbook.from_filelike(io.BytesIO(data)) as book:
        kept = [(at, sheet) for at, sheet in enumerate(book.sheets_metadata) if sheet.typ == SheetTypeEnum.WorkSheet]
        return [_worksheet(book, at, sheet.name, sheet.visible != SheetVisibleEnum.Visible) for at, sheet in kept]


def _worksheet(book: CalamineWorkbook, at: int, name: str, hidden: bool) -> Worksheet:
    found = book.get_sheet_by_index(at).to_python(skip_empty_area=False)
    rows = without_blank_end([[value if type(value) is str else _cell(value) for value in row] for row in found])
    return Worksheet(name=name, rows=rows, row_numbers=range(1, len(rows) + 1), hidden=hidden)


def _cell(value: Any) -> Cell:
    """A number as Decimal with the 15 digits a spreadsheet keeps; a date as '2026-03-05 00:00:00'; TRUE, FALSE."""
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int | float):
        return _number(value)
    if isinstance(value, date) and not isinstance(value, datetime):
        return f"{value.isoformat()} 00:00:00"
    assert isinstance(value, datetime | time | timedelta)
    return str(value)


def _number(value: float) -> Cell:
    number = Decimal(format(value, ".15g"))
    if not number.is_finite():
        return str(value)
    return Decimal(int(number)) if number == number.to_integral_value() and abs(number) < 10**15 else number


def _check_archive(data: bytes, file: str) -> None:
    try:
        with zipfile.ZipFile(io.BytesIO(data)) as archive:
            _check_parts(archive, len(data), file)
    except (zipfile.BadZipFile, zlib.error, EOFError, NotImplementedError, OSError, ValueError) as error:
        _refuse_damaged(file, error)
    except RuntimeError as error:  # zipfile's word for a part that asks for a password
        raise refused("password-protected", place=Place(file=file)) from error


def _check_parts(archive: zipfile.ZipFile, packed: int, file: str) -> None:
    if not any(part in archive.namelist() for part in WORKBOOK_PARTS):
        raise refused("not-a-sheet", place=Place(file=file), found="an archive without a workbook in it")
    unpacked = sum(part.file_size for part in archive.infolist())
    if unpacked > MOST_UNPACKED or (unpacked > MOST_UNPACKED_UNASKED and unpacked > MOST_RATIO * packed):
        raise refused("unpacks-too-large", place=Place(file=file), megabytes=unpacked // 1_000_000)
    for name in archive.namelist():
        if name.startswith("xl/worksheets/") and name.endswith(".xml"):
            _check_rectangle(archive.read(name), file)


def _check_rectangle(xml: bytes, file: str) -> None:
    """A stray cell far off makes a rectangle of billions. Up to column Z the most rows there are still fit."""
    if not WIDE_CELL.search(xml):
        return
    width = height = 0
    for letters, row in CELL.findall(xml):
        width, height = max(width, number_of(letters.decode())), max(height, int(row))
    if width * height > MOST_CELLS:
        raise refused("worksheet-too-wide", place=Place(file=file), rows=height, columns=width)
