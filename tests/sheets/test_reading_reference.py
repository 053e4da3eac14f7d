"""The reader against references and against hostile bytes; prices and numbers that must never be guessed."""

import csv
import io
import random
import zipfile
from decimal import Decimal
from pathlib import Path
from typing import Any

import openpyxl
import pandas as pd
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.sheets.files.grid import read_grid
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet
from sourcing.sheets.worksheet import text_of

DEMO = Path(__file__).parents[2] / "demo_prices"
USD = Hints(supplier="larkmoor", currency="USD")

WORDS = [
    "NW-40388",
    "00123",
    "6203-2RS",
    "Belt, auger",
    'pin 1/4"',
    "Räumschild",
    "12.50",
    "1,250.00",
    "",
    "a;b",
    "x|y",
]


def read(text: str, hints: Hints = USD) -> SheetReading:
    """A sheet from text."""
    return read_sheet(text.encode(), "prices.csv", hints)


def offers(reading: SheetReading) -> list[dict[str, Any]]:
    """Its offers as dicts."""
    return [dict(zip(reading.offers.columns, row, strict=True)) for row in reading.offers.itertuples(index=False)]


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_clean_files_read_as_csv_and_pandas_read_them(delimiter: str, encoding: str) -> None:
    """References: Python's csv module and pandas.read_csv(dtype=str), cell by cell."""
    chance = random.Random(f"{delimiter}{encoding}")
    rows = [["Part Number", "Description", "Net"]]
    rows += [[f"NW-{at:05}", chance.choice(WORDS), f"{at}.50"] for at in range(1, 60)]
    buffer = io.StringIO()
    csv.writer(buffer, delimiter=delimiter, lineterminator="\r\n").writerows(rows)
    data = buffer.getvalue().encode(encoding)
    (worksheet,) = read_grid(data, "prices.csv")
    grid = [[text_of(cell) for cell in row] for row in worksheet.rows]
    assert grid == list(csv.reader(io.StringIO(buffer.getvalue(), newline=""), delimiter=delimiter))
    frame = pd.read_csv(
        io.BytesIO(data), sep=delimiter, encoding=encoding, dtype=str, keep_default_na=False, header=None
    )
    assert grid == frame.to_numpy().tolist()


COUNTS = {
    "stonegarth/prices-2025-12-01.csv": ("USD", 812),
    "stonegarth/prices-2026-01-05.csv": ("USD", 831),
    "kesselried/prices-2026-01-02.csv": ("EUR", 642),
    "larkmoor/prices-2026-01-07.xlsx": ("USD", 1474),
    "pellbrook/prices-2026-01-08.xlsx": ("USD", 1106),
    "tavishollow/prices-2026-01-06.tsv": ("USD", 434),
}


@pytest.mark.parametrize("name", COUNTS)
def test_demo_sheets_account_for_every_row(name: str) -> None:
    """Offers, structure and problems are the rows of the file; no column is left unknown."""
    currency, count = COUNTS[name]
    found = read_sheet((DEMO / name).read_bytes(), name, Hints(supplier=name.split("/")[0], currency=currency))
    assert len(found.offers) == count == sum(one.offers for one in found.summary.accounting)
    assert all(one.adds_up for one in found.summary.accounting)
    assert not found.summary.problems and all(column.field for column in found.summary.columns)


def test_one_bad_row_never_costs_its_neighbours() -> None:
    """Three damaged rows among five: two offers, three problems with row, column and the text found."""
    found = read(
        "Part Number,Description,Net\nNW-1,a,1.50\n1.23E+11,b,2.50\n5-Mar,c,2.50\nNW-4,d,1O.50\n00123,e,CALL\n"
    )
    assert [one["supplier_number"] for one in offers(found)] == ["NW-1", "00123"]
    assert offers(found)[1]["breaks"] == ()
    assert [(one.place.row, one.found) for one in found.summary.problems if one.place] == [
        (3, "1.23E+11"),
        (4, "5-Mar"),
        (5, "1O.50"),
    ]
    assert found.summary.accounting[0].adds_up


