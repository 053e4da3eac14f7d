"""What workbooks of other programs, and damaged ones, would have read wrong without a word."""

import io
import os
import struct
import subprocess
import sys
import zipfile
from decimal import Decimal

import pytest

from sourcing.basics.problem import Refused
from sourcing.basics.quiet import quiet
from sourcing.sheets.files import workbook_marks
from sourcing.sheets.files.workbook_grid import read_workbook
from sourcing.sheets.files.workbook_xls_numbers import small_number
from sourcing.sheets.worksheet import Cell
from tests.sheets.workbook_files import LINKS, book, ods, packed, record, xlsb
from tests.sheets.xls_workbook_files import number_cell, xls, xls_record

STRINGS = "<si><t>Part No</t></si><si><t>7201</t></si>"


def rows(data: bytes) -> list[list[Cell]]:
    """The rows of the only worksheet."""
    (found,) = read_workbook(data, "prices.xls")
    return list(found.rows)


def replaced(data: bytes, part: str, before: str, after: str) -> bytes:
    """The archive with a text in one of its parts replaced."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    assert before.encode() in parts[part]
    return packed({**parts, part: parts[part].replace(before.encode(), after.encode())})


@pytest.mark.parametrize("number", ["-1", "abc", "1.0", "+1", "0x1", "7;", "1 1", " ", "99999999999"])
@pytest.mark.parametrize("quote", ['"', "'"])
def test_a_shared_text_nobody_can_look_up_is_never_the_first_of_all(number: str, quote: str) -> None:
    """The reader takes text 0 for what it can't read: 'Part No' for a part number."""
    row = f'<row r="1"><c r="A1" t="s"><v>{number}</v></c></row>'.replace('"', quote)
    with pytest.raises(Refused, match="damaged"):
        rows(book(row, strings=STRINGS))


@pytest.mark.parametrize("number", [" 1 ", "\n1\r\n", "01"])
def test_white_space_around_the_number_of_a_shared_text_is_legal(number: str) -> None:
    """XML Schema, part 2: white space around an unsigned int is collapsed."""
    assert rows(book(f'<row r="1"><c r="A1" t="s"><v>{number}</v></c></row>', strings=STRINGS)) == [["7201"]]


@pytest.mark.parametrize("value", ["1&#50;", "1<!-- -->2", "1<![CDATA[2]]>", "1<?x y?>2", "1<x/>2"])
@pytest.mark.parametrize("kind", ["", ' t="s"', ' t="b"'])
def test_a_value_the_reader_takes_only_a_part_of_is_refused(value: str, kind: str) -> None:
    """Of each it gives 1."""
    with pytest.raises(Refused, match="damaged"):
        rows(book(f'<row r="1"><c r="A1"{kind}><v>{value}</v></c></row>', strings=STRINGS))


def test_texts_of_formulas_may_have_entities() -> None:
    xml = '<row r="1"><c r="A1"><v>1</v></c><c r="B1" t="str"><f>A1&amp;"x"</f><v>1&amp;2</v></c></row>'
    assert rows(book(xml)) == rows(book(xml.replace('r="A1"', "r='A1'"))) == [[Decimal(1), "1&2"]]


