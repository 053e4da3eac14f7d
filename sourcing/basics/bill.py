"""The final paper of a job: what was approved and done, what was declined with the customer's word, what is due."""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .approval import How
from .job import Customer, Finding, Machine
from .money import Money
from .quote import DocumentTotal, QuoteLine
from .settings import Shop
from .value import Value


class ApprovedBy(Value, frozen=True, kw_only=True):
    """Who said yes to a line, how, when, and who took it down."""

    label: str
    revision: int
    who: str
    how: How
    at: datetime
    taken_by: str
    contact: str = ""
    words: str = ""


class DeclinedLine(Value, frozen=True, kw_only=True):
    """A line the customer declined: the price offered before tax and with it, her word, the risk in plain words."""

    label: str
    title: str
    offered: Money
    offered_with_tax: Money
    who: str
    at: datetime
    words: str
    if_declined: str


class LeftOut(Value, frozen=True, kw_only=True):
    """Lines that were not done, approved or never answered, by label, and why: asked of a bill before it is written."""

    labels: tuple[str, ...] = ()
    words: str = ""


class NotDone(Value, frozen=True, kw_only=True):
    """A line that was not done, and why. It is not billed. `answered` False: the customer never answered it, which is
    neither a yes nor a no; else it was approved."""

    label: str
    title: str
    words: str
    answered: bool = True


class GivenAway(Value, frozen=True, kw_only=True):
    """An extra fitted without the customer's yes. It is not billed and never can be. `cost` is the shop's; `price` what
    it would have been charged at before tax, None where nobody said. For the owner only."""

    job: str
    what: str
    cost: Money
    price: Money | None
    words: str
    at: datetime
    who: str


class Off(Value, frozen=True, kw_only=True):
    """A discount at the counter: amounts off lines by label, before tax, and why; asked of a bill before it is
    written."""

    amounts: tuple[tuple[str, Decimal], ...] = ()
    words: str = ""


class LineOff(Value, frozen=True, kw_only=True):
    """What was taken off a line of the bill, in all and from what of it. The line holds what is left."""

    label: str
    amount: Money
    parts: Money
    labour: Money
    freight: Money
    fee: Money
    words: str


class DepositKept(Value, frozen=True, kw_only=True):
    """Money taken before the work is billed (above zero) or given back (below). Never in a margin."""

    job: str
    amount: Money
    how: str
    at: datetime
    taken_by: str
    words: str = ""


class Bill(Value, frozen=True, kw_only=True):
    """What the customer pays for. `lines` are approved ones only, without the owner's side. `due` is the total less
    deposits; below zero it is owed to the customer. `off`: discounts, taken off the lines already."""

    number: str
    job: str
    revision: int
    shop: Shop
    customer: Customer
    machine: Machine
    complaint: str
    made_at: datetime
    made_by: str
    locale: str
    currency: str
    lines: tuple[QuoteLine, ...]
    approvals: tuple[ApprovedBy, ...]
    total: DocumentTotal
    declined: tuple[DeclinedLine, ...]
    deposits: tuple[DepositKept, ...]
    due: Money
    findings: tuple[Finding, ...] = ()
    terms_text: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    paper_size: Literal["", "letter", "A4"] = ""
    tax_exempt: bool = False
    notes: tuple[str, ...] = ()
    not_done: tuple[NotDone, ...] = ()
    exempt_because: str = ""
    cautions_dated: date | None = None
    off: tuple[LineOff, ...] = ()


class FrozenBill(Value, frozen=True, kw_only=True):
    """A bill as kept: content, paper to the letter, SHA-256 (hex) of that paper."""

    bill: Bill
    paper: str
    sha256: str
