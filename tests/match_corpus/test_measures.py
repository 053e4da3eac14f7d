"""Sizes are written true: another form is the same size."""

from fractions import Fraction

import pytest

from tests.match_corpus.chance import Chance
from tests.match_corpus.measures import BEARINGS, Habit, Measure, amount_text, written

AS_IT_COMES = Habit(form=0, fraction="-", converts=0.0, steady=0.0)
CONVERTED = Habit(form=0, fraction="-", converts=1.0, steady=0.0)


def _ways(measure: Measure, habit: Habit) -> set[str]:
    chance = Chance("ways")
    return {written(measure, habit, chance) for _ in range(200)}


@pytest.mark.parametrize(
    ("amount", "sign", "text"),
    [
        ("3/2", "-", "1-1/2"),
        ("3/2", " ", "1 1/2"),
        ("3/2", ".", "1.5"),
        ("1/2", "-", "1/2"),
        ("7", "-", "7"),
        ("2.4", "-", "2.4"),
    ],
)
def test_amounts(amount: str, sign: str, text: str) -> None:
    """Fractions of the inch as fractions, others as decimals."""
    assert amount_text(Fraction(amount), sign) == text


def test_belts_are_written_by_designation_or_by_plain_outside_size() -> None:
    """A88 is 90 in outside by the trade's rule, as 4L900 is (a distributor's section table); 5L910 is 91 in."""
    assert {"A88", "A-88", '1/2" x 90" A', "1/2 X 90"} == _ways(Measure("A88", "belt"), AS_IT_COMES)
    assert "1/2 X 90" in _ways(Measure("4L900", "belt"), AS_IT_COMES)
    assert "5/8 X 91" in _ways(Measure("5L910", "belt"), AS_IT_COMES) & _ways(Measure("B88", "belt"), AS_IT_COMES)


def test_bearings_carry_the_boundary_dimensions_of_iso_15() -> None:
    """6203: 17 x 40 x 12 mm; the bore is five times the last two digits from 04 on (ISO 15)."""
    assert BEARINGS["6203"] == "17x40x12"
    assert BEARINGS["6205"] == "25x52x15"
    for number, size in BEARINGS.items():
        if len(number) == 4 and int(number[2:]) >= 4:
            assert int(size.split("x")[0]) == 5 * int(number[2:])


def test_converted_lengths_are_the_same_length() -> None:
    """2 in = 50.8 mm = 5.1 cm rounded (1 in = 25.4 mm exactly, NIST SP 811)."""
    ways = _ways(Measure("2", "in"), CONVERTED)
    assert ways == {"50.8 mm", "50.8mm", "50.8-mm", "5.1 cm", "5.1cm"}
