"""A quote from a job, what would be bought for it, and the shop's settings. Values in, value out."""

from datetime import date, datetime, timedelta

from ..basics.job import Customer, Job
from ..basics.problem import refused
from ..basics.quote import Quote
from ..basics.settings import ChargeRules, Settings
from ..basics.value import changed
from .bought import Bought
from .deposit import deposit_asked
from .freight_lines import freight_way, with_freight
from .lines import lines_of
from .totals import add_on_prices, document_total


def build_quote(job: Job, bought: Bought, settings: Settings, at: datetime, revision: int) -> Quote:
    """The quote of that revision, without warnings to the owner. Refuses where a line's part has no offer in the plan,
    and a customer who is free of tax without the words of why.
    """
    rules = charged_rules(job.customer, settings)
    lines = with_freight(lines_of(job, bought, settings), bought, freight_way(job, settings), settings.currency)
    agreed = [line for line in lines if line.kind == "agreed"]
    charged = (rules, at.date(), settings.currency)
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
        arrives=_arrives(bought),
        terms_text=settings.terms_text,
        cautions=settings.cautions,
        cautions_dated=settings.cautions_dated,
        warnings=(),
        charge_rules=rules,
        findings=job.findings,
        deposit=deposit_asked(lines, rules, settings.deposit, at.date(), settings.currency),
        deposit_rule=settings.deposit,
        tolerance=settings.tolerance,
        law_text=settings.law_text,
        paper_size=settings.paper_size,
        ready_by=job.ready_by,
    )


def charged_rules(customer: Customer, settings: Settings) -> ChargeRules:
    """The shop's taxes and fees for this customer. Refuses one who is free of tax without the certificate's words."""
    if customer.tax_exempt and not customer.exempt_because.strip():
        raise refused("exempt-without-words", name=customer.name)
    return changed(settings.charge_rules, tax_exempt=customer.tax_exempt)


def _arrives(bought: Bought) -> tuple[date, date] | None:
    """The days by which all parts are here: each bound is the latest of its kind. None where a day is not known."""
    days = [(order.arrival.earliest, order.arrival.latest) for order in bought.plan.orders]
    days += [bought.kept_arrives] if bought.kept_arrives else []
    known = [(first, last) for first, last in days if first is not None and last is not None]
    if not known or len(known) < len(days):
        return None
    return max(first for first, _ in known), max(last for _, last in known)
