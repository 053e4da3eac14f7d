"""What a workbook tells beside its values; openpyxl, another reader, is the outside check."""

import io
from decimal import Decimal

import numpy as np
import openpyxl
import pytest
from openpyxl.styles import numbers
from openpyxl.utils.datetime import CALENDAR_MAC_1904, from_excel

from sourcing.sheets.files.workbook_formats import read_format, shown_as_percent, shown_with_zeros
from sourcing.sheets.files.workbook_found import Found
from sourcing.sheets.files.workbook_grid import read_workbook
from sourcing.sheets.files.workbook_parse import SheetReader, parse
from sourcing.sheets.files.workbook_scan import Irregular, scan
from sourcing.sheets.worksheet import Cell, Worksheet
from tests.sheets.sheet_files import saved
from tests.sheets.workbook_files import book, cell, ods, worksheet, xlsb


def only(data: bytes) -> Worksheet:
    """The one worksheet of the workbook."""
    (found,) = read_workbook(data, "prices.xlsx")
    return found


def rows(xml: str, formats: str = "", strings: str = "", after: str = "") -> list[list[Cell]]:
    """The cells of a workbook with these rows."""
    return list(only(book(xml, formats=formats, strings=strings, after=after)).rows)


@pytest.mark.parametrize(
    ("code", "number", "shown"),
    [
        ("000000", 123, "000123"),
        ("00000", 123456, "123456"),
        ("000-000", 1234, "001-234"),
        ('0000"-"00', 123, "0001-23"),
        (r"0000\.00\.0000", 8433901000, "8433.90.1000"),
        ('"NW-"0000', 7, "NW-0007"),
        ('"NW-"0', 7, "NW-7"),
        ("00000;-00000", 5, "00005"),
        ("[Red]000", 5, "005"),
    ],
)
def test_a_number_shown_with_zeros_is_the_text_shown(code: str, number: int, shown: str) -> None:
    assert shown_with_zeros(Decimal(number), read_format(code).mask) == shown
    assert rows(f'<row r="1">{cell("A1", str(number), " s=" + chr(34) + "1" + chr(34))}</row>', formats=_xml(code)) == [
        [shown]
    ]


def _xml(code: str) -> str:
    return code.replace("&", "&amp;").replace('"', "&quot;").replace("<", "&lt;")


@pytest.mark.parametrize(
    "code", ["General", "0", "0.00", "#,##0.00", "00.00", "0 ", "yyyy-mm-dd", "0.00E+00", "@", "# ?/?"]
)
def test_other_formats_leave_the_number(code: str) -> None:
    assert not read_format(code).matters


@pytest.mark.parametrize("number", ["1.5", "-3"])
def test_zeros_never_round_a_fraction_or_drop_a_minus(number: str) -> None:
    assert shown_with_zeros(Decimal(number), read_format("0000").mask) is None


CURRENCIES = {
    "[$€-407] #,##0.00": "€",
    "#,##0.00 [$€-407]": "€",
    '"$"#,##0.00': "$",
    "$#,##0.00": "$",
    "[$USD] 0.00": "USD",
    "[$-409]0.0": "",
    "_-£* #,##0.00": "£",
    '0.00" EUR"': "EUR",
    '"US$"0.00': "US$",
    "[$CHF-807] 0.00": "CHF",
    '0.00 "kr"': "kr",
    '0.0" pcs"': "",
    numbers.FORMAT_CURRENCY_EUR_SIMPLE: "EUR",
    numbers.FORMAT_CURRENCY_USD: "$",
    '_("$"* #,##0.00_);_("$"* (#,##0.00);_("$"* "-"??_);_(@_)': "$",
}


@pytest.mark.parametrize("code", CURRENCIES)
def test_the_currency_a_format_shows(code: str) -> None:
    assert read_format(code).currency == CURRENCIES[code]


