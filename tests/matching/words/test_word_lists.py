"""One list of words for two readers: what the quick one knows the careful one knows, and the other way about."""

import pytest

from sourcing.matching.identity.said_of import said_of
from sourcing.matching.likeness.said import OTHER_THING, said
from sourcing.matching.words import sides, sold_as
from sourcing.matching.words.other_things import FOR, IN_PLACE_OF
from sourcing.matching.words.text import any_of, plain, unaccented


def quick_sides(text: str) -> set[str]:
    """The sides the reader of whole sheets finds."""
    return set(said([], [], text).sides)


@pytest.mark.parametrize("word", [*sides.LEFT, *sides.RIGHT, *sides.SHORT_LEFT, *sides.SHORT_RIGHT])
def test_a_word_for_a_side_counts_in_both_readers(word: str) -> None:
    """In small letters and capitals."""
    for text in (f"keeper {word}", f"KEEPER {word.upper()}"):
        assert quick_sides(text) == {said_of(text).side.value} == {sides.SIDES[word]}


@pytest.mark.parametrize("word", sides.ALSO_STRAIGHT)
def test_what_also_means_straight_needs_a_word_for_side(word: str) -> None:
    """To the careful reader; the quick one takes it."""
    assert said_of(f"support {word}").side.value == "" and quick_sides(f"support {word}") == {"right"}
    assert all(said_of(f"support {of} {word}").side.value == "right" for of in sides.SIDE_OF_IT)


@pytest.mark.parametrize("word", sold_as.PAIRS)
def test_a_pair_counts_in_both_readers(word: str) -> None:
    """As two pieces."""
    stated = said_of(f"keeper, {word}")
    assert (stated.sold_as.value, stated.pieces) == ("pair", 2)
    assert ("count", "2") in said([], [], f"keeper, {word}").measures


@pytest.mark.parametrize("word", [*sold_as.SETS, *sold_as.KITS])
def test_a_set_or_kit_counts_in_both_readers(word: str) -> None:
    """A set without a count is a question to the careful one."""
    stated = said_of(f"carburetor {word}").sold_as
    assert stated.value == "kit" if word in sold_as.KITS else stated.doubt
    assert "kit" in said([], [], f"carburetor {word}").things


@pytest.mark.parametrize("word", [*FOR, *IN_PLACE_OF])
def test_what_speaks_of_another_thing_does_so_in_both_readers(word: str) -> None:
    """'replaces aramid', 'pour aramide'."""
    assert said_of(f"belt {word} aramid").cord.doubt
    assert OTHER_THING[word] == "made for another"


def test_plain_text() -> None:
    """Entities, full width, vulgar fractions; accents stay in one and go in the other."""
    assert plain("  R&uuml;ckseite  ＮＷ 91½ ") == "rückseite nw 91-1/2"
    assert unaccented("UMHÜLLT, weiß, côté d’acier") == "umhullt, weiss, cote d'acier"


def test_patterns_prefer_the_longest_word_in_either_spelling() -> None:
    """'set' must not stop before 'sets'; a blank may be a hyphen."""
    assert any_of(("set", "sets", "für")) == "(?:sets|fur|für|set)"
    assert any_of(("twin pack",)) == "(?:twin[ -]pack)"
