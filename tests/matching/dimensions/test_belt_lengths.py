"""Belt lengths compared across kinds and standards, with the tolerances as printed.

Sources: MH31 = Machinery's Handbook, 31st ed., p. 2575, table 8 (IP-20); T71, T72 = a belt catalogue's tables 71 and 72
(DIN 7753-1, DIN 2215, ISO 4184); EE = an engineering reference page (IP-24); TRADE = distributors' tables.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.size import BeltSize, in_mm, lengths_as
from sourcing.matching.dimensions.size_check import check_size
from sourcing.matching.dimensions.tolerances import din_2215, din_7753, ip24, tolerance_of

pint = pytest.importorskip("pint")


def belt(text: str) -> BeltSize:
    """The belt of a designation."""
    size = read_size(text, certain=True)
    assert isinstance(size, BeltSize), text
    return size


def test_inches_against_a_units_library() -> None:
    """pint, exact decimals."""
    units = pint.UnitRegistry(non_int_type=Decimal)
    for inches in ("1", "88", "0.65625", "91.5"):
        millimetres = units.Quantity(Decimal(inches), "inch").to("millimetre").magnitude
        assert in_mm(Decimal(inches), "in") == millimetres


@pytest.mark.parametrize(
    ("mm", "plus", "minus"),
    [
        *[(200, 8, 4), (250, 8, 4), (300, 9, 4), (315, 9, 4), (400, 10, 5), (500, 11, 6), (630, 13, 6), (800, 15, 7)],
        *[(900, 17, 8), (1000, 19, 10), (1250, 19, 10), (1600, 23, 11), (2000, 27, 13), (2240, 31, 16), (2500, 31, 16)],
        *[(3150, 37, 18), (4000, 44, 22), (5000, 52, 26), (6300, 63, 32), (8000, 77, 38), (10000, 93, 46)],
        *[(12500, 112, 56), (15000, 140, 70), (18000, 170, 85), (20000, 170, 85)],
    ],
)
def test_classical_metric_tolerances_as_printed(mm: int, plus: int, minus: int) -> None:
    """T72: plus is about twice minus."""
    assert din_2215(Decimal(mm)) == (Decimal(plus), Decimal(minus))


@pytest.mark.parametrize(
    ("mm", "printed"),
    [(900, 9), (1250, 12), (2000, 20), (3150, 32), (5000, 50), (8000, 80), (10000, 100), (12500, 125)],
)
def test_narrow_metric_tolerances_as_printed(mm: int, printed: int) -> None:
    """T71, at the end of each row; within a row never more than the 1 % its ends stand for."""
    assert din_7753(Decimal(mm)) <= printed
    assert printed - din_7753(Decimal(mm)) <= 1
    assert din_7753(Decimal(630)) == Decimal("6.3")


@pytest.mark.parametrize(("inches", "printed"), [("3.6", "0.016"), ("10", "0.016"), ("15", "0.018"), ("20", "0.020")])
def test_synchronous_tolerances_as_printed(inches: str, printed: str) -> None:
    """EE; rows were read up to 22.5 in, beyond is not known."""
    assert ip24(Decimal(inches)) == Decimal(printed)
    assert ip24(Decimal("22.5")) == Decimal("0.024") and ip24(Decimal(30)) is None


@pytest.mark.parametrize("text", ["3V600", "4L390", "AA51", "1422V480", "6PK2120"])
def test_a_tolerance_no_one_published_says_so(text: str) -> None:
    """IP-21, IP-22, IP-23, IP-25 and ISO 9982: not found."""
    assert "no published tolerance" in tolerance_of(belt(text)).source


def test_trade_rule_and_geometry_are_both_kept() -> None:
    """TRADE 2, 3, 4, 5, 6 in; geometry 2 pi x thickness: 1.96, 2.55, 3.34, 4.71, 5.69; B88 is 91.0 or 90.6 outside."""
    printed = {"A": ("2", "1.96"), "B": ("3", "2.55"), "C": ("4", "3.34"), "D": ("5", "4.71"), "E": ("6", "5.69")}
    for name, adds in printed.items():
        outside = [length.value for length in lengths_as(belt(f"{name}88"), "outside")]
        assert outside == [88 + Decimal(add) for add in adds], name
        thickness = belt(f"{name}88").section.thickness
        assert thickness is not None
        assert abs(2 * Decimal("3.14159265") * thickness - Decimal(adds[1])) < Decimal("0.006"), name


@pytest.mark.parametrize(
    ("text", "adds"),
    [
        ("B210", ["3", "2.55"]),
        ("B240", ["1.5"]),
        ("C240", ["2"]),
        ("D240", ["2.5"]),
        ("D220", ["2.5", "5"]),  # one source changes at 210, another at 225
        ("A240", ["2", "1.96"]),  # no source changes A
    ],
)
def test_over_210_the_trade_rule_changes(text: str, adds: list[str]) -> None:
    """TRADE."""
    size = belt(text)
    outside = [length.value - size.length.value for length in lengths_as(size, "outside")]
    assert outside == [Decimal(add) for add in adds]


def test_the_datum_addition_falls_between_210_and_240() -> None:
    """MH31 prints 1.8 at 210 and 0.3 at 240 (B); between no row was read, so both stand."""
    assert [length.value for length in lengths_as(belt("B225"), "datum")] == [Decimal("226.8"), Decimal("225.3")]


def test_a88_and_2240_inside_lie_inside_one_tolerance() -> None:
    """4.8 mm apart; IP-20 allows 0.7 in, DIN 2215 16 mm: the narrower is taken, and the two widths are told."""
    check = check_size("A88", "13x2240 Li")
    assert check.verdict == "same size" and "from memory" in check.words and "13 mm wide" in check.words


@pytest.mark.parametrize(
    ("asked", "offered", "verdict"),
    [
        ("A88", "13x2252 Li", "different"),  # 16.8 mm: inside IP-20's 17.8, outside DIN 2215's 16
        ("A88", "13x2270 Lw", "same size"),
        ("A88", "13x2290 La", "same size"),
        ("A88", "13x2240 La", "different"),  # outside 2240 is inside 2190
        ("13x2240 Li", "4L900", "other duty"),
        ("A40", "13x1016 Li", "same size"),  # exactly 40.0 in
        ("17x1473 Li", "17x1513 Lw", "same size"),
        ("13x1000 Li", "13x1000 La", "different"),  # the same number, 50 mm apart
        ("13x1000 Li", "13x1000 Li", "same size"),
        ("13x1000 Li", "13x1015 Li", "different"),  # inside +19 of one, outside -10 of the other
        ("13x1000 Li", "Keilriemen 13x1000", "cannot be compared"),
        ("Keilriemen 13x1000", "Keilriemen 13x1000", "cannot be compared"),
        ("Keilriemen 13x1000", "Keilriemen 13x1200", "different"),  # no two kinds lie 200 mm apart
        ("13x1000 Li", "17x1000 Li", "different"),
        ("B88", "17x2240 Li", "same size"),
        ("SPA1250", "belt SPA1257", "same size"),  # T71 allows 12
        ("SPA1250", "belt SPA1282", "different"),
        ("SPA1600", "belt SPA 1618 La", "same size"),
        ("SPA1250", "belt XPA1250", "other duty"),
        ("A49", "belt SPA1282", "different"),  # same width, deeper: not interchangeable
        ("13x1250 Li", "belt SPA1280", "different"),
        ("3V600", "belt SPZ1524", "different"),  # approximate only: a person decides
        ("3V590", "belt 9N1500", "same size"),
        ("3V600", "3VX600", "other duty"),
        ("3V600", "3V630", "different"),
        ("A51", "belt AA51", "different"),
        ("AA51", "belt AA51", "same size"),
        ("CC75", "belt CC75", "same size"),
        ("CC75", "belt CC81", "different"),
        ("E144", "40x3658 Li", "different"),  # 38.1 and 40 mm wide
        ("1422V480", "1422V480", "same size"),
        ("1422V480", "1422V490", "different"),
        ("1422V480", "1922V480", "different"),
        ("6PK2120", "6PK2120", "same size"),
        ("6PK2120", "5PK2120", "different"),
        ("6PK2120", "6PK2135", "different"),
        ("845K8", "8PK2000", "different"),
        ("400J6", "6PJ1016", "cannot be compared"),  # outside or effective? no figure leads from one to the other
        ("3L470", "3L475", "different"),  # half an inch is another belt of the list
        ("4L390", "belt 4L390", "same size"),
        ("540L10", "belt 540L", "different"),
        ("300L075", "belt 300L075", "same size"),
        ("300L075", "belt 300L100", "different"),
        ("300L075", "belt 300L", "cannot be compared"),
        ("300L075", "belt 300DL075", "different"),
        ("900-5M-15", "900-5M-15", "same size"),
        ("900-5M-15", "905-5M-15", "different"),
        ("900-5M-15", "900-5M-25", "different"),
        ("900-5M-15", "904-8M-15", "different"),
    ],
)
def test_belts_compared(asked: str, offered: str, verdict: str) -> None:
    """Within a groove by one kind of length; across grooves never the same."""
    assert check_size(asked, offered).verdict == verdict


def test_where_sources_lead_to_different_answers_a_person_decides() -> None:
    """B36 is 39.0 (trade) or 38.55 in (geometry) outside: 5L394 is 0.4 or 0.85 away where 0.6 is allowed."""
    check = check_size("B36", "5L394")
    assert check.verdict == "cannot be compared" and check.vetoes
    assert "0.4 to 0.85 in apart by different sources" in check.words


def test_an_inch_and_a_metric_v_ribbed_belt_meet_in_two_ways() -> None:
    """TRADE calls 84.5 in outside, others effective; 14 mm lie between: no answer, and a person looks."""
    check = check_size("845K8", "8PK2146")
    assert check.verdict == "cannot be compared" and check.vetoes


def test_other_v_ribbed_profiles_have_no_figure_to_convert_by() -> None:
    """PK's 14 mm are PK's; of PJ, PL, PM and PH none was read: outside or effective, nobody can tell."""
    for text in ("400J6", "540L10"):
        assert lengths_as(belt(text), "effective") == ()
    check = check_size("400J6", "6PJ1016")
    assert check.vetoes and "no published addition" in check.words


def test_lengths_without_a_conversion_are_not_compared() -> None:
    """No table leads from the inside to the effective length of a narrow belt."""
    check = check_size("SPA1600", "SPA 1600 Li")
    assert check.verdict == "cannot be compared" and check.vetoes and "no published addition" in check.words


@pytest.mark.parametrize(
    ("asked", "offered", "verdict"),
    [
        ("5/8 x 91-1/2", "belt B88", "cannot be compared"),  # 91.5 may be the outside length; 5/8 is B, 5L or 5V
        ("5/8 x 91-1/2", "belt B60", "different"),
        ("1/2 x 88", "belt B85", "different"),  # 1/2 in is no B
        ("1/2 x 90", "belt A88", "cannot be compared"),
        ("5/8 x 91-1/2", "belt 5/8 x 91-1/2", "cannot be compared"),
        ("5/8 x 91-1/2", "belt 21/32 x 91-1/2", "cannot be compared"),  # two printings of B's width
        ("5/8 x 91-1/2", "belt 1/2 x 91-1/2", "different"),
        ("5/8 x 91-1/2", "belt 5/8 x 60", "different"),
        ("B36", "belt 5/8 x 39", "cannot be compared"),
        ("6PK2120", "belt 5/8 x 83", "cannot be compared"),  # a width and a length: not even the kind of belt
    ],
)
def test_a_plain_size_contradicts_and_never_confirms(asked: str, offered: str, verdict: str) -> None:
    """Sellers quote inside or outside, often without saying which (common practice, no source)."""
    assert check_size(asked, offered).verdict == verdict


@pytest.mark.parametrize(
    ("asked", "offered", "said"),
    [("A49", "belt SPA1282", "deeper (10 mm against 8)"), ("3V600", "belt SPZ1524", "approximately"),
     ("A51", "belt AA51", "double V-belt")],
)  # fmt: skip
def test_look_alike_sections_are_told_apart_in_words(asked: str, offered: str, said: str) -> None:
    """TRADE: two belt glossaries; a person decides."""
    check = check_size(asked, offered)
    assert check.vetoes and said in check.words


def test_cogs_are_said() -> None:
    """Same groove and length, other construction: a person decides."""
    check = check_size("SPA1250", "belt XPA1250")
    assert (check.verdict, check.vetoes) == ("other duty", True)
    assert "fits but is made otherwise: one is cogged, the other is not" in check.words
    assert "cogged" not in check_size("BX36", "belt BX36").words