def test_currencies_are_told_by_column_and_row() -> None:
    workbook = openpyxl.Workbook()
    sheet = workbook.worksheets[0]
    written: list[tuple[str | int, str]] = [
        ("Net", "General"),
        (1, '"$"0.00'),
        (2, "[$€-407] 0.00"),
        (3, "0"),
        (4, "$0"),
    ]
    for row, (value, code) in enumerate(written):
        sheet.cell(row + 1, 2, value).number_format = code
    sheet.cell(6, 2).number_format = "$0"
    found = only(saved(workbook))
    assert {column: dict(signs) for column, signs in found.currencies.items()} == {1: {"$": [1, 4], "€": [2]}}
    assert [row[1] for row in found.rows[1:]] == [1, 2, 3, 4]


@pytest.mark.parametrize(
    ("value", "shown"), [("0.4", "40%"), ("0.125", "12.5%"), ("1", "100%"), ("0.07", "7%"), ("0", "0%")]
)
def test_a_per_cent_is_exact(value: str, shown: str) -> None:
    assert shown_as_percent(Decimal(value)) == shown
    assert rows(f'<row r="1"><c r="A1" s="1"><v>{value}</v></c></row>', formats="0%") == [[shown]]


def test_hidden_rows_and_columns_and_merged_regions_are_those_openpyxl_reads() -> None:
    workbook = openpyxl.Workbook()
    sheet = workbook.worksheets[0]
    for row in range(1, 7):
        sheet.append([row, "a", "b", "c"])
    sheet.row_dimensions[2].hidden = True
    sheet.column_dimensions["B"].hidden = True
    sheet.merge_cells("A5:C6")
    data = saved(workbook)
    found = only(data)
    again = openpyxl.load_workbook(io.BytesIO(data)).worksheets[0]
    assert found.hidden_rows == {row - 1 for row, one in again.row_dimensions.items() if one.hidden or one.height == 0}
    assert found.hidden_rows == {1}
    assert found.hidden_columns == {1}
    assert found.merged == tuple(
        (r.min_row - 1, r.min_col - 1, r.max_row - 1, r.max_col - 1) for r in again.merged_cells
    )
    assert found.rows[4:] == [[5, "", "", "c"], ["", "", "", "c"]]


def test_a_row_of_no_height_is_hidden() -> None:
    xml = "".join(f'<row r="{n}"{more}>{cell(f"A{n}", "1")}</row>' for n, more in enumerate(HEIGHTS, 1))
    assert only(book(xml)).hidden_rows == {1, 2}


HEIGHTS = ("", ' ht="0" customHeight="1"', ' spans="1:1" hidden="true"', ' ht="0.75" customHeight="1"', ' hidden="0"')


def test_error_cells_keep_their_word_even_new_ones() -> None:
    xml = '<row r="1"><c r="A1" t="e"><v>#N/A</v></c><c r="B1" t="e"><f>B9</f><v>#REF!</v></c>{}</row>'
    assert rows(xml.format("")) == [["#N/A", "#REF!"]]
    assert rows(xml.format('<c r="C1" t="e"><v>#SPILL!</v></c>')) == [["#N/A", "#REF!", "#SPILL!"]]


def test_a_formula_without_a_stored_value_is_no_blank() -> None:
    workbook = openpyxl.Workbook()
    workbook.worksheets[0].append(["A1", "=D5*0.6", 4])
    workbook.worksheets[0].append(["A2", '=IF(A1<>"",1,"")'])
    workbook.worksheets[0]["F9"] = "=1+1"
    found = only(saved(workbook)).rows
    assert found[0][:3] == ["A1", "=D5*0.6", 4] and found[1][1] == '=IF(A1<>"",1,"")' and found[8][5] == "=1+1"


def test_a_formula_with_its_value_is_the_value_and_a_stored_empty_text_is_blank() -> None:
    xml = (
        '<row r="1"><c r="A1"><f>B1*2</f><v>2.5</v></c><c r="B1" t="str"><f>C1</f><v></v></c>'
        '<c r="C1"><f t="shared" si="0"/></c><c r="D1"><f>A1</f><v>0</v></c></row>'
    )
    assert rows(xml) == [[Decimal("2.5"), "", "=…", 0]]
    assert rows(xml, after='<calcPr fullCalcOnLoad="1"/>') == [[Decimal("2.5"), "", "=…", "=A1"]]


