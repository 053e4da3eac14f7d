"""Length, width and height of a package in one cell: '30 x 20 x 4 cm', '12" x 8" x 2"', 'L 12 W 8 H 2 in'."""

import re
from collections.abc import Sequence
from decimal import Decimal
from typing import NamedTuple

from ..worksheet import Cell
from .cell import Bad, parse_column, shown_of, words_of
from .length_cells import NOTHING, Said, column_mark, length_in, length_unit_in

BETWEEN = re.compile(r"\s*[x×*✕]\s*|\s+by\s+")
IN_FRONT = re.compile(r"([lwhb])\s*[:=]?\s*(?=[0-9.,])")
BEHIND = re.compile(r"(?<=[^a-z])\s*([lwhb])$")
SIDES = {"l": 0, "w": 1, "b": 1, "h": 2}
"""Length, width (in German and Dutch B) and height. Common practice, no source."""


class Dimensions(NamedTuple):
    """Length, width and height in centimetres, in the order the cell gives them unless letters say another."""

    length: Decimal
    width: Decimal
    height: Decimal


def parse_dimensions(cells: Sequence[Cell], header: str) -> list[Dimensions | Bad | None]:
    """The column's dimensions in centimetres, unrounded. A unit behind the last holds for all three.

    Blank is None; so are three zeros. Without a unit in cell or header a problem, as with fewer than three numbers.
    """
    unit, mark = length_unit_in(header), column_mark(cells)
    return parse_column(cells, lambda cell: _dimensions(cell, unit, mark))


def _dimensions(cell: Cell, unit: str, mark: str) -> Dimensions | Bad | None:
    words = words_of(cell)
    if words in NOTHING:
        return None
    unreadable = Bad("dimensions-unreadable", found=shown_of(cell))
    parts = BETWEEN.split(words)
    letters = [_letter(part) for part in parts]
    if len(parts) != 3 or (any(letters) and {SIDES.get(one) for one in letters} != {0, 1, 2}):
        return unreadable
    said = [length_in(_without_letter(part), cell, mark) for part in parts]
    bad = [one for one in said if isinstance(one, Bad)]
    if bad:
        return bad[0] if bad[0].code == "length-unclear" else unreadable
    return _in_order([one for one in said if isinstance(one, Said)], letters, unit, cell)


def _in_order(said: Sequence[Said], letters: Sequence[str], unit: str, cell: Cell) -> Dimensions | Bad | None:
    """The three in centimetres, at their places."""
    if not any(one.number for one in said):
        return None
    units = [one.unit for one in said]
    if not all(one.number for one in said) or (any(units) and not units[-1]):
        return Bad("dimensions-unreadable", found=shown_of(cell))
    sides = [one.centimetres(units[-1] or unit) for one in said]
    known = [side for side in sides if side is not None]
    if len(known) < 3:
        return Bad("length-unit-unknown", found=shown_of(cell))
    if any(letters):
        known = [known[at] for at in sorted(range(3), key=lambda at: SIDES[letters[at]])]
    return Dimensions(*known)


def _letter(part: str) -> str:
    """Which side a part names by its letter, 'l' in 'L 12' and '12"L'; '' where it names none."""
    match = IN_FRONT.match(part) or BEHIND.search(part)
    return match[1] if match else ""


def _without_letter(part: str) -> str:
    return BEHIND.sub("", IN_FRONT.sub("", part, count=1)).strip()
