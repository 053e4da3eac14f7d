"""Which column of a table means what: a person's word first, then the dictionary; never a guess."""

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from sourcing.basics.problem import Place, Problem, Refused, problem
from sourcing.basics.sheet import Column, Field

from .header_words import break_quantity, field_of, is_unclear
from .number_cells import became_date
from .worksheet import letter_of

PRICES: tuple[Field, ...] = ("net price", "list price")
NUMBERS: tuple[Field, ...] = ("supplier number", "maker number")


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


def column_of(at: int, header: Header, meanings: Mapping[str, Field]) -> Column:
    """The column with what it means, and why that is thought. `field` None: not known."""
    for reading in (*header.readings, f"column {letter_of(at)}"):
        if field := meanings.get(plain_key(reading)):
            pieces = break_quantity(reading) if field == "net price" else None
            return Column(at=at, header=header.shown, field=field, from_quantity=pieces, why="confirmed")
    for reading in header.readings:
        if field := field_of(reading):
            why = f"header word '{reading}'"
            return Column(at=at, header=header.shown, field=field, from_quantity=break_quantity(reading), why=why)
        if is_unclear(reading):
            return Column(at=at, header=header.shown, field=None, why="net price or list price")
    return Column(at=at, header=header.shown, field=None, why="not known")


def columns_of(headers: Sequence[Header], meanings: Mapping[str, Field]) -> tuple[Column, ...]:
    """All columns of a header row. Columns without a header and without a confirmed meaning are left out.

    Where the only number column is the maker's, it is the number to order by and becomes the supplier number.
    """
    found = [column_of(at, header, meanings) for at, header in enumerate(headers)]
    kept = [column for column in found if column.header or column.field]
    if not any(column.field == "supplier number" for column in kept):
        kept = [_as_supplier_number(column) for column in kept]
    return tuple(kept)


def _as_supplier_number(column: Column) -> Column:
    if column.field != "maker number":
        return column
    return Column(at=column.at, header=column.header, field="supplier number", why=f"{column.why}, the only number")


def refuse_unclear(columns: Sequence[Column], place: Place) -> None:
    """Refuses columns that can't be told apart or lack what an offer needs; says every fault at once."""
    faults = [*_unclear_prices(columns, place), *_claimed_twice(columns, place), *_damaged_breaks(columns, place)]
    fields = {column.field for column in columns}
    shown = ", ".join(f"'{name_of(column)}'" for column in columns) or "none"
    if not faults and "supplier number" not in fields:
        faults.append(problem("no-number-column", place=place, found=shown))
    if not faults and not fields.intersection(PRICES):
        faults.append(problem("no-price-column", place=place, found=shown))
    if faults:
        raise Refused(*faults)


def name_of(column: Column) -> str:
    """The column's header, or its letter where it has none."""
    return column.header or f"column {letter_of(column.at)}"


def _unclear_prices(columns: Sequence[Column], place: Place) -> list[Problem]:
    unclear = [column for column in columns if column.why == "net price or list price"]
    return [problem("price-column-unclear", place=place, found=column.header) for column in unclear]


def _claimed_twice(columns: Sequence[Column], place: Place) -> list[Problem]:
    def claim(column: Column) -> tuple[str, int]:
        return (column.field or "", column.from_quantity or 1)

    counts = Counter(claim(column) for column in columns if column.field not in (None, "not used"))
    faults = []
    for (field, _), count in counts.items():
        if count > 1:
            rivals = [column for column in columns if column.field == field]
            faults.append(_twice(field, rivals, place))
    return faults


def _twice(field: str, rivals: Sequence[Column], place: Place) -> Problem:
    shown = ", ".join(f"'{name_of(column)}' (column {letter_of(column.at)})" for column in rivals)
    last = rivals[-1]
    same_header = any(column.header == last.header for column in rivals[:-1])
    word = f"column {letter_of(last.at)}" if same_header else name_of(last)
    return problem("meaning-twice", place=place, meaning=field, found=shown, word=word)


def _damaged_breaks(columns: Sequence[Column], place: Place) -> list[Problem]:
    """A header '5-9' that a spreadsheet made 'May 9': with break columns beside it, that one was a break too."""
    if not any(column.from_quantity for column in columns):
        return []
    damaged = [c for c in columns if c.field is None and (became_date(c.header) or _is_day(c.header))]
    return [problem("header-became-date", place=place, found=column.header) for column in damaged]


def _is_day(header: str) -> bool:
    return re.fullmatch(r"\d{4}-\d{2}-\d{2}( 00:00:00)?", header) is not None
