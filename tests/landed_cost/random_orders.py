"""Random terms, doors and orders with every rule of the terms switched on now and then; one seed, one order."""

import random
from datetime import date
from decimal import Decimal
from typing import Any

from sourcing.basics.freight import Dimensional, Freight, FreightBand, Oversize, WeightBand
from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.rate import Rate
from sourcing.basics.terms import CashDiscount, DutyRate, EntryFee, OrderDiscount, Split, TaxedPart, TaxPaid
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.quantity import pieces_to_order
from tests.builders import item, offer, terms

ORIGINS = ("DE", "CN", "US", "")
TARIFFS = ("8436", "8436.80", "4010", "")


def cents(chance: random.Random, most: int) -> Decimal:
    """An amount of whole cents."""
    return Decimal(chance.randint(1, most)) / 100


def perhaps(chance: random.Random, value: Any, likely: float = 0.4) -> Any:
    """The value, or None."""
    return value if chance.random() < likely else None


def percent(chance: random.Random) -> Decimal:
    """A rate with a tail."""
    return Decimal(chance.choice(["0.3464", "2.5", "3", "7.25", "12", "33.333"]))


def random_freight(chance: random.Random, whole_grams: bool) -> Freight:
    """One of the rules, with bands, limits and oversize. Weights in kg where the grams are to be whole."""
    unit = "kg" if whole_grams else chance.choice(["kg", "lb"])
    charges = sorted(cents(chance, 3000) for _ in range(3))
    fields: dict[str, Any] = {
        "flat": {"charge": cents(chance, 3000)},
        "by order value": {
            "bands": tuple(
                FreightBand(from_value=Decimal(at), charge=cents(chance, 3000)) for at in (0, 40, Decimal("99.995"))
            )
        },
        "by weight": {
            "weight_bands": tuple(
                WeightBand(to_weight=Decimal(to), charge=charge)
                for to, charge in zip(("1", "4.5", "12"), charges, strict=True)
            )
        },
        "per weight": {
            "per_weight": Decimal(chance.randint(1, 4000)) / 1000,
            "least": perhaps(chance, charges[0]),
            "most": perhaps(chance, charges[2]),
        },
        "per parcel": {"charge": charges[0], "parcel_limit": Decimal(chance.choice([6, 10, 31]))},
        "pick-up": {"round_trip_miles": Decimal(46), "round_trip_hours": Decimal("1.25")},
        "included": {},
    }
    rule = chance.choice(list(fields))
    more: dict[str, Any] = {"free_from": perhaps(chance, cents(chance, 30000))}
    if "weight" in rule or rule == "per parcel":
        steps = {"kg": ["0.25", "0.5", "1"], "lb": ["0.25", "1"]}[unit]
        volume = Dimensional(divisor=Decimal(5000), unit="cm3/kg", sides=chance.choice(["as they are", "rounded up"]))
        more |= {
            "weight_unit": unit,
            "weight_step": perhaps(chance, Decimal(chance.choice(steps)), 0.6),
            "dimensional": perhaps(chance, volume),
        }
    oversize = Oversize(
        charge=cents(chance, 4000),
        longer_than_cm=perhaps(chance, Decimal(90)),
        per=chance.choice(["piece", "order"]),
        if_not_stated="not oversize",
        counts=chance.random() < 0.5,
    )
    return Freight(rule=rule, oversize=perhaps(chance, oversize), **fields[rule], **more)  # type: ignore[arg-type]


def random_duty(chance: random.Random) -> dict[str, Any]:
    """Rates by origin and tariff that never leave a question for goods that state both in full."""
    rates = tuple(
        DutyRate(percent=percent(chance), origin=chance.choice(ORIGINS), tariff=chance.choice(["8436.80", "4010", ""]))
        for _ in range(chance.randint(0, 3))
    )
    return {
        "duty_percent": perhaps(chance, percent(chance), 0.6),
        "duty_rates": rates,
        "duty_on": chance.choice(["goods", "goods and freight"]),
    }


