"""What a job earned: quoted, ordered, received; and where it leaked."""

from decimal import Decimal
from typing import Literal

from .money import Money
from .value import Value

Stage = Literal["quoted", "ordered", "received"]


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
    """A line's margin at each stage it has reached. Parts and freight only; labour stands in the job's figures."""

    label: str
    title: str
    answer: str
    stages: tuple[tuple[Stage, Margin], ...]
    below_floor: bool


class Leak(Value, frozen=True, kw_only=True):
    """Money lost on the way, by name."""

    name: str
    label: str
    amount: Money
    why: str


class JobMargin(Value, frozen=True, kw_only=True):
    """A job's margin: parts at each stage, the whole job with labour, and its leaks. Approved lines only."""

    job: str
    customer: str
    revision: int
    lines: tuple[LineMargin, ...]
    parts: tuple[tuple[Stage, Margin], ...]
    whole: tuple[tuple[Stage, Margin], ...]
    leaks: tuple[Leak, ...]
    floor_percent: Decimal
    notes: tuple[str, ...] = ()
