"""Workbooks made to fill the memory, to hide something, or broken: one sentence each, quickly, and nothing else."""

import io
import struct
import time
import zipfile
from collections.abc import Callable
from decimal import Decimal

import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.files import workbook_found
from sourcing.sheets.files.grid import read_grid
from tests.sheets.workbook_files import BOOK, MAIN, book, cell, ods, packed, worksheet, xlsb

ONE = '<row r="1"><c r="A1"><v>1</v></c></row>'
STRING = ' t="s"'


def declared() -> str:
    """A 'billion laughs': eight entities, each fifty of the one before."""
    nested = "".join(f'<!ENTITY {b} "{f"&{a};" * 50}">' for a, b in zip("abcdefg", "bcdefgh", strict=True))
    return f'<?xml version="1.0"?><!DOCTYPE x [<!ENTITY a "haha">{nested}<!ENTITY f SYSTEM "file:///etc/hostname">]>'


def lying(rows: str) -> bytes:
    """The directory says 500 bytes; the part unpacks to more."""
    data = bytearray(book(rows))
    entry = data.rfind(b"PK\x01\x02", 0, data.rfind(b"xl/worksheets/sheet1.xml"))
    data[entry + 24 : entry + 28] = struct.pack("<I", 500)
    return bytes(data)


def encrypted() -> bytes:
    """Every part is marked as asking for a password."""
    data = bytearray(book(ONE))
    at = data.find(b"PK\x01\x02")
    while at >= 0:
        data[at + 8] |= 1
        at = data.find(b"PK\x01\x02", at + 4)
    return bytes(data)


def many(letters: str, count: int, value: str, attributes: str = "") -> str:
    """Rows with the same cell in each column."""
    return "".join(
        f'<row r="{n}">' + "".join(cell(f"{letter}{n}", value, attributes) for letter in letters) + "</row>"
        for n in range(1, count + 1)
    )


def ods_row(times: int, across: int) -> bytes:
    """A number repeated over columns and rows."""
    one = f'<table:table-cell office:value-type="float" office:value="1" table:number-columns-repeated="{across}"/>'
    return ods(f'<table:table-row table:number-rows-repeated="{times}">{one}</table:table-row>')


