"""Purchase orders, each line held by a yes of the customer, and receipts of what came."""

from collections.abc import Collection, Mapping

from sqlalchemy import Connection, delete, insert, select, update

from ..basics.order import PurchaseOrder, PurchaseOrderLine, Receipt
from ..basics.problem import refused
from .after_tables import BILLS, RECEIPT_LINES
from .job_tables import APPROVALS, PURCHASE_ORDER_LINES, PURCHASE_ORDERS, RECEIPTS
from .numbers import nearest, next_serial
from .rows import add_row, as_text, as_value


def next_order_number(connection: Connection, year: int) -> str:
    """The number the year's next order gets: 'PO-2026-0001'. It is taken only once the order is kept."""
    return f"PO-{year}-{next_serial(connection, PURCHASE_ORDERS, year):04d}"


def add_order(connection: Connection, new: PurchaseOrder, approval_of: Mapping[int, int]) -> None:
    """Keep an order. `approval_of` names for each line the stored answer that allows it.

    Refuses the whole order where a line's answer is missing, is no yes, was taken back by a later answer to the
    same line, or belongs to another job; the database itself refuses all of these but the taking back.
    """
    lines = [_line(connection, new.number, line, approval_of.get(line.line)) for line in new.lines]
    _, year, serial = new.number.split("-")
    row = {
        "number": new.number,
        "year": int(year),
        "serial": int(serial),
        "supplier": new.supplier,
        "placed_at": new.placed_at,
        "body": as_text(new),
    }
    connection.execute(insert(PURCHASE_ORDERS).values(row))
    if lines:
        connection.execute(insert(PURCHASE_ORDER_LINES), lines)


def order(connection: Connection, number: str) -> PurchaseOrder:
    """The order of that number. Refuses where there is none, with the numbers nearest to it."""
    table = PURCHASE_ORDERS
    body = connection.execute(select(table.c.body).where(table.c.number == number)).scalar()
    if body is None:
        known = connection.execute(select(table.c.number)).scalars()
        raise refused("no-such-order", found=number, suggestions=nearest(number, known))
    return as_value(body, PurchaseOrder)


def orders(connection: Connection, job: str | None = None) -> list[PurchaseOrder]:
    """Every order, or those with a line of the job, oldest number first."""
    table, lines = PURCHASE_ORDERS, PURCHASE_ORDER_LINES
    query = select(table.c.body).order_by(table.c.year, table.c.serial)
    if job is not None:
        query = query.where(table.c.number.in_(select(lines.c.order).where(lines.c.job == job)))
    return [as_value(body, PurchaseOrder) for body in connection.execute(query).scalars()]


def lines_of_orders(connection: Connection) -> dict[str, set[str]]:
    """By order the jobs that have a line on it, cancelled lines among them."""
    table, found = PURCHASE_ORDER_LINES, dict[str, set[str]]()
    for order, job in connection.execute(select(table.c.order, table.c.job).distinct()):
        found.setdefault(order, set()).add(job)
    return found


def some_orders(connection: Connection, numbers: Collection[str]) -> list[PurchaseOrder]:
    """The orders of these numbers, oldest number first; all of them are there."""
    table = PURCHASE_ORDERS
    query = select(table.c.body).where(table.c.number.in_(numbers)).order_by(table.c.year, table.c.serial)
    return [as_value(body, PurchaseOrder) for body in connection.execute(query).scalars()]


def jobs_with_open_yes(connection: Connection) -> list[str]:
    """Jobs with a yes that holds and that nothing is ordered on, those that are billed left out; oldest number first.

    A yes to labour alone is among them: whether there are parts to order is for the quote to say.
    """
    table, lines = APPROVALS, PURCHASE_ORDER_LINES
    bought = select(lines.c.approval).where(lines.c.approval.is_not(None))
    free = (table.c.answer == "approved") & (table.c.holds == "yes") & table.c.approval.not_in(bought)
    query = select(table.c.job).where(free, table.c.job.not_in(select(BILLS.c.job))).distinct().order_by(table.c.job)
    return list(connection.execute(query).scalars())


