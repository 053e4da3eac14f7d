"""What a job's approved parts cost at the door as things stand now, and what they would cost with one of them bought
elsewhere: orders placed by what was confirmed since, the rest by today's sheets."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from ..basics.choice import Priced
from ..basics.equivalence import GOOD_STANDING
from ..basics.landed_cost import OrderItem
from ..basics.money import Money, total, zero
from ..basics.offer import Offer, PriceBreak, SheetRow
from ..basics.order_now import LineNow, OrderNow
from ..basics.quote import QuoteLine
from ..basics.value import Value, changed
from ..ordering.cost_now import Further, LineCost, costs_now
from ..ordering.order_now import good_pieces, open_pieces, order_now
from .as_quoted import asks_now, item_of, quoted_offer
from .evaluate import Catalogue, evaluate
from .job_now import JobNow, OnOrder
from .plan import land


class Costs(Value, frozen=True, kw_only=True):
    """Landed cost without what goes on the shelf by label, the freight in it, and why something of it is not known."""

    by_label: Mapping[str, Money]
    freight: Money
    missing: tuple[str, ...] = ()

    @property
    def whole(self) -> Money:
        """All of it."""
        return total(self.by_label.values(), self.freight.currency)


@dataclass(frozen=True)
class Wanted:
    """A part of an approved line that stands on no order: the item it would be ordered as, or why it can't be."""

    line: QuoteLine
    item: OrderItem | None
    missing: str


def still_wanted(found: Catalogue, now: JobNow) -> dict[str, Wanted]:
    """By label, what is left to order of each approved line from where it was quoted, as it stands today."""
    return {line.label: _wanted(found, now, line) for line in now.parts if now.left(line)}


def costs(
    found: Catalogue, now: JobNow, items: Mapping[str, OrderItem], dropped: OnOrder | None = None
) -> tuple[Costs, Mapping[tuple[str, int], LineCost]]:
    """The cost of all approved parts: what is on order but for `dropped`, and `items` by label ordered today.

    The second is the cost of each line on order, by the order's number and the line's.
    """
    currency = found.shop.settings.currency
    by_label = {line.label: zero(currency) for line in now.parts}
    freight, by_line = zero(currency), _on_order(found, now, dropped)
    for label, lines in now.on_order.items():
        for one in lines:
            cost = by_line.get((one.order.order.number, one.line.line.line))
            if cost is not None and label in by_label:
                by_label[label] += cost.cost
                freight += cost.freight
    missing: list[str] = []
    for some in _by_supplier(items):
        planned = land(found, [changed(item, need=label) for label, item in some]).landed
        missing += [*planned.open_questions, *([planned.refusal] if planned.refusal else [])]
        freight += planned.freight
        for landed in planned.items:
            by_label[landed.item.need] += landed.landed - landed.surplus_cost
    return Costs(by_label=by_label, freight=freight, missing=tuple(missing)), by_line


def others(found: Catalogue, now: JobNow, line: QuoteLine, pieces: int, mine: tuple[str, str]) -> list[Priced]:
    """Offers of the line's part of good standing, but for the one it was bought or quoted as (`mine`: supplier and his
    number). What is only a candidate, or vetoed, is never among them."""
    job_line = dict(now.job.labelled()).get(line.label)
    whole = job_line is not None and job_line.part == line.part and pieces == line.quantity
    quantity = job_line.quantity if whole and job_line is not None else pieces
    asks = asks_now(found, now.job, line)
    seen = evaluate(found, line.part, quantity, keep_refused=True, asks=asks, look_alikes=False)
    return [
        one
        for one in seen.priced
        if one.standing in GOOD_STANDING and (one.offer.supplier, one.offer.supplier_number) != mine
    ]


def _wanted(found: Catalogue, now: JobNow, line: QuoteLine) -> Wanted:
    offer, missing = quoted_offer(found, line, asks_now(found, now.job, line))
    if offer is None:
        return Wanted(line, None, missing)
    return Wanted(line, item_of(found, offer, line.label, now.left(line)), "")


