"""The offer an approved line was quoted on, as it stands today: what the line asks of it, whether it can still be had,
in how many pieces it would be ordered, and at what price."""

from ..basics.choice import Asks
from ..basics.job import Job
from ..basics.landed_cost import OrderItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.part_number import number_key
from ..basics.quote import Behind, QuoteLine
from ..landed_cost.order import line_cost
from ..landed_cost.quantity import sensible_quantities
from ..quoting.number_approved import covers_number
from ..quoting.pricing import UnitPrice, offer_price
from ..storage.offers import offers_by_keys
from .evaluate import Catalogue, judged_offers
from .needs import asks_of
from .sorted_offers import Judged, why_not


def asks_now(found: Catalogue, job: Job, line: QuoteLine) -> Asks:
    """What the job's line asks of offers now; only what our part asks where the line is gone or asks for another part
    by now."""
    asked = dict(job.labelled()).get(line.label)
    return asks_of(found, job, asked) if asked and asked.part == line.part else Asks()


def quoted_offer(found: Catalogue, line: QuoteLine, asks: Asks) -> tuple[Offer | None, str]:
    """The offer the line was quoted on as it stands on the supplier's newest sheet, or why it is not to be had.

    Where he sells several under his one number, it is that of the number approved; the first where none is.
    """
    behind = line.behind
    if behind is None:
        return None, "the quote names no offer"
    judged = judged_as_quoted(found, line, asks)
    if judged is None:
        sheet = f"on the newest sheet of {found.supplier_name(behind.supplier)}"
        if _is_on_the_sheet(found, behind):
            return None, f"{behind.supplier_number} is {sheet}, and our table no longer says that it is {line.part}"
        return None, f"{behind.supplier_number} is not {sheet}"
    standing = judged.verdict
    why = why_not(found, judged.offer) if standing.stands else "; ".join(standing.objections)
    return (None, why) if why else (judged.offer, "")


def _is_on_the_sheet(found: Catalogue, behind: Behind) -> bool:
    key = number_key(behind.supplier_number)
    there = offers_by_keys(found.connection, {key}, found.at.date())
    return any((one.supplier, number_key(one.supplier_number)) == (behind.supplier, key) for one in there)


def judged_as_quoted(found: Catalogue, line: QuoteLine, asks: Asks) -> Judged | None:
    """The same offer, as it stands to what is asked now; None where his newest sheet, or the quote, has none."""
    behind = line.behind
    if behind is None:
        return None
    same = [
        judged
        for judged in judged_offers(found, line.part, asks, line.quantity)
        if (judged.offer.supplier, number_key(judged.offer.supplier_number))
        == (behind.supplier, number_key(behind.supplier_number))
    ]
    approved = [one for one in same if covers_number(line, str(one.offer.numbers()[0]), None)]
    return next(iter(approved or same), None)


def item_of(found: Catalogue, offer: Offer, need: str, needed: int) -> OrderItem:
    """As many pieces as the plan would take: more than needed only where a break makes the goods cheaper."""
    pieces = sensible_quantities(offer, needed, found.shop.terms[offer.supplier].breaks)[-1]
    return OrderItem(need=need, offer=offer, needed=needed, ordered=pieces)


def price_now(found: Catalogue, item: OrderItem, category: str) -> tuple[Money, UnitPrice]:
    """What one piece costs today in goods, and what it would be priced at, both in the shop's currency."""
    door = found.door(item.offer.supplier)
    cost = door.rate.convert(line_cost(item, door)[0])
    each = Money(amount=cost.amount / item.ordered, currency=cost.currency)
    return each, offer_price(item.offer, cost, item.ordered, found.shop.settings, category)
