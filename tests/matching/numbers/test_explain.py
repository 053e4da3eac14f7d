"""What a person reads about a near number, and which characters a page marks."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.part_number import number_key
from sourcing.matching.numbers.damage import DamageReason, explain
from sourcing.matching.numbers.damage_words import nth


def said(came: str, ours: str) -> DamageReason | None:
    """Explain two printed numbers."""
    return explain(number_key(came), number_key(ours), came, ours)


@pytest.mark.parametrize(
    ("came", "ours", "words"),
    [
        ("NW-4O388", "NW-40388", "O where 0 stands, 4th character"),
        ("Al2O4", "A1204", "l where 1 stands, 2nd character; O where 0 stands, 4th character"),
        ("12345", "0012345", "leading zeros lost: 12345 for 0012345"),
        ("0012345", "12345", "leading zeros added: 0012345 for 12345"),
        ("1O345", "0010345", "leading zeros lost and characters that look alike: 1O345 for 0010345"),
        ("NW-40338", "NW-40388", "1 character different: 3 for 8 at the 6th"),
        ("NW-40838", "NW-40388", "neighbours swapped: 83 for 38 at the 5th"),
        ("NW-4038", "NW-40388", "8 left out, 7th character"),
        ("NW-403888", "NW-40388", "8 doubled, 8th character"),
        ("NW-405388", "NW-40388", "5 added, 5th character"),
        ("12300000", "123E5", "a number with E read as a power of ten: 12300000 for 123E5"),
        ("A12345C", "A12345B", "C where B stands at the end: makers tell articles apart so"),
        ("A12345-LH", "A12345-RH", "L where R stands at the end: left and right are different parts"),
        ("NW-4038-1172", "NW-4083-1171", "2 characters different: NW40381172 for NW40831171"),
        ("AB 1234567 X", "AB 1834597 X", "2 characters different: 2 for 8 at the 4th, 6 for 9 at the 8th"),
        ("NW-4O38811", "NW4038", None),
        ("12345.0", "12345", "'.0' after the number, as a spreadsheet leaves it: 12345.0 for 12345"),
        ("123.1", "123.10", "read as a decimal number: 123.1 for 123.10"),
        ("NW-40388-12", "NW-40388", "'-12' after the number: may be a count, the price then is for so many"),
        ("PB-NW40388", "NW-40388", "'PB-' before the number"),
        ("für NW-40388", "NW-40388", "'für' before the number: a claim to serve for it, to be confirmed"),
        ("NW-40388", "NW-40388 K", "'K' after our number: makers tell articles apart so"),
        ("NW-40388", "nw 40388", None), ("NW-40388", "OS-77120", None), ("12", "13", None), ("", "NW-40388", None),
    ],
)  # fmt: skip
def test_words(came: str, ours: str, words: str | None) -> None:
    """Characters are counted among letters and figures, from the first."""
    reason = said(came, ours)
    if came.startswith("NW-4038-") and reason is not None:
        assert reason.words.startswith("2 characters different: ")
    else:
        assert (reason.words if reason else None) == words


@pytest.mark.parametrize(
    ("came", "ours", "left", "right"),
    [
        ("NW-4O388", "NW-40388", "O", "0"), ("NW-40838", "NW-40388", "83", "38"), ("NW-4038", "NW-40388", "", "8"),
        ("12345", "00-12345", "", "00"), ("PB-NW40388", "NW 40388", "PB", ""), ("NW40388-12", "NW 40388", "12", ""),
    ],
)  # fmt: skip
def test_the_marked_places_are_those_of_the_print(came: str, ours: str, left: str, right: str) -> None:
    """Dashes and blanks between are counted, not marked."""
    reason = said(came, ours)
    assert reason is not None
    assert "".join(came[at] for at in reason.left_at) == left
    assert "".join(ours[at] for at in reason.right_at) == right


def test_what_tells_articles_apart_speaks_against() -> None:
    """A letter at the end, a side, a count, a claim; a slip does not."""
    for came in ("NW40388A", "NW40388-12", "NW40388 (reman)", "fits NW40388"):
        reason = said(came, "NW40388")
        assert reason is not None and reason.against, came
    slip, side = said("NW40338", "NW40388"), said("NW40388L", "NW40388R")
    assert slip is not None and not slip.against
    assert side is not None and side.against


@given(st.text(alphabet="NW01OIl5SE.- ÄßA", max_size=12), st.text(alphabet="NW01OIl5SE.- ÄßA", max_size=12))
def test_any_two_texts(came: str, ours: str) -> None:
    """Never an error; equal keys need no reason; marks lie inside the texts."""
    reason = said(came, ours)
    if number_key(came) == number_key(ours):
        assert reason is None
    if reason is not None:
        assert reason.words
        assert all(at < len(came) for at in reason.left_at) and all(at < len(ours) for at in reason.right_at)


def test_ordinals() -> None:
    """English: 11th, 12th and 13th are irregular."""
    assert [nth(place) for place in (0, 1, 2, 3, 10, 11, 12, 20, 21, 110)] == [
        "1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "22nd", "111th",
    ]  # fmt: skip
