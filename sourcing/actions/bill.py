"""Write the bill of a job, once; look at it before; print it again to the letter."""

import hashlib
from collections.abc import Callable, Mapping, Sequence
from datetime import datetime
from typing import TypedDict

from sqlalchemy import Connection

from ..basics.approval import Approval
from ..basics.bill import Bill, FrozenBill, LeftOut, Off
from ..basics.job_state import LineFacts
from ..basics.money import Money
from ..basics.problem import refused
from ..basics.quote import Quote
from ..quoting.alarm import same_number
from ..quoting.bill import Billed, make_bill
from ..quoting.freight_answers import brings, freight_lines
from ..quoting.off import off_words
from ..storage.after_quote import add_bill, bill_of, deposits, next_bill_number
from ..storage.jobs import job as stored_job
from ..storage.quotes import approvals, quote
from .alarms import alarms_of
from .answers import Standing, standing_of
from .decided import decisions_now
from .desk import Desk
from .evaluate import catalogue
from .job_facts import line_facts, missing_goods
from .job_now import lines_on_order

Paper = Callable[[Bill], str]
"""Makes the paper of a bill; handed in, because papers are made at the edge."""


def write_bill(
    desk: Desk, number: str, paper: Paper, left_out: LeftOut | None = None, off: Off | None = None
) -> FrozenBill:
    """The job's bill, kept for ever with its paper; it closes the job.

    Refuses a job billed already, a line without an answer or whose yes does not hold, one that would cost more than
    was approved, goods that have not come. `left_out`: lines approved or without an answer that
    were not done; they are not billed. `off`:
    discounts at the counter; refuses one of more than its line costs, or without a reason.
    """
    with desk.writing("write bill") as pen:
        standing = _standing(pen.connection, number)
        new = _bill(pen.connection, desk, standing, (left_out or LeftOut(), off or Off()))
        text = paper(new)
        frozen = FrozenBill(bill=new, paper=text, sha256=hashlib.sha256(text.encode()).hexdigest())
        add_bill(pen.connection, frozen, {line.label: standing.approval_of[line.label] for line in new.lines})
        beside = f"{_off_words(new)}{_not_done_words(new)}"
        pen.note(number, f"wrote bill {new.number}: total {new.total.total}, due {new.due}{beside}")
        return frozen


def look_at_bill(desk: Desk, number: str, left_out: LeftOut | None = None, off: Off | None = None) -> Bill:
    """What the bill would be now. Keeps nothing; refuses what `write_bill` refuses."""
    with desk.store.reading() as connection:
        return _bill(connection, desk, _standing(connection, number), (left_out or LeftOut(), off or Off()))


def bill_if_any(desk: Desk, number: str) -> FrozenBill | None:
    """The bill as it was made, None where the job is not billed. Refuses an unknown job."""
    with desk.store.reading() as connection:
        stored_job(connection, number)
        return bill_of(connection, number)


def _standing(connection: Connection, number: str) -> Standing:
    """Where the quote stands. A job billed already is told first: nothing else about it matters then."""
    stored_job(connection, number)
    if bill_of(connection, number) is not None:
        raise refused("billed-already", job=number)
    return standing_of(connection, number)


def _bill(connection: Connection, desk: Desk, standing: Standing, wishes: tuple[LeftOut, Off]) -> Bill:
    newest, (left_out, off) = standing.quote, wishes
    kept = dict(approvals(connection, newest.job))
    facts = line_facts(connection, standing)
    _refuse_before(desk.at, newest, facts)
    holding = {label: kept[at] for label, at in standing.approval_of.items()}
    made = Billed(
        quote=newest,
        holding=holding,
        answered={one.revision: quote(connection, newest.job, one.revision).quote for one in holding.values()},
        missing=missing_goods(facts),
        deposits=tuple(deposits(connection, newest.job)),
        left_out=left_out,
        told=_told(kept),
        off=off,
        charges_not_said=_charges_not_said(connection, newest),
        **_other_numbers(connection, desk, newest),
    )
    return make_bill(made, next_bill_number(connection, desk.at.year), desk.at, desk.who)


def _refuse_before(at: datetime, quote: Quote, lines: Sequence[LineFacts]) -> None:
    """A bill is younger than its quote, the answers and the goods: another moment is a slip of the hand."""
    moments = [("its quote", quote.made_at)]
    moments += [(f"the answer to line {line.label}", line.answered_at) for line in lines if line.answered_at]
    moments += [(f"goods for line {line.label}", one.at) for line in lines for one in line.came]
    what, last = max(moments, key=lambda one: one[1])
    if at < last:
        found, on = (f"{one:%Y-%m-%d %H:%M}" for one in (at, last))
        raise refused("bill-before", job=quote.job, found=found, what=what, on=on)


def _charges_not_said(connection: Connection, newest: Quote) -> Mapping[str, str]:
    """By label of a freight line, the papers that brought its parts and of which nobody said yet what they charge."""
    on_order = lines_on_order(connection, newest.job)
    found: dict[str, str] = {}
    for freight in freight_lines(newest):
        brought = {line.label for line in newest.lines if line.part and brings(freight, line)}
        papers = [
            f"paper {receipt.paper} of {one.order.order.number}"
            for one in on_order
            if one.line.line.label in brought
            for receipt in one.receipts
            if receipt.only_counted
        ]
        if papers:
            found[freight.label] = " and ".join(dict.fromkeys(papers))
    return found


class _Numbers(TypedDict):
    other_number: Mapping[str, str]
    agreed_number: Mapping[str, str]


def _other_numbers(connection: Connection, desk: Desk, newest: Quote) -> _Numbers:
    """Numbers under which goods came in place of those approved: those still open to the customer's yes are alarms."""
    number, last = newest.job, decisions_now(connection, newest)
    came = [
        (one.line.line.label, part.number)
        for one in lines_on_order(connection, number)
        for receipt in one.receipts
        for part in receipt.lines
        if part.line == one.line.line.line and part.came == "same part"
    ]
    agreed = {
        label: last[label].number
        for label, number_came in came
        if label in last and last[label].agreed_by and same_number(number_came, (last[label].number,))
    }
    found = alarms_of(catalogue(connection, desk.at), number) if came else ()
    other = {one.label: differs.now for one in found for differs in one.differs if differs.what == "number"}
    return {"other_number": other, "agreed_number": agreed}


def _told(kept: Mapping[int, Approval]) -> Money | None:
    """The total the customer was told with the last answers; None where it was not written down."""
    totals = [one.total_after for one in kept.values()]
    return totals[-1] if totals else None


def _off_words(new: Bill) -> str:
    return "".join(f"; {off_words(one)}" for one in new.off)


def _not_done_words(new: Bill) -> str:
    if not new.not_done:
        return ""
    done = ", ".join(one.label for one in new.not_done if one.answered)
    silent = ", ".join(one.label for one in new.not_done if not one.answered)
    told = f"{f'; not done {done}' if done else ''}{f'; not answered, not done {silent}' if silent else ''}"
    return f"{told}: {new.not_done[0].words}" if new.not_done[0].words else told
