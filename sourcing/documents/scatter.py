"""Landed cost against the last day as a drawing (SVG 1.1, W3C): every offer a point, the front of both as steps.

The step line says what the cheapest offer costs that is here by each day. What a mark means is said in words beside
it; its look only helps. One file that needs nothing from outside.
"""

from collections.abc import Sequence
from datetime import date
from itertools import pairwise

from ..basics.choice import Comparison, OpenOffer, RankedOffer
from ..basics.problem import refused
from ..basics.value import Value
from .pages import render
from .plain_text import count
from .scatter_labels import Box, Wanted, placed
from .scatter_scales import Costs, Days, Tick, costs_for, days_for
from .scatter_words import notes, told, with_a_range

WIDTH = 920
LEFT, TOP, BOTTOM, EDGE = 90, 78, 470, 880
BAND = 190
"""How wide the band of unknown days is."""
MOST_POINTS, MOST_LABELS, MOST_RANGES = 60, 20, 10
NOTE_LINE = 17


class Mark(Value, frozen=True, kw_only=True):
    """A point: where, and whether it is on the front."""

    x: int
    y: int
    look: str


class Range(Value, frozen=True, kw_only=True):
    """An offer whose cost is known between two ends only."""

    x: int
    y: int
    to: int


class Plot(Value, frozen=True, kw_only=True):
    """The scales; `days` None: no day is known. `band`: where that of unknown days begins, None where all are known."""

    costs: Costs
    days: Days | None
    band: int | None

    def x(self, day: date | None) -> int:
        """The pixel of a day; the middle of the band where it is not known."""
        if day is None or self.days is None:
            return ((self.band or LEFT) + EDGE) // 2 - (BAND // 4 if self.days else 0)
        return self.days.at(day)


def scatter_svg(comparison: Comparison) -> str:
    """The drawing. Refuses a comparison without any ranked offer: there is nothing to draw."""
    if not comparison.ranked:
        raise refused("nothing-to-draw", found=comparison.our_part)
    drawn, ranges = _drawn(comparison.ranked), with_a_range(comparison)[:MOST_RANGES]
    plot = _plot(comparison, drawn, ranges)
    marks = [*(_mark(one, plot) for one in drawn), *(_alone(one, plot) for one in ranges if one.most == one.least)]
    corners = _corners(comparison.ranked, plot)
    by = plot.x(comparison.need_by) if comparison.need_by and plot.days else None
    labels = placed(
        _wanted(drawn, ranges, plot),
        Box(x=LEFT, y=TOP, width=EDGE - LEFT, height=BOTTOM - TOP),
        [*(Box(x=one.x - 7, y=one.y - 7, width=14, height=14) for one in marks), *_bars(ranges, plot)],
        [_along(corners), [_upright(x) for x in (by, plot.band) if x is not None]],
    )
    lines = notes(comparison, len(drawn), sum(one.text[0] != "?" for one in labels), len(ranges))
    currency = comparison.ranked[0].priced.landed.total.currency
    return render(
        "scatter.svg",
        width=WIDTH,
        height=BOTTOM + 62 + len(lines) * NOTE_LINE,
        title=f"Cost at the door against the last day: {comparison.name}",
        told=told(comparison),
        head=f"{comparison.name}: {count(comparison.quantity, 'piece')} of {comparison.our_part}",
        up=f"at the door, {currency} (the scale need not begin at nothing)",
        across="last day of arrival",
        left=LEFT, top=TOP, bottom=BOTTOM, edge=EDGE, band=plot.band, by=by,
        costs=plot.costs.ticks(),
        days=plot.days.ticks() if plot.days else (),
        line=_line(corners),
        ranges=[_range(one, plot) for one in ranges if one.most != one.least],
        marks=marks,
        labels=labels,
        notes=[Tick(at=BOTTOM + 62 + at * NOTE_LINE, text=line) for at, line in enumerate(lines)],
    )  # fmt: skip


def _drawn(ranked: Sequence[RankedOffer]) -> list[RankedOffer]:
    """The front and the first places, in order; all of them unless they are too many to be told apart."""
    first = sorted(ranked, key=lambda one: (not one.on_front, one.place))[:MOST_POINTS]
    return sorted(first, key=lambda one: one.place)


