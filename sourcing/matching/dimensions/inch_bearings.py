"""Rolling bearings by the inch: R2 to R20. ANSI/ABMA (inch series R), from memory.

The figure is the bore in sixteenths of an inch. With seals or shields most are wider than open ones: where nothing is
said of them the width is not said either. Other inch series (1600, 99500, 499500) are makers' numbers without a table
that was read: they are not read here.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .bearing_suffixes import ALONE, MARKS, clearance_of, closure_of, is_strong, marks_in, ring_of
from .size import BearingSize, Found, in_mm
from .text import BEFORE

SIZES = {  # sixteenths of bore: outside, width open, width with seals or shields; inches
    "3": ("0.5", "0.15625", "0.196"),
    "4": ("0.625", "0.196", "0.196"),
    "6": ("0.875", "0.21875", "0.28125"),
    "8": ("1.125", "0.25", "0.3125"),
    "10": ("1.375", "0.28125", "0.34375"),
    "12": ("1.625", "0.3125", "0.4375"),
    "14": ("1.875", "0.375", "0.5"),
    "16": ("2", "0.375", "0.5"),
    "18": ("2.125", "0.375", "0.5"),
    "20": ("2.25", "0.375", "0.5"),
}

_FORM = re.compile(rf"{BEFORE}R(?P<code>{'|'.join(SIZES)})(?P<marks>{MARKS})(?![A-Z0-9]|[.,/-]\d|-[A-Z])")
_NAMED = re.compile(r"\b(?:REV|REF|POS|FIG|ITEM|NO|NR|TYPE?|CLASS)[.:]?\s?$")


def find(text: str) -> Iterator[Found]:
    """R8, R10-2RS, R12ZZ in a plain text. Without two seals or shields it needs context."""
    for match in _FORM.finditer(text):
        marks = marks_in(match["marks"])
        if not marks and (not ALONE.match(text, match.end()) or _named_before(text, match.start())):
            continue
        size = _bearing(match, marks)
        yield Found(size=size, start=match.start(), end=match.end(), ground="form" if is_strong(marks) else "context")


def _named_before(text: str, start: int) -> bool:
    """'Ref. R10', 'rev R8': an index, no bearing."""
    return bool(_NAMED.search(text[max(0, start - 10) : start]))


def _bearing(match: re.Match[str], marks: list[str]) -> BearingSize:
    outside, _, closed = (in_mm(Decimal(inches), "in") for inches in SIZES[match["code"]])
    bore = Decimal(match["code"]) / 16
    closure = closure_of(marks)
    return BearingSize(
        designation=match[0].strip(),
        basic=f"R{match['code']}",
        bore=in_mm(bore, "in"),
        bore_in=bore,
        outside=outside,
        width=closed if closure else None,
        closure=closure,
        clearance=clearance_of(marks),
        ring=ring_of(marks),
    )
