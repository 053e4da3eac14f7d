"""Metric, double V, variable-speed, V-ribbed, synchronous belts and plain sizes against published examples.

Sources: PTI = a trade association's contents of ISO 9982; EE = engineering reference pages; TRADE = distributors'
tables; ISO13050 = clauses 1 to 4 of ISO 13050:1999; MH31 = Machinery's Handbook, 31st ed., table 13 (IP-21, 1984);
MEMORY.
"""

from decimal import Decimal

import pytest

from sourcing.matching.dimensions import double_v, metric_v, synchronous, v_ribbed, variable_speed
from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.size import BeltSize, LengthKind, lengths_as


def belt(text: str, certain: bool = False) -> BeltSize:
    """The belt a text speaks of."""
    size = read_size(text, certain)
    assert isinstance(size, BeltSize), text
    return size


@pytest.mark.parametrize(
    ("text", "section", "value", "kind"),
    [
        ("13x2240 Li", "13", "2240", "inside"),
        ("13X2240LI", "13", "2240", "inside"),
        ("13 × 8 × 2240 Li", "13", "2240", "inside"),
        ("17 x 1473 mm Li", "17", "1473", "inside"),
        ("13x2240 La", "13", "2240", "outside"),
        ("13x2240 Li/2290 La", "13", "2240", "inside"),
        ("Keilriemen A 13 x 1016 Li", "13", "1016", "inside"),
        ("B17x1473Li", "17", "1473", "inside"),
        ("Keilriemen B/17 x 1473 Li", "17", "1473", "inside"),
        ("22x2298 Lw", "22", "2298", "datum"),
        ("22x2298 Lp", "22", "2298", "datum"),
        ("Keilriemen 13x1000", "13", "1000", "not said"),
        ("courroie 13x1000 la bonne", "13", "1000", "not said"),
        ("V-snaar Z 850", "10", "850", "not said"),
        ("A1016 Li", "13", "1016", "inside"),
        ("SPA 1600 Lw", "SPA", "1600", "datum"),
        ("belt SPA1600", "SPA", "1600", "datum"),
        ("belt SPA 1618 La", "SPA", "1618", "outside"),
        ("correa XPA1250", "XPA", "1250", "datum"),
        ("9N 1500 belt", "9N", "1500", "effective"),
        ("belt 9.5 x 850 La", "plain", "850", "outside"),
    ],
)
def test_metric_lengths_keep_the_kind_that_is_printed(text: str, section: str, value: str, kind: str) -> None:
    """ISO 4184, DIN 2215, DIN 7753-1: without Li, Lw or La the kind of a classical length is not said."""
    size = belt(text)
    assert (size.section.name, size.length.value, size.length.kind) == (section, Decimal(value), kind)


@pytest.mark.parametrize(
    ("text", "kind", "value", "source"),
    [
        ("13x2240 Li", "datum", "2270", "published addition 30 mm"),
        ("13x2240 Li", "outside", "2290", "published addition 50 mm"),
        ("17x1473 Li", "datum", "1513", "a published worked example: 1513 - 40"),
        ("17x1473 Li", "outside", "1542", "published addition 69 mm"),
        ("22x2240 Li", "datum", "2298", "published addition 58 mm"),
        ("22x2240 Li", "outside", "2328", "published addition 88 mm"),
        ("17x1513 Lw", "inside", "1473", "the worked example, backwards"),
        ("13x2290 La", "datum", "2270", "outside to inside to datum"),
        ("belt SPZ1000", "outside", "1013", "TRADE, 13 mm"),
        ("belt SPA1600", "outside", "1618", "TRADE, published example"),
        ("belt SPB2000", "outside", "2022", "TRADE, 22 mm"),
        ("belt SPC3000", "outside", "3030", "TRADE, 30 mm"),
    ],
)
def test_lengths_convert_by_printed_additions(text: str, kind: LengthKind, value: str, source: str) -> None:
    """Millimetres, exact."""
    assert [length.value for length in lengths_as(belt(text), kind)] == [Decimal(value)], source