def random_fees(chance: random.Random) -> dict[str, Any]:
    """Fixed fees, fees in per cent with limits, tax."""
    broker = EntryFee(name="Broker", charge=cents(chance, 900), currency=chance.choice(["", "USD", "CAD"]))
    clearing = EntryFee(
        name="Clearing",
        percent=percent(chance),
        of=chance.choice(["goods", "duty"]),
        least=perhaps(chance, Decimal("31.67")),
        most=perhaps(chance, Decimal("614.35")),
        currency=chance.choice(["", "USD", "CAD"]),
    )
    parts: tuple[TaxedPart, ...] = ("goods", "freight", "duty", "fees")
    on = tuple(part for part in parts if chance.random() < 0.7)
    tax = TaxPaid(name="Purchase tax", percent=percent(chance), on=on, uplift_percent=Decimal(chance.choice([0, 10])))
    return {
        "minimum_order": perhaps(chance, cents(chance, 8000)),
        "small_order_fee": perhaps(chance, cents(chance, 900), 0.7),
        "handling": perhaps(chance, cents(chance, 500)) or Decimal(0),
        "handling_per_line": perhaps(chance, cents(chance, 200)) or Decimal(0),
        "entry_fee": perhaps(chance, cents(chance, 2000)) or Decimal(0),
        "entry_fees": tuple(fee for fee in (broker, clearing) if chance.random() < 0.4),
        "payment_percent": perhaps(chance, percent(chance)) or Decimal(0),
        "tax": perhaps(chance, tax),
        "split": Split(sends=chance.choice(["together", "as ready"]), later_charge=cents(chance, 1500)),
    }


def random_discounts(chance: random.Random) -> dict[str, Any]:
    """Line discount, discounts on the order by its value, and for paying early."""
    steps = tuple(
        OrderDiscount(from_value=Decimal(at), percent=percent(chance)) for at in (0, 55, 180) if chance.random() < 0.5
    )
    return {
        "discount_percent": perhaps(chance, percent(chance)) or Decimal(0),
        "order_discounts": steps if chance.random() < 0.5 else (),
        "cash_discount": perhaps(chance, CashDiscount(percent=Decimal(2), within_days=10)),
        "breaks": chance.choice(["all pieces", "pieces above"]),
    }


def random_door(chance: random.Random, whole_grams: bool = True) -> Door:
    """A supplier's terms and the rates to the shop; his currency has two, none or three decimals."""
    currency, rate = chance.choice([("USD", "1"), ("EUR", "1.08537"), ("JPY", "0.0067193"), ("KWD", "3.2571")])
    held = terms(
        currency=currency,
        freight=random_freight(chance, whole_grams),
        **random_duty(chance),
        **random_fees(chance),
        **random_discounts(chance),
    )
    day = date(2026, 1, 9)
    return Door(
        terms=held,
        rate=Rate(currency=currency, into="USD", rate=Decimal(rate), dated=day),
        mileage_rate=Decimal("0.725"),
        driver_cost=Decimal("22.00"),
        other_rates=(Rate(currency="CAD", into="USD", rate=Decimal("0.72913"), dated=day),),
    )


def random_item(chance: random.Random, door: Door, whole_grams: bool = True) -> OrderItem:
    """An offer with all that terms may ask of it, and a quantity that its packs allow."""
    price = Decimal(chance.randint(1, 60000)) / 1000
    breaks = [(1, str(price)), (4, str(price * Decimal("0.9"))), (10, str(price * Decimal("0.75")))]
    places = 3 if whole_grams else 5
    one = offer(
        currency=door.terms.currency,
        number=f"X-{chance.randint(1, 99)}",
        breaks=breaks[: chance.randint(1, 3)],
        pack=chance.choice([1, 1, 1, 4]),
        minimum=chance.choice([1, 1, 3]),
        price_basis=chance.choice([1, 1, 1, 100]),
        core_charge=perhaps(chance, cents(chance, 3000)),
        origin=chance.choice(ORIGINS[:3]),
        tariff_code=chance.choice(["8436.80.00", "4010.36", "9999.00"]),
        weight_kg=Decimal(chance.randint(1, 2 * 10**places)).scaleb(-places),
        length_cm=Decimal(chance.choice([10, 50, 95])),
        width_cm=Decimal(chance.choice([10, 20])),
        height_cm=Decimal(chance.choice([5, 15])),
        oversize=chance.choice([None, None, True, False]),
    )
    needed = chance.randint(1, 12)
    more = chance.choice([0, 0, 5])
    return item(one, needed, pieces_to_order(one, needed + more))
