"""Belt length over two pulleys. Source of the formulas: Machinery's Handbook, from memory; here checked otherwise."""

import math
from decimal import Decimal
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some

from sourcing.basics.problem import Refused
from sourcing.matching.dimensions.arcs import arcsine
from sourcing.matching.dimensions.two_pulleys import belt_length, centre_distance, pulleys

METRES = some.decimals(min_value=1, max_value=1000, places=2)


def arc(middle: float, radius: float, start: float, end: float) -> list[tuple[float, float]]:
    """20,001 points round a pulley whose middle lies on the line of centres."""
    angles = [start + (end - start) * step / 20_000 for step in range(20_001)]
    return [(middle + radius * math.cos(angle), radius * math.sin(angle)) for angle in angles]


def walked(larger: float, smaller: float, centre: float, crossed: bool) -> float:
    """The belt's path walked point by point: no formula for its length is used, only where it leaves the pulleys."""
    tilt = math.acos((larger + smaller if crossed else larger - smaller) / 2 / centre)
    turn = math.pi - tilt if crossed else tilt
    first = arc(0, larger / 2, tilt, 2 * math.pi - tilt)
    second = arc(centre, smaller / 2, -turn, turn)
    if not crossed:
        second.reverse()
    straight = math.dist(first[0], second[0]) + math.dist(first[-1], second[-1])
    return straight + sum(math.dist(*pair) for points in (first, second) for pair in pairwise(points))


@pytest.mark.parametrize("crossed", [False, True])
@pytest.mark.parametrize(("larger", "smaller", "centre"), [(10, 4, 20), (12, 3, 8), (6, 6, 15), (30, 2, 17)])
def test_the_exact_formula_against_the_path_itself(larger: int, smaller: int, centre: int, crossed: bool) -> None:
    """To a ten-thousandth of the unit."""
    drive = pulleys(Decimal(larger), Decimal(smaller), "in", "outside", crossed)
    exact = belt_length(drive, Decimal(centre)).length
    assert math.isclose(exact, walked(larger, smaller, centre, crossed), abs_tol=1e-4)


def test_a_worked_example_by_hand() -> None:
    """10 and 4 in, 20 in apart: 40 + 21.9911 + 36/80 = 62.4411; exact 62.4420."""
    belt = belt_length(pulleys(Decimal(4), Decimal(10), "in", "datum"), Decimal(20))
    assert belt.near_length.quantize(Decimal("0.0001")) == Decimal("62.4411")
    assert belt.length.quantize(Decimal("0.0001")) == Decimal("62.4420")
    assert "2 x 20.00 + pi x (10 + 4)/2 + (10 - 4)^2/(4 x 20.00) = 62.44 in; exact 62.44 in" in belt.words
    assert "datum length" in belt.words


def test_equal_pulleys_need_no_approximation() -> None:
    """Two straight runs and one whole pulley round."""
    belt = belt_length(pulleys(Decimal(100), Decimal(100), "mm", "outside"), Decimal(300))
    assert belt.length == belt.near_length
    assert belt.length.quantize(Decimal("0.001")) == Decimal("914.159")
    assert "914.2 mm" in belt.words and "outside length" in belt.words


@given(METRES, METRES, METRES, some.booleans())
def test_back_from_the_length_to_the_centre_distance(one: Decimal, other: Decimal, gap: Decimal, crossed: bool) -> None:
    """The way there and back ends where it began, to a thousandth."""
    drive = pulleys(one, other, "mm", "datum", crossed)
    centre = (one + other) / 2 + gap
    back = centre_distance(drive, belt_length(drive, centre).length)
    assert abs(back.centre - centre) < Decimal("0.001")


@given(METRES, METRES, METRES)
def test_a_crossed_belt_is_longer_and_more_distance_lengthens(one: Decimal, other: Decimal, gap: Decimal) -> None:
    """And the near-enough formula of the open belt never says more than the exact one."""
    drive, centre = pulleys(one, other, "mm", "datum"), (one + other) / 2 + gap
    open_belt = belt_length(drive, centre)
    assert belt_length(pulleys(one, other, "mm", "datum", True), centre).length > open_belt.length
    assert belt_length(drive, centre + 1).length > open_belt.length
    assert open_belt.near_length <= open_belt.length + Decimal("1e-20")


@given(some.decimals(min_value=0, max_value=1, places=6))
def test_arcsine_against_the_standard_library(sine: Decimal) -> None:
    """math.asin, to its own precision."""
    assert math.isclose(arcsine(sine), math.asin(sine), abs_tol=1e-12)


def test_what_cannot_be_built_is_refused() -> None:
    """Overlapping pulleys, a belt too short, a figure that is no size."""
    drive = pulleys(Decimal(10), Decimal(4), "in", "datum")
    assert belt_length(drive, Decimal(7)).length > 0
    for act, code in (
        (lambda: belt_length(drive, Decimal("6.9")), "pulleys-overlap"),
        (lambda: centre_distance(drive, Decimal(30)), "belt-too-short"),
        (lambda: pulleys(Decimal(0), Decimal(4), "in", "datum"), "pulley-not-positive"),
        (lambda: belt_length(drive, Decimal("NaN")), "pulley-not-positive"),
        (lambda: centre_distance(drive, Decimal(-1)), "pulley-not-positive"),
    ):
        with pytest.raises(Refused) as refusal:
            act()
        assert refusal.value.problems[0].code == code
