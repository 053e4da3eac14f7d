"""Change a supplier's terms from a day on, take a version back, begin with a new supplier."""

from collections.abc import Callable
from functools import wraps
from typing import ParamSpec, TypeVar

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.terms import add_supplier, look_at_terms, set_terms, suppliers_terms, withdraw_terms
from ...actions.terms_form import USUAL, term_texts, terms_said
from ...actions.terms_labels import field_in_the_form, in_the_form, problem_in_the_form, refused_in_the_form
from ...basics.problem import Refused, refused
from ...basics.terms import Terms
from ...basics.terms_view import SupplierTerms, TermsChange
from ...basics.value import changed
from ..desks import desk
from ..forms import day, deed, is_sure, marked, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show
from ..words import _
from .look_first import ahead, kept, mark_of

P = ParamSpec("P")
T = TypeVar("T")

MARKED = ("calendar.week", "order_days", "tax.on")
"""Fields that are boxes to mark."""


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    both = ["GET", "POST"]
    blueprint.add_url_rule("/terms/new", view_func=new_supplier_page, methods=both)
    blueprint.add_url_rule("/terms/of/<supplier>/change", view_func=change_terms_page, methods=both)
    blueprint.add_url_rule("/terms/of/<supplier>/withdraw", view_func=withdraw_terms_page, methods=both)


@open_to(*WITH_COSTS)
def change_terms_page(supplier: str) -> ResponseReturnValue:
    """What would change is shown first, and kept when it was seen."""
    if gone := kept(lambda: _look(supplier), lambda: _change(supplier)):
        return gone
    looked = ahead(lambda: _look(supplier))
    found = suppliers_terms(desk(), supplier)
    texts = term_texts(_shown(found))
    words = {"named": field_in_the_form, "as_filled_in": in_the_form}
    return show("shop/terms_change.html", found=found, texts=texts, looked=looked, mark=mark_of(looked), **words)


@open_to(*WITH_COSTS)
def withdraw_terms_page(supplier: str) -> ResponseReturnValue:
    """Take the version of a day back, for a reason."""
    if request.method == "POST" and (gone := deed(lambda: _withdraw(supplier))):
        return gone
    found = suppliers_terms(desk(), supplier)
    return show("shop/terms_withdraw.html", found=found, starts_on=request.args.get("starts_on", ""))


@open_to(*WITH_COSTS)
def new_supplier_page() -> ResponseReturnValue:
    """The few things a new supplier needs; the rest is changed on its page."""
    if request.method == "POST" and (gone := deed(_new)):
        return gone
    return show("shop/supplier_new.html")


def _typed() -> dict[str, str]:
    """The usual fields that stood on the form."""
    typed = {field: text(field) for field in USUAL if field in request.form}
    return typed | {field: ", ".join(marked(field)) for field in MARKED if f"{field}-there" in request.form}


def _said(supplier: str) -> dict[str, str]:
    """What was typed otherwise than it was shown: what holds today, whatever day the change begins on."""
    return terms_said(_shown(suppliers_terms(desk(), supplier)), _typed(), text("more"))


def _shown(found: SupplierTerms) -> Terms:
    return found.holds or found.versions[0]


def told_in_the_form(done: Callable[P, T]) -> Callable[P, T]:
    """What is refused of terms that were filled in is told as the form calls its fields."""

    @wraps(done)
    def told(*args: P.args, **words: P.kwargs) -> T:
        try:
            return done(*args, **words)
        except Refused as refusal:
            raise refused_in_the_form(refusal) from None

    return told


@told_in_the_form
def _look(supplier: str) -> TermsChange:
    looked = look_at_terms(desk(), supplier, _said(supplier), day("starts_on"), text("past"), is_sure())
    return changed(looked, told=tuple(map(problem_in_the_form, looked.told)))


@told_in_the_form
def _change(supplier: str) -> str:
    done = set_terms(desk(), supplier, _said(supplier), day("starts_on"), text("past"), is_sure())
    begun = done.starts_on.isoformat()
    is_new = done.before is None or done.before.starts_on != done.starts_on
    undo = url_for("shop.withdraw_terms_page", supplier=supplier, starts_on=begun) if is_new else ""
    tell(_("The terms of %(name)s are changed.") % {"name": done.name}, undo=undo)
    return url_for("shop.supplier_page", supplier=supplier)


@told_in_the_form
def _withdraw(supplier: str) -> str:
    starts_on = day("starts_on")
    if starts_on is None:
        raise refused("not-a-day", found="")
    done = withdraw_terms(desk(), supplier, starts_on, text("why"), text("past"))
    tell(_("The terms are taken back: what held before holds on."))
    return url_for("shop.supplier_page", supplier=supplier) if done.terms else url_for("shop.terms_page")


@told_in_the_form
def _new() -> str:
    done = add_supplier(desk(), text("supplier"), terms_said(None, _typed()), day("starts_on"), is_sure())
    tell(_("%(name)s is there. See below what is not known yet, and change the terms.") % {"name": done.name})
    return url_for("shop.supplier_page", supplier=done.supplier)
