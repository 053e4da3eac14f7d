"""Rolling bearings: numbers, bores, suffixes, and what two of them have in common.

Sources: ISO = ISO 15 / DIN 625-1 as an open-source table prints it; RULES = bearing makers' and distributors' pages on
numbers and suffixes; MEMORY.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.iso_15 import BOUNDARY, READ
from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.rolling_bearings import bore_of
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


@pytest.mark.parametrize(
    ("text", "basic", "figures"),
    [
        ("bearing 618/8", "688", (8, None, None)),  # a maker's list: 618/8 and 619/8 have a bore of 8 mm
        ("bearing 619/8", "698", (8, None, None)),
        ("bearing 618/3", "683", (3, None, None)),
        ("bearing 61803-2RS", "6803", (17, 26, 5)),  # MEMORY
        ("bearing 61901", "6901", (12, 24, 6)),
        ("bearing 6901-2RS", "6901", (12, 24, 6)),
        ("bearing 16003", "16003", (17, 35, 8)),
        ("bearing 6403", "6403", (17, 62, 17)),
        ("bearing 63/22", "63/22", (22, 56, 16)),
        ("bearing 62201-2RS", "62201", (12, 32, 14)),
        ("bearing 63001-2RS", "63001", (12, 28, 12)),
        ("bearing 6008", "6008", (40, 68, 15)),
        ("bearing 6207", "6207", (35, 72, 17)),
        ("bearing 6210", "6210", (50, 90, 20)),
        ("bearing 6308", "6308", (40, 90, 23)),
    ],
)
def test_other_series(text: str, basic: str, figures: tuple[int, int | None, int | None]) -> None:
    """MEMORY, after ISO 15: series 18, 19, 10, 04 and the wide ones."""
    size = bearing(text)
    assert size.basic == basic
    assert [size.bore, size.outside, size.width] == [Decimal(one) if one else None for one in figures]


def test_the_table_is_of_bearings() -> None:
    """ISO 15's plan: within a bore, the series grow outside in the order 8, 9, 0, 2, 3, 4; rows read are told apart."""
    for code in ("03", "04", "05", "06", "07", "08", "09", "10"):
        outsides = [BOUNDARY[f"{series}{code}"][1] for series in ("68", "69", "60", "62", "63", "64")]
        assert outsides == sorted(outsides) and len(set(outsides)) == 6, code
    assert all(bore < outside and width < outside for bore, outside, width in BOUNDARY.values())
    assert {row.split()[0] for row in ISO.replace("\n", " ").split(", ")} == READ


@pytest.mark.parametrize(
    ("text", "bore", "outside", "width"),
    [
        ("bearing R4-2RS", "0.25", "0.625", "0.196"),
        ("R6ZZ", "0.375", "0.875", "0.28125"),
        ("R8-2RS", "0.5", "1.125", "0.3125"),
        ("R10-2RS", "0.625", "1.375", "0.34375"),
        ("R12ZZ", "0.75", "1.625", "0.4375"),
        ("R16-2RS", "1", "2", "0.5"),
        ("bearing R8", "0.5", "1.125", None),
    ],
)
def test_inch_series(text: str, bore: str, outside: str, width: str | None) -> None:
    """MEMORY, after ABMA: bore in sixteenths; the width hangs on the seals."""
    size = bearing(text)
    assert size.bore_in == Decimal(bore) and size.bore == Decimal(bore) * Decimal("25.4")
    assert size.outside == Decimal(outside) * Decimal("25.4")
    assert size.width == (Decimal(width) * Decimal("25.4") if width else None)


@pytest.mark.parametrize(
    ("text", "figures"),
    [
        ("bearing 17x40x12", ("17", "40", "12")),
        ("Lager 17 x 40 x 12 mm", ("17", "40", "12")),
        ("roulement 17mm x 40mm x 12mm", ("17", "40", "12")),
        ("bearing 1/2 x 1-1/8 x 5/16", ("12.7", "28.575", "7.9375")),
        ('bearing .500" x 1.125" x .3125"', ("12.7", "28.575", "7.9375")),
        ("rodamiento 15,875 x 34,925 x 8,73", ("15.875", "34.925", "8.73")),
    ],
)
def test_dimensions_alone(text: str, figures: tuple[str, str, str]) -> None:
    """Bore, outside, width; the number is not said."""
    size = bearing(text)
    assert (size.basic, size.bore, size.outside, size.width) == ("", *map(Decimal, figures))


def test_what_stands_beside_a_number_puts_it_in_doubt() -> None:
    """Common practice, no source: a ring or an inch bore that only the words tell."""
    assert "snap ring" in bearing("bearing 6203-2RS with snap ring").doubt
    assert bearing("bearing 6203-2RS without snap ring").doubt == ""
    assert bearing("bearing 6203-2RSNR with snap ring").doubt == ""
    for offered in (("6203-2RS", "Bearing with snap ring"), ("6203-2RS", 'Spindle bearing, 5/8" bore')):
        check = check_size("6203-2RS", *offered)
        assert check.verdict == "cannot be compared" and check.vetoes


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
        ("6203", "bearing 17x40x12", "cannot be compared", "which kind of bearing is not said"),
        ("6203", "bearing 17x42x12", "different", "outside, 2 mm apart"),
        ("17x40x12", "bearing 6303", "different", "outside"),
        ("6203-2RS", "Ball bearing 17x40x12 2RS, greased", "cannot be compared", "two rubber seals"),
        ("6203-2RS", "Ball bearing 17x40x12 ZZ", "other duty", "two metal shields offered"),
        ("17x40x12", "17x40x12", "cannot be compared", "which kind"),
        ("R8-2RS", "bearing 1/2 x 1-1/8 x 5/16", "cannot be compared", "which kind"),
        ("R8-2RS", "bearing 1/2 x 1-1/8 x 1/4", "different", "width"),
        ("R8-2RS", "R8-ZZ", "other duty", "metal shields"),
        ("R8-2RS", "R10-2RS", "different", ""),
        ("6803-2RS", "61803-2RS", "same size", ""),
        ("6203-2RS", "bearing 6203-2RS (17x40x12)", "same size", ""),
    ],
)
def test_bearings_compared(asked: str, offered: str, verdict: str, said: str) -> None:
    """Same number, same seat; what the suffix changes is never silent."""
    check = check_size(asked, offered)
    assert check.verdict == verdict and said in check.words
    assert check.vetoes == (verdict in ("different", "other duty") or "XQ4" in offered)
