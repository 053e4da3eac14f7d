"""Rows of sheets that may be parts of ours, for a person to judge: a list, and one at a time."""

from flask import Blueprint, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.look_alikes import Narrowed, next_to_judge, one_to_judge, queue_page
from ...actions.review import judge, take_back
from ...basics.judgement import Trust
from ...basics.typed import one_word
from ...documents.look_alike_page import candidate_words
from ..desks import desk
from ..forms import deed, read, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _
from . import alike_look, alike_many, alike_rules

blueprint = Blueprint("alike", __name__)
alike_many.add_to(blueprint)
alike_look.add_to(blueprint)
alike_rules.add_to(blueprint)

ANSWERS = ("yes", "fitted", "no")


@blueprint.get("/look-alikes")
@open_to(*WITH_COSTS)
def list_page() -> ResponseReturnValue:
    """What waits, most worth first."""
    narrowed = alike_many.narrowed()
    found = queue_page(desk(), narrowed, request.args.get("page", 1, type=int))
    words = [(one, candidate_words(one)) for one in found.shown]
    return show("alike/list.html", found=found, words=words, narrowed=narrowed, asked=alike_many.asked(narrowed))


@blueprint.get("/look-alikes/next")
@open_to(*WITH_COSTS)
def next_page() -> ResponseReturnValue:
    """To the one worth most, or to the list where none waits."""
    return redirect(_next(alike_many.narrowed(), None), code=303)


@blueprint.route("/look-alikes/<int:candidate>", methods=["GET", "POST"])
@open_to(*WITH_COSTS)
def candidate_page(candidate: int) -> ResponseReturnValue:
    """The row beside our part; after an answer the next one comes."""
    if request.method == "POST" and (gone := deed(lambda: _answer(candidate))):
        return gone
    narrowed = alike_many.narrowed()
    found = one_to_judge(desk(), candidate, narrowed)
    return show(
        "alike/candidate.html",
        found=found,
        one=found.waiting,
        words=candidate_words(found.waiting),
        narrowed=narrowed,
        asked=alike_many.asked(narrowed),
    )


@blueprint.route("/look-alikes/<int:candidate>/take-back", methods=["GET", "POST"])
@open_to(*WITH_COSTS)
def take_back_page(candidate: int) -> ResponseReturnValue:
    """Take an answer back, for a reason."""
    if request.method == "POST" and (gone := deed(lambda: _take_back(candidate))):
        return gone
    found = one_to_judge(desk(), candidate, Narrowed())
    return show("alike/take_back.html", found=found, one=found.waiting)


def _answer(candidate: int) -> str:
    said = read("answer", one_word, "answer", ANSWERS)
    standing: Trust = "fitted" if said == "fitted" else "unchecked"
    kept = judge(desk(), candidate, "no" if said == "no" else "yes", standing, text("words"))
    narrowed = alike_many.narrowed()
    back = url_for("alike.take_back_page", candidate=candidate, **alike_many.asked(narrowed))
    tell(f"{kept.told}.", undo=back)
    return _next(narrowed, candidate)


def _take_back(candidate: int) -> str:
    tell(f"{take_back(desk(), candidate, text('words')).told}.")
    return url_for("alike.candidate_page", candidate=candidate, **alike_many.asked(alike_many.narrowed()))


def _next(narrowed: Narrowed, after: int | None) -> str:
    following = next_to_judge(desk(), narrowed, after)
    asked = alike_many.asked(narrowed)
    if following is None:
        if after is not None:
            tell(_("That was the last one of the list; what was left for later still waits."))
        return url_for("alike.list_page", **asked)
    return url_for("alike.candidate_page", candidate=following, **asked)
