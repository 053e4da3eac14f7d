"""The ways to fill a need: an offer in a quantity, and in further steps of it at the same price and day.

What further steps add is held between exact ends, for a line is rounded as a whole; where the ends differ, the plan
looks again at the quantity it chose.
"""

from collections.abc import Callable, Iterator, Sequence
from datetime import date
from fractions import Fraction

from ..basics.landed_cost import Arrival, OrderItem
from ..basics.schedule import ItemSums
from ..basics.value import Value, changed

FIELDS = ("value", "counted", "goods", "duty", "freight", "fees", "core", "surplus", "grams", "volume_grams")
LOOKED_AT = 60
"""So many further steps are looked at one by one; what lies beyond is bounded."""
ROUNDED = 3
"""A line's sums are rounded so often at most, half a unit each time, so two of them differ by at most this."""


class Ends(Value, frozen=True, kw_only=True):
    """What each further step adds, at least and at most, in the order of `FIELDS`."""

    low: tuple[Fraction, ...]
    high: tuple[Fraction, ...]

    def of(self, field: str, high: bool = False) -> Fraction:
        """The end of one field."""
        return (self.high if high else self.low)[FIELDS.index(field)]


class Choice(Value, frozen=True, kw_only=True):
    """One offer for a need (by its place among the needs) in `item.ordered` pieces, or in up to `more` further steps.

    `full` is how many pieces of the offer fill the need alone. `sums` and `arrival` are those of the first quantity;
    the arrival holds for all of them. `least`: of a divided need, the fewest pieces for which the first quantity may be
    bought (each step is for as many more); None: it may be more than needed.
    """

    need: int
    item: OrderItem
    full: int
    sums: ItemSums
    arrival: Arrival
    step: int = 0
    more: int = 0
    ends: Ends | None = None
    least: int | None = None

    @property
    def supplier(self) -> str:
        """Whose offer it is."""
        return self.item.offer.supplier

    @property
    def name(self) -> tuple[object, ...]:
        """Puts choices in an order that the input does not decide."""
        return (self.need, *self.item.offer.identity, self.item.ordered)

    @property
    def latest(self) -> date:
        """The last day it may be here; a day not known counts as later than all."""
        return self.arrival.latest or date.max

    @property
    def exact(self) -> bool:
        """Whether each quantity's sums are known to the unit."""
        return self.ends is None or self.ends.low == self.ends.high

    def own_cost(self) -> int:
        """What the first quantity costs before the order's charges, in minor units."""
        return self.sums.goods + self.sums.duty + self.sums.freight + self.sums.fees

    def placed(self, need: int) -> "Choice":
        """The same choice for the need at another place."""
        return self if need == self.need else changed(self, need=need)

    def alone(self) -> "Choice":
        """Its first quantity without further steps."""
        return changed(self, more=0, ends=None)

    def alone_at(self, further: int, see: Callable[[OrderItem], tuple[ItemSums, Arrival]]) -> "Choice":
        """The quantity so many further steps up without any more of them."""
        if not further:
            return self.alone()
        sums, arrival = see(self.at(further))
        least = None if self.least is None else self.least + further * self.step
        return changed(self.alone(), item=self.at(further), sums=sums, arrival=arrival, least=least)

    def to_fill(self) -> int | None:
        """How many further steps fill the need alone; None where it has not so many."""
        further = -(-max(0, self.full - self.item.ordered) // max(1, self.step))
        return further if further <= self.more else None

    def at(self, further: int) -> OrderItem:
        """The item of the first quantity and so many further steps."""
        return sized(self.item, self.full, self.item.ordered + further * self.step)


def sized(item: OrderItem, full: int, pieces: int) -> OrderItem:
    """The item in another quantity; a part of a divided need needs no more than its own pieces."""
    return changed(item, ordered=pieces, needed=min(full, pieces))


def choice(
    need: int, item: OrderItem, full: int, ladder: tuple[int, int], see: Callable[[OrderItem], tuple[ItemSums, Arrival]]
) -> Choice:
    """The choice of an item and its `ladder` (pieces of a step, most further steps), with what each step adds."""
    step, more = ladder
    sums, arrival = see(item)
    bare = Choice(need=need, item=item, full=full, sums=sums, arrival=arrival, step=step, more=more)
    if not more:
        return bare
    at = [*range(1, min(more, LOOKED_AT) + 1), *([more] if more > LOOKED_AT else [])]
    seen = [(further, see(bare.at(further))[0]) for further in at]
    ends = [_ends(field, sums, seen, more) for field in FIELDS]
    return changed(bare, ends=Ends(low=tuple(low for low, _ in ends), high=tuple(high for _, high in ends)))


def _ends(field: str, first: ItemSums, seen: Sequence[tuple[int, ItemSums]], more: int) -> tuple[Fraction, Fraction]:
    start = getattr(first, field)
    rises = [Fraction(getattr(sums, field) - start, further) for further, sums in seen]
    low, high = min(rises), max(rises)
    if more > LOOKED_AT and low != high:
        middle = rises[-1]
        room = Fraction(2 * ROUNDED, LOOKED_AT)
        low, high = min(low, middle - room), max(high, middle + room)
    return low, high


def divided(one: Choice, further: int, see: Callable[[OrderItem], tuple[ItemSums, Arrival]]) -> Iterator[Choice]:
    """The same choices with that quantity on its own, so that its sums are exact."""
    for first, last in ((0, further - 1), (further, further), (further + 1, one.more)):
        if first <= last:
            part = choice(one.need, one.at(first), one.full, (one.step, last - first), see)
            yield part if one.least is None else changed(part, least=one.least + first * one.step)
