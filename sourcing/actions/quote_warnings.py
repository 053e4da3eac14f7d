"""What the owner is told before a quote goes out: thin margins, cliffs, freight, prices that end, doubts.

Margin is on price, markup on cost; both words stand wherever a figure does. Cores and deposits are in neither.
All of it is the owner's alone: what others too must know, the doubts about the parts, is made in part_doubts.
"""

from collections.abc import Iterator, Sequence
from datetime import date, timedelta

from ..basics.landed_cost import OrderItem
from ..basics.money import Money, total, zero
from ..basics.offer import Offer
from ..basics.part_number import number_key
from ..basics.plan import PlannedOrder
from ..basics.quote import Quote
from ..basics.settings import Settings
from ..quoting.bought import Bought
from ..quoting.freight_lines import carried_freight, freight_way
from ..quoting.tolerance import may_rise_to
from .evaluate import Catalogue
from .plan import land
from .quote_margins import agreed_margin, everything_margin, margin_words, parts_margins, under_floor
from .quote_plan import Market


def quote_warnings(new: Quote, market: Market, bought: Bought) -> tuple[str, ...]:
    """All of them, the margins first. None of it hinders anything: the owner decides."""
    found = market.found
    return (
        *_floors(new, found.shop.settings),
        *(f"{line.label} {line.title}: {words}" for line in new.lines if line.behind for words in line.behind.warnings),
        *_freight(new, market, bought),
        *_refusals(bought.agreed_alone),
        *_ending(new, found, bought),
        *_days(new),
        *_asked_again(new, market),
        *_changed_orders(market),
        *bought.plan.warnings,
    )


def _floors(new: Quote, settings: Settings) -> Iterator[str]:
    figures = [(f"{line.label} {line.title}", one) for line, one in parts_margins(new)]
    figures.append(("agreed lines alone, parts with freight", agreed_margin(new)))
    if new.labels("add-on"):
        figures.append(("everything together, parts with freight", everything_margin(new)))
    for what, one in figures:
        if under_floor(one, settings):
            yield f"{what}: {margin_words(one)}; under the floor of {settings.margin_floor_percent} % on price"


def _freight(new: Quote, market: Market, bought: Bought) -> Iterator[str]:
    """Freight the markup must bear, freight billed and not paid, and add-ons that alone would not bear theirs."""
    way = freight_way(market.job, market.found.shop.settings)
    carried = carried_freight(bought, way, new.currency)
    if carried.amount:
        yield f"inbound freight of {carried} is carried: it comes out of the markup"
    alone, together = bought.freight(new.currency)
    if way == "billed" and together < alone and bought.promised:
        yield f"with every add-on the inbound freight would be {together}, and {alone} is billed for the agreed lines"
    for line in new.lines:
        if line.kind == "add-on" and line.behind and bought.found(line.label):
            own = _freight_of(line.label, market.found, bought)
            earned = line.parts_price - line.behind.cost + (line.behind.freight or zero(new.currency))
            if own.amount and earned < own and way == "carried":
                yield f"{line.label} {line.title} alone earns {earned} before its freight of {own}: a loss by itself"
            elif own.amount and line.parts_price < own and way == "billed":
                yield f"{line.label} {line.title} alone costs {own} of freight, more than the part's {line.parts_price}"


def _freight_of(label: str, found: Catalogue, bought: Bought) -> Money:
    """How much more freight the add-on brings than the agreed lines alone, when all other add-ons are declined."""
    currency = found.shop.settings.currency
    order = next(one for one in bought.plan.orders for item in one.landed.items if item.item.need == label)
    items: list[OrderItem] = [one.item for one in order.landed.items if one.item.need.isdigit()]
    before = [one.landed.freight for one in bought.agreed_alone if one.landed.supplier == order.landed.supplier]
    own = next(one.item for one in order.landed.items if one.item.need == label)
    return land(found, [*items, own]).landed.freight - total(before, currency)


def _refusals(alone: Sequence[PlannedOrder]) -> Iterator[str]:
    for order in alone:
        if order.landed.refusal:
            yield f"agreed lines alone: {order.landed.refusal}"
        yield from (f"agreed lines alone: {words}" for words in order.landed.open_questions)


def _ending(new: Quote, found: Catalogue, bought: Bought) -> Iterator[str]:
    """Suppliers' prices that end before the quote does: the shop is bound longer than the supplier is."""
    for order in bought.plan.orders:
        for one in order.landed.items:
            last = _holds_until(one.item.offer, found)
            if last is not None and last < new.valid_to:
                what = f"{order.landed.supplier_name} {one.item.offer.supplier_number}"
                yield f"{one.item.need}: the price of {what} holds until {last}, the quote until {new.valid_to}"


def _holds_until(offer: Offer, found: Catalogue) -> date | None:
    """The last day of the price: the row's own, else by the supplier's terms; None where no day is named."""
    days = found.shop.terms[offer.supplier].prices_hold_days
    if offer.valid_to is not None or days is None:
        return offer.valid_to
    return offer.source.sheet_date + timedelta(days=days)


def _days(new: Quote) -> Iterator[str]:
    if new.ready_by and new.arrives and new.arrives[1] >= new.ready_by:
        yield f"the parts may come as late as {new.arrives[1]}, the machine is to be ready on {new.ready_by}"
    if new.ready_by and new.arrives is None and any(line.part for line in new.lines):
        yield f"the machine is to be ready on {new.ready_by}, and the day the parts come is not known"


def _asked_again(new: Quote, market: Market) -> Iterator[str]:
    """Approved lines that are another part or dearer now: a yes covers that number at that price."""
    for label in sorted(market.yes):
        before = market.last.line(label) if market.last else None
        now = new.line(label)
        if before is None or now is None or not before.part or (now.title, now.part) != (before.title, before.part):
            continue
        if number_key(now.number) != number_key(before.number):
            yield f"{label} {now.title}: approved as {before.number}, now {now.number}: a new question to the customer"
        elif not now.price <= may_rise_to(market.yes[label], new.tolerance):
            dearer = f"approved at {market.yes[label]}, now {now.price} before tax"
            yield f"{label} {now.title}: {dearer}: a new question to the customer"


def _changed_orders(market: Market) -> Iterator[str]:
    asked = dict(market.job.labelled())
    for label, line in market.settled.items():
        wanted = asked[label].quantity
        if wanted != line.quantity:
            yield f"{label} {line.title}: {line.quantity} ordered already, the job asks for {wanted} now"
