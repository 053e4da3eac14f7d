"""Landed cost as named parts, and the promise date as a range with its steps in words."""

from datetime import date
from decimal import Decimal

from .money import Money
from .offer import Offer
from .value import Value


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


class LandedOrder(Value, frozen=True, kw_only=True):
    """One order at one supplier at the shop's door. `lines` sum to `total`; core charges stand apart as cash.

    `open_questions`: what is not known (freight, say); then `total` is only what is known so far and the order
    can't be ranked. `refusal`: why the supplier would not take the order (below the minimum), blank if he does.
    """

    supplier: str
    supplier_name: str
    items: tuple[LandedItem, ...]
    lines: tuple[CostLine, ...]
    total: Money
    order_value: Money
    freight: Money
    core_charge: Money
    open_questions: tuple[str, ...] = ()
    refusal: str = ""

    @property
    def cash_out(self) -> Money:
        """All that leaves the till: the total and the core charges."""
        return self.total + self.core_charge


class Arrival(Value, frozen=True, kw_only=True):
    """When goods are at the shop: first and last day of the range and how it was reached; or why it is not known."""

    earliest: date | None
    latest: date | None
    steps: tuple[str, ...]

    @property
    def known(self) -> bool:
        """Whether a last day can be named."""
        return self.latest is not None

    def words(self) -> str:
        """'2026-01-15 to 2026-01-16', one day where both are the same, or 'not known'."""
        if self.latest is None:
            return "not known"
        return f"{self.latest}" if self.earliest == self.latest else f"{self.earliest} to {self.latest}"