@pytest.mark.parametrize("least", [0, 10**12], ids=["kept on the way", "read by the reader"])
def test_two_worksheets_of_one_name_are_refused(least: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """The reader finds worksheets by name and would read the first twice; what is kept is kept by name too."""
    monkeypatch.setattr(workbook_marks, "LEAST_BYTES", least)
    second = '<sheet name="Prices" sheetId="2" r:id="rId4"/></sheets>'
    data = book('<row r="1"><c r="A1"><v>1</v></c></row>')
    data = replaced(data, "xl/workbook.xml", "</sheets>", second)
    link = LINKS[LINKS.index("<Relationship Id=") : LINKS.index("/>") + 2]
    link = link.replace("rId1", "rId4").replace("sheet1", "sheet2")
    data = replaced(data, "xl/_rels/workbook.xml.rels", "</Relationships>", link + "</Relationships>")
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    parts["xl/worksheets/sheet2.xml"] = parts["xl/worksheets/sheet1.xml"]
    with pytest.raises(Refused, match="damaged"):
        read_workbook(packed({**parts}), "prices.xlsx")
    parts["xl/workbook.xml"] = parts["xl/workbook.xml"].replace(b'"Prices" sheetId="2"', b'"Terms" sheetId="2"')
    assert [one.name for one in read_workbook(packed({**parts}), "prices.xlsx")] == ["Prices", "Terms"]


@pytest.mark.parametrize("encoding", ["UTF-9", "hex", "rot13"])
def test_an_encoding_nobody_knows_is_refused(encoding: str) -> None:
    start = f'<?xml version="1.0" encoding="{encoding}"?>'
    with pytest.raises(Refused, match="damaged"):
        read_workbook(ods("<table:table/>", start=start), "prices.ods")


@pytest.mark.parametrize("number", [12, 16, 18, 62])
def test_cells_of_a_binary_workbook_the_reader_passes_over_are_refused(number: int) -> None:
    """Records 12 to 18 have no column of their own; 62 is a text in several letterings."""
    data = xlsb([(0, 0, 1.0)])
    cell = record(5, struct.pack("<IId", 0, 0, 1.0))
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    part = next(name for name, text in parts.items() if cell in text)
    short = record(number, struct.pack("<Id", 0, 2.0))
    changed = packed({**parts, part: parts[part].replace(cell, cell + short)})
    with pytest.raises(Refused, match="damaged"):
        read_workbook(changed, "prices.xlsb")


def test_rows_of_a_binary_workbook_that_go_backwards_are_refused() -> None:
    """The reader would ask for hundreds of gigabytes and end the process."""
    with pytest.raises(Refused, match="damaged"):
        read_workbook(xlsb([(5, 0, 1.0), (2, 0, 1.0)]), "prices.xlsb")


def test_a_binary_worksheet_that_ends_before_it_begins_is_refused() -> None:
    """Its extent says first row 9, last row 0; and under another name, which only the relation tells."""
    with zipfile.ZipFile(io.BytesIO(xlsb([(0, 0, 1.0)]))) as archive:
        parts = {name: archive.read(name) for name in archive.namelist()}
    links, part = "xl/_rels/workbook.bin.rels", parts.pop("xl/worksheets/sheet1.bin")
    assert bytes(16) in part
    part = part.replace(bytes(16), struct.pack("<IIII", 9, 0, 0, 0), 1)
    for name in ("worksheets/sheet1.bin", "prices.bin"):
        linked = parts[links].replace(b"worksheets/sheet1.bin", name.encode())
        with pytest.raises(Refused, match="damaged"):
            read_workbook(packed({**parts, links: linked, f"xl/{name}": part}), "prices.xlsb")


@pytest.mark.parametrize("code", ["0.00", '_("$"* #,##0.00_);_("$"* "-"??_);_(@_)', "[Red]0.00"])
@pytest.mark.parametrize("number", [14, 27, 50, 58])
def test_a_number_format_the_workbook_gives_itself_is_no_day(code: str, number: int) -> None:
    """Some programs number their own formats from 50, where the reader knows days of other places."""
    data = xls(number_cell(0, 0, 1.1, 1), code=code)
    text = struct.pack("<HHB", 164, len(code), 0) + code.encode()
    assert text in data
    data = data.replace(text, struct.pack("<HHB", number, len(code), 0) + code.encode())
    data = data.replace(struct.pack("<HHHH", 0xE0, 20, 0, 164), struct.pack("<HHHH", 0xE0, 20, 0, number))
    assert rows(data) == [[Decimal("1.1")]]


def test_a_day_stays_a_day() -> None:
    assert rows(xls(number_cell(0, 0, 45000.0, 1), code="yyyy-mm-dd")) == [["2023-03-15 00:00:00"]]


def test_numbers_of_four_bytes() -> None:
    """The example values of [MS-XLS] 2.5.217 and worked by hand: 1, 123.45 as a hundredth, a negative whole number."""
    for bits, value in ((0x3FF00000, 1.0), ((12345 << 2) | 3, 123.45), (((-7 << 2) | 2) & 0xFFFFFFFF, -7.0)):
        assert small_number(b"\x00" * 6 + struct.pack("<I", bits), 6) == value


def test_many_numbers_side_by_side_are_no_days_either() -> None:
    cells = struct.pack("<HIHI", 1, (110 << 2) | 3, 1, (250 << 2) | 3)
    data = xls(xls_record(0xBD, ("HH", (0, 0)), cells, ("H", (1,))), code="0.00")
    data = data.replace(struct.pack("<HHB", 164, 4, 0) + b"0.00", struct.pack("<HHB", 50, 4, 0) + b"0.00")
    data = data.replace(struct.pack("<HHHH", 0xE0, 20, 0, 164), struct.pack("<HHHH", 0xE0, 20, 0, 50))
    assert rows(data) == [[Decimal("1.1"), Decimal("2.5")]]


def test_a_hidden_page_header_hides_no_row() -> None:
    page = (
        '<office:automatic-styles><style:page-layout><style:header-left style:display="false"/></style:page-layout>'
        "</office:automatic-styles>"
    )
    table = (
        '<table:table table:name="Prices"><table:table-row><table:table-cell office:value-type="string"><text:p>A'
        "</text:p></table:table-cell></table:table-row></table:table>"
    )
    (found,) = read_workbook(ods(table, before=page), "prices.ods")
    assert (found.hidden, found.hidden_rows, list(found.rows)) == (False, frozenset(), [["A"]])


def test_yes_and_no_stored_as_a_number_are_what_they_show() -> None:
    cells = "".join(
        f'<table:table-cell office:value-type="float" office:value="1"><text:p>{text}</text:p></table:table-cell>'
        for text in ("TRUE", "1")
    )
    assert rows(ods(f"<table:table-row>{cells}</table:table-row>")) == [["TRUE", Decimal(1)]]


def test_nothing_is_written_beside_the_sentence(capfd: pytest.CaptureFixture[str]) -> None:
    with quiet():
        os.write(2, b"thread panicked")
    os.write(2, b"sentence")
    assert capfd.readouterr().err == "sentence"


def test_without_an_error_output_nothing_is_changed() -> None:
    """A program started by a window has none."""
    code = "import os; os.close(2)\nfrom sourcing.basics.quiet import quiet\nwith quiet(): print('read')"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout == "read\n"
