"""Every dialect and every damage of one clean table; any rows in any dialect; bytes that are no table at all."""

import io
from collections import Counter
from time import perf_counter

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from sourcing.basics.problem import Refused
from sourcing.sheets.files.grid import read_grid
from tests.sheets.polluted_files import PLAIN, Case, Style, cases, clean_rows

CASES = list(cases())


def grid(data: bytes) -> list[list[str]]:
    """The rows of the one worksheet of a text file."""
    (worksheet,) = read_grid(data, "prices.csv")
    assert len(worksheet.row_numbers) == len(worksheet.rows)
    return [[str(cell) for cell in row] for row in worksheet.rows]


@pytest.mark.parametrize("case", CASES, ids=[case.name for case in CASES])
def test_a_polluted_file_gives_every_cell_of_every_row(case: Case) -> None:
    expected = [*case.rows]
    while not any(cell.strip() for cell in expected[-1]):
        del expected[-1]
    assert grid(case.data) == expected


def test_no_two_cases_have_one_name() -> None:
    assert max(Counter(case.name for case in CASES).values()) == 1 and len(CASES) > 300


@pytest.mark.parametrize(
    ("style", "encoding", "told"),
    [
        (Style(";"), "cp1252", "semicolons, UTF-8"),
        (Style(", ", "'"), "utf-8", "commas and spaces, single quotes, UTF-8"),
        (Style("\t", escape="\\"), "utf-16", "tabs, backslash escapes, UTF-16"),
        (Style("|"), "utf-8", "vertical bars, UTF-8"),
    ],
)
def test_how_the_file_was_read_is_told(style: Style, encoding: str, told: str) -> None:
    (worksheet,) = read_grid(style.text(clean_rows()).encode(encoding), "prices.csv")
    assert worksheet.reading == told


LOOSE = {
    "decimal commas": ("Nr;EK;UVP\nA;1,50;2,75\nB;3,25;4,00\n", ["B", "3,25", "4,00"]),
    "decimal commas, one column": ("Preis\n1,5\n2,5\n3,75\n", ["3,75"]),
    "commas in prose": ("Item\tDescription\nA1\tBelt, auger, cogged\nA2\tBelt, auger\nA3\tKit\n", ["A3", "Kit"]),
    "preamble full of commas": ("By hand, from 1990, and on.\nCite, please, all.\n\nid|n\n1|3\n2|4\n", ["2", "4"]),
    "moments": ("timestamp\n2026-01-01 10:00:00\n2026-01-01 11:00:00\n", ["2026-01-01 11:00:00"]),
    "names": ("Name\nMaud Tilbrook\nPiet Halloway-Rusk\nOona Brandeth\n", ["Oona Brandeth"]),
    "measurements": ("YYYY MM DD W\n2026 01 01 3.5\n2026 01 02 4.5\n", ["2026", "01", "02", "4.5"]),
    "columns set with spaces": ("# site 12\n  1.00   2.50   3.75\n 11.00  12.50  3.75\n", ["11.00", "12.50", "3.75"]),
    "spaces kept": ("a, b, c\n1,  2, 3\n4,  5, 6\n", ["4", " 5", "6"]),
    "inch marks": ('Part,Size,Net\nA1,36",1.00\nA2,"40"" belt",2.00\nA3,38",1.00\n', ["A3", '38"', "1.00"]),
    "backslash before a letter": ('a,b,c\n1,"\\"y\\", z",\\new\n2,"\\"r\\", s",\\old\n', ["2", '"r", s', "\\old"]),
}  # fmt: skip


@pytest.mark.parametrize("name", LOOSE)
def test_the_last_row_of_a_file_that_could_be_read_in_other_ways(name: str) -> None:
    text, row = LOOSE[name]
    assert grid(text.encode())[-1] == row


def test_a_quote_that_never_closes_is_a_character_where_the_rows_then_fit() -> None:
    data = b'Part,Desc,Net\nA1,Belt,1.00\nA2,"36 belt,2.00\nA3,Belt,3.00\nA4,"Belt, long",4.00\n'
    assert grid(data)[2:] == [["A2", '"36 belt', "2.00"], ["A3", "Belt", "3.00"], ["A4", "Belt, long", "4.00"]]


