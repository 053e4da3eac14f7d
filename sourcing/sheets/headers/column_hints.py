"""Hints about columns by their values and by close spellings: suggestions to a person, rarely more.

A misspelt header is taken only for a field that costs neither money nor identity and whose values agree, and, where
the table has no number column at all, for the supplier's number.
"""

import re
from collections.abc import Callable, Sequence
from itertools import pairwise

import msgspec

from sourcing.basics.sheet import Column, Field

from ..worksheet import Cell, text_of
from .close_words import HARMLESS, LONG, SURE, TAKEN, closest
from .column_names import (
    CONFIRMED,
    NOT_KNOWN,
    NUMBERS,
    PRICES,
    fields_of,
    is_open,
)
from .column_values import suggest_price
from .header_keys import words_in
from .header_words import (
    DISCOUNT_OR_DISCONTINUED,
    MULTIPLE_OR_MULTIPLIER,
    PACK_KEYS,
    QUANTITY,
    SURCHARGE,
    UNCLEAR,
    header_key,
    is_weak_number,
)
from .stock_places import house_name
from .value_hints import with_values
from .value_looks import NUMERIC, agrees, best_look, looks_like, looks_like_basis, sample_of

FRACTION = re.compile(r"0?[.,]\d*[1-9]\d*")
BASIS_LOOK = "its values are what prices are for"
SURELY = 0.95
PRICE_NAMES = frozenset(
    {
        "net",
        "nett",
        "netto",
        "price",
        "prices",
        "preis",
        "prix",
        "precio",
        "prijs",
        "ek",
        "dealer",
        "wd",
        "jobber",
        "distributor",
        "wholesale",
        "trade",
        "promo",
    }
)
NO_PRICE_WORDS = frozenset(
    {"code", "number", "date", "qty", "level", "class", "group", "id", "pct", "percent", "margin"}
)
CODE_KEYS = frozenset(header_key(f"{who} {what}") for who in ("supplier", "vendor") for what in ("code", "id"))
CellsOf = Callable[[int], Sequence[Cell]]
"""The cells of the column at a place counted from 0, row by row: columns are compared with one another."""


def changed(column: Column, field: Field | None, why: str, suggested: Field | None = None) -> Column:
    """The column with another meaning and reason; what it was before is gone."""
    return msgspec.structs.replace(column, field=field, why=why, suggested=suggested, from_quantity=None, place="")


