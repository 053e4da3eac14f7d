"""What is asked before figures that lie far off are kept: of settings, of suppliers' terms, of exchange rates."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from datetime import date
from decimal import Decimal
from typing import Any

from sqlalchemy import Connection

from ..basics.far_off import FAR, far_off, is_far
from ..basics.problem import Place, Problem, Refused, problem
from ..basics.rate import Rate, Rates
from ..basics.settings import Settings
from ..basics.terms_view import TermsChange
from ..quoting.taxes import TaxBeside, taxes_beside, taxes_replaced
from ..storage.shop import has_settings, rates, settings_on
from .terms_labels import as_typed


def ask(found: Iterable[Problem], sure: bool) -> None:
    """Refuse what lies far off, all of it at once, unless somebody is `sure` that it is right as typed."""
    if not sure and (every := tuple(found)):
        raise Refused(*every)


def far_settings(
    before: Settings | None,
    new: Settings,
    named: Callable[[str], str] = str,
    place: Place | None = None,
    since: date = date.min,
) -> Iterator[Problem]:
    """What of the new settings lies far off, and which taxes would be charged beside others as none was before.

    `named` gives what a field is called where it was filled in; `since`: the day from which the settings hold.
    """
    for one in far_off(before, new, new.labour_rate, new.labour_rate):
        yield problem("figure-far-off", place=place, entry="", field=named(one.field), found=one.found)
    for beside in taxes_beside(before.taxes if before else (), new.taxes):
        yield problem("taxes-beside", place=place, **_beside_facts(beside, since))


def of_taxes(before: Settings, new: Settings, since: date) -> tuple[Problem, ...]:
    """What settings that hold from that day do to taxes: a rate in the place of another, a tax beside another."""
    replaced = taxes_replaced(before.taxes, new.taxes)
    return (
        *(
            problem(
                "tax-replaced",
                name=one.new.name,
                percent=one.new.percent,
                before=one.before.percent,
                day=max(one.new.starts_on, since),
            )
            for one in replaced
        ),
        *(problem("tax-charged-beside", **_beside_facts(one, since)) for one in taxes_beside(before.taxes, new.taxes)),
    )


def _beside_facts(one: TaxBeside, since: date) -> dict[str, Any]:
    return {
        "name": one.tax.name,
        "percent": one.tax.percent,
        "other": one.other.name,
        "other_percent": one.other.percent,
        "on": " and ".join(one.on),
        "day": max(one.from_day, since),
    }


def far_terms(
    connection: Connection, done: Sequence[TermsChange], today: date, place: Place | None = None
) -> Iterator[Problem]:
    """What of the changed terms lies far off, amounts by an hour of labour at the settings and rates of today.

    `place`: the file they stand in, if they stand in one.
    """
    settings = settings_on(connection, today) if has_settings(connection) else None
    table = rates(connection, settings.currency) if settings else None
    for change in done:
        if change.terms is None:
            continue
        shops = settings.labour_rate if settings else None
        his = _in_his_money(shops, table, change.terms.currency, today)
        for one in far_off(change.before, change.terms, his, shops):
            entry = f"{change.supplier} from {change.starts_on} on, " if place else ""
            found = one.found if place else as_typed(one)
            yield problem("figure-far-off", place=place, entry=entry, field=one.field, found=found)


def far_rates(kept: Iterable[Rate], new: Sequence[Rate]) -> Iterator[Problem]:
    """Which of the new rates are far from the last before them, or where there is none, from the first after them.

    What is kept already as it stands is not asked about again.
    """
    there = {(one.currency, one.into, one.dated): one for one in kept}
    anew = [
        one
        for one in new
        if (_same := there.get((one.currency, one.into, one.dated))) is None or _same.rate != one.rate
    ]
    every = {**there, **{(one.currency, one.into, one.dated): one for one in new}}.values()
    for rate in anew:
        others = [one for one in every if one.currency == rate.currency and one.into == rate.into]
        last = max((one for one in others if one.dated < rate.dated), key=_day, default=None)
        beside = last or min((one for one in others if one.dated > rate.dated), key=_day, default=None)
        if beside and is_far(rate.rate, [beside.rate], FAR):
            yield problem("rate-far-off", found=rate.words(), last=beside.words())


def _day(one: Rate) -> date:
    return one.dated


def _in_his_money(amount: Decimal | None, table: Rates | None, currency: str, today: date) -> Decimal | None:
    """None where no rate is known: then nothing is measured."""
    if amount is None or table is None:
        return None
    try:
        return amount / table.on(currency, today).rate
    except Refused:
        return None
