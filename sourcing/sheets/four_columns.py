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
from .headers.header_words import UNCLEAR, meaning_of
from .worksheet import Cell, Worksheet, is_blank

Wanted = Literal["number", "maker", "description", "price"]

NOT_USED = "not used"

NAMES: dict[Wanted, tuple[str, ...]] = {
    "number": (
        *("number", "part number", "maker number", "model number", "modelno", "model", "mpn", "supplier number"),
        *("modell", "modellnummer", "modèle", "modelo"),
    ),
    "maker": ("maker", "brand", "manufacturer", "make"),
    "description": (
        *("title", "product title", "name", "product name", "titel", "titre", "título"),
        *("description", "short description", "long description"),
    ),
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
BY_PERSON, IN_DICTIONARY = -1, 100
"""How good a header's word is; words of `NAMES` stand between, by their place."""

Columns = Mapping[Wanted, tuple[int, ...]]
"""Of each thing its columns by position, the best first."""

LAST_HEADER = 30
"""A header further down than this row is not looked for."""

TITLE_WORDS = 4
"""A title of fewer words says too little by itself: what another column of words says is read behind it.

Behind a longer title it is left aside, for long texts speak of much that tells no two parts apart.
"""


@dataclass(frozen=True)
class FourColumns:
    """Every row that is not blank, by position; `rows` is its row in the file (the first row of the file is 1).

    A blank number, maker or description is "", a price that is not stated or can't be read None. `damaged`: by
    position, the number as a spreadsheet left it; its `number` is "". `used`: the headers of the columns taken.
    `headers`: all of them, in small letters.
    """

    file: str
    rows: Sequence[int]
    number: Sequence[str]
    maker: Sequence[str]
    description: Sequence[str]
    price: Sequence[Decimal | None]
    used: Mapping[Wanted, Sequence[str]] = field(default_factory=dict)
    damaged: Mapping[int, str] = field(default_factory=dict)
    headers: frozenset[str] = frozenset()

    def words(self) -> str:
        """What was taken for what, and what was left aside: 'number = modelno; description = title; not used: id'."""
        taken = [f"{wanted} = {', '.join(headers)}" for wanted, headers in self.used.items()]
        known = {header.strip().casefold() for headers in self.used.values() for header in headers}
        left = ", ".join(sorted(self.headers - known - {""}))
        return "; ".join((*taken, *((f"{NOT_USED}: {left}",) if left else ())))


def four_columns(data: bytes, file: str, said: Mapping[str, str]) -> FourColumns:
    """Read them. `said`: header to 'number', 'maker', 'description', 'price' or 'not used', from a person.

    Refuses a file without a header that names a number or a description.
    """
    known = (*get_args(Wanted), NOT_USED)
    for header, meaning in said.items():
        if meaning not in known:
            raise refused("unknown-word", found=meaning, column=header, known=", ".join(known))
    for worksheet in read_grid(data, file):
        found = None if worksheet.hidden else _header(worksheet, said)
        if found:
            return _read(worksheet, file, *found)
    raise refused("no-four-columns", place=Place(file=file))


def _header(worksheet: Worksheet, said: Mapping[str, str]) -> tuple[int, Columns] | None:
    """The row of the header and the columns of each thing; the first row that names a number or a description."""
    for at, row in enumerate(worksheet.rows[:LAST_HEADER]):
        columns = _columns([shown_of(cell).strip().casefold() for cell in row], said)
        taken = sum(map(len, columns.values()))
        if ("number" in columns or "description" in columns) and taken >= min(2, _filled(row)):
            return at, columns
    return None


def _filled(row: Sequence[Cell]) -> int:
    return sum(not is_blank([cell]) for cell in row)


def _columns(headers: Sequence[str], said: Mapping[str, str]) -> Columns:
    """Of each thing its columns, the best first: one, but for words, of which several may say something."""
    by_person = {header.strip().casefold(): meaning for header, meaning in said.items()}
    ranked: dict[Wanted, list[tuple[int, int]]] = {}
    for at, header in enumerate(headers):
        found = _meaning(header, by_person)
        if found:
            ranked.setdefault(found[0], []).append((found[1], at))
    return {wanted: _best(wanted, sorted(found)) for wanted, found in ranked.items()}


def _best(wanted: Wanted, ranked: Sequence[tuple[int, int]]) -> tuple[int, ...]:
    """What a person named alone counts, where she named any."""
    named = [at for rank, at in ranked if rank == BY_PERSON]
    found = named or [at for _, at in ranked]
    return tuple(found if wanted == "description" else found[:1])


def _meaning(header: str, by_person: Mapping[str, str]) -> tuple[Wanted, int] | None:
    """What a header means, and how good its word is: a person's first, then our own words, then the dictionary."""
    if not header or by_person.get(header) == NOT_USED:
        return None
    for wanted, names in NAMES.items():
        if by_person.get(header) == wanted:
            return wanted, BY_PERSON
        if header in names:
            return wanted, names.index(header)
    meaning = meaning_of(header)
    if meaning.why == UNCLEAR:  # net or list: for comparing two tables any price will do
        return "price", len(NAMES["price"])
    return (FIELDS[meaning.field], IN_DICTIONARY) if meaning.field in FIELDS else None


def _read(worksheet: Worksheet, file: str, header: int, columns: Columns) -> FourColumns:
    first, end = header + 1, len(worksheet.rows)
    every = worksheet.columns(first, end, worksheet.width)
    taken = [column for several in columns.values() for column in several]
    kept = [at for at in range(end - first) if not is_blank([every[column][at] for column in taken])]

    def cells(wanted: Wanted) -> list[Cell]:
        return [every[columns[wanted][0]][at] for at in kept] if wanted in columns else [""] * len(kept)

    numbers = parse_numbers(cells("number"))
    return FourColumns(
        file=file,
        rows=[worksheet.row_numbers[first + at] for at in kept],
        number=["" if isinstance(number, Bad) else number for number in numbers],
        maker=[shown_of(cell).strip() for cell in cells("maker")],
        description=_words([[shown_of(every[at][row]) for row in kept] for at in columns.get("description", ())], kept),
        price=_prices(cells("price")),
        used={
            wanted: [shown_of(worksheet.rows[header][at]).strip() for at in columns[wanted]]
            for wanted in get_args(Wanted)
            if wanted in columns
        },
        damaged={at: number.found for at, number in enumerate(numbers) if isinstance(number, Bad)},
        headers=frozenset(shown_of(cell).strip().casefold() for cell in worksheet.rows[header]),
    )


def _words(columns: Sequence[Sequence[str]], rows: Sequence[int]) -> list[str]:
    """The title of each row; where it says little, the other words of the row behind it."""
    found = [""] * len(rows)
    for column in columns:
        for at, text in enumerate(column):
            if text.strip() and len(found[at].split()) < TITLE_WORDS:
                found[at] = f"{found[at]} {text.strip()}".strip()
    return found


def _prices(cells: list[Cell]) -> list[Decimal | None]:
    return [
        price
        if isinstance(price, Decimal)
        else price.price / price.basis.count
        if isinstance(price, BasedPrice)
        else None
        for price in parse_money(cells, "")
    ]
