"""The list of jobs as a page asks for it: of one who waits, with some words, a page at a time."""

from ..basics.job_state import JobRow
from ..basics.value import Value
from .desk import Desk
from .job_states import job_list

PAGE = 50


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


def jobs_asked(desk: Desk, asked: JobsAsked, whole: bool = False) -> JobsFound:
    """The jobs that fit, newest number first; `whole`: all pages at once."""
    every = job_list(desk, asked.closed_too)
    words = asked.words.casefold().split()
    fit = [one for one in reversed(every.jobs) if _fits(one, asked.waits_for, words)]
    pages = max(1, -(-len(fit) // PAGE))
    page = min(max(asked.page, 1), pages)
    rows = fit if whole else fit[(page - 1) * PAGE : page * PAGE]
    return JobsFound(
        rows=tuple(rows),
        first=(0 if not rows else 1 if whole else (page - 1) * PAGE + 1),
        count=len(fit),
        page=page,
        pages=pages,
        closed_left_out=every.left_out,
    )


def _fits(one: JobRow, waits_for: str, words: list[str]) -> bool:
    said = f"{one.job} {one.customer} {one.machine}".casefold()
    return waits_for in ("", one.state.waits_for) and all(word in said for word in words)
