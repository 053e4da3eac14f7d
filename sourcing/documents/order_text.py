"""Purchase orders as plain text: one to send in a message, and for the shop what was ordered, why, and what is open."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import pairwise

from ..basics.order import LineEvent, OrderEvent, PurchaseOrder, PurchaseOrderLine
from ..basics.order_now import LineNow, OrderNow
from .order_paper import price_words
from .plain_text import count, document, table, wrapped


def order_message(order: PurchaseOrder) -> str:
    """The order for the supplier as text, fit for a message: nothing of the shop's own on it."""
    need_by = f"needed by {order.need_by}" if order.need_by else "as soon as your terms allow"
    lines = [f"Purchase order {order.number} of {order.shop_name}, {order.placed_at.date()}, {need_by}."]
    for line in order.lines:
        lines += wrapped(f"{line.line}. {_asked(line)}, {_price(line, order.currency)}, together {line.goods}")
    lines += wrapped(
        f"Goods {order.goods_total}; freight by your terms. Please send no other number and no higher price."
    )
    if order.supplier_note:
        lines += wrapped(order.supplier_note)
    reach = (order.shop_name, *order.ship_to, order.shop_telephone, order.shop_email)
    lines += wrapped(f"Ship to: {', '.join(part for part in reach if part)}")
    return document(lines)


def looked_text(
    some: Sequence[PurchaseOrder], held: Iterable[str], warnings: Iterable[str], otherwise: Iterable[str] = ()
) -> str:
    """What would be ordered now, from whom, at what cost and by when, what is held, and what buying it otherwise would
    cost. Nothing is placed."""
    lines = ["Nothing is ordered yet. This would be ordered:" if some else "Nothing can be ordered."]
    for order in some:
        lines += ["", *_own_view(order)]
    return document([*lines, *_asides(held, [*otherwise, *warnings])])


def placed_text(some: Sequence[tuple[PurchaseOrder, str]], held: Iterable[str], warnings: Iterable[str]) -> str:
    """Orders placed, each with where its paper is; the lines held; what is doubtful."""
    lines = []
    for order, path in some:
        items = ", ".join(f"{line.ordered} x {line.supplier_number}" for line in order.lines)
        goods = f"goods {order.goods_total}{_here(order)}"
        lines.append(f"{order.number} to {order.supplier_name}: {items}; {goods}. The paper is in {path}.")
        lines += [f"  {words}" for words in order.reasons]
    return document([*lines, *_asides(held, warnings)])


def orders_text(some: Sequence[tuple[OrderNow, Mapping[int, int]]]) -> str:
    """Every order on one line with what is still to come, and by when."""
    if not some:
        return "No order has been placed.\n"
    head = ("order", "placed", "supplier", "lines", "goods", "still to come", "here by")
    rows = [head, *(_listed(now, left) for now, left in some)]
    return document(table(rows, (14, 10, 26, 5, 14, 32, 26)))


def order_now_text(now: OrderNow, left: Mapping[int, int]) -> str:
    """One order as it stands: each line with what was confirmed, what is open, and every day ever said."""
    order = now.order
    lines = [f"{order.number} to {order.supplier_name}, placed {order.placed_at:%Y-%m-%d %H:%M} by {order.placed_by}"]
    lines += [f"  {words}" for words in order.reasons]
    for one in now.lines:
        lines += wrapped(_line_now(one, order.currency, left), 2)
        lines += [f"    {words}" for words in one.line.reasons]
    lines += [f"Goods now {now.goods_total}" + ("" if now.confirmed else "; the supplier has not confirmed it yet")]
    lines += [words for event in now.events for words in wrapped(event_words(now, event))]
    return document(lines)


def confirmed_text(now: OrderNow, differs: Sequence[str], alarms: Sequence[str]) -> str:
    """That the supplier's word is kept, what of it is not as it stood, and where the yes does not cover it."""
    lines = [f"{now.order.number}: kept what {now.order.supplier_name} confirmed."]
    lines += [words for one in differs for words in wrapped(f"Look at this: {one}.")]
    lines += [words for one in alarms for words in wrapped(f"Not as approved: {one}.")]
    if alarms:
        jobs = dict.fromkeys(f"'sourcing alarms {line.line.job}'" for line in now.lines)
        lines.append(f"What can be done about it: {', '.join(jobs)}.")
    else:
        lines.append("The customer's yes still covers it." if differs else "All of it is as ordered.")
    return document(lines)


def since_words(now: OrderNow) -> str:
    """That an order printed again as it was placed is no longer what holds; blank where nothing was changed."""
    later = [event for event in now.events if event.what != "confirmed"]
    if not later:
        return ""
    what = "it was cancelled" if now.cancelled else "it was changed"
    return f"Look at this: this is the order as it was placed; {what} on {later[-1].at.date()}, see --change.\n"


