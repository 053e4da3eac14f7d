"""What happens to an order after it was placed: the supplier confirms it, we change or cancel it. All of it is kept."""

from collections.abc import Iterator, Mapping, Sequence

from sqlalchemy import Connection

from ..basics.order import EventKind, LineEvent, OrderEvent, Receipt
from ..basics.order_now import LineNow, OrderNow
from ..basics.problem import Refused, refused
from ..basics.value import Value, changed
from ..ordering.changes import (
    cancelled_pieces,
    changed_pieces,
    changes_of,
    check_confirmed,
    has_confirmed_otherwise,
    standing_line,
)
from ..ordering.order_now import good_pieces, order_now, pieces_standing
from ..ordering.promised import promises_from_event
from ..storage.after_order import add_event, add_promise, events, let_go
from ..storage.after_quote import bill_of
from ..storage.orders import order, receipts
from .alarms import alarms_of
from .answers import standing_of
from .confirmed_number import confirmed_otherwise
from .desk import Desk, Pen
from .evaluate import catalogue
from .order_charges import charges_lost, prices_for
from .order_lines import job_orders_now


class Confirmation(Value, frozen=True, kw_only=True):
    """What the supplier confirmed. `lines` say price, number or days line by line; a line not named is confirmed as it
    stands. `said_by` is who at the supplier's said it (blank: the supplier), `words` what was said."""

    lines: tuple[LineEvent, ...] = ()
    said_by: str = ""
    words: str = ""


class Confirmed(Value, frozen=True, kw_only=True):
    """The order as it stands after the supplier's word, and what he confirmed otherwise than it stood. `alarms`: where
    a customer's yes no longer covers it; each is to be looked at. `as_ordered`: nothing he ever said is otherwise."""

    now: OrderNow
    event: OrderEvent
    differs: tuple[str, ...]
    alarms: tuple[str, ...] = ()
    as_ordered: bool = True


class Altered(Value, frozen=True, kw_only=True):
    """The order after a change or cancellation, which change it is, counted from 1, and what it brings with it."""

    now: OrderNow
    event: OrderEvent
    change: int
    notes: tuple[str, ...] = ()


def confirm(desk: Desk, number: str, said: Confirmation) -> Confirmed:
    """Keep what the supplier confirmed, and the days he named as promises beside those that were there before."""
    with desk.writing("confirm order") as pen:
        before = now_of(pen.connection, number)
        event = changed(
            _made(desk, number, "confirmed", check_confirmed(before, said.lines, said.words), said.words),
            said_by=said.said_by,
        )
        differs = confirmed_otherwise(pen.connection, before, event)
        add_event(pen.connection, event)
        for promise in promises_from_event(before.order, event):
            add_promise(pen.connection, promise)
        who = said.said_by or before.order.supplier_name
        as_ordered = not differs and not has_confirmed_otherwise(before)
        what = f": {'; '.join(differs)}" if differs else " as ordered" if as_ordered else " as he said before"
        _note(pen, before, event, f"{who} confirmed {number}{what}")
        now = now_of(pen.connection, number)
        return Confirmed(now=now, event=event, differs=differs, alarms=_alarms(pen, now), as_ordered=as_ordered)


def change_order(desk: Desk, number: str, pieces: Mapping[int, int], words: str = "") -> Altered:
    """Change lines to so many pieces: no more than the customer's yes covers, no fewer than have come, whole packs.

    The price of the new number is that of the sheet where the one agreed was the sheet's; else what was agreed stays
    and is to be asked.
    """
    with desk.writing("change order") as pen:
        return change_on(pen, number, pieces, words)


def change_on(pen: Pen, number: str, pieces: Mapping[int, int], words: str = "") -> Altered:
    """The same within a deed that is open already."""
    before = now_of(pen.connection, number)
    lines = {at: standing_line(before, at) for at in pieces}
    _refuse_billed(pen.connection, lines, pieces)
    came = good_pieces(receipts(pen.connection, number))
    approved = {at: _approved(pen.connection, number, one) for at, one in lines.items()}
    prices, asked = prices_for(pen.connection, pen.desk.at, before, pieces)
    said = changed_pieces(before, pieces, approved, came, prices)
    notes = [*asked, *_needed(lines, pieces)]
    return _keep(pen, before, _made(pen.desk, number, "changed", said, words), notes)


def cancel(desk: Desk, number: str, lines: Sequence[int] = (), words: str = "") -> Altered:
    """Cancel what has not come of these lines, or of the whole order. A line of which nothing came lets go of the
    customer's yes: it can be ordered anew, elsewhere too, or taken back."""
    with desk.writing("cancel order") as pen:
        return cancel_on(pen, number, lines, words)


def cancel_on(pen: Pen, number: str, lines: Sequence[int] = (), words: str = "") -> Altered:
    """The same within a deed that is open already, so that both are kept or neither."""
    before = now_of(pen.connection, number)
    came = receipts(pen.connection, number)
    said = cancelled_pieces(before, lines, good_pieces(came))
    free = [one.line for one in said if not one.pieces and not _anything_came(came, one.line)]
    let_go(pen.connection, number, free)
    gone = {one.line for one in said}
    waits = [_waits(one) for one in before.lines if one.line.line in gone]
    return _keep(pen, before, _made(pen.desk, number, "cancelled", said, words), waits)


