"""Variable-speed belts such as 1422V480. ARPM/RMA IP-25 / ISO 1604; rule and sizes from memory.

Two digits: top width in sixteenths of an inch (14 = 0.875); two digits: groove angle in degrees; V; pitch length in
tenths of an inch. Only the listed sections are read.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import BeltSize, Found, Length, Section
from .text import AFTER, BEFORE

SIZES = {  # width and thickness in inches, from memory
    "1422V": ("0.875", "0.3125"),
    "1922V": ("1.1875", "0.375"),
    "2322V": ("1.4375", "0.4375"),
    "1926V": ("1.1875", "0.4375"),
    "2926V": ("1.8125", "0.5"),
    "3226V": ("2", "0.53125"),
    "2530V": ("1.5625", "0.59375"),
    "3230V": ("2", "0.625"),
    "4430V": ("2.75", "0.6875"),
    "4036V": ("2.5", "0.6875"),
    "4436V": ("2.75", "0.71875"),
    "4836V": ("3", "0.75"),
}
SECTIONS = {
    name: Section(
        name=name,
        family="variable speed",
        groove=name,
        unit="in",
        base="pitch",
        widths=(Decimal(width),),
        thickness=Decimal(thickness),
    )
    for name, (width, thickness) in SIZES.items()
}

_FORM = re.compile(rf"{BEFORE}(\d{{4}}V)-?(\d{{3,4}}){AFTER}")


def find(text: str) -> Iterator[Found]:
    """1422V480 in a plain text; with a listed section the form is distinctive."""
    for match in _FORM.finditer(text):
        name, number = match.groups()
        if name in SECTIONS and int(number) >= 200:
            length = Length(value=Decimal(number) / 10, unit="in", kind="pitch", source="the number / 10, from memory")
            size = BeltSize(designation=f"{name}{number}", section=SECTIONS[name], length=length)
            yield Found(size=size, start=match.start(), end=match.end(), ground="form")
