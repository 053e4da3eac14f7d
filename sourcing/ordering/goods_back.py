"""Old parts (cores) and goods on their way back to the supplier: what waits, until when, and which step can follow.

Pieces that came damaged, wrong or beyond the order wait to go back at the supplier's cost. All others may go back by
his terms, less what he keeps of their price. Of those that came before a step, the ones at his cost are taken to go
first (common practice, no source).
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from datetime import date, timedelta
from typing import Literal, TypeVar

from ..basics.claim import GoodsBackOpen
from ..basics.money import Money, percent_of
from ..basics.order import GoodsBack, OrderEvent, PurchaseOrder, PurchaseOrderLine, Receipt, ReturnStep
from ..basics.order_now import OrderNow
from ..basics.problem import Refused, refused
from ..basics.terms import Terms
from ..basics.value import Value, changed
from .lots import Lot, core_lots, goods_lots
from .order_now import order_now

Kind = Literal["core", "goods"]
T = TypeVar("T", Receipt, GoodsBack, OrderEvent)

STEP_WORDS: Mapping[ReturnStep, str] = {
    "sent": "sent back",
    "credited": "credited",
    "refused": "refused by the supplier",
    "lost": "given up",
}


class Pile(Value, frozen=True, kw_only=True):
    """Pieces that are alike in who pays for their going back, oldest first: how many were sent, how many of those are
    settled (credited, refused or lost), and how many were given up before they were sent."""

    lots: tuple[Lot, ...] = ()
    sent: int = 0
    settled: int = 0
    given_up: int = 0

    @property
    def unsent(self) -> int:
        """Pieces that were neither sent nor given up."""
        return max(sum(lot.pieces for lot in self.lots) - self.sent - self.given_up, 0)

    @property
    def uncredited(self) -> int:
        """Pieces sent of which nothing was heard."""
        return max(self.sent - self.settled, 0)

    def here_on(self, day: date) -> int:
        """Pieces that had come by that day and were neither sent nor given up."""
        came = sum(lot.pieces for lot in self.lots if lot.since <= day)
        return max(came - self.sent - self.given_up, 0)

    def waiting(self) -> Iterator[Lot]:
        """The pieces not sent, with their share of what was charged."""
        gone = self.sent + self.given_up
        return self._cut(gone, gone + self.unsent)

    def on_the_way(self) -> Iterator[Lot]:
        """The pieces sent and not settled, with their share of what was charged."""
        first = self.given_up + self.settled
        return self._cut(first, first + self.uncredited)

    def _cut(self, first: int, end: int) -> Iterator[Lot]:
        start = 0
        for lot in self.lots:
            here = min(end, start + lot.pieces) - max(first, start)
            start += lot.pieces
            if here > 0:
                share = Money(amount=lot.amount.amount * here / lot.pieces, currency=lot.amount.currency).rounded()
                yield changed(lot, pieces=here, amount=share)


class Standing(Value, frozen=True, kw_only=True):
    """How the old parts or the goods of one line stand. `must_go` wait to be sent; `may_go` are good pieces that can be
    sent back if the shop wants. `sent_on`: the day of the last sending."""

    must_go: Pile
    may_go: Pile
    sent_on: date | None = None


def standing(now: OrderNow, at: int, kind: Kind, came: Sequence[Receipt], steps: Iterable[GoodsBack]) -> Standing:
    """How the old parts or the goods of a line stand. `came` and `steps` are the order's, in the order recorded."""
    lots = tuple(core_lots(now, at, came) if kind == "core" else goods_lots(now, at, came))
    found = Standing(
        must_go=Pile(lots=tuple(lot for lot in lots if lot.at_his_cost)),
        may_go=Pile(lots=tuple(lot for lot in lots if not lot.at_his_cost)),
    )
    for step in steps:
        if (step.line, step.kind) == (at, kind):
            found = _after(found, step)
    return found


def _after(found: Standing, step: GoodsBack) -> Standing:
    """'Lost' ends the waiting of pieces not sent yet, and of sent ones where none of those is left."""
    must, may, day = found.must_go, found.may_go, step.at.date()
    if step.step == "sent":
        first = min(step.pieces, must.here_on(day))
        must, may = changed(must, sent=must.sent + first), changed(may, sent=may.sent + step.pieces - first)
        return Standing(must_go=must, may_go=may, sent_on=day)
    unsent = min(step.pieces, must.here_on(day)) if step.step == "lost" else 0
    first = min(step.pieces - unsent, must.uncredited)
    rest = step.pieces - unsent - first
    must = changed(must, given_up=must.given_up + unsent, settled=must.settled + first)
    return changed(found, must_go=must, may_go=changed(may, settled=may.settled + rest))


def line_without_ground(now: OrderNow, came: Sequence[Receipt], steps: Sequence[GoodsBack]) -> int | None:
    """The line of the first step that these deliveries do not bear: more went back than had come by then. None: all
    steps stand."""
    for at, step in enumerate(steps):
        by_then = [one for one in came if one.at <= step.at]
        try:
            refuse_step(standing(now, step.line, step.kind, by_then, steps[:at]), step)
        except Refused:
            return step.line
    return None


