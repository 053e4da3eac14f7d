"""Roller chain: numbers, lengths, and the pairs that look alike.

Sources: ASME = ANSI/ASME B29.1 sizes as an engineering reference page and a chain distributor's table print them;
MEMORY = ISO 606 numbers, the B series, strands, motorcycle numbers.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.size import ChainSize
from sourcing.matching.dimensions.size_check import check_size

pint = pytest.importorskip("pint")


def chain(text: str, certain: bool = False) -> ChainSize:
    """The chain a text speaks of."""
    size = read_size(text, certain)
    assert isinstance(size, ChainSize), text
    return size


@pytest.mark.parametrize(
    ("number", "pitch", "roller", "width"),
    [
        ("25", "0.250", "0.130", "0.125"),
        ("35", "0.375", "0.200", "0.188"),
        ("41", "0.500", "0.306", "0.250"),
        ("40", "0.500", "0.312", "0.312"),
        ("50", "0.625", "0.400", "0.375"),
        ("60", "0.750", "0.469", "0.500"),
        ("80", "1.000", "0.625", "0.625"),
    ],
)
def test_sizes(number: str, pitch: str, roller: str, width: str) -> None:
    """ASME, inches; ours are in millimetres, rounded to a hundredth (pitch exact)."""
    units = pint.UnitRegistry(non_int_type=Decimal)
    size = chain(f"roller chain #{number}")
    for ours, printed, rounding in (
        (size.pitch, pitch, "0"),
        (size.roller, roller, "0.011"),
        (size.width, width, "0.011"),
    ):
        millimetres = units.Quantity(Decimal(printed), "inch").to("millimetre").magnitude
        assert abs(ours - millimetres) <= Decimal(rounding), number


def test_the_pitch_is_in_eighths() -> None:
    """ASME: digits left of the last one; motorcycle numbers do not follow it (420 is 1/2 in, not 42/8)."""
    for number in ("25", "35", "40", "41", "50", "60", "80"):
        assert chain(f"chain {number}").pitch == Decimal(number[:-1]) / 8 * Decimal("25.4")
    assert chain("chain 420").pitch == Decimal("12.7") and chain("chain 520").pitch == Decimal("15.875")


@pytest.mark.parametrize(
    ("text", "number", "heavy", "strands", "pitches"),
    [
        ("chain #40", "40", False, 1, None),
        ("ANSI 40-1", "40", False, 1, None),
        ("chain 40H", "40", True, 1, None),
        ("chain 40-1R 10 ft", "40", False, 1, "240"),
        ("chain 420 x 110L", "420", False, 1, "110"),
        ("chain 41-2", "41", False, 2, None),
        ("Rollenkette 08B-1", "08B", False, 1, None),
        ("chaîne 08B-2", "08B", False, 2, None),
        ("roller chain ISO 08A-1", "40", False, 1, None),
        ("chain #40 x 44 links", "40", False, 1, "44"),
        ("roller chain 35, 10 ft box", "35", False, 1, "320"),
        ("25 chain 52P", "25", False, 1, "52"),
        ("Rollenkette 44 Glieder #41", "41", False, 1, "44"),
        ("Chain, roller, 10 ft, #25", "25", False, 1, "480"),
        ("cadena 40 x 60 eslabones", "40", False, 1, "60"),
        ("rolketting 08B-1, 5 m", "08B", False, 1, "393.7"),
        ("chain #40 for models 41 and 50", "40", False, 1, None),
        ("chain, roller, 40 links, #35", "35", False, 1, "40"),
    ],
)
def test_numbers_and_lengths(text: str, number: str, heavy: bool, strands: int, pitches: str | None) -> None:
    """Feet and metres become pitches; one link is one pitch (common practice, no source)."""
    size = chain(text)
    assert (size.number, size.heavy, size.strands) == (number, heavy, strands)
    assert (size.pitches is None) == (pitches is None)
    if pitches is not None and size.pitches is not None:
        assert abs(size.pitches - Decimal(pitches)) < Decimal("0.01")


@pytest.mark.parametrize(
    ("text", "number", "pitch", "roller", "width"),
    [
        ("chain 25", "25", "6.35", "3.30", "3.18"),
        ("Kette 05B", "05B", "8", "5", "3"),
        ("Kette 06B-1", "06B", "9.525", "6.35", "5.72"),
        ("Kette 08 B-1", "08B", "12.7", "8.51", "7.75"),
        ("Kette 08B1", "08B", "12.7", "8.51", "7.75"),
        ("Kette 10B-1", "10B", "15.875", "10.16", "9.65"),
        ("Kette 12B-1", "12B", "19.05", "12.07", "11.68"),
        ("Kette 16B-1", "16B", "25.4", "15.88", "17.02"),
        ("Kette 081", "081", "12.7", "7.75", "3.30"),
        ("Kette 083", "083", "12.7", "7.75", "4.88"),
        ("Kette 085", "41", "12.7", "7.77", "6.35"),
        ("Kette 10A-1", "50", "15.875", "10.16", "9.53"),
        ("chain ANSI 35", "35", "9.525", "5.08", "4.78"),
        ("chain 60H", "60", "19.05", "11.91", "12.70"),
    ],
)
def test_iso_606_sizes(text: str, number: str, pitch: str, roller: str, width: str) -> None:
    """MEMORY but for the inch series: pitch, roller, width between the inner plates, millimetres."""
    size = chain(text)
    assert (size.number, size.pitch, size.roller, size.width) == (
        number,
        Decimal(pitch),
        Decimal(roller),
        Decimal(width),
    )


@pytest.mark.parametrize(
    ("text", "pitch", "width"),
    [
        ("chain 1/2 x 1/8", "12.7", "3.175"),
        ('chain 1/2" x 5/16"', "12.7", "7.9375"),
        ("Kette ½ × 3/16, 112 Glieder", "12.7", "4.7625"),
        ("Kette 12,7 x 7,75 mm", "12.7", "7.75"),
        ("chaîne 9.525 x 5.72", "9.525", "5.72"),
        ("Kette 8 x 3 mm", "8", "3"),
        ("cadena 5/8 x 3/8", "15.875", "9.525"),
        ('ketting 1" x 5/8"', "25.4", "15.875"),
    ],
)
def test_pitch_and_width_alone(text: str, pitch: str, width: str) -> None:
    """MEMORY: the pairs of ISO 606 and ASME; the roller is not said."""
    size = chain(text)
    assert (size.number, size.roller, size.pitch, size.width) == ("", None, Decimal(pitch), Decimal(width))
    assert read_size(text.split(maxsplit=1)[1]) is None


@pytest.mark.parametrize(
    ("text", "strands"),
    [
        ("chain 40-2", 2),
        ("chain #40 duplex", 2),
        ("chain #40, double strand", 2),
        ("Zweifachrollenkette 08B", 2),
        ("Rollenkette 3-fach 08B", 3),
        ("chaîne double 08B", 2),
        ("cadena doble 08B", 2),
        ("chain 40-2 duplex", 2),
        ("chain 40-1 duplex", None),
        ("chain 40-2 triplex", None),
        ("chain #40, 2 pcs", 1),
    ],
)
def test_strands_in_words(text: str, strands: int | None) -> None:
    """Common practice, no source; where word and number contradict, how many is not said."""
    assert chain(text).strands == strands


def test_a_figure_without_a_unit_is_kept_as_it_is() -> None:
    """'#40 x 44' may be links or feet; 'chain 40 x 44' may be anything."""
    assert (chain("chain #40 x 44").bare, chain("chain #40 x 44").pitches) == (Decimal(44), None)
    assert read_size("chain 40 x 44") is None
    assert chain("chain #40 x 44 links").bare is None
    assert chain("chain '#40'").pitches is None  # the quotation mark makes no feet of the number


@pytest.mark.parametrize("text", ["#40", "40-1", "40H", "08B-1"])
def test_short_forms_need_to_be_known_for_a_designation(text: str) -> None:
    """'#40' may be a grit or a screw, '40H' anything."""
    assert read_size(text) is None
    assert chain(text, certain=True).pitch == Decimal("12.7")


@pytest.mark.parametrize(
    ("asked", "offered", "verdict", "said"),
    [
        ("#40", "roller chain 40-1", "same size", ""),
        ("#40", "roller chain 08A-1", "same size", ""),
        ("#41", "chain 085", "same size", ""),
        ("#40", "chain 41", "different", "roller, 7.92 mm asked and 7.77 mm offered"),
        ("#40", "chain 08B-1", "different", "7.92 mm asked and 8.51 mm offered"),
        ("#35", "chain 06B-1", "different", "roller"),
        ("#40", "chain 40H", "other duty", "plates"),
        ("#41", "chain 420", "other duty", "plates"),
        ("#50", "chain 520", "different", "inner width"),
        ("#40", "chain 40-2", "different", "strands"),
        ("#40 x 44 links", "chain #40, 44 links", "same size", "44 pitches"),
        ("#40 x 44 links", "chain #40, 46 links", "different", "2 pitches apart"),
        ("#40 x 240 links", "chain #40, 10 ft", "same size", "240 pitches"),
        ("08B-1 x 394 links", "Rollenkette 08B-1 5 m", "same size", "393.7 pitches"),
        ("#40 x 44 links", "chain #40", "same size", "said on one side only"),
        ("#40 x 44 links", "connecting link, chain #40", "different", "a single connecting link"),
        ("#40 connecting link", "offset link, chain #40", "different", "different link"),
        ("#40", "chain", "cannot be compared", ""),
        ("#40", "chain 1/2 x 5/16", "cannot be compared", "roller and plates are not said"),
        ("08B-1", "Kette 1/2 x 5/16", "cannot be compared", "roller and plates are not said"),
        ("12B-1", "Kette 3/4 x 7/16", "cannot be compared", "roller"),
        ("06B-1", "Kette 3/8 x 7/32", "cannot be compared", "roller"),
        ("#35", "Kette 3/8 x 7/32", "different", "inner width"),
        ("#40", "chain 1/2 x 1/8", "different", "inner width"),
        ("#40", "chain 5/8 x 5/16", "different", "pitch"),
        ("1/2 x 1/8", "chain 1/2 x 3/16", "different", "inner width"),
        ("#40 x 44", "chain #40, 44 links", "cannot be compared", "links or feet"),
        ("#40 x 44", "chain #40, 46 links", "different", "pitches apart"),
        ("#40 x 10", "chain #40, 10 ft", "cannot be compared", "links or feet"),
        ("#40 x 44", "chain #40 x 46", "different", "pitches apart"),
        ("#40 x 44", "#40 x 44", "cannot be compared", "links or feet"),
        ("#40 x 44", "chain #40", "same size", "said on one side only"),
        ("#40", "Duplex chain 40", "different", "1 asked and 2 offered"),
        ("40-2", "chain 40-1 duplex", "cannot be compared", "strands"),
        ("40-2", "chain 40, double strand", "same size", ""),
        ("083", "chain 083", "cannot be compared", ""),  # three digits: our own size says nothing of a chain
    ],
)
def test_chains_compared(asked: str, offered: str, verdict: str, said: str) -> None:
    """Pitch, roller, width, strands, plates, length."""
    check = check_size(asked, offered)
    assert check.verdict == verdict and said in check.words