def order_at_change(desk: Desk, number: str, change: int) -> Altered:
    """The order as it stood after its n-th change, counted from 1, so that the paper can be printed again."""
    with desk.store.reading() as connection:
        placed, happened = order(connection, number), events(connection, number)
        changes = changes_of(order_now(placed, happened))
        if not 1 <= change <= len(changes):
            known = ", ".join(map(str, range(1, len(changes) + 1))) or "none was made"
            raise refused("no-change-of-order", order=number, found=change, known=known)
        last = [at for at, one in enumerate(happened) if one.what != "confirmed"][change - 1]
        now = order_now(placed, happened[: last + 1])
        return Altered(now=now, event=happened[last], change=change)


def now_of(connection: Connection, number: str) -> OrderNow:
    """One order as it stands now, on an open connection. Refuses an unknown number."""
    return order_now(order(connection, number), events(connection, number))


def _made(desk: Desk, number: str, what: EventKind, lines: tuple[LineEvent, ...], words: str) -> OrderEvent:
    return OrderEvent(order=number, what=what, at=desk.at, who=desk.who, words=words, lines=lines)


def _alarms(pen: Pen, now: OrderNow) -> tuple[str, ...]:
    """What is not as the customers of the order approved; said to be unknown where it can't be worked out."""
    jobs = sorted({line.job for line in now.order.lines})
    try:
        found = catalogue(pen.connection, pen.desk.at)
        some = [alarm for job in jobs for alarm in alarms_of(found, job) if alarm.order == now.order.number]
    except Refused as refusal:
        return (f"whether the customers' yes covers it can't be told: {refusal.problems[0].what}",)
    return tuple(
        f"job {alarm.job} line {alarm.label}: {'; '.join(one.words for one in alarm.differs)}" for alarm in some
    )


def _keep(pen: Pen, before: OrderNow, event: OrderEvent, notes: Sequence[str]) -> Altered:
    add_event(pen.connection, event)
    after = now_of(pen.connection, event.order)
    lost = charges_lost(pen.connection, pen.desk.at, before, after)
    _note(pen, before, event, _alteration_words(before, event))
    return Altered(now=after, event=event, change=len(changes_of(after)), notes=(*notes, *lost))


def _alteration_words(before: OrderNow, event: OrderEvent) -> str:
    parts = []
    for said in event.lines:
        line = before.line(said.line)
        was = line.pieces if line else 0
        number = line.line.supplier_number if line else ""
        parts.append(f"line {said.line} ({number}) {said.pieces} pieces instead of {was}")
    words = f" ({event.words})" if event.words else ""
    return f"{event.what} {event.order}: {', '.join(parts)}{words}"


def _note(pen: Pen, now: OrderNow, event: OrderEvent, words: str) -> None:
    """A deed for each job the event is about; for every job of the order where it names no line."""
    named = {said.line for said in event.lines}
    for job in sorted({line.job for line in now.order.lines if not named or line.line in named}):
        pen.note(job, words)


def _approved(connection: Connection, number: str, line: LineNow) -> int:
    """The most pieces of the line that the customer's yes covers here: approved less what stands on other orders, in
    whole packs; as many as were ordered at first where no other order has any of it."""
    placed = line.line
    standing = standing_of(connection, placed.job)
    now = standing.quote.line(placed.label)
    same = now is not None and now.part == placed.part and standing.words().get(placed.label) == "approved"
    approved = now.quantity if now is not None and same else placed.needed
    others = [one for one in job_orders_now(connection, placed.job) if one.order.number != number]
    elsewhere = pieces_standing(others).get((placed.job, placed.label, placed.part), 0)
    packs = -(-max(approved - elsewhere, 0) // placed.pack) * placed.pack
    return packs if elsewhere else max(packs, placed.ordered)


def _refuse_billed(connection: Connection, lines: Mapping[int, LineNow], pieces: Mapping[int, int]) -> None:
    """More pieces for a billed job could never be billed; fewer are fine."""
    for at, line in lines.items():
        if pieces[at] > line.pieces and bill_of(connection, line.line.job) is not None:
            raise refused("billed-no-order", job=line.line.job)


def _needed(lines: Mapping[int, LineNow], pieces: Mapping[int, int]) -> Iterator[str]:
    for at, line in lines.items():
        placed = line.line
        if pieces[at] < placed.needed:
            yield (
                f"job {placed.job} needs {placed.needed} for line {placed.label}, {pieces[at]} stand on this order; "
                f"'sourcing order {placed.job}' orders the rest"
            )


def _waits(line: LineNow) -> str:
    placed = line.line
    return (
        f"job {placed.job} line {placed.label} ({placed.supplier_number}) is approved and waits again: "
        f"order it anew with 'sourcing order {placed.job}', or ask the customer"
    )


def _anything_came(came: Sequence[Receipt], at: int) -> bool:
    return any(line.quantity for receipt in came for line in receipt.lines if line.line == at)
