"""V-belt designations against published tables.

Sources, beside each figure: MH31 = Machinery's Handbook, 31st edition, page 2575, table 8 (ANSI/RMA IP-20, 1988); REF =
an engineering reference page reprinting IP-20's lengths; TRADE = belt makers' and distributors' published section
tables and worked designations (after ARPM/RMA IP-20 and IP-23); MEMORY = not read, from memory.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.size_check import check_size
from sourcing.matching.dimensions.v_belts import SECTIONS, read_belt, tolerance

PUBLISHED = [  # designation, section, width, inside, outside, source
    ("A30", "A", "0.5", "30", "32", "TRADE, published example"),
    ("A44", "A", "0.5", "44", "46", "TRADE, published example, equal to 4L460"),
    ("A88", "A", "0.5", "88", "90", "TRADE, published example"),
    ("B30", "B", "0.65625", "30", "33", "TRADE, published example, equal to 5L330"),
    ("B88", "B", "0.65625", "88", "91", "TRADE, published example"),
    ("BX50", "BX", "0.65625", "50", "53", "TRADE, published example"),
    ("4L460", "4L", "0.5", "44", "46", "TRADE, published example"),
    ("5L330", "5L", "0.65625", "30", "33", "TRADE, published example"),
    ("4L375", "4L", "0.5", "35.5", "37.5", "MEMORY: the last digit is tenths"),
]


@pytest.mark.parametrize(("text", "section", "width", "inside", "outside", "source"), PUBLISHED)
def test_designations_read_as_published(
    text: str, section: str, width: str, inside: str, outside: str, source: str
) -> None:
    """Section, top width, inside and outside length in inches."""
    size = read_belt(f"BELT {text} WRAPPED")
    assert size is not None, source
    assert (size.section.name, size.section.top_width) == (section, Decimal(width))
    assert (size.inside, size.outside) == (Decimal(inside), Decimal(outside))


@pytest.mark.parametrize(("name", "thickness"), [("A", "0.3125"), ("B", "0.40625"), ("4L", "0.3125"), ("5L", "0.375")])
def test_thickness_as_published(name: str, thickness: str) -> None:
    """TRADE: A 1/2 x 5/16, B 21/32 x 13/32, 4L 1/2 x 5/16, 5L 21/32 x 3/8 in."""
    assert SECTIONS[name].thickness == Decimal(thickness)


@pytest.mark.parametrize(
    ("number", "plus_minus"),
    # MH31 and REF; at 38 MH31 prints 0.6 and REF 0.7: the wider is kept.
    [
        *[(26, "0.6"), (35, "0.6"), (38, "0.7"), (42, "0.7"), (85, "0.7"), (90, "0.8"), (144, "0.8")],
        *[(158, "1.0"), (180, "1.0"), (195, "1.1"), (210, "1.1"), (240, "1.3")],
    ],
)
def test_length_tolerance_as_printed(number: int, plus_minus: str) -> None:
    """IP-20's plus-minus by length number."""
    assert tolerance(Decimal(number)) == Decimal(plus_minus)


@pytest.mark.parametrize(
    "text",
    ["NW-40388", "CV-B36K", "OV 20 417", "540L10", "6203-2RS", "ORDER 12 A", "B3", "A36 or A38", "D105", "A-1200", ""],
)
def test_what_is_no_belt_designation_is_not_read_as_one(text: str) -> None:
    """A part number is not a size; two sizes in one text are none; 540L10 is V-ribbed by the handbook's pattern."""
    assert read_belt(text) is None


@pytest.mark.parametrize(
    ("asked", "offered", "verdict"),
    [
        ("B36", "B36", "same size"),
        ("B36", "Belt, auger, B36 aramid wrapped", "same size"),
        ("A44", "4L460", "other duty"),  # fits the groove; replacing A by 4L is not accepted (TRADE)
        ("4L460", "A44", "other duty"),  # accepted where the smallest sheave is about 3 in or more (TRADE)
        ("B36", "4L390", "different"),  # narrower section of the same outside length: the belt that merely fits
        ("B36", "B37", "different"),  # one inch, where IP-20 allows 0.6
        ("A88", "A89", "different"),
        ("B36", "A36", "different"),
        ("B36", "auger belt", "cannot be compared"),
        ("", "B36", "cannot be compared"),
        ("B36", "BX36", "same size"),
    ],
)
def test_sizes_compared(asked: str, offered: str, verdict: str) -> None:
    """Section first, then length within the standard's tolerance, then duty."""
    assert check_size(asked, offered).verdict == verdict


def test_the_reason_is_in_numbers() -> None:
    """The page says why in inches."""
    words = check_size("B36", "4L390 1/2 x 39").words
    assert "different section, 0.156 in in width" in words
    assert "B section, 0.656 in wide, 36 in inside, 39 in outside" in words
    assert "4L section, 0.500 in wide, 37 in inside, 39 in outside" in words


def test_duty_goes_one_way() -> None:
    """Light duty in place of classical is not accepted; the other way asks for a large enough sheave (TRADE)."""
    assert "not accepted" in check_size("B36", "5L390").words
    assert "5.4 in or more" in check_size("5L390", "B36").words
