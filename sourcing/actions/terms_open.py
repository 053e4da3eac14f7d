"""What a supplier's terms leave open, and what follows from it: nothing that is not said is taken as nothing."""

from collections.abc import Iterator
from datetime import date

from ..basics.freight import Freight
from ..basics.problem import Refused
from ..basics.rate import Rates
from ..basics.settings import Settings
from ..basics.terms import CUT_OFF_NOT_KNOWN, Terms
from ..basics.terms_view import NotKnown
from ..landed_cost.freight import rates_not_stated

NO_RANK = "none of his offers can be ranked"
STANDARD_TRANSIT = (1, 5)
"""What holds where a file says nothing of days on the road."""


def not_known(terms: Terms, settings: Settings | None, rates: Rates | None, day: date) -> tuple[NotKnown, ...]:
    """Everything the terms leave open on that day, the gravest first. Without settings the shop's side is not told."""
    found = [
        *_rate(terms, rates, day),
        *_freight(terms.freight),
        *_drive(terms.freight, settings),
        *_duty(terms, settings),
        *_days(terms, settings),
        *_back(terms),
    ]
    return tuple(sorted(found, key=lambda one: not one.keeps_from_ranking))


def currencies(terms: Terms) -> tuple[str, ...]:
    """Every currency the terms name, the supplier's first."""
    return tuple(dict.fromkeys([terms.currency, *(fee.currency for fee in terms.entry_fees if fee.currency)]))


def without_rate(terms: Terms, rates: Rates, day: date) -> tuple[str, ...]:
    """The currencies of the terms that have no rate on or before the day."""
    return tuple(currency for currency in currencies(terms) if not _has(rates, currency, day))


def _has(rates: Rates, currency: str, day: date) -> bool:
    try:
        rates.on(currency, day)
    except Refused:
        return False
    return True


def _rate(terms: Terms, rates: Rates | None, day: date) -> Iterator[NotKnown]:
    for currency in without_rate(terms, rates, day) if rates else ():
        what = f"a rate from {currency} into {rates.into if rates else ''} on or before {day}"
        yield NotKnown(what=what, follows=NO_RANK, keeps_from_ranking=True)


def _freight(freight: Freight | None) -> Iterator[NotKnown]:
    if freight is None:
        yield NotKnown(what="freight", follows=NO_RANK, keeps_from_ranking=True)
        return
    if freight.rule == "asked":
        between = "the least and the most are shown" if freight.between else "not even a range can be shown"
        follows = f"he says it only when asked; {NO_RANK}, {between}"
        yield NotKnown(what="freight of an order", follows=follows, keeps_from_ranking=True)
    if freight.rule in ("by weight", "per weight", "per parcel"):
        if freight.piece_weight is None:
            yield _open("the weight of a piece where his sheet gives none", "such an offer can't be ranked")
        if freight.weight_bands and freight.rule == "by weight":
            last = f"{freight.weight_bands[-1].to_weight} {freight.weight_unit}"
            yield _open(f"freight of an order heavier than {last}", "such an order can't be ranked")
    if freight.oversize and freight.oversize.if_not_stated == "ask":
        yield _open("whether goods are oversize where his sheet gives neither word nor length", "such offers can't")


def pick_up_rates(freight: Freight | None, settings: Settings) -> list[str]:
    """The shop's own rates that picking up from a supplier needs and its settings do not state, in words."""
    if freight is None:
        return []
    return rates_not_stated(freight, settings.mileage_rate, settings.rate_per_km, settings.clerk_cost)


def _drive(freight: Freight | None, settings: Settings | None) -> Iterator[NotKnown]:
    for rate in pick_up_rates(freight, settings) if settings else ():
        yield NotKnown(what=f"the shop's {rate} for picking up", follows=NO_RANK, keeps_from_ranking=True)
    if freight is not None and freight.rule == "pick-up" and freight.round_trip_hours is None:
        yield _open("the hours of the drive", "its time is not counted")


def _duty(terms: Terms, settings: Settings | None) -> Iterator[NotKnown]:
    abroad = _abroad(terms, settings)
    if terms.duty_percent is None and (abroad or terms.duty_rates):
        what = "duty on goods that no rate of duty_rates fits" if terms.duty_rates else "duty"
        why = "he seems to be abroad, and none is counted" if abroad else "none is counted on them"
        yield _open(what, f"{why}: write duty_percent, 0 if none is due")
    if abroad and terms.tax is None:
        yield _open("tax at the border that the shop can't get back", "none is counted: write 'tax' if there is one")


def _abroad(terms: Terms, settings: Settings | None) -> bool:
    """Whether the supplier's country, or else his currency, is another than the shop's."""
    if settings is None:
        return False
    his, ours = terms.calendar.country, settings.calendar.country
    return his != ours if his and ours else terms.currency != settings.currency


def _days(terms: Terms, settings: Settings | None) -> Iterator[NotKnown]:
    if terms.transit_days == STANDARD_TRANSIT:
        yield _open("days on the road", "1 to 5 working days are taken, which holds where nothing else is said")
    if terms.cut_off == CUT_OFF_NOT_KNOWN:
        yield _open("until when an order leaves the same day", "every order is taken to be too late for that day")
    if not terms.calendar.country:
        yield _open("his public holidays", "no country is named, so a day may be promised on which he is closed")
    if not terms.time_zone and _abroad(terms, settings):
        yield _open("his time zone", "the cut-off is read on the shop's own clock")
    if terms.prices_hold_days is None:
        yield _open("how long his prices hold", "a sheet is taken to hold until his next one")


def _back(terms: Terms) -> Iterator[NotKnown]:
    back = terms.return_terms
    if back.returnable is None:
        yield _open("whether goods go back", "it is asked before ordering, unless his sheet says it")
    elif back.returnable:
        losses = {"restocking_percent": "restocking", "freight": "freight of returns", "within_days": "days to return"}
        missing = [words for name, words in losses.items() if getattr(back, name) is None]
        if missing:
            yield _open(" and ".join(missing), "what a return costs or until when is not shown")
    if terms.core_return.within_days is None or terms.core_return.freight is None:
        yield _open("until when an old part goes back, or its freight", "it is shown as not known beside a core charge")


def _open(what: str, follows: str) -> NotKnown:
    return NotKnown(what=what, follows=follows)
