"""Numbers with units, compared as numbers. Reference for the factors: pint."""

from fractions import Fraction

import pint
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from sourcing.matching.likeness.measures import UNITS, apart, measures, number, significant

REGISTRY: pint.UnitRegistry[Fraction] = pint.UnitRegistry(non_int_type=Fraction)
OWN_UNIT = {"length": "millimeter", "weight": "gram", "volume": "milliliter", "power": "watt", "frequency": "hertz"}
NAMES = {
    "in": "inch", "ft": "foot", "yd": "yard", "mm": "millimeter", "cm": "centimeter", "m": "meter", "oz": "ounce",
    "lb": "pound", "g": "gram", "kg": "kilogram", "ml": "milliliter", "l": "liter", "fl oz": "fluid_ounce",
    "pt": "pint",
    "qt": "quart", "gal": "gallon", "w": "watt", "kw": "kilowatt", "hz": "hertz", "khz": "kilohertz",
    "mhz": "megahertz", "ghz": "gigahertz", "cu ft": "cubic_foot",
}  # fmt: skip


@pytest.mark.parametrize("short", NAMES)
def test_factors_are_those_of_pint(short: str) -> None:
    """Every factor that is a conversion, against pint's registry."""
    kind, factor = UNITS[short]
    reference = REGISTRY.Quantity(1, NAMES[short]).to(OWN_UNIT[kind]).magnitude
    assert float(factor) == pytest.approx(float(reference), rel=1e-9)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("belt 1/2 in", "belt 12.7 mm"),
        ("belt 91-1/2 inch", 'belt 91.5"'),
        ("can 1 gal", "can 4 qt"),
        ("pack of 12", "12 pk"),
        ("6/pk", "6-pack"),
        ("shear pin x10", "shear pin 10er"),
        ("belt 38 x 1/2", "belt 1/2 x 38"),
        ("12T sprocket", "sprocket 12 tooth"),
        ("drive 8 GB", "drive 8gb"),
        ("fridge 18 cu. ft.", "fridge 18 cubic feet"),
    ],
)
def test_one_measure_in_two_writings(one: str, other: str) -> None:
    """The same amount, however it is written."""
    assert measures(one.lower())[0] == measures(other.lower())[0] != frozenset()


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("88 in", "88.25 in"),
        ("12 v", "24 v"),
        ("pack of 2", "pack of 3"),
        ("5/8x3/4x1", "5/8x3/4x2"),
        ("bush 10x12", "bush 12x10"),
    ],
)
def test_two_measures_stay_two(one: str, other: str) -> None:
    """A quarter inch in 88 counts; so does a count."""
    assert measures(one)[0] != measures(other)[0]


def test_one_unit_for_all_numbers() -> None:
    """'5/8 x 91 in' are two lengths in inches, '17 x 40 x 12 mm' three."""
    assert measures("5/8 x 91 in")[0] == {("length", "15.88"), ("length", "2311")}
    assert {amount for _, amount in measures("17x40x12mm")[0]} == {"17", "40", "12"}


@pytest.mark.parametrize("text", ["starter 12/24 v", "starter 12/5 v", "oil 10w-30", "belt 5v-850", "belt 4l-880"])
def test_what_only_looks_measured(text: str) -> None:
    """Two voltages, a grade of oil, a belt's number."""
    assert measures(text)[0] == frozenset()


@pytest.mark.parametrize("text", ["nw-40388", "dsc-w90/b", "a88", "6203-2rs", "12v5a8", "m8x20x", "1/0 in"])
def test_part_numbers_are_no_measures(text: str) -> None:
    """What looks like a code is left to be one, and a fraction of nothing is no number."""
    assert measures(text) == (frozenset(), text)


def test_numbers_as_people_write_them() -> None:
    """Fractions, thousands, decimal commas."""
    assert [number(text) for text in ("91-1/2", "1,250", "12,5", ".5", "1/0")] == [
        Fraction(183, 2), 1250, Fraction(25, 2), Fraction(1, 2), None,
    ]  # fmt: skip
    assert significant(Fraction(22352, 10)) == "2235"


def differ(one: str, other: str) -> bool:
    """Whether the lengths of two texts contradict."""
    left, right = apart(measures(one)[0], measures(other)[0], "length")
    assert (right, left) == apart(measures(other)[0], measures(one)[0], "length")
    return bool(left and right)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("blade 53 cm", "blade 21 in"),
        ("blade 53 cm", "blade 533 mm"),
        ("blade 53 cm", "blade 530 mm"),
        ("blade 533 mm", 'blade 21"'),
        ("hose 1.8 m", "hose 6 ft"),
        ("line 15.2 m", "line 50 ft"),
        ("belt 1/2 in x 38 in", "belt 12.7 x 965 mm"),
    ],
)
def test_a_length_covers_its_rounding(one: str, other: str) -> None:
    """What is the other one rounded to the place it is written to is no contradiction."""
    assert not differ(one, other)


@pytest.mark.parametrize(
    ("one", "other"),
    [
        ("blade 53 cm", "blade 54 cm"),
        ("blade 53 cm", "blade 22 in"),
        ("blade 54 cm", "blade 21 in"),
        ("blade 21 in", "blade 22 in"),
        ("blade 21 in", "blade 21.25 in"),
        ("belt 88 in", "belt 90 in"),
        ("belt 88 in", "belt 88-1/4 in"),
        ("bar 14 in", "bar 35 cm"),
        ("hose 2 m", "hose 7 ft"),
        ("bore 25 mm", "bore 1 in"),
        ("bolt 8 mm", "bolt 5/16 in"),
        ("bore 5 cm", "bore 2 in"),
        ("belt 1/2 in", "belt 13 mm"),
        ("blade 532 mm", "blade 533 mm"),
    ],
)
def test_no_rounding_makes_two_lengths_one(one: str, other: str) -> None:
    """Neither the next size, nor a bore, a thread or a width, nor a metre that stands for anything near it."""
    assert differ(one, other)


@given(st.integers(10, 400))
def test_a_whole_centimetre_meets_only_the_inches_that_round_to_it(inches: int) -> None:
    """Against the rounding of pint's conversion; four digits leave half a millimetre open at the very edge."""
    exact = REGISTRY.Quantity(Fraction(inches), "inch").to("centimeter").magnitude
    nearest = int(exact + Fraction(1, 2))
    assume(abs(exact - nearest) < Fraction(45, 100))
    assert not differ(f"{inches} in", f"{nearest} cm")
    assert differ(f"{inches} in", f"{nearest + 1} cm") and differ(f"{inches} in", f"{nearest - 1} cm")
