"""A bearing by its dimensions alone: '17x40x12', '1/2 x 1-1/8 x 5/16': bore, outside, width. No standard: what a text
says.

17 x 40 x 12 is 6203, and an angular-contact and a cylindrical roller bearing too (ISO 15 gives one plan to many kinds):
such a size can contradict and never confirms. Oil seals, bushings and blocks are written the same way.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .bearing_suffixes import MARKS, clearance_of, closure_of, marks_in, ring_of
from .size import BearingSize, Found, Unit, in_mm
from .text import number_of

ROUNDED = Decimal("0.02")
"""Millimetres: inches are printed to three or four decimals (own choice)."""

LARGEST = Decimal(200)
"""Millimetres outside; bigger ones are in no small machine (own choice)."""

_START = r'(?<![A-Z0-9.,$€£#/"-])(?<!X )(?<!\d )'
_INCHES = r"(\d[- ]\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|[0-2]?\.\d{2,4}|\d(?=\s?\"))\s?(?:\"|IN\b)?"
_MM = r"(\d{1,3}(?:[.,]\d{1,3})?)\s?(?:MM)?"
_X = r"\s?X\s?"
_END = r"(?![A-Z0-9/]|[.,-]\d|\s?X|\s?(?:CM|FT|M)\b|\s?\")"
_SUFFIX = rf"(?P<marks>{MARKS})"
_INCH = re.compile(_START + _INCHES + _X + _INCHES + _X + _INCHES + _SUFFIX + _END)
_METRIC = re.compile(_START + _MM + _X + _MM + _X + _MM + _SUFFIX + _END)
_OTHER_RING = re.compile(
    r"\b(?:(?:OIL|SHAFT) SEALS?|[A-ZÄÖÜ]*DICHTRINGE?|JOINTS?|RET[ÉE]N(?:ES)?|[A-Z]*KEERRING(?:EN)?|O-?RINGS?|"
    r"BUSH(?:ING)?S?|[A-Z]*BUCHSEN?|BAGUES?|CASQUILLOS?|BUS(?:SEN)?|WASHERS?|SCHEIBEN?|CARTONS?|BOX(?:ES)?|BLOCKS?)\b"
)
# Seals, bushings, washers and cartons have three dimensions too, and a bearing may be named beside them.


def find(text: str) -> Iterator[Found]:
    """Bore x outside x width in a plain text: it needs context."""
    if _OTHER_RING.search(text):
        return
    for match in _INCH.finditer(text):
        yield from _found(match, "in")
    for match in _METRIC.finditer(text):
        yield from _found(match, "mm")


def _found(match: re.Match[str], unit: Unit) -> Iterator[Found]:
    figures = [number_of(figure) for figure in match.group(1, 2, 3)]
    known = [in_mm(figure, unit) for figure in figures if figure]
    if len(known) != 3 or not _a_bearing(*known):
        return
    marks = marks_in(match["marks"])
    size = BearingSize(
        designation=match[0].strip(), basic="", bore=known[0], outside=known[1], width=known[2],
        bore_in=figures[0] if unit == "in" else None,
        closure=closure_of(marks),
        clearance=clearance_of(marks),
        ring=ring_of(marks),
    )  # fmt: skip
    yield Found(size=size, start=match.start(), end=match.end(), ground="context")


def _a_bearing(bore: Decimal, outside: Decimal, width: Decimal) -> bool:
    # The tables of ISO 15 that were read lie between 1.2 and 4 times the bore; under 3 mm it is no millimetre.
    return 3 <= bore < outside <= min(LARGEST, 5 * bore) and 2 <= width < outside
