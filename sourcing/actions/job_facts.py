"""What happened to a job, gathered for its state and for its bill."""

from collections.abc import Mapping, Sequence
from datetime import date, datetime

from sqlalchemy import Connection

from ..basics.approval import Approval
from ..basics.job import Job
from ..basics.job_state import Came, JobFacts, LineFacts
from ..basics.money import Money
from ..basics.order import GoodsBack, PurchaseOrder, PurchaseOrderLine, Receipt
from ..basics.promise import Promise
from ..basics.value import changed
from ..ordering.promised import RECKONED
from ..quoting.deposit_held import deposit_held
from ..storage.after_order import events, goods_back, promises, standing_on
from ..storage.after_quote import bill_of, deposits, sendings
from ..storage.deeds import first_deed
from ..storage.orders import order, receipts
from ..storage.quotes import approvals, newest_quote
from .answers import Standing, standing_of


def job_facts(connection: Connection, job: Job) -> JobFacts:
    """The job's facts as they stand now."""
    number = job.number
    facts = JobFacts(job=number, customer=job.customer.name, taken_in_at=_taken_in(connection, job))
    newest = newest_quote(connection, number)
    if newest is None:
        return facts
    quote, bill = newest.quote, bill_of(connection, number)
    given = [one.at for one in sendings(connection, number) if one.revision == quote.revision]
    held = deposit_held(deposits(connection, number), quote.currency, bill.bill.total.total if bill else None)
    return changed(
        facts,
        quoted_at=quote.made_at,
        valid_to=quote.valid_to,
        given_at=min(given, default=None),
        lines=line_facts(connection, standing_of(connection, number)),
        billed_at=bill.bill.made_at if bill else None,
        held=held if held.amount else None,
    )


def line_facts(connection: Connection, standing: Standing) -> tuple[LineFacts, ...]:
    """Each line of the newest revision, and after them lines on order that the revision no longer has."""
    quote, words = standing.quote, dict(standing.answers.by_label)
    kept = dict(approvals(connection, quote.job))
    lines = {
        line.label: LineFacts(
            label=line.label,
            needed=line.quantity if line.part else 0,
            answer=words[line.label],
            answered_at=_answered(kept, standing, line.label),
            condition=standing.holding[line.label].condition if line.label in standing.holding else "",
        )
        for line in quote.lines
    }
    promised = promises(connection, quote.job)
    for label, on, at in standing_on(connection, quote.job):
        bought = order(connection, on)
        line = next(one for one in bought.lines if one.line == at)
        before = lines.get(label) or LineFacts(label=label, needed=line.needed, answer="approved")
        came = _came(receipts(connection, on), goods_back(connection, on), line)
        lines[label] = changed(
            before,
            needed=before.needed or line.needed,
            order=on,
            ordered_at=bought.placed_at,
            supplier=bought.supplier_name,
            expected=_expected(bought, line, promised),
            came=(*before.came, *came),
            said_since=before.said_since or _said_since(connection, bought, at, promised),
        )
    return tuple(lines.values())


def missing_goods(lines: Sequence[LineFacts]) -> dict[str, str]:
    """For each line whose goods are not all here, what is missing, in words."""
    found = {}
    for line in lines:
        pieces = sum(one.pieces for one in line.came)
        if not line.needed or pieces >= line.needed:
            continue
        if not line.order:
            found[line.label] = "its part was never ordered"
        elif pieces <= 0:
            found[line.label] = f"nothing good has come on {line.order}"
        else:
            found[line.label] = f"{pieces} of {line.needed} pieces have come on {line.order}"
    return found


def money_held(connection: Connection, job: str) -> Money | None:
    """What is left of a job's deposits after its bill; None where nothing is, and before the bill."""
    kept, bill = deposits(connection, job), bill_of(connection, job)
    held = deposit_held(kept, bill.bill.currency, bill.bill.total.total) if bill and kept else None
    return held if held is not None and held.amount else None


def _taken_in(connection: Connection, job: Job) -> datetime:
    first = first_deed(connection, job.number)
    return first.at if first else datetime.combine(job.received_on, datetime.min.time())


def _answered(kept: Mapping[int, Approval], standing: Standing, label: str) -> datetime | None:
    stored = standing.approval_of.get(label)
    return kept[stored].at if stored is not None else None


def _came(deliveries: Sequence[Receipt], backs: Sequence[GoodsBack], line: PurchaseOrderLine) -> tuple[Came, ...]:
    """Good pieces by delivery, then those that went back: bad pieces go back before good ones do."""
    of_line = [(one.at, came) for one in deliveries for came in one.lines if came.line == line.line]
    found = [Came(at=at, pieces=came.good) for at, came in of_line if came.good]
    bad = sum(came.quantity - came.good for _, came in of_line)
    signs = {"sent": 1, "refused": -1}
    steps = [one for one in backs if one.line == line.line and one.kind == "goods" and one.step in signs]
    gone = sum(signs[one.step] * one.pieces for one in steps) - bad
    if gone > 0:
        found.append(Came(at=max(one.at for one in steps), pieces=-gone))
    return tuple(found)


def _said_since(connection: Connection, bought: PurchaseOrder, at: int, promised: Sequence[Promise]) -> bool:
    """Whether anything said or come since the order may be otherwise than it was ordered."""
    events_of = events(connection, bought.number)
    words = any(one.order == bought.number and one.line in (None, at) and one.words != RECKONED for one in promised)
    came = [one for delivery in receipts(connection, bought.number) for one in delivery.lines if one.line == at]
    return words or bool(events_of) or any(one.number or one.came != "as ordered" for one in came)


def _expected(bought: PurchaseOrder, line: PurchaseOrderLine, promised: Sequence[Promise]) -> date | None:
    """The last day said for it, else the one of the order."""
    said = [
        one.latest
        for one in promised
        if one.kind == "parts here" and one.order == bought.number and one.line in (None, line.line)
    ]
    if said:
        return said[-1]
    return bought.expected[1] if bought.expected else None
