"""What can't hold in a freight rule: fields that are missing or do not belong to it, and bands that contradict."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import pairwise

from .contradiction import Contradiction
from .freight import Freight
from .toml_text import stated

WEIGHT = frozenset(("weight_unit", "weight_step", "piece_weight", "dimensional"))
CHARGED = frozenset(("free_from", "oversize"))
BELONGS: dict[str, frozenset[str]] = {
    "flat": CHARGED | {"charge"},
    "by order value": CHARGED | {"bands"},
    "by weight": CHARGED | WEIGHT | {"weight_bands"},
    "per weight": CHARGED | WEIGHT | {"per_weight", "least", "most"},
    "per parcel": CHARGED | WEIGHT | {"charge", "weight_bands", "parcel_limit"},
    "pick-up": frozenset(("round_trip_miles", "round_trip_km", "round_trip_hours")),
    "included": frozenset(("oversize",)),
    "asked": CHARGED | {"between"},
}
"""The fields each rule has."""

NEEDS: dict[str, tuple[tuple[str, ...], ...]] = {
    "flat": (("charge",),),
    "by order value": (("bands",),),
    "by weight": (("weight_bands",),),
    "per weight": (("per_weight",),),
    "per parcel": (("parcel_limit",), ("charge", "weight_bands")),
    "pick-up": (("round_trip_miles", "round_trip_km"),),
}
"""The fields each rule can't do without: exactly one of each group."""


def freight_contradictions(freight: Freight) -> Iterator[Contradiction]:
    """All that can't hold in the rule, but for its single numbers."""
    yield from _fields(freight)
    yield from _value_bands(freight)
    yield from _weight_bands(freight)
    if freight.least is not None and freight.most is not None and freight.least > freight.most:
        yield _wrong("least", f"is {freight.least}, more than 'most' ({freight.most})")


def _wrong(field: str, found: str) -> Contradiction:
    return Contradiction(field=f"freight.{field}", found=found)


def _fields(freight: Freight) -> Iterator[Contradiction]:
    given = set(stated(freight)) - {"rule"}
    for group in NEEDS.get(freight.rule, ()):
        there = sorted(given.intersection(group))
        if not there:
            yield _wrong(" or ".join(group), f"is missing, and the rule '{freight.rule}' needs it")
        elif len(there) > 1:
            yield _wrong(" and ".join(there), f"are both given, and the rule '{freight.rule}' takes one of them")
    for field in sorted(given - BELONGS[freight.rule]):
        if field == "free_from" and freight.rule in ("included", "pick-up"):
            yield _wrong(field, f"is given, but with the rule '{freight.rule}' he charges nothing anyhow")
        else:
            yield _wrong(field, f"does not belong to the rule '{freight.rule}'")
    if freight.free_from is not None and freight.free_from == 0:
        yield _wrong("free_from", "is 0, so nothing would ever be charged: write rule = 'included' if that is so")


def _value_bands(freight: Freight) -> Iterator[Contradiction]:
    """They rise from 0; the charge may fall, for larger orders often go cheaper."""
    yield from rising([band.from_value for band in freight.bands], "freight.bands", "from_value")
    if freight.bands and freight.bands[0].from_value > 0:
        first = freight.bands[0].from_value
        yield _wrong("bands.1.from_value", f"is {first}, so an order below it has no charge: begin from 0")


def _weight_bands(freight: Freight) -> Iterator[Contradiction]:
    """They rise, and no heavier band is cheaper: that is a slip far more often than an offer."""
    bands = freight.weight_bands
    yield from rising([band.to_weight for band in bands], "freight.weight_bands", "to_weight")
    for at, (light, heavy) in enumerate(pairwise(bands), 2):
        if heavy.charge < light.charge:
            yield _wrong(
                f"weight_bands.{at}.charge", f"is {heavy.charge}, less than the lighter band's ({light.charge})"
            )
    limit = freight.parcel_limit
    if freight.rule == "per parcel" and bands and limit is not None and bands[-1].to_weight < limit:
        short = f"ends at {bands[-1].to_weight}, and a parcel may weigh {limit}"
        yield _wrong("weight_bands", f"{short}: the heaviest parcels have no charge")


def rising(starts: Sequence[Decimal], path: str, field: str) -> Iterator[Contradiction]:
    """A contradiction for every entry of a list that does not begin above the one before it."""
    for at, (one, other) in enumerate(pairwise(starts), 2):
        if one == other:
            yield Contradiction(field=f"{path}.{at}.{field}", found=f"is {other} a second time")
        elif one > other:
            yield Contradiction(field=f"{path}.{at}.{field}", found=f"is {other}, below the one before it ({one})")
