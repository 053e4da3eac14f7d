"""Synchronous belts with trapezoidal teeth by the millimetre: T5, T10, AT5, AT10. ISO 17396 / DIN 7721.

Tooth pitch in mm behind the letters, pitch length in mm (a whole count of teeth), width in mm: '16 T5/500',
'T5-500-16', '500-T5-16' (field list and spellings from memory; T2.5 to T20 are DIN 7721's, AT is in ISO 17396, from
memory). Of two figures the larger is the length: no such belt is wider than long (own choice). T and AT of one pitch
have other teeth. TRAP: T10 and T20 are screwdrivers, so a belt must be spoken of.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import BeltSize, Found, Length, Section
from .text import AFTER, BEFORE

PITCHES = {"T2.5": "2.5", "T5": "5", "T10": "10", "T20": "20", "AT3": "3", "AT5": "5", "AT10": "10", "AT20": "20"}
SECTIONS = {
    name: Section(
        name=name, family="synchronous", groove=f"teeth {name}", unit="mm", base="pitch", pitch=Decimal(pitch)
    )
    for name, pitch in PITCHES.items()
}
FEWEST_TEETH, WIDEST = 20, 150
"""Teeth of the shortest belt; millimetres (from memory). 'T20 x 100' is a screwdriver."""

_NAME = r"(A?T(?:2[.,]5|3|5|10|20))"
_FORM = re.compile(
    rf"{BEFORE}(?:(\d{{1,4}})\s?[-/]?\s?)?{_NAME}(?:\s?[-/X]\s?|\s)(\d{{1,4}})(?:\s?[-/X]\s?(\d{{1,3}}))?(?:\s?MM)?{AFTER}(?!\s?X)"
)


def find(text: str) -> Iterator[Found]:
    """16 T5/500, T5-500-16, AT10/1250 in a plain text: they need context."""
    for match in _FORM.finditer(text):
        before, name, figure, behind = match.groups()
        figures = sorted(int(one) for one in (before, figure, behind) if one)
        section = SECTIONS.get(name.replace(",", "."))
        if section is None or len(figures) > 2 or (len(figures) == 2 and not 4 <= figures[0] <= WIDEST):
            continue
        length, pitch = Decimal(figures[-1]), section.pitch or Decimal(1)
        if length >= FEWEST_TEETH * pitch and length % pitch == 0:
            yield _found(match, section, length, Decimal(figures[0]) if len(figures) == 2 else None)


def _found(match: re.Match[str], section: Section, value: Decimal, width: Decimal | None) -> Found:
    size = BeltSize(
        designation=match[0],
        section=section,
        length=Length(value=value, unit="mm", kind="pitch", source="the number, DIN 7721"),
        count=int(value / (section.pitch or Decimal(1))),
        width=width,
        width_unit="mm",
    )
    return Found(size=size, start=match.start(), end=match.end(), ground="context")
