"""Narrow V-belts by effective length: 3V, 5V, 8V and cogged VX (ARPM/RMA IP-22); 9N, 15N, 25N (ISO effective system).

Inch: the number is ten times the effective length in inches, also with four digits (5V1180 = 118.0 in). The trade takes
effective for outside. Widths and thicknesses: two distributors' section tables (8V 29/32 or 7/8 in thick). Millimetre:
the number is the effective length; groove effective widths 8.9, 15.2, 25.4 mm from the contents of the ISO standard.
That 9N is the 3V, 15N the 5V, 25N the 8V section is from memory; J for N (9J, 15J, 25J) is the joined belt, from the
contents of the ISO standard. '3/8V1250' is three joined or 3/8 in wide: read only where the text says joined.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .beside import joined_in
from .size import Addition, BeltSize, Found, Ground, Length, Section
from .text import AFTER, BEFORE, JOINED, strands_of

_ROWS = (  # inch name, width, thickness, cogged thickness, metric name, shortest and longest number (memory)
    ("3V", "0.375", "0.3125", "0.328125", "9N", 200, 1600),
    ("5V", "0.625", "0.53125", "0.546875", "15N", 400, 4000),
    ("8V", "1", "0.90625", "0.90625", "25N", 900, 6000),
)
_OUTSIDE = (Addition(to="outside", add=Decimal(0), source="the trade takes effective for outside length"),)


def _sections() -> Iterator[Section]:
    for name, width, thick, cogged_thick, metric, _, _ in _ROWS:
        for cogged in (False, True):
            yield Section(
                name=name + ("X" if cogged else ""),
                family="narrow",
                groove=name,
                unit="in",
                base="effective",
                widths=(Decimal(width),),
                thickness=Decimal(cogged_thick if cogged else thick),
                cogged=cogged,
                additions=_OUTSIDE,
            )
            yield Section(
                name=metric + ("X" if cogged else ""),
                family="narrow",
                groove=name,
                unit="mm",
                base="effective",
                cogged=cogged,
                additions=_OUTSIDE,
                note=f"{metric} taken for the {name} section, from memory",
            )


SECTIONS = {section.name: section for section in _sections()}
_RANGES = {name: (low, high) for name, _, _, _, _, low, high in _ROWS}

_INCH = re.compile(
    rf"{BEFORE}{JOINED}(?P<name>[358]VX?)(?P<gap>[ -]?)(?P<number>\d{{3,4}}){AFTER}(?!\s?(?:MA|MAH|A|W|HZ|DC|AC)\b)"
)
_METRIC = re.compile(rf"{BEFORE}{JOINED}(?P<name>(?:9|15|25)[NJ]X?)[ -]?(?P<number>\d{{3,5}}){AFTER}")


def find(text: str) -> Iterator[Found]:
    """3V900, 5VX 1180, 9N 1500, joined 3/5V850 in a plain text. Written apart, or metric, it needs context: '5 V 500'
    is electrical."""
    for match in _INCH.finditer(text):
        name, number = match["name"], match["number"]
        low, high = _RANGES[name[:2]]
        if not low <= int(number) <= high or (_may_be_a_fraction(match) and not joined_in(text)):
            continue
        ground: Ground = "form" if match["gap"] != " " else "context"
        length = Length(value=Decimal(number) / 10, unit="in", kind="effective", source="the number / 10, IP-22")
        yield _found(match, name, length, strands_of(match), ground)
    for match in _METRIC.finditer(text):
        name, number = match["name"].replace("J", "N"), match["number"]
        length = Length(value=Decimal(number), unit="mm", kind="effective", source="the number, ISO effective system")
        strands = strands_of(match) if match["strands"] or name == match["name"] else None
        yield _found(match, name, length, strands, "context")


def _may_be_a_fraction(match: re.Match[str]) -> bool:
    return match["name"].startswith("8") and match["strands"] in ("3", "5", "7")


def _found(match: re.Match[str], name: str, length: Length, strands: int | None, ground: Ground) -> Found:
    joined = f"{strands}/" if strands and strands > 1 else ""
    designation = f"{joined}{match['name']}{match['number']}"
    size = BeltSize(designation=designation, section=SECTIONS[name], length=length, strands=strands)
    return Found(size=size, start=match.start(), end=match.end(), ground=ground)
