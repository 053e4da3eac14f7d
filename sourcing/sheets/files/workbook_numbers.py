"""The value of a spreadsheet's cell as text or as an exact number."""

from datetime import date, datetime, time, timedelta
from decimal import Decimal
from typing import Any

from ..worksheet import MOST_EXACT_NUMBER, Cell

FIRST_INEXACT = int(MOST_EXACT_NUMBER)


def value_cell(value: Any) -> Cell:
    """A number as Decimal with the 15 digits a spreadsheet keeps; a date as '2026-03-05 00:00:00'; TRUE, FALSE."""
    if type(value) is float:
        return number_cell(value)
    if isinstance(value, str):
        return value
    if isinstance(value, bool):
        return "TRUE" if value else "FALSE"
    if isinstance(value, int):
        return number_cell(value)
    if isinstance(value, date) and not isinstance(value, datetime):
        return f"{value.isoformat()} 00:00:00"
    assert isinstance(value, datetime | time | timedelta)
    return str(value)


def number_cell(value: float) -> Cell:
    """The number with the 15 significant digits a spreadsheet keeps; 'nan' and 'inf' stay text."""
    if abs(value) < FIRST_INEXACT and value == int(value):
        return Decimal(int(value))
    number = Decimal(f"{value:.15g}")
    return number if number.is_finite() else str(value)
