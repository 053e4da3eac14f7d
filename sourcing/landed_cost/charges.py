"""What an order costs beside its goods: freight, small-order fee, handling, entry fee, pick-up; each a named line.

Charges depend on the order only through its value of goods after discount, core charges not counted, so the plan can
use the same function as the single offer: see `charge_steps`.
"""

from decimal import Decimal

from ..basics.freight import Freight
from ..basics.landed_cost import CostLine
from ..basics.money import Money, total
from ..basics.problem import refused
from ..basics.terms import Terms
from ..basics.value import Value
from .door import Door

FREIGHT_NAMES = ("Freight", "Pick-up, miles", "Pick-up, time")
"""The lines that count as freight where freight is spoken of as one sum."""


class Charges(Value, frozen=True, kw_only=True):
    """Named charges in the shop's currency, what is not known, and why the supplier would refuse the order."""

    lines: tuple[CostLine, ...]
    open_questions: tuple[str, ...] = ()
    refusal: str = ""


class ChargeStep(Value, frozen=True, kw_only=True):
    """From this value of goods on (supplier's currency), all charges together are `charge` (shop's currency)."""

    from_value: Money
    charge: Money
    refusal: str


def charges_at(value: Money, door: Door) -> Charges:
    """The charges of an order with goods of that value (supplier's currency, after discount)."""
    terms = door.terms
    lines = [*_freight(value, door), *_small_order(value, door)]
    if terms.handling:
        lines.append(_line("Handling", terms.handling, f"{terms.handling} {terms.currency} per order", door))
    if terms.entry_fee:
        lines.append(_line("Entry fee", terms.entry_fee, f"{terms.entry_fee} {terms.currency} per order", door))
    questions = () if terms.freight else (f"freight of {terms.name} is not known",)
    return Charges(lines=tuple(lines), open_questions=questions, refusal=_refusal(value, terms))


def charge_steps(door: Door) -> tuple[ChargeStep, ...]:
    """The charges as a step function of the goods' value: one step wherever any rule of the terms changes."""
    terms, freight = door.terms, door.terms.freight
    limits = {Decimal(0), terms.minimum_order, freight.free_from if freight else None}
    limits |= {band.from_value for band in freight.bands} if freight else set()
    steps = []
    for limit in sorted(limit for limit in limits if limit is not None):
        value = Money(amount=limit, currency=terms.currency)
        charges = charges_at(value, door)
        charge = total((line.amount for line in charges.lines), door.currency)
        steps.append(ChargeStep(from_value=value, charge=charge, refusal=charges.refusal))
    return tuple(steps)


def _line(name: str, amount: Decimal, rule: str, door: Door) -> CostLine:
    return CostLine(name=name, amount=door.here(amount), rule=rule + door.conversion())


def _freight(value: Money, door: Door) -> list[CostLine]:
    freight = door.terms.freight
    if freight is None:
        return []
    if freight.rule == "pick-up":
        return _pick_up(freight, door)
    if freight.rule == "included":
        return [_line("Freight", Decimal(0), "included in the price", door)]
    if freight.free_from is not None and value.amount >= freight.free_from:
        rule = f"free from {freight.free_from} {value.currency} of goods; this order has {value.amount}"
        return [_line("Freight", Decimal(0), rule, door)]
    amount, rule = _rate_of(freight, value, door.terms.supplier)
    below = f"; free from {freight.free_from}" if freight.free_from is not None else ""
    return [_line("Freight", amount, rule + below, door)]


def _rate_of(freight: Freight, value: Money, supplier: str) -> tuple[Decimal, str]:
    if freight.rule == "flat" and freight.charge is not None:
        return freight.charge, f"flat {freight.charge} {value.currency} per order"
    reached = [band for band in freight.bands if band.from_value <= value.amount]
    if not reached:
        raise refused("terms-contradict", supplier=supplier, found=f"no freight band covers goods of {value}")
    band = reached[-1]
    return band.charge, f"{band.charge} {value.currency} for orders from {band.from_value}"


def _pick_up(freight: Freight, door: Door) -> list[CostLine]:
    # The shop's own cost, so in its own currency and at its own rates, not the supplier's.
    miles, hours = freight.round_trip_miles or Decimal(0), freight.round_trip_hours or Decimal(0)
    drive = Money(amount=miles * door.mileage_rate, currency=door.currency).rounded()
    clock = Money(amount=hours * door.driver_cost, currency=door.currency).rounded()
    return [
        CostLine(name="Pick-up, miles", amount=drive, rule=f"{miles} miles there and back x {door.mileage_rate}"),
        CostLine(name="Pick-up, time", amount=clock, rule=f"{hours} hours x {door.driver_cost}"),
    ]


def _small_order(value: Money, door: Door) -> list[CostLine]:
    terms = door.terms
    if terms.minimum_order is None or terms.small_order_fee is None or value.amount >= terms.minimum_order:
        return []
    rule = f"{terms.small_order_fee} {terms.currency} on orders below {terms.minimum_order}"
    return [_line("Small-order fee", terms.small_order_fee, rule, door)]


def _refusal(value: Money, terms: Terms) -> str:
    least = terms.minimum_order
    if least is None or terms.small_order_fee is not None or value.amount >= least:
        return ""
    return f"{terms.name} takes no order below {least} {terms.currency}; this one has {value.amount}"