def test_texts_keep_every_character() -> None:
    xml = (
        '<row r="1"><c r="A1" t="inlineStr"><is><r><t>0</t></r><r><t xml:space="preserve"> 12 </t></r>'
        "<rPh><t>zz</t></rPh></is></c>"
        '<c r="B1" t="inlineStr"><is><t>a_x000D_b &amp; &#65;</t></is></c><c r="C1" t="str"><v>  00 1  </v></c>'
        '<c r="D1" t="b"><v>1</v></c><c r="E1" t="s"><v>0</v></c><c r="F1" t="inlineStr"><is><t>=1+1</t></is></c></row>'
    )
    found = rows(xml, strings='<si><t xml:space="preserve"> 007 </t></si>')
    assert found == [["0 12 ", "a\rb & A", "  00 1  ", "TRUE", " 007 ", "=1+1"]]


def test_true_is_not_the_number_one() -> None:
    xml = f'<row r="1">{cell("A1", "1")}<c r="B1" t="b"><v>1</v></c><c r="C1" t="b"><v>0</v></c>{cell("D1", "0")}</row>'
    assert rows(xml) == [[1, "TRUE", "FALSE", 0]]


def test_dates_in_both_date_systems() -> None:
    """ECMA-376 part 1, 18.17.4.1: day 1 is 1900-01-01, or day 0 is 1904-01-01; 46086 days on is 2026-03-05."""
    xml = '<row r="1"><c r="A1" s="2"><v>{}</v></c></row>'
    assert rows(xml.format(46086)) == [["2026-03-05 00:00:00"]]
    data = book(xml.format(44624))
    later = openpyxl.Workbook()
    later.epoch = CALENDAR_MAC_1904
    later.worksheets[0]["A1"] = from_excel(46086)
    assert only(saved(later)).rows == [["2026-03-05 00:00:00"]] != only(data).rows


@pytest.mark.parametrize("dimension", ["", '<dimension ref="A1"/>', '<dimension ref="A1:XFD1048576"/>'])
def test_a_wrong_stated_dimension_loses_nothing(dimension: str) -> None:
    xml = worksheet(f'<row r="1">{cell("A1", "1")}</row><row r="7">{cell("C7", "2")}</row>', before=dimension)
    assert rows(xml) == [[1, "", ""], *[["", "", ""]] * 5, ["", "", 2]]


def test_cells_and_rows_without_a_reference_stand_after_the_one_before() -> None:
    xml = '<row r="3"><c r="B3"><v>1</v></c><c t="e"><v>#N/A</v></c></row><row><c s="1"><v>7</v></c></row>'
    assert rows(xml, formats="000")[2:] == [["", 1, "#N/A"], ["007", "", ""]]


SHEETS = {
    "plain": '<row r="1"><c r="A1" s="1"><v>1</v></c><c r="AB1" t="s"><v>0</v></c><c r="XFD1" s="1"/></row>',
    "error": '<row r="12"><c r="B12" t="e"><v>#N/A</v></c><c r="C12" t="e"><f>A1&amp;B1</f><v>#REF!</v></c></row>',
    "formula": '<row r="2" hidden="1"><c r="A2"><f>B2</f></c><c r="B2"><f t="shared" si="1"/><v/></c></row>',
    "formula text": '<row r="2" ht="0" customHeight="1"><c r="A2" s="1" t="str"><f>B2</f><v></v></c></row>',
    "rich": '<row r="1"><c r="AAA1" t="inlineStr"><is><r><t>x</t></r></is></c><c r="AAB1" s="1"><v>3</v></c></row>',
    "many": "".join(f'<row r="{n}"><c r="A{n}" t="s"><v>0</v></c></row>' for n in range(1, 2000)),
}  # fmt: skip


