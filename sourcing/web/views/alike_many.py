"""Many look-alikes at once: by a workbook filled in, by their score; and every answer there was."""

from decimal import Decimal, InvalidOperation
from typing import Any

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.alike_answers import alike_answers
from ...actions.look_alikes import Narrowed, candidates_of, suppliers_with_sheets
from ...actions.review import accept_by_score
from ...actions.review_file import judge_sent
from ...actions.sheet_sent import file_name
from ...basics.judgement import ByScore
from ...basics.problem import Refused, refused
from ...basics.typed import count
from ...documents.review import candidates_xlsx, judgement_words, short_words
from ..desks import desk
from ..files import attachment
from ..forms import deed, read, refuse, tell
from ..guard import WITH_COSTS, open_to
from ..held_tables import held_tables
from ..show import show
from ..words import _

MOST_IN_FILE = 5000
"""Rows of a workbook to fill in: more than anybody answers in a day, and written in seconds."""

MOST_SHOWN = 100
"""Candidates that are shown before they are accepted by their score; the workbook has all."""


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of look-alikes."""
    blueprint.add_url_rule("/look-alikes/candidates.xlsx", "workbook", workbook)
    blueprint.add_url_rule("/look-alikes/file", "file_page", file_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/look-alikes/file/<told>", "told_page", told_page)
    blueprint.add_url_rule("/look-alikes/by-score", "by_score_page", by_score_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/look-alikes/answers", "answers_page", answers_page)


def narrowed() -> Narrowed:
    """Which candidates the address asks for."""
    args = request.args
    return Narrowed(
        supplier=args.get("supplier", "").strip(), part=args.get("part", "").strip(), likely=bool(args.get("likely"))
    )


def asked(which: Narrowed) -> dict[str, Any]:
    """The same for an address, without blanks."""
    words = {"supplier": which.supplier, "part": which.part, "likely": "yes" if which.likely else ""}
    return {name: value for name, value in words.items() if value}


@open_to(*WITH_COSTS)
def workbook() -> ResponseReturnValue:
    """What waits, to be filled in."""
    return attachment(candidates_xlsx(candidates_of(desk(), narrowed(), MOST_IN_FILE)), "look-alikes", "xlsx")


@open_to(*WITH_COSTS)
def file_page() -> ResponseReturnValue:
    """Take a workbook that was filled in."""
    if request.method == "POST" and (gone := deed(_judge_file)):
        return gone
    suppliers = suppliers_with_sheets(desk())
    return show("alike/file.html", suppliers=suppliers, narrowed=narrowed(), most=MOST_IN_FILE)


@open_to(*WITH_COSTS)
def told_page(told: str) -> ResponseReturnValue:
    """What became of each row of a workbook."""
    return show("alike/told.html", found=held_tables().told(told))


@open_to(*WITH_COSTS)
def by_score_page() -> ResponseReturnValue:
    """Accept all of one supplier from a score on: shown first."""
    if request.method == "POST" and (gone := deed(_accept)):
        return gone
    found = _shown()
    words = [(one, short_words(one)) for one in found.shown[:MOST_SHOWN]] if found else []
    suppliers = suppliers_with_sheets(desk())
    least = request.args.get("least", "0.95")
    return show("alike/by_score.html", found=found, words=words, suppliers=suppliers, least=least)


@open_to(*WITH_COSTS)
def answers_page() -> ResponseReturnValue:
    """Every answer, the newest first."""
    found = alike_answers(desk(), request.args.get("supplier", ""), request.args.get("page", 1, type=int))
    words = [(one, judgement_words(one)) for one in found.shown]
    suppliers = suppliers_with_sheets(desk())
    return show("alike/answers.html", found=found, words=words, suppliers=suppliers)


def _judge_file() -> str:
    sent = request.files.get("file")
    if sent is None or not sent.filename:
        raise refused("no-file-chosen")
    done = judge_sent(desk(), sent.read(), file_name(sent.filename))
    return url_for("alike.told_page", told=held_tables().tell(done))


def _shown() -> ByScore | None:
    """What would be accepted; None where nothing is asked, or it is refused."""
    supplier, least = request.args.get("supplier", ""), request.args.get("least", "")
    if not supplier or not least:
        return None
    try:
        return accept_by_score(desk(), supplier, _score(least))
    except Refused as refusal:
        refuse(refusal)
        return None


def _accept() -> str:
    supplier, least = request.args.get("supplier", ""), _score(request.args.get("least", ""))
    done = accept_by_score(desk(), supplier, least, read("accept", count))
    tell(_("Accepted as unchecked: {count}.").format(count=len(done.done)), undo=url_for("alike.answers_page"))
    return url_for("alike.list_page", supplier=supplier)


def _score(typed: str) -> Decimal:
    try:
        score = Decimal(typed.strip())
    except InvalidOperation:
        raise refused("score-not-between", found=typed) from None
    if not score.is_finite():
        raise refused("score-not-between", found=typed)
    return score
