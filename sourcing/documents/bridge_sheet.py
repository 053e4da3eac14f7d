"""A job's bridge as a worksheet with a native chart: bars that stand on what was earned before them."""

from decimal import Decimal

from ..basics.margin import JobMargin
from .bridge import end_word
from .csv_text import Cell
from .workbook import Table
from .workbook_bars import Bars

HEADERS = ("What", "Change", "Earned after it", "Currency", "Lines", "Why")
DRAWN = ("Stands on", "Earned", "Gain", "Gain below nothing", "Loss", "Loss below nothing")
"""A spreadsheet stacks what is above nothing and what is below it apart, so a bar that crosses it is in two parts."""


def bridge_table(job: JobMargin) -> Table:
    """The bridge's rows, what its chart draws beside them. The job must have a bridge: without one it is a bug."""
    bridge = job.bridge
    assert bridge is not None
    currency, at = bridge.start.earned.currency, bridge.start.earned.amount
    rows: list[tuple[Cell, ...]] = [("quoted", None, at, currency, "", "", *_end(at))]
    for step in bridge.steps:
        after = step.after.amount
        why = "; ".join(step.why)
        cells = (step.name, step.amount.amount, after, currency, ", ".join(step.labels), why)
        rows.append((*cells, *_bar(at, after)))
        at = after
    end = bridge.end.earned.amount
    rows.append((end_word(bridge), None, end, currency, "", "", *_end(end)))
    return Table(
        title=f"Bridge {job.job}"[:31],
        headers=(*HEADERS, *DRAWN),
        rows=tuple(rows),
        bars=Bars(
            title=f"Job {job.job}: from the quoted to the {end_word(bridge)} margin on parts and freight",
            names="What",
            series=(
                ("Stands on", "hidden"),
                ("Earned", "full"),
                ("Gain", "open"),
                ("Gain below nothing", "open"),
                ("Loss", "hatched"),
                ("Loss below nothing", "hatched"),
            ),
            up=f"Earned, {currency}",
            is_stacked=True,
        ),
    )


def _end(earned: Decimal) -> tuple[Cell, ...]:
    return (None, earned, None, None, None, None)


def _bar(before: Decimal, after: Decimal) -> tuple[Cell, ...]:
    """What the bar stands on, then its part above nothing and its part below, as a gain or as a loss."""
    low, high = min(before, after), max(before, after)
    base = max(low, min(high, Decimal(0)))
    above, below = max(high, Decimal(0)) - max(low, Decimal(0)), min(low, Decimal(0)) - min(high, Decimal(0))
    parts: tuple[Cell, ...] = (above or None, below or None)
    return (base or None, None, *parts, None, None) if after > before else (base or None, None, None, None, *parts)
