"""Cells the reader leaves out are never silently missing; openpyxl and number styles are looked at from outside."""

import io
import random
from datetime import datetime
from decimal import Decimal

import openpyxl
import pytest

from sourcing.basics.problem import Refused
from sourcing.sheets.files import workbook_grid
from sourcing.sheets.files.workbook_grid import read_workbook
from sourcing.sheets.worksheet import Cell
from tests.sheets.sheet_files import saved
from tests.sheets.workbook_files import book, ods, worksheet

ROW = '<row r="1"><c r="A1"><v>1</v></c></row>'
TEXT = '<row r="1"><c r="A1" t="inlineStr"><is><t>x</t></is></c></row>'


@pytest.mark.parametrize("rows", [ROW, TEXT])
def test_utf_16_is_refused_for_the_reader_finds_no_cell_in_it(rows: str) -> None:
    data = worksheet(rows, start='<?xml version="1.0" encoding="UTF-16"?>').encode("utf-16")
    with pytest.raises(Refused, match="damaged"):
        read_workbook(book(data), "prices.xlsx")


@pytest.mark.parametrize("quote", ['"', "'"])
def test_one_cell_fewer_than_the_xml_has_is_refused(quote: str) -> None:
    """The same cell twice: the reader keeps the last, and nobody knows which price was meant."""
    twice = ROW.replace("</row>", '<c r="A1"><v>2</v></c></row>').replace('"', quote)
    with pytest.raises(Refused, match="damaged"):
        read_workbook(book(twice), "prices.xlsx")


def test_a_row_fewer_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    class Forgetful:
        name = "Prices"
        merged_cell_ranges = None

        def to_python(self, skip_empty_area: bool) -> list[list[object]]:
            return [["x"]]

    kept = workbook_grid._worksheet
    monkeypatch.setattr(
        workbook_grid,
        "_worksheet",
        lambda sheet, *rest: kept(Forgetful(), *rest),  # type: ignore[arg-type]
    )
    rows = "".join(f'<row r="{n}"><c r="A{n}" t="s"><v>0</v></c></row>' for n in (1, 2))
    with pytest.raises(Refused, match="damaged"):
        read_workbook(book(rows, strings="<si><t>x</t></si>"), "prices.xlsx")


@pytest.mark.parametrize("quote", ['"', "'"])
def test_rows_hidden_by_default(quote: str) -> None:
    before = '<sheetFormatPr defaultRowHeight="15" zeroHeight="1"/>'
    rows = ROW + '<row r="2" ht="15"><c r="A2"><v>1</v></c></row>'
    (found,) = read_workbook(book(worksheet(rows, before=before).replace('"', quote)), "prices.xlsx")
    assert found.hidden_rows == {0}


NUMBER = 'xmlns:number="urn:oasis:names:tc:opendocument:xmlns:datastyle:1.0"'
FORMATS: dict[str, tuple[str, str, Cell]] = {
    "series": ('<number:text>NW-</number:text><number:number number:min-integer-digits="4"/>', "7", "NW-0007"),
    "zeros": ('<number:number number:min-integer-digits="5"/>', "123", "00123"),
    "texts among": (
        '<number:number number:min-integer-digits="10"><number:embedded-text number:position="4">.'
        '</number:embedded-text><number:embedded-text number:position="6">.</number:embedded-text></number:number>',
        "8433901000",
        "8433.90.1000",
    ),
    "per hundred": (
        '<number:text>$</number:text><number:number number:decimal-places="2" number:min-integer-digits="1"/>'
        "<number:text>/C</number:text>",
        "10.5",
        "$ 10.5 /C",
    ),
    "plain": ('<number:number number:decimal-places="2" number:grouping="true"/>', "1234.5", Decimal("1234.5")),
}


@pytest.mark.parametrize("name", FORMATS)
@pytest.mark.parametrize("by_column", [True, False])
def test_number_formats_of_opendocument(name: str, by_column: bool) -> None:
    """A price per hundred that is only in the format would be a hundredfold price; a series would lose its letters."""
    pieces, value, shown = FORMATS[name]
    style = f'<number:number-style {NUMBER} style:name="N1">{pieces}</number:number-style>'
    style += '<style:style style:name="c" style:family="table-cell" style:data-style-name="N1"/>'
    named = 'table:default-cell-style-name="c"', 'table:style-name="c"'
    column = f"<table:table-column {named[0] if by_column else ''}/>"
    cell = f'<table:table-cell {"" if by_column else named[1]} office:value-type="float" office:value="{value}"/>'
    (found,) = read_workbook(ods(f"{column}<table:table-row>{cell}</table:table-row>", before=style), "prices.ods")
    assert found.rows == [[shown]]


def _value(chance: random.Random, row: int) -> object:
    texts = ("belt", " 00 1 ", "0123", "a\nb", "Ä€ 中", "=x", "x" * 32_000)
    kinds: tuple[object, ...] = (
        chance.choice(texts[:5] if row % 50 else texts),
        chance.randint(-5, 10**9),
        chance.randint(1, 10**7) / 100,
        chance.random() < 0.5,
        datetime(2026, 3, chance.randint(1, 28), chance.randint(0, 23), 30),
        None,
    )
    return chance.choice(kinds)


@pytest.mark.parametrize("seed", range(10))
def test_generated_workbooks_are_what_openpyxl_reads(seed: int) -> None:
    """Named differences: a blank is ''; a yes is 'TRUE'; a date is its ISO text; a number is a Decimal."""
    chance = random.Random(seed)
    workbook = openpyxl.Workbook()
    for row in range(120):
        for column in range(9):
            cell = workbook.worksheets[0].cell(row + 1, column + 1)
            cell.value = value = _value(chance, row)  # type: ignore[assignment]
            cell.data_type = "s" if isinstance(value, str) else cell.data_type
    data = saved(workbook)
    (found,) = read_workbook(data, "prices.xlsx")
    theirs = openpyxl.load_workbook(io.BytesIO(data), data_only=True).worksheets[0]
    assert len(found.rows) == theirs.max_row
    for at, values in enumerate(theirs.iter_rows(values_only=True)):
        assert list(found.rows[at]) == [_as_ours(value) for value in values]


def _as_ours(value: object) -> Cell:
    if value is None:
        return ""
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int | float):
        return Decimal(repr(value))
    return str(value)
