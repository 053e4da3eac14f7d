"""Freight of an order by the supplier's rule: named lines, or what is not known of it, with a range where one is given.

By value a rule looks at the goods that count (`Oversize.counts`). What is driven for is the shop's own cost.
"""

from collections.abc import Sequence
from decimal import Decimal

from ..basics.freight import Freight
from ..basics.landed_cost import CostKind, CostLine, OrderItem
from ..basics.money import Money
from ..basics.schedule import SummedPart
from ..basics.value import Value, changed
from .door import Door
from .weights import GRAMS, Weighed, freight_by_weight, freight_of_items, weigh

KM_PER_MILE = Decimal("1.609344")
"""International yard and pound agreement of 1959."""

BY_WEIGHT = ("by weight", "per weight", "per parcel")


class Unknown(Value, frozen=True, kw_only=True):
    """A charge that is not known: what, and at least and most how much (shop's minor units) before what follows from
    it (tax on it, say)."""

    what: str
    part: SummedPart = "freight"
    least: int | None = None
    most: int | None = None


def line(name: str, kind: CostKind, amount: Decimal, rule: str, door: Door) -> CostLine:
    """A charge in the supplier's currency as a line in the shop's, the conversion said in its rule."""
    return CostLine(name=name, kind=kind, amount=door.here(amount), rule=rule + door.conversion())


def freight_of_goods(counted: Money, items: Sequence[OrderItem], door: Door) -> tuple[CostLine, ...] | Unknown:
    """The freight of an order of these items with so much of goods that count (supplier's currency)."""
    by_value = freight_by_value(counted, door)
    return _freight_by_weighing(items, door) if by_value is None else by_value


def freight_by_value(counted: Money, door: Door) -> tuple[CostLine, ...] | Unknown | None:
    """The freight as far as the value of goods that count decides it; None: it goes by weight."""
    freight, name = door.terms.freight, door.terms.name
    if freight is None:
        return Unknown(what=f"freight of {name} is not known")
    if freight.free_from is not None and counted.amount >= freight.free_from:
        rule = f"free from {freight.free_from} {counted.currency} of goods; this order has {counted.amount}"
        return (line("Freight", "freight", Decimal(0), rule, door),)
    if freight.rule in BY_WEIGHT:
        return None
    if freight.rule == "pick-up":
        return _pick_up(freight, door)
    if freight.rule == "included":
        return (line("Freight", "freight", Decimal(0), "included in the price", door),)
    if freight.rule == "asked":
        return _asked(freight, door)
    return _flat_or_band(freight, counted, door)


def below_free(freight: Freight) -> str:
    """What a rule adds where freight would be free from some value on."""
    return f"; free from {freight.free_from}" if freight.free_from is not None else ""


def _asked(freight: Freight, door: Door) -> Unknown:
    what = f"freight of {door.terms.name} is said only when asked"
    if freight.between is None:
        return Unknown(what=what)
    least, most = (door.here(end) for end in freight.between)
    return Unknown(what=f"{what}: {least} to {most}", least=least.minor(), most=most.minor())


def _flat_or_band(freight: Freight, counted: Money, door: Door) -> tuple[CostLine, ...] | Unknown:
    currency, more = counted.currency, below_free(freight)
    if freight.rule == "flat":
        charge = freight.charge
        rule = f"flat {charge} {currency} per order{more}"
    else:
        reached = [band for band in freight.bands if band.from_value <= counted.amount]
        charge = reached[-1].charge if reached else None
        rule = f"{charge} {currency} for orders from {reached[-1].from_value}{more}" if reached else ""
    if charge is None:
        return Unknown(what=f"freight of {door.terms.name} is not known: no freight band covers goods of {counted}")
    return (line("Freight", "freight", charge, rule, door),)


def _pick_up(freight: Freight, door: Door) -> tuple[CostLine, ...] | Unknown:
    # The shop's own cost, so in its own currency and at its own rates, not the supplier's.
    hours = freight.round_trip_hours
    open_ones = rates_not_stated(freight, door.mileage_rate, door.rate_per_km, door.driver_cost)
    if open_ones:
        return Unknown(what=f"pick-up from {door.terms.name}: the shop states no {' and no '.join(open_ones)}")
    drive = _drive(freight, door)
    if hours is None:
        return (changed(drive, rule=f"{drive.rule}; time not counted, the terms state none"),)
    clock = Money(amount=hours * door.driver_cost, currency=door.currency).rounded()
    rule = f"{hours} hours x {door.driver_cost}"
    return (drive, CostLine(name="Pick-up, time", kind="pick-up", amount=clock, rule=rule))


