"""What the words beside a number say against it, and what they do not: in whole sheets, row by row."""

import pytest

from sourcing.basics.match import RowMatch
from sourcing.matching.held_back import named_as_other
from sourcing.matching.sheet_match import match_rows
from tests.matching.test_sheet_match import Row, alone, columns

NUMBER = "NW-40388"


def bulk(found: RowMatch) -> bool:
    """Whether a person may accept it without looking at it alone: by its score, with nothing against it."""
    return found.score >= 0.95 and not found.against


@pytest.mark.parametrize(
    ("row", "part", "why"),
    [
        ("Carburetor gasket", "Carburetor", "names gasket"),
        ("Belt", "Belt keeper", "ours is keeper"),
        ("Auger gearbox seal", "Auger gearbox", "names seal"),
        ("Auger belt cogged", "Auger belt wrapped", "cogged against wrapped"),
        ("Axle bracket A36", "Axle bracket A37", "A36 against A37"),
        ("Traction belt B36", "Traction belt BX36", "B36 against BX36"),
        ("Lamp 12/24 V", "Lamp 24/48 V", "short numbers differ"),
        ("Auger belt 88", "Auger belt 90", "short numbers differ"),
        ("Piston ring std", "Piston ring +0.25", "standard against oversize"),
        ("Shear pin 10/pk", "Shear pin", "holds 10, where ours holds 1"),
        ("Skid shoe pair", "Skid shoe each", "holds 2, where ours holds 1"),
        ("Auger belt, compatible", "Auger belt", "in place of another: 'compatible'"),
        ("Auger belt, not genuine", "Auger belt", "in place of another: 'not genuine'"),
        ("Auger belt for NW-40388", "Auger belt", "its own number NW40388 as another's: 'for'"),
        ("Auger belt NW-40383", "Auger belt", "name NW40383, a slip away"),
        ("Auger belt NW-40381", "Auger belt", "name NW40381, a slip away"),
    ],
)
def test_what_makes_one_number_a_question_is_said_and_not_for_bulk(row: str, part: str, why: str) -> None:
    """The same number and maker, whatever the score."""
    found = alone((NUMBER, "Norrowby", row, "" if "pk" in row else "9.00"), (NUMBER, "Norrowby", part, "9.00"))
    assert found.tier == "candidate" and found.against
    assert any(why in reason for reason in found.reasons), found.reasons


@pytest.mark.parametrize(
    ("row", "part"),
    [
        ("Auger belt for 724", "Auger belt"),
        ("Keilriemen fuer Fraese", "Keilriemen"),
        ("Keilriemen für Fräse", "Keilriemen"),
        ("Courroie pour fraise", "Courroie"),
        ("Air filter, not washable", "Air filter"),
        ("Auger pin, not sold singly", "Auger pin"),
        ("L-shaped bracket", "Bracket"),
        ("Gear case gasket", "Gasket, gear case"),
        ("Wheel bearing (NW-40388)", "Wheel bearing"),
        ("Replacement belt for Corrivane CV-12", "Compatible belt for Corrivane CV-12"),
    ],
)
def test_honest_words_are_not_held_against_the_number(row: str, part: str) -> None:
    """They say more of the same thing."""
    found = alone((NUMBER, "Norrowby", row, "9.00"), (NUMBER, "Norrowby", part, "9.00"))
    assert not found.against and found.tier == "automatic", found.reasons


def test_a_number_that_says_its_count_needs_no_words_for_it() -> None:
    """The price of a pack is a pack's, and so is the number that ends with its count."""
    assert alone(("NW-40388-P10", "Norrowby", "Shear pin", ""), ("NW40388P10", "Norrowby", "Shear pin 10/pk", "")).tier
    found = alone(("NW-40388-P10", "Norrowby", "Shear pin", ""), ("NW40388P10", "Norrowby", "Shear pin 10/pk", ""))
    assert not found.against
    figures = alone(("4038810", "Norrowby", "Shear pin", ""), ("4038810", "Norrowby", "Shear pin 10/pk", ""))
    assert figures.against and figures.tier == "candidate"


