"""What a job earned: quoted, ordered, received; where it leaked; and the same added up over many jobs."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .money import Money
from .value import Value

Stage = Literal["quoted", "ordered", "received"]

When = Literal["after the quote", "within the quote", "beside the margin"]
"""Where a leak stands: it is a step from the quoted to the received margin; or the quoted margin is lower for it
already; or it is in no margin at all (on the shelf, in a deposit, still with the supplier)."""

By = Literal["job", "supplier", "category", "month", "line"]


class Margin(Value, frozen=True, kw_only=True):
    """Price before tax against cost. Margin is on price, markup is on cost, both in per cent, two decimals, half up.

    None where the base is zero.
    """

    price: Money
    cost: Money
    earned: Money
    margin_percent: Decimal | None
    markup_percent: Decimal | None


class LineMargin(Value, frozen=True, kw_only=True):
    """A line's margin at each stage it has reached. Parts and freight only; labour stands in the job's figures.

    The last stage is at the price billed where the job is billed. `supplier` is the one bought from, or quoted from.
    `month` is that of the customer's yes ('2026-03'), blank where there is none any more.
    """

    label: str
    title: str
    answer: str
    stages: tuple[tuple[Stage, Margin], ...]
    below_floor: bool
    supplier: str = ""
    category: str = ""
    month: str = ""


class Leak(Value, frozen=True, kw_only=True):
    """Money lost on the way, by name; the amount is above zero. `why` has the figures."""

    name: str
    label: str
    amount: Money
    why: str
    when: When = "after the quote"


class Step(Value, frozen=True, kw_only=True):
    """One cause between two margins: what it did to the earnings (below zero: a loss), what they are after it, and on
    which lines, with the figures in `why`."""

    name: str
    amount: Money
    after: Money
    labels: tuple[str, ...]
    why: tuple[str, ...]


class Bridge(Value, frozen=True, kw_only=True):
    """From the quoted to the received margin of a job's parts and freight. The steps sum to the difference to the cent.

    `is_complete` False: not everything has come, and `end` takes each line as far as it is known.
    """

    start: Margin
    steps: tuple[Step, ...]
    end: Margin
    is_complete: bool


class JobMargin(Value, frozen=True, kw_only=True):
    """A job's margin: parts at each stage, the whole job with labour, and its leaks. Approved lines only, and what was
    bought without a yes that still holds. `left` is what is earned on parts less the leaks beside the margin that are
    lost (goods on the shelf are not); None while nothing is approved."""

    job: str
    customer: str
    revision: int
    lines: tuple[LineMargin, ...]
    parts: tuple[tuple[Stage, Margin], ...]
    whole: tuple[tuple[Stage, Margin], ...]
    leaks: tuple[Leak, ...]
    floor_percent: Decimal
    notes: tuple[str, ...] = ()
    bridge: Bridge | None = None
    left: Money | None = None


class LowLine(Value, frozen=True, kw_only=True):
    """A line whose last margin lies under the floor that held on the day of its quote."""

    job: str
    label: str
    title: str
    supplier: str
    stage: Stage
    margin: Margin
    floor_percent: Decimal


class Group(Value, frozen=True, kw_only=True):
    """Lines added up. `quoted` is all of them; `known` takes each as far as it is known, at the price billed where
    it is billed. `ordered` and `received` are sums of the lines that have come so far, with how many they are."""

    name: str
    title: str
    lines: int
    under_floor: int
    quoted: Margin
    ordered: Margin
    ordered_lines: int
    received: Margin
    received_lines: int
    known: Margin
    leaked: Money


class NamedLeak(Value, frozen=True, kw_only=True):
    """All leaks of one name: how many, what they come to, and the job it cost most."""

    name: str
    when: When
    count: int
    amount: Money
    worst_job: str


class WaitingBack(Value, frozen=True, kw_only=True):
    """An old part, or goods, that should go back or be credited: what, by when (None: no deadline is known)."""

    order: str
    job: str
    what: str
    by: date | None
    is_late: bool


class Margins(Value, frozen=True, kw_only=True):
    """Every job's margins added up by job, supplier, category, month or line. Lines under the floor first.

    Parts and freight, before tax, approved lines; cores and deposits are in none of it. `groups` are lowest margin
    first, months in order. Freight billed on a line of its own is shared over the parts it was billed for.
    """

    by: By
    currency: str
    jobs: int
    low: tuple[LowLine, ...]
    groups: tuple[Group, ...]
    whole: Group
    leaks: tuple[NamedLeak, ...]
    months: tuple[Group, ...] = ()
    back: tuple[WaitingBack, ...] = ()
    notes: tuple[str, ...] = ()


class BandChange(Value, frozen=True, kw_only=True):
    """The lines of one of the other bands, as they were priced and as they would have been."""

    band: str
    lines: int
    changed: int
    before: Margin
    after: Margin


class WhatIf(Value, frozen=True, kw_only=True):
    """Approved lines of past jobs priced by other markup bands: by band of cost, in all, and what the floor would say.

    `not_repriced` lines keep their price (no cost is known, or it was held). Customers might have answered otherwise.
    """

    currency: str
    bands: str
    jobs: int
    jobs_changed: int
    lines: int
    lines_changed: int
    not_repriced: int
    capped: int
    by_band: tuple[BandChange, ...]
    before: Margin
    after: Margin
    under_floor_before: int
    under_floor_after: int
    notes: tuple[str, ...] = ()
