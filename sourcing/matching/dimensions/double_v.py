"""Double V-belts (hexagonal) AA to DD for drives that bend both ways. ARPM/RMA IP-21.

Effective length = number + 2.1 in (AA), + 2.9 in (BB): every row read in Machinery's Handbook 31st ed., table 13
(IP-21, 1984). CC and DD: no row was read; their additions are not known: their numbers
compare with their like only. Sizes from memory.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import BeltSize, Found, Length, Section
from .text import AFTER, BEFORE, NOT_COUNTED

_ROWS = (  # section, width, thickness, number to effective
    ("AA", "0.5", "0.40625", "2.1"),
    ("BB", "0.65625", "0.53125", "2.9"),
    ("CC", "0.875", "0.6875", None),
    ("DD", "1.25", "1", None),
)
SECTIONS = {
    name: Section(
        name=name,
        family="double V",
        groove=name,
        unit="in",
        base="effective" if add else "nominal",
        widths=(Decimal(width),),
        thickness=Decimal(thickness),
    )
    for name, width, thickness, add in _ROWS
}
ADDITIONS = {name: Decimal(add) for name, _, _, add in _ROWS if add}

_FORM = re.compile(rf"{BEFORE}(AA|BB|CC|DD)[ -]?(\d{{2,3}}){AFTER}{NOT_COUNTED}")


def find(text: str) -> Iterator[Found]:
    """AA51, BB 75 in a plain text; the form is short and needs context."""
    for match in _FORM.finditer(text):
        name, number = match.groups()
        if 30 <= int(number) <= 600:
            yield Found(size=_belt(name, number), start=match.start(), end=match.end(), ground="context")


def _belt(name: str, number: str) -> BeltSize:
    if name in ADDITIONS:
        source = f"number + {ADDITIONS[name]} in, IP-21 in Machinery's Handbook 31st ed."
        length = Length(value=Decimal(number) + ADDITIONS[name], unit="in", kind="effective", source=source)
    else:
        length = Length(value=Decimal(number), unit="in", kind="nominal", source="the number; no row of IP-21 was read")
    return BeltSize(designation=f"{name}{number}", section=SECTIONS[name], length=length)