def altered_text(title: str, now: OrderNow, notes: Sequence[str], path: str) -> str:
    """A change or cancellation: what stands now, what it brings with it, where the paper for the supplier is."""
    stands = ", ".join(f"{one.pieces} x {one.line.supplier_number}" for one in now.lines if one.pieces)
    what = f"{stands}; goods {now.goods_total}" if stands else "nothing of it stands"
    lines = wrapped(
        f"{title} {now.order.number}: {what}. The paper is in {path}; send it to {now.order.supplier_name}."
    )
    return document([*lines, *(words for one in notes for words in wrapped(f"Note: {one}."))])


def _own_view(order: PurchaseOrder) -> Iterator[str]:
    yield f"{order.supplier_name}: {order.landed_total} at the door, goods {order.goods_total}{_here(order)}"
    for line in order.lines:
        yield from wrapped(f"{_asked(line)} for job {line.job} line {line.label}, {line.landed} at the door", 2)
        for words in line.reasons:
            yield from wrapped(words, 4)
    for charge in order.charges:
        yield f"  {charge.name}: {charge.amount} ({charge.rule})"
    for words in order.reasons:
        yield from wrapped(words, 2)


def _asides(held: Iterable[str], warnings: Iterable[str]) -> Iterator[str]:
    yield from (f"Look at this: {words.rstrip('.')}." for words in warnings)
    yield from (f"Held back: {words}" for words in held)


def _asked(line: PurchaseOrderLine) -> str:
    packs = (
        f" ({line.ordered // line.pack} x pack of {line.pack})"
        if line.pack > 1 and not line.ordered % line.pack
        else ""
    )
    maker = f" ({line.maker_number})" if line.maker_number not in ("", line.supplier_number) else ""
    words = f" {line.description}" if line.description else ""
    return f"{line.ordered} x {line.supplier_number}{maker}{words}{packs}"


def _price(line: PurchaseOrderLine, currency: str) -> str:
    core = line.core_charge
    more = f", core charge {core}" if core is not None and core.amount else ""
    return price_words(line.unit_price, currency, line.price_basis) + more


def _here(order: PurchaseOrder) -> str:
    days = " to ".join(dict.fromkeys(map(str, order.expected or ())))
    return f", here {days}" if days else ""


def _listed(now: OrderNow, left: Mapping[int, int]) -> tuple[str, ...]:
    order = now.order
    open_ones = ", ".join(f"{left[one.line.line]} x {one.number}" for one in now.lines if one.line.line in left)
    latest = [one.latest for one in now.lines if one.line.line in left and one.latest]
    standing = sum(1 for one in now.lines if one.pieces)
    complete = "cancelled" if now.cancelled else "all came"
    return (
        order.number,
        f"{order.placed_at:%Y-%m-%d}",
        order.supplier_name,
        str(standing),
        str(now.goods_total),
        open_ones or complete,
        f"{max(latest)}{_moved(now, left)}" if latest else "",
    )


def _moved(now: OrderNow, left: Mapping[int, int]) -> str:
    """How often a day of what is still to come has moved."""
    days = [[day.latest for day in one.days] for one in now.lines if one.line.line in left]
    most = max((sum(1 for one, other in pairwise(some) if one != other) for some in days), default=0)
    return f", moved {count(most, 'time')}" if most else ""


def event_words(now: OrderNow, event: OrderEvent) -> str:
    """What happened, when, by whom, and what was said of each line."""
    parts = [_said_words(now, said) for said in event.lines]
    what = f"{event.at:%Y-%m-%d %H:%M}  {event.what} by {_by(now, event)}"
    said = "; ".join(part for part in (*parts, event.words) if part)
    return f"{what}: {said}" if said else what


def _by(now: OrderNow, event: OrderEvent) -> str:
    if event.what != "confirmed":
        return event.who
    return f"{event.said_by or now.order.supplier_name}, taken down by {event.who}"


def _said_words(now: OrderNow, said: LineEvent) -> str:
    line = now.line(said.line)
    days = (said.earliest, said.latest)
    parts = (
        count(said.pieces, "piece") if said.pieces else "cancelled" if said.pieces == 0 else "",
        price_words(said.unit_price, now.order.currency, line.line.price_basis if line else 1)
        if said.unit_price is not None
        else "",
        said.number,
        f"here {' to '.join(dict.fromkeys(str(day) for day in days if day))}" if any(days) else "",
    )
    return f"line {said.line} {', '.join(part for part in parts if part)}"


def _line_now(one: LineNow, currency: str, left: Mapping[int, int]) -> str:
    line = one.line
    if one.cancelled:
        return f"{line.line}. {line.supplier_number}: cancelled; {line.ordered} ordered at first"
    words = f"{line.line}. {one.pieces} x {one.number} for job {line.job} line {line.label}"
    words += f", {price_words(one.unit_price, currency, line.price_basis)}"
    words += f", {left[line.line]} still to come" if line.line in left else ", all came"
    days = "; ".join(f"{day.latest} said {day.at:%Y-%m-%d} by {day.said_by or 'our reckoning'}" for day in one.days)
    return f"{words}; here by: {days}" if days else words
