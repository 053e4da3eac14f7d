"""Rows that bear a number of the supplier's own: that it is none of ours then says nothing about the part.

A sheet's column of numbers may be the supplier's own altogether, or some rows bear the maker's number and some the
supplier's. The first shows by hardly any number meeting a part's; the second by a scheme of numbers (its letters, and
how many figures stand between them) by which many rows are numbered and parts hardly ever, and of which none meets.
"""

import re
from collections import Counter
from collections.abc import Collection, Sequence

from .said import Said

FEWEST_NUMBERS = 100
"""In a shorter column chance may do it."""

FEWEST_OF_SCHEME = 50
HARDLY_ANY = 0.02
"""Of the numbers, the share that may meet a part's by chance (common practice, no source)."""

_FIGURES = re.compile(r"\d+")


def own_numbers(rows: Sequence[Said], parts: Sequence[Said], met: Collection[int]) -> frozenset[int]:
    """Positions of rows whose number is the supplier's own. `met`: rows whose number a part bears, or one near it."""
    bearing = [at for at, one in enumerate(rows) if one.keys]
    if len(bearing) < FEWEST_NUMBERS:
        return frozenset()
    strange = [at for at in bearing if at not in met]
    if len(bearing) - len(strange) <= HARDLY_ANY * len(bearing):
        return frozenset(strange)
    schemes = _own_schemes(rows, parts, (bearing, met))
    return frozenset(at for at in strange if all(scheme(key) in schemes for key in rows[at].keys))


def without_own(rows: Sequence[Said], own: Collection[int]) -> list[Said]:
    """The rows, those of `own` without their numbers, also where the description repeats them."""
    return [_without(one) if at in own else one for at, one in enumerate(rows)]


def scheme(key: str) -> str:
    """'SG10234' and 'SG99118' are both 'SG#5'."""
    return _FIGURES.sub(lambda found: f"#{len(found[0])}", key)


def _without(one: Said) -> Said:
    return one._replace(keys=frozenset(), codes=one.codes - one.keys, joined=one.joined - one.keys)


def _own_schemes(
    rows: Sequence[Said], parts: Sequence[Said], places: tuple[Sequence[int], Collection[int]]
) -> frozenset[str]:
    bearing, met = places
    of_rows = Counter(scheme(key) for at in bearing for key in rows[at].keys)
    meeting = Counter(scheme(key) for at in bearing if at in met for key in rows[at].keys)
    of_parts = Counter(scheme(key) for one in parts for key in one.keys)
    return frozenset(
        each
        for each, count in of_rows.items()
        if count >= FEWEST_OF_SCHEME and max(meeting[each], of_parts[each]) <= HARDLY_ANY * count
    )