def _by_supplier(items: Mapping[str, OrderItem]) -> Iterable[list[tuple[str, OrderItem]]]:
    suppliers = sorted({item.offer.supplier for item in items.values()})
    return [[(label, item) for label, item in items.items() if item.offer.supplier == one] for one in suppliers]


def _on_order(found: Catalogue, now: JobNow, dropped: OnOrder | None) -> dict[tuple[str, int], LineCost]:
    result = {}
    seen = {one.order.order.number: one for lines in now.on_order.values() for one in lines}
    for number, one in seen.items():
        gone = () if dropped is None or dropped.order.order.number != number else (dropped.line.line.line,)
        mine = [each for some in now.on_order.values() for each in some if each.order.order.number == number]
        days = {each.line.line.line: each.days[-1].latest for each in mine if each.days}
        for at, cost in costs_now(one.order, _further(found, one, days, gone)).items():
            result[number, at] = cost
    return result


def _further(found: Catalogue, one: OnOrder, days: Mapping[int, date], gone: tuple[int, ...]) -> Further:
    """In how many goes the order comes: deliveries so far, and one for each different day that something waits for."""
    order = one.order
    left = open_pieces(order, good_pieces(one.receipts))
    open_ones = [line for line in order.lines if line.line.line in left and line.line.line not in gone]
    to_come = {days.get(line.line.line, line.latest) for line in open_ones}
    return Further(
        later_each=_later_each(found, order),
        deliveries=len(one.receipts) + len(to_come),
        waiting=tuple(line.line.line for line in open_ones),
        dropped=gone,
        freight_more=_freight_more(found, order, gone) if gone and not one.receipts else None,
    )


def _later_each(found: Catalogue, order: OrderNow) -> Money:
    currency = found.shop.settings.currency
    terms = found.shop.terms.get(order.order.supplier)
    if terms is None or terms.split.sends != "as ready" or not terms.split.later_charge:
        return zero(currency)
    charge = Money(amount=terms.split.later_charge, currency=terms.currency)
    if order.order.rate is not None and order.order.currency == terms.currency:
        return Money(amount=charge.amount * order.order.rate, currency=currency).rounded()
    return found.shop.rates.on(terms.currency, found.at.date()).convert(charge)


def _freight_more(found: Catalogue, order: OrderNow, gone: tuple[int, ...]) -> Money | None:
    """What freight of the rest changes by without these lines, by the terms of now; None where it can't be said.

    Free freight is only lost where the order as it was placed had it: a dearer price confirmed since gives none.
    """
    kept = [line for line in order.lines if line.pieces and line.line.line not in gone]
    if not kept or order.order.supplier not in found.shop.terms or found.shut(order.order.supplier):
        return None
    standing = [one for one in order.lines if one.pieces]
    after, before, placed = (_freight(found, order, some) for some in (kept, standing, order_now(order.order).lines))
    if after is None or before is None or placed is None:
        return None
    if after < before:
        return after - before
    gap = after - max(before, placed)
    return gap if gap.amount > 0 else None


def _freight(found: Catalogue, order: OrderNow, lines: Sequence[LineNow]) -> Money | None:
    landed = land(found, [_as_item(order, line) for line in lines]).landed
    return None if landed.missing else landed.freight


def _as_item(order: OrderNow, now: LineNow) -> OrderItem:
    """The line as something that could be ordered again at the price agreed, its days left out: what the supplier has
    said of them puts off no more than is put off already."""
    line, placed = now.line, order.order
    offer = Offer(
        supplier=placed.supplier,
        supplier_number=line.supplier_number,
        maker_number=line.maker_number,
        currency=placed.currency,
        source=SheetRow(sheet=0, file=placed.number, worksheet="", row=line.line, sheet_date=date.max),
        breaks=(PriceBreak(from_quantity=1, price=now.unit_price),),
        price_basis=line.price_basis,
        stock=now.pieces,
        weight_kg=line.weight_kg,
    )
    return OrderItem(need=str(line.line), offer=offer, needed=now.pieces, ordered=now.pieces)
