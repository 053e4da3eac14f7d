"""What one more unit costs, and how many pieces more make the whole order no dearer than it is.

Nothing is worked out anew: the order is landed again with more pieces and the two orders are compared line by line.
"""

from collections.abc import Callable, Iterator, Sequence
from decimal import Decimal

from ..basics.landed_cost import LandedOrder, OneMore, OrderItem
from ..basics.money import Money, total
from ..basics.offer import Offer
from ..basics.terms import Terms
from ..basics.value import changed
from .quantity import pieces_to_order

Land = Callable[[Sequence[OrderItem]], LandedOrder]
"""Lands items as one order at this supplier, with as many deliveries as they come in."""

MOST_TRIED = 300
"""Quantities landed in search of a cheaper one: beyond that nobody orders more for the sake of a threshold."""


def one_more(order: LandedOrder, at: int, terms: Terms, land: Land) -> OneMore:
    """The order with the next quantity of its item number `at` (from 0) that packs and multiples allow."""
    now = order.items[at].item
    return _with(order, at, pieces_to_order(now.offer, now.ordered + 1), terms, land)


def next_cheaper(order: LandedOrder, at: int, terms: Terms, land: Land) -> OneMore | None:
    """The fewest pieces more of item `at` at which the whole order is no dearer than now; None: none that was tried.

    For an order the supplier refuses: the fewest pieces more at which he takes it. Every quantity up to `tried_to` is
    tried. None too where the cost of the order is not fully known.
    """
    if order.missing:
        return None
    for pieces in _quantities(order, at, terms):
        found = _with(order, at, pieces, terms, land)
        if found.missing or found.refusal:
            continue
        if order.refusal or (found.difference is not None and found.difference.amount <= 0):
            return found
    return None


def tried_to(order: LandedOrder, at: int, terms: Terms) -> int:
    """How many pieces of item `at` `next_cheaper` goes up to: past its last break and every limit of order value."""
    now = order.items[at].item
    step = pieces_to_order(now.offer, now.ordered + 1) - now.ordered
    goal = max(
        now.ordered + step, now.offer.breaks[-1].from_quantity, now.ordered + _pieces_for_value(order, at, terms)
    )
    return min(pieces_to_order(now.offer, goal), now.ordered + step * MOST_TRIED)


def _quantities(order: LandedOrder, at: int, terms: Terms) -> Iterator[int]:
    now, last = order.items[at].item, tried_to(order, at, terms)
    pieces = pieces_to_order(now.offer, now.ordered + 1)
    while pieces <= last:
        yield pieces
        pieces = pieces_to_order(now.offer, pieces + 1)


def _pieces_for_value(order: LandedOrder, at: int, terms: Terms) -> int:
    """How many pieces more take the order past the last limit of its value, at the lowest price of the item."""
    limits = [one.from_value for one in terms.order_discounts] + [terms.minimum_order or Decimal(0)]
    if terms.freight:
        limits += [one.from_value for one in terms.freight.bands] + [terms.freight.free_from or Decimal(0)]
    offer = order.items[at].item.offer
    price = min(step.price for step in offer.breaks) * (100 - terms.discount_percent) / 100 / offer.price_basis
    short = max(limits) - order.order_value.amount
    return int(short / price) + 1 if price > 0 and short > 0 else 0


def _with(order: LandedOrder, at: int, pieces: int, terms: Terms, land: Land) -> OneMore:
    items = [one.item for one in order.items]
    before = items[at]
    items[at] = changed(before, ordered=pieces)
    after = land(items)
    known = not (order.missing or after.missing or order.refusal or after.refusal)
    return OneMore(
        supplier_number=before.offer.supplier_number,
        ordered=pieces,
        more=pieces - before.ordered,
        total=after.total,
        difference=after.total - order.total if known else None,
        changes=tuple(_changes(order, after, terms, (before, items[at]))),
        missing=after.missing,
        refusal=after.refusal,
    )


def _changes(before: LandedOrder, after: LandedOrder, terms: Terms, item: tuple[OrderItem, OrderItem]) -> Iterator[str]:
    if before.refusal and not after.refusal:
        yield f"the supplier takes the order: it reaches {terms.minimum_order} {terms.currency}"
    yield from _break_reached(item[0].offer, item[0].ordered, item[1].ordered)
    values = (before.order_value.amount, after.order_value.amount)
    for one in terms.order_discounts:
        if values[0] < one.from_value <= values[1]:
            yield f"order discount of {one.percent} % from {one.from_value} {terms.currency} on"
    yield from _charges_changed(before, after)


def _break_reached(offer: Offer, before: int, after: int) -> Iterator[str]:
    reached = [step for step in offer.breaks if before < step.from_quantity <= after]
    if reached:
        per = "each" if offer.price_basis == 1 else f"per {offer.price_basis}"
        yield f"price break from {reached[-1].from_quantity} pieces: {reached[-1].price} {offer.currency} {per}"


def _charges_changed(before: LandedOrder, after: LandedOrder) -> Iterator[str]:
    """Lines of freight and small-order fees whose amount differs."""
    was, now = _charges(before), _charges(after)
    rules = {line.name: line.rule for line in (*before.lines, *after.lines)}
    for name in dict.fromkeys((*was, *now)):
        old, new = was.get(name), now.get(name)
        if old == new:
            continue
        if new is None:
            yield f"{name}: {old} falls away" if not after.missing else f"{name}: {old}, and then not known"
        elif old is None:
            yield f"{name}: {new} is added, {rules[name]}"
        else:
            yield f"{name}: {new} instead of {old}, {rules[name]}"


def _charges(order: LandedOrder) -> dict[str, Money]:
    lines = [line for line in order.lines if line.is_freight or "small-order fee" in (line.kind, line.name.lower())]
    names = dict.fromkeys(line.name for line in lines)
    return {name: total((line.amount for line in lines if line.name == name), order.total.currency) for name in names}