def test_what_is_not_said_converts_to_nothing() -> None:
    """No table turns a length of unknown kind into a known one."""
    assert lengths_as(belt("Keilriemen 13x1000"), "inside") == ()


@pytest.mark.parametrize(
    ("text", "effective"),
    [("AA51", "53.1"), ("AA60", "62.1"), ("AA75", "77.1"), ("BB75", "77.9")],
)
def test_double_v_effective_lengths(text: str, effective: str) -> None:
    """MH31 table 13: AA number + 2.1 in, BB + 2.9 in."""
    size = belt(f"belt {text}")
    assert (size.length.value, size.length.kind) == (Decimal(effective), "effective")


@pytest.mark.parametrize(
    ("text", "width", "length"),
    [
        ("1422V480", "0.875", "48"),
        ("1922V526", "1.1875", "52.6"),
        ("2530V670", "1.5625", "67"),
        ("3230V723", "2", "72.3"),
    ],
)
def test_variable_speed(text: str, width: str, length: str) -> None:
    """MEMORY: top width in sixteenths, groove angle, V, pitch length in tenths."""
    size = belt(text)
    assert (size.section.widths[0], size.length.value, size.length.kind) == (Decimal(width), Decimal(length), "pitch")


def test_variable_speed_widths_follow_the_rule_of_sixteenths() -> None:
    """Every listed section."""
    for name, (width, _) in variable_speed.SIZES.items():
        assert Decimal(width) == Decimal(name[:2]) / 16, name


@pytest.mark.parametrize(
    ("text", "groove", "ribs", "value", "kind"),
    [
        ("6PK2120", "PK", 6, "2120", "effective"),  # PTI, published: 6 ribs, PK, 2120 mm
        ("belt 6 PK 2120", "PK", 6, "2120", "effective"),
        ("belt 845K8", "PK", 8, "84.5", "outside"),  # TRADE: tenths of an inch before the letter, ribs after
        ("belt 540L10", "PL", 10, "54", "outside"),  # TRADE
        ("belt 400J6", "PJ", 6, "40", "outside"),  # MEMORY
    ],
)
def test_v_ribbed(text: str, groove: str, ribs: int, value: str, kind: str) -> None:
    """Metric by ISO 9982, inch with the length first."""
    size = belt(text)
    assert (size.section.groove, size.count, size.length.value, size.length.kind) == (
        groove,
        ribs,
        Decimal(value),
        kind,
    )


def test_widths_and_thicknesses_of_the_millimetre_sections() -> None:
    """A published section table (ISO 4184, DIN 2215); narrow: TRADE; MEMORY: 6, 20, 25, AA to DD, DIN 7753-1's own."""
    printed = (
        *(("6", "6", "4"), ("10", "10", "6"), ("13", "13", "8"), ("17", "17", "11"), ("20", "20", "12.5")),
        *(("22", "22", "14"), ("25", "25", "16"), ("32", "32", "19"), ("40", "40", "25")),
        *(("SPZ", "10", "8"), ("SPA", "13", "10"), ("SPB", "16", "13"), ("SPC", "22", "18"), ("XPA", "13", "10")),
    )
    for name, width, thickness in printed:
        section = metric_v.SECTIONS[name]
        assert (section.widths[0], section.thickness) == (Decimal(width), Decimal(thickness)), name
    for name, second in (("SPZ", "9.7"), ("SPA", "12.7"), ("SPB", "16.3"), ("SPC", "22")):
        assert metric_v.SECTIONS[name].widths[1] == Decimal(second), name
    doubles = {name: (section.widths[0], section.thickness) for name, section in double_v.SECTIONS.items()}
    figures = (("0.5", "0.40625"), ("0.65625", "0.53125"), ("0.875", "0.6875"), ("1.25", "1"))
    assert doubles == {name: (Decimal(w), Decimal(t)) for name, (w, t) in zip(doubles, figures, strict=True)}


