"""From the quoted to the received margin of one job as a drawing (SVG 1.1, W3C): each cause a bar with words.

A loss is hatched, a gain is open, the two ends are filled; the sign and the words say the same, so that nothing hangs
on a look. For the owner: it carries costs. One file that needs nothing from outside.
"""

from collections.abc import Sequence

from ..basics.margin import Bridge, JobMargin, Margin
from ..basics.problem import refused
from ..basics.value import Value
from .amounts import percent_text
from .pages import render
from .plain_text import wrapped

WIDTH, ROW, TOP = 900, 34, 92
BARS_FROM, BARS_TO, EDGE = 290, 770, 880
BAR_HIGH, NOTE_LINE, NOTE_WIDE, MOST_NOTES = 18, 17, 136, 40
MINUS = "\N{MINUS SIGN}"
LEAST = 2
"""A step too small to be seen is drawn this wide."""


class Row(Value, frozen=True, kw_only=True):
    """A bar with its words; `join` is where the line down to the next row stands."""

    y: int
    name: str
    amount: str
    x: int
    width: int
    look: str
    join: int


class Note(Value, frozen=True, kw_only=True):
    """A line of words under the bars."""

    y: int
    text: str


def bridge_svg(job: JobMargin) -> str:
    """The drawing of a job's bridge. Refuses a job of which nothing is approved: there is nothing to draw."""
    bridge = job.bridge
    if bridge is None:
        raise refused("no-margin-to-draw", job=job.job)
    rows = _rows(bridge)
    bottom = TOP + ROW * len(rows)
    notes = [Note(y=bottom + 34 + at * NOTE_LINE, text=text) for at, text in enumerate(_notes(bridge))]
    return render(
        "bridge.svg",
        width=WIDTH,
        height=bottom + 40 + NOTE_LINE * len(notes),
        title=f"From the quoted to the {end_word(bridge)} margin, job {job.job}",
        told=told(bridge),
        head=f"Job {job.job}, {job.customer}: parts and freight before tax, {bridge.start.price.currency}",
        sub="what moved the earnings after the quote; margin is on price, markup on cost; cores and deposits left out",
        edge=EDGE,
        naught=_scale(bridge)(0),
        top=TOP - 12,
        bottom=bottom - 4,
        rows=rows,
        bar=BAR_HIGH,
        row=ROW,
        notes=notes,
    )  # fmt: skip


def end_word(bridge: Bridge) -> str:
    """'received', or what the end is while not everything has come."""
    return "received" if bridge.is_complete else "present"


def told(bridge: Bridge) -> str:
    """The drawing in one text, for who does not see it."""
    steps = "; ".join(f"{step.name} {signed(step.amount.amount)}" for step in bridge.steps) or "Nothing moved it"
    return f"Quoted: {_both(bridge.start)}. {steps}. {end_word(bridge).capitalize()}: {_both(bridge.end)}."


def signed(amount: object) -> str:
    """The amount with its sign."""
    text = str(amount)
    return text if text.startswith("-") else f"+{text}"


def _both(margin: Margin) -> str:
    on_price, on_cost = percent_text(margin.margin_percent), percent_text(margin.markup_percent)
    return f"earned {margin.earned.rounded().amount}, margin {on_price} on price, markup {on_cost} on cost"


class _Scale:
    """Minor units to pixels, naught always among them."""

    def __init__(self, levels: Sequence[int]) -> None:
        self._least, most = min(0, *levels), max(0, *levels)
        self._span = max(most - self._least, 1)

    def __call__(self, level: int) -> int:
        return BARS_FROM + (level - self._least) * (BARS_TO - BARS_FROM) // self._span


def _scale(bridge: Bridge) -> _Scale:
    return _Scale(
        [bridge.start.earned.minor(), bridge.end.earned.minor(), *(one.after.minor() for one in bridge.steps)]
    )


def _rows(bridge: Bridge) -> list[Row]:
    scale = _scale(bridge)
    rows = [_end("quoted", bridge.start, scale, 0)]
    at = bridge.start.earned.minor()
    for number, step in enumerate(bridge.steps, 1):
        after = step.after.minor()
        rows.append(_row(number, step.name, signed(step.amount.amount), (scale(at), scale(after))))
        at = after
    return [*rows, _end(end_word(bridge), bridge.end, scale, len(rows))]


def _row(number: int, name: str, amount: str, ends: tuple[int, int]) -> Row:
    left, right = min(ends), max(ends)
    look = "gain" if amount.startswith("+") else "loss"
    width = max(right - left, LEAST)
    return Row(
        y=TOP + ROW * number, name=name, amount=amount.replace("-", MINUS), x=left, width=width, look=look, join=ends[1]
    )


def _end(word: str, margin: Margin, scale: _Scale, number: int) -> Row:
    ends = scale(0), scale(margin.earned.minor())
    return Row(
        y=TOP + ROW * number,
        name=f"earned, {word}",
        amount=str(margin.earned.rounded().amount).replace("-", MINUS),
        x=min(ends),
        width=max(abs(ends[1] - ends[0]), LEAST),
        look="end",
        join=ends[1],
    )


def _notes(bridge: Bridge) -> list[str]:
    """Both ends with both words, then why, line by line; a long list says how much of it is left out."""
    lines = [f"Quoted: {_both(bridge.start)}.", f"{end_word(bridge).capitalize()}: {_both(bridge.end)}."]
    if not bridge.is_complete:
        lines.append("Not everything has come: each line is taken as far as it is known.")
    why = [part for step in bridge.steps for text in step.why for part in wrapped(f"{step.name}, {text}", 0, NOTE_WIDE)]
    left = len(why) - MOST_NOTES
    return [*lines, *(why if left <= 0 else [*why[:MOST_NOTES], f"and {left} more; `sourcing margins` has them all"])]
