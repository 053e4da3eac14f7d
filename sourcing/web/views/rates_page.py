"""Exchange rates: the table, and one added with its day and source."""

from datetime import date

from flask import Blueprint, request, url_for
from flask.typing import ResponseReturnValue

from ...actions.rates import add_rate, look_at_rate, rates_now, withdraw_rate
from ...documents.rates import rates_csv
from ..desks import desk
from ..files import attachment
from ..forms import day, day_in, deed, is_sure, mind, tell, text
from ..guard import WITH_COSTS, open_to
from ..said import told
from ..show import show
from ..words import _


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to those of the shop."""
    blueprint.add_url_rule("/rates", view_func=rates_page, methods=["GET", "POST"])
    blueprint.add_url_rule("/rates/take-back/<currency>/<dated>", view_func=rate_out_page, methods=["GET", "POST"])
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


@open_to(*WITH_COSTS)
def rate_out_page(currency: str, dated: str) -> ResponseReturnValue:
    """What holds without it is shown first; it is taken back for a reason."""
    day_of = day_in(dated)
    if request.method == "POST" and (gone := deed(lambda: _take_back(currency, day_of))):
        return gone
    return show("shop/rate_out.html", gone=look_at_rate(desk(), currency, day_of))


def _take_back(currency: str, dated: date) -> str:
    gone = withdraw_rate(desk(), currency, dated, text("why"))
    tell(_("The rate is taken back: %(rate)s.") % {"rate": gone.rate.words()})
    for one in gone.told:
        mind(told(one))
    return url_for("shop.rates_page")


def _add() -> str:
    currency, dated = text("currency").upper(), day("dated") or desk().at.date()
    minded = add_rate(desk(), currency, text("rate"), dated, text("source"), is_sure())
    undo = url_for("shop.rate_out_page", currency=currency, dated=dated.isoformat())
    tell(" ".join([_("The rate is kept."), *map(told, minded)]), undo=undo)
    return url_for("shop.rates_page")
