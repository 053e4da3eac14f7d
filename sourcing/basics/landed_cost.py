"""Landed cost as named parts, and the promise date as a range with its steps in words."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .money import Money, total
from .offer import Offer
from .value import Value

CostKind = Literal[
    "",
    "goods",
    "discount",
    "freight",
    "pick-up",
    "handling",
    "small-order fee",
    "duty",
    "entry fee",
    "payment fee",
    "tax",
]
"""What a cost line is for; blank in papers kept before kinds were written down: there the name tells."""

FREIGHT_NAMES = ("Freight", "Pick-up, miles", "Pick-up, time")
"""The lines of papers without kinds that count as freight where freight is spoken of as one sum."""


class OrderItem(Value, frozen=True, kw_only=True):
    """Pieces of one offer for one need: `needed` by the job, `ordered` from the supplier (packs, minimums)."""

    need: str
    offer: Offer
    needed: int
    ordered: int

    @property
    def surplus(self) -> int:
        """Pieces bought beyond the need: they go on the shelf."""
        return self.ordered - self.needed


class CostLine(Value, frozen=True, kw_only=True):
    """One named part of a landed cost, in the shop's currency, with the rule and figures it came by."""

    name: str
    amount: Money
    rule: str
    kind: CostKind = ""

    @property
    def is_freight(self) -> bool:
        """Whether it counts where freight is spoken of as one sum: the carrier's charge or the shop's own drive."""
        return self.kind in ("freight", "pick-up") if self.kind else self.name in FREIGHT_NAMES

    @property
    def is_goods(self) -> bool:
        """Whether it belongs to the goods after line discounts; an order discount is a charge, below zero."""
        if not self.kind:
            return self.name.startswith(("Goods", "Discount"))
        return self.kind == "goods" or (self.kind == "discount" and self.name == "Discount")


class Missing(Value, frozen=True, kw_only=True):
    """A part of the cost that is not known: what, in words, and at least and at most how much if a range is given.

    Never counted as nothing: a total with something missing is 'at least'.
    """

    what: str
    least: Money | None = None
    most: Money | None = None


class Beside(Value, frozen=True, kw_only=True):
    """What stands beside an item's cost, in the shop's currency: can it go back, and what becomes of the core charge.

    `returnable` None: not known. `return_loss`: what all of it going back would cost (restocking and freight); None:
    not known. `core_returned`: what a returned core costs after all (its freight); `core_lost`: what is lost when the
    old part does not go back; both None where no core charge is stated. `words` say rule and deadline.
    """

    returnable: bool | None = None
    return_loss: Money | None = None
    return_within_days: int | None = None
    core_returned: Money | None = None
    core_lost: Money | None = None
    core_within_days: int | None = None
    words: tuple[str, ...] = ()


class LandedItem(Value, frozen=True, kw_only=True):
    """An item with its figures. `goods` is in the supplier's currency, after discount; the rest in the shop's.

    `landed` is goods, duty and its share of the order's charges; the items' `landed` sum to the order's total.
    `surplus_cost` is the part of `goods_cost` that lies on the shelf afterwards.
    """

    item: OrderItem
    unit_price: Decimal
    goods: Money
    goods_cost: Money
    duty: Money
    landed: Money
    surplus_cost: Money
    core_charge: Money
    beside: Beside = Beside()


class LandedOrder(Value, frozen=True, kw_only=True):
    """One order at one supplier at the shop's door. `lines` sum to `total`; core charges stand apart as cash.

    `missing`: what is not known (freight, say); then `total` is only what is known so far and the order can't be
    ranked. `refusal`: why the supplier would not take the order (below the minimum), blank if he does. `cash_discount`:
    what paying the bill early would take off, negative as every discount; it is in no line.
    """

    supplier: str
    supplier_name: str
    items: tuple[LandedItem, ...]
    lines: tuple[CostLine, ...]
    total: Money
    order_value: Money
    freight: Money
    core_charge: Money
    missing: tuple[Missing, ...] = ()
    refusal: str = ""
    cash_discount: CostLine | None = None

    @property
    def open_questions(self) -> tuple[str, ...]:
        """What is not known, in words."""
        return tuple(one.what for one in self.missing)

    @property
    def least(self) -> Money | None:
        """The total if all that is missing is as little as it can be; None where no least is given."""
        return self._with([one.least for one in self.missing])

    @property
    def most(self) -> Money | None:
        """The total if all that is missing is as much as it can be; None where no most is given."""
        return self._with([one.most for one in self.missing])

    def _with(self, more: list[Money | None]) -> Money | None:
        known = [one for one in more if one is not None]
        return self.total + total(known, self.total.currency) if len(known) == len(more) else None

    @property
    def cash_out(self) -> Money:
        """All that leaves the till: the total and the core charges."""
        return self.total + self.core_charge


class OneMore(Value, frozen=True, kw_only=True):
    """An order with `more` pieces more of one item than now, beside the order as it is, in the shop's currency.

    `ordered` is the item's new number of pieces, `total` what is known of the new order. `difference` is what the whole
    order costs more (negative: less); None where the order as it is or as it would be is not fully known or is refused.
    `changes`: breaks, discounts, fees and freight that change by it, in words. `missing` and `refusal` are the new
    order's.
    """

    supplier_number: str
    ordered: int
    more: int
    total: Money
    difference: Money | None
    changes: tuple[str, ...] = ()
    missing: tuple[Missing, ...] = ()
    refusal: str = ""

    @property
    def per_piece(self) -> Money | None:
        """The difference for each piece more, not rounded."""
        if self.difference is None:
            return None
        return Money(amount=self.difference.amount / self.more, currency=self.difference.currency)


class Delivery(Value, frozen=True, kw_only=True):
    """Pieces that leave the supplier in one go: the first and last day they may leave, and be at the shop."""

    pieces: int
    leaves: tuple[date, date]
    arrives: tuple[date, date]


class Arrival(Value, frozen=True, kw_only=True):
    """When goods are at the shop: first and last day of the range and how it was reached; or why it is not known.

    `deliveries`: what leaves when, one entry for each day of leaving; empty where no day is known. `told`: the
    supplier's own later word, where it put the goods off past what his sheet says; its stock is then not there.
    """

    earliest: date | None
    latest: date | None
    steps: tuple[str, ...]
    deliveries: tuple[Delivery, ...] = ()
    told: str = ""

    @property
    def known(self) -> bool:
        """Whether a last day can be named."""
        return self.latest is not None

    def words(self) -> str:
        """'2026-01-15 to 2026-01-16', one day where both are the same, or 'not known'."""
        if self.latest is None:
            return "not known"
        return f"{self.latest}" if self.earliest == self.latest else f"{self.earliest} to {self.latest}"
