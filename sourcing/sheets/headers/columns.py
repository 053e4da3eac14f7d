"""Which column of a table means what: a person's word first, then the dictionary, then hints; never a guess.

A misspelt header is taken only for a field that costs neither money nor identity and whose values agree, and, where
the table has no number column at all, for the supplier's number; every other hint is a suggestion to a person.
"""

import re
from collections.abc import Mapping, Sequence

from sourcing.basics.sheet import Column, Field

from ..worksheet import letter_of
from .column_hints import CellsOf, changed, with_hints
from .column_names import (
    CONFIRMED,
    NOT_KNOWN,
    NUMBERS,
    PRICES,
    Header,
    fields_of,
    is_open,
    meanings_by_key,
    name_of,
    plain_key,
)
from .column_questions import questions, refuse_unclear
from .header_keys import plain_text
from .header_words import (
    OLDER,
    SURCHARGE,
    UNCLEAR,
    WITH_TAX,
    break_quantity,
    is_unclear,
    is_weak_number,
    meaning_of,
)
from .paired_columns import with_pairs
from .stock_places import house_name

__all__ = [
    "NUMBERS",
    "PRICES",
    "Header",
    "column_of",
    "columns_of",
    "is_open",
    "is_unclear",
    "meanings_by_key",
    "name_of",
    "plain_key",
    "questions",
    "refuse_unclear",
]


OTHER_SIDE = re.compile(
    r"\b(?:last|previous|prior|old|former|next|new|future|competitor\w*|retail|consumer|customer|public|msrp|percent|discount"
    r"|rabatt|canada|usa|export|letztes|vorjahr|alt|alte|neu|ancien\w*|anterior|vorig\w*)\b"
)
"""Words above a price that make it another one: of another year, place or buyer."""


def column_of(at: int, header: Header, meanings: Mapping[str, Field]) -> Column:
    """The column with what it means, and why that is thought. `field` None: not known."""
    for reading in (*header.readings, f"column {letter_of(at)}"):
        if field := meanings.get(plain_key(reading)):
            return _confirmed(at, header, field)
    for reading in header.readings:
        found = meaning_of(reading)
        if found.field in PRICES and (other := _said_above(header, reading)):
            return Column(at=at, header=header.shown, field=None, why=f"{UNCLEAR}, under '{other}'")
        if found.field:
            why = f"header word '{reading}'"
            return Column(
                at=at,
                header=header.shown,
                field=found.field,
                from_quantity=found.from_quantity,
                place=found.place,
                why=why,
            )
        if found.why:
            return Column(at=at, header=header.shown, field=None, why=found.why)
    return Column(at=at, header=header.shown, field=None, why=NOT_KNOWN)


def _said_above(header: Header, reading: str) -> str:
    """What the upper row of a header says, where the lower row alone was known: 'Retail' over '1-9', 'Old' over 'Net'.

    '' where it says nothing against a net price: a word for prices, the shop, the year or the currency.
    """
    if reading == header.shown or not header.shown.endswith(reading):
        return ""
    above = header.shown.removesuffix(reading).strip()
    said = meaning_of(above)
    against = said.why in (OLDER, WITH_TAX, SURCHARGE) or said.field in (
        "list price",
        "discount",
        "multiplier",
        "core charge",
    )
    return above if against or OTHER_SIDE.search(plain_text(above)) else ""


def _confirmed(at: int, header: Header, field: Field) -> Column:
    """A person's word. From how many pieces a price holds, and a warehouse, still stand in the header."""
    breaks = [n for reading in header.readings if (n := break_quantity(reading))] if field == "net price" else []
    places = [name for reading in header.readings if (name := _place(reading))] if field == "stock" else []
    pieces, place = next(iter(breaks), None), next(iter(places), "")
    return Column(at=at, header=header.shown, field=field, from_quantity=pieces, place=place, why=CONFIRMED)


def _place(reading: str) -> str:
    """The warehouse a header names, also one without a word for stock: 'Warehouse Dallas'; '' where it names none."""
    return meaning_of(reading).place or house_name(reading)


def columns_of(
    headers: Sequence[Header], meanings: Mapping[str, Field], cells_of: CellsOf | None = None
) -> tuple[Column, ...]:
    """All columns of a header row. Columns without a header and without a confirmed meaning are left out.

    Where the only number column is the maker's, it is the number to order by and becomes the supplier number. With
    `cells_of`, for the header that was decided on, values and close spellings add suggestions and columns without a
    header that look like a number or a price.
    """
    found = [column_of(at, header, meanings) for at, header in enumerate(headers)]
    kept = _without_taxed([column for column in found if column.header or column.field])
    kept = _one_number(with_pairs(kept))
    if cells_of is not None:
        kept = with_hints(kept, [column for column in found if not column.header and not column.field], cells_of)
    return tuple(kept)


def _without_taxed(columns: Sequence[Column]) -> list[Column]:
    """A price with tax beside the net price needs no question: it is not used."""
    net = "net price" in fields_of(columns)
    return [changed(c, None, f"not used, {WITH_TAX}") if net and c.why == WITH_TAX else c for c in columns]


def _one_number(columns: Sequence[Column]) -> list[Column]:
    """Drops weak number words beside an outspoken one; makes the only number column the one to order by."""
    numbers = [column for column in columns if column.field == "supplier number"]
    strong = [column for column in numbers if column.why == CONFIRMED or not is_weak_number(column.header)]
    if strong and len(numbers) > 1:
        why = f"'{name_of(strong[0])}' is the number"
        return [c if c.field != "supplier number" or c in strong else changed(c, None, why) for c in columns]
    return list(columns) if numbers else [_as_supplier_number(column) for column in columns]


def _as_supplier_number(column: Column) -> Column:
    if column.field != "maker number":
        return column
    return changed(column, "supplier number", f"{column.why}, the only number")
