"""Suppliers' terms: the list, one supplier with all versions of them and what is not known, and files of them."""

from datetime import date

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.setup_sent import take_terms_sent
from ...actions.terms import every_suppliers_terms, suppliers_terms
from ...actions.terms_labels import in_the_form
from ...basics.problem import refused
from ...documents.terms import terms_toml
from ...documents.terms_table import terms_csv, terms_told, terms_xlsx, version_words
from ...documents.terms_words import terms_words
from ..desks import desk
from ..files import attachment
from ..forms import deed, is_sure, tell, text
from ..guard import WITH_COSTS, open_to
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/terms", view_func=terms_page)
    blueprint.add_url_rule("/terms/take-in", view_func=take_in_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/terms/of/<supplier>", view_func=supplier_page)
    blueprint.add_url_rule("/suppliers.toml", view_func=terms_file)
    blueprint.add_url_rule("/terms.csv", view_func=terms_table)
    blueprint.add_url_rule("/terms.xlsx", view_func=terms_workbook)


@open_to(*WITH_COSTS)
def terms_page() -> ResponseReturnValue:
    """Every supplier with what holds on a day."""
    found = every_suppliers_terms(desk(), _on())
    words = {one.supplier: terms_words(one.holds) if one.holds else {} for one in found}
    return show("shop/terms.html", found=found, words=words, on=_on() or desk().at.date())


@open_to(*WITH_COSTS)
def supplier_page(supplier: str) -> ResponseReturnValue:
    """One supplier."""
    found = suppliers_terms(desk(), supplier, _on())
    words = terms_words(found.holds) if found.holds else {}
    return show("shop/supplier.html", found=found, words=words, versions=version_words(found), in_the_form=in_the_form)


@open_to(*WITH_COSTS)
def take_in_page() -> ResponseReturnValue:
    """Entries of a file such as suppliers.toml, all or none."""
    if request.method == "POST" and (gone := deed(_take_in)):
        return gone
    return show("shop/terms_take_in.html")


@open_to(*WITH_COSTS)
def terms_file() -> ResponseReturnValue:
    """What holds as the file a person edits."""
    return attachment(terms_toml(every_suppliers_terms(desk(), _on())), "suppliers", "toml")


@open_to(*WITH_COSTS)
def terms_table() -> ResponseReturnValue:
    """What holds as a table."""
    return attachment(terms_csv(every_suppliers_terms(desk(), _on())), "terms", "csv")


@open_to(*WITH_COSTS)
def terms_workbook() -> ResponseReturnValue:
    """The same as a workbook."""
    return attachment(terms_xlsx(every_suppliers_terms(desk(), _on())), "terms", "xlsx")


def _on() -> date | None:
    typed = request.args.get("on", "").strip()
    try:
        return date.fromisoformat(typed) if typed else None
    except ValueError:
        raise refused("not-a-day", found=typed[:30]) from None


def _take_in() -> str:
    sent = request.files.get("file")
    tell(terms_told(take_terms_sent(desk(), sent.read() if sent else b"", text("past"), is_sure())))
    return url_for("shop.terms_page")
