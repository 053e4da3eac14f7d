"""What is worth a look after files were taken in, though nothing of it is refused: past days changed, rates missing."""

from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any

from sqlalchemy import Connection

from ..basics.problem import Problem, problem
from ..basics.rate import Rate, Rates
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..basics.terms_view import TermsChange
from ..quoting.bands import Cliff, cliffs
from ..storage.shop import has_settings, rates, settings_on, terms_on
from .terms_compare import change_words
from .terms_open import pick_up_rates, without_rate


def of_the_past(changes: Sequence[TermsChange], today: date) -> tuple[Problem, ...]:
    """Changes of terms that held on days that are over."""
    over = (one for one in changes if one.starts_on < today)
    return tuple(
        problem("past-terms-changed", name=one.name, day=one.starts_on, found=change_words(one)) for one in over
    )


def after_it_is_kept(connection: Connection, today: date) -> tuple[Problem, ...]:
    """Suppliers whose currencies have no rate today, those picked up from at rates the shop does not state, and those
    with a time zone where the shop has none."""
    if not has_settings(connection):
        return ()
    settings = settings_on(connection, today)
    table = rates(connection, settings.currency)
    held = terms_on(connection, today).values()
    return tuple(one for terms in held for one in _of_supplier(terms, settings, table, today))


def of_bands(settings: Settings) -> tuple[Problem, ...]:
    """Starts of markup bands at which a dearer part would sell for less than a cheaper one."""
    return tuple(problem("band-cliff", found=_cliff_words(one)) for one in cliffs(settings))


def _cliff_words(one: Cliff) -> str:
    whose = f"category '{one.category}', " if one.category else ""
    return (
        f"{whose}a part that costs {one.from_cost} sells for {one.price}, one just under it for up to {one.price_below}"
    )


def _of_supplier(terms: Terms, settings: Settings, table: Rates, today: date) -> Iterator[Problem]:
    for currency in without_rate(terms, table, today):
        yield problem("supplier-without-rate", name=terms.name, currency=currency, into=table.into, day=today)
    missing = " and no ".join(pick_up_rates(terms.freight, settings))
    if missing:
        yield problem("pick-up-without-rate", name=terms.name, found=missing)
    if terms.time_zone and not settings.time_zone:
        yield problem("shop-without-zone", name=terms.name, found=terms.time_zone)


def of_rates(connection: Connection, new: Sequence[Rate], today: date) -> Iterator[Problem]:
    """New rates that are otherwise than those kept for the same day, and rates of days to come. Asked before they are
    kept."""
    kept = {
        (one.currency, one.into, one.dated): one
        for into in {one.into for one in new}
        for one in rates(connection, into).rates
    }
    for one in new:
        before = kept.get((one.currency, one.into, one.dated))
        facts: dict[str, Any] = {"currency": one.currency, "dated": one.dated}
        if one.dated > today:
            yield problem("rate-not-come", day=today, **facts)
        elif before and before.rate != one.rate:
            yield problem("past-rate-changed", into=one.into, before=before.rate, found=one.rate, **facts)
