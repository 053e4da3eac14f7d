"""The jobs as a page asks for them: of one who waits, with some words, a page at a time; and who waits for whom."""

from typing import get_args

from ..basics.job_state import JobRow, WaitsFor
from ..basics.value import Value
from .desk import Desk
from .job_states import as_they_stand, roughly

PAGE = 50
MOST = 25
"""Jobs that wait for one of them which the first page shows."""


class JobsAsked(Value, frozen=True, kw_only=True):
    """`words` must all stand in number, customer or machine; blanks ask nothing. `page` counts from 1."""

    words: str = ""
    waits_for: str = ""
    closed_too: bool = False
    page: int = 1


class JobsFound(Value, frozen=True, kw_only=True):
    """Rows of a page, which they are (`first` counts from 1, 0 where there is none), and how many there are in all."""

    rows: tuple[JobRow, ...]
    first: int
    count: int
    page: int
    pages: int
    closed_left_out: int


class Waiting(Value, frozen=True, kw_only=True):
    """Those who wait the longest for somebody, and how many wait for them in all."""

    waits_for: WaitsFor
    rows: tuple[JobRow, ...]
    count: int


def waiting(desk: Desk) -> tuple[Waiting, ...]:
    """The jobs that are open by who they wait for, us first, the longest wait first; so many of each and no more."""
    every = sorted(roughly(desk)[0], key=lambda one: (one.row.state.since, one.row.job))
    found = ((who, [one for one in every if one.row.state.waits_for == who]) for who in get_args(WaitsFor))
    return tuple(
        Waiting(waits_for=who, rows=as_they_stand(desk, some[:MOST]), count=len(some)) for who, some in found if some
    )


def jobs_asked(desk: Desk, asked: JobsAsked, whole: bool = False) -> JobsFound:
    """The jobs that fit, newest number first; `whole`: all pages at once."""
    every, left_out = roughly(desk, asked.closed_too)
    words = asked.words.casefold().split()
    fit = [one for one in reversed(every) if _fits(one.row, asked.waits_for, words)]
    pages = max(1, -(-len(fit) // PAGE))
    page = min(max(asked.page, 1), pages)
    rows = fit if whole else fit[(page - 1) * PAGE : page * PAGE]
    return JobsFound(
        rows=as_they_stand(desk, rows),
        first=(0 if not rows else 1 if whole else (page - 1) * PAGE + 1),
        count=len(fit),
        page=page,
        pages=pages,
        closed_left_out=left_out,
    )


def _fits(one: JobRow, waits_for: str, words: list[str]) -> bool:
    said = f"{one.job} {one.customer} {one.machine}".casefold()
    return waits_for in ("", one.state.waits_for) and all(word in said for word in words)
