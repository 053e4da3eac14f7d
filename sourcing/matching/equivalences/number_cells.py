"""The cells of an edited table as text; what a spreadsheet has changed in a number is a problem, never a number.

Where a number truly looks like a damaged one, a dash or a blank in it sets it apart: its key is the same.
"""

import re
from collections.abc import Callable, Mapping
from datetime import date, datetime, time, timedelta
from typing import NamedTuple

from ...basics.problem import refused
from ..numbers.doubtful import doubtful
from .table_columns import DAY_COLUMN, NUMBER_COLUMNS

RISKY = ("=", "+", "-", "@", "＝", "＋", "－", "＠", "\t", "\r", "\n")
"""Before these an exported cell carries an apostrophe, so that no spreadsheet takes it for a formula."""
PLAIN_FORMATS = frozenset(("General", "0", "@", "#,##0"))
"""Number formats that show a whole number with the digits it has."""
_SURELY_WHOLE = re.compile(r"[A-Z][A-Z./-]*[0-9][A-Z0-9./-]*|[0-9]{1,15}")
"""Capitals with a figure, or figures alone: none of the damages leaves these, and most numbers are such."""


class ShownOtherwise(NamedTuple):
    """A number cell whose format shows other digits than it holds, such as leading zeros."""

    value: int
    number_format: str


def damage_of(number: str) -> str:
    """How a spreadsheet or an export seems to have changed a number, in words; blank where nothing speaks for it."""
    if not number or _SURELY_WHOLE.fullmatch(number):
        return ""
    doubt = doubtful(number)
    return doubt.words if doubt else ""


def cell_text(column: str, cell: object) -> str:
    """The cell's text without blanks around it; '' for an empty one. Refuses a damaged number and a stray day."""
    if isinstance(cell, str):
        text = _bare(cell, column in NUMBER_COLUMNS)
        if column in NUMBER_COLUMNS and (why := damage_of(text)):
            raise _damaged(column, text, why)
        return text
    if cell is None:
        return ""
    return next(make for kind, make in _BY_TYPE.items() if isinstance(cell, kind))(column, cell)


def _bare(text: str, is_number: bool) -> str:
    text = text.strip()
    if text[:1] == "'" and (is_number or text[1:].startswith(RISKY)):
        return text[1:].strip()
    return text


def _from_day(column: str, cell: object) -> str:
    day = cell.date() if isinstance(cell, datetime) else cell
    if column == DAY_COLUMN and isinstance(day, date):
        return day.isoformat()
    raise _damaged(column, str(day), f"{day} is a day or a time that a spreadsheet made of it")


def _from_truth(column: str, cell: object) -> str:
    text = str(cell).upper()
    raise _damaged(column, text, f"{text} is a yes or no")


def _from_shown(column: str, cell: object) -> str:
    assert isinstance(cell, ShownOtherwise)
    if column in NUMBER_COLUMNS:
        raise _damaged(column, str(cell.value), f"{cell.value} is shown as {cell.number_format}")
    return str(cell.value)


def _from_whole(column: str, cell: object) -> str:
    return cell_text(column, str(cell))


def _from_fraction(column: str, cell: object) -> str:
    if column in NUMBER_COLUMNS:
        raise _damaged(column, str(cell), f"{cell} is a cell with a decimal mark or a power of ten")
    return str(cell).removesuffix(".0")


def _damaged(column: str, text: str, why: str) -> Exception:
    return refused("table-number-damaged", found=text, column=column, why=why)


_BY_TYPE: Mapping[type, Callable[[str, object], str]] = {
    ShownOtherwise: _from_shown,
    bool: _from_truth,
    int: _from_whole,
    float: _from_fraction,
    datetime: _from_day,
    date: _from_day,
    time: _from_day,
    timedelta: _from_day,
    object: _from_whole,
}
"""By type, a subtype before its base."""
