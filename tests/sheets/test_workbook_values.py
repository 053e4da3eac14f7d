"""The values kept while a long worksheet is looked over are those python-calamine reads."""

import io
import zipfile
from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

import openpyxl
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from hypothesis.strategies import DrawFn

from sourcing.basics.problem import Refused
from sourcing.sheets.files import workbook_grid, workbook_marks
from sourcing.sheets.files.workbook_formats import shows_a_number
from sourcing.sheets.files.workbook_grid import read_workbook
from sourcing.sheets.worksheet import Cell, Worksheet
from tests.sheets.workbook_files import book, worksheet

TRAPS = sorted(Path("tests/traps/sheets").glob("*.xlsx"))
PLAIN = '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1"><v>12.5</v></c></row>'
SHARED = "<si><t>7201</t></si>"


class NotCalled:
    """Stands for python-calamine where it must not be asked."""

    def __getattr__(self, name: str) -> object:
        raise AssertionError(f"asked for {name}")


def kept(data: bytes) -> list[Worksheet] | str:
    """The workbook with every worksheet treated as a long one."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(workbook_marks, "LEAST_BYTES", 0)
        return read(data)


def by_calamine(data: bytes) -> list[Worksheet] | str:
    """The workbook with no worksheet treated as a long one."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(workbook_marks, "LEAST_BYTES", 10**12)
        return read(data)


def read(data: bytes) -> list[Worksheet] | str:
    """The worksheets, their rows as lists; or the refusal."""
    try:
        found = read_workbook(data, "prices.xlsx")
    except Refused as error:
        return str(error)
    return [one.__class__(**{**vars(one), "rows": [trimmed(row) for row in one.rows]}) for one in found]


def trimmed(row: Sequence[Cell]) -> list[Cell]:
    """The row without blank cells at its end, and cells of white space blank: neither says anything."""
    cells = ["" if isinstance(cell, str) and not cell.strip() else cell for cell in row]
    while cells and cells[-1] == "":
        cells.pop()
    return cells


