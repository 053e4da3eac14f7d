"""What was worked out from a sheet and is still open: quotes not ordered on yet, orders nobody has confirmed.

Asked before a sheet is taken out, and entered in the ledger of each job and order when it is; `sheets_gone` tells it
afterwards where a person works on them.
"""

from collections.abc import Iterator, Sequence

from sqlalchemy import Connection

from ..basics.order_now import OrderNow
from ..basics.problem import refused
from ..basics.sheet import KeptSheet
from ..basics.value import Value
from ..ordering.order_now import good_pieces, order_now
from ..storage.after_order import events
from ..storage.orders import receipts
from ..storage.sheet_origin import jobs_quoted_from, orders_placed_on
from ..storage.sheets import kept_sheets
from ..storage.shop import terms_on
from .desk import Desk, Pen
from .job_now import JobNow, job_now

UNDO = "undo import"
"""The deed that takes a sheet out."""


class WorkedOut(Value, frozen=True, kw_only=True):
    """What a sheet was used for: lines of the newest quote of a job that stand on no order (`order` blank), or an order
    at its supplier's that nobody has confirmed and nothing came of. `labels` are lines of the job. `revision` None: an
    order, which stands whatever the quote."""

    job: str
    customer: str
    labels: tuple[str, ...]
    revision: int | None
    order: str = ""

    def words(self) -> str:
        """'lines 1 and A of revision 2', 'PO-2026-0001, lines 1 and A'."""
        return f"{lines_words(self.labels)} of revision {self.revision}" if self.revision else lines_words(self.labels)


def lines_words(labels: Sequence[str]) -> str:
    """'line 1', 'lines 1, 2 and A'."""
    if len(labels) == 1:
        return f"line {labels[0]}"
    return f"lines {', '.join(labels[:-1])} and {labels[-1]}"


def worked_out_from(desk: Desk, sheet: int) -> tuple[WorkedOut, ...]:
    """What stands on the sheet and is still open, by job. Refuses a number no sheet has."""
    with desk.store.reading() as connection:
        kept = next((one for one in kept_sheets(connection, desk.at.date()) if one.sheet == sheet), None)
        if kept is None:
            raise refused("no-sheet-number", found=sheet)
        return tuple(still_open(connection, kept))


def still_open(connection: Connection, kept: KeptSheet) -> Iterator[WorkedOut]:
    """The same of a sheet that is there, for who is about to take it out."""
    for number in jobs_quoted_from(connection, kept.sheet):
        seen = job_now(connection, number)
        if seen and (labels := tuple(_quoted(seen, kept.sheet))):
            revision = seen.standing.quote.revision
            yield WorkedOut(job=number, customer=seen.job.customer.name, labels=labels, revision=revision)
    yield from _ordered(connection, kept)


def note_gone(pen: Pen, kept: KeptSheet, found: Sequence[WorkedOut]) -> None:
    """Enter under each job and order that the sheet it was worked out from is taken out."""
    terms = terms_on(pen.connection, pen.desk.at.date()).get(kept.supplier)
    name = terms.name if terms else kept.supplier
    for one in found:
        pen.note(
            one.order or one.job,
            f"took out sheet {kept.sheet} of {name} ({kept.file}), from which {one.words()} came",
        )


def _quoted(seen: JobNow, sheet: int) -> Iterator[str]:
    """Lines from the sheet that are not declined and stand on no order."""
    words = seen.standing.words()
    for line in seen.standing.quote.lines:
        behind = line.behind
        if behind and behind.sheet == sheet and words[line.label] != "declined" and line.label not in seen.on_order:
            yield line.label


def _ordered(connection: Connection, kept: KeptSheet) -> Iterator[WorkedOut]:
    for order in orders_placed_on(connection, kept.supplier, kept.sheet):
        now = order_now(order, events(connection, order.number))
        if not is_unconfirmed(connection, now):
            continue
        for job in sorted({one.line.job for one in now.lines if not one.cancelled}):
            labels = tuple(one.line.label for one in now.lines if one.line.job == job and not one.cancelled)
            seen = job_now(connection, job)
            customer = seen.job.customer.name if seen else ""
            yield WorkedOut(job=job, customer=customer, labels=labels, revision=None, order=order.number)


def is_unconfirmed(connection: Connection, now: OrderNow) -> bool:
    """Whether nobody has confirmed the order, and nothing of it came."""
    return not now.cancelled and not now.confirmed and not good_pieces(receipts(connection, now.order.number))
