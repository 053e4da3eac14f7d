"""XLS workbooks: what their records say beside the values, and records that lie.

Real files saved by a spreadsheet program as XLS, XLSX and ODS were compared by hand; the files here are built anew.
"""

import struct
import time

import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.files.grid import read_grid
from sourcing.sheets.worksheet import Worksheet
from tests.sheets.xls_workbook_files import number_cell, sheet_extent, xls, xls_record


def only(data: bytes) -> Worksheet:
    """The one worksheet."""
    (found,) = read_grid(data, "prices.xls")
    return found


@pytest.mark.parametrize(
    ("code", "value", "shown"),
    [("00000", 123.0, "00123"), ('"NW-"0000', 7.0, "NW-0007"), ("0%", 0.4, "40%"), ('"$"0.00"/C"', 10.5, "$ 10.5 /C")],
)
def test_a_number_says_what_its_format_shows(code: str, value: float, shown: str) -> None:
    packed = xls_record(0x27E, ("HHHI", (1, 0, 1, int(value) << 2 | 2))) if value == int(value) else b""
    found = only(xls(number_cell(0, 0, value, 1) + packed + number_cell(2, 0, value), code=code))
    assert found.rows[0] == [shown]
    assert not packed or found.rows[1] == [shown]
    assert float(found.rows[2][0]) == value


def test_many_numbers_in_one_record_have_each_their_style() -> None:
    pairs = struct.pack("<HIHIHI", 1, 5 << 2 | 2, 0, 6 << 2 | 2, 1, 7 << 2 | 2)
    assert only(xls(xls_record(0xBD, ("HH", (0, 0)), pairs, b"\x02\x00"), code="000")).rows == [["005", 6, "007"]]


def test_a_currency_is_told_by_column_and_row() -> None:
    found = only(xls(number_cell(0, 1, 2.5, 1) + number_cell(1, 1, 3.0), code='"$"0.00'))
    assert {at: dict(signs) for at, signs in found.currencies.items()} == {1: {"$": [0]}}


def test_hidden_rows_and_columns() -> None:
    rows = xls_record(0x208, ("HHHHHHI", (1, 0, 9, 255, 0, 0, 0x20)))
    columns = xls_record(0x7D, ("HHHHHH", (1, 2, 2000, 0, 1, 0)))
    found = only(xls(columns + rows + number_cell(0, 0, 1.0) + number_cell(1, 2, 2.0)))
    assert found.hidden_rows == {1} and found.hidden_columns == {1, 2}


def test_rows_without_height_unless_they_state_one() -> None:
    stated = xls_record(0x208, ("HHHHHHI", (1, 0, 9, 255, 0, 0, 0)))
    cells = xls_record(0x225, ("HH", (2, 255))) + stated + b"".join(number_cell(row, 0, 1.0) for row in range(3))
    assert only(xls(cells)).hidden_rows == {0, 2}


def test_error_cells_and_formulas_that_end_in_one_keep_their_word() -> None:
    error = xls_record(0x205, ("HHHBB", (0, 1, 0, 42, 1)))
    formula = xls_record(0x06, ("HHH", (1, 1, 0)), b"\x02\x00\x07\x00\x00\x00\xff\xff", bytes(8))
    found = only(xls(number_cell(0, 0, 1.0) + error + number_cell(1, 0, 1.0) + formula))
    assert found.rows == [[1, "#N/A"], [1, "#DIV/0!"]]


FAR = sheet_extent(0, 65536, 0, 256) + number_cell(0, 0, 1.0) + number_cell(65535, 255, 1.0)
LYING = {
    "stray cell": (xls(FAR), "worksheet-too-wide"),
    "more rows than there can be": (xls(sheet_extent(0, 1 << 30, 0, 256) + number_cell(0, 0, 1.0)), "workbook-damaged"),
    "first row behind the last": (xls(sheet_extent(65535, 70, 0, 10) + number_cell(0, 0, 1.0)), "workbook-damaged"),
    "record longer than the file": (xls(b"\x03\x02\xff\xff" + bytes(10)), "workbook-damaged"),
    "record shorter than its kind": (xls(xls_record(0x203, b"\x00\x00")), "workbook-damaged"),
    "shared texts that are not there": (
        xls(number_cell(0, 0, 1.0), shared=xls_record(0xFC, ("II", (1, 0x7FFFFFFF)))),
        "workbook-damaged",
    ),
    "password": (xls(number_cell(0, 0, 1.0), before=xls_record(0x2F, bytes(6))), "password-protected"),
}


@pytest.mark.parametrize("name", LYING)
def test_what_lies_or_is_locked_is_one_sentence(name: str) -> None:
    data, code = LYING[name]
    begun = time.process_time()
    with pytest.raises(Refused) as refusal:
        read_grid(data, "prices.xls")
    assert [problem.code for problem in refusal.value.problems] == [code]
    assert time.process_time() - begun < 10


@pytest.mark.parametrize(("at", "size"), [(44, 4), (48, 4), (64, 4), (72, 4), (512 * 2 + 128 + 120, 4), (30, 2)])
def test_sizes_of_the_compound_file_that_lie(at: int, size: int) -> None:
    """The reader takes memory for what the header and the directory say; 64 GB of it would end the process."""
    data = bytearray(xls(number_cell(0, 0, 1.0)))
    data[at : at + size] = b"\xff" * (size - 1) + b"\x7f"
    with pytest.raises(Refused, match="damaged"):
        read_grid(bytes(data), "prices.xls")