def test_rib_pitches() -> None:
    """PTI: PH 1.60, PJ 2.34, PK 3.56, PL 4.70, PM 9.40 mm."""
    assert v_ribbed.RIB_PITCH == {"PH": "1.60", "PJ": "2.34", "PK": "3.56", "PL": "4.70", "PM": "9.40"}


@pytest.mark.parametrize(
    ("text", "teeth", "length", "width"),
    [
        ("belt 300L075", 80, "30", "0.75"),  # EE, published example
        ("belt 120XL", 60, "12", None),  # EE
        ("belt 120XL037", 60, "12", "0.375"),  # MEMORY: 037 is 3/8 in cut off
        ("belt 200XL031", 100, "20", "0.3125"),  # MEMORY
        ("belt 124L", 33, "12.375", None),  # EE: the number is rounded, teeth times pitch is not
        ("belt 187L", 50, "18.75", None),  # EE
        ("belt 124MXL", 155, "12.4", None),  # the same number is another length with another pitch
        ("belt 150L", 40, "15", None),  # EE
        ("belt 225L", 60, "22.5", None),  # EE
        ("900-5M-15", 180, "900", "15"),  # ISO13050 fields, spelling from memory
        ("1280-8M-20", 160, "1280", "20"),
        ("belt 1280 8M 20", 160, "1280", "20"),
    ],
)
def test_synchronous(text: str, teeth: int, length: str, width: str | None) -> None:
    """Teeth times pitch; width in inches or millimetres."""
    size = belt(text)
    assert (size.count, size.length.value) == (teeth, Decimal(length))
    assert size.width == (Decimal(width) if width else None)


def test_540l_with_ribs_and_without_are_two_kinds_of_belt() -> None:
    """540L10 is V-ribbed, 540L synchronous, 5L400 light duty, 300DL075 toothed on both sides, D105 classical."""
    texts = ("540L10", "540L", "5L400", "300DL075", "D105")
    families = [belt(text, certain=True).section.family for text in texts]
    assert families == ["V-ribbed", "synchronous", "light duty", "synchronous", "classical"]
    assert belt("300DL075", certain=True).section.name == "DL"


@pytest.mark.parametrize("text", ["belt 130L", "belt 901-5M-15", "belt 1234V567", "belt 5V100", "belt 3L050"])
def test_what_no_standard_lists_is_not_read(text: str) -> None:
    """No whole count of teeth, no listed section, no length anyone makes."""
    assert read_size(text) is None


def test_synchronous_pitches() -> None:
    """EE (IP-24, ISO 5296): 0.080, 0.200, 3/8, 1/2, 7/8, 1-1/4 in."""
    pitches = {name: Decimal(pitch) for name, (pitch, _) in synchronous.PITCHES.items()}
    figures = ("0.08", "0.2", "0.375", "0.5", "0.875", "1.25")
    assert pitches == dict(zip(("MXL", "XL", "L", "H", "XH", "XXH"), map(Decimal, figures), strict=True))


@pytest.mark.parametrize(
    ("text", "width", "length"),
    [
        ("belt 5/8 x 91-1/2", "0.625", "91.5"),
        ('1/2" X 88" belt', "0.5", "88"),
        ("Belt ½ x 39", "0.5", "39"),
        ("belt 5/8 in x 91 1/2 in", "0.625", "91.5"),
        ("belt .5 x 91.5", "0.5", "91.5"),
        ('belt 1" x 60"', "1", "60"),
    ],
)
def test_plain_sizes(text: str, width: str, length: str) -> None:
    """Width and length in inches; section and kind of length stay unsaid."""
    size = belt(text)
    assert (size.section.family, size.length.kind) == ("plain", "not said")
    assert (size.section.widths[0], size.length.value) == (Decimal(width), Decimal(length))
