"""Numbers damaged beyond reading match nothing.

Dates and powers of ten: Ziemann et al., Genome Biology 17:177 (2016); Abeysooriya et al., PLoS Computational Biology
17(7) (2021). Fifteen digits: Microsoft KB 269370. The rest was seen in spreadsheets and readers, or is common practice.
"""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.matching.numbers.after_spreadsheet import same_after_spreadsheet
from sourcing.matching.numbers.doubtful import doubtful, doubtful_numbers


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("1.23E+11", "scientific notation"), ("6.29104E+12", "scientific notation"), ("1E+05", "scientific notation"),
        ("1,23E+11", "scientific notation"), ("1.2e-5", "scientific notation"), ("12E-34", "scientific notation"),
        ("1234567890123450000", "digits lost"), ("1234567890123450", "digits lost"),
        ("14-Mar", "date"), ("Mar-14", "date"), ("05. Mrz", "date"), ("mars-05", "date"), ("2014-03-14", "date"),
        ("2014-03-14 00:00:00", "date"), ("3/14/2014", "date"), ("14.03.2014", "date"), ("9999-12-31", "date"),
        ("12345.0", "point and zero"), ("TRUE", "truth value"), ("FAUX", "truth value"), ("-inf", "infinity"),
        ("#N/A", "error value"), ("#####", "error value"), ("=A1", "formula"), ("=A1&B2", "formula"),
        ("-12+3", "formula"), ("NaN", "no number"), ("n/a", "no number"), ("keine", "no number"),
        (" 'TRUE ", "truth value"),
    ],
)  # fmt: skip
def test_beyond_reading(text: str, kind: str) -> None:
    """Alone and in a column of good numbers."""
    doubt = doubtful(text)
    assert doubt is not None and doubt.kind == kind
    column = ["NW-40388", "A 12", "0012345", text, "", "77-120-4"]
    assert doubtful_numbers(column) == {3: doubt}


@pytest.mark.parametrize(
    "text",
    ["NW-40388", "123E5", "E10", "10-14", "DEC-14", "MAR-14", "1/2", "8.5", "1.10", "12E-345", "123456789012345",
     "1234567890123456", "45942", "0x1F", "+44123", '="036000"', "INF-2", "TRUE-1", "2014-13-14", "31/02", "12,345",
     "", "   ", "4L390", "1044-77-21", "SEP1234", "May Flower 5", "1E5", "A1=2"],
)  # fmt: skip
def test_nothing_wrong(text: str) -> None:
    """Numbers that only look a little like damage."""
    assert doubtful(text) is None
    assert doubtful_numbers(["NW-40388", text, "A12"]) == {}


def test_what_may_have_stood_there_is_offered_and_never_taken() -> None:
    """'.0' alone can be undone, by a person."""
    doubt = doubtful("12345.0")
    assert doubt is not None and doubt.instead == ("12345",)
    assert [doubt.instead for doubt in doubtful_numbers(["14-Mar", "1.23E+11"]).values()] == [(), ()]


def test_the_others_of_a_column_can_clear_a_number() -> None:
    """Numbers with decimals; numbers of the form dddd-dd-dd of which some can be no days."""
    assert doubtful_numbers(["8.5", "10.25", "40.0"]) == {}
    assert doubtful_numbers(["2024-44-17", "2024-05-01", "1044-77-21"]) == {}
    assert set(doubtful_numbers(["2024-05-01", "2024-05-02", "NW-1"])) == {0, 1}


@given(st.lists(st.one_of(st.text(max_size=12), st.from_regex(r"[0-9A-FEa-e./+-]{1,14}", fullmatch=True)), max_size=12))
def test_a_column_says_what_its_numbers_say(column: list[str]) -> None:
    """The quick look at shapes clears nothing that the slow one doubts, but what the others of the column clear."""
    found = doubtful_numbers(column)
    for at, text in enumerate(column):
        alone = doubtful(text)
        if alone is None:
            assert at not in found or found[at].kind == "day count"
        elif alone.kind not in ("point and zero", "date"):
            assert found[at] == alone


def test_a_number_that_may_be_what_a_spreadsheet_left_of_another() -> None:
    """The same key as one part and still a question (Ziemann 2016; zeros: measured in a spreadsheet)."""
    known = ["12345", "0012345", "00012345", "123E5", "12300000", "NW1", "77"]
    assert same_after_spreadsheet(["12345", "12300000", "NW1", "77", "123E5"], known) == {
        0: ("00012345", "0012345"), 1: ("123E5",),
    }  # fmt: skip


def test_a_column_that_kept_a_zero_lost_none() -> None:
    """Powers of ten stay a question."""
    known = ["12345", "0012345", "0000", "123E5"]
    assert same_after_spreadsheet(["12345", "0077", "12300000"], known) == {2: ("123E5",)}
    assert same_after_spreadsheet([], known) == {} and same_after_spreadsheet(["12345", "0"], []) == {}