def refuse_step(found: Standing, step: GoodsBack) -> None:
    """Refuse a step that can't follow: more pieces than there are, a credit for what was never sent, an amount that
    belongs to another step."""
    line, order, pieces, words = step.line, step.order, step.pieces, STEP_WORDS[step.step]
    must, may = found.must_go, found.may_go
    if pieces < 1:
        raise refused("pieces-missing", line=line, order=order, found=pieces)
    if step.kind == "core" and not must.lots:
        raise refused("no-old-part", line=line, order=order)
    sent = must.uncredited + may.uncredited
    if step.step == "sent" and pieces > must.unsent + may.unsent:
        left = must.unsent + may.unsent
        raise refused("back-more-than-came", line=line, order=order, found=pieces, step=words, left=left)
    if step.step == "lost" and pieces > must.unsent + sent:
        left = must.unsent + sent
        raise refused("back-more-than-came", line=line, order=order, found=pieces, step=words, left=left)
    if step.step in ("credited", "refused") and pieces > sent:
        raise refused("credit-without-sending", line=line, order=order, found=pieces, step=words, left=sent)
    _refuse_amounts(step)


def _refuse_amounts(step: GoodsBack) -> None:
    """A credit and a fee come with 'credited', freight with 'sent'; a credit note without an amount is none."""
    if step.step == "credited" and step.credit is None:
        raise refused("credit-not-said", line=step.line, order=step.order)
    for name, amount, right in (
        ("credit", step.credit, "credited"),
        ("fee", step.fee, "credited"),
        ("freight", step.freight, "sent"),
    ):
        if amount is not None and step.step != right:
            raise refused("amount-with-wrong-step", found=name, step=STEP_WORDS[step.step])
        if amount is not None and amount.amount < 0:
            raise refused("back-below-zero", found=amount)


def expected_credit(lot: Lot, terms: Terms | None) -> tuple[Money | None, Money | None]:
    """What the supplier should give back for these pieces, and the fee he keeps by his terms (already taken off).

    Both None where his terms do not say what he keeps. Old parts and what goes back at his cost bear no fee.
    """
    if lot.at_his_cost:
        return lot.amount, None
    percent = terms.return_terms.restocking_percent if terms else None
    if percent is None:
        return None, None
    fee = percent_of(lot.amount, percent)
    return lot.amount - fee, fee


def last_day(since: date, kind: Kind, terms: Terms | None) -> date | None:
    """The last day the supplier takes it, counted from the day it came; None: his terms name none."""
    if terms is None:
        return None
    days = terms.core_return.within_days if kind == "core" else terms.return_terms.within_days
    return None if days is None else since + timedelta(days=days)


class NotUsed(Value, frozen=True, kw_only=True):
    """Job and label of the lines that were not done, so that nobody needs their parts; and the day it is."""

    lines: frozenset[tuple[str, str]]
    today: date


def goods_back_open(
    orders: Sequence[PurchaseOrder],
    receipts: Sequence[Receipt],
    steps: Sequence[GoodsBack],
    terms: Mapping[str, Terms],
    events: Sequence[OrderEvent] = (),
    not_used: NotUsed | None = None,
) -> tuple[GoodsBackOpen, ...]:
    """Everything that waits to be sent back, or was sent and waits for credit; the earliest last day first.

    Those without a last day follow, by the day since which they wait. `terms` by supplier; the rest of all orders.
    `not_used`: good pieces for these lines are told as long as the supplier takes them by his terms.
    """
    found: list[GoodsBackOpen] = []
    came, done, since = _by_order(receipts), _by_order(steps), _by_order(events)
    for order in orders:
        own = came.get(order.number, ())
        now = order_now(order, since.get(order.number, ()))
        for line in order.lines if own else ():
            for kind in KINDS:
                here = standing(now, line.line, kind, own, done.get(order.number, ()))
                found += _open_of(order, line, kind, here, terms)
                if not_used and kind == "goods" and (line.job, line.label) in not_used.lines:
                    found += _could(order, line, here, terms.get(order.supplier), not_used.today)
    return tuple(sorted(found, key=lambda one: (one.due is None, one.due or one.since, one.since, one.order, one.line)))


KINDS: tuple[Kind, ...] = ("core", "goods")


def _by_order(some: Iterable[T]) -> dict[str, list[T]]:
    found: dict[str, list[T]] = {}
    for one in some:
        found.setdefault(one.order, []).append(one)
    return found


def _open_of(
    order: PurchaseOrder, line: PurchaseOrderLine, kind: Kind, found: Standing, terms: Mapping[str, Terms]
) -> Iterator[GoodsBackOpen]:
    his = terms.get(order.supplier)
    for lot in found.must_go.waiting():
        yield changed(_open(order, line, kind, lot, his), due=last_day(lot.since, kind, his))
    for pile in (found.must_go, found.may_go):
        for lot in pile.on_the_way():
            since = found.sent_on or lot.since
            yield changed(_open(order, line, kind, lot, his), waits="for credit", since=since)


def _could(
    order: PurchaseOrder, line: PurchaseOrderLine, found: Standing, his: Terms | None, today: date
) -> Iterator[GoodsBackOpen]:
    if his is None or his.return_terms.returnable is False:
        return
    for lot in found.may_go.waiting():
        due = last_day(lot.since, "goods", his)
        if due is not None and due >= today:
            why = f"line {line.label} was not done: it is here, not used, and can go back"
            yield changed(_open(order, line, "goods", lot, his), due=due, why=why, may=True)


def _open(order: PurchaseOrder, line: PurchaseOrderLine, kind: Kind, lot: Lot, terms: Terms | None) -> GoodsBackOpen:
    expected, fee = expected_credit(lot, terms)
    return GoodsBackOpen(
        order=order.number,
        line=line.line,
        job=line.job,
        kind=kind,
        waits="to be sent",
        pieces=lot.pieces,
        supplier=order.supplier,
        supplier_name=order.supplier_name,
        number=lot.number,
        why=lot.why,
        since=lot.since,
        due=None,
        expected=expected,
        fee=fee,
    )
