"""A near number says little where numbers are short and many, and the score knows it."""

import random

import numpy as np

from sourcing.matching.likeness.compared import RESPECTS, compare
from sourcing.matching.likeness.crowding import Crowding, crowding
from sourcing.matching.likeness.first_points import FIRST_POINTS, LEADS_BESIDE
from sourcing.matching.likeness.reasons import reasons
from sourcing.matching.likeness.said import Said, said
from sourcing.matching.numbers.near_numbers import NearNumbers

LEVELS = RESPECTS["number"]


def of(keys: list[str], parts: list[str]) -> Crowding:
    """The crowding of parts as seen from a sheet of these keys."""
    return crowding(keys, parts, NearNumbers(parts))


def level(row: Said, part: Said, crowd: Crowding) -> str:
    """The level of 'number' in words."""
    pair = (np.array([0]), np.array([0]))
    return LEVELS[int(compare([row], [part], pair, np.array([0.5]), crowd).levels[0, 0])]


def test_of_thousands_of_short_numbers_a_near_one_tells_nothing() -> None:
    """5,000 numbers of five figures crowd; the same number of mixed ones does not."""
    dice = random.Random(3)
    figures = sorted({str(dice.randrange(10_000, 100_000)) for _ in range(5_000)})
    mixed = sorted({f"NW{dice.randrange(10**7):07d}" for _ in range(5_000)})
    assert not of(["12345"], [*figures, "12346"]).telling("12345")
    assert of(["NW1234567"], [*mixed, "NW1234568"]).telling("NW1234567")


def test_the_level_and_its_words_say_so() -> None:
    """Near among many is a level of its own, worth less than a near number that tells something."""
    figures = [str(key) for key in range(10_000, 20_000, 3)]
    row, part = said(["12345"], [], "shear bolt"), said(["12348"], [], "shear bolt")
    crowd = of(["12345"], figures)
    assert level(row, part, crowd) == "near among many"
    facts = [0] * (len(RESPECTS) + 2)
    facts[0] = LEVELS.index("near among many")
    assert "by chance" in reasons(row, part, facts)[0]
    alone = of(["NW1234567"], ["NW1234568"])
    assert level(said(["NW1234567"], [], "bolt"), said(["NW1234568"], [], "bolt"), alone) == "near number"
    for points in (FIRST_POINTS, LEADS_BESIDE):
        assert points["number"][LEVELS.index("near among many")] <= points["number"][LEVELS.index("near number")]


def test_a_look_alike_is_near_however_crowded_the_numbers_are() -> None:
    """O for 0 is no chance: no number has an O there of its own."""
    figures = [str(key) for key in range(10_000, 20_000, 3)]
    crowd = of(["1O345"], figures)
    assert level(said(["1O345"], [], "shear bolt"), said(["10345"], [], "shear bolt"), crowd) == "near number"
