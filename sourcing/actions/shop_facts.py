"""What every page of the counter says of the shop, also before it was set up."""

from ..basics.value import Value
from ..storage.shop import has_settings, settings_on
from .desk import Desk


class ShopFacts(Value, frozen=True, kw_only=True):
    """The shop's name and how it writes numbers and days; `is_set_up` False: settings were never kept."""

    name: str = ""
    locale: str = "en_US"
    currency: str = ""
    is_set_up: bool = False
    telephone: str = ""


def shop_facts(desk: Desk) -> ShopFacts:
    """The shop as it is named on the desk's day."""
    with desk.store.reading() as connection:
        if not has_settings(connection):
            return ShopFacts()
        settings = settings_on(connection, desk.at.date())
    shop, locale = settings.shop, settings.locale
    return ShopFacts(
        name=shop.name, locale=locale, currency=settings.currency, is_set_up=True, telephone=shop.telephone
    )
