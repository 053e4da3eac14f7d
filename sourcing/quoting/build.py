"""A quote from a job, the plan of what to order for it, and the shop's settings. Values in, value out."""

from collections.abc import Sequence
from datetime import date, datetime, timedelta

from ..basics.job import Job, JobLine
from ..basics.landed_cost import LandedItem
from ..basics.money import Money, percent_of, total, zero
from ..basics.plan import Plan, PlannedOrder
from ..basics.problem import refused
from ..basics.quote import Behind, Quote, QuoteLine
from ..basics.settings import Settings
from ..basics.value import Value
from .pricing import UnitPrice, offer_price
from .totals import add_on_prices, document_total


class Found(Value, frozen=True, kw_only=True):
    """The plan's item for a line and the order it is in."""

    landed: LandedItem
    order: PlannedOrder


def build_quote(job: Job, plan: Plan, agreed_freight: Money, settings: Settings, at: datetime, revision: int) -> Quote:
    """The quote of that revision. `plan` fills agreed lines and add-ons together; `agreed_freight` is what inbound
    freight would be for the agreed lines alone. Refuses where a line's part has no offer in the plan.
    """
    lines = [_line(label, line, job, plan, settings) for label, line in job.labelled()]
    lines = _with_freight(lines, plan, agreed_freight, settings)
    agreed = [line for line in lines if line.kind == "agreed"]
    charged = (settings.charge_rules, at.date(), settings.currency)
    return Quote(
        job=job.number,
        revision=revision,
        shop=settings.shop,
        customer=job.customer,
        machine=job.machine,
        complaint=job.complaint,
        made_at=at,
        valid_to=at.date() + timedelta(days=settings.quote_valid_days),
        locale=settings.locale,
        currency=settings.currency,
        lines=tuple(lines),
        agreed_total=document_total(agreed, *charged),
        everything_total=document_total(lines, *charged),
        add_on_prices=add_on_prices(lines, *charged),
        arrives=_arrives(plan),
        terms_text=settings.terms_text,
        cautions=settings.cautions,
        cautions_dated=settings.cautions_dated,
        warnings=_warnings(lines, agreed_freight, settings),
        charge_rules=settings.charge_rules,
    )


def _line(label: str, line: JobLine, job: Job, plan: Plan, settings: Settings) -> QuoteLine:
    found = _found(label, plan)
    if line.part and found is None:
        why = next((words for words in plan.unfilled if words.startswith(f"{label}:")), f"{label}: {line.part}")
        raise refused("line-has-no-offer", job=job.number, found=why)
    priced = _price(found, settings)
    each = priced.each
    # In the offer's own unit where there is one: two loose pieces for one pair, one pair for two pieces.
    quantity = found.landed.item.needed if found else line.quantity
    return QuoteLine(
        label=label,
        kind="agreed" if label.isdigit() else "add-on",
        title=line.title,
        part=line.part,
        number=str(found.landed.item.offer.numbers()[0]) if found else "",
        description=found.landed.item.offer.description if found else "",
        quantity=quantity,
        unit_price=each,
        parts_price=each * quantity,
        hours=line.hours,
        labour_price=Money(amount=line.hours * settings.labour_rate, currency=settings.currency).rounded(),
        freight_price=zero(settings.currency),
        found=line.found,
        why=line.why,
        if_declined=line.if_declined,
        behind=_behind(found, priced.rule) if found else None,
    )


def _found(label: str, plan: Plan) -> Found | None:
    for order in plan.orders:
        for landed in order.landed.items:
            if landed.item.need == label:
                return Found(landed=landed, order=order)
    return None


def _price(found: Found | None, settings: Settings) -> UnitPrice:
    if found is None:
        return UnitPrice(each=zero(settings.currency), before_cap=zero(settings.currency), rule="")
    item = found.landed.item
    return offer_price(item.offer, found.landed.goods_cost, item.ordered, settings)


