"""A supplier's charges as steps and per cents for the plan: the rules of single orders, read off where they change.

Nothing is decided here: every step asks the functions that make a landed order's lines.
"""

from collections.abc import Iterator, Sequence
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

from ..basics.currency import minor_units
from ..basics.freight import Freight
from ..basics.money import from_minor, total
from ..basics.problem import refused
from ..basics.schedule import FreightStep, ItemSums, Schedule, ValueStep, WeightStep
from .charges import (
    counted_values_that_matter,
    fee_lines,
    order_discount_at,
    percent_here,
    refusal,
    share_here,
    values_that_matter,
)
from .door import Door
from .freight import BY_WEIGHT, Unknown, charge_by_weight, freight_by_value
from .minor import whole
from .order_freight import later_delivery, once_oversize
from .percents import Sums, add_percents, percent_charges
from .prepared import prepared
from .weights import GRAMS

MOST_STEPS = 12
"""More even steps of weight than this are given as freight per kg of started steps."""


def schedule(door: Door, heaviest_grams: int) -> Schedule:
    """The charges of an order of at most that weight, for `ItemSums` of this door.

    Exactly what a landed order's lines sum to; only where weights are not whole grams, or rounded up in more than
    `MOST_STEPS` steps, is it less. Refuses weight bands that fall.
    """
    at = prepared(door)
    steps, per_kg, heaviest = _by_weight(door, heaviest_grams)
    freight = door.terms.freight
    limits = (freight.least, freight.most) if freight is not None and per_kg is not None else (None, None)
    least, most = (door.here_at_once(end).minor() if end is not None else None for end in limits)
    return Schedule(
        supplier=door.terms.supplier,
        steps=tuple(value_step(value, door) for value in values_that_matter(door)),
        freight_steps=tuple(freight_step(value, door) for value in counted_values_that_matter(door)),
        weight_steps=steps,
        freight_per_kg=per_kg,
        weight_started=_started(freight) if freight is not None and per_kg is not None else None,
        weight_least=least or 0,
        weight_most=most,
        heaviest=heaviest,
        oversize_once=once_oversize(at),
        later_delivery=later_delivery(at),
        percents=tuple(one.percent for one in percent_charges(door)),
        packed=freight is not None and freight.rule == "per parcel",
    )


def value_step(value: int, door: Door) -> ValueStep:
    """Fixed fees and order discount from that value of goods (supplier's minor units) to the next that matters."""
    goods = from_minor(value, door.terms.currency)
    discount = order_discount_at(goods, door.terms)
    return ValueStep(
        from_value=value,
        fees=total((one.amount for one in fee_lines(goods, door)), door.currency).minor(),
        discount_percent=percent_here(discount.percent, door) if discount else Decimal(0),
        refused=bool(refusal(goods, door.terms)),
    )


def freight_step(value: int, door: Door) -> FreightStep:
    """Freight by value of counted goods (supplier's minor units) up to the next value that matters."""
    found = freight_by_value(from_minor(value, door.terms.currency), door)
    if isinstance(found, Unknown):
        return FreightStep(from_value=value, freight=0, known=False)
    if found is None:
        return FreightStep(from_value=value, freight=0, by_weight=True)
    return FreightStep(from_value=value, freight=total((one.amount for one in found), door.currency).minor())


def order_sums(at: Schedule, items: Sequence[ItemSums], deliveries: int = 1) -> Sums | None:
    """The parts of an order of these items by its schedule, in the shop's minor units; None where freight is not known.

    Whether the supplier takes the order is not looked at.
    """
    value = sum(one.value for one in items)
    step = [one for one in at.steps if one.from_value <= value][-1]
    freight = freight_at(at, items)
    if freight is None:
        return None
    sums: Sums = {
        "goods": sum(one.goods for one in items),
        "discount": -share_here(value, step.discount_percent),
        "freight": freight + sum(one.freight for one in items) + at.later_delivery * (deliveries - 1),
        "duty": sum(one.duty for one in items),
        "fees": step.fees + sum(one.fees for one in items),
        "tax": 0,
    }
    add_percents(at.percents, sums)
    return sums


def schedule_total(at: Schedule, items: Sequence[ItemSums], deliveries: int = 1) -> int:
    """The landed total of an order of these items. Raises ValueError where its freight is not known."""
    sums = order_sums(at, items, deliveries)
    if sums is None:
        raise ValueError(f"freight of {at.supplier} is not known for this order")
    return sum(sums.values())


