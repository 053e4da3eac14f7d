"""Synchronous (toothed) belts: inch 300L075 and metric 900-5M-15.

Inch: ARPM/RMA IP-24 / ISO 5296. Nominal pitch length in tenths of an inch, section, width in hundredths (cut off: 037
is 3/8). The number is rounded: the length is teeth times pitch (124L is 33 x 0.375 = 12.375 in, 187L 18.750; 124MXL
is 12.400). A number no whole count of teeth comes near is not read. D before the section: teeth on both
sides. Shortest lengths from memory.
Metric: ISO 13050 (pitch length mm, tooth pitch mm, width mm; the spelling 900-5M-15 from memory). The profile (H, S,
R) is not in this spelling, so two such belts agree in size only.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import BeltSize, Found, Ground, Length, Section, Unit
from .text import AFTER, BEFORE

PITCHES = {  # inches between teeth; shortest length number read as one
    "MXL": ("0.080", 36),
    "XL": ("0.200", 50),
    "L": ("0.375", 124),
    "H": ("0.500", 200),
    "XH": ("0.875", 500),
    "XXH": ("1.250", 700),
}
METRIC_PITCHES = {"3M": 3, "5M": 5, "8M": 8, "14M": 14, "20M": 20}
WIDTHS = {
    **{"012": "0.125", "019": "0.1875", "025": "0.25", "031": "0.3125", "037": "0.375", "050": "0.5", "075": "0.75"},
    **{"100": "1", "150": "1.5", "200": "2", "300": "3", "400": "4", "500": "5"},
}
"""Width codes, hundredths of an inch cut off: 037 is 3/8 in (from memory, after IP-24)."""


def _section(name: str, pitch: str, unit: Unit) -> Section:
    return Section(
        name=name, family="synchronous", groove=f"teeth {name}", unit=unit, base="pitch", pitch=Decimal(pitch)
    )


SECTIONS = {
    **{name: _section(name, pitch, "in") for name, (pitch, _) in PITCHES.items()},
    **{f"D{name}": _section(f"D{name}", pitch, "in") for name, (pitch, _) in PITCHES.items()},
    **{name: _section(name, str(pitch), "mm") for name, pitch in METRIC_PITCHES.items()},
}

_INCH = re.compile(rf"{BEFORE}(\d{{2,4}})(D?)(MXL|XL|L|H|XH|XXH)[ -]?({'|'.join(WIDTHS)})?{AFTER}")
_METRIC = re.compile(rf"{BEFORE}(\d{{3,4}})([ -]?)(3M|5M|8M|14M|20M)(?:([ -]?)(\d{{1,3}}))?{AFTER}")
_ROUNDED = Decimal("0.05")


def find(text: str) -> Iterator[Found]:
    """300L075, 120XL037, 900-5M-15 in a plain text. Only a metric one written out with its width needs no context."""
    for match in _INCH.finditer(text):
        number, double, name, code = match.groups()
        length = _pitch_length(number, name)
        if length is not None:
            width = Decimal(WIDTHS[code]) if code else None
            yield _found(match, SECTIONS[double + name], length, width, "context")
    for match in _METRIC.finditer(text):
        number, gap, name, _, wide = match.groups()
        section, length = SECTIONS[name], Decimal(number)
        if section.pitch and length % section.pitch == 0:
            width = Decimal(wide) if wide else None
            yield _found(match, section, length, width, "form" if gap == "-" and wide else "context")


def _pitch_length(number: str, name: str) -> Decimal | None:
    pitch, shortest = Decimal(PITCHES[name][0]), PITCHES[name][1]
    nominal = Decimal(number) / 10
    exact = (nominal / pitch).quantize(Decimal(1)) * pitch
    return exact if int(number) >= shortest and abs(exact - nominal) <= _ROUNDED else None


def _found(match: re.Match[str], section: Section, value: Decimal, width: Decimal | None, ground: Ground) -> Found:
    pitch = section.pitch or Decimal(1)
    length = Length(value=value, unit=section.unit, kind="pitch", source="teeth times pitch")
    size = BeltSize(
        designation=match[0],
        section=section,
        length=length,
        count=int(value / pitch),
        width=width,
        width_unit=section.unit,
    )
    return Found(size=size, start=match.start(), end=match.end(), ground=ground)
