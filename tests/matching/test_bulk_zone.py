"""What a person may accept in bulk: what contradicts keeps a pair out, what another seller merely adds does not."""

import pytest

from tests.matching.test_held_back import NUMBER, bulk
from tests.matching.test_sheet_match import alone


@pytest.mark.parametrize(
    ("row", "part", "why"),
    [
        ("Idler pulley flat 17 mm bore", "Idler pulley flat 3/8 bore", "sizes that may differ: 17 mm against 3/8"),
        ("Skid shoe LH/RH", "Skid shoe left", "one is for both sides"),
        ("Spark plug socket", "Spark plug", "names tool"),
        ("Starter motor brush kit 120 V", "Starter motor 120 V", "only one of them is a kit"),
        ("Belt SPZ 1250", "Belt SPA 1250", "different section"),
        ("Belt XPZ 1000", "Belt SPZ 1000", "fits but is made otherwise"),
        ("Carburetor without primer", "Carburetor with primer", "primer against none"),
        ("Line trimmer round", "Line trimmer square", "round against square"),
        ("Carburetor winter", "Carburetor summer", "winter against summer"),
    ],
)
def test_under_one_number_another_size_side_or_article_is_a_question(row: str, part: str, why: str) -> None:
    """The same maker and price too."""
    found = alone((NUMBER, "Norrowby", row, "9.00"), (NUMBER, "Norrowby", part, "9.00"))
    assert found.tier == "candidate" and not bulk(found)
    assert any(why in reason for reason in found.reasons), found.reasons


@pytest.mark.parametrize(
    ("row", "part"),
    [
        ("Idler pulley flat 3/8 bore", "Idler pulley flat 9.525 mm bore"),
        ("Shear pin 0.25 x 1.5 in", "Shear pin 1/4 x 1-1/2"),
        ("Skid shoe, left (L.H.)", "Skid shoe left"),
    ],
)
def test_one_size_written_in_two_ways_is_none(row: str, part: str) -> None:
    """A bare number is read as inches or millimetres."""
    found = alone((NUMBER, "Norrowby", row, "9.00"), (NUMBER, "Norrowby", part, "9.00"))
    assert found.tier == "automatic", found.reasons


def test_what_only_one_names_is_no_contradiction_where_a_long_number_agrees() -> None:
    """A series on one side keeps a pair from matching by itself, and it may still be accepted in bulk."""
    row = ("", "Norrowby", "Norrowby auger drive belt NW-40388 series II long wearing", "")
    found = alone(row, (NUMBER, "Norrowby", "Auger drive belt long wearing", ""))
    assert found.tier == "candidate" and not found.against
    short = alone(("", "Norrowby", "Auger drive belt 4038 series II", ""), ("4038", "Norrowby", "Auger drive belt", ""))
    assert short.against


def test_a_size_is_no_number() -> None:
    """Whoever makes a 6203-2RS calls it so: it agrees in size, which is said, and is never for bulk."""
    found = alone(("", "", "Idler bearing 6203-2RS", "9.00"), ("NW-5512", "Norrowby", "Idler bearing 6203-2RS", "9.00"))
    assert found.against and "only a standard size agrees, no number: cord, cover and maker may differ" in found.reasons
    assert any(reason.startswith("same boundary dimensions") for reason in found.reasons)


def test_words_of_another_language_do_not_speak_against_a_size_that_agrees() -> None:
    """'Keilriemen 17x2240 Li' is a B88 by the standards' lengths."""
    found = alone((NUMBER, "Norrowby", "Keilriemen 17x2240 Li", "9.00"), (NUMBER, "Norrowby", "Belt B88", "12.00"))
    assert any(reason.startswith("same size within") for reason in found.reasons)
    assert not found.against
