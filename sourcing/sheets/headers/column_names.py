"""What columns share: a header with its readings, how columns are named, and why a column waits for a person."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sourcing.basics.sheet import Column, Field

from ..worksheet import letter_of
from .header_words import (
    DISCOUNT_OR_DISCONTINUED,
    MULTIPLE_OR_MULTIPLIER,
    QUANTITY,
    SEVERAL_DISCOUNTS,
    SURCHARGE,
    UNCLEAR,
    WITH_TAX,
)

PRICES: tuple[Field, ...] = ("net price", "list price")
NUMBERS: tuple[Field, ...] = ("supplier number", "maker number")
OPEN = (UNCLEAR, WITH_TAX, SURCHARGE, QUANTITY, MULTIPLE_OR_MULTIPLIER, DISCOUNT_OR_DISCONTINUED, SEVERAL_DISCOUNTS)
"""Reasons of columns that may cost money: a person says what they are before the sheet is kept."""
CONFIRMED, NOT_KNOWN = "confirmed", "not known"


@dataclass(frozen=True)
class Header:
    """A column's header as shown, and the readings to look up: of a two-row header joined, turned round, lower row."""

    shown: str
    readings: tuple[str, ...]

    def __bool__(self) -> bool:
        return bool(self.shown)


def plain_key(header: str) -> str:
    """How a person's column names are compared: without case and spaces."""
    return "".join(header.split()).casefold()


def meanings_by_key(meanings: Mapping[str, Field]) -> dict[str, Field]:
    """The meanings a person gave, ready for comparing."""
    return {plain_key(header): field for header, field in meanings.items()}


def name_of(column: Column) -> str:
    """The column's header, or its letter where it has none."""
    return column.header or f"column {letter_of(column.at)}"


def is_open(column: Column) -> bool:
    """Whether the column waits for a person: an unclear price, a surcharge, a bare 'Qty', 'Mult' or 'Disc'."""
    return column.field is None and column.why.startswith(OPEN)


def fields_of(columns: Sequence[Column]) -> set[Field]:
    """The fields the columns have."""
    return {column.field for column in columns if column.field}
