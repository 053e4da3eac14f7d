"""What can't hold in the shop's settings, field by field, so that the file is told all of it at once."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from itertools import pairwise
from typing import TYPE_CHECKING

from .contradiction import Contradiction, is_finer, number_faults
from .currency import is_currency, minor_units
from .settings import name_key
from .terms_checks import calendar_contradictions

if TYPE_CHECKING:
    from .settings import FeeRule, MarkupBand, Settings


def settings_contradictions(settings: "Settings") -> tuple[Contradiction, ...]:
    """All that can't hold, the numbers first. Public holidays and the time zone are not looked up here."""
    return (
        *number_faults(settings),
        *_own(settings),
        *_of_categories(settings),
        *_of_fees(settings),
        *_of_endings(settings),
        *calendar_contradictions(settings.calendar),
    )


def _own(settings: "Settings") -> Iterator[Contradiction]:
    if not is_currency(settings.currency):
        yield Contradiction(
            field="currency", found=f"is wrong: '{settings.currency}' is not a currency code of ISO 4217"
        )
    yield from _bands("markup_bands", settings.markup_bands)
    taxes = [(name_key(tax.name), tax.starts_on) for tax in settings.taxes]
    for at, tax in enumerate(settings.taxes, 1):
        if not tax.name.strip():
            yield Contradiction(field=f"taxes.{at}.name", found="is blank; the tax's name stands on the paper")
        if taxes[at - 1] in taxes[: at - 1]:
            yield Contradiction(field=f"taxes.{at}", found=f"is '{tax.name}' from {tax.starts_on} on a second time")


def _bands(field: str, bands: Sequence["MarkupBand"]) -> Iterator[Contradiction]:
    lowest = bands[0].from_cost if bands else Decimal(0)
    if lowest.is_finite() and lowest > 0:
        found = f"is {lowest}, and nothing is said of parts that cost less; begin the first band at 0"
        yield Contradiction(field=f"{field}.1.from_cost", found=found)
    for at, (one, other) in enumerate(pairwise(bands), 2):
        if one.from_cost == other.from_cost:
            yield Contradiction(field=f"{field}.{at}.from_cost", found=f"is {other.from_cost} a second time")
    for at, band in enumerate(bands, 1):
        if 0 < band.multiplier < 1:  # nothing and less are told of as numbers
            found = f"is {band.multiplier}: below 1 a part would be sold for less than it costs"
            yield Contradiction(field=f"{field}.{at}.multiplier", found=found)


def _of_categories(settings: "Settings") -> Iterator[Contradiction]:
    names = [one.category.strip().casefold() for one in settings.category_bands]
    for at, one in enumerate(settings.category_bands, 1):
        field = f"category_bands.{at}"
        if not names[at - 1]:
            yield Contradiction(field=f"{field}.category", found="is blank; name the category")
        if names[at - 1] in names[: at - 1]:
            yield Contradiction(field=f"{field}.category", found=f"is '{one.category}' a second time")
        if not one.bands:
            yield Contradiction(field=f"{field}.bands", found="is empty; give at least one band")
        starts = [band.from_cost for band in one.bands]
        if starts != sorted(starts):
            yield Contradiction(field=f"{field}.bands", found="must be in rising order of from_cost")
        yield from _bands(f"{field}.bands", one.bands)


def _of_fees(settings: "Settings") -> Iterator[Contradiction]:
    known = [(name_key(rule.name), rule.starts_on) for rule in settings.fee_rules]
    for at, rule in enumerate(settings.fee_rules, 1):
        field = f"fee_rules.{at}"
        if not rule.name.strip():
            yield Contradiction(field=f"{field}.name", found="is blank; the fee's name stands on the paper")
        if known[at - 1] in known[: at - 1]:
            yield Contradiction(field=field, found=f"is '{rule.name}' from {rule.starts_on} on a second time")
        yield from _of_fee(field, rule)


def _of_fee(field: str, rule: "FeeRule") -> Iterator[Contradiction]:
    by_charge = rule.of in ("document", "piece")
    if rule.percent and by_charge:
        found = f"is {rule.percent}, but a fee on '{rule.of}' is a charge; take the per cent out"
        yield Contradiction(field=f"{field}.percent", found=found)
    if rule.charge and not by_charge:
        found = f"is {rule.charge}, but a fee on '{rule.of}' is a per cent; take the charge out"
        yield Contradiction(field=f"{field}.charge", found=found)
    if rule.categories and rule.of == "labour":
        yield Contradiction(field=f"{field}.categories", found="are given, but labour has no category; take them out")


def _of_endings(settings: "Settings") -> Iterator[Contradiction]:
    ending = settings.price_ending
    if ending is None or not is_currency(settings.currency):
        return
    if not ending.endings:
        yield Contradiction(field="price_ending.endings", found="is empty; give at least one, such as 0.95")
    smallest = Decimal(1).scaleb(-minor_units(settings.currency))
    for at, one in enumerate(ending.endings, 1):
        if is_finer(one, smallest):
            found = f"is {one}, finer than the smallest coin of {settings.currency}"
            yield Contradiction(field=f"price_ending.endings.{at}", found=found)
