"""What contradicts what is asked rejects an offer; what is not stated is a question; what is left over is said."""

from typing import Any

import pytest

from sourcing.basics.asked import Asked
from sourcing.matching.identity.asked_check import AskedCheck, check_asked
from sourcing.matching.identity.asked_merge import merged
from tests.builders import offer

BELT = Asked(cord="aramid", cover="wrapped")
SET = Asked(sold_as="matched set", pieces=2)


def check(asked: Asked, text: str, quantity: int = 1, size: str = "", **fields: Any) -> AskedCheck:
    """Check an offer with that description."""
    return check_asked(asked, size, offer(description=text, **fields), quantity)


def test_an_offer_that_says_what_is_asked_passes() -> None:
    found = check(BELT, "Keilriemen B88, Aramid, ummantelt")
    assert (found.failures, found.unknowns, found.notes) == ((), (), ())


def test_a_contradiction_rejects_in_words() -> None:
    assert check(BELT, "Belt polyester wrapped").failures == ("cord: asked is aramid, the offer says 'polyester'",)
    assert check(BELT, "aramid, raw edge").failures == ("cover: asked is wrapped, the offer says 'raw edge'",)
    assert check(BELT, "non-aramid, wrapped").failures == ("cord: asked is aramid, the offer says 'not aramid'",)


def test_silence_is_a_question() -> None:
    found = check(BELT, "Belt B88 wrapped")
    assert found.failures == () and found.unknowns == ("cord not stated: ask (asked is aramid)",)
    doubtful = check(BELT, "wrapped, aramid or polyester")
    assert doubtful.failures == () and "its text says aramid and polyester" in doubtful.unknowns[0]


def test_a_size_beyond_tolerance_rejects() -> None:
    """The belt the scenario is about: 4L is 1/2 in wide, B 21/32 in (ARPM/RMA IP-20, IP-23 section tables)."""
    (words,) = check(Asked(), "Belt 4L910", size="B88").failures
    assert "different section" in words


@pytest.mark.parametrize(
    ("text", "number", "failed"),
    [
        ("Belt BX88", "X-1", True),
        ("Belt", "3VX600", True),
        ("Belt cogged", "X-1", True),
        ("Belt non-cogged", "X-1", False),
        ("Belt B88", "X-1", False),
    ],
)
def test_cogs_by_word_and_by_designation(text: str, number: str, failed: bool) -> None:
    """X after a classical or narrow section means cogged (ARPM/RMA IP-20, IP-22)."""
    assert bool(check(Asked(cogs="plain"), text, number=number).failures) == failed


def test_a_side_is_never_read_from_a_letter() -> None:
    assert check(Asked(side="left"), "Keeper RH").failures == ("side: asked is left, the offer says 'RH'",)
    found = check(Asked(side="left"), "Keeper", number="NW-31207R")
    assert found.failures == () and "ends with R, which may mean a side" in found.unknowns[0]


@pytest.mark.parametrize(
    ("text", "failed", "unknown"),
    [
        ("Belts, set of 2, matched", "", ""),
        ("each, not matched", "loose pieces do not make a matched set", ""),
        ("loose belt", "loose pieces do not make a matched set", ""),
        ("matched set of 3", "offered is a matched set of 3", ""),
        ("set of 2", "", "matched not stated: ask"),
        ("matched set", "", "how many belts the set holds is not stated: ask"),
        ("belts", "", "matched set of 2 not stated: ask; the price is taken for one matched set"),
        ("belt kit", "the offer says 'kit'", ""),
    ],
)
def test_a_matched_set(text: str, failed: str, unknown: str) -> None:
    """Loose belts are none, even if cheaper (common practice, no source)."""
    found = check(SET, text)
    assert failed in "".join(found.failures) and bool(found.failures) == bool(failed)
    assert unknown in "".join(found.unknowns) and bool(found.unknowns) == bool(unknown)


@pytest.mark.parametrize(
    ("asked", "text", "quantity", "pack", "needed", "note"),
    [
        (Asked(sold_as="each"), "Keeper, pair", 1, 1, 1, "offered as a pair: 1 piece left over"),
        (Asked(sold_as="each"), "Keeper, pair", 2, 1, 1, ""),
        (Asked(sold_as="each"), "Keeper, pair", 3, 1, 2, "offered as a pair: 1 piece left over"),
        (Asked(sold_as="each"), "Keeper, pair", 3, 2, 3, ""),
        (Asked(sold_as="pair"), "Keeper, each", 1, 1, 2, "2 loose pieces make the pair"),
        (Asked(sold_as="pair"), "Keeper, pair", 1, 1, 1, ""),
        (Asked(sold_as="pair"), "Keeper", 1, 2, 2, ""),
        (SET, "matched set of 2", 1, 1, 1, ""),
        (SET, "matched set of 2", 1, 2, 2, ""),
        (Asked(), "Keeper, pair", 2, 1, 2, ""),
    ],
)
def test_how_much_is_ordered(asked: Asked, text: str, quantity: int, pack: int, needed: int, note: str) -> None:
    """In the offer's own unit: a pack of two counted by the piece is two."""
    found = check(asked, text, quantity, pack=pack)
    assert (found.needed, "".join(found.notes)) == (needed, note)


def test_a_kit_is_not_the_part_and_the_part_no_kit() -> None:
    assert check(Asked(sold_as="each"), "Seal kit").failures
    assert check(Asked(sold_as="kit"), "Seal, each").failures
    assert check(Asked(sold_as="kit"), "Seal kit").failures == ()


def test_the_nearer_word_holds_and_both_are_said() -> None:
    asked, conflicts = merged(
        ("the job's line", Asked(cord="Aramid")),
        ("our part", Asked(cord="aramide", cover="raw edge")),
        ("the machine list", Asked(cover="wrapped")),
    )
    assert (asked.cord, asked.cover) == ("Aramid", "raw edge")
    assert conflicts == (
        "our part asks for cover raw edge, the machine list for wrapped; the first holds until one is mended",
    )


def test_an_asked_word_no_list_knows_is_found_or_asked() -> None:
    """Nothing is rejected on a word that nobody can read."""
    asked = Asked(cord="braided hemp")
    assert check(asked, "Belt, Braided Hemp cord").unknowns == ()
    found = check(asked, "Belt, polyester")
    assert found.failures == () and found.unknowns == ("cord not stated: ask (asked is braided hemp)",)


@pytest.mark.parametrize("text", ["Shear pin 10/pk", "Scherstift VE 10", "Shear pin x10", "Scherstift, 10er"])
def test_a_count_in_the_words_is_a_question_where_one_piece_is_asked(text: str) -> None:
    """Nobody knows whether the price is for one or for ten, unless the sheet's own pack says so."""
    each = Asked(sold_as="each")
    assert "counts 10" in check(each, text).unknowns[0]
    assert check(each, text, pack=10).unknowns == ()
    assert check(each, "Shear pin M8x10").unknowns == () == check(Asked(), text).unknowns
