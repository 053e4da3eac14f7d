"""A workbook's column of part numbers stored as numbers: zeros before them are gone, and that is said."""

import io
from collections.abc import Sequence

import openpyxl
import pytest

from sourcing.sheets.reading import Hints, read_sheet


def notes(cells: Sequence[object], shown: str = "General", header: str = "Part Number") -> list[str]:
    """What is said of a workbook with these part numbers, shown in that number format."""
    book = openpyxl.Workbook()
    rows = book.active
    assert rows is not None
    rows.append([header, "Brand", "Description", "Net Price"])
    for at, cell in enumerate(cells, 2):
        rows.append([cell, "Norrowby", f"Thing {at}", 10.5])
        rows.cell(at, 1).number_format = shown
    out = io.BytesIO()
    book.save(out)
    reading = read_sheet(out.getvalue(), "prices.xlsx", Hints(supplier="larkmoor", currency="USD"))
    return [one.what for one in reading.summary.notes if one.code == "numbers-without-zeros"]


def test_numbers_stored_as_numbers_are_a_note_with_their_count() -> None:
    (said,) = notes([7542188, 7901150, "0731-7780"])
    assert said.startswith("2 of 3 part numbers in the column 'Part Number' are stored as numbers")


@pytest.mark.parametrize(
    ("cells", "shown"),
    [
        (["0754-2188", "0790-1150", "0731-7780"], "General"),
        (["0754-2188", "0790-1150", 7317780], "General"),
        ([7542188, 7901150, 7317780], "00000000"),
    ],
)
def test_texts_a_few_numbers_and_formats_that_show_the_zeros_are_none(cells: Sequence[object], shown: str) -> None:
    assert notes(cells, shown) == []
