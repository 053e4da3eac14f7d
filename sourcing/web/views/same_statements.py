"""One statement of the equivalence table with all that happened to it; new ones; and other names of makers."""

from collections.abc import Callable
from typing import Any

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.maker_names import add_maker_name, maker_names, remove_maker_name
from ...actions.same_parts import statement_whole
from ...actions.statement_add import Told, add_statement
from ...actions.statement_deeds import (
    answer_doubt,
    doubt_statement,
    restore_statement,
    set_standing,
    withdraw_statement,
)
from ...basics.equivalence import SENTENCES, STANDINGS, Standing
from ...basics.typed import count, one_word
from ...documents.equivalences import alias_words, event_words
from ..desks import desk
from ..forms import day, deed, read, tell, text
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show
from ..words import _

NAMES = ("condition", "machine", "serial_from", "serial_to", "stated_by")


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the table."""
    both = ["GET", "POST"]
    one = "/same-parts/statements/<int:statement>"
    blueprint.add_url_rule(one, "statement_page", statement_page)
    blueprint.add_url_rule(f"{one}/change", "change_page", change_page, methods=both)
    blueprint.add_url_rule("/same-parts/statements", "statement_asked", statement_asked)
    blueprint.add_url_rule("/same-parts/add", "add_page", add_page, methods=both)
    blueprint.add_url_rule("/same-parts/makers", "makers_page", makers_page)
    blueprint.add_url_rule("/same-parts/makers/name", "makers_name", makers_name, methods=both)
    blueprint.add_url_rule("/same-parts/makers/take-away", "makers_take_away", makers_take_away, methods=both)


@open_to(*EVERYBODY)
def statement_page(statement: int) -> ResponseReturnValue:
    """What it says, how far it is trusted, what happened to it."""
    found = statement_whole(desk(), statement)
    return show(
        "same/statement.html",
        found=found,
        one=found.kept.statement,
        events=[event_words(event) for event in found.kept.events],
        standings=STANDINGS,
        standing=request.args.get("standing", ""),
    )


@open_to(*EVERYBODY)
def statement_asked() -> ResponseReturnValue:
    """A statement by the number somebody typed."""
    return statement_page(count(request.args.get("statement", "").strip()))


@open_to(*WITH_COSTS)
def change_page(statement: int) -> ResponseReturnValue:
    """Doubt it, answer a doubt, trust it more or less, withdraw it, restore it: always for a reason."""
    if request.method == "POST" and (gone := deed(lambda: _change(statement))):
        return gone
    return statement_page(statement)


@open_to(*WITH_COSTS)
def add_page() -> ResponseReturnValue:
    """Add one statement."""
    if request.method == "POST" and (gone := deed(_add)):
        return gone
    return show("same/add.html", asked=request.args, relations=list(SENTENCES), standings=STANDINGS)


@open_to(*EVERYBODY)
def makers_page() -> ResponseReturnValue:
    """Other names of makers, and what they stand for."""
    return show("same/makers.html", found=[(one, alias_words(one)) for one in maker_names(desk())])


@open_to(*WITH_COSTS)
def makers_name() -> ResponseReturnValue:
    """Keep another name."""
    if request.method == "POST" and (gone := deed(_name_maker)):
        return gone
    return makers_page()


@open_to(*WITH_COSTS)
def makers_take_away() -> ResponseReturnValue:
    """Take a name away."""
    if request.method == "POST" and (gone := deed(_take_name_away)):
        return gone
    return makers_page()


def _change(statement: int) -> str:
    what = read("what", one_word, "what", tuple(DEEDS))
    back = DEEDS[what](statement)
    address = url_for("same.statement_page", statement=statement)
    tell(DONE[what](), undo=f"{url_for('same.statement_page', statement=statement, **back)}#change")
    return address


def _standing(statement: int) -> dict[str, Any]:
    before = statement_whole(desk(), statement).kept.statement.standing
    set_standing(desk(), statement, _typed_standing(), text("reason"))
    return {"standing": before}


def _doubt(statement: int) -> dict[str, Any]:
    doubt_statement(desk(), statement, text("reason"))
    return {}


def _answer(statement: int) -> dict[str, Any]:
    answer_doubt(desk(), statement, text("reason"), _typed_standing() if text("standing") else None)
    return {}


def _withdraw(statement: int) -> dict[str, Any]:
    withdraw_statement(desk(), statement, text("reason"))
    return {}


def _restore(statement: int) -> dict[str, Any]:
    restore_statement(desk(), statement, text("reason"))
    return {}


DEEDS: dict[str, Callable[[int], dict[str, Any]]] = {
    "standing": _standing,
    "doubt": _doubt,
    "answer": _answer,
    "withdraw": _withdraw,
    "restore": _restore,
}
"""By the name of the button; each says what the page to take it back needs."""

DONE: dict[str, Callable[[], str]] = {
    "standing": lambda: _("It has the other standing from now on."),
    "doubt": lambda: _("It counts as unchecked until the doubt is answered."),
    "answer": lambda: _("The doubt is laid aside."),
    "withdraw": lambda: _("It counts no more. Nothing is deleted."),
    "restore": lambda: _("It counts again."),
}


def _typed_standing() -> Standing:
    return read("standing", one_word, "standing", STANDINGS)


def _add() -> str:
    stated_on, counted = day("stated_on"), text("count")
    told = Told(
        left=_number("left"),
        relation=text("relation"),
        right=_number("right"),
        source=text("source"),
        standing=text("standing") or "unchecked",
        count=count(counted) if counted else 1,
        stated_on=stated_on,
        **{name: text(name) for name in NAMES},
    )
    number = add_statement(desk(), told).statement.number or 0
    page = url_for("same.statement_page", statement=number)
    tell(_("The statement is kept."), undo=f"{page}#change")
    return page


def _number(side: str) -> str:
    """As it is typed in one piece: maker and number, our own code under 'ours'."""
    maker = "ours" if text(f"{side}_whose") == "ours" else text(f"{side}_maker").replace(":", " ")
    return f"{maker}:{text(f'{side}_number')}"


def _name_maker() -> str:
    kept = add_maker_name(desk(), text("name"), text("maker"))
    tell(f"{alias_words(kept)}.", undo=url_for("same.makers_page"))
    return url_for("same.makers_page")


def _take_name_away() -> str:
    gone = remove_maker_name(desk(), text("name"))
    again = url_for("same.makers_page", name=gone.alias, maker=gone.maker)
    tell(_("The name stands for nobody else any more."), undo=again)
    return url_for("same.makers_page")
