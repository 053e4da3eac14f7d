"""The demo's files read with csv and openpyxl alone, so that the tests don't lean on the package they help to check."""

import csv
from decimal import Decimal
from functools import cache
from pathlib import Path

from openpyxl import load_workbook

TOP = Path(__file__).resolve().parents[2]
DEMO = TOP / "demo_prices"
Row = dict[str, str]


@cache
def separated(path: Path, encoding: str, delimiter: str) -> list[Row]:
    """A text file's rows under the first row of more than five cells; only rows that fill the second column."""
    with path.open(encoding=encoding, newline="") as file:
        lines = list(csv.reader(file, delimiter=delimiter))
    start = next(at for at, line in enumerate(lines) if len(line) > 5)
    header = lines[start]
    rows = [dict(zip(header, line, strict=True)) for line in lines[start + 1 :] if len(line) > 5]
    return [row for row in rows if row[header[1]]]


@cache
def worksheet(path: Path, title: str, header_row: int) -> list[Row]:
    """A worksheet's rows under a header row, every cell as text, money with two decimals, blanks as ''."""
    book = load_workbook(path)
    lines = [[_text(cell.value, cell.number_format) for cell in line] for line in book[title].iter_rows()]
    return [dict(zip(lines[header_row - 1], line, strict=True)) for line in lines[header_row:]]


def _text(value: object, number_format: str) -> str:
    if value is None:
        return ""
    return f"{Decimal(str(value)):.2f}" if number_format == "#,##0.00" else str(value)


def stonegarth_old() -> list[Row]:
    """The December sheet."""
    return separated(DEMO / "stonegarth/prices-2025-12-01.csv", "utf-8", ",")


def stonegarth_new() -> list[Row]:
    """The January sheet."""
    return separated(DEMO / "stonegarth/prices-2026-01-05.csv", "utf-8", ",")


def kesselried() -> list[Row]:
    """The German sheet, its decimal commas left as they are."""
    return separated(DEMO / "kesselried/prices-2026-01-02.csv", "cp1252", ";")


def larkmoor() -> list[Row]:
    """The worksheet with prices."""
    return worksheet(DEMO / "larkmoor/prices-2026-01-07.xlsx", "Prices", 3)


def pellbrook() -> list[Row]:
    """The worksheet with prices."""
    return worksheet(DEMO / "pellbrook/prices-2026-01-08.xlsx", "Price list", 4)


def tavishollow() -> list[Row]:
    """The tab-separated sheet."""
    return separated(DEMO / "tavishollow/prices-2026-01-06.tsv", "utf-16", "\t")


def rate_table() -> list[Row]:
    """The rate table, as it stands."""
    with (DEMO / "rates.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))
