"""Leaks by name and earnings by month as a drawing (SVG 1.1, W3C): bars with their words and figures beside them.

For the owner. What a bar means is said in words at its side; its look only helps. One file that needs nothing from
outside.
"""

from collections.abc import Sequence

from ..basics.margin import Group, Margins
from ..basics.problem import refused
from ..basics.value import Value
from .amounts import percent_text
from .bridge import LEAST
from .pages import render

WIDTH, ROW = 900, 30
EDGE = 880
MONTH_BARS, LEAK_BARS = (100, 440), (300, 650)
"""From where to where bars go: a month's name is short and its figures are long."""
MOST_MONTHS, MOST_LEAKS = 24, 16


class Bar(Value, frozen=True, kw_only=True):
    """A bar; `look` 'full', 'open' or 'hatched'."""

    x: int
    y: int
    width: int
    high: int
    look: str


class Words(Value, frozen=True, kw_only=True):
    """A row's words: its name at the left, its figures at the right."""

    y: int
    name: str
    figures: str


class Part(Value, frozen=True, kw_only=True):
    """One of the two drawings: its heading, rows, bars, and where nothing is."""

    y: int
    head: str
    note: str
    naught: int
    top: int
    bottom: int
    words: tuple[Words, ...]
    bars: tuple[Bar, ...]


def charts_svg(found: Margins) -> str:
    """The drawing. Refuses where nothing is approved yet: there is nothing to draw."""
    if not found.months:
        raise refused("nothing-earned-yet")
    months = _months(found.months[-MOST_MONTHS:], found.currency, 40)
    leaks = _leaks(found, months.bottom + 56)
    return render(
        "margin_charts.svg",
        width=WIDTH,
        height=leaks.bottom + 24,
        title="Earnings by month and leaks by name",
        told=_told(found),
        edge=EDGE,
        parts=(months, leaks),
    )


def _told(found: Margins) -> str:
    months = "; ".join(f"{one.name} {_month_figures(one)}" for one in found.months[-MOST_MONTHS:])
    leaks = "; ".join(f"{one.name} {one.amount}" for one in found.leaks[:MOST_LEAKS]) or "none found"
    return f"Earned by month: {months}. Leaks: {leaks}."


def _month_figures(one: Group) -> str:
    on_price, on_cost = percent_text(one.known.margin_percent), percent_text(one.known.markup_percent)
    earned = f"{one.known.earned.rounded().amount}, quoted {one.quoted.earned.rounded().amount}"
    return f"{earned}; margin {on_price}, markup {on_cost}"


def _months(months: Sequence[Group], currency: str, y: int) -> Part:
    levels = [figure.earned.minor() for one in months for figure in (one.quoted, one.known)]
    at = _scale(levels, MONTH_BARS)
    words, bars = [], []
    for number, one in enumerate(months):
        row = y + 44 + number * ROW
        words.append(Words(y=row + 14, name=one.name, figures=_month_figures(one)))
        bars += [_bar(at, one.quoted.earned.minor(), (row, 9), "open")]
        bars += [_bar(at, one.known.earned.minor(), (row + 10, 9), "full")]
    return Part(
        y=y,
        head=f"Earned on parts and freight by month of the customer's yes, {currency}",
        note="open: as quoted; full: as far as it is known by now",
        naught=at(0),
        top=y + 38,
        bottom=y + 44 + len(months) * ROW,
        words=tuple(words),
        bars=tuple(bars),
    )


def _leaks(found: Margins, y: int) -> Part:
    leaks = found.leaks[:MOST_LEAKS]
    at = _scale([one.amount.minor() for one in leaks], LEAK_BARS)
    rows = [(one, y + 44 + number * ROW) for number, one in enumerate(leaks)]
    note = "hatched: what leaked; where it stands is said at the right" if leaks else "none found"
    return Part(
        y=y,
        head=f"Leaks by name, {found.currency}",
        note=note,
        naught=at(0),
        top=y + 38,
        bottom=y + 44 + len(leaks) * ROW,
        words=tuple(
            Words(y=row + 14, name=one.name, figures=f"{one.amount.rounded().amount}, {one.when}") for one, row in rows
        ),
        bars=tuple(_bar(at, one.amount.minor(), (row, 18), "hatched") for one, row in rows),
    )


class _Scale(Value, frozen=True, kw_only=True):
    """Minor units to pixels between two ends, nothing always among the levels."""

    ends: tuple[int, int]
    least: int
    span: int

    def __call__(self, level: int) -> int:
        left, right = self.ends
        return left + (level - self.least) * (right - left) // self.span


def _scale(levels: Sequence[int], ends: tuple[int, int]) -> _Scale:
    least, most = min([0, *levels]), max([0, *levels])
    return _Scale(ends=ends, least=least, span=max(most - least, 1))


def _bar(scale: _Scale, level: int, of: tuple[int, int], look: str) -> Bar:
    naught, to = scale(0), scale(level)
    return Bar(x=min(naught, to), y=of[0], width=max(abs(to - naught), LEAST), high=of[1], look=look)
