"""The columns of the equivalence table as a person edits it, in the order they are written."""

from collections.abc import Mapping
from typing import NamedTuple

PART_COLUMNS = (
    "code", "name", "size", "category", "note", "cord", "cover", "cogs", "side", "sold as", "pieces",
)  # fmt: skip
STATEMENT_COLUMNS = (
    "number", "left maker", "left number", "relation", "count", "right maker", "right number", "condition", "machine",
    "serial from", "serial to", "standing", "source", "stated on", "stated by", "doubt",
    "as of change",
)  # fmt: skip
MAKER_COLUMNS = ("alias", "maker")

NUMBER_COLUMNS = frozenset(("code", "left number", "right number", "machine", "serial from", "serial to"))
"""Columns of numbers as printed: what a spreadsheet may have changed in them is told, never read as something."""
DAY_COLUMN = "stated on"
AS_OF_COLUMN = "as of change"
"""The number of the table's newest change when the row was written out: by it an import sees what was changed since.
A row made by hand leaves it blank."""


class Sheet(NamedTuple):
    """A worksheet of the table: its columns and those without which no row can be read."""

    columns: tuple[str, ...]
    needed: tuple[str, ...]


SHEETS: Mapping[str, Sheet] = {
    "parts": Sheet(PART_COLUMNS, ("code",)),
    "statements": Sheet(
        STATEMENT_COLUMNS,
        ("left number", "relation", "right number", "standing", "source", "stated on", "stated by"),
    ),
    "makers": Sheet(MAKER_COLUMNS, MAKER_COLUMNS),
}
"""'makers' may be missing."""
