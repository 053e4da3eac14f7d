"""Place purchase orders for approved lines of one or many jobs: what was quoted, from whom it was quoted, no more.

A line whose price rose above what was approved, or whose offer is gone, is held for a new answer; one whose evidence
contradicts itself or the line is held until a person settles it; the rest is ordered.
"""

import hashlib
from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime

from sqlalchemy import Connection

from ..basics.landed_cost import OrderItem
from ..basics.order import PurchaseOrder
from ..basics.order_now import OrderNow
from ..basics.plan import PlannedOrder
from ..basics.problem import Problem, Refused, refused
from ..basics.value import Value, changed
from ..landed_cost.order_by import order_by
from ..ordering.order_now import good_pieces, open_pieces, order_now
from ..ordering.promised import promises_from_order
from ..ordering.purchase import Placing, purchase_order
from ..ordering.reasons import line_reasons, order_reasons
from ..storage.after_order import add_promise, events
from ..storage.orders import add_order, next_order_number, order, orders, receipts
from .deposits import deposit_warnings
from .desk import Desk, Pen
from .evaluate import Catalogue, catalogue, catalogue_to_read
from .left_to_order import bought_anew, unbilled_charges
from .order_lines import ToOrder, doubts, job_orders_now, lines_to_order, ready_items, still_waiting
from .orders_together import better_together, needed_by
from .plan import land

NOT_PLACED = ""
"""The number of an order that is only looked at."""


class OrdersPlaced(Value, frozen=True, kw_only=True):
    """The orders, the lines held back with the reason for each, and what is doubtful about the lines ordered.

    Where they are only looked at, nothing is kept and the orders have no number; `otherwise` then says what buying it
    anew would cost, where that is less, and which lines bear freight and fees nobody is billed for.
    """

    orders: tuple[PurchaseOrder, ...]
    held: tuple[str, ...]
    warnings: tuple[str, ...] = ()
    otherwise: tuple[str, ...] = ()

    @property
    def mark(self) -> str:
        """What tells these orders from others: from whom, which numbers, how many, at what price and cost."""
        said = [
            (one.supplier, str(one.landed_total), at.job, at.label, at.supplier_number, at.ordered, str(at.unit_price))
            for one in self.orders
            for at in one.lines
        ]
        return hashlib.sha256(repr(said).encode()).hexdigest()[:24]


class StillToCome(Value, frozen=True, kw_only=True):
    """Good pieces of a line that are wanted and have not come."""

    line: int
    pieces: int


class OrderListed(Value, frozen=True, kw_only=True):
    """An order as it stands now, and what is still to come of it."""

    now: OrderNow
    open: tuple[StillToCome, ...]

    @property
    def left(self) -> dict[int, int]:
        """Pieces still to come by line number."""
        return {one.line: one.pieces for one in self.open}


def place_orders(
    desk: Desk, numbers: Sequence[str], only: Sequence[str] = (), note: str = "", seen: str = ""
) -> OrdersPlaced:
    """One order for each supplier. `only` names lines of a single job; each of them must be approved. `note` stands on
    the papers, for the supplier. `seen`: the `mark` of what was looked at before; blank: nothing was.

    Refuses where nothing is approved, where a named line is not, where the supplier takes no such order, where every
    line is held, and where it would order otherwise than was looked at.
    """
    with desk.writing("order") as pen:
        found = catalogue(pen.connection, desk.at)
        drafts, held, warnings = _drafts(found, desk, numbers, only, note)
        if not drafts:
            raise Refused(*held)
        for draft in drafts:
            _refuse(draft)
        if seen and seen != OrdersPlaced(orders=tuple(draft.order for draft in drafts), held=()).mark:
            raise refused("not-as-looked-at", found=", ".join(numbers))
        placed = tuple(_keep(pen, draft) for draft in drafts)
        more = tuple(words for draft in drafts for words in draft.warnings)
        return OrdersPlaced(orders=placed, held=tuple(one.sentence() for one in held), warnings=(*warnings, *more))


def look_at_orders(desk: Desk, numbers: Sequence[str], only: Sequence[str] = ()) -> OrdersPlaced:
    """What `place_orders` would order now, from whom and at what cost. Nothing is kept.

    What it would refuse of a supplier or a line is told among the warnings and the lines held.
    """
    with desk.store.reading() as connection:
        found = catalogue_to_read(desk, connection)
        drafts, held, warnings = _drafts(found, desk, numbers, only, "")
        more = tuple(words for draft in drafts for words in (*draft.in_the_way, *draft.warnings, *draft.order_by))
        return OrdersPlaced(
            orders=tuple(draft.order for draft in drafts),
            held=tuple(one.sentence() for one in held),
            warnings=(*warnings, *more),
            otherwise=tuple(_otherwise(found, numbers, only, drafts)),
        )


def _otherwise(
    found: Catalogue, numbers: Sequence[str], only: Sequence[str], drafts: Sequence["_Draft"]
) -> Iterator[str]:
    """Nothing where an order can't be placed as it stands, for then its cost is not known: why is told already."""
    if any(draft.in_the_way for draft in drafts):
        return
    lines, made = lines_to_order(found, numbers, only), [draft.order for draft in drafts]
    yield from bought_anew(found, lines, made, needed_by(found, numbers))
    yield from unbilled_charges(found, lines, made)


def all_orders(desk: Desk, job: str | None) -> tuple[PurchaseOrder, ...]:
    """Every order as it was placed, or those with a line of the job."""
    with desk.store.reading() as connection:
        return tuple(orders(connection, job))


