"""Lengths of packages to centimetres, exact.

An inch is 2.54 cm and a foot 30.48 cm (agreement of 1959 between the standards laboratories of six countries; NIST
Handbook 44, appendix C). INH, FOT, CMT, MMT and MTR are of UN/ECE Recommendation 20. The other words are common
practice, no source.
"""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import NamedTuple

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of
from .measures import mark_of, number_by

INCH, FOOT = Decimal("2.54"), Decimal("30.48")
IN_CENTIMETRES = {"cm": Decimal(1), "mm": Decimal("0.1"), "m": Decimal(100), "in": INCH, "ft": FOOT}
UNITS = {
    "cm": "cm,cms,cmt,centimeter,centimeters,centimetre,centimetres,zentimeter,centimètre,centimètres,centímetro,"
    "centímetros",
    "mm": "mm,mms,mmt,millimeter,millimeters,millimetre,millimetres,millimètre,millimètres,milímetro,milímetros",
    "m": "m,mtr,meter,meters,metre,metres,mètre,mètres,metro,metros",
    "in": "in,ins,inh,inch,inches,\",”,″,′′,'',zoll,pouce,pouces,po,pulgada,pulgadas,pulg,duim",
    "ft": "ft,fot,foot,feet,',′,fuss,pied,pieds,pie,pies,voet",
}
UNIT_OF = {word: unit for unit, words in UNITS.items() for word in words.split(",")}
WORD = "|".join(map(re.escape, sorted(UNIT_OF, key=len, reverse=True)))
DIGITS = r"[0-9](?:[0-9.,' ]{0,14}[0-9])?|[.,][0-9]{1,6}"
LENGTH = re.compile(rf"(?P<number>{DIGITS})\s*(?:(?P<unit>{WORD})\.?)?")
FRACTION = re.compile(
    rf"(?:(?P<whole>[0-9]{{1,4}})(?:\s*-\s*|\s+))?(?P<top>[0-9]{{1,2}})/(?P<bottom>2|4|8|16|32|64)"
    rf"\s*(?:(?P<unit>{WORD})\.?)?"
)
"""Only parts of an inch as rules show them: they are exact decimals."""
FEET_AND_INCHES = re.compile(
    r"(?P<feet>[0-9]{1,3})\s*(?:ft\.?|feet|foot|['′])\s*-?\s*(?P<inches>[0-9]{1,2}(?:\.[0-9]{1,3})?)"
    r"\s*(?:in\.?|inch|inches|[\"”″]|''|′′)"
)
HEADER_WORD = re.compile(r"[\"”″]|[^\W\d_]+")
PREPOSITION = re.compile(r"\bin\b(?=\.?\s*[^\s.)\],/;:])")
"""The word in 'Länge in mm' and 'length in package': a unit only where nothing follows it."""
NOTHING = word_set(",-,--,–,—,n/a,na,none,?")


class Said(NamedTuple):
    """A length as a cell says it; `unit` '' where it says none."""

    number: Decimal
    unit: str

    def centimetres(self, unit: str) -> Decimal | None:
        """In centimetres by the cell's unit, else by this one; None where neither says one."""
        known = self.unit or unit
        return self.number * IN_CENTIMETRES[known] if known else None


def parse_lengths(cells: Sequence[Cell], header: str) -> list[Decimal | Bad | None]:
    """The column's lengths in centimetres, unrounded. The unit is the cell's, else the header's; without one a problem.

    Blank is None; so is 0, since no package is that short.
    """
    unit, mark = length_unit_in(header), column_mark(cells)
    return parse_column(cells, lambda cell: _length(cell, unit, mark))


def length_unit_in(header: str) -> str:
    """The one unit a header such as 'Package length (in)' names; '' for none or two."""
    words = HEADER_WORD.findall(PREPOSITION.sub(" ", words_of(header)))
    named = {UNIT_OF[word] for word in words if word in UNIT_OF}
    return named.pop() if len(named) == 1 else ""


def column_mark(cells: Iterable[Cell]) -> str:
    """The decimal mark of the lengths in a column's cells; '' where they do not tell."""
    texts = [words_of(cell) for cell in dict.fromkeys(cells) if isinstance(cell, str)]
    return mark_of(number for text in texts for number in re.findall(r"[0-9](?:[0-9.,]*[0-9])?", text))


def length_in(words: str, cell: Cell, mark: str) -> Said | Bad:
    """The length these words say. `cell`: what they stand in, for the problem where they say none."""
    if both := FEET_AND_INCHES.fullmatch(words):
        return Said(int(both["feet"]) * 12 + Decimal(both["inches"]), "in")
    if part := FRACTION.fullmatch(words):
        number = int(part["whole"] or 0) + Decimal(int(part["top"])) / int(part["bottom"])
        return Said(number, UNIT_OF[part["unit"]] if part["unit"] else "")
    match = LENGTH.fullmatch(words)
    if match is None:
        return Bad("length-unreadable", found=shown_of(cell))
    number_or_bad = number_by(cell, match["number"].strip(), mark, "length-unclear", "length-unreadable")
    if isinstance(number_or_bad, Bad):
        return number_or_bad
    return Said(number_or_bad, UNIT_OF[match["unit"]] if match["unit"] else "")


def _length(cell: Cell, unit: str, mark: str) -> Decimal | Bad | None:
    words = words_of(cell)
    if words in NOTHING:
        return None
    said = length_in(words, cell, mark)
    if isinstance(said, Bad) or not said.number:
        return said if isinstance(said, Bad) else None
    return said.centimetres(unit) or Bad("length-unit-unknown", found=shown_of(cell))