def test_a_pair_of_stray_quotes_does_not_take_in_the_rows_between() -> None:
    data = b'Part,Desc,Net\nA1,Belt,1.00\nA2,"36,2.00\nA3,Belt,3.00\nA4,"36,4.00\nA5,Belt,5.00\n'
    assert [row[0] for row in grid(data)] == ["Part", "A1", "A2", "A3", "A4", "A5"]
    assert grid(data)[4] == ["A4", '"36', "4.00"]


CELLS = st.text(st.characters(codec="cp1252", categories=["L", "N", "P", "Sc", "Zs"], exclude_characters="\xa0\\"))
FIGURES = st.integers(0, 99_999).map(lambda figure: f"{figure / 100:.2f}")
NUMBERS = st.from_regex(r"\A[A-Z]{2}-[0-9]{5}\Z")
HEADER = ["Part Number", "Net", "Description", "Stock", "Note", "Maker"]
WRITTEN = st.builds(
    Style,
    delimiter=st.sampled_from([",", ";", "\t", "|", "^", "~", ", ", "; "]),
    quote=st.sampled_from(['"', "'"]),
    escape=st.sampled_from(["", "\\"]),
    end=st.sampled_from(["\r\n", "\n", "\r"]),
    final=st.integers(0, 2),
)


def tables() -> st.SearchStrategy[list[list[str]]]:
    """A header, then 8 rows or more: a number, an amount, then any text that fits into a line."""
    text = CELLS.map(lambda cell: cell.strip(" '\"")[:20])
    rows = st.integers(1, 4).flatmap(
        lambda more: st.lists(st.tuples(NUMBERS, FIGURES, *[text] * more).map(list), min_size=8, max_size=20)
    )
    return rows.map(lambda rows: [HEADER[: len(rows[0])], *rows])


@given(tables(), WRITTEN, st.sampled_from(["utf-8", "utf-8-sig", "utf-16", "utf-16-le"]))
@settings(max_examples=200, deadline=None)
def test_any_rows_in_any_dialect_are_read_back(rows: list[list[str]], style: Style, encoding: str) -> None:
    """At least three columns and nine rows, a header of known words; cells without quotes at their ends."""
    assert grid(style.text(rows).encode(encoding)) == rows


@given(st.binary(max_size=400) | st.text("\",;'\\\t \r\na1", max_size=200).map(str.encode))
@settings(max_examples=400, deadline=None)
@example(b"\xff\xfe\x00\xd8")
@example(b'"a":"b"\n')
@example(b"a\x00" * 40)
def test_any_bytes_are_rows_or_refused(data: bytes) -> None:
    for content in (data, b"Part Number,Net\n" + data, PLAIN.text(clean_rows(5)).encode() + data):
        try:
            grid(content)
        except Refused as refusal:
            assert len(refusal.problems) == 1


HOSTILE = {
    "a million columns": b"Part Number,Net\n" + b"a," * 1_000_000,
    "a cell of 8 MB": b'Part Number,Net\nA1,"' + b"x" * 8_000_000 + b'",2\n',
    "quotes": b'"' * 8_000_000,
    "no line end": b"abcdefghij klmno" * 500_000,
    "an open quote on every line": b"Part Number,Description,Net\n" + b'A1,"Belt 36,1.00\nB,"x ""y"" z\n' * 100_000,
    "open quotes after a good start": b"Part,Text,Net\n" + b"A,b,1\n" * 500 + b'A,"b ""c,1\n' * 400_000,
    "high bytes": bytes(byte | 128 for byte in range(256)) * 30_000,
    "line ends": b"a\r" * 6_000_000,
    "backslashes": b'a,"b\\",c"\n' + b"\\" * 5_000_000,
}


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_file_takes_seconds(name: str) -> None:
    begun = perf_counter()
    try:
        grid(HOSTILE[name])
    except Refused as refusal:
        assert refusal.problems[0].code in {"not-a-sheet", "text-too-large"}
    assert perf_counter() - begun < 8


def test_a_swallowing_quote_late_in_a_long_file_costs_one_row() -> None:
    out = io.StringIO()
    out.write("Part Number,Description,Net\n")
    out.writelines(f'A{at},"Belt, {at} in",{at}.00\n' for at in range(5000))
    text = out.getvalue().replace('"Belt, 4000 in"', '"Belt 4000 in')
    rows = grid(text.encode())
    assert len(rows) == 5001 and rows[4001] == ["A4000", '"Belt 4000 in', "4000.00"]
    assert rows[4002] == ["A4001", "Belt, 4001 in", "4001.00"]
