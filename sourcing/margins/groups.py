"""Margins over many jobs: the same lines added up by job, supplier, category, month, or each for itself.

Every group is a sum of lines in whole minor units, so groups of whatever kind come to the same in all. A month is that
of the customer's yes: it never moves afterwards, whatever comes in later.
"""

from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping, Sequence
from decimal import Decimal
from operator import attrgetter
from typing import Any

from ..basics.margin import By, Group, LowLine, NamedLeak, When
from ..basics.value import Value
from .figures import margin
from .freight_billed import by_itself
from .job_margin import IN_TURN, below_floor, floor_part, leaks_on
from .line import Change, LineFigures
from .minor import money

NO_SUPPLIER, NO_CATEGORY, NO_MONTH = "no supplier", "no category", "no yes that holds"

Key = tuple[str, ...]
"""A line's month, and what names its group; blank where it has none."""

KEYS: dict[By, Callable[[LineFigures], Key]] = {
    "job": attrgetter("month", "job"),
    "supplier": attrgetter("month", "supplier"),
    "category": attrgetter("month", "category"),
    "month": attrgetter("month", "month"),
    "line": attrgetter("month", "job", "label"),
}
BLANK: dict[By, str] = {"supplier": NO_SUPPLIER, "category": NO_CATEGORY, "month": NO_MONTH}


def _name(key: Key, by: By) -> str:
    return f"{key[1]} line {key[2]}" if by == "line" else key[1] or BLANK.get(by, "")


class Counted(Value, frozen=True, kw_only=True, gc=False):
    """A line, whether its last margin is under the floor that holds for its job, and what it lost."""

    line: LineFigures
    under: bool
    leaks: Sequence[Change]


def counted(lines: Iterable[LineFigures], floors: Mapping[str, Decimal]) -> list[Counted]:
    """The lines ready to be added up. `floors`: the floor in per cent by job."""
    parts = {job: floor_part(percent) for job, percent in floors.items()}
    return [Counted(line=one, under=below_floor(one, parts[one.job]), leaks=leaks_on(one)) for one in lines]


QUOTED, ORDERED, RECEIVED, KNOWN = (1, 2), (4, 5), (7, 8), (9, 10)
LINES, ORDERED_LINES, RECEIVED_LINES, UNDER, LEAKED = 0, 3, 6, 11, 12
SUMS = 13
"""Where price and cost of each stage stand in a row of sums, and the counts."""

Row = Sequence[int]
NOT_YET = (0, 0, 0)
"""A stage the line has not reached: no line, no price, no cost."""


def _row(one: Counted, alone: bool) -> Row:
    """A line's figures as a row to be added up. Its price has its share of freight billed on a line of its own.

    `alone`: that freight stands on its own line, price and cost, as where the line is looked at by itself."""
    line, leaked = by_itself(one.line) if alone else one.line, 0
    share, ordered, received = 0 if alone else line.freight_share, line.ordered, line.received
    for leak in one.leaks:
        leaked -= leak.amount
    billed, apart = line.billed + share, line.freight_apart.known if alone else 0
    quoted, known = (1, line.price + share, line.cost), (billed, one.line.last_cost + apart, int(one.under), leaked)
    at_order = NOT_YET if ordered is None else (1, line.order_price + share, ordered)
    at_receipt = NOT_YET if received is None else (1, billed, received)
    return quoted + at_order + at_receipt + known


class Summed(Value, frozen=True, kw_only=True, gc=False):
    """Groups by what was asked, the same by month, and all in one."""

    groups: tuple[Group, ...]
    months: tuple[Group, ...]
    whole: Group


def grouped(lines: Sequence[Counted], by: By, titles: Mapping[str, str], currency: str) -> Summed:
    """The lines added up. `titles`: words beside a group's name, if any."""
    finest, key = defaultdict[Key, list[Row]](list), KEYS[by]
    for one in lines:
        finest[key(one.line)].append(_row(one, by == "line"))
    every = [(key, _all(rows)) for key, rows in finest.items()]
    asked = _added((_name(key, by), sums) for key, sums in every)
    months = _added((key[0] or NO_MONTH, sums) for key, sums in every)
    made = [_group(name, titles.get(name, ""), sums, currency) for name, sums in asked.items()]
    made.sort(key=(lambda group: group.name) if by == "month" else _lowest_first)
    return Summed(
        groups=tuple(made),
        months=tuple(_group(name, "", sums, currency) for name, sums in sorted(months.items())),
        whole=_group("all", "", _all(list(months.values())), currency),
    )


def _added(named: Iterable[tuple[str, Row]]) -> dict[str, Row]:
    found: dict[str, list[Row]] = {}
    for name, sums in named:
        found.setdefault(name, []).append(sums)
    return {name: _all(rows) for name, rows in found.items()}


def _all(rows: Sequence[Row]) -> Row:
    if len(rows) == 1:
        return rows[0]
    return list(map(sum, zip(*rows, strict=True))) or [0] * SUMS


def _group(name: str, title: str, sums: Sequence[int], currency: str) -> Group:
    pairs = [(sums[price], sums[cost]) for price, cost in (QUOTED, ORDERED, RECEIVED, KNOWN)]
    made = {pair: margin(money(pair[0], currency), money(pair[1], currency)) for pair in set(pairs)}
    quoted, ordered, received, known = (made[pair] for pair in pairs)
    return Group(
        name=name,
        title=title,
        lines=sums[LINES],
        under_floor=sums[UNDER],
        quoted=quoted,
        ordered=ordered,
        ordered_lines=sums[ORDERED_LINES],
        received=received,
        received_lines=sums[RECEIVED_LINES],
        known=known,
        leaked=money(sums[LEAKED], currency),
    )


def low_lines(lines: Sequence[Counted], floors: Mapping[str, Decimal], currency: str) -> tuple[LowLine, ...]:
    """Lines under their floor, lowest margin first."""
    low = []
    for line in (one.line for one in lines if one.under):
        stage, price, cost = by_itself(line).last_stage
        low.append(
            LowLine(
                job=line.job,
                label=line.label,
                title=line.title,
                supplier=line.supplier,
                stage=stage,
                margin=margin(money(price, currency), money(cost, currency)),
                floor_percent=floors[line.job],
            )
        )
    return tuple(sorted(low, key=_lowest_line_first))


def named_leaks(lines: Sequence[Counted], currency: str) -> tuple[NamedLeak, ...]:
    """All leaks by name: those after the quote first, then by amount."""
    found: dict[tuple[str, When], dict[str, int]] = defaultdict(lambda: defaultdict(int))
    counts: dict[tuple[str, When], int] = defaultdict(int)
    for one in lines:
        job = one.line.job
        for change in one.leaks:
            key = change.name, change.when
            found[key][job] -= change.amount
            counts[key] += 1
    leaks = [
        NamedLeak(
            name=name,
            when=when,
            count=counts[name, when],
            amount=money(sum(jobs.values()), currency),
            worst_job=max(jobs, key=lambda job: (jobs[job], job)),
        )
        for (name, when), jobs in found.items()
    ]
    return tuple(sorted(leaks, key=lambda one: (IN_TURN.index(one.when), -one.amount.amount, one.name)))


def _lowest_first(group: Group) -> tuple[bool, Any, str]:
    percent = group.known.margin_percent
    return percent is None, percent or Decimal(0), group.name


def _lowest_line_first(low: LowLine) -> tuple[bool, Any, str, str]:
    """What has a cost and no price comes first of all."""
    percent = low.margin.margin_percent
    return percent is not None, percent or Decimal(0), low.job, low.label