def freight_at(at: Schedule, items: Sequence[ItemSums]) -> int | None:
    """What the order as a whole pays for freight in one delivery, items' own oversize apart; None: not known."""
    counted = sum(one.counted for one in items)
    step = [one for one in at.freight_steps if one.from_value <= counted][-1]
    once = at.oversize_once if any(one.oversize for one in items) else 0
    if not step.known:
        return None
    if not step.by_weight:
        return step.freight + once
    grams = max(sum(one.grams for one in items), sum(one.volume_grams for one in items))
    if at.heaviest is not None and grams > at.heaviest:
        return None
    return step.freight + once + _weight_charge(at, grams)


def _weight_charge(at: Schedule, grams: int) -> int:
    if at.freight_per_kg is None:
        return [one for one in at.weight_steps if one.above < grams or not one.above][-1].freight
    weight = Decimal(grams)
    if at.weight_started is not None:
        weight = (weight / at.weight_started).to_integral_value(ROUND_CEILING) * at.weight_started
    charge = max(whole(at.freight_per_kg * weight / 1000), at.weight_least)
    return charge if at.weight_most is None else min(charge, at.weight_most)


def _by_weight(door: Door, heaviest_grams: int) -> tuple[tuple[WeightStep, ...], Decimal | None, int | None]:
    """Steps of weight or freight per kg, and the weight above which nothing is known."""
    freight = door.terms.freight
    if freight is None or freight.rule not in BY_WEIGHT:
        return (), None, None
    if freight.rule == "per weight" and _too_many_steps(freight, heaviest_grams):
        return (), _per_kg(freight, door), None if freight.per_weight is not None else -1
    charges = [band.charge for band in freight.weight_bands]
    if charges != sorted(charges):
        raise refused("terms-contradict", supplier=door.terms.supplier, found="freight falls with weight")
    steps = tuple(_weight_steps(door, max(1, heaviest_grams)))
    known = tuple(WeightStep(above=above, freight=charge) for above, charge in steps if charge is not None)
    unknown = [above for above, charge in steps if charge is None]
    return known, None, (unknown[0] if known else -1) if unknown else None


def _too_many_steps(freight: Freight, heaviest_grams: int) -> bool:
    step = freight.weight_step
    return not step or heaviest_grams > step * GRAMS[freight.weight_unit] * MOST_STEPS


def _started(freight: Freight) -> Decimal | None:
    """The grams to whose whole number the weight is rounded up."""
    return freight.weight_step * GRAMS[freight.weight_unit] if freight.weight_step else None


def _per_kg(freight: Freight, door: Door) -> Decimal:
    """Minor units of the shop's currency per kg, never rounded up."""
    each = ((freight.per_weight or Decimal(0)) * door.rate.rate).scaleb(minor_units(door.currency))
    return (each * 1000 / GRAMS[freight.weight_unit]).quantize(Decimal(1).scaleb(-15), rounding=ROUND_FLOOR)


def _weight_steps(door: Door, heaviest: int) -> Iterator[tuple[int, int | None]]:
    """(above, charge) from 0 grams up to the heaviest, wherever the charge changes; the charge never falls."""
    first = charge_by_weight(Decimal(1), door)
    yield 0, first
    low = (1, first)
    for grams in _looked_at(door, heaviest):
        high = (grams, charge_by_weight(Decimal(grams), door))
        yield from _changes(door, low, high)
        low = high


def _looked_at(door: Door, heaviest: int) -> Iterator[int]:
    """Weights in rising order between which to look for changes: both sides of every whole step, where there are."""
    freight = door.terms.freight
    step = freight.weight_step * GRAMS[freight.weight_unit] if freight and freight.weight_step else None
    at = 1
    while step and at * step < heaviest:
        last = int(at * step)
        yield from (grams for grams in (last, last + 1) if grams > 1)
        at += 1
    yield heaviest


def _changes(door: Door, low: tuple[int, int | None], high: tuple[int, int | None]) -> Iterator[tuple[int, int | None]]:
    """The changes between two weights, found by halving: a charge that never falls is constant between equal ends."""
    if low[1] == high[1]:
        return
    if high[0] - low[0] == 1:
        yield low[0], high[1]
        return
    middle = (low[0] + high[0]) // 2
    between = middle, charge_by_weight(Decimal(middle), door)
    yield from _changes(door, low, between)
    yield from _changes(door, between, high)
