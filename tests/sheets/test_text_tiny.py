"""Small or odd delimited texts: moments, rows of different widths, columns set with spaces, lines quoted as a whole."""

import pytest

from sourcing.sheets.files.grid import read_grid


def grid(text: str) -> list[list[str]]:
    """The rows of the one worksheet."""
    (worksheet,) = read_grid(text.encode(), "prices.csv")
    return [[str(cell) for cell in row] for row in worksheet.rows]


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("moment", ["2026/01/{:02} 00:00:00", "2026-01-{:02} 10:30", "2026-01-{:02}T10:30:00Z"])
@pytest.mark.parametrize("times", [1, 100])
def test_a_moment_and_a_count_are_two_columns(moment: str, delimiter: str, times: int) -> None:
    rows = [["time", "count"], *([moment.format(at), str(at % 9 * times)] for at in range(1, 29))]
    assert grid("".join(delimiter.join(row) + "\n" for row in rows)) == rows


@pytest.mark.parametrize("moment", ["2026-01-{:02} 10:30:00", "2026-01-{:02} 10:30:00,250", "{:02}:30:00"])
def test_a_moment_alone_is_one_column(moment: str) -> None:
    rows = [["taken"], *([moment.format(at)] for at in range(1, 10))]
    assert grid("".join(row[0] + "\n" for row in rows)) == rows


RAGGED = [
    [["id", "name", "age"], ["1101", "pin"], ["1102", "belt", "26", "long"]],
    [["a", "b", "c"], ["1", "b"], ["2"], ["3", "b", "c"]],
    [["test1", "test2"], ["#a comment"], ["1", "2"]],
    [["a", "b", "c"], ["1"], ["4", "5", "6"]],
]


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("rows", RAGGED)
def test_a_few_rows_of_different_widths_are_cut(rows: list[list[str]], delimiter: str) -> None:
    assert grid("".join(delimiter.join(row) + "\n" for row in rows)) == rows


def test_a_header_of_known_words_does_not_lose_to_a_mark_that_cuts_it_nowhere() -> None:
    header = ["Part Number", "Brand", "Description", "List", "Net"]
    assert grid(",".join(header) + "\n0|\n0|\n")[0] == header


@pytest.mark.parametrize("text", ["Spring, and snow\nAsk, please, first\nNo more\n", "one\ntwo, three\nfour\n"])
def test_a_few_lines_of_prose_are_not_cut(text: str) -> None:
    assert grid(text) == [[line] for line in text.splitlines()]


def test_columns_set_with_spaces_may_have_quoted_cells() -> None:
    rows = [
        "part    name          price",
        'QZ-1    "long  bolt"    4.50',
        'QZ-2    "nut 5"   5.50',
        "QZ-3    pin    1.50",
    ]
    text = "\n".join([*rows, ""])
    assert grid(text)[1:] == [["QZ-1", "long  bolt", "4.50"], ["QZ-2", "nut 5", "5.50"], ["QZ-3", "pin", "1.50"]]


def test_two_rows_set_with_spaces_have_no_blank_columns() -> None:
    rows = grid("QZ110   2108 6696.79 A1  4.02  -1.42  29.5\nQZ110   2108 6698.67 A1  3.14  -1.65  58.0\n")
    assert rows[0] == ["QZ110", "2108", "6696.79", "A1", "4.02", "-1.42", "29.5"]


def test_a_comment_above_two_columns_of_figures_does_not_hide_them() -> None:
    assert grid("# width and length\n" + "10.5 20.5\n" * 6)[1:] == [["10.5", "20.5"]] * 6


def test_lines_quoted_as_a_whole_are_rows_whatever_their_header() -> None:
    text = '"Plot,Keeper,Vol"\n"P1,""Rusk, Piet"",3.5"\n"P2,Tilbrook,4.5"\n"P3,""the """"old"""" one"",5.5"\n'
    assert grid(text) == [
        ["Plot", "Keeper", "Vol"],
        ["P1", "Rusk, Piet", "3.5"],
        ["P2", "Tilbrook", "4.5"],
        ["P3", 'the "old" one', "5.5"],
    ]


def test_a_quoted_column_of_text_stays_one_column() -> None:
    rows = ["Belt, auger, long", "Pin, shear, short", "Nut, lock, zinc"]
    assert grid("".join(f'"{row}"\n' for row in rows)) == [[row] for row in rows]
