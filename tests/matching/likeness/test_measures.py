"""Numbers with units, compared as numbers. Reference for the factors: pint."""

from fractions import Fraction

import pint
import pytest

from sourcing.matching.likeness.measures import UNITS, measures, number, significant

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
        ("12T sprocket", "sprocket 12 tooth"),
        ("drive 8 GB", "drive 8gb"),
        ("fridge 18 cu. ft.", "fridge 18 cubic feet"),
    ],
)
def test_one_measure_in_two_writings(one: str, other: str) -> None:
    """The same amount, however it is written."""
    assert measures(one.lower())[0] == measures(other.lower())[0] != frozenset()


@pytest.mark.parametrize(
    ("one", "other"), [("88 in", "88.25 in"), ("12 v", "24 v"), ("pack of 2", "pack of 3"), ("5/8x3/4x1", "5/8x3/4x2")]
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
