"""Whole pieces in parcels: no piece is divided, so there may be more parcels than the weight alone calls for."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from typing import NamedTuple


class Load(NamedTuple):
    """So many pieces, or parcels, each of that weight and that volume. Units are the caller's."""

    weight: Decimal
    volume: Decimal
    number: int


class Room(NamedTuple):
    """What a parcel may hold at most, in the units of its loads; `volume` None: any."""

    weight: Decimal
    volume: Decimal | None = None


def packed(pieces: Sequence[Load], room: Room) -> list[Load]:
    """The parcels, packed by first fit: heaviest piece first, each into the first parcel with room for it.

    Never fewer than the sum by weight or by volume calls for; a packing into fewer may exist. A piece too heavy goes
    alone.
    """
    parcels: list[Load] = []
    for kind in sorted(pieces, key=lambda one: _size(one, room), reverse=True):
        parcels = list(_with(parcels, kind, room))
    return parcels


def _size(kind: Load, room: Room) -> Decimal:
    """How much of a parcel a piece takes up: the larger share."""
    return max(kind.weight / room.weight, kind.volume / room.volume if room.volume else Decimal(0))


def _with(parcels: list[Load], kind: Load, room: Room) -> Iterator[Load]:
    """The parcels with these pieces in; parcels alike stay together, in the order in which they were begun."""
    left = kind.number
    for one in parcels:
        each = _fitting(one, kind, room)
        full = min(one.number, left // each) if each else 0
        rest = left - full * each if each and full < one.number else 0
        left -= full * each + rest
        yield from _grown(one, kind, (full, each), rest)
    if left:
        new = Load(Decimal(0), Decimal(0), left)
        each = min(left, max(1, _fitting(new, kind, room)))
        full, rest = divmod(left, each)
        yield from _grown(new._replace(number=full + bool(rest)), kind, (full, each), rest)


def _grown(parcel: Load, kind: Load, full: tuple[int, int], rest: int) -> Iterator[Load]:
    """Of `parcel.number` parcels so many take so many pieces each (`full`), one the rest, the others none."""
    others = parcel.number - full[0] - bool(rest)
    for number, pieces in (full, (int(bool(rest)), rest), (others, 0)):
        if number:
            yield Load(parcel.weight + kind.weight * pieces, parcel.volume + kind.volume * pieces, number)


def _fitting(parcel: Load, kind: Load, room: Room) -> int:
    """How many more pieces one such parcel has room for; all of them where they weigh nothing."""
    fitting = [kind.number]
    if kind.weight:
        fitting.append(int((room.weight - parcel.weight) // kind.weight))
    if kind.volume and room.volume is not None:
        fitting.append(int((room.volume - parcel.volume) // kind.volume))
    return max(0, min(fitting))
