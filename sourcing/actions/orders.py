"""Place purchase orders for approved lines of one or many jobs: what was quoted, from whom it was quoted, no more.

A line whose price rose above what was approved, or whose offer is gone, is held for a new answer; one whose evidence
contradicts itself or the line is held until a person settles it; the rest is ordered.
"""

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping, Sequence

from ..basics.choice import Asks
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.order import PurchaseOrder
from ..basics.problem import Problem, Refused, problem, refused
from ..basics.quote import QuoteLine
from ..basics.value import Value
from ..landed_cost.order import line_cost
from ..landed_cost.quantity import sensible_quantities
from ..ordering.purchase import Placing, Wanted, not_yet_ordered, purchase_order
from ..quoting.hold import why_held
from ..quoting.pricing import offer_price
from ..storage.jobs import job as stored_job
from ..storage.orders import add_order, next_order_number, order, orders
from .answers import Standing, standing_of
from .desk import Desk, Pen
from .evaluate import Catalogue, catalogue, judged_offers
from .needs import asks_of
from .plan import land
from .sorted_offers import why_not


class OrdersPlaced(Value, frozen=True, kw_only=True):
    """The orders, the lines held back with the reason for each, and what is doubtful about the lines ordered."""

    orders: tuple[PurchaseOrder, ...]
    held: tuple[str, ...]
    warnings: tuple[str, ...] = ()


class _Line(Value, frozen=True, kw_only=True):
    wanted: Wanted
    line: QuoteLine
    asks: Asks = Asks()


def place_orders(desk: Desk, numbers: Sequence[str], only: Sequence[str] = ()) -> OrdersPlaced:
    """One order for each supplier. `only` names lines of a single job; each of them must be approved.

    Refuses where nothing is approved, where a named line is not, where the supplier takes no such order, and where
    every line is held.
    """
    with desk.writing("order") as pen:
        found = catalogue(pen.connection, desk.at)
        standings = {number: standing_of(pen.connection, number) for number in dict.fromkeys(numbers)}
        lines = _approved(pen, found, standings, only)
        items, held = _items(found, lines)
        if not items:
            raise Refused(*held)
        placed = _place(pen, found, lines, items, standings)
        words = tuple(one.sentence() for one in held)
        return OrdersPlaced(orders=placed, held=words, warnings=tuple(_doubts(lines, items)))


def _doubts(lines: Mapping[str, _Line], ordered: Iterable[str]) -> Iterator[str]:
    """What is doubtful about which part the ordered lines need: it stands on plan and quote too."""
    for need in ordered:
        wanted = lines[need].wanted
        yield from (f"{wanted.job} line {wanted.label}: {words}" for words in lines[need].asks.warnings)


def all_orders(desk: Desk, job: str | None) -> tuple[PurchaseOrder, ...]:
    """Every order, or those with a line of the job."""
    with desk.store.reading() as connection:
        return tuple(orders(connection, job))


def one_order(desk: Desk, number: str) -> PurchaseOrder:
    """One order by its number."""
    with desk.store.reading() as connection:
        return order(connection, number)


def _approved(pen: Pen, found: Catalogue, standings: Mapping[str, Standing], only: Sequence[str]) -> dict[str, _Line]:
    """Approved lines with a part that stand on no order yet, by need."""
    lines: dict[str, _Line] = {}
    for number, standing in standings.items():
        words = standing.words()
        for label in only:
            if words.get(label) != "approved":
                raise refused("not-approved", job=number, label=label, answer=words.get(label, "not on the quote"))
        for line in standing.quote.lines:
            if line.part and words[line.label] == "approved" and (not only or line.label in only):
                revision = standing.quote.revision
                wanted = Wanted(job=number, revision=revision, label=line.label, part=line.part)
                lines[wanted.need] = _Line(wanted=wanted, line=line, asks=_asks(pen, found, wanted))
    open_ones = not_yet_ordered([one.wanted for one in lines.values()], orders(pen.connection))
    if not open_ones:
        raise refused("nothing-approved", job=", ".join(standings))
    return {one.need: lines[one.need] for one in open_ones}


