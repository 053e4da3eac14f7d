"""The shop a basket speaks of: its settings, terms and rates as the actions know them from the database."""

from decimal import Decimal

from ..basics.basket import Basket
from ..basics.rate import Rates
from ..basics.settings import MarkupBand, Settings, Shop
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


def shop_of(basket: Basket) -> ShopAt:
    """The shop at the basket's moment: of several entries of a supplier the newest that has started holds."""
    started = [one for one in basket.suppliers if one.starts_on <= basket.at.date()]
    terms = {one.supplier: one for one in sorted(started, key=lambda one: one.starts_on)}
    shop = ShopNow(
        settings=settings_of(basket),
        terms={supplier: terms[supplier] for supplier in sorted(terms)},
        rates=Rates(into=basket.currency, rates=basket.rates),
    )
    return ShopAt(at=basket.at, shop=shop)
