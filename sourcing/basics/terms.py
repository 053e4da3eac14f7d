"""A supplier's terms: freight, minimums, cut-off, transit, currency, duty, and how long a sheet's prices hold."""

from datetime import date, time
from decimal import Decimal
from typing import Literal

from .problem import refused
from .value import Value


class FreightBand(Value, frozen=True, kw_only=True):
    """From this value of goods on (supplier's currency), freight is this much."""

    from_value: Decimal
    charge: Decimal


class Freight(Value, frozen=True, kw_only=True):
    """How goods get to the shop and what that costs, in the supplier's currency.

    `flat`: `charge` per order. `by order value`: `bands`. Both: nothing once the goods reach `free_from`.
    `pick-up`: the shop drives, at its own rates per mile and hour. `included`: the price is delivered.
    """

    rule: Literal["flat", "by order value", "pick-up", "included"]
    charge: Decimal | None = None
    bands: tuple[FreightBand, ...] = ()
    free_from: Decimal | None = None
    round_trip_miles: Decimal | None = None
    round_trip_hours: Decimal | None = None


class Calendar(Value, frozen=True, kw_only=True):
    """Working days: week days worked, the country and region whose public holidays are kept, own closing days."""

    week: tuple[Literal["Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"], ...] = (
        "Mon",
        "Tue",
        "Wed",
        "Thu",
        "Fri",
    )
    country: str = ""
    region: str = ""
    closed: tuple[date, ...] = ()


class Terms(Value, frozen=True, kw_only=True):
    """What holds with one supplier from `starts_on`, until a later entry.

    Money is in `currency`. `freight` None: not known, and every result says so. With `minimum_order` and no
    `small_order_fee` an order below it is refused. `duty_percent` None: none is due (the goods are in the
    country). `transit_days` is working days on the road, least and most. `dispatch_days` is working days to
    dispatch what is in stock when the sheet does not say. `prices_hold_days` None: until the next sheet.
    """

    supplier: str
    name: str
    starts_on: date
    currency: str
    freight: Freight | None = None
    minimum_order: Decimal | None = None
    small_order_fee: Decimal | None = None
    handling: Decimal = Decimal(0)
    discount_percent: Decimal = Decimal(0)
    duty_percent: Decimal | None = None
    entry_fee: Decimal = Decimal(0)
    cut_off: time = time(12, 0)
    dispatch_days: int = 0
    transit_days: tuple[int, int] = (1, 5)
    calendar: Calendar = Calendar()
    prices_hold_days: int | None = None
    returns: str = ""
    address: tuple[str, ...] = ()

    def __post_init__(self) -> None:
        freight, wrong = self.freight, ""
        if freight and freight.rule == "flat" and freight.charge is None:
            wrong = "flat freight needs a charge"
        if freight and freight.rule == "by order value" and not freight.bands:
            wrong = "freight by order value needs bands"
        if freight and freight.rule == "pick-up" and freight.round_trip_miles is None:
            wrong = "pick-up needs round_trip_miles"
        if freight and list(freight.bands) != sorted(freight.bands, key=lambda band: band.from_value):
            wrong = "freight bands are not in rising order of from_value"
        if self.transit_days[0] > self.transit_days[1]:
            wrong = "transit_days has the larger number first"
        if wrong:
            raise refused("terms-contradict", supplier=self.supplier, found=wrong)
