"""Whether a row that names no maker is about the part: spellings meet, and what is told is true."""

import pytest

from sourcing.basics.equivalence import EquivalenceTable, OurPart
from sourcing.basics.part_number import OURS
from sourcing.matching.equivalences.family import bearers
from sourcing.matching.equivalences.graph import families
from sourcing.matching.offer_match import Known, match_offer
from sourcing.matching.plain_words import plain_words
from tests.builders import number, offer, statement


def reasons(ours: str, offered: str) -> tuple[str, ...]:
    """Why a row under the part's number that names no maker waits for a person."""
    said = (statement(number("PART", OURS), "same part", number("0725-1200", "Norrowby"), "maker"),)
    every = families(EquivalenceTable(parts=(OurPart(code="PART", name=ours),), statements=said))
    found = match_offer(offer(number="0725-1200", description=offered), every["PART"], Known(bearers(every.values())))
    return found.reasons if found.tier == "candidate" else ()


@pytest.mark.parametrize(
    ("ours", "offered"),
    [
        ("Carburetor, 208 cc engine", "Carburettor 208cc complete"),
        ("Auger paddles, set of two", "Paddle set (2 pcs)"),
        ("Skid shoes", "Skid shoe"),
    ],
)
def test_the_same_thing_in_another_spelling_is_no_doubt(ours: str, offered: str) -> None:
    assert reasons(ours, offered) == ()


def test_what_is_told_of_the_words_is_true() -> None:
    """One word in common is 'in part'; 'hardly' is none at all."""
    assert reasons("Wheel drive belt", "Deck belt wide") == (
        "the row names no maker, and 'Deck belt wide' is only in part about 'Wheel drive belt'",
    )
    assert reasons("Wheel drive belt", "Thing of rubber") == (
        "the row names no maker, and 'Thing of rubber' is hardly about 'Wheel drive belt'",
    )


def test_plural_accents_and_doubled_letters_are_set_aside() -> None:
    assert plain_words("Carburettors") == plain_words("carburetor")
    assert plain_words("Brass bushings") == plain_words("brass bushing") != plain_words("bra bushing")
