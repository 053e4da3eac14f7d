"""How goods get to the shop and what that costs: the supplier's freight rule as data a person edits."""

from decimal import Decimal
from typing import Literal

from .value import Value

FreightRule = Literal["flat", "by order value", "by weight", "per weight", "per parcel", "pick-up", "included", "asked"]


class FreightBand(Value, frozen=True, kw_only=True):
    """From this value of goods on (supplier's currency), freight is this much."""

    from_value: Decimal
    charge: Decimal


class WeightBand(Value, frozen=True, kw_only=True):
    """Up to and including this weight (in the rule's `weight_unit`), freight is this much."""

    to_weight: Decimal
    charge: Decimal


class Dimensional(Value, frozen=True, kw_only=True):
    """Volume that is charged as weight: length x width x height / `divisor`, where that is more than the weight.

    `sides`: whether each side is taken as it is, rounded half up, or rounded up to a whole inch or centimetre first.
    """

    divisor: Decimal
    unit: Literal["in3/lb", "cm3/kg", "in3/kg"]
    sides: Literal["as they are", "rounded", "rounded up"] = "as they are"


class Oversize(Value, frozen=True, kw_only=True):
    """A charge for goods the sheet calls oversize, or whose longest side is longer than `longer_than_cm`.

    `per`: for each such piece, or once for the order. `if_not_stated`: what holds for goods of which the sheet gives
    neither a word nor a length: 'ask' makes it an open question. `counts`: whether such goods count towards the value
    from which freight is free.
    """

    charge: Decimal
    longer_than_cm: Decimal | None = None
    per: Literal["piece", "order"] = "piece"
    if_not_stated: Literal["ask", "not oversize"] = "ask"
    counts: bool = True


class Freight(Value, frozen=True, kw_only=True):
    """How goods get to the shop and what that costs, in the supplier's currency.

    - `flat`: `charge` per order.
    - `by order value`: `bands`.
    - `by weight`: the first of `weight_bands` that holds the order's weight; heavier than the last is not known.
    - `per weight`: `per_weight` for each unit of weight, at least `least`, at most `most`.
    - `per parcel`: `charge` for each parcel of at most `parcel_limit`, or `weight_bands` for each parcel's weight. No
      piece is divided: they are packed heaviest first, each into the first parcel with room for it.
    - `pick-up`: the shop drives, at its own rates per distance and hour; without hours time is not counted.
    - `included`: the price is delivered.
    - `asked`: the supplier says it only when asked; with `between` at least and at most this much.

    Nothing is charged once the goods that count reach `free_from` (oversize charges stay). The weight charged is the
    order's, rounded up to whole `weight_step`s of `weight_unit`, or its volume by `dimensional` where that is more.
    `piece_weight`: the least and most weight of a piece whose weight the sheet does not state.
    """

    rule: FreightRule
    charge: Decimal | None = None
    bands: tuple[FreightBand, ...] = ()
    weight_bands: tuple[WeightBand, ...] = ()
    per_weight: Decimal | None = None
    least: Decimal | None = None
    most: Decimal | None = None
    weight_unit: Literal["kg", "lb"] = "kg"
    weight_step: Decimal | None = None
    parcel_limit: Decimal | None = None
    piece_weight: tuple[Decimal, Decimal] | None = None
    dimensional: Dimensional | None = None
    oversize: Oversize | None = None
    between: tuple[Decimal, Decimal] | None = None
    free_from: Decimal | None = None
    round_trip_miles: Decimal | None = None
    round_trip_km: Decimal | None = None
    round_trip_hours: Decimal | None = None