def is_kept(data: bytes) -> bool:
    """Whether the values of the only worksheet were kept: python-calamine is not asked."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(workbook_marks, "LEAST_BYTES", 0)
        patch.setattr(workbook_grid, "CalamineWorkbook", NotCalled())
        try:
            read_workbook(data, "prices.xlsx")
        except AssertionError:
            return False
        return True


@pytest.mark.parametrize("path", TRAPS, ids=lambda path: path.stem)
def test_every_trap_is_read_alike(path: Path) -> None:
    data = path.read_bytes()
    assert kept(data) == by_calamine(data)


@st.composite
def cells(draw: DrawFn) -> list[list[object]]:
    """Rows of numbers, texts and blanks."""
    texts = st.text(st.characters(codec="utf-8", exclude_categories=("Cs", "Cc")), max_size=12)
    odd = st.sampled_from(
        ["a & b", "<x>", "_x000D_", "R&amp;D", " two  blanks ", "00123", "1.23E+11", "'", '"', "a\nb"]
    )
    numbers = st.integers(-(10**16), 10**16) | st.floats(allow_nan=False, allow_infinity=False)
    width = draw(st.integers(1, 30))
    cell: st.SearchStrategy[object] = st.none() | texts | odd | numbers
    return draw(st.lists(st.lists(cell, min_size=1, max_size=width), min_size=1, max_size=12))


@settings(max_examples=150)
@given(cells())
def test_any_cells_are_read_alike(rows: list[list[object]]) -> None:
    for write_only in (True, False):  # texts in the cells, texts in the shared list
        data = saved(rows, write_only=write_only)
        assert kept(data) == by_calamine(data)


def saved(rows: list[list[object]], *, write_only: bool) -> bytes:
    """A workbook by openpyxl; a text that begins like a formula is kept as text."""
    made = openpyxl.Workbook(write_only=write_only)
    sheet = made.create_sheet("Prices") if write_only else made.active
    assert sheet is not None
    for row in rows:
        sheet.append([f" {cell}" if isinstance(cell, str) and cell.startswith("=") else cell for cell in row])
    out = io.BytesIO()
    made.save(out)
    return out.getvalue()


def test_plain_cells_are_kept_and_the_reader_is_not_asked() -> None:
    assert is_kept(book(PLAIN, strings=SHARED))
    assert is_kept(saved([["Part", "Net"], ["00123", 12.5], ["", 3]], write_only=True))


@pytest.mark.parametrize(
    ("rows", "strings"),
    [
        ('<row r="1"><c r="A1"><f>1+1</f><v>2</v></c></row>', ""),
        ('<row r="1"><c r="A1" t="b"><v>1</v></c></row>', ""),
        ('<row r="1"><c r="A1" t="str"><v>x</v></c></row>', ""),
        ('<row r="1"><c r="A1" s="2"><v>45000</v></c></row>', ""),
        ('<row r="1"><c r="A1" s="9"><v>45000</v></c></row>', ""),
        ('<row r="1"><c r="A1"><v> 12</v></c></row>', ""),
        ('<row r="1"><c r="A1" t="inlineStr"><is><r><t>a</t></r><r><t>b</t></r></is></c></row>', ""),
        ('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', "<si><r><t>a</t></r><r><t>b</t></r></si>"),
        ('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', "<si><t>a_x000D_b</t></si>"),
        ('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', "<si><t>a\r\nb</t></si>"),
        ('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', "<si><t>a&#65;b</t></si>"),
        ('<row r="1"><c r="A1" t="s"><v>0</v></c></row>', "<x:si><x:t>a</x:t></x:si>"),
    ],
)
def test_what_could_be_misread_is_left_to_the_reader(rows: str, strings: str) -> None:
    data = book(rows, strings=strings)
    assert not is_kept(data)
    assert kept(data) == by_calamine(data)


@pytest.mark.parametrize("number", ["1", "9"])
def test_a_shared_text_that_is_not_there_is_refused(number: str) -> None:
    data = book(f'<row r="1"><c r="A1" t="s"><v>{number}</v></c></row>', strings=SHARED)
    assert "damaged" in str(kept(data))


@pytest.mark.parametrize("quote", ['"', "'"])
def test_the_same_cell_twice_is_refused(quote: str) -> None:
    """As text and as a number: the reader would keep the last."""
    data = book(PLAIN.replace("B1", "A1").replace('"', quote), strings=SHARED)
    assert "damaged" in str(kept(data))
    assert "damaged" in str(by_calamine(data))


def test_the_same_cell_in_two_rows_of_the_file_is_refused() -> None:
    assert "damaged" in str(kept(book(PLAIN + PLAIN.replace("B1", "C1"), strings=SHARED)))


def test_merged_cells_are_left_to_the_reader() -> None:
    merged = worksheet(PLAIN, after='<mergeCells count="1"><mergeCell ref="A1:A2"/></mergeCells>')
    data = book(merged, strings=SHARED)
    assert not is_kept(data)
    assert kept(data) == by_calamine(data)
    assert "merged=((0, 0, 1, 0),)" in str(kept(data))


def test_one_long_worksheet_beside_one_for_the_reader() -> None:
    """A cover with a date, and the prices: order and hidden state are the workbook's."""
    made = openpyxl.Workbook()
    cover, prices, hidden = made.active, made.create_sheet("Prices"), made.create_sheet("Old")
    assert cover is not None
    cover.append(["Valid from", datetime(2026, 1, 5)])
    prices.append(["Part", 12.5])
    hidden.append(["Part", 11.5])
    hidden.sheet_state = "hidden"
    out = io.BytesIO()
    made.save(out)
    found = kept(out.getvalue())
    assert found == by_calamine(out.getvalue())
    assert [one.hidden for one in found if isinstance(one, Worksheet)] == [False, False, True]


@pytest.mark.parametrize(
    ("code", "is_number"),
    [
        ("General", True),
        ('#,##0.00\\ "EUR"', True),
        ("[$€-407] #,##0.00;[Red]-#,##0.00", True),
        ("0.00_);(0.00)", True),
        ("yyyy-mm-dd", False),
        ("[h]:mm", False),
        ("@", False),
        ("0.00E+00", False),
    ],
)
def test_formats_that_surely_show_a_number(code: str, is_number: bool) -> None:
    """Scientific ones are left to the reader for their letter; that costs time, never a value."""
    assert shows_a_number(164, code) is is_number


def test_a_changed_byte_is_refused() -> None:
    """Parts carry a check sum (ZIP: APPNOTE 4.4.7, CRC-32). Stored unpacked, nothing else would tell."""
    rows = "".join(
        PLAIN.replace("A1", f"A{n}").replace("B1", f"B{n}").replace('r="1"', f'r="{n}"') for n in range(1, 9)
    )
    data = bytearray(stored(book(rows, strings=SHARED)))
    at = data.index(b"12.5")
    data[at] = ord("9")
    assert "damaged" in str(kept(bytes(data)))
    assert "damaged" in str(by_calamine(bytes(data)))


def stored(data: bytes) -> bytes:
    """The same archive with its parts as they are, not compressed."""
    out = io.BytesIO()
    with zipfile.ZipFile(io.BytesIO(data)) as before, zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as after:
        for name in before.namelist():
            after.writestr(name, before.read(name))
    return out.getvalue()