FAR = '<row r="1"><c r="A1"><v>1</v></c></row><row r="1048576"><c r="{}1048576"><v>1</v></c></row>'
REFUSED: dict[str, tuple[Callable[[], bytes], str]] = {
    "stray cell": (lambda: book(FAR.format("XFD")), "worksheet-too-wide"),
    "stray cell, slow XML": (lambda: book(FAR.format("XFD").replace('"', "'")), "worksheet-too-wide"),
    "stray cells, one right and one below": (
        lambda: book(FAR.format("A").replace('<c r="A1">', '<c r="XFD1">')),
        "worksheet-too-wide",
    ),
    "stray formula": (
        lambda: book(FAR.format("XFD").replace("v>", "f>")),
        "worksheet-too-wide",
    ),
    "stray cell, binary": (lambda: xlsb([(0, 0, 1.0), (1048575, 16383, 1.0)]), "worksheet-too-wide"),
    "a row beyond the last": (
        lambda: book('<row r="9999999"><c r="A9999999"><v>1</v></c></row>'),
        "worksheet-too-wide",
    ),
    "a column beyond the last": (lambda: book('<row r="1"><c r="ZZZ1"><v>1</v></c></row>'), "worksheet-too-wide"),
    "repeated, OpenDocument": (lambda: ods_row(1_048_576, 16_384), "worksheet-too-wide"),
    "far right, OpenDocument": (lambda: ods_row(1, 99_999_999), "worksheet-too-wide"),
    "a million columns": (lambda: book("<row>" + "<c><v>1</v></c>" * 1_000_000 + "</row>"), "worksheet-too-wide"),
    "row without end": (lambda: book("<row>" + "<c><v>1</v></c>" * 2_000_000 + "</row>"), "cell-too-long"),
    "shared text, many times": (
        lambda: book(many("ABCDEFGHIJ", 1500, "0", STRING), strings=f"<si><t>{'y' * 30_000}</t></si>"),
        "unpacks-too-large",
    ),
    "50 MB cell": (
        lambda: book(f'<row r="1"><c r="A1" t="inlineStr"><is><t>{"x" * 49_000_000}</t></is></c></row>'),
        "cell-too-long",
    ),
    "long shared text": (lambda: book(ONE, strings=f"<si><t>{'x' * 9_000_000}</t></si>"), "cell-too-long"),
    "long text, OpenDocument": (
        lambda: ods(
            f"<table:table-row><table:table-cell><text:p>{'x' * 900_000}</text:p></table:table-cell></table:table-row>"
        ),
        "cell-too-long",
    ),
    "million merged regions": (
        lambda: book(worksheet(ONE, after='<mergeCell ref="A1:B2"/>' * 1_000_000)),
        "too-many-merged",
    ),
    "unpacks far beyond its size": (
        lambda: book(ONE, parts={"xl/worksheets/sheet2.xml": b" " * 60_000_000}),
        "unpacks-too-large",
    ),
    "lies about its size": (lambda: lying("<row r='1'>" + " " * 30_000_000 + "</row>"), "cell-too-long"),
    "lies a little": (lambda: lying(many("ABC", 900, "1")), "workbook-damaged"),
    "declared entities": (
        lambda: book(worksheet('<row r="1"><c r="A1" t="str"><v>&h;</v></c></row>', start=declared())),
        "workbook-declares",
    ),
    "declared in the shared texts": (
        lambda: book(ONE, parts={"xl/sharedStrings.xml": f"{declared()}<sst {MAIN}><si><t>&h;</t></si></sst>"}),
        "workbook-declares",
    ),
    "declared in the workbook": (
        lambda: book(ONE, parts={"xl/workbook.xml": declared() + BOOK.format(after="")}),
        "workbook-declares",
    ),
    "declared, OpenDocument": (lambda: ods("<table:table-row/>", start=declared()), "workbook-declares"),
    "cut off": (lambda: book(ONE)[:900], "workbook-damaged"),
    "asks for a password": (encrypted, "password-protected"),
    "no workbook": (lambda: packed({"a.txt": "x"}), "not-a-sheet"),
    "worksheet missing": (
        lambda: book(ONE, parts={"xl/_rels/workbook.xml.rels": "<Relationships/>"}),
        "workbook-damaged",
    ),
    "XML not closed": (lambda: book(worksheet(ONE)[:-30].replace('"', "'")), "workbook-damaged"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_it_is_refused_in_one_sentence(name: str) -> None:
    make, code = REFUSED[name]
    data = make()
    begun = time.process_time()
    with pytest.raises(Refused) as refusal:
        read_grid(data, "prices.csv")
    assert time.process_time() - begun < 10
    (problem,) = refusal.value.problems
    assert problem.code == code
    assert "\n" not in problem.sentence()


def test_much_after_the_rows_is_let_by() -> None:
    """Hyperlinks and conditional formats stand there: 20 million bytes of them hide no cell."""
    rest = '<hyperlink ref="A1"/><cfRule type="x"/>' * 500_000
    assert list(read_grid(book(worksheet(ONE, after=rest)), "prices.xlsx")[0].rows) == [[Decimal(1)]]


READ: dict[str, Callable[[], bytes]] = {
    "far styled cell": lambda: book(ONE + '<row r="1048576"><c r="XFD1048576" s="1"/></row>'),
    "styled to the end, OpenDocument": lambda: ods(
        '<table:table-row><table:table-cell office:value-type="float" office:value="1"/></table:table-row>'
        '<table:table-row table:number-rows-repeated="1048575"><table:table-cell table:style-name="ce1" '
        'table:number-columns-repeated="16384"/></table:table-row>'
    ),
    "macros": lambda: book(ONE, parts={"xl/vbaProject.bin": b"\x00" * 100}),
    "external links": lambda: book(
        ONE, parts={"xl/externalLinks/externalLink1.xml": "<externalLink/>", "xl/media/image1.png": b"x"}
    ),
}


@pytest.mark.parametrize("name", READ)
def test_what_only_looks_hostile_is_read(name: str) -> None:
    (found,) = read_grid(READ[name](), "prices.csv")
    assert found.rows == [[Decimal(1)]]


@pytest.mark.parametrize("sheets", ["<sheets/>", '<sheets><sheet name="Chart" sheetId="1" r:id="rId9"/></sheets>'])
def test_no_worksheet_at_all(sheets: str) -> None:
    start, _, rest = BOOK.format(after="").partition("<sheets>")
    links = (
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId9" '
        'Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/chartsheet" '
        'Target="chartsheets/sheet1.xml"/></Relationships>'
    )
    parts: dict[str, str | bytes] = {
        "xl/workbook.xml": start + sheets + rest.partition("</sheets>")[2],
        "xl/_rels/workbook.xml.rels": links,
    }
    assert read_grid(book(ONE, parts=parts), "prices.xlsx") == []


def test_formulas_without_values_are_looked_at_one_by_one_but_not_without_end(monkeypatch: pytest.MonkeyPatch) -> None:
    data = book(many("ABC", 100, "").replace("<v></v>", "<f>Z1</f>"))
    assert len(read_grid(data, "prices.xlsx")[0].rows) == 100
    monkeypatch.setattr(workbook_found, "MOST_TEXTS", 200)
    with pytest.raises(Refused, match="error cells and formulas without a value, too much"):
        read_grid(data, "prices.xlsx")


@pytest.mark.filterwarnings("ignore:Duplicate name")
def test_two_parts_of_one_name_are_refused() -> None:
    """Readers differ in which of them they take, so what was looked over might not be what is read."""
    out = io.BytesIO(book(ONE))
    with zipfile.ZipFile(out, "a") as archive:
        archive.writestr("XL/worksheets/Sheet1.xml", worksheet(ONE))
    with pytest.raises(Refused, match="damaged"):
        read_grid(out.getvalue(), "prices.xlsx")