def one_order(desk: Desk, number: str) -> PurchaseOrder:
    """One order by its number, as it was placed."""
    with desk.store.reading() as connection:
        return order(connection, number)


def one_order_now(desk: Desk, number: str) -> OrderNow:
    """One order by its number, as it stands now."""
    with desk.store.reading() as connection:
        return order_now(order(connection, number), events(connection, number))


def list_orders(desk: Desk, job: str | None) -> tuple[OrderListed, ...]:
    """Every order as it stands now with what is still to come, or those with a line of the job; oldest first."""
    with desk.store.reading() as connection:
        return tuple(_listed(connection, now) for now in job_orders_now(connection, job))


def listed_order(desk: Desk, number: str) -> OrderListed:
    """One order as it stands now, with what is still to come."""
    with desk.store.reading() as connection:
        return _listed(connection, order_now(order(connection, number), events(connection, number)))


def _listed(connection: Connection, now: OrderNow) -> OrderListed:
    left = open_pieces(now, good_pieces(receipts(connection, now.order.number)))
    return OrderListed(now=now, open=tuple(StillToCome(line=at, pieces=some) for at, some in left.items()))


class _Draft(Value, frozen=True, kw_only=True):
    """An order before it has a number. `in_the_way`: why the supplier would not take it, or why it can't be priced."""

    order: PurchaseOrder
    approval_of: dict[int, int]
    refusal: str
    unknown: tuple[str, ...]
    warnings: tuple[str, ...]
    order_by: tuple[str, ...]

    @property
    def in_the_way(self) -> tuple[str, ...]:
        return (*([self.refusal] if self.refusal else []), *self.unknown)


def _drafts(
    found: Catalogue, desk: Desk, numbers: Sequence[str], only: Sequence[str], note: str
) -> tuple[list[_Draft], tuple[Problem, ...], tuple[str, ...]]:
    lines = lines_to_order(found, numbers, only)
    ready = ready_items(found, lines)
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for item in ready.items.values():
        by_supplier[item.offer.supplier].append(item)
    drafts = [_draft(found, desk, lines, by_supplier[one], note) for one in sorted(by_supplier)]
    asked = (words for job in dict.fromkeys(numbers) for words in deposit_warnings(found.connection, job))
    return drafts, ready.held, (*doubts(lines, ready), *asked, *still_waiting(found.connection, numbers))


def _draft(found: Catalogue, desk: Desk, lines: Mapping[str, ToOrder], items: Sequence[OrderItem], note: str) -> _Draft:
    planned = land(found, items)
    landed = planned.landed
    jobs = {lines[item.need].wanted.job for item in items}
    wanted = {
        one.item.need: changed(lines[one.item.need].wanted, reasons=line_reasons(behind, one))
        for one in landed.items
        if (behind := lines[one.item.need].line.behind)
    }
    placing = Placing(
        at=desk.at,
        by=desk.who,
        need_by=needed_by(found, jobs),
        rate=found.door(landed.supplier).rate.rate,
        note=note,
        reasons=order_reasons(landed, len(jobs)),
    )
    settings = found.shop.settings
    made = purchase_order(NOT_PLACED, planned, wanted, found.shop.terms[landed.supplier], settings, placing)
    return _Draft(
        order=made,
        approval_of={line.line: lines[f"{line.job}/{line.label}"].approval for line in made.lines},
        refusal=landed.refusal,
        unknown=landed.open_questions,
        warnings=(*_late(made), *better_together(found, planned, jobs)),
        order_by=tuple(_last_moment(found, planned, made)),
    )


def _late(made: PurchaseOrder) -> Iterator[str]:
    if made.need_by is None:
        return
    if made.expected is None:
        yield f"{made.supplier_name}: no day is known, and the parts are needed by {made.need_by}"
    elif made.expected[1] > made.need_by:
        yield f"{made.supplier_name}: here {made.expected[1]} at the latest, needed by {made.need_by}"


def _last_moment(found: Catalogue, planned: PlannedOrder, made: PurchaseOrder) -> Iterator[str]:
    """Until when it may be ordered and still be here in time; nothing where no day is asked or it is late already."""
    if made.need_by is None or planned.arrival.latest is None or planned.arrival.latest > made.need_by:
        return
    door = found.door(made.supplier)
    moments = [order_by(item.item, door, made.need_by, found.at) for item in planned.landed.items]
    known: list[datetime] = [one for one in moments if one is not None]
    if known:
        last = min(known)
        yield f"{made.supplier_name}: to be here by {made.need_by} it must be ordered by {last:%Y-%m-%d %H:%M}"


def _refuse(draft: _Draft) -> None:
    if draft.refusal:
        together = [words for words in draft.warnings if "together" in words]
        raise refused("supplier-refuses", found="; ".join((draft.refusal, *together)))
    if draft.unknown:
        raise refused("freight-unknown-order", found="; ".join(draft.unknown))


def _keep(pen: Pen, draft: _Draft) -> PurchaseOrder:
    new = changed(draft.order, number=next_order_number(pen.connection, pen.desk.at.year))
    add_order(pen.connection, new, draft.approval_of)
    for promise in promises_from_order(new):
        add_promise(pen.connection, promise)
    for job in sorted({line.job for line in new.lines}):
        pen.note(job, f"{new.number} to {new.supplier_name}: {new.landed_total} at the door")
    return new
