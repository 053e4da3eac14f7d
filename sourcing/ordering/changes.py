"""What may happen to an order after it was placed: confirmed by the supplier, changed or cancelled by us.

Nothing here changes an order: each gives what an event says of the lines, or refuses it.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import date
from decimal import Decimal

from ..basics.money import Money, is_amount
from ..basics.order import LineEvent, OrderEvent
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key
from ..basics.problem import refused
from .order_now import order_now


def standing_line(now: OrderNow, at: int) -> LineNow:
    """The line of that number. Refuses one the order does not have, and one that is cancelled."""
    line = now.line(at)
    if line is None:
        known = ", ".join(str(one.line.line) for one in now.lines)
        raise refused("no-such-order-line", line=at, order=now.order.number, known=known)
    if line.cancelled:
        raise refused("line-cancelled", line=at, order=now.order.number)
    return line


def check_confirmed(now: OrderNow, said: Sequence[LineEvent], words: str = "") -> tuple[LineEvent, ...]:
    """What the supplier confirmed, by line number. No lines at all: all of it as ordered.

    Refuses an order of which nothing stands, a line that is cancelled or unknown, one of which nothing is said, a price
    below zero, one of zero without words why, days the wrong way round or before the order.
    """
    if now.cancelled:
        raise refused("order-cancelled", order=now.order.number)
    for one in said:
        standing_line(now, one.line)
        if one.unit_price is None and not one.number and one.earliest is None and one.latest is None:
            raise refused("nothing-confirmed", line=one.line, order=now.order.number)
        if one.unit_price is not None and not is_amount(one.unit_price):
            raise refused("not-an-amount", found=one.unit_price)
        if one.unit_price is not None and one.unit_price < 0:
            raise refused("charged-below-zero", line=one.line, order=now.order.number, found=one.unit_price)
        if one.unit_price == 0 and not words.strip():
            raise refused("confirmed-for-nothing", line=one.line, order=now.order.number)
        _check_days(now, one)
    return tuple(sorted(said, key=lambda one: one.line))


def changed_pieces(
    now: OrderNow,
    pieces: Mapping[int, int],
    approved: Mapping[int, int],
    came: Mapping[int, int],
    prices: Mapping[int, Decimal],
) -> tuple[LineEvent, ...]:
    """What an event says that changes lines to so many pieces. `approved`: the most the customer's yes covers; `came`:
    pieces that have come; `prices`: the price per price basis in that number where it is another than agreed.

    Refuses more than approved, fewer than came, pieces that are no whole packs, nothing at all, and no change.
    """
    if all((line := now.line(at)) is not None and line.pieces == count for at, count in pieces.items()):
        raise refused("order-says-so", order=now.order.number)
    return tuple(
        LineEvent(line=at, pieces=_checked_pieces(now, at, count, approved, came), unit_price=prices.get(at))
        for at, count in sorted(pieces.items())
    )


def cancelled_pieces(now: OrderNow, lines: Sequence[int], came: Mapping[int, int]) -> tuple[LineEvent, ...]:
    """What an event says that cancels what has not come of these lines; no lines named: of all that stand.

    Refuses an unknown line, one cancelled already, one of which all has come, and an order of which nothing stands.
    """
    if now.cancelled:
        raise refused("order-cancelled", order=now.order.number)
    chosen = [standing_line(now, at) for at in sorted(set(lines))] or [one for one in now.lines if one.pieces]
    left = {one.line.line: min(came.get(one.line.line, 0), one.pieces) for one in chosen}
    some = tuple(
        LineEvent(line=one.line.line, pieces=left[one.line.line]) for one in chosen if left[one.line.line] < one.pieces
    )
    kept = [one.line.line for one in chosen if left[one.line.line] >= one.pieces]
    if kept and (lines or not some):
        raise refused("nothing-to-cancel", line=kept[0], order=now.order.number)
    return some


def what_differs(
    before: OrderNow, event: OrderEvent, yes_for: Callable[[int, str], str] = lambda line, number: ""
) -> tuple[str, ...]:
    """What the supplier confirmed otherwise than it was ordered, or than he said before, one sentence each with both
    figures. `yes_for`: by the order's line and a number confirmed instead, what the customer's yes is for; blank: not
    known."""
    ordered = order_now(before.order, [one for one in before.events if one.what != "confirmed"])
    return tuple(
        words
        for said in event.lines
        if (line := before.line(said.line)) and (asked := ordered.line(said.line))
        for words in _differs(before, line, asked, said, yes_for)
    )


def has_confirmed_otherwise(now: OrderNow) -> bool:
    """Whether anything the supplier confirmed so far is otherwise than it was ordered."""
    placed = order_now(now.order, [one for one in now.events if one.what != "confirmed"])
    return any(what_differs(placed, event) for event in now.events if event.what == "confirmed")


def changes_of(now: OrderNow) -> tuple[OrderEvent, ...]:
    """The changes and cancellations of an order, oldest first: the n-th is what its paper calls change n."""
    return tuple(event for event in now.events if event.what != "confirmed")


def _check_days(now: OrderNow, said: LineEvent) -> None:
    if said.earliest and said.latest and said.earliest > said.latest:
        raise refused("days-turned-round", line=said.line, first=said.earliest, last=said.latest)
    placed = now.order.placed_at.date()
    for day in (said.earliest, said.latest):
        if day is not None and day < placed:
            raise refused("day-before-order", line=said.line, day=day, placed=placed)


def _checked_pieces(now: OrderNow, at: int, count: int, approved: Mapping[int, int], came: Mapping[int, int]) -> int:
    line = standing_line(now, at)
    if count < 1:
        raise refused("no-pieces-left", line=at, order=now.order.number, found=count)
    if count > max(approved.get(at, 0), line.pieces):
        raise refused("more-than-approved", line=at, job=line.line.job, found=count, most=approved.get(at, 0))
    if count < came.get(at, 0):
        raise refused("fewer-than-came", line=at, found=count, came=came[at])
    if count % line.line.pack and count != came.get(at, 0):
        raise refused("not-whole-packs", line=at, found=count, pack=line.line.pack)
    return count


def _differs(
    before: OrderNow, line: LineNow, asked: LineNow, said: LineEvent, yes_for: Callable[[int, str], str]
) -> Iterator[str]:
    """`line` as it stood by his word so far, `asked` as we ordered it."""
    what = f"{before.order.number} line {said.line}, {line.line.supplier_number}"
    if said.unit_price is not None and {line.unit_price, asked.unit_price} != {said.unit_price}:
        yield f"{what}: {_price_words(before, line, asked, said.unit_price)}"
    if said.number:
        yield from (f"{what}: {words}" for words in _number_words(line, asked, said.number, yes_for))
    latest = said.latest or said.earliest
    if latest is not None:
        yield from _late_words(before, line, latest, what)


def _number_words(line: LineNow, asked: LineNow, number: str, yes_for: Callable[[int, str], str]) -> Iterator[str]:
    keys = number_key(number), number_key(asked.number), number_key(line.number)
    earlier = "" if keys[1] == keys[2] or keys[0] == keys[2] else f"; before he had said {line.number}"
    if keys[0] != keys[1]:
        yes = yes_for(line.line.line, number)
        yield f"{number} is confirmed instead of {asked.number}{yes and f'; {yes}'}{earlier}"
    elif earlier:
        yield f"{number} is confirmed, as ordered{earlier}"


def _price_words(before: OrderNow, line: LineNow, asked: LineNow, price: Decimal) -> str:
    gap = price - asked.unit_price
    said = "" if line.unit_price in (asked.unit_price, price) else f"; before he had said {line.unit_price}"
    basis = "each" if line.line.price_basis == 1 else f"per {line.line.price_basis}"
    if not gap:
        return f"{price} {before.order.currency} {basis} is confirmed, as ordered{said}"
    percent = f", {abs(gap) / asked.unit_price * 100:.2f} %" if asked.unit_price else ""
    whole = Money(amount=gap * line.pieces / Decimal(line.line.price_basis), currency=before.order.currency).rounded()
    more = "more" if gap > 0 else "less"
    return (
        f"{price} {before.order.currency} {basis} is confirmed, {asked.unit_price} was ordered: "
        f"{abs(gap)} {more}{percent}; {abs(whole.amount)} {whole.currency} {more} for {line.pieces}{said}"
    )


def _late_words(before: OrderNow, line: LineNow, latest: date, what: str) -> Iterator[str]:
    last, need_by = line.latest, before.order.need_by
    if last is not None and latest > last:
        moved = len(line.days)
        times = f", the day has moved {moved} time{'s' if moved > 1 else ''}"
        yield f"{what}: here {latest} at the latest, {last} was said before{times}"
    if need_by is not None and latest > need_by:
        yield f"{what}: here {latest} at the latest, needed by {need_by}"
