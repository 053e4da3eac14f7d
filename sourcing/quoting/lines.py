"""Lines of a quote from lines of a job: the part at its price, labour flat or by the hour, fees of the job.

A line whose part stands on an order already keeps the part and the price that were approved; only its work may change.
"""

from decimal import Decimal

from ..basics.alarm import Decision
from ..basics.job import Job, JobFee, JobLine
from ..basics.landed_cost import LandedItem
from ..basics.money import Money, zero
from ..basics.problem import refused
from ..basics.quote import Behind, QuoteLine
from ..basics.settings import Settings
from ..basics.terms import Returns
from ..basics.value import changed
from .bought import Bought, Found
from .core_words import core_words
from .held_prices import HeldPrice, held_price
from .pricing import offer_price
from .return_words import is_special_order, return_words


def lines_of(job: Job, bought: Bought, settings: Settings) -> list[QuoteLine]:
    """Every line of the job, then its fees as agreed lines numbered on. Refuses a part that has no offer."""
    lines = [_line(label, line, job, bought, settings) for label, line in job.labelled()]
    agreed = [line for line in lines if line.kind == "agreed"]
    fees = [_fee(str(at), fee, settings.currency) for at, fee in enumerate(job.fees, len(agreed) + 1)]
    return [*agreed, *fees, *(line for line in lines if line.kind == "add-on")]


def plain_line(label: str, title: str, currency: str) -> QuoteLine:
    """A line with no part, no work and no price: what all others start from."""
    nothing = zero(currency)
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
        hours=Decimal(0),
        labour_price=nothing,
        freight_price=nothing,
        found="",
        why="",
        if_declined="",
        behind=None,
    )


def labour_of(line: JobLine, settings: Settings) -> tuple[Money, Decimal | None]:
    """What the work of a line costs the customer, rounded once, and the rate per hour; no rate where it is flat."""
    if line.labour_flat is not None:
        return Money(amount=line.labour_flat, currency=settings.currency).rounded(), None
    rate = settings.labour_rate if line.labour_rate is None else line.labour_rate
    price = Money(amount=line.hours * rate, currency=settings.currency).rounded()
    return price, rate if line.hours else None


def _line(label: str, line: JobLine, job: Job, bought: Bought, settings: Settings) -> QuoteLine:
    labour, rate = labour_of(line, settings)
    work = changed(
        plain_line(label, line.title, settings.currency),
        part=line.part,
        # Our own name of it: a supplier's words are written for the trade, and change with the supplier.
        description=bought.names.get(line.part, ""),
        hours=line.hours,
        labour_price=labour,
        labour_rate=rate,
        found=line.found,
        why=line.why,
        if_declined=line.if_declined,
        category=line.category or bought.categories.get(line.part, ""),
        photos=line.photos,
    )
    if not line.part:
        return work
    if label in bought.settled:
        return _with_settled(work, bought.settled[label], bought)
    found = bought.found(label)
    if found is None:
        plan = bought.plan
        why = next((words for words in plan.unfilled if words.startswith(f"{label}:")), f"{label}: {line.part}")
        raise refused("line-has-no-offer", job=job.number, found=why)
    return _with_part(work, line, found, bought, settings)


def _with_part(work: QuoteLine, line: JobLine, found: Found, bought: Bought, settings: Settings) -> QuoteLine:
    landed, item = found.landed, found.landed.item
    priced = offer_price(item.offer, landed.goods_cost, item.ordered, settings, work.category)
    held = held_price(bought.decisions.get(work.label), priced, landed.goods_cost - landed.surplus_cost)
    each = held.price.each
    rules = bought.returns.get(item.offer.supplier, Returns())
    special = is_special_order(line.special_order, landed.beside.returnable)
    return changed(
        work,
        number=str(item.offer.numbers()[0]),
        # In the offer's own unit: two loose pieces for one pair, one pair for two pieces.
        quantity=item.needed,
        unit_price=each,
        parts_price=each * item.needed,
        behind=_behind(found, held, bought.cost_alone(work.label)),
        special_order=special,
        return_words=return_words(settings.special_order_terms, landed.beside.returnable, rules) if special else (),
        core_words=core_words(item.offer.core_charge, line.quantity),
    )


def _unit_cost(landed: LandedItem) -> Money:
    return Money(amount=landed.goods_cost.amount / landed.item.ordered, currency=landed.goods_cost.currency)


def _behind(found: Found, held: HeldPrice, alone: Money | None) -> Behind:
    landed, offer = found.landed, found.landed.item.offer
    charges = landed.landed - landed.goods_cost
    goods = landed.goods_cost
    return Behind(
        supplier=offer.supplier,
        supplier_number=offer.supplier_number,
        sheet=offer.source.sheet,
        unit_cost=_unit_cost(landed),
        cost=landed.landed - landed.surplus_cost,
        surplus_cost=landed.surplus_cost,
        price_rule=held.price.rule,
        landed_rule=f"goods {goods.amount}, share of duty and charges {charges.amount}",
        latest=found.order.arrival.latest,
        warnings=held.price.warnings,
        returnable=landed.beside.returnable,
        held=held.held,
        freight=found.freight_share,
        cost_alone=alone,
    )


def _with_settled(work: QuoteLine, before: QuoteLine, bought: Bought) -> QuoteLine:
    """The part as approved and ordered; at the price that was decided on since, where one was."""
    decision = bought.decisions.get(work.label)
    each, behind = before.unit_price, before.behind
    if decision is not None and decision.held_price is not None and behind is not None:
        each = decision.held_price
        behind = _as_decided(behind, decision, each, before.quantity)
    return changed(
        work,
        number=before.number,
        quantity=before.quantity,
        unit_price=each,
        parts_price=each * before.quantity,
        behind=behind,
        category=before.category,
        special_order=before.special_order,
        return_words=before.return_words,
        core_words=before.core_words,
    )


def _as_decided(behind: Behind, decision: Decision, each: Money, pieces: int) -> Behind:
    """After ordering the supplier's confirmation says what it costs, not a sheet: the decision knows."""
    word = "to be asked anew" if decision.way == "ask" else "held"
    rule = f"{each.amount}, {word} as {decision.who} decided on {decision.at.date()}"
    behind = changed(behind, price_rule=rule, held=decision.way != "ask", warnings=())
    if decision.way == "switch":  # until the order is changed it is bought as before
        return behind
    if decision.up_to_cost is not None:
        goods = decision.up_to_cost
        behind = changed(behind, unit_cost=Money(amount=goods.amount / pieces, currency=goods.currency))
    if decision.landed_cost is not None:
        more = decision.landed_cost - behind.cost
        alone = behind.cost_alone + more if behind.cost_alone is not None else None
        behind = changed(behind, cost=decision.landed_cost, cost_alone=alone)
    return behind


def _fee(label: str, fee: JobFee, currency: str) -> QuoteLine:
    amount = Money(amount=fee.amount, currency=currency).rounded()
    return changed(plain_line(label, fee.name, currency), fee_price=amount, why=fee.why)
