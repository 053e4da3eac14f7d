"""What is no longer as the customer approved it: what to ask her, the ways out, and the one a person takes."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.alarms import alarms
from ...actions.decide import Agreed, Decided, decide
from ...actions.job_alarms import alarm_to_decide, job_alarms
from ...basics.alarm import Way
from ...basics.typed import one_word
from ...documents.alarms import alarms_text
from ...documents.alarms_shown import for_the_bench, for_the_desk
from ..desks import desk, may, sees_costs
from ..files import attachment
from ..forms import deed, mind, read, tell, text
from ..guard import EVERYBODY, OWNER, WITH_COSTS, open_to
from ..show import show
from ..words import _
from .quote_answers import HOW, who_said

WAYS: tuple[Way, ...] = ("hold", "ask", "switch")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the quote."""
    add = blueprint.add_url_rule
    add("/jobs/<job>/not-as-approved", view_func=alarms_page)
    add("/jobs/<job>/not-as-approved.txt", view_func=alarms_file)
    add("/jobs/<job>/not-as-approved/<label>", view_func=decide_page, methods=["GET", "POST"])


@open_to(*EVERYBODY)
def alarms_page(job: str) -> ResponseReturnValue:
    """Every line whose yes no longer covers what is known."""
    found = job_alarms(desk(), job, may("owner"))
    if not sees_costs():
        return show("quotes/ask_customer.html", job=job, found=for_the_bench(found.alarms))
    alarmed = {one.label for one in found.alarms}
    return show(
        "quotes/alarms.html",
        job=job,
        found=for_the_desk(found.alarms, may("owner")),
        decided=[one for one in found.decided if one.label not in alarmed],
    )


@open_to(*OWNER)
def alarms_file(job: str) -> ResponseReturnValue:
    """The same as text, with what the ways out earn."""
    return attachment(alarms_text(alarms(desk(), job)), f"not-as-approved-{job}", "txt")


@open_to(*WITH_COSTS)
def decide_page(job: str, label: str) -> ResponseReturnValue:
    """Take one of the ways out of a line."""
    if request.method == "POST" and (gone := deed(lambda: _decided(job, label))):
        return gone
    found = alarm_to_decide(desk(), job, label, may("owner"))
    (shown,) = for_the_desk((found.alarm,), may("owner"))
    return show("quotes/decide.html", job=job, one=shown, may_answer=found.may_answer, how=HOW)


def _decided(job: str, label: str) -> str:
    said = Agreed(who=who_said(), how=text("how"), contact=text("contact"))
    agreed = said if said.who or said.how or said.contact else None  # half of a yes is refused, not forgotten
    _tell(decide(desk(), job, label, read("way", one_word, _("way out"), WAYS), text("words"), agreed))
    return url_for("quotes.alarms_page", job=job)


def _tell(found: Decided) -> None:
    label, way = found.decision.label, found.decision.way
    tell(_("Line %(label)s: %(way)s. It is kept.") % {"label": label, "way": way})
    if found.cancelled:
        tell(_("The line is cancelled on %(order)s.") % {"order": found.cancelled})
    for words in found.next_steps:  # still to do: not under the word for what is done
        mind(words)
