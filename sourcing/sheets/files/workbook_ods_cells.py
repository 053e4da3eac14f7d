"""What a cell of an OpenDocument spreadsheet says: its value, and what it shows where that says more."""

import re
from decimal import Decimal
from functools import lru_cache

from ..worksheet import Cell
from .workbook_formats import NumberFormat, shown_as_percent, shown_with_basis, shown_with_zeros
from .workbook_numbers import number_cell

SPACES = re.compile(r"[ \t\r\n]+")
ZEROS = re.compile(r"0[0-9]+|(?=[^1-9]*0)[A-Za-z]{0,6}[0-9]+(?:[-. /][0-9]+)+")
NUMBERS = frozenset({"float", "currency", "percentage"})


def plain(text: str) -> str:
    """White space is one space, and only text:s, text:tab and text:line-break stand for more (section 6.1.2)."""
    if text.isprintable() and "  " not in text:
        return text
    return SPACES.sub(" ", text).translate({0: " ", 1: "\t", 2: "\n"})


def cell_of(given: dict[str, str], text: str) -> str:
    """A cell that is no number."""
    kind = given.get("value-type", "")
    if kind == "boolean":
        return given.get("boolean-value", text).upper()
    if kind == "date":
        day = given.get("date-value", text)
        return f"{day} 00:00:00" if len(day) == 10 else day.replace("T", " ")
    if "formula" in given and not kind and not text and not given["paragraphs"]:
        return "=" + given["formula"].partition("=")[2]
    if kind == "string" and not text:
        return given.get("string-value", "")
    return text


@lru_cache(maxsize=100_000)
def _number_of(text: str) -> Cell:
    """Exact. ValueError for what is no number."""
    return number_cell(float(text))  # only to round to the digits a spreadsheet keeps


def number_of(given: dict[str, str], text: str, shown: NumberFormat) -> tuple[Cell, str]:
    """Exact, with the currency it shows (a code, or else the sign); text where its format or what it shows says more.

    That is leading zeros of the very same number, a series, what a price is for, a per cent or an error.
    """
    kind = given["value-type"]
    if text.startswith(("#", "Err:")) and any(letter.isalpha() for letter in text):
        return text, ""
    if kind == "float" and text in ("TRUE", "FALSE"):  # some programs store a yes or no as a number
        return text, ""
    try:
        number = _number_of(given.get("value", ""))
    except ValueError:
        return text, ""
    if isinstance(number, str):
        return number, ""
    if shown.per:
        return shown_with_basis(number, shown), ""
    if kind == "percentage" or shown.percent:
        return shown_as_percent(number), ""
    if shown.mask and (whole := shown_with_zeros(number, shown.mask)):
        return whole, ""
    if kind == "float" and ZEROS.fullmatch(text) and _same_digits(text, number):
        return text, ""
    return number, given.get("currency", "") or shown.currency


def _same_digits(text: str, number: Decimal) -> bool:
    return re.sub(r"\D", "", text).lstrip("0") == format(number, "f").lstrip("0")
