"""A quote: lines with prices for the customer, the owner's figures behind them, totals, frozen as revisions."""

from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .job import Customer, Machine
from .money import Money
from .settings import ChargeRules, PriceKind, Shop
from .value import Value


class Behind(Value, frozen=True, kw_only=True):
    """The owner's side of a line's part: which offer, what it costs, how the price came. Never for the customer.

    `unit_cost` is net per piece in the shop's currency; `cost` is the landed cost charged to the line, without
    what goes on the shelf (`surplus_cost`).
    """

    supplier: str
    supplier_number: str
    sheet: int
    unit_cost: Money
    cost: Money
    surplus_cost: Money
    price_rule: str
    landed_rule: str
    latest: date | None


class QuoteLine(Value, frozen=True, kw_only=True):
    """One line of a quote. Amounts are before tax. `label` is '1', '2' for agreed lines and 'A', 'B' for add-ons.

    `number` is the part number the customer's yes covers.
    """

    label: str
    kind: Literal["agreed", "add-on"]
    title: str
    part: str
    number: str
    description: str
    quantity: int
    unit_price: Money
    parts_price: Money
    hours: Decimal
    labour_price: Money
    freight_price: Money
    found: str
    why: str
    if_declined: str
    behind: Behind | None

    @property
    def price(self) -> Money:
        """Parts, labour and freight of the line before tax."""
        return self.parts_price + self.labour_price + self.freight_price


class TaxAmount(Value, frozen=True, kw_only=True):
    """One tax of a document: rounded once, on the sum of what it is charged on."""

    name: str
    percent: Decimal
    taxable: Money
    amount: Money


class DocumentTotal(Value, frozen=True, kw_only=True):
    """What a set of lines comes to. `labels` says which lines are in it; `sums` is before tax, by kind."""

    labels: tuple[str, ...]
    sums: tuple[tuple[PriceKind, Money], ...]
    before_tax: Money
    taxes: tuple[TaxAmount, ...]
    total: Money


class AddOnPrice(Value, frozen=True, kw_only=True):
    """What an add-on costs the customer with tax and fees: the difference of two document totals."""

    label: str
    price: Money
    total_with_it: Money


class Quote(Value, frozen=True, kw_only=True):
    """A revision's content. Never changed once made: a change is a new revision with the next number.

    `arrives` is the range of days on which the parts are promised, first and last; None where not known.
    `warnings` are for the owner and never printed for the customer.
    """

    job: str
    revision: int
    shop: Shop
    customer: Customer
    machine: Machine
    complaint: str
    made_at: datetime
    valid_to: date
    locale: str
    currency: str
    lines: tuple[QuoteLine, ...]
    agreed_total: DocumentTotal
    everything_total: DocumentTotal
    add_on_prices: tuple[AddOnPrice, ...]
    arrives: tuple[date, date] | None
    terms_text: tuple[str, ...]
    cautions: tuple[str, ...]
    cautions_dated: date | None
    warnings: tuple[str, ...]
    charge_rules: ChargeRules = ChargeRules()

    def line(self, label: str) -> QuoteLine | None:
        """The line with that label, or None."""
        return next((line for line in self.lines if line.label == label), None)

    def labels(self, kind: Literal["agreed", "add-on"]) -> tuple[str, ...]:
        """Labels of all lines of a kind, in order."""
        return tuple(line.label for line in self.lines if line.kind == kind)


class FrozenQuote(Value, frozen=True, kw_only=True):
    """A revision as kept: its content, the paper to the letter, and the hash (SHA-256, hex) of that paper."""

    quote: Quote
    paper: str
    sha256: str
