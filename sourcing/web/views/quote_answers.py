"""A customer's answers: taken down as they were said, taken back, and all of them in order."""

from collections.abc import Mapping
from typing import Any

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue
from werkzeug.datastructures import MultiDict

from ...actions.answer_sheet import AnswerSheet, answer_sheet, take_down, total_of_answers
from ...actions.answers import Spoken, TakenBack, withdraw
from ...actions.revisions import answer_record
from ...basics.problem import refused
from ...basics.quote import QuoteLine
from ...basics.typed import count, one_word
from ...documents.answers_shown import told_words, totals_text
from ...documents.authorisation import LAW, record_text
from ...documents.quote_words import freight_words
from ..desks import desk
from ..files import attachment
from ..forms import deed, marked, problems, read, tell, text
from ..guard import EVERYBODY, open_to
from ..show import show
from ..words import _

LINE = "line-"
HOW = ("telephone", "in person", "text", "e-mail")
"""How an answer comes that somebody takes down; one on the customer's page is kept by the page itself."""

ANOTHER = "another"
WRITTEN = ("who", "another", "how", "contact", "words", "condition", "instead")
"""What the form asks for beside the answers themselves."""


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the quote."""
    add = blueprint.add_url_rule
    add("/jobs/<job>/answers", view_func=answer_page, methods=["GET", "POST"])
    add("/jobs/<job>/answers/take-back", view_func=take_back_page, methods=["GET", "POST"])
    add("/jobs/<job>/answers.txt", view_func=answers_file)


@open_to(*EVERYBODY)
def answer_page(job: str) -> ResponseReturnValue:
    """Each line with yes, no or as it is; what it comes to; and every answer there was."""
    is_sent = request.method == "POST" and text("do") != "total"
    if is_sent and (gone := deed(lambda: _answered(job))):
        return gone
    if request.method == "POST" and not is_sent and not any(map(text, WRITTEN)):
        return redirect(_with_marks(job), code=303)
    filled = request.form if request.method == "POST" else MultiDict(_marks(request.args))
    sheet = answer_sheet(desk(), job, _revision())
    return show(
        "quotes/answers.html",
        job=job,
        sheet=sheet,
        freight={one.line.label: _freight(one.line, sheet) for one in sheet.lines},
        typed=filled,
        total=total_of_answers(desk(), job, _said(filled, "yes"), _said(filled, "no")) if filled else sheet.approved,
        totals=totals_text(sheet.totals, sheet.locale),
        record=answer_record(desk(), job),
        law=LAW,
        how=HOW,
        is_contrary=bool(text("instead")) or any(one.code == "answered-otherwise" for one in problems()),
    )


@open_to(*EVERYBODY)
def take_back_page(job: str) -> ResponseReturnValue:
    """The customer takes a yes back, as long as nothing is ordered on it."""
    if request.method == "POST" and (gone := deed(lambda: _taken_back(job))):
        return gone
    return show("quotes/take_back.html", job=job, sheet=answer_sheet(desk(), job), how=HOW, ticked=marked("line"))


@open_to(*EVERYBODY)
def answers_file(job: str) -> ResponseReturnValue:
    """All answers in order, as text for the shop's file."""
    found = answer_record(desk(), job)
    return attachment(record_text(found), f"answers-{found.job}", "txt")


def who_said() -> str:
    """Who gave the answer: one of those entitled, or another name that was typed."""
    return text("another") if text("who") == ANOTHER else text("who")


def how_told() -> str:
    """How the answer came. Refuses silence."""
    if not text("how"):
        raise refused("how-not-said")
    return read("how", one_word, "how", HOW)


def _answered(job: str) -> str:
    spoken = Spoken(
        yes=_said(request.form, "yes"),
        no=_said(request.form, "no"),
        who=who_said(),
        how=how_told(),
        contact=text("contact"),
        words=text("words"),
        revision=_revision(),
        instead=bool(text("instead")),
        conditions=text("condition"),
    )
    standing = take_down(desk(), job, spoken)
    back = url_for("quotes.take_back_page", job=job) if spoken.yes else ""
    tell(told_words(standing.quote, standing.answers), undo=back)
    return url_for("quotes.answer_page", job=job)


def _taken_back(job: str) -> str:
    labels = marked("line")
    taken = TakenBack(labels=labels, who=who_said(), how=how_told(), contact=text("contact"), words=text("words"))
    withdraw(desk(), job, taken)
    tell(_("Taken back: %(lines)s. These lines wait again.") % {"lines": ", ".join(labels)})
    return url_for("quotes.answer_page", job=job)


def _freight(line: QuoteLine, sheet: AnswerSheet) -> str:
    return freight_words(line, [one.line.label for one in sheet.lines], sheet.locale)


def _with_marks(job: str) -> str:
    """This page with the answers marked so far in its address, so that Back leads to a page a browser can ask for anew.
    What was written down besides never goes there: where there is some, the answer to the form shows the total."""
    asked: dict[str, Any] = {"revision": request.args["revision"]} if request.args.get("revision") else {}
    return url_for("quotes.answer_page", job=job, **asked, **_marks(request.form), _anchor="comes-to")


def _marks(sent: Mapping[str, str]) -> dict[str, Any]:
    """Of all that was sent, the lines with a yes or a no."""
    return {name: value for name, value in sent.items() if name.startswith(LINE) and value in ("yes", "no")}


def _said(sent: Mapping[str, str], word: str) -> tuple[str, ...]:
    """Labels of the lines with this word."""
    return tuple(name.removeprefix(LINE) for name, value in _marks(sent).items() if value == word)


def _revision() -> int | None:
    typed = request.args.get("revision", "").strip()
    return count(typed) if typed else None