def add_receipt(connection: Connection, receipt: Receipt) -> None:
    """Keep a delivery. Refuses an unknown order, and a paper already counted for that order."""
    order(connection, receipt.order)
    table = RECEIPTS
    same = select(table.c.receipt).where(table.c.order == receipt.order, table.c.paper == receipt.paper)
    if connection.execute(same).first() is not None:
        raise refused("same-paper", order=receipt.order, paper=receipt.paper)
    number = add_row(connection, table, _receipt_row(receipt, receipt.paper))
    # Against the lines of the order as well, so that the database holds what may be received.
    lines = [
        {"receipt": number, "order": receipt.order, "line": line.line, "pieces": line.quantity, "cancelled": "no"}
        for line in receipt.lines
        if line.quantity
    ]
    if lines:
        connection.execute(insert(RECEIPT_LINES), lines)


def receipts(connection: Connection, order: str | None = None) -> list[Receipt]:
    """What came for an order, or for all, in the order it was recorded; nothing for an unknown order.

    What was set aside as recorded wrongly is left out, and so is the word that set it aside: `every_receipt` has both.
    """
    counts: list[Receipt] = []
    for one in every_receipt(connection, order):
        if one.sets_aside:
            counts = [other for other in counts if (other.order, other.paper) != (one.order, one.sets_aside)]
        else:
            counts.append(one)
    return counts


def every_receipt(connection: Connection, order: str | None = None) -> list[Receipt]:
    """Every receipt ever recorded, set aside or not, with the words that set some aside."""
    query = select(RECEIPTS.c.body).order_by(RECEIPTS.c.receipt)
    if order is not None:
        query = query.where(RECEIPTS.c.order == order)
    return [as_value(body, Receipt) for body in connection.execute(query).scalars()]


def set_receipt_aside(connection: Connection, word: Receipt) -> None:
    """Keep the word that the delivery of the paper `word.sets_aside` was recorded wrongly; its paper can count anew.

    Both stay to be read. The lines go from what the database counts as received, so that they can be cancelled.
    """
    table = RECEIPTS
    mine = (table.c.order == word.order) & (table.c.paper == word.sets_aside)
    number = connection.execute(select(table.c.receipt).where(mine)).scalar_one()
    connection.execute(delete(RECEIPT_LINES).where(RECEIPT_LINES.c.receipt == number))
    gone = f"{word.sets_aside} (set aside, receipt {number})"
    connection.execute(update(table).where(table.c.receipt == number).values(paper=gone))
    add_row(connection, table, _receipt_row(word, f"word on receipt {number}"))


def _receipt_row(receipt: Receipt, paper: str) -> dict[str, object]:
    return {
        "order": receipt.order,
        "paper": paper,
        "at": receipt.at,
        "received_by": receipt.received_by,
        "freight": receipt.freight.amount,
        "currency": receipt.freight.currency,
        "rate": receipt.rate,
        "body": as_text(receipt),
    }


def _line(connection: Connection, order: str, line: PurchaseOrderLine, approval: int | None) -> dict[str, object]:
    answer = _answer(connection, line.job, approval)
    if answer != "approved":
        raise refused("not-approved", job=line.job, label=line.label, answer=answer)
    return {
        "order": order,
        "line": line.line,
        "job": line.job,
        "revision": line.revision,
        "label": line.label,
        "approval": approval,
        "answer": answer,
        "holds": "yes",
        "cancelled": "no",
    }


def _answer(connection: Connection, job: str, approval: int | None) -> str:
    """What the approval is worth now: 'waiting' where the job has no such answer, else its word or a later one."""
    last, given = APPROVALS.alias(), APPROVALS.alias()
    same_line = (last.c.job == given.c.job) & (last.c.revision == given.c.revision) & (last.c.label == given.c.label)
    query = (
        select(given.c.answer, last.c.answer, given.c.holds)
        .select_from(given)
        .join(last, same_line)
        .where(given.c.approval == approval, given.c.job == job)
        .order_by(last.c.approval.desc())
        .limit(1)
    )
    row = connection.execute(query).one_or_none()
    if row is None:
        return "waiting"
    if row.holds == "withdrawn":
        return "withdrawn"
    return "approved" if tuple(row) == ("approved", "approved", "yes") else "declined"
