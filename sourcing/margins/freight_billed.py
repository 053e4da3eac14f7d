"""Freight billed on lines of its own: over which parts it is shared, and what of their cost stands beside its price.

A part by itself, and its floor, leave out the freight that is billed apart, as on the quote's own figures: the freight
line has its price and its cost. Sums by supplier, category and month have parts and freight together, on both sides.
"""

from collections.abc import Sequence

from ..basics.value import changed
from .line import NO_FREIGHT, FreightApart, LineFigures, Told
from .minor import shared


def freight_shares(every: Sequence[Told]) -> list[int]:
    """Freight billed on a line of its own, shared over the parts it was billed for, as their quoted charges are."""
    given = [0] * len(every)
    for at, over in _borne(every):
        given[at] -= every[at].billed
        for to, share in zip(over, shared(every[at].billed, [every[to].quoted.freight for to in over]), strict=True):
            given[to] += share
    return given


def with_freight_apart(every: Sequence[Told], lines: Sequence[LineFigures]) -> list[LineFigures]:
    """The lines with what of their cost is freight billed apart: below zero for parts, above for the freight's own.

    Freight that the bill leaves off is the parts' own cost again. `lines` are those of `every`, in its order.
    """
    found = list(lines)
    for at, over in _borne(every):
        if every[at].left_off:
            continue
        taken = {to: _freight_of(every[to], found[to]) for to in over if found[to].freight_apart is NO_FREIGHT}
        for to, one in taken.items():
            found[to] = changed(found[to], freight_apart=one)
        found[at] = changed(found[at], freight_apart=_against(list(taken.values())))
    return found


def by_itself(line: LineFigures) -> LineFigures:
    """The line as it is judged by itself: freight billed apart stands, with its cost, on the line that bills it."""
    apart = line.freight_apart
    if apart is NO_FREIGHT:
        return line
    return changed(
        line,
        cost=line.cost + apart.quoted,
        ordered=_and(line.ordered, apart.ordered),
        received=_and(line.received, apart.received),
    )


def _and(cost: int | None, apart: int | None) -> int | None:
    return None if cost is None or apart is None else cost + apart


def _freight_of(told: Told, line: LineFigures) -> FreightApart:
    """Its freight at each stage, below zero: the carrier's and the shop's own drive, as the quote counts them."""
    drive = sum(one.ordered.drive for one in told.bought)
    ordered = None if line.ordered is None else -(told.carrier + drive if told.bought else 0)
    received = None
    if line.received is not None:
        received = -(sum(one.received.freight for one in told.bought if one.received) + (drive if told.bought else 0))
    quoted = -told.quoted.freight
    known = received if received is not None else quoted if ordered is None else ordered
    return FreightApart(quoted=quoted, ordered=ordered, received=received, known=known)


def _against(taken: Sequence[FreightApart]) -> FreightApart:
    """What the parts gave, on the freight's own line; a stage waits until all of them have reached it."""
    ordered = [one.ordered for one in taken if one.ordered is not None]
    received = [one.received for one in taken if one.received is not None]
    return FreightApart(
        quoted=-sum(one.quoted for one in taken),
        ordered=-sum(ordered) if len(ordered) == len(taken) else None,
        received=-sum(received) if len(received) == len(taken) else None,
        known=-sum(one.known for one in taken),
    )


def _borne(every: Sequence[Told]) -> list[tuple[int, list[int]]]:
    """Every line that bills freight with the parts that bear it, if any."""
    parts = [at for at, one in enumerate(every) if one.line and one.line.part]
    found = []
    for at, one in enumerate(every):
        if one.line is not None and not one.line.part:
            over = _borne_by(one.label, one.line.freight_for, every, parts) or parts
            if over:
                found.append((at, over))
    return found


def _borne_by(label: str, named: Sequence[str], every: Sequence[Told], parts: Sequence[int]) -> list[int]:
    """As the quote says; else the freight of agreed lines is theirs, that of add-ons is the add-ons'."""
    if named:
        return [at for at in parts if every[at].label in named]
    return [at for at in parts if is_extra(every[at].label) == is_extra(label)]


def is_extra(label: str) -> bool:
    """Add-ons are 'A', 'B', agreed lines '1', '2'."""
    return not label.isdigit()
