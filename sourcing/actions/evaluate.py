"""Every offer of one of our parts, matched, priced at the door and dated; what compare and plan both stand on."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from sqlalchemy import Connection

from ..basics.choice import Candidate, Priced, SetAside
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.problem import refused
from ..basics.terms import Terms
from ..landed_cost.arrival import arrival
from ..landed_cost.order import landed_order
from ..landed_cost.quantity import pieces_to_order
from ..matching.family import Family, bearers, families
from ..matching.look_alikes import look_alike, near_keys
from ..matching.offer_match import OfferMatch, match_offer
from ..storage.equivalence import equivalence_table
from ..storage.offers import newest_number_keys, offers_by_keys
from .desk import ShopNow, shop_now


@dataclass(frozen=True)
class Catalogue:
    """Our parts' families and everything that holds at the moment: load once, evaluate many parts."""

    connection: Connection
    at: datetime
    shop: ShopNow
    families: Mapping[str, Family]
    bearers: Mapping[str, frozenset[str]]

    def supplier_name(self, supplier: str) -> str:
        """The supplier's name on paper; his short name where there are no terms."""
        terms = self.shop.terms.get(supplier)
        return terms.name if terms else supplier


@dataclass(frozen=True)
class Evaluated:
    """One part for one quantity: offers that can be ranked, offers shown with a reason, offers for a person."""

    priced: tuple[Priced, ...]
    set_aside: tuple[SetAside, ...]
    candidates: tuple[Candidate, ...]


def catalogue(connection: Connection, at: datetime) -> Catalogue:
    """Load families, terms, settings and rates."""
    every = families(equivalence_table(connection))
    return Catalogue(
        connection=connection,
        at=at,
        shop=shop_now(connection, at),
        families=every,
        bearers=bearers(every.values()),
    )


def evaluate(found: Catalogue, code: str, quantity: int, keep_refused: bool = False) -> Evaluated:
    """Match and price every offer of our part on the suppliers' newest sheets.

    `keep_refused`: an offer whose order alone the supplier would refuse counts as priced, for a plan may add to it.
    """
    if quantity < 1:
        raise refused("quantity-below-one", found=quantity)
    family = found.families[code]
    priced: list[Priced] = []
    set_aside: list[SetAside] = []
    candidates: list[Candidate] = []
    for offer, match in matched(found, family):
        if match.tier == "candidate":
            candidates.append(_judge(found, offer, match))
        elif match.tier == "automatic":
            one = why_not(found, offer) or _price(found, offer, match, quantity)
            why = one if isinstance(one, str) else _unranked(one, keep_refused)
            if isinstance(one, str) or why:
                set_aside.append(_aside(found, offer, why))
            else:
                priced.append(one)
    candidates += _look_alikes(found, family)
    ordered = sorted(candidates, key=lambda one: (one.vetoed, -one.score, one.offer.identity))
    return Evaluated(priced=tuple(priced), set_aside=tuple(set_aside), candidates=tuple(ordered))


def matched(found: Catalogue, family: Family) -> Iterator[tuple[Offer, OfferMatch]]:
    """Every offer that bears a number of the family, with its match, in an order the input does not decide."""
    offers = offers_by_keys(found.connection, family.number_keys())
    for offer in sorted(offers, key=lambda one: one.identity):
        yield offer, match_offer(offer, family, found.bearers)


def why_not(found: Catalogue, offer: Offer) -> str:
    """Why an offer of the right part can't be ranked; blank where it can."""
    if offer.no_longer_available:
        instead = f"; the supplier names {offer.superseded_by} instead" if offer.superseded_by else ""
        return f"no longer available{instead}"
    if offer.sold_by != "piece":
        return f"sold by the {offer.sold_by}: say the length needed"
    if not offer.breaks:
        return "the sheet gives no net price"
    terms = found.shop.terms.get(offer.supplier)
    if terms is None:
        return f"there are no terms for {offer.supplier}"
    return _not_held(offer, terms, found.at.date())


def _not_held(offer: Offer, terms: Terms, today: date) -> str:
    """Why the price does not hold today: the days the row names count before the days of the supplier's terms."""
    if offer.valid_from is not None and today < offer.valid_from:
        return f"the price holds from {offer.valid_from} only"
    if offer.valid_to is not None:
        return f"the price is not firm: it held until {offer.valid_to}" if offer.valid_to < today else ""
    if terms.prices_hold_days is not None:
        last = offer.source.sheet_date + timedelta(days=terms.prices_hold_days)
        if last < today:
            return f"the price is not firm: the sheet of {offer.source.sheet_date} held until {last}"
    return ""


def _price(found: Catalogue, offer: Offer, match: OfferMatch, quantity: int) -> Priced:
    door = found.shop.door(offer.supplier, found.at)
    pieces = pieces_to_order(offer, quantity)
    assert match.path is not None  # an automatic match has one
    item = OrderItem(need=str(match.number), offer=offer, needed=quantity, ordered=pieces)
    return Priced(
        offer=offer,
        supplier_name=door.terms.name,
        path=match.path,
        matched_number=str(match.number),
        landed=landed_order([item], door),
        arrival=arrival(item, door, found.at),
        warnings=match.warnings,
    )


def _unranked(one: Priced, keep_refused: bool) -> str:
    """Why a priced offer has no place in a ranking: an open question, or an order the supplier would refuse."""
    return "; ".join(one.landed.open_questions) or ("" if keep_refused else one.landed.refusal)


def _aside(found: Catalogue, offer: Offer, reason: str) -> SetAside:
    return SetAside(offer=offer, supplier_name=found.supplier_name(offer.supplier), reason=reason)


def _judge(found: Catalogue, offer: Offer, match: OfferMatch) -> Candidate:
    return Candidate(
        offer=offer,
        supplier_name=found.supplier_name(offer.supplier),
        reasons=match.reasons,
        vetoed=match.vetoed,
        score=1.0,
    )


def _look_alikes(found: Catalogue, family: Family) -> Iterator[Candidate]:
    keys = near_keys(family, (key for key, _, _ in newest_number_keys(found.connection)))
    for offer in sorted(offers_by_keys(found.connection, keys), key=lambda one: one.identity):
        near = look_alike(offer, family)
        if near and not any(number.key in family.number_keys() for number in offer.numbers()):
            yield Candidate(
                offer=offer,
                supplier_name=found.supplier_name(offer.supplier),
                reasons=near.reasons,
                vetoed=near.vetoed,
                score=near.score,
            )
