"""Purchase orders from approved lines, and receipts of what came."""

from datetime import date, datetime
from decimal import Decimal

from .landed_cost import CostLine
from .money import Money
from .value import Value


class PurchaseOrderLine(Value, frozen=True, kw_only=True):
    """A line of a purchase order. Quantities in pieces; `unit_price` per `price_basis` pieces, `goods` their
    total, both in the supplier's currency and after discount for `goods`. `landed` is in the shop's currency.

    `needed` is what the job uses, the rest goes on the shelf at `surplus_cost`.
    """

    line: int
    job: str
    revision: int
    label: str
    part: str
    supplier_number: str
    maker_number: str
    description: str
    needed: int
    ordered: int
    pack: int
    price_basis: int
    unit_price: Decimal
    goods: Money
    goods_cost: Money
    landed: Money
    surplus_cost: Money


class PurchaseOrder(Value, frozen=True, kw_only=True):
    """An order at one supplier. `lines` are goods; `charges` what the supplier's terms add, in the shop's currency.

    `discount_percent` is taken off each line's price times pieces.
    """

    number: str
    supplier: str
    supplier_name: str
    supplier_address: tuple[str, ...]
    shop_name: str
    ship_to: tuple[str, ...]
    currency: str
    placed_at: datetime
    placed_by: str
    need_by: date | None
    expected: tuple[date, date] | None
    lines: tuple[PurchaseOrderLine, ...]
    charges: tuple[CostLine, ...]
    goods_total: Money
    landed_total: Money
    discount_percent: Decimal = Decimal(0)


class ReceiptLine(Value, frozen=True, kw_only=True):
    """What came for a line of the order: pieces, and the price charged per price basis (supplier's currency)."""

    line: int
    quantity: int
    unit_price: Decimal


class Receipt(Value, frozen=True, kw_only=True):
    """One delivery. `paper` is the number of the supplier's delivery note or invoice: the same paper counts once.

    `freight` is what the supplier charged beside the goods, in his currency. `rate` turns his currency into the
    shop's (1 where they are the same).
    """

    order: str
    paper: str
    at: datetime
    received_by: str
    lines: tuple[ReceiptLine, ...]
    freight: Money
    rate: Decimal


class Difference(Value, frozen=True, kw_only=True):
    """Something that did not come as ordered, for the talk with the supplier. `amount` in his currency, if any."""

    order: str
    line: int | None
    what: str
    amount: Money | None
