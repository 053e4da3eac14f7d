"""What reading a sheet gives: its worksheets, the meaning of its columns, the count of every row, problems."""

from datetime import date
from typing import Literal

from .problem import Problem
from .value import Value

Field = Literal[
    "supplier number", "maker", "maker number", "description", "list price", "net price", "price basis",
    "currency", "pack", "order multiple", "minimum", "stock", "lead time", "core charge", "superseded by",
    "no longer available", "note", "not used",
]  # fmt: skip
"""What a column can mean. Quantity-break columns are 'net price' with a quantity of their own."""


class Column(Value, frozen=True, kw_only=True):
    """A column of the table found: its header as read, what it means, from how many pieces on (price breaks).

    `field` None: not known, so not used, and listed for the clerk.
    """

    at: int
    header: str
    field: Field | None
    from_quantity: int | None = None
    why: str = ""


class Accounting(Value, frozen=True, kw_only=True):
    """Where every row of a worksheet went. `rows` = `offers` + `structure` + `problem_rows`, always."""

    worksheet: str
    rows: int
    offers: int
    structure: int
    problem_rows: int

    @property
    def adds_up(self) -> bool:
        """Whether every row is accounted for."""
        return self.rows == self.offers + self.structure + self.problem_rows


class SheetSummary(Value, frozen=True, kw_only=True):
    """What was found in a file, without its offers."""

    file: str
    columns: tuple[Column, ...]
    accounting: tuple[Accounting, ...]
    problems: tuple[Problem, ...]
    sheet_date: date | None
    currency: str


class KeptSheet(Value, frozen=True, kw_only=True):
    """A sheet as stored."""

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
