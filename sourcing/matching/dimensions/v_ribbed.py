"""V-ribbed belts: metric 6PK2120 and inch 845K8. ISO 9982 / DIN 7867 / ARPM IP-26.

Metric: ribs, profile, effective length in mm (6PK2120: 6 ribs, 2120 mm, a published example). Inch: outside length in
tenths of an inch, profile letter, ribs (845K8, 540L10: published examples in a distributor's table; others call the
length effective). PK effective to outside: about 14 mm more (one page's rule of thumb, +/- 3 mm), so an inch and a
metric belt meet in two ways, and where these disagree there is no answer; of the other profiles no figure was read,
and inch and metric do not meet. Rib pitches: ISO 9982 as a trade association prints it. TRAP: 540L10 is V-ribbed with
10 ribs, 540L is a synchronous belt.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import Addition, BeltSize, Found, Ground, Length, LengthKind, Section
from .text import AFTER, BEFORE

RIB_PITCH = {"PH": "1.60", "PJ": "2.34", "PK": "3.56", "PL": "4.70", "PM": "9.40"}
"""Millimetres between ribs (0.063, 0.092, 0.140, 0.185, 0.370 in)."""

_INCH_ADDITIONS = {
    "PK": (
        Addition(to="effective", add=Decimal(0), source="the number read as effective length"),
        Addition(to="effective", add=Decimal("-0.55"), source="a rule of thumb, 14 mm less than outside"),
    )
}


def _section(name: str, profile: str) -> Section:
    inch = len(name) == 1
    base: LengthKind = "outside" if inch else "effective"
    return Section(
        name=name,
        family="V-ribbed",
        groove=profile,
        unit="in" if inch else "mm",
        base=base,
        widths=(),
        pitch=Decimal(RIB_PITCH[profile]),
        additions=_INCH_ADDITIONS.get(profile, ()) if inch else (),
    )


SECTIONS = {name: _section(name, profile) for profile in RIB_PITCH for name in (profile, profile[1])}

_METRIC = re.compile(rf"{BEFORE}(\d{{1,2}})(\s?)(P[HJKLM])([ -]?)(\d{{3,4}}){AFTER}")
_INCH = re.compile(rf"{BEFORE}(\d{{3,4}})([HJKLM])(\d{{1,2}}){AFTER}")


def find(text: str) -> Iterator[Found]:
    """6PK2120 and 845K8 in a plain text. '6 PK 2120' may be six packs and '845K8' anything: they need context."""
    for match in _METRIC.finditer(text):
        ribs, gap, profile, other_gap, number = match.groups()
        if 2 <= int(ribs) <= 40 and 200 <= int(number) <= 6000:
            ground: Ground = "form" if not gap and other_gap != " " else "context"
            length = Length(value=Decimal(number), unit="mm", kind="effective", source="the number, ISO 9982")
            yield _found(match, _belt(f"{int(ribs)}{profile}{number}", profile, int(ribs), length), ground)
    for match in _INCH.finditer(text):
        number, letter, ribs = match.groups()
        if 2 <= int(ribs) <= 40 and ribs[0] != "0" and 80 <= int(number) <= 3000:
            source = "the number / 10, a distributor's table"
            length = Length(value=Decimal(number) / 10, unit="in", kind="outside", source=source)
            yield _found(match, _belt(match[0], letter, int(ribs), length), "context")


def _belt(designation: str, name: str, ribs: int, length: Length) -> BeltSize:
    return BeltSize(designation=designation, section=SECTIONS[name], length=length, count=ribs)


def _found(match: re.Match[str], size: BeltSize, ground: Ground) -> Found:
    return Found(size=size, start=match.start(), end=match.end(), ground=ground)
