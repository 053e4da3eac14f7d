"""Old parts and goods that should go back or be credited, for the owner's page; `ordering.goods_back` has the rule."""

from collections.abc import Collection, Iterable, Sequence
from datetime import date

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.margin import WaitingBack
from ..basics.margin_facts import Purchase
from ..basics.order import ReceiptLine
from ..ordering.goods_back import goods_back_open
from ..storage.after_order import events, goods_back
from ..storage.orders import order, receipts
from ..storage.shop import terms_on
from .goods_back import not_used

WHAT = {"core": "old part", "goods": "goods"}


def waiting_back(connection: Connection, purchases: Sequence[Purchase], day: date) -> tuple[WaitingBack, ...]:
    """What waits, the earliest last day first. Whole orders are read only where something can wait."""
    terms = terms_on(connection, day)
    found: list[GoodsBackOpen] = []
    unused = not_used(connection, day)
    jobs = {job for job, _ in unused.lines}
    for number in sorted(one.order.number for one in purchases if _can_wait(one) or _is_of(one, jobs)):
        some = [order(connection, number)]
        came, steps, happened = receipts(connection, number), goods_back(connection, number), events(connection, number)
        found += goods_back_open(some, came, steps, terms, happened, unused)
    return tuple(_told(one, day) for one in sorted(found, key=_first_due))


def _is_of(one: Purchase, jobs: Collection[str]) -> bool:
    return bool(one.receipts) and any(line.job in jobs for line in one.order.lines)


def _can_wait(one: Purchase) -> bool:
    """Something came, and it has a core charge, is no good, is more than ordered, or went back already."""
    if not one.receipts:
        return False
    pieces: dict[int, int] = {}
    for line in _lines(one):
        pieces[line.line] = pieces.get(line.line, 0) + line.quantity
        if line.good != line.quantity or line.core_charge is not None or line.charged_pieces != line.quantity:
            return True
    lines = one.order.lines
    more = any(pieces.get(line.line, 0) > one.pieces.get(line.line, line.ordered) for line in lines)
    return bool(one.back) or more or any(line.core_charge is not None for line in lines)


def _lines(one: Purchase) -> Iterable[ReceiptLine]:
    return (line for receipt in one.receipts for line in receipt.lines)


def _first_due(one: GoodsBackOpen) -> tuple[bool, date, str, int]:
    return one.due is None, one.due or one.since, one.order, one.line


def _told(one: GoodsBackOpen, day: date) -> WaitingBack:
    expected = "what he gives back is not known" if one.expected is None else f"{one.expected} expected"
    piece = f"{WHAT[one.kind]}, {one.pieces} x {one.number} of {one.supplier_name}"
    what = f"{piece}, waits {one.waits}: {one.why}; {expected}"
    return WaitingBack(
        order=one.order, job=one.job, what=what, by=one.due, is_late=one.due is not None and one.due < day
    )
