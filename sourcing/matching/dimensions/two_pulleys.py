"""The length of a belt over two pulleys, from their diameters and the distance between their shafts; and back.

Formulas: Machinery's Handbook, belt length, from memory, checked against the path itself in the tests.
  open belt, near enough:   L = 2C + pi(D + d)/2 + (D - d)^2 / (4C)
  open belt, exact:         L = 2 sqrt(C^2 - ((D - d)/2)^2) + pi(D + d)/2 + (D - d) asin((D - d)/(2C))
  crossed belt, near enough: L = 2C + pi(D + d)/2 + (D + d)^2 / (4C)
  crossed belt, exact:      L = 2 sqrt(C^2 - ((D + d)/2)^2) + (D + d)(pi/2 + asin((D + d)/(2C)))
The kind of diameter decides the kind of length: datum diameters give the datum length, outside diameters the outside
length of a belt that lies flush with the rims. A measured length is a clue, not the part: an idler adds to it, and the
machine's parts list comes first.
"""

from decimal import Decimal, localcontext
from typing import Literal

from ...basics.problem import refused
from ...basics.value import Value
from .arcs import PI, arcsine
from .size import Unit

DiameterKind = Literal["inside", "datum", "outside", "effective", "pitch"]

_DIGITS = 40
_SHOWN: dict[Unit, Decimal] = {"in": Decimal("0.01"), "mm": Decimal("0.1")}


class Pulleys(Value, frozen=True, kw_only=True):
    """Two pulleys: larger and smaller diameter of one kind, in `unit`; `crossed`: the belt runs in a figure of
    eight."""

    larger: Decimal
    smaller: Decimal
    unit: Unit
    kind: DiameterKind
    crossed: bool = False


class PulleyBelt(Value, frozen=True, kw_only=True):
    """The belt: centre distance and length, unrounded, the handbook's near-enough length beside; the formula in
    words."""

    pulleys: Pulleys
    centre: Decimal
    length: Decimal
    near_length: Decimal
    words: str


def pulleys(one: Decimal, other: Decimal, unit: Unit, kind: DiameterKind, crossed: bool = False) -> Pulleys:
    """Two diameters in any order. Raises Refused where one is not above zero."""
    for diameter in (one, other):
        _positive("a diameter", diameter, unit)
    return Pulleys(larger=max(one, other), smaller=min(one, other), unit=unit, kind=kind, crossed=crossed)


def belt_length(drive: Pulleys, centre: Decimal) -> PulleyBelt:
    """The belt for a centre distance in the pulleys' unit.

    Raises Refused where the centre distance is less than half the sum of the diameters.
    """
    _positive("the centre distance", centre, drive.unit)
    least = (drive.larger + drive.smaller) / 2
    if centre < least:
        raise refused("pulleys-overlap", found=f"{centre} {drive.unit}", least=f"{least} {drive.unit}")
    with localcontext(prec=_DIGITS):
        length, near = _exact(drive, centre), _near(drive, centre)
    words = _words(drive, centre, length, near)
    return PulleyBelt(pulleys=drive, centre=centre, length=+length, near_length=+near, words=words)


def centre_distance(drive: Pulleys, length: Decimal) -> PulleyBelt:
    """The centre distance a belt of this length gives, by the exact formula, to a millionth of the unit.

    Raises Refused where the belt is too short to reach round the pulleys.
    """
    _positive("the length", length, drive.unit)
    low, high = (drive.larger + drive.smaller) / 2, max(length, drive.larger + drive.smaller)
    least = belt_length(drive, low).length
    if length < least:
        shown = f"{_rounded(least, drive.unit)} {drive.unit}"
        raise refused("belt-too-short", found=f"{length} {drive.unit}", least=shown)
    with localcontext(prec=_DIGITS):
        # The exact length grows with the centre distance, so halving the span always closes in on it.
        while high - low > Decimal("1e-12"):
            middle = (low + high) / 2
            low, high = (middle, high) if _exact(drive, middle) < length else (low, middle)
        centre = ((low + high) / 2).quantize(Decimal("1e-6"))
    return belt_length(drive, max(centre, (drive.larger + drive.smaller) / 2))


def _exact(drive: Pulleys, centre: Decimal) -> Decimal:
    total, gap = drive.larger + drive.smaller, drive.larger - drive.smaller
    apart = total if drive.crossed else gap
    straight = 2 * (centre * centre - (apart / 2) ** 2).sqrt()
    return straight + PI * total / 2 + apart * arcsine(apart / (2 * centre))


def _near(drive: Pulleys, centre: Decimal) -> Decimal:
    total, gap = drive.larger + drive.smaller, drive.larger - drive.smaller
    apart = total if drive.crossed else gap
    return 2 * centre + PI * total / 2 + apart * apart / (4 * centre)


def _positive(what: str, value: Decimal, unit: Unit) -> None:
    if not value.is_finite() or value <= 0:
        raise refused("pulley-not-positive", what=what, found=f"{value} {unit}")


def _rounded(value: Decimal, unit: Unit) -> str:
    return f"{value.quantize(_SHOWN[unit]):f}"


def _words(drive: Pulleys, centre: Decimal, length: Decimal, near: Decimal) -> str:
    big, small, unit = f"{drive.larger:f}", f"{drive.smaller:f}", drive.unit
    middle = _rounded(centre, unit)
    sign, run = ("+", "crossed") if drive.crossed else ("-", "open")
    return (
        f"{run} belt, L = 2C + pi(D + d)/2 + (D {sign} d)^2/(4C) = "
        f"2 x {middle} + pi x ({big} + {small})/2 + ({big} {sign} {small})^2/(4 x {middle}) = "
        f"{_rounded(near, unit)} {unit}; exact {_rounded(length, unit)} {unit}. {_KINDS[drive.kind]}"
    )


_KINDS: dict[DiameterKind, str] = {
    kind: f"{kind.capitalize()} diameters: this is the {kind} length; convert it before comparing it with another kind."
    for kind in ("inside", "datum", "outside", "effective", "pitch")
}
