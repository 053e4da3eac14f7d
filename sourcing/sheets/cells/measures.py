"""The number of a weight or a length, by the decimal mark its column is written with."""

from collections import Counter
from collections.abc import Iterable
from decimal import Decimal

from ..worksheet import Cell
from .amounts import NUMBER, clear_mark, common_mark, decimal_of, readings_of
from .cell import Bad, shown_of


def mark_of(numbers: Iterable[str]) -> str:
    """The decimal mark nearly all of the column's numbers that show one show; '' where they do not."""
    return common_mark(Counter(clear_mark(number.strip()) for number in numbers))


def number_by(cell: Cell, digits: str, mark: str, unclear: str, unreadable: str) -> Decimal | Bad:
    """The number by the column's decimal mark; a workbook's number cell needs none.

    `unclear`, `unreadable`: the codes of the problems where it can be read two ways or not at all.
    """
    if isinstance(cell, Decimal):
        return cell
    own = clear_mark(digits)
    if own == "?" and not mark:
        return Bad(unclear, found=shown_of(cell), suggestions=readings_of(digits))
    value = decimal_of(digits, mark or own) if NUMBER.fullmatch(digits) else None
    return Bad(unreadable, found=shown_of(cell)) if value is None else value
