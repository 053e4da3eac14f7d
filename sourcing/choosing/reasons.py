"""Why an offer stands where it stands: what it costs more or less than another, part by part, in words.

The parts named after a colon sum to the difference named before it.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from ..basics.equivalence import STANDINGS
from .figures import Figures, plainly, spoken


@dataclass(frozen=True)
class Reasons:
    """The offers in order; `value_per_day` as the user stated it; `perhaps` the suppliers whose offers are not ranked
    and may yet come before the first."""

    order: Sequence[Figures]
    value_per_day: Decimal | None = None
    perhaps: tuple[str, ...] = ()

    def of(self, at: int) -> str:
        """The reason for the place at that index, as a sentence without a full stop."""
        one = self.order[at]
        if at:
            before = self.order[at - 1]
            words = self._behind(one, self.order[0]) + (_level(one, before, "after") if at > 1 else "")
        else:
            words = self._first(one)
            words += _level(one, self.order[1], "before") if len(self.order) > 1 else ""
            words += f"; {_listed(self.perhaps)}, not ranked, may come before it" if self.perhaps else ""
        return words + _break_words(one)

    def _first(self, one: Figures) -> str:
        if len(self.order) == 1:
            return "the only offer that can be ranked"
        if self.value_per_day is not None:
            cheapest = min(self.order, key=lambda other: (other.total, other.key))
            return _first_with_waiting(one, cheapest, self._of_ranked())
        lowest = min(self.order, key=lambda other: (other.each, other.key))
        if lowest is one or one.each <= lowest.each:
            return f"cheapest at the door and by unit price{self._of_ranked()}"
        each, saved = spoken(one.each - lowest.each, one.currency), spoken(lowest.total - one.total, one.currency)
        if lowest.total == one.total:
            return f"{each} dearer each than {lowest.priced.supplier_name}, the same at the door: {_parts(one, lowest)}"
        return (
            f"{each} dearer each than {lowest.priced.supplier_name}, {saved} cheaper at the door: "
            f"there {_parts(lowest, one)}{_no_freight(one, lowest)}"
        )

    def _of_ranked(self) -> str:
        return " of those that can be ranked" if self.perhaps else ""

    def _behind(self, one: Figures, first: Figures) -> str:
        name = first.priced.supplier_name
        if self.value_per_day is not None:
            return _behind_with_waiting(one, first)
        gap = spoken(one.total - first.total, one.currency)
        if one.total == first.total:
            return f"costs the same at the door as {name}{_when(one, first)}{_level_in_both(one, first)}"
        return f"{gap} dearer at the door than {name}{_when(one, first)}{_though(one, first)}: {_parts(one, first)}" + (
            _no_freight(one, first)
        )


def _first_with_waiting(one: Figures, cheapest: Figures, of: str) -> str:
    words = f"least with waiting counted{of}: {_sum_words(one)}"
    if cheapest.total == one.total:
        return f"{words}; cheapest at the door too"
    more = spoken(one.total - cheapest.total, one.currency)
    saved = _shown((cheapest.waiting or 0) - (one.waiting or 0), one)
    name = cheapest.priced.supplier_name
    return f"{words}; {more} dearer at the door than {name}{_when(one, cheapest)}, which is worth {saved}"


def _behind_with_waiting(one: Figures, first: Figures) -> str:
    gap, name = spoken(one.counted - first.counted, one.currency), first.priced.supplier_name
    more = f"the same as {name}" if one.counted == first.counted else f"{gap} more than {name}"
    same = _level(one, first, "after")
    cost = one.total - first.total
    door = f"{_shown(abs(cost), one)} {'dearer' if cost > 0 else 'cheaper'} at the door" if cost else "as dear there"
    return f"{more} with waiting counted: {_sum_words(one)}; {door}{_when(one, first)}{same}"


def _sum_words(one: Figures) -> str:
    """'131.50 at the door and 10.00 for 2 days'."""
    days = f"{one.days} day{'' if one.days == 1 else 's'}"
    return f"{_shown(one.total, one)} at the door and {_shown(one.waiting or 0, one)} for {days}"


def _parts(one: Figures, other: Figures) -> str:
    """What the first costs more and less than the other, by part, the larger first; the parts sum to the difference."""
    gaps = dict(one.parts)
    for name, cents in other.parts.items():
        gaps[name] = gaps.get(name, 0) - cents
    more = sorted([(-gap, name) for name, gap in gaps.items() if gap > 0])
    less = sorted([(gap, name) for name, gap in gaps.items() if gap < 0])
    words = [f"{_joined(some, one.currency)} {side}" for some, side in ((more, "more"), (less, "less")) if some]
    return ", ".join(words) or "every part costs the same"


def _listed(names: Sequence[str]) -> str:
    return f"{', '.join(names[:-1])} and {names[-1]}" if len(names) > 1 else names[0]


def _joined(some: Sequence[tuple[int, str]], currency: str) -> str:
    return _listed([f"{name} {plainly(-gap, currency)}" for gap, name in some])


def _no_freight(one: Figures, other: Figures) -> str:
    """The rule by which freight is nothing where the other pays some: a threshold passed, a delivered price."""
    if one.priced.landed.freight.amount or not other.priced.landed.freight.amount:
        return ""
    return next((f"; no freight here: {line.rule}" for line in one.priced.landed.lines if line.is_freight), "")


def _break_words(one: Figures) -> str:
    """A price break that the ordered pieces reach."""
    ordered, breaks = one.priced.landed.items[0].item.ordered, one.priced.offer.breaks
    reached = [step.from_quantity for step in breaks[1:] if step.from_quantity <= ordered] if len(breaks) > 1 else []
    return f"; the price from {reached[-1]} pieces on is reached" if reached else ""


def _though(one: Figures, first: Figures) -> str:
    gap = first.each - one.each
    return f", though {spoken(gap, one.currency)} cheaper each" if gap > 0 else ""


def _when(one: Figures, other: Figures) -> str:
    if one.days is None or other.days is None:
        return ", day of arrival not known" if one.days is None else ""
    days = other.days - one.days
    if days == 0:
        return ", here by the same day"
    return f", here {abs(days)} day{'s' if abs(days) > 1 else ''} {'sooner' if days > 0 else 'later'}"


def _level(one: Figures, other: Figures, side: str) -> str:
    """What alone decides between two that count the same; blank where the cost decides."""
    if one.counted != other.counted:
        return ""
    name = other.priced.supplier_name
    if one.latest != other.latest:
        return f"; {'costs' if one.waiting is None else 'counts'} the same as {name}, {side} it for the day"
    mine, theirs = one.key[2], other.key[2]
    if mine != theirs:
        return f"; level with {name} in cost and day, {side} it for the standing ({STANDINGS[min(mine, theirs)]} first)"
    return f"; level with {name} in cost, day and standing, {side} it by name and number only"


def _level_in_both(one: Figures, first: Figures) -> str:
    return _level(one, first, "after") if one.latest == first.latest else ""


def _shown(amount: int | Decimal, one: Figures) -> str:
    return plainly(amount, one.currency)
