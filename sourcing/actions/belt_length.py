"""The length of a belt from its two pulleys, or their centre distance from a belt: a measure that is only a clue."""

from decimal import Decimal

from ..basics.value import Value
from ..matching.dimensions.size import Unit
from ..matching.dimensions.two_pulleys import (
    DiameterKind,
    PulleyBelt,
    Pulleys,
    belt_length,
    centre_distance,
    pulleys,
)

UNITS: tuple[Unit, ...] = ("in", "mm")
DIAMETERS: tuple[DiameterKind, ...] = ("outside", "datum", "pitch", "effective", "inside")
"""The outside first: it is what a caliper takes."""

CAUTION = (
    "A measured or computed length is a clue: it gives a size, never the part. An idler adds to the length; cord, "
    "cover and cogs are not in it. Find the parts list for model and serial number, and follow the maker's manual."
)

CAUTION_HANDS = (
    "Before measuring: engine off, all motion stopped, key out, spark-plug wire off, power or battery disconnected."
)


class TwoPulleys(Value, frozen=True, kw_only=True):
    """Diameters of driver and driven pulley, of one kind, and the unit all measures are in."""

    driver: Decimal
    driven: Decimal
    unit: Unit
    kind: DiameterKind = "outside"
    crossed: bool = False


def belt_for(drive: TwoPulleys, centres: Decimal) -> PulleyBelt:
    """The belt over these pulleys at that centre distance. Refuses measures that no drive can have."""
    return belt_length(_pulleys(drive), centres)


def centres_for(drive: TwoPulleys, length: Decimal) -> PulleyBelt:
    """The centre distance at which a belt of that length runs. Refuses a belt too short for the pulleys."""
    return centre_distance(_pulleys(drive), length)


def _pulleys(drive: TwoPulleys) -> Pulleys:
    return pulleys(drive.driver, drive.driven, drive.unit, drive.kind, drive.crossed)
