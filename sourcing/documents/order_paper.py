"""The purchase order as the supplier reads it: HTML to print or send, CSV to load.

Only what the supplier needs: no customer, no job, no landed cost, no markup; amounts in the supplier's currency.
Days are ISO 8601 (2026-01-16), since the reader may be in another country.
"""

from decimal import Decimal

from ..basics.money import Money
from ..basics.order import PurchaseOrder, PurchaseOrderLine
from ..basics.value import Value
from .csv_text import csv_text
from .pages import render

CSV_HEADERS = (
    "order", "line", "supplier number", "maker number", "description", "pieces", "pack", "packs", "price",
    "price for pieces", "line total", "currency", "need by", "ship to",
)  # fmt: skip


class ShownLine(Value, frozen=True, kw_only=True):
    """A line as printed. `packs` is blank where goods come singly or the pieces are no whole packs."""

    line: int
    supplier_number: str
    maker_number: str
    description: str
    pieces: int
    pack: int
    packs: int | None
    price: str
    goods: str


def order_html(order: PurchaseOrder) -> str:
    """The order as a paper."""
    return render(
        "order.html",
        number=order.number,
        supplier=(order.supplier_name, *order.supplier_address),
        shop=order.shop_name,
        ship_to=order.ship_to,
        placed_on=order.placed_at.date(),
        placed_by=order.placed_by,
        need_by=order.need_by,
        currency=order.currency,
        discount=order.discount_percent,
        lines=[_shown(line, order.currency) for line in order.lines],
        goods_total=str(order.goods_total),
        language="en",
    )


def order_csv(order: PurchaseOrder) -> str:
    """The order's lines as CSV, the order's number, need-by day and ship-to on each. See `csv_text` for safety."""
    ship_to = ", ".join((order.shop_name, *order.ship_to))
    return csv_text(
        CSV_HEADERS,
        [
            (
                order.number,
                line.line,
                line.supplier_number,
                line.maker_number,
                line.description,
                line.ordered,
                line.pack,
                _packs(line),
                line.unit_price,
                line.price_basis,
                line.goods.rounded().amount,
                order.currency,
                order.need_by,
                ship_to,
            )
            for line in order.lines
        ],
    )


def price_words(price: Decimal, currency: str, basis: int) -> str:
    """A price with its basis: '11.90 USD each', '119.00 USD per 100'. At least the currency's decimals, none cut."""
    smallest = Money(amount=price, currency=currency).rounded()
    amount = smallest.amount if smallest.amount == price else price
    return f"{amount:f} {currency} {'each' if basis == 1 else f'per {basis}'}"


def _shown(line: PurchaseOrderLine, currency: str) -> ShownLine:
    return ShownLine(
        line=line.line,
        supplier_number=line.supplier_number,
        maker_number=line.maker_number,
        description=line.description,
        pieces=line.ordered,
        pack=line.pack,
        packs=_packs(line),
        price=price_words(line.unit_price, currency, line.price_basis),
        goods=str(line.goods),
    )


def _packs(line: PurchaseOrderLine) -> int | None:
    whole, rest = divmod(line.ordered, line.pack)
    return whole if line.pack > 1 and not rest else None
