"""A part that is a set by its name is never served by one loose piece unseen."""

import pytest

from sourcing.basics.asked import Asked
from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.part_number import OURS
from sourcing.basics.value import changed
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families
from sourcing.matching.offer_match import Known, OfferMatch, match_offer
from sourcing.matching.sets_of import pieces_of, set_said
from tests.builders import number, offer, statement

PADDLES = OurPart(code="PADDLES", name="Auger paddles, set of two")


@pytest.mark.parametrize(
    ("words", "against"),
    [
        ("Auger paddle, each", "sold by the piece ('each'), where ours is a set of 2: 2 are needed for one"),
        ("Auger paddle (order 2)", "sold by the piece ('order 2'), where ours is a set of 2"),
        ("Auger paddle, order two", "sold by the piece ('order two')"),
        ("Auger paddles, set of 4", "holds 4, where ours is a set of 2"),
        ("Paddel Satz 2 Stück", ""),
        ("Paddles, pair", ""),
        ("Paddle set (2 pcs)", ""),
        ("Paddles 2 pcs", ""),
        ("jeu de 2 palettes", ""),
    ],
)
def test_single_pieces_and_other_counts_speak_against(words: str, against: str) -> None:
    """What is a set of two in any language does not, and asks nothing."""
    found = set_said(offer(description=words), PADDLES)
    assert found.against.startswith(against) and bool(found.against) is bool(against)
    assert found.warning == ""


@pytest.mark.parametrize("words", ["Auger paddle", "Auger paddles", "Paddle kit", ""])
def test_an_offer_that_does_not_say_is_a_question(words: str) -> None:
    found = set_said(offer(description=words), PADDLES)
    assert found.against == "" and "ask whether its price is for one piece or for all 2" in found.warning


def test_a_pack_of_as_many_says_it() -> None:
    assert set_said(offer(description="Auger paddle", pack=2), PADDLES).warning == ""


def test_where_somebody_said_how_it_is_sold_that_is_compared_instead() -> None:
    asked = changed(PADDLES, asked=Asked(sold_as="pair"))
    assert set_said(offer(description="Auger paddle, each"), asked) == ("", "")


@pytest.mark.parametrize("name", ["Auger paddle", "Seal kit", "Gasket set", "Set screw 5/16", "Auger paddles"])
def test_a_name_without_a_count_is_no_set(name: str) -> None:
    assert pieces_of(name) == 0


def test_a_least_quantity_is_no_single_piece() -> None:
    """'min order 2' says how many are sold at once, not that one is sold by the piece: it asks."""
    assert set_said(offer(description="Auger paddles, set of 2, min order 2"), PADDLES) == ("", "")
    found = set_said(offer(description="Auger paddles, min order 2"), PADDLES)
    assert found.against == "" and found.warning


def paddles(words: str) -> OfferMatch:
    """An offer under the paddles' own number."""
    said = (statement(number("PADDLES", OURS), "same part", number("0731-7780", "Norrowby"), "maker"),)
    every = families(EquivalenceTable(parts=(PADDLES,), statements=said))
    row = offer(number="0731-7780", maker="Norrowby", description=words)
    return match_offer(row, every["PADDLES"], Known(bearers(every.values())))


def test_a_loose_piece_under_the_right_number_waits_for_a_person() -> None:
    assert paddles("Auger paddle, each").tier == "candidate" and paddles("Auger paddle, each").vetoed
    assert paddles("Auger paddles set of two").tier == "automatic"
    silent = paddles("Auger paddle")
    assert silent.tier == "automatic" and "ours is a set of 2" in silent.warnings[0]
