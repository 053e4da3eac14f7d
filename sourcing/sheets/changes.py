"""Compare two sheets of one supplier: what rose, fell, vanished, appeared, was superseded.

Numbers are compared by key, prices exactly and per piece: a price per 100 is held against one per 3 as fractions, so
that nothing is rounded before it is compared. Prices in two currencies are never compared as numbers.
"""

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from fractions import Fraction
from typing import get_args

from ..basics.change import Changed, ChangeKind, KindCount, PriceChange, Several, SheetChanges
from ..basics.offer import Offer
from ..basics.part_number import maker_key, number_key
from ..basics.value import changed
from .change_of_offer import difference, move, part_of, per_piece, tenths

Listed = dict[str, list[Offer]]

FINE = 10**15
"""Rises are put in order by whole numbers of this part of themselves: to sort fractions takes ten times as long."""


@dataclass
class _Found:
    """Where the offers of both sheets go."""

    pairs: list[tuple[Offer, Offer]] = field(default_factory=list)
    vanished: list[Offer] = field(default_factory=list)
    appeared: list[Offer] = field(default_factory=list)
    several: list[Several] = field(default_factory=list)


def compare_sheets(before: Sequence[Offer], now: Sequence[Offer]) -> SheetChanges:
    """Every offer of both sheets in exactly one place: unchanged, changed, vanished, appeared, or several of a number.

    A number with one offer on either sheet is compared whatever maker stands beside it. A number with more is compared
    maker by maker; what then still can't be told apart is listed as several and not compared.
    """
    found = _Found()
    listed, listed_now = _by_number(before), _by_number(now)
    for key in dict.fromkeys((*listed, *listed_now)):
        _put(listed.get(key, []), listed_now.get(key, []), found)
    differ = _with_instead([one for pair in found.pairs if (one := difference(*pair))], listed_now, now)
    differ.sort(key=_order)
    rises = [one.headline for one in differ if "rose" in one.kinds and one.headline and one.headline.before]
    return SheetChanges(
        supplier=next((one.supplier for one in (*now[:1], *before[:1])), ""),
        before_offers=len(before),
        now_offers=len(now),
        unchanged=len(found.pairs) - len(differ),
        changed=tuple(differ),
        vanished=tuple(part_of(one) for one in _as_on(before, found.vanished)),
        appeared=tuple(part_of(one) for one in _as_on(now, found.appeared)),
        several=tuple(found.several),
        counts=_counts(differ),
        median_rise=_median(rises),
    )


def _as_on(sheet: Sequence[Offer], some: Sequence[Offer]) -> list[Offer]:
    """Some offers of the sheet in the order of the sheet."""
    places = {id(one): at for at, one in enumerate(sheet)} if some else {}
    return sorted(some, key=lambda one: places[id(one)])


def _by_number(offers: Iterable[Offer]) -> Listed:
    """By the key of the supplier's number; a number without a letter or digit counts as it is printed."""
    found: defaultdict[str, list[Offer]] = defaultdict(list)
    for one in offers:
        found[number_key(one.supplier_number) or one.supplier_number].append(one)
    return found


def _put(before: list[Offer], now: list[Offer], found: _Found) -> None:
    """The offers of one number."""
    if len(before) <= 1 and len(now) <= 1:
        _put_one(before, now, found)
        return
    groups: defaultdict[str, tuple[list[Offer], list[Offer]]] = defaultdict(lambda: ([], []))
    for at, offers in enumerate((before, now)):
        for one in offers:
            groups[maker_key(one.maker)][at].append(one)
    clear = [maker for maker, (old, new) in groups.items() if len(old) == len(new) == 1]
    left = {maker: group for maker, group in groups.items() if maker not in clear}
    for maker in clear:
        _put_one(*groups[maker], found)
    if "" in left and len(left) > 1:
        # The row without a maker may be any of the others: none of them is said to have vanished or appeared.
        sides = [[one for group in left.values() for one in group[at]] for at in (0, 1)]
        found.several.append(_several(*sides))
        return
    for old, new in left.values():
        if len(old) <= 1 and len(new) <= 1:
            _put_one(old, new, found)
        else:
            found.several.append(_several(old, new))


def _put_one(before: list[Offer], now: list[Offer], found: _Found) -> None:
    """At most one offer on either side."""
    if before and now:
        found.pairs.append((before[0], now[0]))
    found.vanished += before if not now else []
    found.appeared += now if not before else []


def _several(before: Iterable[Offer], now: Iterable[Offer]) -> Several:
    return Several(before=tuple(part_of(one) for one in before), now=tuple(part_of(one) for one in now))


def _with_instead(differ: list[Changed], listed_now: Listed, now: Sequence[Offer]) -> list[Changed]:
    """Beside each superseded number what the new sheet asks for the one named instead, where that is one offer."""
    named = {number_key(one.now.superseded_by) for one in differ} - {""}
    by_maker_number: defaultdict[str, list[Offer]] = defaultdict(list)
    for offer in now if named else ():
        if offer.maker_number and number_key(offer.maker_number) in named:
            by_maker_number[number_key(offer.maker_number)].append(offer)
    instead = {key: listed_now.get(key) or by_maker_number.get(key, []) for key in named}
    single = {key: part_of(offers[0]) for key, offers in instead.items() if len(offers) == 1}
    return [
        changed(one, instead=single.get(number_key(one.now.superseded_by))) if one.now.superseded_by else one
        for one in differ
    ]


def _order(one: Changed) -> tuple[int, int, int, str, int]:
    """What rose first, the most per cent before all and of one per cent the dearest; then what fell; then the rest."""
    if one.headline is None:
        return 2, 0, 0, one.now.supplier_number, one.now.row
    was, is_now, unit = per_piece(one.headline)
    size = abs(is_now - was)
    percent = size * FINE // was if was else 0
    return int(is_now < was), -percent, -(size * FINE // unit), one.now.supplier_number, one.now.row


def _median(rises: Sequence[PriceChange]) -> Decimal | None:
    """Of rises that stand in order: the one in the middle, or half way between the two there."""
    if not rises:
        return None
    middle = rises[(len(rises) - 1) // 2 : len(rises) // 2 + 1]
    return tenths(sum((move(one) for one in middle), Fraction(0)) / len(middle))


def _counts(differ: Sequence[Changed]) -> tuple[KindCount, ...]:
    """How many of each kind there are, kinds that did not happen left out."""
    first, every = Counter(one.kind for one in differ), Counter(kind for one in differ for kind in one.kinds)
    kinds: tuple[ChangeKind, ...] = get_args(ChangeKind)
    return tuple(KindCount(kind=kind, numbers=first[kind], in_all=every[kind]) for kind in kinds if every[kind])