def _plot(comparison: Comparison, drawn: Sequence[RankedOffer], ranges: Sequence[OpenOffer]) -> Plot:
    offers = [*(one.priced for one in drawn), *(one.priced for one in ranges)]
    days = [one.arrival.latest for one in offers if one.arrival.latest]
    unknown = len(days) < len(offers)
    if days and comparison.need_by:
        days.append(comparison.need_by)
    cents = [one.priced.landed.total.minor() for one in drawn]
    cents += [end.minor() for one in ranges for end in (one.least, one.most) if end]
    band = (EDGE - BAND if days else LEFT) if unknown else None
    return Plot(
        costs=costs_for(min(cents), max(cents), BOTTOM, TOP, drawn[0].priced.landed.total.currency),
        days=days_for(min(days), max(days), LEFT, (EDGE if band is None else band)) if days else None,
        band=band,
    )


def _mark(one: RankedOffer, plot: Plot) -> Mark:
    y = plot.costs.at(one.priced.landed.total.minor())
    return Mark(x=plot.x(one.priced.arrival.latest), y=y, look="front" if one.on_front else "")


def _alone(one: OpenOffer, plot: Plot) -> Mark:
    return Mark(x=plot.x(one.priced.arrival.latest), y=plot.costs.at(one.least.minor()), look="")


def _range(one: OpenOffer, plot: Plot) -> Range:
    most = one.most or one.least
    return Range(
        x=plot.x(one.priced.arrival.latest), y=plot.costs.at(one.least.minor()), to=plot.costs.at(most.minor())
    )


def _bars(ranges: Sequence[OpenOffer], plot: Plot) -> list[Box]:
    drawn = [_range(one, plot) for one in ranges]
    return [Box(x=one.x - 3, y=one.to, width=6, height=one.y - one.to) for one in drawn]


def _upright(x: int) -> Box:
    return Box(x=x - 2, y=TOP, width=4, height=BOTTOM - TOP)


def _wanted(drawn: Sequence[RankedOffer], ranges: Sequence[OpenOffer], plot: Plot) -> list[Wanted]:
    """Words for the points, the front's first, then for the ranges."""
    first = sorted(drawn, key=lambda one: (not one.on_front, one.place))[: MOST_LABELS - len(ranges)]
    points = [
        Wanted(x=mark.x, y=mark.y, text=f"{one.place} {one.priced.supplier_name}", look=mark.look)
        for one in first
        for mark in [_mark(one, plot)]
    ]
    between = [
        Wanted(x=at.x, y=(at.y + at.to) // 2, text=f"? {one.priced.supplier_name}")
        for one in ranges
        for at in [_range(one, plot)]
    ]
    return [*points, *between]


def _corners(ranked: Sequence[RankedOffer], plot: Plot) -> list[tuple[int, int]]:
    """The front from the soonest to the cheapest, as the corners of its steps, on to the right edge."""
    if plot.days is None:
        return []
    front = sorted(
        {
            (one.priced.arrival.latest, one.priced.landed.total.minor())
            for one in ranked
            if one.on_front and one.priced.arrival.latest
        }
    )
    corners: list[tuple[int, int]] = []
    for day, cents in front:
        x, y = plot.x(day), plot.costs.at(cents)
        corners += [(x, corners[-1][1])] if corners else []
        corners.append((x, y))
    return [*corners, (plot.days.right, corners[-1][1])] if corners else []


def _line(corners: Sequence[tuple[int, int]]) -> str:
    return "L".join(f"{x} {y}" for x, y in corners).join(("M", "")) if corners else ""


def _along(corners: Sequence[tuple[int, int]]) -> list[Box]:
    """The step line as thin boxes, which words rather keep clear of."""
    return [
        Box(
            x=min(one[0], after[0]) - 2,
            y=min(one[1], after[1]) - 2,
            width=abs(one[0] - after[0]) + 4,
            height=abs(one[1] - after[1]) + 4,
        )
        for one, after in pairwise(corners)
    ]
