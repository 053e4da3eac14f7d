"""What to mind of terms just changed: what would keep every offer of the supplier from being priced."""

from collections.abc import Iterator
from datetime import date

from sqlalchemy import Connection

from ..basics.problem import Problem, problem
from ..basics.terms import Terms
from ..basics.terms_view import TermsChange
from ..basics.value import changed
from ..storage.sheets import kept_sheets, sheet_summary
from ..storage.shop import has_settings, rates, settings_on
from .terms_open import without_rate


def with_told(connection: Connection, done: TermsChange, today: date) -> TermsChange:
    """The change with that said, as it is on its first day or, where that is over, today."""
    if done.terms is None:
        return done
    day = max(done.starts_on, today)
    told = (*_of_the_shop(connection, done.terms, day), *_of_the_sheet(connection, done.terms, day))
    return changed(done, told=(*done.told, *told))


def _of_the_shop(connection: Connection, terms: Terms, day: date) -> Iterator[Problem]:
    if not has_settings(connection):
        return
    settings = settings_on(connection, day)
    table = rates(connection, settings.currency)
    for currency in without_rate(terms, table, day):
        yield problem("supplier-without-rate", name=terms.name, currency=currency, into=table.into, day=day)
    if terms.time_zone and not settings.time_zone:
        yield problem("shop-without-zone", name=terms.name, found=terms.time_zone)


def _of_the_sheet(connection: Connection, terms: Terms, day: date) -> Iterator[Problem]:
    for one in kept_sheets(connection, day):
        if one.is_newest and one.supplier == terms.supplier:
            currency = sheet_summary(connection, one.sheet).currency
            if currency != terms.currency:
                yield problem("currency-differs", found=currency, expected=terms.currency)
