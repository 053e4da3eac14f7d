"""What a person must say of the columns before a sheet can be kept: unclear, claimed twice, missing, contradicted."""

import re
from collections import Counter
from collections.abc import Callable, Sequence

from sourcing.basics.problem import Place, Problem, Refused, problem
from sourcing.basics.sheet import Column, Field

from ..cells.number_cells import became_date
from ..worksheet import Cell, letter_of
from .close_words import HARMLESS
from .column_names import CONFIRMED, PRICES, fields_of, is_open, name_of
from .column_values import doubts
from .header_keys import words_in
from .header_words import (
    DISCOUNT_OR_DISCONTINUED,
    MULTIPLE_OR_MULTIPLIER,
    QUANTITY,
    SEVERAL_DISCOUNTS,
    SURCHARGE,
    UNCLEAR,
    WITH_TAX,
)

YOURS = frozenset({"your", "you", "ihr", "votre", "su", "uw", "contract"})
"""Words of the price that is this shop's own, where several net prices stand side by side."""

OFTEN = (None, "not used", "note", "price basis")
MAY_BE: dict[str, Field] = {
    QUANTITY: "stock",
    MULTIPLE_OR_MULTIPLIER: "order multiple",
    DISCOUNT_OR_DISCONTINUED: "discount",
    SEVERAL_DISCOUNTS: "discount",
}
"""What is asked for where no values were looked at."""


def questions(
    columns: Sequence[Column], place: Place, cells_of: Callable[[int], Sequence[Cell]] | None = None
) -> tuple[Problem, ...]:
    """Everything that keeps the columns from being told for sure, all of it at once; () where nothing does.

    With `cells_of` the values under each header are asked too, and contradictions are questions.
    """
    found = [*_unclear(columns, place), *_claimed_twice(columns, place), *_damaged_breaks(columns, place)]
    if cells_of is not None:
        found += _contradicted(columns, place, cells_of)
    found += _missing(columns, place, blocked=bool(found))
    return tuple(found)


def refuse_unclear(columns: Sequence[Column], place: Place) -> None:
    """Refuses columns that can't be told apart or lack what an offer needs; says every fault at once."""
    if found := questions(columns, place):
        raise Refused(*found)


def _missing(columns: Sequence[Column], place: Place, blocked: bool) -> list[Problem]:
    """No number, no price: only where no other question may bring them."""
    fields = fields_of(columns)
    shown = ", ".join(f"'{name_of(column)}'" for column in columns) or "none"
    faults = []
    if not blocked and "supplier number" not in fields:
        faults.append(problem("no-number-column", place=place, found=shown))
    if not blocked and not fields.intersection(PRICES):
        faults.append(problem("no-price-column", place=place, found=shown))
    return faults


def _unclear(columns: Sequence[Column], place: Place) -> list[Problem]:
    """The columns that wait for a person, and those with a suggestion that could cost money or identity."""
    asked = [column for column in columns if is_open(column) or _is_costly_guess(column)]
    return [_question(column, place) for column in asked]


def _is_costly_guess(column: Column) -> bool:
    return (
        column.field is None
        and column.suggested is not None
        and (column.suggested not in HARMLESS or not column.header)
    )


def _question(column: Column, place: Place) -> Problem:
    name = name_of(column)
    hints = (f"{name}={column.suggested} ({column.why.partition('; ')[2]})",) if column.suggested else ()
    if column.why.startswith(UNCLEAR):
        return problem("price-column-unclear", place=place, suggestions=hints, found=name)
    if column.why == WITH_TAX:
        return problem("price-with-tax", place=place, found=name)
    if column.why == SURCHARGE:
        return problem("column-surcharge", place=place, found=name)
    may_be = what_it_may_be(column) or "not used"
    return problem("column-guess", place=place, found=name, meaning=may_be, reason=column.why)


def what_it_may_be(column: Column) -> Field | None:
    """The meaning a person is asked about: by the values, else by what an unclear word of the header may mean."""
    return column.suggested or MAY_BE.get(column.why)


def _contradicted(columns: Sequence[Column], place: Place, cells_of: Callable[[int], Sequence[Cell]]) -> list[Problem]:
    doubted = [(column, doubts(column, cells_of(column.at))) for column in columns if column.why != CONFIRMED]
    return [
        problem("column-contradicted", place=place, found=name_of(column), why=why) for column, why in doubted if why
    ]


def _claimed_twice(columns: Sequence[Column], place: Place) -> list[Problem]:
    """Meanings more than one column has; stock may stand once for each warehouse, a price once for each quantity.

    What a price is for may stand in two columns, a count and a unit.
    """

    def claim(column: Column) -> tuple[str, int, str, int | None]:
        return (column.field or "", column.from_quantity or 1, column.place, column.pair)

    counts = Counter(
        claim(column) for column in columns if column.field not in (None, "not used", "note", "price basis")
    )
    return [
        _twice(found[0], [column for column in columns if claim(column) == found], place)
        for found, count in counts.items()
        if count > 1
    ]


def _twice(field: str, rivals: Sequence[Column], place: Place) -> Problem:
    shown = ", ".join(f"'{name_of(column)}' (column {letter_of(column.at)})" for column in rivals)
    yours = [column for column in rivals if YOURS.intersection(words_in(column.header))]
    others = [column for column in rivals if column is not (yours or rivals)[0]]
    words = [_word(column, rivals) for column in others]
    hints = tuple(f"{word}=not used" for word in words)
    return problem("meaning-twice", place=place, suggestions=hints, meaning=field, found=shown, word=words[-1])


def _word(column: Column, rivals: Sequence[Column]) -> str:
    """How a person names the column: by its header, or by its letter where another has the same."""
    same = sum(other.header == column.header for other in rivals) > 1
    return f"column {letter_of(column.at)}" if same else name_of(column)


def _damaged_breaks(columns: Sequence[Column], place: Place) -> list[Problem]:
    """A header '5-9' that a spreadsheet made 'May 9': with break columns beside it, that one was a break too."""
    if not any(column.from_quantity for column in columns):
        return []
    damaged = [c for c in columns if c.field is None and (became_date(c.header) or _is_day(c.header))]
    return [problem("header-became-date", place=place, found=column.header) for column in damaged]


def _is_day(header: str) -> bool:
    return re.fullmatch(r"\d{4}-\d{2}-\d{2}( 00:00:00)?", header) is not None
