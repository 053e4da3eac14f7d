"""What came for the lines of an order and what was charged for it, in whole minor units of the shop's currency.

Good pieces count. What came damaged, as another part, or did not come though it was charged is the supplier's to make
good: it is told apart and is no cost of the job. Old parts (cores) are no cost at all.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.margin_facts import OrderFacts, Purchase, ReceiptFacts
from ..basics.order import ReceiptLine
from ..basics.value import Value
from .minor import ONE, half_up, minor, part_of, reader, shared
from .ordered import AsOrdered


class AsCame(Value, frozen=True, kw_only=True, gc=False):
    """A line's deliveries so far, added up. `pieces` is all that came, `good` what can be used.

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
    rate: Decimal = ONE


def as_came(purchase: Purchase, ordered: Sequence[AsOrdered], currency: str) -> dict[int, AsCame]:
    """By line number, for every line of which something came. `currency` is the shop's."""
    came: dict[int, AsCame] = {}
    by_line = {one.line.line: one for one in ordered}
    for at, receipt in enumerate(purchase.receipts):
        for line, one in _delivery(receipt, purchase.order, by_line, (currency, at > 0)):
            before = came.get(line)
            came[line] = one if before is None else _and(before, one)
    return came


def lines_that_came(receipts: Sequence[ReceiptFacts]) -> frozenset[int]:
    """The numbers of the lines of which something came."""
    return frozenset(line.line for receipt in receipts for line in receipt.lines)


def _and(before: AsCame, one: AsCame) -> AsCame:
    """With one more delivery."""
    return AsCame(
        pieces=before.pieces + one.pieces,
        good=before.good + one.good,
        goods=before.goods + one.goods,
        goods_before=before.goods_before + one.goods_before,
        bad=before.bad + one.bad,
        freight=before.freight + one.freight,
        later=before.later + one.later,
        other=before.other if one.other is None else (before.other or 0) + one.other,
        rate=one.rate,
    )


def _delivery(
    receipt: ReceiptFacts, order: OrderFacts, ordered: Mapping[int, AsOrdered], of: tuple[str, bool]
) -> list[tuple[int, AsCame]]:
    there, is_later = (order.currency, of[0]), of[1]
    read = reader(minor_units(order.currency))
    lines = [line for line in receipt.lines if line.line in ordered]
    charged = [_charged(line, ordered[line.line], order, read, line.charged_pieces) for line in lines]
    values = [
        one if line.quantity == line.charged_pieces else _charged(line, ordered[line.line], order, read, line.quantity)
        for line, one in zip(lines, charged, strict=True)
    ]
    whole = _here(read[receipt.freight.amount], receipt.rate, there)
    freight = shared(whole, _weights(receipt, lines, values, ordered) if whole else values)
    other = _other(receipt, values, there)
    at_rates = zip(*_at_rates(charged, lines, (receipt, order, ordered), there), strict=True)
    found = []
    for at, (line, (here, before)) in enumerate(zip(lines, at_rates, strict=True)):
        good, pieces = line.good, line.quantity
        used = max(line.charged_pieces, pieces)
        usable = part_of(here, good, used)
        one = AsCame(
            pieces=pieces,
            good=good,
            goods=usable,
            goods_before=usable if before == here else part_of(before, good, used),
            bad=here - usable,
            freight=freight[at],
            later=freight[at] if is_later else 0,
            other=other[at] if other else None,
            rate=receipt.rate,
        )
        found.append((line.line, one))
    return found


def _at_rates(
    charged: Sequence[int],
    lines: Sequence[ReceiptLine],
    of: tuple[ReceiptFacts, OrderFacts, Mapping[int, AsOrdered]],
    there: tuple[str, str],
) -> tuple[Sequence[int], Sequence[int]]:
    """What was charged in the shop's currency, at the paper's rate and at the order's."""
    receipt, order, ordered = of
    is_home = there[0] == there[1]
    here = charged if is_home and receipt.rate == 1 else [_here(one, receipt.rate, there) for one in charged]
    if is_home:
        return here, here
    rates = [_order_rate(order, ordered[line.line], receipt) for line in lines]
    return here, [_here(one, rate, there) for one, rate in zip(charged, rates, strict=True)]


def _charged(line: ReceiptLine, ordered: AsOrdered, order: OrderFacts, read: Mapping[str, int], pieces: int) -> int:
    """So many pieces as `ordering.receiving.charged_for` says it, in the supplier's minor units: as ordered where
    neither pieces nor price differ, else rounded, then less his discount."""
    of = ordered.line
    if pieces == of.ordered and line.unit_price == of.unit_price:
        return read[of.goods.amount]
    full = half_up((line.unit_price * pieces / of.price_basis).scaleb(minor_units(order.currency)))
    if not order.discount_percent:
        return full
    return full - half_up(full * order.discount_percent / 100)


def _weights(
    receipt: ReceiptFacts, lines: Sequence[ReceiptLine], values: Sequence[int], ordered: Mapping[int, AsOrdered]
) -> list[int]:
    """By the value of what came, as the receipt's own page shares it, or by weight, in grams, where the receipt says so
    and every piece's weight is known."""
    if receipt.freight_by == "weight":
        grams = [(ordered[line.line].line.weight_kg or Decimal(0)) * 1000 * line.quantity for line in lines]
        if all(grams):
            return [half_up(one) for one in grams]
    return list(values)


def _other(receipt: ReceiptFacts, values: Sequence[int], there: tuple[str, str]) -> list[int] | None:
    if not receipt.other_charges:
        return None
    places = minor_units(there[0])
    whole = sum(minor(one.amount.amount, places) for one in receipt.other_charges)
    return shared(_here(whole, receipt.rate, there), values)


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
