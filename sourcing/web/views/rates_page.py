"""Exchange rates: the table, and one added with its day and source."""

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.rates import add_rate, rates_now
from ...documents.rates import rates_csv
from ..desks import desk
from ..files import attachment
from ..forms import day, deed, tell, text
from ..guard import WITH_COSTS, open_to
from ..said import told
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/rates", view_func=rates_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/rates.csv", view_func=rates_file)


@open_to(*WITH_COSTS)
def rates_page() -> ResponseReturnValue:
    """The rates there are, the newest first."""
    if request.method == "POST" and (gone := deed(_add)):
        return gone
    return show("shop/rates.html", found=rates_now(desk(), request.args.get("page", 1, type=int)))


@open_to(*WITH_COSTS)
def rates_file() -> ResponseReturnValue:
    """The table as rates.csv, which can be taken in again."""
    return attachment(rates_csv(rates_now(desk()).every), "rates", "csv")


def _add() -> str:
    minded = add_rate(desk(), text("currency"), text("rate"), day("dated"), text("source"), bool(text("sure")))
    tell(" ".join([_("The rate is kept."), *map(told, minded)]))
    return url_for("shop.rates_page")
