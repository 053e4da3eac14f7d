"""Take a job in, and change what it says of customer, machine and days."""

from typing import Any

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.job_edit import Seen, change_facts, opened, our_part
from ...actions.jobs import take_in
from ...basics.job import Customer, Job, JobLine, Machine
from ...basics.problem import refused
from ...basics.typed import amount, count
from ...basics.value import changed
from ..desks import desk, now
from ..forms import day, deed, tell, text
from ..guard import EVERYBODY, open_to
from ..show import show
from ..words import _

MACHINE = (
    *("description", "maker", "model", "serial", "component", "component_maker", "component_model"),
    "component_serial",
)
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
    return show("jobs/facts.html", one=one, seen=seen)


def line_typed() -> JobLine:
    """The line of a form. The part may be named by any number; hours may be blank."""
    part = our_part(desk(), text("part"))
    return JobLine(
        title=text("title"),
        part=part,
        quantity=(count(text("quantity")) if text("quantity") else 1) if part else 0,
        hours=amount(text("hours")) if text("hours") else JobLine(title="").hours,
        found=text("found"),
        why=text("why"),
        if_declined=text("if_declined"),
    )


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
    change_facts(desk(), seen_typed(job), _customer(before.customer), _machine(), **fields)
    tell(_("The job is changed."))
    return url_for("jobs.job_page", job=job)


def _customer(before: Customer) -> Customer:
    """What the form says; what it does not ask for (tax certificate) stays."""
    others = tuple(name.strip() for name in text("may_also_approve").splitlines() if name.strip())
    address = tuple(line.strip() for line in text("address").splitlines() if line.strip())
    typed: dict[str, Any] = {name: text(name) for name in CUSTOMER}
    return changed(before, may_also_approve=others, address=address, **typed)


def _machine() -> Machine:
    return Machine(**{name: text(f"machine_{name}") for name in MACHINE})


def _days() -> dict[str, Any]:
    return {"need_by": day("need_by"), "ready_by": day("ready_by")}
