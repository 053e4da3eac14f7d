"""The figures of an offer that may move, and what it then costs at the door, worked out anew by the same rules."""

from collections.abc import Callable, Iterator
from decimal import Decimal
from typing import Literal

from ..basics.choice import Priced
from ..basics.currency import minor_units
from ..basics.freight import Freight
from ..basics.landed_cost import LandedOrder, OrderItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.value import changed
from ..choosing.turning import FAR, Movement, first_at
from ..landed_cost.charges import counted_values_that_matter, values_that_matter
from ..landed_cost.discount_apart import goods_value, total_with_discount_of
from ..landed_cost.door import Door
from ..landed_cost.order import landed_order

Sign = Literal[1, -1]
"""Whether the figure rises or falls."""


def movements(one: Priced, door: Door, sign: Sign) -> tuple[Movement, ...]:
    """Freight and price of the offer moved, each alone, in minor units of the supplier's currency.

    A freight is left out where there is none, where the shop drives itself, and where its sum is not known to the cent
    in the supplier's currency. A price moves by as much at every break.
    """
    return (*_freight(one, door, sign), _price(one, door, sign))


def _freight(one: Priced, door: Door, sign: Sign) -> Iterator[Movement]:
    rule, currency = door.terms.freight, door.terms.currency
    now = _as_charged(one, door, rule) if rule and one.landed.freight.amount else None
    if now is None:
        return

    def cost(by: int, _: int) -> Money | None:
        terms = changed(door.terms, freight=_shifted(now, Decimal(sign * by).scaleb(-minor_units(currency))))
        order = _landed(one, changed(door, terms=terms))
        return None if order.refusal or order.missing else order.total

    most = max((charge for charge in _charges(now)), default=Decimal(0))
    yield Movement(
        figure="freight",
        currency=currency,
        cost=cost,
        most=FAR if sign > 0 else int(most.scaleb(minor_units(currency))),
    )


def _as_charged(one: Priced, door: Door, rule: Freight) -> Freight | None:
    """The rule if it charges one sum for the order; else that sum as a flat one, where it is known to the cent.

    A sum that was converted can't be turned back: several of the supplier's may have become the same one here.
    """
    if rule.rule in ("flat", "by order value", "by weight"):
        return rule
    if rule.rule == "pick-up" or door.terms.currency != door.currency:
        return None
    flat = Freight(rule="flat", charge=one.landed.freight.amount)
    same = _landed(one, changed(door, terms=changed(door.terms, freight=flat)))
    return flat if same.total == one.landed.total else None


def _charges(rule: Freight) -> list[Decimal]:
    bands = [*(band.charge for band in rule.bands), *(band.charge for band in rule.weight_bands)]
    return bands if rule.charge is None else [rule.charge, *bands]


def _shifted(rule: Freight, more: Decimal) -> Freight:
    """The rule with every charge so much higher or lower, never below nothing."""

    def moved(charge: Decimal) -> Decimal:
        return max(charge + more, Decimal(0))

    return changed(
        rule,
        charge=None if rule.charge is None else moved(rule.charge),
        bands=tuple(changed(band, charge=moved(band.charge)) for band in rule.bands),
        weight_bands=tuple(changed(band, charge=moved(band.charge)) for band in rule.weight_bands),
    )


def _price(one: Priced, door: Door, sign: Sign) -> Movement:
    """The price on the sheet moved by as much at every break, per its price basis, down to nothing."""
    item = one.landed.items[0].item
    offer, digits = one.offer, minor_units(one.offer.currency)
    reached = [step.price for step in offer.breaks if step.from_quantity <= item.ordered]
    most = FAR if sign > 0 else int(min(reached).scaleb(digits))

    def moved(by: int) -> OrderItem:
        return changed(item, offer=_at_price(offer, Decimal(sign * by).scaleb(-digits)))

    return Movement(
        figure="price",
        currency=offer.currency,
        cost=lambda by, discounted: total_with_discount_of(moved(by), moved(discounted), door),
        stops=_stops(lambda by: goods_value(moved(by), door), door, sign, most),
        most=most,
        per=offer.price_basis,
    )


def _at_price(offer: Offer, more: Decimal) -> Offer:
    steps = tuple(changed(step, price=max(step.price + more, Decimal(0))) for step in offer.breaks)
    return changed(offer, breaks=steps)


def _stops(value: Callable[[int], int], door: Door, sign: Sign, most: int) -> tuple[int, ...]:
    """The movements at which the value of the goods passes one that matters to the supplier's charges."""
    now = value(0)
    limits = {*values_that_matter(door), *counted_values_that_matter(door)}
    ahead = [limit for limit in limits if (limit > now if sign > 0 else 0 < limit <= now)]
    passed = [first_at(_passes(value, limit, sign), most) for limit in ahead]
    return tuple(sorted({at for at in passed if at is not None}))


def _passes(value: Callable[[int], int], limit: int, sign: Sign) -> Callable[[int, int], bool]:
    return (lambda by, _: value(by) >= limit) if sign > 0 else (lambda by, _: value(by) < limit)


def _landed(one: Priced, door: Door) -> LandedOrder:
    return landed_order([changed(one.landed.items[0].item, offer=one.offer)], door)
