"""What the owner's pages show of margins: groups at one stage, page by page, with what each cell holds."""

from collections.abc import Sequence
from typing import Literal

from ..basics.margin import Group, JobMargin, LineMargin, Margin, Margins, Stage
from ..basics.money import Money
from ..basics.value import Value
from .csv_text import csv_text
from .margin_words import FIGURES, figures, told_of
from .margins import floor_first

StageAsked = Literal["by now", "quoted", "ordered", "received"]
STAGES: tuple[StageAsked, ...] = ("by now", "quoted", "ordered", "received")

ROWS, MOST_LOW, MOST_BACK = 50, 20, 20
"""Rows of a page, and how much of the rest a page shows; the workbook has all of it."""


class GroupRow(Value, frozen=True, kw_only=True):
    """A group at the stage asked for: how many of its lines have reached it, and their figures. `job`: its number
    where the group is a job or a line of one. `leaked` None: nothing."""

    name: str
    title: str
    job: str
    lines: int
    reached: int
    under_floor: int
    margin: Margin
    leaked: Money | None


class GroupsPage(Value, frozen=True, kw_only=True):
    """One page of groups, lowest margin first. `first`: number of its first row, counted from 1."""

    rows: tuple[GroupRow, ...]
    whole: GroupRow
    first: int
    total: int
    page: int
    pages: int


def groups_page(found: Margins, stage: StageAsked, page: int) -> GroupsPage:
    """The groups that have anything in them. A page beyond the last is the last."""
    groups = told_of(found.groups)
    pages = max(-(-len(groups) // ROWS), 1)
    here = min(max(page, 1), pages)
    start = (here - 1) * ROWS
    return GroupsPage(
        rows=tuple(_row(found, one, stage) for one in groups[start : start + ROWS]),
        whole=_row(found, found.whole, stage),
        first=start + 1,
        total=len(groups),
        page=here,
        pages=pages,
    )


def _row(found: Margins, group: Group, stage: StageAsked) -> GroupRow:
    reached, margin = {
        "by now": (group.lines, group.known),
        "quoted": (group.lines, group.quoted),
        "ordered": (group.ordered_lines, group.ordered),
        "received": (group.received_lines, group.received),
    }[stage]
    of_job = found.by in ("job", "line") and group is not found.whole
    return GroupRow(
        name=group.name,
        title=group.title,
        job=group.name.split(" line ")[0] if of_job else "",
        lines=group.lines,
        reached=reached,
        under_floor=group.under_floor,
        margin=margin,
        leaked=group.leaked if group.leaked.amount else None,
    )


class StageRow(Value, frozen=True, kw_only=True):
    """A line of a job, its parts together or the whole job, at one stage. `first`: its name stands beside this row,
    over so many rows."""

    name: str
    over: int
    stage: Stage
    margin: Margin


def stage_rows(job: JobMargin) -> tuple[StageRow, ...]:
    """Lines under the floor first, then the others, parts together, the whole job."""
    blocks = [(_line(one), one.stages) for one in floor_first(job.lines)]
    blocks += [("Parts and freight together", job.parts), ("The whole job with labour", job.whole)]
    return tuple(
        StageRow(name=name, over=0 if at else len(stages), stage=stage, margin=margin)
        for name, stages in blocks
        for at, (stage, margin) in enumerate(stages)
    )


def _line(one: LineMargin) -> str:
    floor = "; UNDER THE FLOOR" if one.below_floor else ""
    return f"{one.label} {one.title} ({one.answer}{floor})"


def job_csv(jobs: Sequence[JobMargin]) -> str:
    """Every row of the jobs' figures."""
    rows = [(job.job, one.name, one.stage, *figures(one.margin)) for job in jobs for one in stage_rows(job)]
    return csv_text(("Job", "What", "Stage", *FIGURES), rows)
