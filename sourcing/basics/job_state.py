"""Where a job is: plain words that follow from what happened, never set by hand."""

from datetime import date, datetime
from typing import Literal

from .approval import AnswerWord, Approval, GivenOut
from .bill import DepositKept, GivenAway, LineOff
from .deed import Deed
from .job import Job
from .money import Money
from .order import PurchaseOrder, Receipt
from .promise import Promise
from .quote import Quote
from .value import Value

StateWord = Literal[
    "taken in", "quoted", "waiting for answer", "declined", "approved in part", "approved", "ordered in part",
    "ordered", "received in part", "all received", "closed",
]  # fmt: skip

WaitsFor = Literal["us", "the customer", "the supplier", "nobody"]


HeldFor = Literal["not as approved", "which part", "its freight", "a new quote", "its old part"]
"""What a line waits for before it can be ordered, or go on as it was ordered: a decision what is to be done, or which
part it needs; a yes to its freight; a revision that says where it is bought, or that the old part goes back."""


class Came(Value, frozen=True, kw_only=True):
    """Good pieces that came for a line at once."""

    at: datetime
    pieces: int


class LineFacts(Value, frozen=True, kw_only=True):
    """What happened to one line of the newest revision. `needed` pieces of a part, 0 where it takes none.

    `order` blank: it stands on no order. A line on an order was approved, whatever the newest revision still asks.
    `expected`: the last day promised for it, None where no day is known. `condition` of its yes; blank: none.
    `said_since`: something was said of it after it was ordered, or it came otherwise. `held`: what it waits for; blank:
    nothing, or nobody looked.
    """

    label: str
    needed: int
    answer: AnswerWord
    answered_at: datetime | None = None
    condition: str = ""
    order: str = ""
    ordered_at: datetime | None = None
    supplier: str = ""
    expected: date | None = None
    came: tuple[Came, ...] = ()
    said_since: bool = False
    held: HeldFor | Literal[""] = ""

    @property
    def complete_at(self) -> datetime | None:
        """When the last piece needed came, for the last time where some went back; None while one is missing."""
        so_far, since = 0, None
        for one in sorted(self.came, key=lambda one: one.at):
            so_far += one.pieces
            since = (since or one.at) if so_far >= self.needed else None
        return since


class JobFacts(Value, frozen=True, kw_only=True):
    """What happened to a job: the moments, None where it did not; the lines of its newest quote.

    `waiting_back`: old parts and goods of it that wait to be sent back, or for their credit.
    `held`: the customer's money that the shop has, after the bill what is left of it; None where nothing.
    """

    job: str
    customer: str
    taken_in_at: datetime
    quoted_at: datetime | None = None
    valid_to: date | None = None
    given_at: datetime | None = None
    lines: tuple[LineFacts, ...] = ()
    billed_at: datetime | None = None
    held: Money | None = None
    waiting_back: int = 0


class JobState(Value, frozen=True, kw_only=True):
    """The words, since when they hold, who waits for whom, and what comes next. `beside`: what is also true."""

    words: StateWord
    since: datetime
    waits_for: WaitsFor
    next_step: str
    beside: tuple[str, ...] = ()


class JobRow(Value, frozen=True, kw_only=True):
    """A job in the list of jobs."""

    job: str
    customer: str
    machine: str
    state: JobState


class WholeJob(Value, frozen=True, kw_only=True):
    """Everything of one job. `quote` None before the first. `answers` are all there were, the last word of a line by
    `words`; `approved` is the total of what is approved, with tax. `alarms` are sentences."""

    job: Job
    state: JobState
    quote: Quote | None = None
    words: tuple[tuple[str, AnswerWord], ...] = ()
    approved: Money | None = None
    answers: tuple[Approval, ...] = ()
    given: tuple[GivenOut, ...] = ()
    orders: tuple[PurchaseOrder, ...] = ()
    receipts: tuple[Receipt, ...] = ()
    promises: tuple[Promise, ...] = ()
    deposits: tuple[DepositKept, ...] = ()
    bill: str = ""
    due: Money | None = None
    alarms: tuple[str, ...] = ()
    off: tuple[LineOff, ...] = ()
    given_away: tuple[GivenAway, ...] = ()
    deeds: tuple[Deed, ...] = ()
