"""Light-duty V-belts 2L to 5L. ARPM/RMA IP-23. The number is ten times the outside length in inches.

Widths and thicknesses: trade tables after IP-23 (3L, 4L, 5L; 5L also printed 5/8 x 13/32); 2L from memory.
Outside to inside: 4L 2 in, 3L 1.5 in (a trade table), 5L 3 in (implied by 5L330 = B30 in a distributor's list);
geometry takes off less from the thinner 5L: 2 pi x 3/8 = 2.36 in. Both are kept.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .classical import GEOMETRY, TRADE
from .size import Addition, BeltSize, Found, Ground, Length, Section
from .text import AFTER, BEFORE

_ROWS = (  # section, widths, thickness, groove, outside to inside: trade, geometry
    ("2L", ("0.25",), "0.15625", "2L", None, "0.98"),
    ("3L", ("0.375",), "0.21875", "3L", "1.5", "1.37"),
    ("4L", ("0.5",), "0.3125", "A", "2", "1.96"),
    ("5L", ("0.65625", "0.625"), "0.375", "B", "3", "2.36"),
)


def _section(name: str, widths: tuple[str, ...], thick: str, groove: str, trade: str | None, geometry: str) -> Section:
    rules = [(trade, TRADE)] if trade else []
    return Section(
        name=name,
        family="light duty",
        groove=groove,
        unit="in",
        base="outside",
        widths=tuple(Decimal(width) for width in widths),
        thickness=Decimal(thick),
        light_duty=True,
        additions=tuple(
            Addition(to="inside", add=-Decimal(add), source=source) for add, source in [*rules, (geometry, GEOMETRY)]
        ),
    )


SECTIONS = {row[0]: _section(*row) for row in _ROWS}

SHORTEST, LONGEST = Decimal(8), Decimal(170)
"""Inches outside (from memory)."""

_FORM = re.compile(rf"{BEFORE}([2-5]L)([ -]?)(\d{{3,4}})(K?){AFTER}(?!\s?(?:ML|L|CC|CM|MM)\b)")


def find(text: str) -> Iterator[Found]:
    """4L390, 4L-390, '4L 390' in a plain text. Written apart, or 2L, it needs context: '5 L 400' may be litres."""
    for match in _FORM.finditer(text):
        name, gap, number, _ = match.groups()
        outside = Decimal(number) / 10
        if not SHORTEST <= outside <= LONGEST:
            continue
        ground: Ground = "form" if gap != " " and name != "2L" else "context"
        yield Found(size=belt(name, number), start=match.start(), end=match.end(), ground=ground)


def belt(name: str, number: str) -> BeltSize:
    """The belt of a section name and a number (tenths of an inch outside)."""
    length = Length(value=Decimal(number) / 10, unit="in", kind="outside", source="the number / 10, IP-23")
    return BeltSize(designation=f"{name}{number}", section=SECTIONS[name], length=length)