def _unit_cost(landed: LandedItem) -> Money:
    return Money(amount=landed.goods_cost.amount / landed.item.ordered, currency=landed.goods_cost.currency)


def _behind(found: Found, rule: str) -> Behind:
    landed, offer = found.landed, found.landed.item.offer
    charges = landed.landed - landed.goods_cost
    return Behind(
        supplier=offer.supplier,
        supplier_number=offer.supplier_number,
        sheet=offer.source.sheet,
        unit_cost=_unit_cost(landed),
        cost=landed.landed - landed.surplus_cost,
        surplus_cost=landed.surplus_cost,
        price_rule=rule,
        landed_rule=f"goods {landed.goods_cost.amount}, share of duty and charges {charges.amount}",
        latest=found.order.arrival.latest,
    )


def _with_freight(lines: list[QuoteLine], plan: Plan, agreed_freight: Money, settings: Settings) -> list[QuoteLine]:
    """Freight on lines of its own where the shop bills it: for the agreed lines, and once for all add-ons together.

    The add-ons' freight does not shrink when one of them is declined, so it has its own yes or no.
    """
    if settings.freight_to_customer != "billed":
        return lines
    agreed = [line for line in lines if line.kind == "agreed"]
    extras = [line for line in lines if line.kind == "add-on"]
    together = total((order.landed.freight for order in plan.orders), settings.currency)
    more = together - agreed_freight
    if agreed_freight.amount > 0:
        agreed.append(_freight_line(str(len(agreed) + 1), "Inbound freight", agreed_freight))
    if more.amount > 0 and any(line.part for line in extras):
        title = "Inbound freight for the extra parts, charged once"
        extras.append(_freight_line(chr(ord("A") + len(extras)), title, more))
    return [*agreed, *extras]


def _freight_line(label: str, title: str, freight: Money) -> QuoteLine:
    nothing = zero(freight.currency)
    return QuoteLine(
        label=label,
        kind="agreed" if label.isdigit() else "add-on",
        title=title,
        part="",
        number="",
        description="",
        quantity=0,
        unit_price=nothing,
        parts_price=nothing,
        hours=nothing.amount * 0,
        labour_price=nothing,
        freight_price=freight,
        found="",
        why="needed as soon as any of the extra parts is ordered" if not label.isdigit() else "",
        if_declined="the extra parts can't be ordered" if not label.isdigit() else "",
        behind=None,
    )


def _arrives(plan: Plan) -> tuple[date, date] | None:
    days = [(order.arrival.earliest, order.arrival.latest) for order in plan.orders]
    known = [(first, last) for first, last in days if first is not None and last is not None]
    if not known or len(known) < len(days):
        return None
    return max(first for first, _ in known), max(last for _, last in known)


def _warnings(lines: Sequence[QuoteLine], agreed_freight: Money, settings: Settings) -> tuple[str, ...]:
    """For the owner: parts margins under the floor, with everything and with the agreed lines alone."""
    floor = settings.margin_floor_percent
    words = [
        f"{line.label} {line.title}: margin {_percent(line.parts_price, line.behind.cost)} % on parts, under {floor} %"
        for line in lines
        if line.behind and _below(line.parts_price, line.behind.cost, settings)
    ]
    agreed = [line for line in lines if line.kind == "agreed"]
    price = total((line.parts_price + line.freight_price for line in agreed), settings.currency)
    cost = total((line.behind.unit_cost * line.quantity for line in agreed if line.behind), settings.currency)
    if price.amount and _below(price, cost.rounded() + agreed_freight, settings):
        margin = _percent(price, cost.rounded() + agreed_freight)
        words.append(f"agreed lines alone: margin {margin} % on parts with freight {agreed_freight}, under {floor} %")
    return tuple(words)


def _below(price: Money, cost: Money, settings: Settings) -> bool:
    return price - cost < percent_of(price, settings.margin_floor_percent)


def _percent(price: Money, cost: Money) -> str:
    return f"{(price.amount - cost.amount) * 100 / price.amount:.1f}" if price.amount else "0.0"
