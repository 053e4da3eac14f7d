"""A belt by width and length alone: '5/8 x 91-1/2', '1/2" X 88"', '9.5 x 850 La'. No standard: what a text says.

An inch text does not say whether the length is inside or outside: sellers' lists quote either (common practice, no
source). The section is not said either: 1/2 in is A, 4L and AA. Such a size can contradict, and hardly ever confirm.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import BeltSize, Found, Length, Section, Unit
from .text import NUMBER, TAG, number_of, tagged

NARROWEST, WIDEST = Decimal("0.25"), Decimal(3)
SHORTEST, LONGEST = Decimal(12), Decimal(400)
"""Inches. Shorter pairs of numbers are bolts, pins and washers ('1/4 x 1-3/4')."""

_INCH_MARK = r'(?:\s?(?:"|IN\b\.?|INCH(?:ES)?\b|ZOLL\b))'
_WIDTH = r"\d[- ]\d{1,2}/\d{1,2}|\d{1,2}/\d{1,2}|\d?\.\d{1,4}"
_START = r'(?<![A-Z0-9.,$€£#/"-])(?<!X )'
_INCH = re.compile(
    rf"{_START}(?:({_WIDTH}){_INCH_MARK}?|(\d){_INCH_MARK})\s?X\s?({NUMBER}){_INCH_MARK}?(?![A-Z0-9/]|[.,-]\d|\s?X|\s?MM)"
)
_METRIC = re.compile(rf"{_START}(\d{{1,2}}[.,]\d)\s?X\s?(\d{{3,5}})(?:{TAG}|\s?MM)?(?![A-Z0-9/]|[.,-]\d|\s?X)")


def find(text: str) -> Iterator[Found]:
    """Width x length in a plain text. Bolts, hoses and ropes are written the same way: it needs context."""
    for match in _INCH.finditer(text):
        width, length = number_of(match[1] or match[2]), number_of(match[3])
        if width and length and NARROWEST <= width <= WIDEST and SHORTEST <= length <= LONGEST:
            said = Length(value=length, unit="in", kind="not said", source="width x length, no kind printed")
            yield _found(match, width, "in", said)
    for match in _METRIC.finditer(text):
        width = number_of(match[1])
        if width and 5 <= width <= 80:
            yield _found(match, width, "mm", tagged(match[2], match[3], "not said", "no Li, Ld or La printed"))


def _found(match: re.Match[str], width: Decimal, unit: Unit, length: Length) -> Found:
    section = Section(name="plain", family="plain", groove="", unit=unit, base="not said", widths=(width,))
    size = BeltSize(designation=match[0].strip(), section=section, length=length)
    return Found(size=size, start=match.start(), end=match.end(), ground="context")
