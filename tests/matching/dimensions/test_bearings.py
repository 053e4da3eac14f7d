"""Rolling bearings: numbers, bores, suffixes, and what two of them have in common.

Sources: ISO = ISO 15 / DIN 625-1 as an open-source table prints it; RULES = bearing makers' and distributors' pages on
numbers and suffixes; MEMORY.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.rolling_bearings import BOUNDARY, bore_of
from sourcing.matching.dimensions.size import BearingSize
from sourcing.matching.dimensions.size_check import check_size

ISO = """607 7 19 6, 608 8 22 7, 609 9 24 7, 623 3 10 4, 624 4 13 5, 625 5 16 5, 626 6 19 6, 6000 10 26 8, 6001 12 28 8,
6002 15 32 9, 6003 17 35 10, 6006 30 55 13, 6200 10 30 9, 6203 17 40 12, 6204 20 47 14, 6205 25 52 15, 6206 30 62 16,
6300 10 35 11, 6301 12 37 12, 6302 15 42 13, 6303 17 47 14, 6304 20 52 15"""


def bearing(text: str, certain: bool = False) -> BearingSize:
    """The bearing a text speaks of."""
    size = read_size(text, certain)
    assert isinstance(size, BearingSize), text
    return size


@pytest.mark.parametrize("row", ISO.replace("\n", " ").split(", "))
def test_boundary_dimensions(row: str) -> None:
    """ISO: bore, outside, width in millimetres."""
    number, bore, outside, width = row.split()
    size = bearing(f"Bearing {number}")
    assert (size.bore, size.outside, size.width) == (Decimal(bore), Decimal(outside), Decimal(width))


@pytest.mark.parametrize(
    ("number", "bore"),
    [("6000", 10), ("6201", 12), ("6302", 15), ("6203", 17), ("6204", 20), ("6310", 50), ("6296", 480), ("608", 8),
     ("629", 9), ("62/22", 22), ("63/28", 28)],
)  # fmt: skip
def test_bore_by_the_number(number: str, bore: int) -> None:
    """RULES: 00 01 02 03 = 10 12 15 17; 04 to 96 times 5; three digits: the last; after a slash: itself."""
    assert bore_of(number) == bore


def test_the_table_keeps_the_rule_of_bores() -> None:
    """Every row, those from memory too."""
    assert all(bore_of(number) == figures[0] for number, figures in BOUNDARY.items())


@pytest.mark.parametrize(
    ("text", "closure", "clearance", "ring"),
    [
        ("6203-2RS C3", "two rubber seals", "C3", ""),
        ("6203 2RS/C3", "two rubber seals", "C3", ""),
        ("6203-2RSR", "two rubber seals", "", ""),
        ("6203ZZC3", "two metal shields", "C3", ""),
        ("608ZZ", "two metal shields", "", ""),
        ("608ZZ x 10 pcs", "two metal shields", "", ""),
        ("608-2Z", "two metal shields", "", ""),
        ("6205-2RS-NR", "two rubber seals", "", "snap-ring groove with ring"),
        ("bearing 6203-RS", "one rubber seal", "", ""),
        ("bearing 6203Z", "one metal shield", "", ""),
        ("6203LLB", "two non-contact seals", "", ""),  # MEMORY
        ("6203DDU", "two rubber seals", "", ""),  # MEMORY
        ("rodamiento 6203 CN", "", "", ""),
        ("Kugellager 6203 C3", "", "C3", ""),
    ],
)
def test_suffixes(text: str, closure: str, clearance: str, ring: str) -> None:
    """RULES: makers' habit, not part of ISO 15. CN is normal clearance."""
    size = bearing(text)
    assert (size.closure, size.clearance, size.ring) == (closure, clearance, ring)


@pytest.mark.parametrize("text", ["bearing 6203-5/8", "6203-2RS-5/8", "roulement 6203 2RS 5/8", "6203-5/8-2RS bearing"])
def test_an_inch_bore_in_a_metric_bearing(text: str) -> None:
    """MEMORY: common on mower spindles; outside and width of the 6203, bore 15.875 mm."""
    size = bearing(text)
    assert (size.basic, size.bore, size.outside) == ("6203", Decimal("15.875"), Decimal(40))


def test_6203_10_stays_in_doubt() -> None:
    """10/16 in, or a maker's own suffix: never taken as either, and a person looks."""
    assert "10/16 (0.625 in)" in bearing("bearing 6203-10").doubt
    assert "10/16 (0.625 in)" in bearing("6203-10-2RS").doubt
    check = check_size("6203-2RS", "bearing 6203-10")
    assert check.verdict == "cannot be compared" and check.vetoes


@pytest.mark.parametrize(
    ("asked", "offered", "verdict", "said"),
    [
        ("6203-2RS", "Bearing, ball, 6203-2RS", "same size", "two rubber seals"),
        ("6203-2RS", "6203DDU", "same size", "17 x 40 x 12 mm"),
        ("6203-2RS", "bearing 6203", "same size", "said on one side only (two rubber seals)"),
        ("6203-2RS", "6203-ZZ", "other duty", "two rubber seals asked, two metal shields offered"),
        ("6203-2RS", "6203-2RS C3", "other duty", "C3 offered"),
        ("6203-2RS C3", "6203-2RS", "other duty", "C3 asked"),
        ("6203-2RS", "6203-2RSNR", "different", "snap ring"),
        ("6203-2RS", "6203-2RS-5/8", "different", "1.125 mm apart"),
        ("6203-2RS", "6204-2RS", "different", "20 x 47 x 14 mm"),
        ("6203-2RS", "6303-2RS", "different", "17 x 47 x 14 mm"),
        ("608", "608ZZ", "same size", "said on one side only"),
        ("6203-2RS", "6203-2RS-XQ4", "cannot be compared", "'XQ4' is not known"),
        ("6203-2RS", "bearing", "cannot be compared", ""),
    ],
)
def test_bearings_compared(asked: str, offered: str, verdict: str, said: str) -> None:
    """Same number, same seat; what the suffix changes is never silent."""
    check = check_size(asked, offered)
    assert check.verdict == verdict and said in check.words
    assert check.vetoes == (verdict in ("different", "other duty") or "XQ4" in offered)
