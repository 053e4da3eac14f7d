"""Random terms with every rule switched on at random; the same dice give the same terms.

Limits and weights are chosen near the worth of small orders, so that the rules are reached and missed equally often.
"""

import random
from collections.abc import Callable
from datetime import date, time
from decimal import Decimal
from typing import Literal, cast, get_args

from sourcing.basics.freight import Dimensional, Freight, FreightBand, FreightRule, Oversize, WeightBand
from sourcing.basics.terms import (
    CashDiscount,
    DutyRate,
    EntryFee,
    OrderDiscount,
    Split,
    TaxedPart,
    TaxPaid,
    Terms,
)


class Dice(random.Random):
    """Chances as a person would say them."""

    def maybe(self, share: float) -> bool:
        """True in about this share of throws."""
        return self.random() < share

    def cents(self, least: int, most: int) -> Decimal:
        """An amount of hundredths between both."""
        return Decimal(self.randint(least, most)) / 100

    def percent(self, *of: str) -> Decimal:
        """One of these."""
        return Decimal(self.choice(of))


def random_terms(dice: Dice, supplier: str, currency: str) -> Terms:
    """Every field of the terms that costs money or time."""
    unit = scale(currency)
    minimum = dice.cents(1500, 9000) * unit if dice.maybe(0.4) else None
    return Terms(
        supplier=supplier,
        name=supplier.title(),
        starts_on=date(2025, 1, 1),
        currency=currency,
        freight=random_freight(dice, unit) if dice.maybe(0.97) else None,
        minimum_order=minimum,
        small_order_fee=dice.cents(200, 900) * unit if minimum is not None and dice.maybe(0.6) else None,
        handling=dice.cents(50, 500) * unit if dice.maybe(0.3) else Decimal(0),
        handling_per_line=dice.cents(25, 150) * unit if dice.maybe(0.2) else Decimal(0),
        discount_percent=dice.percent("0", "0", "0", "5", "7.5", "33.333"),
        order_discounts=random_order_discounts(dice, unit),
        cash_discount=CashDiscount(percent=Decimal(2), within_days=10) if dice.maybe(0.2) else None,
        breaks="pieces above" if dice.maybe(0.3) else "all pieces",
        duty_percent=dice.percent("0", "2.7", "3.3", "12") if dice.maybe(0.35) else None,
        duty_rates=random_duty_rates(dice),
        duty_on="goods and freight" if dice.maybe(0.3) else "goods",
        entry_fee=dice.cents(300, 1200) * unit if dice.maybe(0.15) else Decimal(0),
        entry_fees=tuple(random_entry_fee(dice, unit, at) for at in range(dice.choice([0, 0, 0, 1, 2]))),
        payment_percent=dice.percent("0", "0", "0", "1.75", "3"),
        tax=random_tax(dice),
        split=Split(sends="as ready", later_charge=dice.cents(0, 900) * unit) if dice.maybe(0.35) else Split(),
        cut_off=time(dice.choice([9, 12, 16]), 0),
        dispatch_days=dice.choice([0, 0, 1]),
        transit_days=dice.choice([(1, 2), (2, 2), (1, 5), (3, 6)]),
    )


def scale(currency: str) -> Decimal:
    """How many units of the currency stand for about a dollar's worth: whole yen, the rest as they are."""
    return Decimal(100) if currency == "JPY" else Decimal(1)


def random_freight(dice: Dice, unit: Decimal) -> Freight:
    """Any rule that gives a number, with or without a value from which it is free and a charge for oversize."""
    rules = [rule for rule in get_args(FreightRule) if rule != "asked"]
    rule = cast(FreightRule, dice.choice([*rules, "flat", "flat"]))
    fields: dict[str, object] = {"rule": rule}
    if rule not in ("pick-up", "included"):
        fields["free_from"] = dice.cents(4000, 16000) * unit if dice.maybe(0.6) else None
        fields["oversize"] = random_oversize(dice, unit) if dice.maybe(0.3) else None
    more: dict[str, Callable[[], dict[str, object]]] = {
        "flat": lambda: {"charge": dice.cents(500, 2500) * unit},
        "by order value": lambda: {"bands": random_bands(dice, unit)},
        "by weight": lambda: {"weight_bands": random_weight_bands(dice, unit), **random_weighing(dice)},
        "per weight": lambda: {**random_per_weight(dice, unit), **random_weighing(dice)},
        "per parcel": lambda: {**random_parcel(dice, unit), **random_weighing(dice)},
        "pick-up": lambda: random_drive(dice),
        "included": lambda: {},
    }
    fields |= more[rule]()
    return Freight(**fields)  # type: ignore[arg-type]


def random_bands(dice: Dice, unit: Decimal) -> tuple[FreightBand, ...]:
    """Two or three, mostly falling with the value, now and then rising: both are met."""
    froms = [0, *sorted(dice.sample([2500, 4000, 6000, 9000, 14000], dice.randint(1, 2)))]
    charges = sorted((dice.cents(0, 2500) for _ in froms), reverse=dice.maybe(0.75))
    return tuple(
        FreightBand(from_value=Decimal(at) / 100 * unit, charge=charge * unit)
        for at, charge in zip(froms, charges, strict=True)
    )


