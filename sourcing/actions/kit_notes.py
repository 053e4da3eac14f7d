"""Kits that hold a part, told beside its offers: how many of it, who sells the kit, and what one piece of it costs.

A kit is never the part itself, so it is never ranked: whether it pays is for a person to see.
"""

from collections.abc import Iterator

from ..basics.equivalence import Bench
from ..basics.family_view import KitItem
from ..basics.money import Money
from ..basics.offer import Offer
from ..matching.equivalences.family import Family
from ..matching.equivalences.kits import kit_contents, kits_holding
from ..storage.offers import offers_by_keys
from .evaluate import Catalogue
from .shop_prices import ShopPrices
from .sorted_offers import why_not


def kit_notes(found: Catalogue, code: str, bench: Bench | None) -> tuple[str, ...]:
    """A sentence for each kit that holds the part. Prices are the sheets', in the shop's currency, without freight.

    They are rounded half up for show. One piece's share is given only of a kit that holds nothing else.
    """
    family = found.families[code]
    reach = family.reach
    places = [place for place in reach.way if place not in reach.forbidden]
    return tuple(_note(found, family, kit, bench) for kit in kits_holding(reach.links, places, bench))


def _note(found: Catalogue, family: Family, kit: KitItem, bench: Bench | None) -> str:
    alone = _holds_nothing_else(family, kit, bench)
    pieces = kit.count if alone else None
    sellers = "; ".join(_seller(found, offer, pieces) for offer in _offers(found, family, kit))
    held = f"kit {kit.number} holds {kit.count or 'an unclear number'} of it ({'; '.join(map(str, kit.links))})"
    held += "" if alone else ", and other parts"
    return f"{held}: {sellers or 'no newest sheet has it'}. A kit is not ranked"


def _holds_nothing_else(family: Family, kit: KitItem, bench: Bench | None) -> bool:
    links = family.reach.links
    place = links.index[family.makers.node(kit.number)]
    contents = kit_contents(links, place, bench)
    within = {family.makers.node(link.left) for link in kit.links}
    return all(
        (node := family.makers.node(item.number)) in family.paths or node in within for item in contents if item.count
    )


def _offers(found: Catalogue, family: Family, kit: KitItem) -> Iterator[Offer]:
    """The offers of the kit; a row that names no maker may be it."""
    maker, key = family.makers.node(kit.number)
    for offer in sorted(offers_by_keys(found.connection, {key}, found.at.date()), key=lambda one: one.identity):
        nodes = {family.makers.node(number) for number in offer.numbers()}
        if (maker, key) in nodes or ("", key) in nodes:
            yield offer


def _seller(found: Catalogue, offer: Offer, pieces: int | None) -> str:
    name = f"{found.supplier_name(offer.supplier)} {offer.shown_number}"
    why = why_not(found, offer)
    prices = ShopPrices(found.shop.rates, found.at.date())
    price = prices.of(offer)
    if price is None:
        return f"{name}, {why or 'no price in the currency of the shop'}"
    words = f"{name} at {Money(amount=price, currency=prices.currency)}"
    if pieces:
        words += f", {Money(amount=price / pieces, currency=prices.currency)} for one piece of it"
    return f"{words} ({why})" if why else words
