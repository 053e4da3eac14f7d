"""Promised dates, each kept with who said it and when; and what is still open, oldest first."""

from datetime import date, datetime
from typing import Literal

from .money import Money
from .value import Value

PromiseKind = Literal["parts here", "machine ready", "core back", "goods back", "answer"]
"""What was promised: parts at the shop, the machine back to the customer, an old part or goods back at the supplier, an
answer from somebody."""


class Promise(Value, frozen=True, kw_only=True):
    """One promised day or range of days. Never changed: a new word is a new promise beside it.

    `said_by` is the supplier, the shop or the customer, by name; `taken_by` who wrote it down. `order` and `line` name
    what it is about where it is about goods.
    """

    kind: PromiseKind
    job: str
    order: str = ""
    line: int | None = None
    earliest: date
    latest: date
    said_by: str
    said_at: datetime
    taken_by: str
    words: str = ""


OpenKind = Literal[
    "parts here", "machine ready", "core back", "goods back", "credit due", "deposit", "answer", "quote expires",
    "sheet expires",
]  # fmt: skip


class OpenPromise(Value, frozen=True, kw_only=True):
    """Something somebody waits for. `due` None: no day is known. `moved`: how often the day was changed, with every
    earlier word in `history`. `days_over`: days past due on the day of asking, 0 where it is not past."""

    kind: OpenKind
    what: str
    who: str
    due: date | None
    days_over: int
    job: str = ""
    order: str = ""
    line: int | None = None
    amount: Money | None = None
    moved: int = 0
    history: tuple[Promise, ...] = ()
