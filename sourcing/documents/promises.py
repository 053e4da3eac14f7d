"""What is promised and still open, oldest first: as text and as a workbook."""

from collections.abc import Iterator, Sequence

from ..basics.promise import OpenPromise, Promise
from ..basics.value import changed
from .csv_text import Cell
from .plain_text import document, table, wrapped
from .workbook import Table, workbook_bytes

HEADER = ("due", "waits for", "who", "what", "job", "order")
MOST = (24, 13, 20, 34, 10, 14)
BOOK_HEADER = ("due", "days over", "waits for", "who", "what", "job", "order", "line", "amount", "currency", "moved")
SAID_HEADER = ("job", "order", "line", "waits for", "first day", "last day", "said by", "said at", "taken by", "words")


def promises_text(found: Sequence[OpenPromise]) -> str:
    """A table, oldest day first; under it the days that were moved, with every word that was said."""
    if not found:
        return "Nothing is promised or waited for.\n"
    lines = table([HEADER, *(_row(one) for one in found)], MOST)
    moved = [line for one in found if one.moved for line in _moved(one)]
    return document([*lines, *(["", "Moved:"] if moved else []), *moved])


def promise_text(one: Promise) -> str:
    """What was kept."""
    words = f" ({one.words})" if one.words else ""
    return document(wrapped(f"Kept for job {one.job}: {one.said_by} promised {one.kind} {days_text(one)}{words}."))


def promises_xlsx(found: Sequence[OpenPromise]) -> bytes:
    """The open list, and on a second worksheet every word said of it."""
    rows = tuple(_book_row(one) for one in found)
    said = tuple(_said_row(each, one) for one in found for each in one.history)
    return workbook_bytes(
        [Table(title="Open", headers=BOOK_HEADER, rows=rows), Table(title="Said", headers=SAID_HEADER, rows=said)]
    )


def days_text(one: Promise) -> str:
    """'2026-03-04' or '2026-03-04 to 2026-03-06'."""
    return f"{one.latest}" if one.earliest == one.latest else f"{one.earliest} to {one.latest}"


def promises_once(said: Sequence[Promise]) -> tuple[tuple[Promise, str], ...]:
    """What was said of several lines of an order in one breath once, with the lines ('1, 2'; '' where all goods)."""
    lines: dict[Promise, list[int]] = {}
    for one in said:
        lines.setdefault(changed(one, line=None), []).extend([one.line] if one.line is not None else [])
    return tuple((one, ", ".join(map(str, sorted(named)))) for one, named in lines.items())


def _row(one: OpenPromise) -> tuple[str, ...]:
    due = str(one.due) if one.due else "no day"
    over = f", {one.days_over} {'day' if one.days_over == 1 else 'days'} over" if one.days_over else ""
    amount = f", {one.amount}" if one.amount is not None else ""
    order = f"{one.order}/{one.line}" if one.order and one.line is not None else one.order
    return f"{due}{over}", one.kind, one.who, f"{one.what}{amount}", one.job, order


def _moved(one: OpenPromise) -> Iterator[str]:
    times = {1: "once", 2: "twice"}.get(one.moved, f"{one.moved} times")
    yield from wrapped(f"{one.what}, job {one.job}: moved {times}", 2)
    for said in one.history:
        words = f": {said.words}" if said.words else ""
        yield from wrapped(f"{days_text(said)} said {said.said_by} on {said.said_at:%Y-%m-%d %H:%M}{words}", 4)


def _book_row(one: OpenPromise) -> tuple[Cell, ...]:
    amount, currency = (one.amount.amount, one.amount.currency) if one.amount else (None, "")
    return (
        one.due,
        one.days_over,
        one.kind,
        one.who,
        one.what,
        one.job,
        one.order,
        one.line,
        amount,
        currency,
        one.moved,
    )


def _said_row(said: Promise, one: OpenPromise) -> tuple[Cell, ...]:
    at = f"{said.said_at:%Y-%m-%d %H:%M}"
    place = (said.job, said.order or one.order, said.line)
    return *place, said.kind, said.earliest, said.latest, said.said_by, at, said.taken_by, said.words
