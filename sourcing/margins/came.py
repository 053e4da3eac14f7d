"""What came for the lines of an order and what was charged for it, in whole minor units of the shop's currency.

Good pieces count. What came damaged, as another part, or did not come though it was charged is the supplier's to make
good: it is told apart and is no cost of the job. Old parts (cores) are no cost at all.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.margin_facts import OrderFacts, Purchase, ReceiptFacts
from ..basics.order import ReceiptLine
from .minor import digits, half_up, minor, part_of, shared
from .ordered import AsOrdered


@dataclass(slots=True, kw_only=True)
class AsCame:
    """A line's deliveries so far, added up one by one. `pieces` is all that came, `good` what can be used.

    `goods` is what was charged for the good pieces at the papers' rates, `goods_before` the same at the order's rate;
    `bad` what was charged for the others. `freight` is the line's share of the freight charged, `later` what of it came
    with deliveries after the order's first. `other` is its share of other charges on the papers; None: none states any.
    """

    pieces: int = 0
    good: int = 0
    goods: int = 0
    goods_before: int = 0
    bad: int = 0
    freight: int = 0
    later: int = 0
    other: int | None = None
    rate: Decimal = Decimal(1)


def as_came(purchase: Purchase, ordered: Sequence[AsOrdered], currency: str) -> dict[int, AsCame]:
    """By line number, for every line of which something came. `currency` is the shop's."""
    came: dict[int, AsCame] = {}
    for at, receipt in enumerate(purchase.receipts):
        _add(came, receipt, purchase, {one.line.line: one for one in ordered}, (currency, at > 0))
    return came


def lines_that_came(receipts: Sequence[ReceiptFacts]) -> frozenset[int]:
    """The numbers of the lines of which something came."""
    return frozenset(line.line for receipt in receipts for line in receipt.lines)


def _add(
    came: dict[int, AsCame],
    receipt: ReceiptFacts,
    purchase: Purchase,
    ordered: Mapping[int, AsOrdered],
    of: tuple[str, bool],
) -> None:
    currency, is_later = of
    lines = [line for line in receipt.lines if line.line in ordered]
    charged = [_charged(line, ordered[line.line], purchase.order) for line in lines]
    there = (purchase.order.currency, currency)
    freight = shared(_here(digits(receipt.freight, minor_units(there[0])), receipt.rate, there),
                     _weights(receipt, lines, charged, ordered))  # fmt: skip
    other = _other(receipt, charged, there)
    for at, line in enumerate(lines):
        one = came.setdefault(line.line, AsCame())
        here = before = _here(charged[at], receipt.rate, there)
        if there[0] != currency:
            before = _here(charged[at], _order_rate(purchase.order, ordered[line.line], receipt), there)
        good, used = line.good, max(line.charged_pieces, line.quantity)
        usable = part_of(here, good, used)
        one.pieces += line.quantity
        one.good += good
        one.goods += usable
        one.goods_before += part_of(before, good, used)
        one.bad += here - usable
        one.freight += freight[at]
        one.later += freight[at] if is_later else 0
        one.rate = receipt.rate
        if other is not None:
            one.other = (one.other or 0) + other[at]


def _charged(line: ReceiptLine, ordered: AsOrdered, order: OrderFacts) -> int:
    """As `ordering.receiving.charged_for` says it, in the supplier's minor units: as ordered where neither pieces nor
    price differ, else rounded, then less his discount."""
    places, of = minor_units(order.currency), ordered.line
    if line.charged_pieces == of.ordered and line.unit_price == of.unit_price:
        return digits(of.goods, places)
    full = half_up((line.unit_price * line.charged_pieces / of.price_basis).scaleb(places))
    if not order.discount_percent:
        return full
    return full - half_up(full * order.discount_percent / 100)


def _weights(
    receipt: ReceiptFacts, lines: Sequence[ReceiptLine], charged: Sequence[int], ordered: Mapping[int, AsOrdered]
) -> list[int]:
    """By what was charged, or by weight where the receipt says so and every piece's weight is known; in grams."""
    if receipt.freight_by == "weight":
        grams = [(ordered[line.line].line.weight_kg or Decimal(0)) * 1000 * line.quantity for line in lines]
        if all(grams):
            return [half_up(one) for one in grams]
    return list(charged)


def _other(receipt: ReceiptFacts, charged: Sequence[int], there: tuple[str, str]) -> list[int] | None:
    if not receipt.other_charges:
        return None
    places = minor_units(there[0])
    whole = sum(minor(one.amount.amount, places) for one in receipt.other_charges)
    return shared(_here(whole, receipt.rate, there), charged)


def _order_rate(order: OrderFacts, ordered: AsOrdered, receipt: ReceiptFacts) -> Decimal:
    """The rate of the day of the order; where it was not written down, the one its own figures give."""
    if order.rate is not None:
        return order.rate
    goods = Decimal(ordered.line.goods.amount)
    return receipt.rate if receipt.rate == 1 or not goods else Decimal(ordered.line.goods_cost.amount) / goods


def _here(amount: int, rate: Decimal, there: tuple[str, str]) -> int:
    """Minor units of the supplier's currency in those of the shop's, rounded half up."""
    if rate == 1 and there[0] == there[1]:
        return amount
    return half_up((amount * rate).scaleb(minor_units(there[1]) - minor_units(there[0])))