@pytest.mark.parametrize(
    ("cells", "prices"),
    [
        (["1,234", "12,50"], ["1.234", "12.50"]),  # the column shows a decimal comma
        (["1,234", "12.50"], ["1234", "12.50"]),  # the column shows a decimal point
        (["1.234,56", "0,99"], ["1234.56", "0.99"]),
        (["1'234.50", "3.20"], ["1234.50", "3.20"]),
        (["$ 12.50 ea", "USD 3.00"], ["12.50", "3.00"]),
    ],
)
def test_the_decimal_mark_is_decided_by_the_column(cells: list[str], prices: list[str]) -> None:
    """Not by the cell."""
    text = "Part Number;Net\n" + "".join(f"NW-{at};{cell}\n" for at, cell in enumerate(cells))
    assert [one["breaks"][0].price for one in offers(read(text))] == [Decimal(price) for price in prices]


def test_an_amount_that_could_be_two_is_a_question() -> None:
    """'1,234' alone: a thousand, or one with decimals."""
    found = read("Part Number;Net\nNW-1;1,234\nNW-2;5\n")
    (problem,) = found.summary.problems
    assert problem.found == "1,234" and len(problem.suggestions) == 2
    assert [one["supplier_number"] for one in offers(found)] == ["NW-2"]


@pytest.mark.parametrize("header", ["Price", "Preis"])
def test_a_price_column_that_could_be_two_things_is_asked(header: str) -> None:
    """List or net; once confirmed it is read."""
    text = f"Part Number,{header}\nNW-1,2.50\n"
    asked = read(text)
    assert "--column" in asked.summary.questions[0].remedy
    assert offers(asked)[0]["breaks"] == () and offers(asked)[0]["list_price"] is None
    confirmed = Hints(supplier="larkmoor", currency="USD", meanings={header: "net price"})
    assert offers(read(text, confirmed))[0]["breaks"][0].price == Decimal("2.50")


def _workbook(rows: list[list[object]]) -> bytes:
    book, buffer = openpyxl.Workbook(), io.BytesIO()
    assert book.active is not None
    for row in rows:
        book.active.append(row)
    book.save(buffer)
    return buffer.getvalue()


def test_workbook_numbers_stay_whole_and_text_stays_text() -> None:
    """A number cell 40388 is '40388' and not '40388.0'; a text cell keeps its leading zeros."""
    found = read_sheet(_workbook([["Part Number", "Net"], [40388, 12.5], ["00123", 3]]), "a.xlsx", USD)
    assert [one["supplier_number"] for one in offers(found)] == ["40388", "00123"]
    assert offers(found)[0]["breaks"][0].price == Decimal("12.5")


def _bomb() -> bytes:
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", zipfile.ZIP_DEFLATED) as book:
        for name in zipfile.ZipFile(io.BytesIO(_workbook([["Part Number", "Net"]]))).namelist():
            book.writestr(name, b" " * 600_000_000 if name.endswith("sheet1.xml") else b"<x/>")
    return buffer.getvalue()


@pytest.mark.parametrize(
    "data",
    [
        b"",
        b"\x00" * 4096,
        b"%PDF-1.7 \xe2\xe3\xcf\xd3" + bytes(range(256)),
        b"\x89PNG\r\n\x1a\n" + bytes(range(256)),
        _workbook([["Part Number", "Net"], ["A", 1]])[:1500],
        b"PK\x03\x04nothing",
        b"no table here\njust words\n",
        _bomb(),
    ],
    ids=["empty", "nulls", "pdf", "picture", "truncated", "not a zip", "prose", "bomb"],
)
@pytest.mark.parametrize("name", ["prices.csv", "prices.xlsx"])
def test_what_is_no_sheet_is_told_in_a_sentence(data: bytes, name: str) -> None:
    """Whatever it is called."""
    with pytest.raises(Refused):
        read_sheet(data, name, USD)


@settings(max_examples=300, deadline=None)
@given(st.binary(max_size=400), st.sampled_from(["a.csv", "a.xlsx", "a.xls", "a.ods"]))
def test_no_bytes_crash_the_reader(data: bytes, name: str) -> None:
    """Only a refusal may come out."""
    head = b"Part Number,Net\n"
    for content in (data, head + data):
        try:
            read_sheet(content, name, USD)
        except Refused:
            continue
