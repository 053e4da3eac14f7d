"""Take a job in, and change what it says of customer, machine and days."""

from collections.abc import Iterator
from typing import Any, get_args

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.job_edit import Seen, change_facts, opened, our_part
from ...actions.jobs import take_in
from ...basics.asked import Asked, Cogs, Side, SoldAs
from ...basics.job import Customer, Job, JobFee, JobLine, Machine
from ...basics.problem import refused
from ...basics.typed import amount, count, hours, one_word
from ...basics.value import changed
from ..desks import desk, now, sees_costs
from ..forms import day, deed, read, tell, text
from ..guard import EVERYBODY, open_to
from ..show import show
from ..words import _

MACHINE = (
    *("description", "maker", "model", "serial", "component", "component_maker", "component_model"),
    "component_serial",
)
ASKED = {
    name: tuple(word for word in get_args(kind) if word)
    for name, kind in {"cogs": Cogs, "side": Side, "sold_as": SoldAs}.items()
}
FREIGHT = ("billed", "carried")
FREE_FEES, MOST_FEES = 2, 30
CUSTOMER = ("name", "telephone", "email", "text_number")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages."""
    blueprint.add_url_rule("/jobs/new", view_func=new_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/jobs/<job>/facts", view_func=facts_page, methods=["GET", "POST"])


@open_to(*EVERYBODY)
def new_page() -> ResponseReturnValue:
    """Take a job in with its first line."""
    if request.method == "POST" and (gone := deed(_take_in)):
        return gone
    return show("jobs/new.html", today=now().date())


@open_to(*EVERYBODY)
def facts_page(job: str) -> ResponseReturnValue:
    """Change customer, machine, complaint and days."""
    if request.method == "POST" and (gone := deed(lambda: _change(job))):
        return gone
    one, seen = opened(desk(), job)
    return show("jobs/facts.html", one=one, seen=seen, fee_rows=range(len(one.fees) + FREE_FEES))


def line_typed() -> JobLine:
    """The line of a form. The part may be named by any number; hours may be blank."""
    part = our_part(desk(), text("part"))
    return JobLine(
        title=text("title"),
        part=part,
        quantity=(read("quantity", count) if text("quantity") else 1) if part else 0,
        hours=read("hours", hours) if text("hours") else JobLine(title="").hours,
        found=text("found"),
        why=text("why"),
        if_declined=text("if_declined"),
        asked=_asked(),
    )


def _asked() -> Asked:
    """What this line asks of its part beside what our part asks anyway."""
    typed: dict[str, Any] = {name: text(f"asked_{name}") for name in ("cord", "cover")}
    typed |= {name: _one_of(f"asked_{name}", known) for name, known in ASKED.items()}
    return Asked(pieces=read("asked_pieces", count) if text("asked_pieces") else 0, **typed)


def _one_of(field: str, known: tuple[str, ...]) -> str:
    return read(field, one_word, field.removeprefix("asked_"), known) if text(field) else ""


def seen_typed(job: str) -> Seen:
    """Which state of the job the form was opened with."""
    return Seen(job=job, version=text("version"))


def _take_in() -> str:
    if not text("title"):
        raise refused("job-contradicts", found=_("the first line has no words for what is to be done"))
    new = Job(
        customer=_customer(Customer(name="")),
        machine=_machine(),
        complaint=text("complaint"),
        agreed=(line_typed(),),
        received_on=day("received_on") or now().date(),
        **_days(),
    )
    kept = take_in(desk(), new)
    tell(_("The job is taken in as %(job)s.") % {"job": kept.number})
    return url_for("jobs.job_page", job=kept.number)


def _change(job: str) -> str:
    before = opened(desk(), job)[0]
    fields = {"complaint": text("complaint"), **_days()}
    customer = _customer(before.customer)
    if sees_costs():
        customer = changed(customer, tax_exempt=bool(text("tax_exempt")), exempt_because=text("exempt_because"))
        freight = _one_of("freight_to_customer", FREIGHT)
        fields |= {"fees": tuple(_fees()), "freight_to_customer": freight}
    change_facts(desk(), seen_typed(job), customer, _machine(), **fields)
    tell(_("The job is changed."))
    return url_for("jobs.job_page", job=job)


def _customer(before: Customer) -> Customer:
    """What the form says of who it is and how to reach her; the rest stays."""
    others = tuple(name.strip() for name in text("may_also_approve").splitlines() if name.strip())
    address = tuple(line.strip() for line in text("address").splitlines() if line.strip())
    typed: dict[str, Any] = {name: text(name) for name in CUSTOMER}
    return changed(before, may_also_approve=others, address=address, **typed)


def _machine() -> Machine:
    return Machine(**{name: text(f"machine_{name}") for name in MACHINE})


def _fees() -> Iterator[JobFee]:
    """The fees typed; a row left blank is none."""
    for at in range(MOST_FEES):
        name, asked, why = (text(f"fee_{what}_{at}") for what in ("name", "amount", "why"))
        if asked:
            yield JobFee(name=name, amount=amount(asked), why=why)
        elif name or why:
            raise refused("job-contradicts", found=_("the fee '%(name)s' has no amount") % {"name": name or why})


def _days() -> dict[str, Any]:
    return {"need_by": day("need_by"), "ready_by": day("ready_by")}
