"""A statement to the row of its table and back."""

from typing import Any

from sqlalchemy import Row

from ..basics.equivalence import Statement
from ..basics.part_number import PartNumber

PLAIN_FIELDS = (
    *("relation", "standing", "source", "stated_on", "stated_by", "condition", "machine", "serial_from", "serial_to"),
    *("count", "doubt", "row"),
)


def statement_from(row: Row[Any]) -> Statement:
    """The statement of a row, with its number in the table."""
    return Statement(
        left=PartNumber(printed=row.left_printed, maker=row.left_maker),
        right=PartNumber(printed=row.right_printed, maker=row.right_maker),
        number=row.statement,
        **{name: row._mapping[name] for name in PLAIN_FIELDS},
    )


def row_of(statement: Statement) -> dict[str, Any]:
    """What a statement says, as its row has it; its number, its place in the order and 'withdrawn' are not said."""
    return {
        "left_printed": statement.left.printed,
        "left_maker": statement.left.maker,
        "right_printed": statement.right.printed,
        "right_maker": statement.right.maker,
        **{name: getattr(statement, name) for name in PLAIN_FIELDS},
    }
