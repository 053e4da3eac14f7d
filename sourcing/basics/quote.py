"""A quote: lines with prices for the customer, the owner's figures behind them, totals, frozen as revisions."""

from collections.abc import Collection, Iterable
from datetime import date, datetime
from decimal import Decimal
from typing import Literal

from .job import Customer, Finding, Machine
from .money import Money
from .settings import ChargeRules, DepositRule, PriceKind, Shop, Tolerance
from .value import Value


class Behind(Value, frozen=True, kw_only=True):
    """The owner's side of a line's part: which offer, what it costs, how the price came. Never for the customer.

    `unit_cost` is net per piece in the shop's currency; `cost` is the landed cost charged to the line, without
    what goes on the shelf (`surplus_cost`). `warnings`: of cliffs, of a floor that is missed, of a price that is held.
    `returnable` None: not known. `held`: the price was promised earlier and holds whatever the part costs now.
    `freight` is the line's share of its order's freight, within `cost`; `cost_alone` an agreed line's landed cost when
    every add-on is declined. None in papers kept before they were written down.
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
    warnings: tuple[str, ...] = ()
    returnable: bool | None = None
    held: bool = False
    freight: Money | None = None
    cost_alone: Money | None = None


class Answered(Value, frozen=True, kw_only=True):
    """The answer that already held for a line when its revision was made, as printed on it: what, who, how, when."""

    answer: Literal["approved", "declined"]
    who: str
    how: str
    on: date


class FreightCase(Value, frozen=True, kw_only=True):
    """What a freight line comes to with a yes to each line of `approved` and to none of `without`; labels of parts."""

    approved: tuple[str, ...]
    without: tuple[str, ...]
    freight: Money

    @property
    def labels(self) -> tuple[str, ...]:
        """Every line it speaks of."""
        return (*self.approved, *self.without)

    def holds(self, labels: Collection[str]) -> bool:
        """Whether that is the choice of parts among the lines of these labels."""
        return chosen(self.approved, self.without, labels)


def chosen(approved: Iterable[str], without: Iterable[str], labels: Collection[str]) -> bool:
    """Whether all of `approved` and none of `without` are among the labels."""
    return all(label in labels for label in approved) and not any(label in labels for label in without)


class QuoteLine(Value, frozen=True, kw_only=True):
    """One line of a quote. Amounts are before tax. `label` is '1', '2' for agreed lines and 'A', 'B' for add-ons.

    `number` is the part number the customer's yes covers, `description` our name of the part (in papers kept before
    that, the supplier's words). `labour_rate` is per hour, None where labour is a flat price. `fee_price`: the line is
    a fee of the job; None is none. `return_words` are the terms of a special order, for the customer; `core_words` what
    becomes of her old part where it goes back to the supplier. `photos` are file names. `freight_for`: the labels of
    the lines that this line's freight brings; empty: of all of its kind. `freight_cases`: the choices of parts with
    which the freight comes to less than `freight_price`, which is the most that it comes to. `answered`: the line was
    answered on an earlier revision and is not asked about again.
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
    category: str = ""
    labour_rate: Decimal | None = None
    fee_price: Money | None = None
    special_order: bool = False
    return_words: tuple[str, ...] = ()
    photos: tuple[str, ...] = ()
    freight_for: tuple[str, ...] = ()
    answered: Answered | None = None
    core_words: tuple[str, ...] = ()
    freight_cases: tuple[FreightCase, ...] = ()

    def freight_with(self, labels: Collection[str]) -> Money:
        """The line's freight where the lines of these labels, and no others, are approved."""
        return next((case.freight for case in self.freight_cases if case.holds(labels)), self.freight_price)

    @property
    def price(self) -> Money:
        """Parts, labour, freight and fee of the line before tax."""
        together = self.parts_price + self.labour_price + self.freight_price
        return together + self.fee_price if self.fee_price is not None else together


class FeeAmount(Value, frozen=True, kw_only=True):
    """A fee by rule on a document, before tax: its name, what it comes to, and how, for the owner."""

    name: str
    amount: Money
    rule: str


class TaxAmount(Value, frozen=True, kw_only=True):
    """One tax of a document: rounded once, on the sum of what it is charged on."""

    name: str
    percent: Decimal
    taxable: Money
    amount: Money


class DocumentTotal(Value, frozen=True, kw_only=True):
    """What a set of lines comes to. `labels` says which lines are in it; `sums` is before tax, by kind.

    `fees` are the fees by rule in the sum of fees; papers kept before they were told apart have none listed.
    """

    labels: tuple[str, ...]
    sums: tuple[tuple[PriceKind, Money], ...]
    before_tax: Money
    taxes: tuple[TaxAmount, ...]
    total: Money
    fees: tuple[FeeAmount, ...] = ()


class AddOnPrice(Value, frozen=True, kw_only=True):
    """What an add-on costs the customer with tax and fees: the difference of two document totals."""

    label: str
    price: Money
    total_with_it: Money


class DepositAsked(Value, frozen=True, kw_only=True):
    """What is asked before parts are ordered: with the agreed lines, and with all of them; `rule` in plain words."""

    agreed: Money
    everything: Money
    rule: str


class Quote(Value, frozen=True, kw_only=True):
    """A revision's content. Never changed once made: a change is a new revision with the next number.

    `arrives` is the range of days on which the parts are promised, first and last; None where not known.
    `warnings` are for the owner and never printed for the customer. `deposit` None: none is asked; `deposit_rule` says
    how it comes for another choice of lines. `tolerance` is the shop's, as it stood: how far a price may rise without a
    new question. `plan_for`: bought by the shop's cheapest plan, or by the one under which the customer pays least.
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
    findings: tuple[Finding, ...] = ()
    deposit: DepositAsked | None = None
    deposit_rule: DepositRule | None = None
    tolerance: Tolerance = Tolerance()
    law_text: tuple[str, ...] = ()
    paper_size: Literal["", "letter", "A4"] = ""
    ready_by: date | None = None
    plan_for: Literal["shop", "customer"] = "shop"

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


class Explained(Value, frozen=True, kw_only=True):
    """One figure of a quote and how it came, for the owner: 'line 1, each' 170.66 '121.90 x 1.40'."""

    figure: str
    amount: Money
    how: str