def random_weight_bands(dice: Dice, unit: Decimal) -> tuple[WeightBand, ...]:
    """Rising; the last holds any order of a trial."""
    tops = [*sorted(dice.sample([1, 2, 4, 7, 12], dice.randint(1, 3))), 2000]
    charges = sorted(dice.cents(300, 3000) for _ in tops)
    return tuple(
        WeightBand(to_weight=Decimal(top), charge=charge * unit) for top, charge in zip(tops, charges, strict=True)
    )


def random_weighing(dice: Dice) -> dict[str, object]:
    """Unit, whole steps, volume that counts as weight."""
    unit: Literal["kg", "lb"] = dice.choice(["kg", "lb"])
    divisor = (
        Dimensional(divisor=Decimal(dice.choice([5000, 6000])), unit="cm3/kg", sides=dice.choice(list(SIDES)))
        if unit == "kg"
        else Dimensional(divisor=Decimal(139), unit="in3/lb", sides=dice.choice(list(SIDES)))
    )
    return {
        "weight_unit": unit,
        "weight_step": dice.choice([None, None, Decimal("0.5"), Decimal(1)]),
        "dimensional": divisor if dice.maybe(0.4) else None,
    }


SIDES: tuple[Literal["as they are", "rounded", "rounded up"], ...] = ("as they are", "rounded", "rounded up")


def random_per_weight(dice: Dice, unit: Decimal) -> dict[str, object]:
    """So much a kilogram or pound, held between bounds at times."""
    least = dice.cents(300, 800) * unit if dice.maybe(0.5) else None
    return {
        "per_weight": dice.cents(40, 400) * unit,
        "least": least,
        "most": (least or Decimal(0)) + dice.cents(500, 2500) * unit if dice.maybe(0.4) else None,
    }


def random_parcel(dice: Dice, unit: Decimal) -> dict[str, object]:
    """A charge a parcel, or bands for each parcel's weight."""
    limit = Decimal(dice.choice([5, 10, 30]))
    if dice.maybe(0.6):
        return {"parcel_limit": limit, "charge": dice.cents(400, 1500) * unit}
    low = dice.cents(300, 900)
    bands = (
        WeightBand(to_weight=limit / 2, charge=low * unit),
        WeightBand(to_weight=limit, charge=(low + dice.cents(100, 900)) * unit),
    )
    return {"parcel_limit": limit, "weight_bands": bands}


def random_drive(dice: Dice) -> dict[str, object]:
    """By miles or kilometres, and time."""
    distance = "round_trip_miles" if dice.maybe(0.5) else "round_trip_km"
    return {distance: Decimal(dice.randint(4, 40)), "round_trip_hours": dice.percent("0.25", "0.75", "1.5")}


def random_oversize(dice: Dice, unit: Decimal) -> Oversize:
    """By length or by the sheet's word, per piece or order; silence means not oversize, so that all has a number."""
    return Oversize(
        charge=dice.cents(300, 1800) * unit,
        longer_than_cm=Decimal(dice.choice([60, 120])) if dice.maybe(0.7) else None,
        per="order" if dice.maybe(0.5) else "piece",
        if_not_stated="not oversize",
        counts=dice.maybe(0.6),
    )


def random_order_discounts(dice: Dice, unit: Decimal) -> tuple[OrderDiscount, ...]:
    """None, one, or two that rise."""
    froms = sorted(dice.sample([2000, 3500, 5000, 8000, 12000], dice.choice([0, 0, 0, 1, 2])))
    percents = sorted(dice.percent("2", "3.5", "5", "10") for _ in froms)
    return tuple(
        OrderDiscount(from_value=Decimal(at) / 100 * unit, percent=percent)
        for at, percent in zip(froms, percents, strict=True)
    )


def random_duty_rates(dice: Dice) -> tuple[DutyRate, ...]:
    """By origin, by tariff, by both."""
    rates = (
        DutyRate(percent=Decimal("7.5"), origin="CN"),
        DutyRate(percent=Decimal("4.2"), tariff="4010"),
        DutyRate(percent=Decimal("25"), origin="CN", tariff="401039"),
    )
    return tuple(rate for rate in rates if dice.maybe(0.15))


def random_entry_fee(dice: Dice, unit: Decimal, at: int) -> EntryFee:
    """A share of goods or duty with least and most, or an amount; in the supplier's or another currency."""
    least = dice.cents(50, 300) if dice.maybe(0.5) else None
    own = dice.maybe(0.6)
    money = Decimal(1) if own else unit
    return EntryFee(
        name=f"Entry charge {at + 1}",
        charge=dice.cents(0, 400) * money if dice.maybe(0.4) else Decimal(0),
        percent=dice.percent("0", "0.3464", "0.125", "2"),
        of="duty" if dice.maybe(0.25) else "goods",
        least=least * money if least is not None else None,
        most=((least or Decimal(0)) + dice.cents(100, 700)) * money if dice.maybe(0.5) else None,
        currency="USD" if own else "",
    )


def random_tax(dice: Dice) -> TaxPaid | None:
    """A tax not got back, on some of the parts, at times on a raised base."""
    if not dice.maybe(0.3):
        return None
    parts = tuple(part for part in get_args(TaxedPart) if dice.maybe(0.7)) or ("goods",)
    return TaxPaid(
        name="Import tax",
        percent=dice.percent("5", "8.25", "19"),
        on=cast(tuple[TaxedPart, ...], parts),
        uplift_percent=dice.percent("0", "0", "10"),
    )
