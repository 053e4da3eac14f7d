"""The scales of a drawing: days and money to whole pixels, and the marks along the axes. No binary fractions."""

from datetime import date, timedelta

from ..basics.money import from_minor
from ..basics.value import Value

DAY_STEPS = (1, 2, 3, 4, 7, 14, 28, 56, 91, 182, 364)
MOST_DAYS, MOST_COSTS = 8, 8


class Tick(Value, frozen=True, kw_only=True):
    """A mark on an axis: where, and its words."""

    at: int
    text: str


class Days(Value, frozen=True, kw_only=True):
    """From this day at the left pixel to that one at the right."""

    first: date
    last: date
    left: int
    right: int

    def at(self, day: date) -> int:
        """The day's pixel."""
        return self.left + (day - self.first).days * (self.right - self.left) // max((self.last - self.first).days, 1)

    def ticks(self) -> tuple[Tick, ...]:
        """At most eight days, evenly apart."""
        span = (self.last - self.first).days
        step = next((one for one in DAY_STEPS if span // one < MOST_DAYS), max(DAY_STEPS[-1], span // MOST_DAYS + 1))
        days = [self.first + timedelta(days=at) for at in range(0, span + 1, step)]
        return tuple(Tick(at=self.at(day), text=str(day)) for day in days)


class Costs(Value, frozen=True, kw_only=True):
    """From this cost (minor units) at the bottom pixel to that one at the top."""

    least: int
    most: int
    bottom: int
    top: int
    currency: str
    step: int

    def at(self, cents: int) -> int:
        """The cost's pixel."""
        return self.bottom - (cents - self.least) * (self.bottom - self.top) // (self.most - self.least)

    def ticks(self) -> tuple[Tick, ...]:
        """Round amounts, evenly apart."""
        amounts = range(self.least, self.most + 1, self.step)
        return tuple(Tick(at=self.at(one), text=str(from_minor(one, self.currency).amount)) for one in amounts)


def days_for(first: date, last: date, left: int, right: int) -> Days:
    """A scale with a little room on both sides."""
    room = max(1, (last - first).days // 20)
    return Days(first=first - timedelta(days=room), last=last + timedelta(days=room), left=left, right=right)


def costs_for(least: int, most: int, bottom: int, top: int, currency: str) -> Costs:
    """A scale from a round amount below to one above."""
    step = _round_step(max(most - least, 4))
    low, high = least // step * step, -(-most // step) * step
    low, high = (low - step if low == least and low >= step else low), (high + step if high == most else high)
    return Costs(least=low, most=high, bottom=bottom, top=top, currency=currency, step=step)


def _round_step(span: int) -> int:
    """1, 2 or 5 of a power of ten, so that it fits in at most eight times."""
    size = 1
    while True:
        for one in (1, 2, 5):
            if span // (one * size) + 2 <= MOST_COSTS:
                return one * size
        size *= 10
