"""Lengths and dimensions of packages in centimetres, exact; whatever leaves the unit open stays blank.

An inch is 2.54 cm and a foot 30.48 cm exactly: NIST Handbook 44, appendix C. pint's registry holds the same.
"""

from decimal import Decimal

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.dimension_cells import parse_dimensions
from sourcing.sheets.cells.length_cells import IN_CENTIMETRES, length_unit_in, parse_lengths

UNITS: pint.UnitRegistry[Decimal] = pint.UnitRegistry(non_int_type=Decimal)


@pytest.mark.parametrize(
    ("text", "header", "centimetres"),
    [
        ("12", "Pkg length (in)", "30.48"), ('12"', "Length", "30.48"), ("12 in.", "", "30.48"),
        ("12\u201d", "", "30.48"),
        ("12 inches", "", "30.48"), ("12-1/2", "Ship length in", "31.75"), ('12 1/2"', "", "31.75"),
        ("3/8 in", "", "0.9525"),
        ("1/64 in", "", "0.0396875"), ("3 ft", "", "91.44"), ("3'", "", "91.44"), ("5' 6\"", "", "167.64"),
        ("5 ft 6 in", "", "167.64"), ("5'6\"", "", "167.64"), ("300 mm", "", "30"), ("300", "Länge in mm", "30"),
        ("0.3 m", "", "30"),
        ("30 cm", "Length (in)", "30"), ("30,5", "Packlänge cm", "30.5"), ("12 Zoll", "", "30.48"),
        ("12 pouces", "", "30.48"),
        ("12 pulgadas", "", "30.48"), ("1.200,5 mm", "", "120.05"),
    ],
)  # fmt: skip
def test_a_length(text: str, header: str, centimetres: str) -> None:
    assert parse_lengths([text], header) == [Decimal(centimetres)]


def test_number_cells_need_no_decimal_mark_and_a_column_shows_its_own() -> None:
    assert parse_lengths([Decimal("1.234"), Decimal(0)], "Pkg length cm") == [Decimal("1.234"), None]
    assert parse_lengths(["1,234", "0,5"], "Packlänge cm") == [Decimal("1.234"), Decimal("0.5")]


@pytest.mark.parametrize(
    ("text", "header", "code"),
    [
        ("12", "Pkg length", "length-unit-unknown"), ("12", "Pkg length cm/in", "length-unit-unknown"),
        ("12", "length in package", "length-unit-unknown"), ("1,234", "Pkg length cm", "length-unclear"),
        ("-3 cm", "", "length-unreadable"), ("long", "Pkg length cm", "length-unreadable"),
        ("1/3 in", "", "length-unreadable"),
        ("12 x 8 in", "", "length-unreadable"), ("12 kg", "", "length-unreadable"),
        ("1.2.3 cm", "", "length-unreadable"),
        ("5' 6", "", "length-unreadable"), ("12\u00b2 cm", "", "length-unreadable"),
    ],
)  # fmt: skip
def test_a_length_that_is_none(text: str, header: str, code: str) -> None:
    (found,) = parse_lengths([text], header)
    assert isinstance(found, Bad) and found.code == code


def test_blank_dash_and_nought_are_not_stated() -> None:
    assert parse_lengths(["", "-", "0", "0 cm", "n/a"], "Pkg length cm") == [None] * 5
    assert parse_dimensions(["", "n/a", "0 x 0 x 0"], "L x W x H cm") == [None] * 3


@pytest.mark.parametrize(
    ("header", "unit"),
    [
        ("Pkg length (in)", "in"), ("Pkg length in.", "in"), ("Länge in cm", "cm"), ("Length in inches", "in"),
        ("L x W x H [mm]", "mm"),
        ('Pkg L (")', "in"), ("Longueur colis", ""), ("Length in package", ""), ("Length (ft/in)", ""),
        ("LxBxH mm", "mm"),
    ],
)  # fmt: skip
def test_the_unit_of_a_header(header: str, unit: str) -> None:
    assert length_unit_in(header) == unit


@pytest.mark.parametrize(
    ("text", "header", "sides"),
    [
        ("30 x 20 x 4 cm", "", "30 20 4"), ("12x8x2 in", "", "30.48 20.32 5.08"), ("300*200*40 mm", "", "30 20 4"),
        ('12" x 8" x 2"', "", "30.48 20.32 5.08"), ("12 \u00d7 8 \u00d7 2", "L x W x H (in)", "30.48 20.32 5.08"),
        ("30 by 20 by 4 cm", "", "30 20 4"), ("H 4 x L 30 x W 20 cm", "", "30 20 4"),
        ('12"L x 8"W x 2"H', "", "30.48 20.32 5.08"),
        ("L: 30 cm x B: 20 cm x H: 4 cm", "", "30 20 4"), ("30,5 x 20 x 4,5", "LxBxH cm", "30.5 20 4.5"),
        ('12-1/2 x 8 x 1/2"', "", "31.75 20.32 1.27"), ("1 m x 20 cm x 40 mm", "", "100 20 4"),
        ("12 inch x 8 inch x 2 inch", "", "30.48 20.32 5.08"),
    ],
)  # fmt: skip
def test_dimensions(text: str, header: str, sides: str) -> None:
    (found,) = parse_dimensions([text], header)
    assert found == tuple(map(Decimal, sides.split()))


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("30 x 20 x 4", "length-unit-unknown"), ("30 x 20 cm", "dimensions-unreadable"),
        ("30 cm x 20 x 4", "dimensions-unreadable"),
        ("30 x 20 x 4 x 2 cm", "dimensions-unreadable"), ("box", "dimensions-unreadable"),
        ("30", "dimensions-unreadable"),
        ("30 x 0 x 4 cm", "dimensions-unreadable"), ("L 30 x 20 x 4 cm", "dimensions-unreadable"),
        ("L 30 x L 20 x H 4 cm", "dimensions-unreadable"), ("1,234 x 20 x 4 cm", "length-unclear"),
        ("A x B x C", "dimensions-unreadable"),
        ("17 x 40 x 12 kg", "dimensions-unreadable"),
    ],
)  # fmt: skip
def test_dimensions_that_are_none(text: str, code: str) -> None:
    (found,) = parse_dimensions([text], "Pkg dims")
    assert isinstance(found, Bad) and found.code == code


@pytest.mark.parametrize("unit", IN_CENTIMETRES)
@given(number=st.decimals("0.001", 9999, places=3))
def test_the_conversions_are_those_of_pint(unit: str, number: Decimal) -> None:
    """pint, an outside library of units, reckoning with decimals."""
    (found,) = parse_lengths([number], f"Pkg length ({unit})")
    assert found == UNITS.Quantity(number, {"in": "inch", "ft": "foot"}.get(unit, unit)).to("cm").magnitude
