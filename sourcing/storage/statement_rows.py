"""Statements to the rows of their table and back."""

from collections.abc import Iterable, Iterator, Sequence
from typing import Any

from ..basics.equivalence import Statement
from ..basics.part_number import PartNumber
from .shop_tables import STATEMENTS

REPEATED = (
    *("relation", "standing", "source", "stated_on", "stated_by", "condition", "machine", "serial_from", "serial_to"),
)
"""What many statements say alike: kept once in memory, for a long table takes much of it."""
PLAIN_FIELDS = (*REPEATED, "count", "doubt", "row")
NAMES = ("left_printed", "left_maker", "right_printed", "right_maker", "statement", *PLAIN_FIELDS)
COLUMNS = tuple(STATEMENTS.c[name] for name in NAMES)
"""What to select, in this order and first, for `statements_from`."""
FIRST_REPEATED, FIRST_SINGLE = NAMES.index(REPEATED[0]), NAMES.index("count")


def statements_from(rows: Iterable[Sequence[Any]]) -> Iterator[Statement]:
    """The statements of rows that begin with `COLUMNS`, with their numbers in the table.

    A number that stands in many of them is one value: most of a long table's numbers come more than once.
    """
    known: dict[tuple[str, str], PartNumber] = {}
    once: dict[object, object] = {}

    def number(printed: str, maker: str) -> PartNumber:
        found = known.get((printed, maker))
        if found is None:
            found = known[printed, maker] = PartNumber(printed=printed, maker=maker)
        return found

    for row in rows:
        said: list[Any] = [once.setdefault(value, value) for value in row[FIRST_REPEATED:FIRST_SINGLE]]
        # Written out, for unpacking a dict of fields takes as long again as everything else here.
        yield Statement(
            left=number(row[0], row[1]),
            right=number(row[2], row[3]),
            number=row[4],
            relation=said[0],
            standing=said[1],
            source=said[2],
            stated_on=said[3],
            stated_by=said[4],
            condition=said[5],
            machine=said[6],
            serial_from=said[7],
            serial_to=said[8],
            count=row[FIRST_SINGLE],
            doubt=row[FIRST_SINGLE + 1],
            row=row[FIRST_SINGLE + 2],
        )


def row_of(statement: Statement) -> dict[str, Any]:
    """What a statement says, as its row has it; its number, its place in the order and 'withdrawn' are not said."""
    return {
        "left_printed": statement.left.printed,
        "left_maker": statement.left.maker,
        "right_printed": statement.right.printed,
        "right_maker": statement.right.maker,
        "left_key": statement.left.key,
        "right_key": statement.right.key,
        **{name: getattr(statement, name) for name in PLAIN_FIELDS},
    }