def _asks(pen: Pen, found: Catalogue, wanted: Wanted) -> Asks:
    """What the job's line asks now; only what our part asks where the line is gone or asks for another part."""
    job = stored_job(pen.connection, wanted.job)
    line = dict(job.labelled()).get(wanted.label)
    return asks_of(found, job, line) if line and line.part == wanted.part else Asks()


def _items(found: Catalogue, lines: Mapping[str, _Line]) -> tuple[dict[str, OrderItem], list[Problem]]:
    items: dict[str, OrderItem] = {}
    held: list[Problem] = []
    for need, one in lines.items():
        if one.asks.contradicted:
            held.append(_held("identity-contradicted", one, one.asks.contradicted))
            continue
        offer, missing = _quoted_offer(found, one)
        item = _item(need, offer, one.line, found) if offer else None
        why = why_held(one.line, _price_now(found, item) if item else None, missing)
        if why or item is None:
            held.append(_held("approval-no-longer-covers", one, why))
        else:
            items[need] = item
    return items, held


def _held(code: str, one: _Line, why: str) -> Problem:
    return problem(code, job=one.wanted.job, label=one.wanted.label, found=why)


def _quoted_offer(found: Catalogue, one: _Line) -> tuple[Offer | None, str]:
    """The offer the line was quoted on as it stands on the supplier's newest sheet, or why it is not there."""
    behind = one.line.behind
    if behind is None:
        return None, "the quote names no offer"
    for judged in judged_offers(found, one.line.part, one.asks, one.line.quantity):
        offer, standing = judged.offer, judged.verdict
        if (offer.supplier, offer.supplier_number) == (behind.supplier, behind.supplier_number):
            why = why_not(found, offer) if standing.stands else "; ".join(standing.objections)
            return (None, why) if why else (offer, "")
    return None, f"{behind.supplier_number} is not on the newest sheet of {found.supplier_name(behind.supplier)}"


def _item(need: str, offer: Offer, line: QuoteLine, found: Catalogue) -> OrderItem:
    """As many pieces as the plan would take: more than needed only where a break makes the goods cheaper."""
    pieces = sensible_quantities(offer, line.quantity, found.shop.terms[offer.supplier].breaks)[-1]
    return OrderItem(need=need, offer=offer, needed=line.quantity, ordered=pieces)


def _price_now(found: Catalogue, item: OrderItem) -> Money:
    door = found.shop.door(item.offer.supplier, found.at)
    value, _ = line_cost(item, door)
    return offer_price(item.offer, door.rate.convert(value), item.ordered, found.shop.settings).each


def _place(
    pen: Pen,
    found: Catalogue,
    lines: Mapping[str, _Line],
    items: Mapping[str, OrderItem],
    standings: Mapping[str, Standing],
) -> tuple[PurchaseOrder, ...]:
    by_supplier: dict[str, list[OrderItem]] = defaultdict(list)
    for item in items.values():
        by_supplier[item.offer.supplier].append(item)
    return tuple(_place_one(pen, found, lines, by_supplier[one], standings) for one in sorted(by_supplier))


def _place_one(
    pen: Pen,
    found: Catalogue,
    lines: Mapping[str, _Line],
    items: Sequence[OrderItem],
    standings: Mapping[str, Standing],
) -> PurchaseOrder:
    planned = land(found, items)
    if planned.landed.refusal:
        raise refused("supplier-refuses", found=planned.landed.refusal)
    if planned.landed.open_questions:
        raise refused("freight-unknown-order", found="; ".join(planned.landed.open_questions))
    desk = pen.desk
    days = [stored_job(pen.connection, lines[item.need].wanted.job).need_by for item in items]
    need_by = min((day for day in days if day), default=None)
    number = next_order_number(pen.connection, desk.at.year)
    wanted = {item.need: lines[item.need].wanted for item in items}
    terms = found.shop.terms[planned.landed.supplier]
    placing = Placing(at=desk.at, by=desk.who, need_by=need_by)
    new = purchase_order(number, planned, wanted, terms, found.shop.settings, placing)
    approval_of = {line.line: standings[line.job].approval_of[line.label] for line in new.lines}
    add_order(pen.connection, new, approval_of)
    for job in sorted({line.job for line in new.lines}):
        pen.note(job, f"{number} to {new.supplier_name}: {new.landed_total} at the door")
    return new
