"""A roller chain by pitch and width alone: '1/2 x 1/8', '1/2" x 5/16"', '12,7 x 7,75 mm'. No standard: what a
text says.

1/2 x 5/16 is #40 and 08B: the roller, which decides, is not said. Such a size can contradict and never confirms. Only
the pairs printed for chains of ASME B29.1 and ISO 606 are read (the fractions from memory): '1/2 x 1-1/2' is a bolt.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .chain_length import bare_behind, length_in
from .size import ChainSize, Found, in_mm
from .text import number_of

PRINTED = {  # pitch: widths between the inner plates, inches as printed
    "1/4": ("1/8",),
    "3/8": ("3/16", "7/32", "5/32"),
    "1/2": ("3/32", "1/8", "3/16", "1/4", "5/16"),
    "5/8": ("1/4", "5/16", "3/8"),
    "3/4": ("3/8", "7/16", "1/2"),
    "1": ("5/8",),
}
PITCHES_MM = tuple(Decimal(pitch) for pitch in ("6.35", "8", "9.525", "12.7", "15.875", "19.05", "25.4"))

ROUNDED = Decimal("0.6")
"""Millimetres between a width as printed and as made: 7/16 in (11.11) stands for the 11.68 of 12B, 7/32 (5.56) for the
5.72 of 06B. Printed widths lie 0.79 mm apart or more (own choice)."""


def _mm(printed: str) -> Decimal:
    return in_mm(number_of(printed) or Decimal(0), "in")


_WIDTHS_MM = {_mm(pitch): [_mm(width) for width in widths] for pitch, widths in PRINTED.items()}

_INCH = re.compile(
    r'(?<![A-Z0-9.,$€£#/"-])(?<!X )(?P<pitch>[1357]/[48]|1/2|1(?=\s?"))\s?"?\s?X\s?(?P<width>\d{1,2}/\d{1,2})\s?"?'
    r"(?![A-Z0-9/]|[.,-]\d|\s?X\s?\d{1,2}(?:/|[.,]\d)|\s?MM)"
)
_METRIC = re.compile(
    r"(?<![A-Z0-9.,$€£#/\"-])(?<!X )(?P<pitch>\d{1,2}[.,]\d{1,3}|8)\s?(?:MM)?\s?X\s?"
    r"(?P<width>\d{1,2}(?:[.,]\d{1,2})?)\s?(?:MM)?"
    r"(?![A-Z0-9/\"]|[.,-]\d|\s?X\s?\d{1,2}(?:/|[.,]\d))"
)


def find(text: str) -> Iterator[Found]:
    """Pitch x width in a plain text. Bolts and keys are written the same way: it needs context."""
    read = [(match, _inches(match)) for match in _INCH.finditer(text)]
    read += [(match, _millimetres(match)) for match in _METRIC.finditer(text)]
    length = length_in(text, [match for match, _ in read]) if read else None
    for match, figures in read:
        if figures is None or length is None:
            continue
        pitches, counted = length.pitches(figures[0])
        size = ChainSize(
            designation=match[0].strip(),
            number="",
            standard="",
            pitch=figures[0],
            roller=None,
            width=figures[1],
            pitches=pitches,
            counted=counted,
            bare=bare_behind(text, match.end()) if pitches is None else None,
            piece="chain" if pitches is not None else length.piece,
        )
        yield Found(size=size, start=match.start(), end=match.end(), ground="context")


def _inches(match: re.Match[str]) -> tuple[Decimal, Decimal] | None:
    if match["width"] not in PRINTED.get(match["pitch"], ()):
        return None
    return _mm(match["pitch"]), _mm(match["width"])


def _millimetres(match: re.Match[str]) -> tuple[Decimal, Decimal] | None:
    pitch, width = number_of(match["pitch"]), number_of(match["width"])
    if pitch not in PITCHES_MM or width is None:
        return None
    known = _WIDTHS_MM.get(pitch, [Decimal(3)])  # 8 x 3 mm is 05B
    return (pitch, width) if any(abs(width - one) <= ROUNDED for one in known) else None
