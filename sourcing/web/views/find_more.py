"""Beside finding: one offer in any quantity, and a belt's length from its pulleys."""

from flask import Blueprint, request
from flask.typing import ResponseReturnValue

from ...actions.belt_length import CAUTION, CAUTION_HANDS, DIAMETERS, UNITS, TwoPulleys, belt_for, centres_for
from ...actions.landed import landed_offers
from ...basics.problem import Refused, refused
from ...basics.typed import count, measure, one_word
from ...documents.landed import item_words, landed_offers_csv, more_words, open_words
from ..desks import desk
from ..files import attachment
from ..forms import refuse
from ..guard import EVERYBODY, WITH_COSTS, open_to
from ..show import show


def add_to(blueprint: Blueprint) -> None:
    """Add these pages to finding."""
    blueprint.add_url_rule("/find/offer", view_func=landed_page)
    blueprint.add_url_rule("/find/offer.csv", view_func=landed_file)
    blueprint.add_url_rule("/find/belt", view_func=belt_page)


@open_to(*WITH_COSTS)
def landed_page() -> ResponseReturnValue:
    """One offer ordered alone in a quantity."""
    offers = landed_offers(desk(), *_offer())
    words = [
        (one, open_words(one.landed), item_words(one.landed.items[0]), more_words(one))
        if one.landed
        else (one, (), (), ())
        for one in offers
    ]
    return show("find/offer.html", words=words, asked=request.args)


@open_to(*WITH_COSTS)
def landed_file() -> ResponseReturnValue:
    """The same as a table."""
    return attachment(landed_offers_csv(landed_offers(desk(), *_offer())), "offer", "csv")


@open_to(*EVERYBODY)
def belt_page() -> ResponseReturnValue:
    """A belt's length from two pulleys and their centre distance, or the distance from a length."""
    said = ""
    try:
        if _text("driver") or _text("driven"):
            said = _belt()
    except Refused as refusal:
        refuse(refusal)
    return show(
        "find/belt.html", asked=request.args, said=said, cautions=(CAUTION, CAUTION_HANDS), units=UNITS, kinds=DIAMETERS
    )


def _belt() -> str:
    centres, length = _text("centres"), _text("length")
    if bool(centres) == bool(length):
        raise refused("centres-or-length")
    drive = TwoPulleys(
        driver=measure(_text("driver")),
        driven=measure(_text("driven")),
        unit=one_word(_text("unit") or "in", "unit", UNITS),
        kind=one_word(_text("kind") or "outside", "diameters", DIAMETERS),
        crossed=bool(_text("crossed")),
    )
    return (belt_for(drive, measure(centres)) if centres else centres_for(drive, measure(length))).words


def _offer() -> tuple[str, str, int]:
    typed = _text("quantity")
    return _text("supplier"), _text("number"), count(typed) if typed else 1


def _text(name: str) -> str:
    return request.args.get(name, "").strip()
