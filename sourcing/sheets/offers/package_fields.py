"""How large one piece is in its package, and whether it is taken back. What can't be read is left blank with a note."""

import re
from typing import Any

from sourcing.basics.sheet import Field

from ..cells.cell import Bad
from ..cells.dimension_cells import parse_dimensions
from ..cells.length_cells import parse_lengths
from ..cells.returnable_cells import parse_returnable
from ..headers.column_names import name_of
from ..headers.header_keys import plain_text
from ..region.body import Objects, objects
from .column_reader import ColumnReader, where_none

SIDES: tuple[tuple[str, Field], ...] = (
    ("length_cm", "package length"),
    ("width_cm", "package width"),
    ("height_cm", "package height"),
)
OF_SEVERAL = re.compile(
    r"\b(?:carton|cartons|ctn|case|box|inner|kartons?|karton\w+|vpe|caja|doos\w*|pack|pkg|package|colis|paquete|pakket\w*"
    r"|paket\w*|pack\w*|verpackung\w*|verpakking\w*|bulto|embalaje|emballage|packaging|parcel)\b"
)
"""Words for what a pack of several pieces comes in. 'Shipping length' and a bare 'L x W x H' are one piece's."""


def read_package(reader: ColumnReader, packs: Objects) -> dict[str, Objects]:
    """Length, width and height in centimetres and `returnable`, a value a row; None where the sheet does not say.

    A column of its own counts before one that says all three. `packs`: pieces in the pack: the size of a carton of
    twelve is left blank, for it is not one piece's.
    """
    returnable = reader.column("returnable")
    header = returnable.header if returnable else ""
    return {
        **_sizes(reader, packs),
        "returnable": reader.read("returnable", lambda cells: parse_returnable(cells, header), costs_row=False),
    }


def _sizes(reader: ColumnReader, packs: Objects) -> dict[str, Objects]:
    found = {name: _read(reader, meaning, packs, parse_lengths) for name, meaning in SIDES}
    if reader.column("package dimensions") is None:
        return found
    all_three = _read(reader, "package dimensions", packs, parse_dimensions)
    for at, name in enumerate(found):
        side = objects((None if three is None else three[at] for three in all_three), len(all_three))
        found[name] = where_none(found[name], side)
    return found


def _read(reader: ColumnReader, meaning: Field, packs: Objects, parse: Any) -> Objects:
    """The column of this meaning, blank where it is the size of a pack of several."""
    column = reader.column(meaning)
    if column is None:
        return reader.constant(None)
    values = reader.read(meaning, lambda cells: parse(cells, column.header), costs_row=False)
    if OF_SEVERAL.search(plain_text(column.header)):
        return _of_one_piece(reader, name_of(column), values, packs)
    return values


def _of_one_piece(reader: ColumnReader, header: str, values: Objects, packs: Objects) -> Objects:
    several = [at for at, pack in enumerate(packs) if pack > 1 and values[at] is not None]
    for at in several:
        reader.left_out.setdefault(at, []).append(
            (header, Bad("package-of-several", found=header, pack=str(packs[at])))
        )
        values[at] = None
    return values
