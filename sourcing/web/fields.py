"""Which field of a form a refusal is about: the refusal leads to the field, and the field says that it was refused.

A view that reads a field says so itself (`forms.read`). What an action refuses is about the field named here for the
kind of refusal. Nothing is led to a field that is not on the page, or that the form sent did not have.
"""

from collections.abc import Mapping
from typing import NamedTuple

from flask import g, request
from markupsafe import Markup

from ..actions.customer_answer import ABOUT_LINES
from ..basics.problem import Problem, at_counter
from ..documents.problem_words import problem_lines
from .desks import sees_costs
from .told_to import told_to

LINE = "line-"
"""How the pages on which lines are answered name the answer to one."""

FIRST_LINE = f"{LINE}*"

FIELDS: Mapping[str, tuple[str, ...]] = {
    "link-name-missing": ("name",),
    "link-name-unknown": ("name",),
    "link-nothing-answered": (FIRST_LINE,),
    "link-condition-without-yes": ("conditions",),
    "no-answer": (FIRST_LINE,),
    "not-entitled": ("who",),
    "how-not-said": ("how",),
    "drawing-not-read": ("drawing",),
    "link-day-wrong": ("until",),
    "name-missing": ("name",),
    "name-taken": ("name",),
    "name-too-long": ("name",),
    "log-in-wrong": ("old", "name"),
    "first-code-wrong": ("code",),
    **dict.fromkeys(("password-short", "password-long", "password-guessed"), ("new", "password")),
    **dict.fromkeys(("words-missing", "not-done-why", "take-back-without-words"), ("words", "why", "reason")),
    "reason-blank": ("reason", "why"),
    "exempt-without-words": ("exempt_because",),
    "source-blank": ("source",),
    "part-code-missing": ("code",),
    "part-code-too-long": ("code",),
    "part-code-damaged": ("code",),
    "part-there-already": ("code",),
    "supplier-short-name": ("supplier",),
    "supplier-is-there": ("supplier",),
    "supplier-not-chosen": ("supplier",),
    "day-not-said": ("dated",),
    "dated-ahead": ("dated",),
    "dated-before-order": ("dated",),
    "freight-not-said": ("freight",),
    "paper-has-no-number": ("paper",),
    "paper-counted-before": ("paper",),
    "promise-of-nobody": ("said_by",),
    "promise-in-the-past": ("latest",),
    "promise-backwards": ("latest",),
    "deposit-amount": ("taken", "back"),
    "deposit-how": ("how", "how_back"),
    "credit-not-said": ("credit",),
    "credit-above-expected": ("credit",),
    "pieces-missing": ("pieces",),
    "back-more-than-came": ("pieces",),
    "condition-without-yes": ("conditions", "condition"),
    "rate-not-usable": ("rate",),
    "rate-far-off": ("rate",),
    "rate-comes-back": ("rate",),
    "rate-needs-why": ("why",),
}
"""By the kind of refusal, the names of the field it can only be about, the likeliest first."""

BOXES = {"Your name": "name", "Conditions, if any": "conditions", "Anything else": "words"}
"""Of 'words-too-long': the box as its sentence names it."""


WITH_LABELS = ABOUT_LINES | {"ordered-already", "freight-not-answered", "freight-for-nothing", "freight-alone"}
"""Kinds whose `found` is the label of a line that is answered, or the labels of several."""


class Led(NamedTuple):
    """A field on the page that a refusal leads to: its id, and what it is called there."""

    at: str
    label: str


class RefusedLine(NamedTuple):
    """A line of what was refused, the id it can be pointed at by, and the field it leads to; None: to none."""

    words: str
    at: str
    led: Led | None


def note_field(problems: tuple[Problem, ...], field: str) -> None:
    """Remember that these problems are about that field, as the view knows that read it."""
    g.read_wrong = {**g.get("read_wrong", {}), **dict.fromkeys(problems, field)}


def refused_here(name: str, at: str, label: str, is_group: bool = False) -> str:
    """The ids of the refusals about this field, parted by blanks; '' where nothing is wrong with it. Asked by every
    field as it is written, so that a refusal, written after them, knows where it leads. Of a group in which nothing is
    chosen nothing is sent."""
    if not g.get("problems") or not (is_group or name in request.values):
        return ""
    led: dict[str, Led] = g.setdefault("led", {})
    mine = []
    for one, told in zip(g.problems, told_problems(), strict=True):
        where = _id(told)
        if where not in led and any(_is(name, wanted) for wanted in _fields(one)):
            led[where] = Led(at, label)
            mine.append(where)
    return " ".join(mine)


def told_problems() -> tuple[Problem, ...]:
    """What was refused in this request, as this page tells it to this person; one for one in the same order."""
    return told_to(tuple(map(at_counter, g.get("problems", ()))), sees_costs())


def more_of(at: str, hint: str, wrong: str) -> Markup:
    """The attributes by which a field points at what says more of it: its hint, and the refusals about it."""
    told = " ".join([*([f"{at}-hint"] if hint else []), *([wrong] if wrong else [])])
    described = Markup(' aria-describedby="{}"').format(told) if told else Markup()
    return described + Markup(' aria-invalid="true"') if wrong else described


def refused_group(wrong: str) -> Markup:
    """The same for a group of choices; only a group of radio buttons may be called wrong as a whole (WAI-ARIA 1.2)."""
    return Markup(' role="radiogroup"') + more_of("", "", wrong) if wrong else Markup()


def refused_lines(some: list[Problem]) -> tuple[list[RefusedLine], str]:
    """The problems as lines with where each leads, and what is to be done about all of them. To be asked once the
    fields of the page are written."""
    lines, remedy = problem_lines(some)
    led: dict[str, Led] = g.get("led", {})
    whose = {words: one for one in reversed(some) for words in (one.sentence(), f"{one.fault()}.")}
    return [RefusedLine(words, _id(whose[words]), led.get(_id(whose[words]))) for words in lines], remedy


def _id(one: Problem) -> str:
    """Two problems of one sentence are one line."""
    sentences = list(dict.fromkeys(each.sentence() for each in told_problems()))
    return f"refused-{sentences.index(one.sentence()) + 1}"


def _fields(one: Problem) -> tuple[str, ...]:
    read: dict[Problem, str] = g.get("read_wrong", {})
    if one in read:
        return (read[one],)
    if one.code in WITH_LABELS:
        return tuple(f"{LINE}{label}" for label in one.found.split(", "))
    if one.code == "words-too-long":
        return (BOXES.get(one.found, ""),)
    if one.code == "amount-with-wrong-step":
        return (one.found,)
    return FIELDS.get(one.code, ())


def _is(name: str, wanted: str) -> bool:
    return name.startswith(LINE) if wanted == FIRST_LINE else name == wanted
