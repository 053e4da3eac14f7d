"""What margins need of quotes, orders, receipts and bills, read from the same kept bodies: a few fields of each.

Over ten thousand jobs whole papers take too long to read, and what a margin stands on is little of them. Fields have
the names and the meaning they have on `Quote`, `PurchaseOrder`, `Receipt` and `Bill`; all others are passed over.
"""

from collections.abc import Mapping
from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .bill import GivenAway
from .landed_cost import CostLine
from .order import GoodsBack, PaperCharge, ReceiptLine
from .value import Value


class Amount(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """An amount whose currency is known from the paper it stands on; its digits as kept, for most of them are read once
    and become a whole number."""

    amount: str


class BehindFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """The owner's side of a quoted line."""

    supplier: str
    supplier_number: str
    sheet: int
    unit_cost: Amount
    cost: Amount
    price_rule: str
    landed_rule: str
    freight: Amount | None = None
    cost_alone: Amount | None = None


class FreightCaseFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """What a freight line comes to with a choice of parts."""

    approved: tuple[str, ...]
    without: tuple[str, ...]
    freight: Amount


class QuotedLine(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """A line of a quote."""

    label: str
    title: str
    part: str
    quantity: int
    unit_price: Amount
    parts_price: Amount
    freight_price: Amount
    hours: Decimal
    behind: BehindFacts | None
    category: str = ""
    special_order: bool = False
    freight_for: tuple[str, ...] = ()
    freight_cases: tuple[FreightCaseFacts, ...] = ()


class TotalFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """What a set of lines comes to before tax."""

    labels: tuple[str, ...]
    before_tax: Amount


class CustomerFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """Who pays."""

    name: str


class QuoteFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """A revision."""

    job: str
    revision: int
    customer: CustomerFacts
    made_at: datetime
    currency: str
    lines: tuple[QuotedLine, ...]
    agreed_total: TotalFacts
    everything_total: TotalFacts


class OrderedLine(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """A line of an order as it was placed."""

    line: int
    job: str
    revision: int
    label: str
    part: str
    description: str
    needed: int
    ordered: int
    price_basis: int
    unit_price: Decimal
    goods: Amount
    goods_cost: Amount
    landed: Amount
    surplus_cost: Amount
    core_charge: Amount | None = None
    weight_kg: Decimal | None = None
    category: str = ""


class OrderFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """An order as it was placed."""

    number: str
    supplier: str
    supplier_name: str
    currency: str
    lines: tuple[OrderedLine, ...]
    charges: tuple[CostLine, ...]
    discount_percent: Decimal = Decimal(0)
    rate: Decimal | None = None


class ReceiptFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """A delivery, or the word that sets one aside as recorded wrongly."""

    order: str
    paper: str
    lines: tuple[ReceiptLine, ...]
    freight: Amount
    rate: Decimal
    freight_by: Literal["value", "weight"] = "value"
    other_charges: tuple[PaperCharge, ...] = ()
    sets_aside: str = ""


class BilledLine(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """A line of a bill."""

    label: str
    parts_price: Amount
    freight_price: Amount
    hours: Decimal


class OffFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """How much of a discount on a line of a bill is off labour, and off a fee."""

    label: str
    labour: Amount
    fee: Amount


class BillFacts(Value, frozen=True, kw_only=True, forbid_unknown_fields=False, gc=False):
    """The final paper of a job; `revision` is the one it was billed by."""

    job: str
    revision: int
    lines: tuple[BilledLine, ...]
    total: TotalFacts
    off: tuple[OffFacts, ...] = ()


class Purchase(Value, frozen=True, kw_only=True):
    """An order with all that followed it. By line number, only where that is not as placed: `pieces` wanted now (0: the
    line was cancelled) and what they cost now (`goods`, in the supplier's currency). `labels`: the label a line has on
    the job's newest quote, where that is another one than it was ordered under."""

    order: OrderFacts
    receipts: tuple[ReceiptFacts, ...] = ()
    back: tuple[GoodsBack, ...] = ()
    pieces: Mapping[int, int] = {}
    goods: Mapping[int, Decimal] = {}
    labels: Mapping[int, str] = {}


class JobFacts(Value, frozen=True, kw_only=True):
    """A job's newest quote and what came of it. `approved` says for each approved line the day of the customer's yes,
    `answers` the word for every line. `before_tax`: what the approved lines come to before tax, or the bill where there
    is one; None: not asked for. `given_away`: extras fitted without a yes."""

    quote: QuoteFacts
    approved: Mapping[str, date]
    answers: Mapping[str, str]
    bill: BillFacts | None = None
    before_tax: Decimal | None = None
    given_away: tuple[GivenAway, ...] = ()
