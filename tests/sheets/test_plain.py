"""A file as plain rows: every row of it, and the header and body of its table, wherever the table stands.

The shapes are those of published studies of polluted delimited files: preamble, footer, header of several rows, no
header, tables below one another, rows of another width.
"""

import csv
import io
from collections.abc import Sequence

import pytest

from sourcing.sheets.plain import PlainTable, grid_rows, plain_table

HEADER = ["Date", "Time", "Qty", "Id", "Price", "Kind", "Text", "Link", "Remarks"]
ROWS = [
    [f"{n % 12 + 1}/{n % 28 + 1}/2018", f"{n % 24}:15", str(n), f"P{n}", f"{n}.50", "big", f"thing {n}, red", "x/y", ""]
    for n in range(1, 31)
]


def as_csv(rows: Sequence[Sequence[str]]) -> bytes:
    """The rows as a comma file; a row of one blank cell is a blank line."""
    out = io.StringIO(newline="")
    writer = csv.writer(out)
    for row in rows:
        if row == [""]:
            out.write("\r\n")
        else:
            writer.writerow(row)
    return out.getvalue().encode()


def table(rows: Sequence[Sequence[str]]) -> PlainTable:
    """The table of a file of these rows."""
    return plain_table(as_csv(rows), "a.csv", {})


BLANK = [""] * 9
CASES: dict[str, tuple[list[list[str]], list[str] | None, list[list[str]]]] = {
    "clean": ([HEADER, *ROWS], HEADER, ROWS),
    "no header": (ROWS, None, ROWS),
    "one data row": ([HEADER, ROWS[0]], HEADER, ROWS[:1]),
    "preamble": ([["Report of things"], ["made in 2018"], [""], HEADER, *ROWS], HEADER, ROWS),
    "preamble filled up": ([["Report", *BLANK[1:]], ["made", "2018", *BLANK[2:]], BLANK, HEADER, *ROWS], HEADER, ROWS),
    "footer": ([HEADER, *ROWS, [""], ["Source: invented"]], HEADER, ROWS),
    "footer filled up": ([HEADER, *ROWS, BLANK, ["Source: invented", *BLANK[1:]]], HEADER, ROWS),
    "smaller table below": ([HEADER, *ROWS, [""], ["a", "b", "c"], ["1", "2", "3"]], HEADER, ROWS),
    "larger table below": ([["a", "b", "c"], ["1", "2", "3"], [""], HEADER, *ROWS], HEADER, ROWS),
    "blank rows inside": ([HEADER, *ROWS[:9], BLANK, *ROWS[9:]], HEADER, ROWS),
}


@pytest.mark.parametrize("case", CASES, ids=str)
def test_the_table_is_found_by_its_shape(case: str) -> None:
    rows, header, body = CASES[case]
    found = table(rows)
    assert (found.header, [list(row) for row in found.rows]) == (header, body)


def test_a_header_of_two_rows_is_joined_and_a_group_stands_over_its_columns() -> None:
    groups = ["When", "", "What", "", "", "", "", "More", ""]
    found = table([groups, HEADER, *ROWS])
    assert found.header and list(found.header)[:4] == ["When Date", "When Time", "What Qty", "What Id"]
    assert [list(row) for row in found.rows] == ROWS


def test_years_are_a_header_though_they_are_numbers() -> None:
    rows = [["Country", "2019", "2020"], *([f"c{n}", str(n), str(n * 3)] for n in range(20))]
    assert table(rows).header == rows[0]


def test_a_row_with_a_cell_too_many_keeps_it() -> None:
    wide = [*ROWS[3], "more"]
    found = table([HEADER, *ROWS[:3], wide, *ROWS[4:]])
    assert list(found.rows[3]) == wide


def test_the_table_of_a_price_sheet_has_neither_sections_nor_totals() -> None:
    header = ["Part Number", "Description", "Net Price"]
    rows = [["NW-1", "Belt", "1.50"], ["NW-2", "Pin", "2.50"]]
    sheet = [["Stonegarth"], header, ["BELTS", "", ""], rows[0], header, rows[1], ["Total", "", "4.00"]]
    found = table(sheet)
    assert (found.header, [list(row) for row in found.rows]) == (header, rows)
    assert [list(row) for row in grid_rows(as_csv(sheet), "a.csv")] == sheet


def test_of_several_price_tables_the_longest_is_given_and_the_others_are_counted() -> None:
    short = [["Part Number", "Net Price", "Pack"], ["NW-9", "9.50", "1"]]
    long = [["Part Number", "Description", "Net Price"], ["NW-1", "Belt", "1.50"], ["NW-2", "Pin", "2.50"]]
    found = table([*short, [""], *long])
    assert (found.header, len(found.rows), found.others) == (long[0], 2, 1)
