"""What a number scanned at the door means: an order, a paper taken in before, or goods that an open order waits for."""

from datetime import date

from ..basics.order import Receipt
from ..basics.order_now import LineNow
from ..basics.order_row import OrderRow
from ..basics.part_number import number_key
from ..basics.value import Value
from ..ordering.number_came import is_ordered_number
from ..storage.order_rows import receipts_of_paper
from .desk import Desk
from .order_list import order_rows


class Arrivals(Value, frozen=True, kw_only=True):
    """`order` is set where the number is an order's own. `waiting`: open orders that wait for that number or, where it
    is a job's, for goods of the job. `taken_in`: deliveries whose paper bears it."""

    order: str = ""
    waiting: tuple[OrderRow, ...] = ()
    taken_in: tuple[Receipt, ...] = ()


def arrivals(desk: Desk, typed: str) -> Arrivals:
    """What the number means, whatever its case, blanks and hyphens. Nothing at all where nobody waits for it."""
    key = number_key(typed)
    if not key:
        return Arrivals()
    with desk.store.reading() as connection:
        rows = order_rows(desk, connection)
        own = [one.number for one in rows if number_key(one.number) == key]
        if own:
            return Arrivals(order=own[0])
        return Arrivals(
            waiting=tuple(one for one in rows if _waits_for(one, typed)),
            taken_in=tuple(receipts_of_paper(connection, lambda paper: number_key(paper) == key)),
        )


def waiting_orders(desk: Desk) -> tuple[OrderRow, ...]:
    """Orders of which something is still to come, the one due first at the top."""
    with desk.store.reading() as connection:
        rows = [one for one in order_rows(desk, connection) if one.is_open]
    return tuple(sorted(rows, key=lambda one: (one.due or date.max, one.serial)))


def bears(line: LineNow, typed: str) -> bool:
    """Whether it is a number of the line: the one ordered, the maker's, or the one the supplier said he sends."""
    return is_ordered_number(line.line, typed) or number_key(line.number) == number_key(typed)


def _waits_for(one: OrderRow, typed: str) -> bool:
    is_job = number_key(typed) in {number_key(job) for job in one.jobs}
    return one.is_open and (is_job or any(line.line.line in one.left and bears(line, typed) for line in one.now.lines))