def rates_not_stated(
    freight: Freight, mileage_rate: Decimal, rate_per_km: Decimal | None, cost_per_hour: Decimal
) -> list[str]:
    """The rates a drive needs and the shop does not state, in words; none where nothing is driven for.

    A `mileage_rate` or `cost_per_hour` of 0 is none stated; a `rate_per_km` of 0 is one: driving costs nothing.
    """
    if freight.rule != "pick-up":
        return []
    driven = freight.round_trip_miles or freight.round_trip_km
    distance = driven and not mileage_rate and rate_per_km is None
    time = freight.round_trip_hours and not cost_per_hour
    return [*(["rate per mile or km"] if distance else []), *(["cost per hour"] if time else [])]


def _drive(freight: Freight, door: Door) -> CostLine:
    unit = "miles" if freight.round_trip_km is None or freight.round_trip_miles is not None else "km"
    distance = (freight.round_trip_miles if unit == "miles" else freight.round_trip_km) or Decimal(0)
    amount, rate = _driven(distance, unit, door)
    money = Money(amount=amount, currency=door.currency).rounded()
    return CostLine(
        name=f"Pick-up, {unit}", kind="pick-up", amount=money, rule=f"{distance} {unit} there and back {rate}"
    )


def _driven(distance: Decimal, unit: str, door: Door) -> tuple[Decimal, str]:
    """What the distance costs, not rounded, and the rate in words: that of its own unit, or else the other's."""
    per_mile, per_km = door.mileage_rate, door.rate_per_km
    if unit == "km" and per_km is None:
        return distance * per_mile / KM_PER_MILE, f"x {per_mile} per mile of {KM_PER_MILE} km"
    if unit == "miles" and not per_mile and per_km is not None:
        return distance * KM_PER_MILE * per_km, f"of {KM_PER_MILE} km x {per_km}"
    return distance * (
        per_mile if unit == "miles" else per_km or Decimal(0)
    ), f"x {per_mile if unit == 'miles' else per_km}"


def _freight_by_weighing(items: Sequence[OrderItem], door: Door) -> tuple[CostLine, ...] | Unknown:
    freight, name = door.terms.freight, door.terms.name
    assert freight is not None  # only its rule can send us here
    weighed = weigh(items, freight)
    if weighed.unknown:
        least, most = _range(items, weighed, door)
        why = "; ".join(weighed.questions)
        return Unknown(what=f"freight of {name} is not known: {why}", least=least, most=most)
    found = freight_of_items(freight, items, weighed.charged)
    if found is None:
        kg = (weighed.charged / 1000).quantize(Decimal("0.001"))
        return Unknown(what=f"freight of {name} is not known: its rule says nothing for {kg} kg")
    amount = door.here_at_once(found[0])
    rule = found[1] + below_free(freight) + door.conversion()
    return (CostLine(name="Freight", kind="freight", amount=amount, rule=rule),)


def _range(items: Sequence[OrderItem], weighed: Weighed, door: Door) -> list[int | None]:
    """Freight at least and at most (shop's minor units), where the weight of some pieces lies between two ends."""
    freight, charges = door.terms.freight, []
    ends = freight.piece_weight or (Decimal(0), Decimal(0)) if freight else ()
    for total, each in zip((weighed.least, weighed.most), ends, strict=True):
        found = None
        if freight is not None and total is not None:
            found = freight_of_items(freight, items, total, each * GRAMS[freight.weight_unit])
        charges.append(door.here_at_once(found[0]).minor() if found else None)
    return charges


def charge_of_items(items: Sequence[OrderItem], door: Door) -> int | None:
    """Freight by weight or parcel in the shop's minor units; None where weight or charge is not known."""
    freight = door.terms.freight
    weighed = weigh(items, freight) if freight else None
    if freight is None or weighed is None or weighed.unknown:
        return None
    found = freight_of_items(freight, items, weighed.charged)
    return door.here_at_once(found[0]).minor() if found else None


def charge_by_weight(grams: Decimal | None, door: Door) -> int | None:
    """Freight for that weight in the shop's minor units; None where weight or charge is not known.

    For parcels the least: whole pieces may need more of them (`charge_of_items`)."""
    freight = door.terms.freight
    found = freight_by_weight(freight, grams) if freight and grams is not None else None
    return door.here_at_once(found[0]).minor() if found else None
