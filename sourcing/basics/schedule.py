"""A supplier's charges on an order as a programme can take them: whole minor units, steps and per cents.

It says the same as the landed-cost rules, for an order known only by its sums: value of goods, weight, deliveries.
Amounts are in minor units (cents) of the shop's currency, values of goods in those of the supplier's, weights in grams.
"""

from decimal import Decimal
from typing import Literal

from .value import Value

SummedPart = Literal["goods", "discount", "freight", "duty", "fees", "tax"]
"""'goods' are the items' goods in the shop's currency after line discounts, 'discount' the order discount (negative),
'freight' all lines that count as freight, 'duty' the items' duty and the duty on freight and discount, 'fees' handling,
small-order, entry and payment fees."""


class ItemSums(Value, frozen=True, kw_only=True):
    """What one item adds to its order. `value` and `counted` in the supplier's minor units, money in the shop's.

    `counted` is the part of `value` that counts towards free freight. `freight` is what the item itself adds (oversize
    per piece), `fees` the handling of its line. `grams` and `volume_grams` are rounded down, 0 where no rule asks for
    them. `surplus` is the goods cost of the pieces beyond the need that could
    not be left out, less the largest order discount, `core` the core charge, which is cash and not cost.
    """

    value: int
    counted: int
    goods: int
    duty: int
    freight: int
    fees: int
    core: int
    surplus: int
    grams: int = 0
    volume_grams: int = 0
    oversize: bool = False


class ValueStep(Value, frozen=True, kw_only=True):
    """From this value of goods on: fees of a fixed amount and the order discount in per cent of the value.

    `discount_percent` of a value in the supplier's minor units gives the shop's: the currency's rate is in it. It is
    rounded half up once. `refused`: the supplier takes no such order.
    """

    from_value: int
    fees: int
    discount_percent: Decimal = Decimal(0)
    refused: bool = False


class FreightStep(Value, frozen=True, kw_only=True):
    """Freight from this value of counted goods on. `by_weight`: the charge by weight comes on top.

    `known` False: nobody says what freight such an order costs, so that it can't be planned (`freight` is 0).
    """

    from_value: int
    freight: int
    by_weight: bool = False
    known: bool = True


class WeightStep(Value, frozen=True, kw_only=True):
    """Freight of orders heavier than `above` grams, up to the next step's; the first step is from 0 on."""

    above: int
    freight: int


class Percent(Value, frozen=True, kw_only=True):
    """A charge: `fixed`, plus `percent` of a sum of parts, rounded half up once and held between `least` and `most`.

    `of` are pairs of (part, factor), so that an uplifted base can be said. `part` is what the charge itself counts as
    for those after it.
    """

    part: SummedPart
    percent: Decimal
    of: tuple[tuple[SummedPart, Decimal], ...]
    least: int | None = None
    most: int | None = None
    fixed: int = 0


class Schedule(Value, frozen=True, kw_only=True):
    """All charges of one supplier on one order, beside what its items bring themselves (`ItemSums`).

    `steps` and `freight_steps` rise from 0 and hold the lowest step first. By weight: either `weight_steps` (freight
    never falls with weight), or `freight_per_kg` in minor units held between `weight_least` and `weight_most`, of the
    weight rounded up to whole `weight_started` grams (None: as it is); both are looked up with the larger of the
    order's grams and volume grams. `heaviest`: orders by weight that are heavier (in grams) have no known freight and
    can't be planned; None: no such limit. `oversize_once`: freight as soon as one item is oversize. `later_delivery`:
    freight of each delivery beyond the first. `percents` are worked out in this order, each on the sums before it.
    `packed`: whole pieces are packed into parcels, so that the true freight may be more than the weight says, never
    less.
    """

    supplier: str
    steps: tuple[ValueStep, ...]
    freight_steps: tuple[FreightStep, ...]
    weight_steps: tuple[WeightStep, ...] = ()
    freight_per_kg: Decimal | None = None
    weight_started: Decimal | None = None
    weight_least: int = 0
    weight_most: int | None = None
    heaviest: int | None = None
    oversize_once: int = 0
    later_delivery: int = 0
    percents: tuple[Percent, ...] = ()
    packed: bool = False
