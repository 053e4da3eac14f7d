"""What waits at the desk beside the jobs themselves: papers only counted, and what must still be sent to suppliers.

It waits also where the job is billed already, and nothing of it holds a cost: the bench sees it too.
"""

from collections.abc import Iterator
from datetime import date
from typing import Literal

from ..basics.value import Value
from .back_list import back_list
from .desk import Desk
from .order_list import order_rows

MOST = 25
"""Things of a kind that the first page shows."""


class PaperToSay(Value, frozen=True, kw_only=True):
    """A paper whose goods were counted, and of which nobody said yet what it charges. `jobs` it has goods for."""

    order: str
    paper: str
    supplier_name: str
    jobs: tuple[str, ...]


class ToSend(Value, frozen=True, kw_only=True):
    """An old part or goods that wait to be sent back. `due`: the last day the supplier takes it; None: his terms name
    none."""

    order: str
    line: int
    kind: Literal["core", "goods"]
    job: str
    pieces: int
    number: str
    supplier_name: str
    why: str
    due: date | None


class DeskWork(Value, frozen=True, kw_only=True):
    """Both, the papers by order, what is to be sent by its last day; and how many there are of each in all."""

    papers: tuple[PaperToSay, ...]
    papers_count: int
    back: tuple[ToSend, ...]
    back_count: int


def desk_work(desk: Desk, job: str = "") -> DeskWork:
    """Of all jobs, so many of each and no more; or all of one job."""
    with desk.store.reading() as connection:
        rows = [one for one in order_rows(desk, connection) if not job or job in one.jobs]
    papers = [
        PaperToSay(order=one.number, paper=paper, supplier_name=one.now.order.supplier_name, jobs=one.jobs)
        for one in rows
        for paper in one.only_counted
    ]
    back = list(_to_send(desk, job))
    most = None if job else MOST
    return DeskWork(
        papers=tuple(papers[:most]), papers_count=len(papers), back=tuple(back[:most]), back_count=len(back)
    )


def _to_send(desk: Desk, job: str) -> Iterator[ToSend]:
    for one in back_list(desk):
        if one.waits == "to be sent" and job in ("", one.job):
            yield ToSend(
                order=one.order,
                line=one.line,
                kind=one.kind,
                job=one.job,
                pieces=one.pieces,
                number=one.number,
                supplier_name=one.supplier_name,
                why=one.why,
                due=one.due,
            )