def with_hints(columns: Sequence[Column], blank: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """The columns with what their values and close spellings tell. `blank`: columns without a header."""
    found = [_without_values(column, cells_of) for column in _one_weak_number(columns, cells_of)]
    found = [_by_spelling(column, found, cells_of(column.at)) for column in found]
    found = [_by_different_codes(column, cells_of(column.at)) for column in found]
    found = [_by_house(column, cells_of(column.at)) for column in found]
    found = [_by_basis(column, found, cells_of(column.at)) for column in found]
    found = [_by_amounts(column, found, cells_of(column.at)) for column in found]
    found = [_by_open_word(column, found, cells_of) for column in found]
    found = with_values(_without_sum(_described(found, cells_of), cells_of), cells_of)
    extra = [_by_values(column, found, cells_of(column.at)) for column in blank]
    found = _without_lone_place(found)
    return sorted([*found, *(column for column in extra if column.suggested)], key=lambda column: column.at)


def _without_values(column: Column, cells_of: CellsOf) -> Column:
    """An open column in which nothing stands is no question."""
    if column.why in (SURCHARGE, QUANTITY) and not any(map(text_of, cells_of(column.at))):
        return changed(column, None, "blank")
    return column


def _by_spelling(column: Column, columns: Sequence[Column], cells: Sequence[Cell]) -> Column:
    """The column with the word its header is close to, taken or suggested; a meaning another column has is not."""
    close = closest(column.header) if column.field is None and column.why == NOT_KNOWN else None
    if close is None or (close.field and close.field in fields_of(columns)):
        return column
    why = f"close to the header word '{close.word}'"
    if close.field is None:
        return changed(column, None, f"{UNCLEAR}, {why}")
    return (
        changed(column, close.field, why)
        if _may_take(column, close.field, close.ratio, columns, cells)
        else changed(column, None, why, close.field)
    )


def _by_different_codes(column: Column, cells: Sequence[Cell]) -> Column:
    """'Supplier code' is mostly who the supplier is; where it differs from row to row it may be his number."""
    texts = [text for cell in cells if (text := text_of(cell))]
    codes = column.field is None and not is_open(column) and header_key(column.header) in CODE_KEYS
    if not codes or len(set(texts)) < 0.9 * len(texts) or not agrees("supplier number", cells):
        return column
    return changed(column, None, "it differs from row to row", "supplier number")


def _by_house(column: Column, cells: Sequence[Cell]) -> Column:
    """A column named after a warehouse alone ('Whse 1') holds its stock where it holds whole numbers."""
    place = house_name(column.header) if column.field is None and column.why == NOT_KNOWN else ""
    if not place or looks_like(cells).get("stock", 0) < SURELY:
        return column
    return msgspec.structs.replace(column, field="stock", place=place, why="a warehouse, and whole numbers")


def _by_basis(column: Column, columns: Sequence[Column], cells: Sequence[Cell]) -> Column:
    """A column nobody knows whose values are what prices are for (1 and 100, EA and C): a question, never left out.

    Left out, a price per hundred would be taken for the price of one piece.
    """
    unknown = (column.field is None and column.why == NOT_KNOWN) or column.why.startswith(UNCLEAR)
    counts = looks_like_basis(cells, counts_only="price basis" in fields_of(columns))
    if not unknown or not counts:
        return column
    return changed(column, None, BASIS_LOOK, "price basis")


def _by_amounts(column: Column, columns: Sequence[Column], cells: Sequence[Cell]) -> Column:
    """A column nobody knows that holds amounts: a question where the sheet has no net price, or its header names one.

    Left out without a word, the sheet would have no price, or another than this shop's own.
    """
    unknown = column.field is None and (column.why == NOT_KNOWN or column.suggested in HARMLESS)
    amounts = looks_like(cells).get("net price", 0) >= SURELY
    if not unknown or not (amounts or (_names_price(column) and _are_numbers(cells))):
        return column
    if amounts and "net price" not in fields_of(columns) and not any(c.why.startswith(UNCLEAR) for c in columns):
        return changed(column, None, "it holds amounts, and no column is the net price", "net price")
    return changed(column, None, f"{UNCLEAR}, beside another") if _names_price(column) else column


def _names_price(column: Column) -> bool:
    words = set(words_in(column.header))
    return bool(PRICE_NAMES & words) and not NO_PRICE_WORDS & words


def _are_numbers(cells: Sequence[Cell]) -> bool:
    sample = sample_of(cells)
    return len(sample) > 1 and all(NUMERIC.fullmatch(text) for text in sample)


def _may_take(column: Column, field: Field, ratio: float, columns: Sequence[Column], cells: Sequence[Cell]) -> bool:
    """A harmless field whose values agree; the number where none of the columns is one and the values are numbers."""
    long = len(column.header.replace(" ", "")) >= LONG
    if field in HARMLESS:
        return long and ratio >= TAKEN and agrees(field, cells)
    alone = field == "supplier number" and not fields_of(columns).intersection(NUMBERS)
    return alone and long and ratio >= SURE and agrees(field, cells)


def _by_open_word(column: Column, columns: Sequence[Column], cells_of: CellsOf) -> Column:
    """A suggestion for a header of two meanings, by its values."""
    if not is_open(column):
        return column
    cells = cells_of(column.at)
    field, why = None, ""
    if column.why.startswith(UNCLEAR):
        known = {
            c.field: cells_of(c.at) for c in reversed(columns) if c.field in PRICES and (c.from_quantity or 1) == 1
        }
        field, why = suggest_price(cells, {name: values for name, values in known.items() if name})
    elif column.why == MULTIPLE_OR_MULTIPLIER and _are_fractions(cells):
        return changed(column, "multiplier", "fractions below 1, which no order multiple is")
    elif column.why == MULTIPLE_OR_MULTIPLIER:
        field = "order multiple" if looks_like(cells).get("stock", 0) == 1 else "multiplier"
    elif column.why == DISCOUNT_OR_DISCONTINUED:
        field = _discount_or_discontinued(cells)
    elif column.why == QUANTITY:
        field = "pack" if header_key(column.header) in PACK_KEYS else _quantity(columns, cells_of)
    return msgspec.structs.replace(column, suggested=field, why=f"{column.why}; {why}" if why else column.why)


def _are_fractions(cells: Sequence[Cell]) -> bool:
    sample = sample_of(cells)
    return len(sample) > 1 and all(FRACTION.fullmatch(text) for text in sample)


def _discount_or_discontinued(cells: Sequence[Cell]) -> Field:
    looks = looks_like(cells)
    if looks.get("no longer available", 0) >= 0.9 and looks.get("discount", 0) < 0.5:
        return "no longer available"
    return "discount code" if looks.get("discount code", 0) >= 0.9 else "discount"


def _quantity(columns: Sequence[Column], cells_of: CellsOf) -> Field:
    """Price breaks in rows repeat their number; elsewhere a bare quantity is most often the stock."""
    numbers = next((column for column in columns if column.field == "supplier number"), None)
    texts = [text for cell in (cells_of(numbers.at) if numbers else ())[:2000] if (text := text_of(cell))]
    again = sum(one == other for one, other in pairwise(texts))
    return "break quantity" if again * 4 >= len(texts) > 1 else "stock"


def _described(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """A weak number word beside the number holds the description where no other column does: 'Artikel', 'Item'."""
    if "description" in fields_of(columns):
        return list(columns)
    weak = [
        c
        for c in columns
        if c.field is None and c.why.endswith("is the number") and agrees("description", cells_of(c.at))
    ]
    first = weak[0] if weak else None
    return [changed(c, "description", f"{c.why}, this holds words") if c is first else c for c in columns]


def _without_sum(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """A stock column without a place that is the sum of the warehouses beside it is left out, or it counts twice."""
    stocks = [column for column in columns if column.field == "stock"]
    places = [cells_of(column.at) for column in stocks if column.place]
    whole = [column for column in stocks if not column.place]
    if len(places) < 2 or len(whole) != 1 or not _sums(cells_of(whole[0].at), places):
        return list(columns)
    return [changed(c, "not used", "the sum of the warehouses") if c is whole[0] else c for c in columns]


def _without_lone_place(columns: Sequence[Column]) -> list[Column]:
    """One stock column is the stock, whatever stands over it: 'Availability' over 'On hand' is no warehouse."""
    stocks = [column for column in columns if column.field == "stock"]
    lone = stocks[0] if len(stocks) == 1 else None
    return [msgspec.structs.replace(c, place="") if c is lone else c for c in columns]


def _sums(whole: Sequence[Cell], places: Sequence[Sequence[Cell]]) -> bool:
    if any(len(cells) != len(whole) for cells in places):
        return False
    rows = [[text_of(cell) for cell in row] for row in list(zip(whole, *places, strict=True))[:2000]]
    counted = [[int(text or 0) for text in row] for row in rows if row[0] and all(t.isdecimal() or not t for t in row)]
    return bool(counted) and all(row[0] == sum(row[1:]) for row in counted) and any(row[0] for row in counted)


def _by_values(column: Column, columns: Sequence[Column], cells: Sequence[Cell]) -> Column:
    """A column without a header that looks like a number or a price the table lacks."""
    looked = best_look(cells) if sample_of(cells) else None
    wanted: tuple[Field, ...] = ("supplier number", "net price")
    lacks = looked in wanted and not fields_of(columns).intersection(NUMBERS if looked == wanted[0] else PRICES)
    if not lacks or any(is_open(one) for one in columns):
        return column
    return changed(column, None, f"no header, and the values look like those of a column '{looked}'", looked)


def _one_weak_number(columns: Sequence[Column], cells_of: CellsOf) -> list[Column]:
    """Of two weak number words the one whose values are words holds the description: 'Code' and 'Item'."""
    numbers = [c for c in columns if c.field == "supplier number" and c.why != CONFIRMED]
    prose = [c for c in numbers if is_weak_number(c.header) and agrees("description", cells_of(c.at))]
    if not prose or len(numbers) - len(prose) != 1 or "description" in fields_of(columns):
        return list(columns)
    why = f"{numbers[0].why}, this holds words"
    return [changed(c, "description" if c is prose[0] else None, why) if c in prose else c for c in columns]
