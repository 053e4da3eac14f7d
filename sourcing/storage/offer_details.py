"""What most sheets do not say of an offer: warehouses, weight, size, origin, when its price holds. Stored, and back.

A blank is NULL, and a column that is blank all over a sheet is left out of the statement: 300,000 offers without
these cost nothing more. A weight or length is kept as its digits, for pounds turned into kilogrammes and parts of an
inch turned into centimetres may have more decimals than a price.
"""

from collections.abc import Callable, Iterable
from datetime import date
from decimal import Decimal
from functools import lru_cache
from typing import Any

from ..basics.offer import PlaceStock
from ..basics.value import from_json, to_json

Lists = dict[str, list[Any]]


def detail_columns(lists: Lists) -> Lists:
    """The stored forms of those columns in which anything is said. A field without a column is blank throughout."""
    columns = {name: _stored(lists.get(name, ()), form) for name, form in STORED.items()}
    times = lists["lead_time"]
    leaves = [None if time is None else time.leaves_on for time in times]
    columns["lead_leaves_on"] = _stored(leaves, _day)
    return {name: values for name, values in columns.items() if values}


def _stored(values: Iterable[Any], form: Callable[[Any], object]) -> list[Any]:
    """The values as stored; nothing at all where every one is blank."""
    if not any(value is not None and value != "" and value != () for value in values):
        return []
    done = [None if value is None or value == "" or value == () else form(value) for value in values]
    return done if any(value is not None for value in done) else []


def _day(value: date) -> str:
    """ISO 8601: the driver of SQLite warns of dates, the one of PostgreSQL takes the text for a date."""
    return value.isoformat()


def _digits(value: Decimal) -> str:
    if not isinstance(value, Decimal) or not value.is_finite():
        raise TypeError(f"{value!r} is {type(value).__name__}; only a finite Decimal is stored as an exact number")
    return format(value, "f")


def _unless_piece(value: str) -> str | None:
    return None if value == "piece" else value


def _places(value: Iterable[PlaceStock]) -> str:
    return to_json(tuple(value)).decode()


STORED: dict[str, Callable[[Any], object]] = {
    "sold_by": _unless_piece,
    "gtin": str,
    "discount_code": str,
    "stock_places": _places,
    "weight_kg": _digits,
    "oversize": bool,
    "hazardous": bool,
    "origin": str,
    "tariff_code": str,
    "valid_from": _day,
    "valid_to": _day,
    "length_cm": _digits,
    "width_cm": _digits,
    "height_cm": _digits,
    "returnable": bool,
}
"""How each field is stored. Columns of the frame bear the same names."""


@lru_cache(maxsize=4096)
def places_from(stored: str) -> tuple[PlaceStock, ...]:
    """The warehouses back. Many offers share their few pieces in the same warehouses."""
    return from_json(stored, tuple[PlaceStock, ...])


LOADED: dict[str, Callable[[Any], object]] = {name: lambda stored: stored for name in STORED}
LOADED |= {"stock_places": places_from, **dict.fromkeys(("weight_kg", "length_cm", "width_cm", "height_cm"), Decimal)}


def details_from(stored: dict[str, Any]) -> dict[str, Any]:
    """The fields of an offer from its columns; what is NULL is left to the offer's defaults."""
    return {name: LOADED[name](value) for name, value in stored.items() if value is not None}
