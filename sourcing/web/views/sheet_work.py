"""A sheet that was sent: how far it is read, what is asked about it, and what keeps it out."""

from collections.abc import Mapping

from flask import Blueprint, jsonify, redirect, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.import_sheets import Said
from ...actions.sheet_list import supplier_sheets
from ...actions.sheet_questions import SheetAsked, said_of
from ...actions.sheet_sent import SheetTaken
from ...basics.problem import refused
from ...basics.value import changed
from ...documents.sheet_words import (
    answer_words,
    asked_heading,
    asked_words,
    field_options,
    meaning_words,
    told_words,
)
from ..desks import desk
from ..forms import day, deed, tell, text
from ..guard import WITH_COSTS, open_to
from ..sheet_desk import Sent, sheet_desk
from ..show import show
from ..words import _

OTHER = "another"


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of sheets."""
    blueprint.add_url_rule("/sheets/sent/<sent>", "sent_page", sent_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/sheets/sent/<sent>/let-go", "let_go", let_go, methods=["POST"])
    blueprint.add_url_rule("/sheets/work/<work>", "how_far", how_far)


@open_to(*WITH_COSTS)
def sent_page(sent: str) -> ResponseReturnValue:
    """How far it is; once it is kept, the sheet itself."""
    mine = sheet_desk().sent.get(sent)
    if mine is None:
        return show("sheets/gone.html")[0], 404
    if request.method == "POST" and (gone := deed(lambda: _answer(mine))):
        return gone
    if not mine.work.is_over:
        return show("sheets/waiting.html", work=mine.work, before=sheet_desk().works.before(mine.work), sent=mine)
    if mine.taken and mine.taken.sheet is not None:
        return _kept(mine, mine.taken)
    asked = mine.asked
    if asked is None or not asked.can_answer:
        return show("sheets/kept_out.html", sent=mine, why=_why_not(mine, asked), told=told_words)
    return show(
        "sheets/asked.html",
        sent=mine,
        asked=asked,
        samples=mine.taken.samples if mine.taken else (),
        suppliers=supplier_sheets(desk()) if asked.asks_supplier else (),
        options=dict(field_options()),
        words=asked_words,
        meaning=meaning_words,
        told=told_words,
        answer=answer_words,
        heading=asked_heading,
    )


@open_to(*WITH_COSTS)
def let_go(sent: str) -> ResponseReturnValue:
    """Nothing is done with it; the file is forgotten."""
    mine = sheet_desk().sent.get(sent)

    def forget() -> str:
        if mine is not None:
            sheet_desk().let_go(mine)
            tell(_("%(file)s is forgotten; nothing of it was kept.") % {"file": mine.file})
        return url_for("sheets.list_page")

    return deed(forget) or redirect(url_for("sheets.list_page"), code=303)


@open_to(*WITH_COSTS)
def how_far(work: str) -> ResponseReturnValue:
    """For the script of a waiting page: a few words, and whether it is over."""
    found = sheet_desk().works.get(work)
    if found is None:
        return jsonify(words="", over=True)
    return jsonify(words=found.words, over=found.is_over)


def _kept(mine: Sent, taken: SheetTaken) -> ResponseReturnValue:
    if not mine.is_told:
        mine.is_told = True
        if taken.again:
            tell(_("The very same file is there already; nothing was done."))
        else:
            undo = url_for("sheets.take_out_page", sheet=taken.sheet)
            tell(_("%(file)s is kept as sheet %(sheet)s.") % {"file": mine.file, "sheet": taken.sheet}, undo=undo)
    return redirect(url_for("sheets.sheet_page", sheet=taken.sheet))


def _why_not(mine: Sent, asked: SheetAsked | None) -> tuple[object, ...]:
    """What keeps it out; () where a fault of the program does."""
    return asked.rest if asked else mine.work.problems


def _answer(mine: Sent) -> str:
    asked = mine.asked
    if asked is None or text("asked") != str(mine.asks):
        raise refused("sheet-asked-anew")
    answers, pieces = _answers(asked), _typed("pieces", asked)
    said = said_of(asked, answers, pieces, mine.said)
    sheet_desk().again(mine, _with_who_and_when(said, asked))
    return url_for("sheets.sent_page", sent=mine.name)


def _with_who_and_when(said: Said, asked: SheetAsked) -> Said:
    if asked.asks_supplier:
        if not text("supplier"):
            raise refused("supplier-not-chosen")
        said = changed(said, supplier=text("supplier"))
    if asked.asks_day:
        if (dated := day("dated")) is None:
            raise refused("day-not-said")
        said = changed(said, dated=dated)
    return said


def _answers(asked: SheetAsked) -> dict[int, str]:
    """What is chosen for each field; what is typed beside counts where none of the likely answers is."""
    typed, found = _typed("other", asked), {}
    for at, _one in enumerate(asked.fields):
        chosen = text(f"said-{at}")
        found[at] = " ".join(typed[at].casefold().split()) if chosen in ("", OTHER) else chosen
    return found


def _typed(name: str, asked: SheetAsked) -> Mapping[int, str]:
    return {at: text(f"{name}-{at}") for at, _one in enumerate(asked.fields)}