@pytest.mark.parametrize(
    ("row", "part", "why"),
    [
        ("Gasket, carburetor NW-40388", "Carburetor", "names gasket"),
        ("Carburetor NW-40388 float bowl", "Carburetor", "names bowl, float"),
        ("Auger belt NW-40388 and NW-40389", "Auger belt", "name NW40389 beside NW40388"),
        ("Auger belt, was NW-40388", "Auger belt", "as another's: 'was'"),
        ("Auger belt (replaces Norrowby NW-40388)", "Auger belt", "as another's: 'replaces'"),
        ("Auger belt, not NW-40388", "Auger belt", "as another's: 'not'"),
        ("Auger belt; use NW-40388", "Auger belt", "as another's: 'use'"),
        ("Auger belt, ersetzt NW-40388", "Auger belt", "as another's: 'ersetzt'"),
        ("2 x NW-40388 auger belt 2 pcs", "Auger belt", "holds 2"),
    ],
)
def test_a_number_in_the_words_of_something_else_is_not_for_bulk(row: str, part: str, why: str) -> None:
    """The row has the supplier's own number; the maker's stands in its words and is not what it sells."""
    found = alone(("SG-1", "", row, ""), (NUMBER, "Norrowby", part, "9.00"))
    assert found.tier != "automatic" and found.against
    assert any(why in reason for reason in found.reasons), found.reasons


def test_a_number_in_the_words_is_what_it_sells_where_nothing_else_is_said() -> None:
    """The supplier's own number in its column, the maker's in the words: likely, and a person's to accept."""
    found = alone(("SG-1", "", "Auger belt NW-40388", "9.00"), (NUMBER, "Norrowby", "Auger belt", "9.00"))
    assert bulk(found) and found.tier == "candidate"


@pytest.mark.parametrize("words", ["was NW-40300", "replaces NW-40300", "NW-40300", "supersedes Norrowby NW-40300"])
def test_a_number_beside_the_rows_own_is_never_automatic(words: str) -> None:
    """The row is NW-40388; whatever part NW-40300 is, it is a question."""
    parts: list[Row] = [
        ("NW-40300", "Norrowby", "Auger belt", "9.00"),
        ("NW-77120", "Norrowby", "Chute crank", "9.00"),
    ]
    found = match_rows(columns([(NUMBER, "Norrowby", f"Auger belt {words}", "9.00")]), columns(parts), ["old", "x"])
    old = next(one for one in found if one.part == "old")
    assert old.tier != "automatic" and old.against


@pytest.mark.parametrize("words", [("Blade 21 in", "Blade 22 in"), ("Blade, mulching", "Blade, high lift")])
def test_beside_another_part_of_the_same_number_nothing_is_far_before(words: tuple[str, str]) -> None:
    """Both are asked, and neither may be taken in bulk."""
    parts = columns([(NUMBER, "Norrowby", one, "9.00") for one in words])
    found = match_rows(columns([(NUMBER, "Norrowby", "Blade", "9.00")]), parts, ["one", "other"])
    assert [one.tier for one in found] == ["candidate", "candidate"] and all(one.against for one in found)
    assert all("another part bears this number too" in one.reasons for one in found)
    assert not any("far before the next best" in one.reasons for one in found)


def test_both_numbers_known_ask_even_in_a_column_that_keeps_its_zeros() -> None:
    """Sheets are put together: one half has lost its zeros, the other has not."""
    parts = columns([("12345", "Dunmarrow", "Shear pin", "2.00"), ("0012345", "Dunmarrow", "Spark plug", "4.00")])
    rows = columns([("12345", "Dunmarrow", "Shear pin", "2.00"), ("077120", "Dunmarrow", "Chute crank", "4.00")])
    found = match_rows(rows, parts, ["pin", "plug"], most=1)
    assert found[0].tier == "candidate" and found[0].against
    assert "a spreadsheet may have made this number of 0012345" in found[0].reasons


@pytest.mark.parametrize(
    ("words", "said"),
    [
        ("belt, was nw 40388", "was"),
        ("belt (no longer NW-40388)", "no"),
        ("belt replaces oem part no. NW-40388", "replaces"),
        ("belt NW-40388", ""),
        ("easy to use NW-40388", ""),
        ("was X-1 and is belt NW-40388", ""),
        ("was NW-403881", ""),
    ],
)
def test_the_word_before_a_number_says_whose_it_is(words: str, said: str) -> None:
    """Only directly before it, and only before the whole number."""
    assert named_as_other(words, "NW40388") == said


def test_a_hostile_description_ends() -> None:
    """What a cell holds at most, of pieces the words are searched for."""
    for piece in ("with ", "was NW-", "4.0.3.8.8 ", "for for ", "w/", "rubber seal ", "dichtung", "A36 "):
        found = alone((NUMBER, "Norrowby", piece * 32_000, ""), (NUMBER, "Norrowby", "Auger belt", ""))
        assert found.tier != "automatic"
