"""V-belts by the millimetre: classical by width or letter (13x2240 Li, Z, A to E), narrow SPZ to SPC, cogged XPZ to
XPC.

Classical: ISO 4184 / DIN 2215; sizes from a published section table, 6, 20 and 25 from memory. The length may be inside
(Li, older), datum (Ld = Lw = Lp) or outside (La): without the letters it is *not said*. Inside to datum 30 / 40 / 58 mm
and to outside 50 / 69 / 88 mm for 13, 17, 22 (published; geometry 2 pi h agrees: 50.3, 69.1, 88.0); 17 x 1473 Li = 1513
Lw is a published worked example. The other sections' additions are from memory, with low confidence: lists differ by
a few mm.
Narrow: ISO 4184 / DIN 7753-1; the number is the datum length; datum to outside 13 / 18 / 22 / 30 mm from a
distributor's table (SPA1600 = 1618 outside is its example). Widths: that table; DIN 7753-1's own are 9.7, 12.7,
16.3, 22 (from memory).
"""

import re
from collections.abc import Iterator
from decimal import Decimal

import msgspec

from .size import Addition, BeltSize, Found, Length, LengthKind, Section
from .text import AFTER, BEFORE, GROUPED, JOINED, TAG, strands_of, tagged

_PUBLISHED, _MEMORY = "published additions, DIN 2215 / ISO 4184", "from memory, lists differ by a few mm"
_CLASSICAL = (  # name, letter, width, height, groove, inside to datum, inside to outside, source
    ("6", "Y", 6, "4", "Y", None, None, _MEMORY),
    ("10", "Z", 10, "6", "Z", 22, 38, _MEMORY),
    ("13", "A", 13, "8", "A", 30, 50, _PUBLISHED),
    ("17", "B", 17, "11", "B", 40, 69, _PUBLISHED),
    ("20", "", 20, "12.5", "20", 50, 79, _MEMORY),
    ("22", "C", 22, "14", "C", 58, 88, _PUBLISHED),
    ("25", "", 25, "16", "25", 60, 100, _MEMORY),
    ("32", "D", 32, "19", "D", 75, 119, _MEMORY),
    ("40", "E", 40, "25", "E", 82, 157, _MEMORY),
)
_NARROW = (
    ("Z", "10", "9.7", "8", 13),
    ("A", "13", "12.7", "10", 18),
    ("B", "16", "16.3", "13", 22),
    ("C", "22", "22", "18", 30),
)


def _classical() -> Iterator[Section]:
    for name, _, width, height, groove, datum, outside, source in _CLASSICAL:
        steps: list[tuple[LengthKind, int | None]] = [("datum", datum), ("outside", outside)]
        yield Section(
            name=name,
            family="metric classical",
            groove=groove,
            unit="mm",
            base="inside",
            widths=(Decimal(width),),
            thickness=Decimal(height),
            additions=tuple(Addition(to=to, add=Decimal(add), source=source) for to, add in steps if add),
            note="inch and metric classical belts are taken for one groove, from memory" if groove in "ABCD" else "",
        )


def _narrow() -> Iterator[Section]:
    for letter, width, din_width, height, outside in _NARROW:
        for start in ("SP", "XP"):
            source = "a distributor's section table"
            yield Section(
                name=start + letter,
                family="metric narrow",
                groove="SP" + letter,
                unit="mm",
                base="datum",
                widths=(Decimal(width), Decimal(din_width)),
                thickness=Decimal(height),
                cogged=start == "XP",
                additions=(Addition(to="outside", add=Decimal(outside), source=source),),
            )


SECTIONS = {section.name: section for section in (*_classical(), *_narrow())}
_BY_LETTER = {letter: name for name, letter, *_ in _CLASSICAL if letter}
_HEIGHTS = {name: height for name, _, _, height, *_ in _CLASSICAL}

_WIDTH = r"(6|10|13|17|20|22|25|32|40)"
_HEIGHT = r"(?:(\d{1,2}(?:[.,]5)?)\s?X\s?)?"
_ENDED = rf"(?:{TAG}|(?:\s?MM)?{AFTER}(?!\s?X))"
_BY_WIDTH = re.compile(rf"{BEFORE}(?<!/)(?:([ZA-E])[ /-]?)?{_WIDTH}\s?X\s?{_HEIGHT}(\d{{3,5}}){_ENDED}")
_BY_NAME = re.compile(rf"{BEFORE}{JOINED}((?:SP|XP)[ZABC]|[ZABCDE])[ -]?(\d{{3,5}}){_ENDED}")


def find(text: str) -> Iterator[Found]:
    """'13x2240 Li', 'SPA 1600 Lw', 'XPA1250', 'Z 850' in a plain text. Without Li, Lw, La they need context."""
    yield from _by_width(text)
    yield from _by_name(text)


def _by_width(text: str) -> Iterator[Found]:
    for match in _BY_WIDTH.finditer(text):
        letter, name, height, number, tag = match.groups()
        if letter and _BY_LETTER[letter] != name:
            continue
        if height and Decimal(height.replace(",", ".")) != Decimal(_HEIGHTS[name]):
            continue
        size = _belt(
            SECTIONS[name], f"{name}x{number}", tagged(number, tag, "not said", "no Li, Ld or La printed"), tag
        )
        yield Found(size=size, start=match.start(), end=match.end(), ground="form" if tag else "context")


def _by_name(text: str) -> Iterator[Found]:
    for match in _BY_NAME.finditer(text):
        _, name, number, tag = match.groups()
        if len(name) == 1 and name != "Z" and not tag:
            continue  # 'A1200', 'B425': an inch belt, a maker's number or a metric one
        if not tag and GROUPED.match(text, match.end()):
            continue
        narrow = len(name) == 3
        kind: LengthKind = "datum" if narrow else "not said"
        source = "the number, DIN 7753-1" if narrow else "no Li, Ld or La printed"
        section = SECTIONS[name if narrow else _BY_LETTER[name]]
        size = _belt(section, f"{name}{number}", tagged(number, tag, kind, source), tag)
        if match["strands"]:
            size = _joined(size, strands_of(match))
        yield Found(size=size, start=match.start(), end=match.end(), ground="form" if tag else "context")


def _joined(size: BeltSize, strands: int) -> BeltSize:
    return msgspec.structs.replace(size, designation=f"{strands}/{size.designation}", strands=strands)


def _belt(section: Section, name: str, length: Length, tag: str | None) -> BeltSize:
    return BeltSize(designation=name + (f" {tag.capitalize()}" if tag else ""), section=section, length=length)