@pytest.mark.parametrize("name", SHEETS)
@pytest.mark.parametrize("size", [7, 64, 1 << 20])
def test_the_fast_look_finds_what_the_slow_one_finds(name: str, size: int) -> None:
    """`scan` reads blocks of bytes at once, `parse` tag by tag; the second is plain and checks the first."""
    before = '<cols><col min="2" max="3" hidden="1"/><col min="5" max="5" width="0"/></cols>'
    xml = worksheet(SHEETS[name], before, after='<mergeCells><mergeCell ref="A1:B2"/></mergeCells>').encode()
    pieces = [xml[at : at + size] for at in range(0, len(xml), size)]
    fast, slow = (Found(styles=frozenset({1}), string_sizes=np.array([40]), recalculated=True) for _ in range(2))
    scan(pieces, fast)
    reader = SheetReader(slow)
    parse(pieces, reader)
    reader.finish()
    assert _told(fast) == _told(slow)
    assert fast.cells and fast.hidden_columns == {1, 2, 4}


def _told(found: Found) -> dict[str, object]:
    styled = {
        style: sorted((int(r), int(c)) for down, across in pairs for r, c in zip(down, across, strict=True))
        for style, pairs in found.styled.items()
    }
    names = ("height", "width", "cells", "string_bytes", "texts", "hidden_rows", "hidden_columns", "odd_errors")
    return {name: getattr(found, name) for name in names} | {"styled": {k: v for k, v in styled.items() if v}}


@pytest.mark.parametrize(
    "xml",
    [
        '<row r="1"><!-- --></row>',
        "<row r='1'/>",
        '<row r="1"><c s="1" r="A1"/></row>',
        '<row r="1"><c><v>1</v></c></row>',
    ],
)
def test_what_is_not_regular_is_left_to_the_slow_look(xml: str) -> None:
    with pytest.raises(Irregular):
        scan([worksheet(xml).encode()], Found())


def test_opendocument_cells() -> None:
    def cell_of(kind: str, value: str, text: str, more: str = "") -> str:
        stated = f'office:value-type="{kind}" {value}'
        return f"<table:table-cell {stated} {more}><text:p>{text}</text:p></table:table-cell>"

    number = 'office:value="{}"'.format
    found = only(
        ods(
            '<table:table-column table:number-columns-repeated="2"/><table:table-column table:visibility="collapse"/>'
            '<table:table-row table:number-rows-repeated="2"/><table:table-row table:visibility="filter">'
            + cell_of("float", number(123), "000123")
            + cell_of("currency", number("2.5"), "2,50 €", 'office:currency="EUR"')
            + cell_of("percentage", number("0.4"), "40 %")
            + cell_of("float", number(5), "5", 'table:number-columns-repeated="2"')
            + '<table:table-cell table:formula="of:=[.A1]*2"/>'
            + cell_of("date", 'office:date-value="2026-03-05"', "5. Mrz")
            + cell_of("string", "", "a <text:s text:c='2'/>b<text:line-break/>c")
            + '</table:table-row><table:table-row><table:table-cell table:number-columns-spanned="2" '
            'table:number-rows-spanned="1" office:value-type="string"><office:annotation><text:p>no</text:p>'
            "</office:annotation><text:p>x</text:p></table:table-cell><table:covered-table-cell/></table:table-row>"
            '<table:table-row table:number-rows-repeated="1048000"><table:table-cell '
            'table:number-columns-repeated="16384"/></table:table-row>'
        )
    )
    assert found.rows[2] == ["000123", Decimal("2.5"), "40%", 5, 5, "=[.A1]*2", "2026-03-05 00:00:00", "a   b\nc"]
    assert [*found.rows[:2], *found.rows[3:]] == [[], [], ["x"]]
    assert found.hidden_rows == found.hidden_columns == {2} and found.merged == ((3, 0, 3, 1),)
    assert found.currencies == {1: {"EUR": [2]}}


def test_a_binary_workbook_is_read() -> None:
    assert only(xlsb([(0, 0, 1.0), (3, 2, 2.5)])).rows == [[1, "", ""], *[["", "", ""]] * 2, ["", "", Decimal("2.5")]]
