"""A job's lines, findings and evidence: added, changed, taken out."""

from typing import Any

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.accept_anyway import OfferNamed, accept_anyway, take_acceptance_back
from ...actions.identity import add_evidence, show_identity, take_evidence_back
from ...actions.job_edit import (
    Seen,
    add_finding,
    add_line,
    change_line,
    opened,
    take_finding_out,
    take_line_out,
)
from ...actions.needs import line_of
from ...basics.evidence import EVIDENCE_KINDS, Evidence
from ...basics.job import JobLine
from ...basics.problem import refused
from ...basics.typed import amount, count, one_word
from ...basics.value import changed
from ...documents.identity import evidence_words
from ..desks import desk, sees_costs
from ..forms import deed, read, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from ..words import _
from .job_forms import line_typed, seen_typed

SAYS = ("number", "maker", "size", "words", "model", "serial_from", "serial_to", "source")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages."""
    both = ["GET", "POST"]
    blueprint.add_url_rule("/jobs/<job>/new-line", view_func=new_line_page, methods=both)
    blueprint.add_url_rule("/jobs/<job>/lines/<label>", view_func=line_page, methods=both)
    blueprint.add_url_rule("/jobs/<job>/lines/<label>/take-out", view_func=take_out_page, methods=both)
    blueprint.add_url_rule("/jobs/<job>/lines/<label>/which-part", view_func=evidence_page, methods=both)
    blueprint.add_url_rule("/jobs/<job>/lines/<label>/evidence-back", view_func=evidence_back, methods=["POST"])
    blueprint.add_url_rule("/jobs/<job>/lines/<label>/take-anyway", view_func=take_anyway_page, methods=both)
    blueprint.add_url_rule("/jobs/<job>/findings", view_func=finding_added, methods=["POST"])
    blueprint.add_url_rule("/jobs/<job>/findings/<int:at>/take-out", view_func=finding_out, methods=["POST"])


@open_to(*EVERYBODY)
def new_line_page(job: str) -> ResponseReturnValue:
    """Add an add-on, or a line the customer asked for."""
    if request.method == "POST" and (gone := deed(lambda: _add(job))):
        return gone
    one, seen = opened(desk(), job)
    return show("jobs/line.html", one=one, seen=seen, label="", line=None, asks_prices=sees_costs())


@open_to(*EVERYBODY)
def line_page(job: str, label: str) -> ResponseReturnValue:
    """Change a line."""
    if request.method == "POST" and (gone := deed(lambda: _change(job, label))):
        return gone
    one, seen = opened(desk(), job)
    return show("jobs/line.html", one=one, seen=seen, label=label, line=line_of(one, label), asks_prices=sees_costs())


@open_to(*EVERYBODY)
def take_out_page(job: str, label: str) -> ResponseReturnValue:
    """Take a line out, after a look at what that means."""

    def out() -> str:
        take_line_out(desk(), seen_typed(job), label)
        tell(_("Line %(label)s is taken out.") % {"label": label})
        return url_for("jobs.job_page", job=job)

    if request.method == "POST" and (gone := deed(out)):
        return gone
    one, seen = opened(desk(), job)
    return show("jobs/take_out.html", one=one, seen=seen, label=label, line=line_of(one, label))


@open_to(*EVERYBODY)
def evidence_page(job: str, label: str) -> ResponseReturnValue:
    """Which part the line needs, on what evidence; add some."""
    if request.method == "POST" and (gone := deed(lambda: _evidence(job, label))):
        return gone
    found = show_identity(desk(), job, label)
    seen = [(one, evidence_words(one.evidence)) for one in found.identity.seen]
    return show("jobs/which_part.html", job=job, label=label, found=found, seen=seen, kinds=EVIDENCE_KINDS)


@open_to(*EVERYBODY)
def evidence_back(job: str, label: str) -> ResponseReturnValue:
    """Take a piece of evidence back, with why."""

    def back() -> str:
        take_evidence_back(desk(), job, label, read("at", count), text("why"))
        tell(_("The evidence is taken back; it stays to be read."))
        return url_for("jobs.evidence_page", job=job, label=label)

    return deed(back) or evidence_page(job, label)


@open_to(*WITH_COSTS)
def take_anyway_page(job: str, label: str) -> ResponseReturnValue:
    """Take an offer although something speaks against it, with why; or no longer."""
    if request.method == "POST" and (gone := deed(lambda: _anyway(job, label))):
        return gone
    line = line_of(opened(desk(), job)[0], label)
    return show("jobs/take_anyway.html", job=job, label=label, line=line, asked=request.args)


@open_to(*EVERYBODY)
def finding_added(job: str) -> ResponseReturnValue:
    """Write down what was seen."""

    def added() -> str:
        add_finding(desk(), Seen(job=job, version=""), text("what"))
        tell(_("The finding is written down."))
        return url_for("jobs.job_page", job=job)

    from .jobs import job_page

    return deed(added) or job_page(job)


@open_to(*EVERYBODY)
def finding_out(job: str, at: int) -> ResponseReturnValue:
    """Take a finding out."""

    def out() -> str:
        take_finding_out(desk(), seen_typed(job), at)
        tell(_("The finding is taken out."))
        return url_for("jobs.job_page", job=job)

    from .jobs import job_page

    return deed(out) or job_page(job)


def _add(job: str) -> str:
    is_add_on = text("kind") != "agreed"
    add_line(desk(), Seen(job=job, version=""), _priced(line_typed(), None), is_add_on)
    tell(_("The line is added."))
    return url_for("jobs.job_page", job=job)


def _change(job: str, label: str) -> str:
    before = line_of(opened(desk(), job)[0], label)
    change_line(desk(), seen_typed(job), label, _priced(line_typed(), before))
    tell(_("Line %(label)s is changed.") % {"label": label})
    return url_for("jobs.job_page", job=job)


def _priced(line: JobLine, before: JobLine | None) -> JobLine:
    """The line with how its work is priced: as the clerk typed it; from the bench it stays as it was."""
    if not sees_costs():
        kept = before or line
        return changed(
            line,
            labour_rate=kept.labour_rate,
            labour_flat=kept.labour_flat,
            category=kept.category,
            special_order=kept.special_order,
        )
    return changed(
        line,
        labour_rate=read("labour_rate", amount) if text("labour_rate") else None,
        labour_flat=read("labour_flat", amount) if text("labour_flat") else None,
        category=text("category"),
        special_order={"yes": True, "no": False}.get(text("special_order")),
    )


def _evidence(job: str, label: str) -> str:
    if not text("kind"):
        raise refused("evidence-says-nothing", found=_("what kind of evidence it is"))
    says: dict[str, Any] = {name: text(name) for name in SAYS}
    new = Evidence(kind=read("kind", one_word, _("Kind"), EVIDENCE_KINDS), **says)
    add_evidence(desk(), job, label, new)
    tell(_("The evidence is written down."))
    return url_for("jobs.evidence_page", job=job, label=label)


def _anyway(job: str, label: str) -> str:
    named = OfferNamed(supplier=text("supplier"), number=text("number"))
    if text("back"):
        take_acceptance_back(desk(), job, label, named, text("words"))
    else:
        accept_anyway(desk(), job, label, named, text("words"))
    tell(_("That is written down with your name."))
    return url_for("jobs.job_page", job=job)
