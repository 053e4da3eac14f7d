"""Read a basket: a JSON file to needs, offers, terms and rates, everything wrong with it told at once."""

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

from ..basics.basket import Basket, BasketOffer
from ..basics.problem import Place, Refused, problem
from ..basics.value import changed
from .basket_checks import contradictions
from .basket_shop import settings_of
from .exact_json import exact_json
from .files import read_bytes
from .fitting import fitted

ALWAYS, NEVER = "0001-01-01", "9999-12-31"


def read_basket(path: Path, at: datetime | None, now: datetime) -> Basket:
    """The basket of a file; `at` goes before the file's own moment, and `now` counts where neither is given.

    Refuses with everything that is wrong, each with its place: first what is no JSON, then what does not fit the
    fields, then what contradicts itself.
    """
    return basket_from(read_bytes(path), path.name, at, now)


def basket_from(data: bytes, file: str, at: datetime | None, now: datetime) -> Basket:
    """The same from the file's bytes."""
    tree = exact_json(data, file)
    if isinstance(tree, dict):
        tree.setdefault("at", now.isoformat(timespec="minutes"))
        _fill_in(tree, file, at.date().isoformat() if at else str(tree["at"])[:10])
    basket = fitted(tree, Basket, file)
    basket = changed(basket, at=at or basket.at)
    wrong = tuple(contradictions(basket, settings_of(basket)))
    if wrong:
        where = Place(file=file)
        raise Refused(*(problem(one.code, place=where, at=one.at, found=one.found, wanted=one.wanted) for one in wrong))
    return changed(basket, offers=tuple(_dated(offer, basket) for offer in basket.offers))


def _dated(offer: BasketOffer, basket: Basket) -> BasketOffer:
    """The offer with the day of its price as the day of its sheet; the day of planning where none is given."""
    day = offer.priced_on or min(offer.source.sheet_date, basket.at.date())
    return changed(offer, source=changed(offer.source, sheet_date=day))


def _fill_in(tree: dict[str, Any], file: str, day: str) -> None:
    """What a file may leave out because something else in it says it; `day` is the day of planning, as written.

    What is no object is left to be told.
    """
    terms = list(_objects(tree.get("suppliers")))
    for _, one in terms:
        one.setdefault("starts_on", ALWAYS)
        if "supplier" in one:
            one.setdefault("name", one["supplier"])
    for _, rate in _objects(tree.get("rates")):
        rate.setdefault("into", tree.get("currency"))
    currencies = _currencies([one for _, one in terms], day)
    for number, offer in _objects(tree.get("offers")):
        offer.setdefault("currency", currencies.get(str(offer.get("supplier")), tree.get("currency")))
        place = {"sheet": 0, "file": file, "worksheet": "offers", "row": number + 1, "sheet_date": NEVER}
        offer.setdefault("source", place)
        lead = offer.get("lead_time")
        if isinstance(lead, dict) and lead.keys() & {"least", "most", "leaves_on"}:
            lead.setdefault("text", _lead_words(lead))


def _currencies(terms: list[dict[str, Any]], day: str) -> dict[str, object]:
    """As `basket_shop.currencies_at`, of entries that are not read yet: days as written, ISO 8601, sort as text."""
    by_day = sorted(terms, key=lambda one: str(one["starts_on"]))
    started = [one for one in by_day if str(one["starts_on"]) <= day]
    return {str(one.get("supplier")): one.get("currency") for one in (*reversed(by_day), *started)}


def _objects(some: object) -> list[tuple[int, dict[str, Any]]]:
    entries = enumerate(some) if isinstance(some, list) else ()
    return [(number, one) for number, one in entries if isinstance(one, dict)]


def _lead_words(lead: Mapping[str, object]) -> str:
    if lead.get("leaves_on") is not None:
        return f"leaves on {lead['leaves_on']}"
    least, most = lead.get("least"), lead.get("most")
    return f"{most} working days" if least == most else f"{least} to {most} working days"
