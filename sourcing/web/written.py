"""How this page writes numbers, amounts and days: as the shop's settings say, or the paper a customer reads."""

from flask import g

from ..actions.shop_facts import ShopFacts, shop_facts
from ..basics.locales import known_locale
from .desks import desk


def locale() -> str:
    """How numbers and days are written: as the shop's settings say."""
    if "locale" not in g:
        kept = shop_facts(desk()).locale
        # A name that was kept before names were checked must not close the page on which it is corrected.
        g.locale = kept if known_locale(kept) else ShopFacts().locale
    return str(g.locale)
