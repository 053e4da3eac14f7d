"""What can't hold in the shop's settings, field by field, so that the file is told all of it at once."""

from collections.abc import Iterator
from itertools import pairwise
from typing import TYPE_CHECKING

from .contradiction import Contradiction, number_faults
from .currency import is_currency
from .terms_checks import calendar_contradictions

if TYPE_CHECKING:
    from .settings import Settings


def settings_contradictions(settings: "Settings") -> tuple[Contradiction, ...]:
    """All that can't hold, the numbers first. Public holidays and the time zone are not looked up here."""
    return (*number_faults(settings), *_own(settings), *calendar_contradictions(settings.calendar))


def _own(settings: "Settings") -> Iterator[Contradiction]:
    if not is_currency(settings.currency):
        yield Contradiction(
            field="currency", found=f"is wrong: '{settings.currency}' is not a currency code of ISO 4217"
        )
    starts = [band.from_cost for band in settings.markup_bands]
    for at, (one, other) in enumerate(pairwise(starts), 2):
        if one == other:
            yield Contradiction(field=f"markup_bands.{at}.from_cost", found=f"is {other} a second time")
    taxes = [(tax.name, tax.starts_on) for tax in settings.taxes]
    for at, tax in enumerate(taxes, 1):
        if tax in taxes[: at - 1]:
            yield Contradiction(field=f"taxes.{at}", found=f"is '{tax[0]}' from {tax[1]} on a second time")
