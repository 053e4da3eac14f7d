"""Each line of an order as bought and as it came: what it cost the job, and what was lost on its way."""

from collections.abc import Iterable

from ..basics.currency import minor_units
from ..basics.margin_facts import Purchase
from ..basics.value import Value, changed
from .came import AsCame, as_came, lines_that_came
from .freight_rise import Rise, rises_of
from .going_back import NOTHING as NO_BACK
from .going_back import Back, back_of
from .minor import part_of
from .ordered import AsOrdered, as_ordered

Book = dict[str, dict[str, list["Bought"]]]
"""What was bought, by job, then by label."""


class Received(Value, frozen=True, kw_only=True, gc=False):
    """A line that has come in full: what its need cost. `before` is the goods at the order's rate, `goods` at the
    papers', both without what lies on the shelf (`surplus`) and without what went back; `sent_back` is what of the
    need's goods went back for credit. `freight` is as charged; `others`, other charges, as the papers state them or
    else as ordered.
    `rise` says what of the freight is more than was ordered with, and why."""

    before: int
    goods: int
    surplus: int
    sent_back: int
    freight: int
    others: int
    rise: Rise

    @property
    def cost(self) -> int:
        """What the line cost once it had come."""
        return self.goods + self.freight + self.others


class Bought(Value, frozen=True, kw_only=True, gc=False):
    """A line of an order. `received` None: it has not all come."""

    number: str
    supplier: str
    ordered: AsOrdered
    came: AsCame
    received: Received | None
    back: Back


def book_of(purchases: Iterable[Purchase], currency: str) -> Book:
    """Everything bought, by job and label. `currency` is the shop's."""
    book: Book = {}
    for purchase in purchases:
        labels = purchase.labels
        for one in bought(purchase, currency):
            line = one.ordered.line
            label = labels.get(line.line, line.label) if labels else line.label
            mine = book.get(line.job)
            if mine is None:
                mine = book[line.job] = {}
            if label in mine:
                mine[label].append(one)
            else:
                mine[label] = [one]
    return book


def bought(purchase: Purchase, currency: str) -> list[Bought]:
    """The lines of an order. Those cancelled before anything came are left out."""
    order, receipts = purchase.order, purchase.receipts
    ordered = as_ordered(purchase, minor_units(currency), lines_that_came(receipts) if receipts else ())
    found = as_came(purchase, ordered, currency) if receipts else {}
    came = [found.get(one.line.line, NOTHING) for one in ordered] if found else [NOTHING] * len(ordered)
    back = [NO_BACK] * len(ordered)
    if purchase.back:
        back = [back_of(purchase, one, mine, currency) for one, mine in zip(ordered, came, strict=True)]
    is_here = [bool(mine.pieces) and one.pieces <= mine.good for one, mine in zip(ordered, came, strict=True)]
    if all(is_here) and any(mine.other is not None for mine in came):  # what no paper states now, none will
        came = [mine if mine.other is not None else changed(mine, other=0) for mine in came]
    rises = rises_of(ordered, came, is_here) if any(is_here) else []
    return [
        Bought(
            number=order.number,
            supplier=order.supplier,
            ordered=one,
            came=came[at],
            received=_received(one, came[at], back[at], rises[at]) if is_here[at] else None,
            back=back[at],
        )
        for at, one in enumerate(ordered)
    ]


NOTHING = AsCame()
"""Of lines of which nothing came."""


def _received(ordered: AsOrdered, came: AsCame, back: Back, rise: Rise) -> Received:
    """What a pack forced lies on the shelf, and so does what the supplier sent beyond the order."""
    full = before = _need(came.goods_before, ordered, came)
    kept = goods = full if came.goods == came.goods_before else _need(came.goods, ordered, came)
    if back.of_need:
        used = min(came.good, ordered.line.needed)
        before -= part_of(before, back.of_need, used)
        goods -= part_of(goods, back.of_need, used)
    others = ordered.charges - ordered.carrier
    return Received(
        before=before,
        goods=goods,
        surplus=came.goods - kept,
        sent_back=full - before,
        freight=came.freight,
        others=others if came.other is None else others - ordered.papers + came.other,
        rise=rise,
    )


def _need(charged: int, ordered: AsOrdered, came: AsCame) -> int:
    """What was charged for the pieces the job uses: the same part of the pieces ordered as in the order's own figures,
    so that a line charged as ordered costs what it was ordered for."""
    pieces, needed, good = ordered.pieces, ordered.line.needed, came.good
    if good == pieces == needed and not ordered.surplus:
        return charged
    for_order = charged - part_of(charged, max(good - pieces, 0), good)
    if ordered.goods:
        return for_order - part_of(for_order, ordered.surplus, ordered.goods)
    return for_order - part_of(for_order, max(pieces - needed, 0), pieces)
