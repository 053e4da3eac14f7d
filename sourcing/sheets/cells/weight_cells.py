"""Weights to kilograms, exact.

The international pound is 0.45359237 kg (agreement of 1959 between the standards laboratories of six countries); an
ounce is a sixteenth of it.
"""

import re
from collections.abc import Iterable, Sequence
from decimal import Decimal

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, word_set, words_of
from .measures import mark_of, number_by

POUND = Decimal("0.45359237")
IN_KILOGRAMS = {"kg": Decimal(1), "g": Decimal("0.001"), "lb": POUND, "oz": POUND / 16}
UNITS = {
    "kg": "kg,kgs,kgm,kilo,kilos,kilogram,kilograms,kilogramm,kilogramme,kilogrammes,kilogramo,kilogramos",
    "g": "g,gr,grm,gram,grams,gramm,gramme,grammes,gramo,gramos",
    "lb": "lb,lbs,lbr,pound,pounds,#,livre,livres,libra,libras",
    "oz": "oz,onz,ounce,ounces,unze,unzen,once,onces,onza,onzas,ons",
}
"""KGM, GRM, LBR and ONZ are of UN/ECE Recommendation 20. 'Pfund' and 'pond' are left out: they are half a kilogram to
some and a pound to others."""
UNIT_OF = {word: unit for unit, words in UNITS.items() for word in words.split(",")}
WORD = "|".join(map(re.escape, sorted(UNIT_OF, key=len, reverse=True)))
WEIGHT = re.compile(rf"(?P<number>[0-9.,' ]*[0-9])\s*(?:(?P<unit>{WORD})\.?)?")
POUNDS_AND_OUNCES = re.compile(
    r"([0-9]{1,4})\s*(?:lbs?|pounds?|#)\.?\s*([0-9]{1,2}(?:[.,][0-9]{1,2})?)\s*(?:oz|ounces?)\.?"
)
NOTHING = word_set(",-,--,–,—,n/a,na,none,?")


def parse_weights(cells: Sequence[Cell], header: str) -> list[Decimal | Bad | None]:
    """The column's weights in kilograms, unrounded. The unit is the cell's, else the header's; without one a problem.

    Blank is None; so is 0, since nothing weighs nothing.
    """
    unit = unit_in_header(header)
    mark = _mark_of(dict.fromkeys(cells))
    return parse_column(cells, lambda cell: _weight(cell, unit, mark))


def unit_in_header(header: str) -> str:
    """The one unit a header such as 'Weight (lb)' names; '' for none or two."""
    named = {UNIT_OF[word] for word in re.findall(r"#|[^\W\d_]+", words_of(header)) if word in UNIT_OF}
    return named.pop() if len(named) == 1 else ""


def _mark_of(cells: Iterable[Cell]) -> str:
    return mark_of(
        match["number"] for cell in cells if isinstance(cell, str) and (match := WEIGHT.fullmatch(words_of(cell)))
    )


def _weight(cell: Cell, unit: str, mark: str) -> Decimal | Bad | None:
    words = words_of(cell)
    if words in NOTHING:
        return None
    if both := POUNDS_AND_OUNCES.fullmatch(words):
        return int(both[1]) * POUND + Decimal(both[2].replace(",", ".")) * IN_KILOGRAMS["oz"]
    match = WEIGHT.fullmatch(words)
    if match is None:
        return Bad("weight-unreadable", found=shown_of(cell))
    number = number_by(cell, match["number"].strip(), mark, "weight-unclear", "weight-unreadable")
    if isinstance(number, Bad) or not number:
        return number or None
    unit = UNIT_OF[match["unit"]] if match["unit"] else unit
    return number * IN_KILOGRAMS[unit] if unit else Bad("weight-unit-unknown", found=shown_of(cell))
