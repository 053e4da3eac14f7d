"""Number, maker, description and price of every row of a file: what matching two files needs, and nothing else.

Unlike a supplier's sheet such a file may lack numbers, makers or prices, and no row is left out for it: a price nobody
can read is no price, a number a spreadsheet has damaged is told and matches nothing.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from typing import Literal, get_args

from ..basics.problem import Place, refused
from .cells.cell import Bad, shown_of
from .cells.money_cells import BasedPrice, parse_money
from .cells.number_cells import parse_numbers
from .files.grid import read_grid
from .headers.header_words import meaning_of
from .worksheet import Cell, Worksheet, is_blank

Wanted = Literal["number", "maker", "description", "price"]

NAMES: dict[Wanted, tuple[str, ...]] = {
    "number": ("number", "part number", "maker number", "model number", "modelno", "model", "mpn", "supplier number"),
    "maker": ("maker", "brand", "manufacturer", "make"),
    "description": ("description", "title", "name", "product name", "product title"),
    "price": ("price", "net price", "list price"),
}
"""Header words taken, the best first; what else means the same stands in the dictionary of price sheets."""

FIELDS: dict[str, Wanted] = {
    "maker number": "number",
    "supplier number": "number",
    "maker": "maker",
    "description": "description",
    "net price": "price",
    "list price": "price",
}
LAST_HEADER = 30
"""A header further down than this row is not looked for."""


@dataclass(frozen=True)
class FourColumns:
    """Every row that is not blank, by position; `rows` is its row in the file (the first row of the file is 1).

    A blank number, maker or description is "", a price that is not stated or can't be read None. `damaged`: by
    position, the number as a spreadsheet left it; its `number` is "". `used`: the header of each column taken.
    `headers`: all of them, in small letters.
    """

    file: str
    rows: Sequence[int]
    number: Sequence[str]
    maker: Sequence[str]
    description: Sequence[str]
    price: Sequence[Decimal | None]
    used: Mapping[str, str] = field(default_factory=dict)
    damaged: Mapping[int, str] = field(default_factory=dict)
    headers: frozenset[str] = frozenset()


def four_columns(data: bytes, file: str, said: Mapping[str, str]) -> FourColumns:
    """Read them. `said`: header to 'number', 'maker', 'description' or 'price', from a person.

    Refuses a file without a header that names a number or a description.
    """
    for header, meaning in said.items():
        if meaning not in get_args(Wanted):
            raise refused("unknown-word", found=meaning, column=header, known=", ".join(get_args(Wanted)))
    for worksheet in read_grid(data, file):
        found = None if worksheet.hidden else _header(worksheet, said)
        if found:
            return _read(worksheet, file, *found)
    raise refused("no-four-columns", place=Place(file=file))


def _header(worksheet: Worksheet, said: Mapping[str, str]) -> tuple[int, dict[Wanted, int]] | None:
    """The row of the header and the column of each thing; the first row that names a number or a description."""
    for at, row in enumerate(worksheet.rows[:LAST_HEADER]):
        columns = _columns([shown_of(cell).strip().casefold() for cell in row], said)
        if ("number" in columns or "description" in columns) and len(columns) >= min(2, _filled(row)):
            return at, columns
    return None


def _filled(row: Sequence[Cell]) -> int:
    return sum(not is_blank([cell]) for cell in row)


def _columns(headers: Sequence[str], said: Mapping[str, str]) -> dict[Wanted, int]:
    by_person = {header.strip().casefold(): meaning for header, meaning in said.items()}
    ranked: dict[Wanted, tuple[int, int]] = {}
    for at, header in enumerate(headers):
        found = _meaning(header, by_person)
        if found and (found[0] not in ranked or found[1] < ranked[found[0]][0]):
            ranked[found[0]] = (found[1], at)
    return {wanted: at for wanted, (_, at) in ranked.items()}


def _meaning(header: str, by_person: Mapping[str, str]) -> tuple[Wanted, int] | None:
    """What a header means, and how good its word is: a person's first, then our own words, then the dictionary."""
    if not header:
        return None
    for wanted, names in NAMES.items():
        if by_person.get(header) == wanted:
            return wanted, -1
        if header in names:
            return wanted, names.index(header)
    meaning = meaning_of(header).field
    return (FIELDS[meaning], 100) if meaning in FIELDS else None


def _read(worksheet: Worksheet, file: str, header: int, columns: Mapping[Wanted, int]) -> FourColumns:
    first, end = header + 1, len(worksheet.rows)
    every = worksheet.columns(first, end, worksheet.width)
    kept = [at for at in range(end - first) if not is_blank([every[column][at] for column in columns.values()])]

    def cells(wanted: Wanted) -> list[Cell]:
        return [every[columns[wanted]][at] for at in kept] if wanted in columns else [""] * len(kept)

    numbers = parse_numbers(cells("number"))
    return FourColumns(
        file=file,
        rows=[worksheet.row_numbers[first + at] for at in kept],
        number=["" if isinstance(number, Bad) else number for number in numbers],
        maker=[shown_of(cell).strip() for cell in cells("maker")],
        description=[shown_of(cell).strip() for cell in cells("description")],
        price=_prices(cells("price")),
        used={wanted: shown_of(worksheet.rows[header][at]) for wanted, at in columns.items()},
        damaged={at: number.found for at, number in enumerate(numbers) if isinstance(number, Bad)},
        headers=frozenset(shown_of(cell).strip().casefold() for cell in worksheet.rows[header]),
    )


def _prices(cells: list[Cell]) -> list[Decimal | None]:
    return [
        price
        if isinstance(price, Decimal)
        else price.price / price.basis.count
        if isinstance(price, BasedPrice)
        else None
        for price in parse_money(cells, "")
    ]
