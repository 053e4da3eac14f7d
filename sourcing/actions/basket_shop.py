"""The shop a basket speaks of: its settings, terms and rates as the actions know them from the database."""

from collections.abc import Sequence
from datetime import date
from decimal import Decimal

from ..basics.basket import Basket
from ..basics.rate import Rates
from ..basics.settings import MarkupBand, Settings, Shop
from ..basics.terms import Terms
from .desk import ShopNow
from .sorted_offers import ShopAt

NOT_ASKED = Decimal(0)
"""Stands where settings must hold a figure for quotes: no comparison and no plan reads it."""


def settings_of(basket: Basket) -> Settings:
    """What landed cost and date need; what only quotes need is not in a basket."""
    shop = basket.shop
    return Settings(
        shop=Shop(name=shop.name),
        currency=basket.currency,
        locale="en",
        markup_bands=(MarkupBand(from_cost=Decimal(0), multiplier=Decimal(1)),),
        labour_rate=NOT_ASKED,
        technician_cost=NOT_ASKED,
        clerk_cost=shop.clerk_cost,
        mileage_rate=shop.mileage_rate,
        rate_per_km=shop.rate_per_km,
        calendar=shop.calendar,
        time_zone=shop.time_zone,
    )


def started(entries: Sequence[Terms], day: date) -> dict[str, Terms]:
    """Each supplier's newest entry that has started by that day; a supplier who has none is not there."""
    return {one.supplier: one for one in sorted(entries, key=lambda one: one.starts_on) if one.starts_on <= day}


def currencies_at(entries: Sequence[Terms], day: date) -> dict[str, str]:
    """Every supplier's currency on that day; of one whose first entry is yet to start, that of the first."""
    first = {one.supplier: one for one in sorted(entries, key=lambda one: one.starts_on, reverse=True)}
    return {supplier: one.currency for supplier, one in (first | started(entries, day)).items()}


def shop_of(basket: Basket) -> ShopAt:
    """The shop at the basket's moment: of several entries of a supplier the newest that has started holds."""
    terms = started(basket.suppliers, basket.at.date())
    shop = ShopNow(
        settings=settings_of(basket),
        terms={supplier: terms[supplier] for supplier in sorted(terms)},
        rates=Rates(into=basket.currency, rates=basket.rates),
    )
    return ShopAt(at=basket.at, shop=shop)
