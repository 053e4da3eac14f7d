"""What reading a sheet gives: its worksheets, the meaning of its columns, the count of every row, problems."""

from datetime import date
from typing import Literal

from .problem import Problem
from .value import Value

Field = Literal[
    "supplier number", "maker", "maker number", "gtin", "description", "list price", "net price", "discount code",
    "discount", "multiplier", "price basis", "currency", "pack", "order multiple", "minimum", "break quantity",
    "stock", "lead time", "core charge", "superseded by", "no longer available", "weight", "package length",
    "package width", "package height", "package dimensions", "oversize", "hazardous",
    "returnable", "origin", "tariff code", "valid from", "valid to", "note", "not used",
]  # fmt: skip
"""What a column can mean. Quantity-break columns are 'net price' with a quantity of their own, stock columns of one
warehouse are 'stock' with a place. 'discount' is a per cent off the list price, 'multiplier' what the list price is
multiplied with, 'discount code' a letter whose table the supplier keeps. 'package length' and its like are one piece's
as it is packed, 'package dimensions' all three in one cell. 'break quantity': from how many pieces on the price of its
row holds, where price breaks stand in rows."""


class Column(Value, frozen=True, kw_only=True):
    """A column of the table found: its header as read, what it means, from how many pieces on (price breaks).

    `field` None: not known, so not used, and listed for the clerk. `place`: the warehouse of a stock column. `pair`:
    which of several quantities and prices belong together, as in 'Qty 2' and 'Price 2'.
    `why`: the reason in words. `suggested`: what a person may want to confirm; never taken by itself.
    """

    at: int
    header: str
    field: Field | None
    from_quantity: int | None = None
    place: str = ""
    pair: int | None = None
    why: str = ""
    suggested: Field | None = None

    @property
    def letter(self) -> str:
        """The column's letter as spreadsheets show it: A, B, ... Z, AA."""
        letters, left = "", self.at + 1
        while left:
            left, digit = divmod(left - 1, 26)
            letters = chr(ord("A") + digit) + letters
        return letters


class Region(Value, frozen=True, kw_only=True):
    """Where a table stands: its header rows and its body, as the file numbers rows, and its columns.

    `last_row` is the last row that belongs to the table; a table without a body ends with its header. No header rows:
    a person named the columns by letter.
    """

    worksheet: str
    header_row: int | None
    last_header_row: int | None
    last_row: int
    columns: tuple[Column, ...]


StructureKind = Literal["outside a table", "header", "blank", "section", "total", "note", "price break"]


class StructureRow(Value, frozen=True, kw_only=True):
    """A row that is no offer and nothing wrong, and what it is instead."""

    worksheet: str
    row: int
    kind: StructureKind


class Accounting(Value, frozen=True, kw_only=True):
    """Where every row of a worksheet went. `rows` = `offers` + `structure` + `problem_rows`, always.

    `hidden`: the workbook hides it, so it was not read.
    """

    worksheet: str
    rows: int
    offers: int
    structure: int
    problem_rows: int
    hidden: bool = False

    @property
    def adds_up(self) -> bool:
        """Whether every row is accounted for."""
        return self.rows == self.offers + self.structure + self.problem_rows


class SheetSummary(Value, frozen=True, kw_only=True):
    """What was found in a file, without its offers.

    `problems` cost their row; `questions` wait for a person's word before the sheet can be kept; `notes` are to be
    known and cost nothing (hidden rows, a cell beside the price that can't be read). `sheet_date`: the day a line
    above the table says the prices hold from. `reading`: how the file was read, such as 'semicolons, cp1252'.
    """

    file: str
    columns: tuple[Column, ...]
    accounting: tuple[Accounting, ...]
    problems: tuple[Problem, ...]
    sheet_date: date | None
    currency: str
    regions: tuple[Region, ...] = ()
    questions: tuple[Problem, ...] = ()
    notes: tuple[Problem, ...] = ()
    reading: str = ""


class KeptSheet(Value, frozen=True, kw_only=True):
    """A sheet as stored.

    `is_newest`: on the day it is looked at, it is the supplier's sheet that counts. `not_yet`: it is dated after that
    day, so an older one counts until then.
    """

    sheet: int
    supplier: str
    file: str
    sheet_date: date
    sha256: str
    offers: int
    structure: int
    problem_rows: int
    rows: int
    is_newest: bool
    not_yet: bool = False
