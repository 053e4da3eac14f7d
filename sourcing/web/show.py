"""Render a page: what every page needs beside its own values, in one place."""

from collections.abc import Iterable
from datetime import date, datetime
from decimal import Decimal
from functools import cache
from hashlib import sha256
from pathlib import Path
from typing import NamedTuple

from flask import Flask, current_app, render_template, request, url_for
from werkzeug.datastructures import MultiDict
from werkzeug.exceptions import RequestEntityTooLarge

from ..actions.shop_facts import shop_facts
from ..basics.money import Money
from ..basics.person import Role
from ..documents import pdf
from ..documents.amounts import clock_text, date_text, decimal_text, money_text, month_text, percent_text
from ..documents.as_written import as_written
from ..documents.deeds import done_words
from ..documents.pages import environment
from .desks import desk, may, now, person, sees_costs
from .fields import more_of, refused_group, refused_here, refused_lines, told_problems
from .forms import form_name, problems
from .guard import EVERYBODY, OWNER, WITH_COSTS
from .page_words import install
from .said import said, sentence, told
from .words import language, later
from .written import locale


class Place(NamedTuple):
    """One of the places every page leads to."""

    page: str
    words: str
    roles: tuple[Role, ...]


PLACES = (
    Place("today.today_page", later("Today"), EVERYBODY),
    Place("find.find_page", later("Find"), EVERYBODY),
    Place("jobs.list_page", later("Jobs"), EVERYBODY),
    Place("orders.list_page", later("Orders"), EVERYBODY),
    Place("receiving.receive_page", later("Receive"), EVERYBODY),
    Place("sheets.list_page", later("Sheets"), WITH_COSTS),
    Place("alike.list_page", later("Look-alikes"), WITH_COSTS),
    Place("same.table_page", later("Same parts"), EVERYBODY),
    Place("margins.margins_page", later("Margins"), OWNER),
    Place("shop.settings_page", later("Shop"), WITH_COSTS),
)


BELONGS = {"quotes": "jobs", "links": "jobs", "photos": "jobs"}
"""Parts of the counter that stand under another's place."""


def show(template: str, **values: object) -> tuple[str, int]:
    """The page and its HTTP status: 409 where something was refused, else 200."""
    return render_template(template, **values), 409 if problems() else 200


@cache
def asset(name: str) -> str:
    """The address of a style or script, with its hash: a browser keeps it until it changes."""
    content = (Path(current_app.static_folder or "") / name).read_bytes()
    return url_for("static", filename=name, v=sha256(content).hexdigest()[:12])


def prepare(app: Flask) -> None:
    """Give the templates what every page needs."""
    papers = environment()
    app.jinja_env.undefined = papers.undefined  # nothing undefined passes
    app.jinja_env.finalize = papers.finalize
    app.jinja_env.trim_blocks = app.jinja_env.lstrip_blocks = True
    install(app, papers.finalize or (lambda value: value))
    app.jinja_env.filters.update(
        money=_money,
        date=_date,
        number=_number,
        percent=percent_text,
        said=said,
        told=told,
        written=_written,
        done=done_words,
        sentence=sentence,
        clock=_clock,
        month=_month,
        that_can_be_made=_that_can_be_made,
    )
    app.jinja_env.globals.update(refused_here=refused_here, refused_lines=refused_lines)
    app.jinja_env.globals.update(more_of=more_of, refused_group=refused_group)
    app.context_processor(_common)


def _written(sentence: str) -> str:
    """A sentence with its days and amounts as this page writes them."""
    return as_written(sentence, locale())


def _that_can_be_made(kinds: Iterable[str]) -> list[str]:
    """The kinds of file, without PDF where this computer makes none: the page itself prints as well."""
    return [kind for kind in kinds if kind != "pdf" or pdf.makes_pdf()]


def _money(amount: Money) -> str:
    return money_text(amount, locale())


def _date(day: date) -> str:
    return date_text(day, locale())


def _month(month: str) -> str:
    return month_text(month, locale())


def _number(value: Decimal) -> str:
    return decimal_text(value, locale())


def _clock(moment: datetime) -> str:
    """The day and the time of it, as the shop writes them."""
    return clock_text(moment, locale())


def _common() -> dict[str, object]:
    me = person()
    facts = shop_facts(desk())
    return {
        "me": me,
        "may": may,
        "sees_costs": sees_costs(),
        "places": [place for place in PLACES if me and me.role in place.roles],
        "here": request.endpoint or "",
        "area": BELONGS.get(request.blueprint or "", request.blueprint or ""),
        "shop_name": facts.name,
        "is_set_up": facts.is_set_up,
        "problems": told_problems(),
        "once": form_name,
        "now": now(),
        "language": language(),
        "typed": _typed(),
        "asset": asset,
    }


def _typed() -> MultiDict[str, str]:
    """What was sent, to stand in the fields again; nothing where it was too large to be read, as the page then says."""
    try:
        return request.form
    except RequestEntityTooLarge:
        return MultiDict()
