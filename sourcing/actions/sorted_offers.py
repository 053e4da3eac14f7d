"""Judged offers priced at the door and dated: those to rank, those set aside with the reason, those for a person.

The same with the shop's database and with a basket: it needs the terms, settings and rates of a moment only.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import cached_property

from ..basics.choice import Candidate, Priced, SetAside
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.problem import Refused
from ..basics.terms import Terms
from ..landed_cost.beside import deposit_words
from ..landed_cost.door import Door
from ..landed_cost.quantity import pieces_to_order
from ..matching.identity.verdict import Verdict
from ..matching.offer_match import OfferMatch
from .desk import ShopNow
from .land import land_at
from .price_warnings import with_price_warnings
from .shop_prices import ShopPrices


@dataclass(frozen=True)
class ShopAt:
    """The shop at a moment on its own clock."""

    at: datetime
    shop: ShopNow

    def supplier_name(self, supplier: str) -> str:
        """The supplier's name on paper; his short name where there are no terms."""
        terms = self.shop.terms.get(supplier)
        return terms.name if terms else supplier

    def door(self, supplier: str) -> Door:
        """What stands between that supplier and the shop at this moment. Refuses where `shut` says why."""
        found = self._seen_door(supplier)
        if isinstance(found, Refused):
            raise found
        return found

    def shut(self, supplier: str) -> str:
        """Why nothing of a supplier with terms can be priced or dated at this moment; blank where it can."""
        found = self._seen_door(supplier)
        return "; ".join(one.what for one in found.problems) if isinstance(found, Refused) else ""

    @cached_property
    def _doors(self) -> dict[str, Door | Refused]:
        return {}

    def _seen_door(self, supplier: str) -> Door | Refused:
        if supplier not in self._doors:
            try:
                self._doors[supplier] = self.shop.door(supplier, self.at)
            except Refused as refusal:
                self._doors[supplier] = refusal
        return self._doors[supplier]


@dataclass(frozen=True)
class Evaluated:
    """One part for one quantity: offers that can be ranked, offers shown with a reason, offers for a person.

    `unknown` are those among `set_aside` that only lack something of their cost: priced as far as it is known.
    """

    priced: tuple[Priced, ...]
    set_aside: tuple[SetAside, ...]
    candidates: tuple[Candidate, ...]
    unknown: tuple[Priced, ...] = ()


@dataclass(frozen=True)
class Judged:
    """An offer that bears a number of our part, how it matches, and how it stands to what is asked."""

    offer: Offer
    match: OfferMatch
    verdict: Verdict


def sort_out(here: ShopAt, some: Iterable[Judged], keep_refused: bool = False) -> Evaluated:
    """Price every judged offer that stands and holds. Prices far from the others' are warned of.

    `keep_refused`: an offer whose order alone the supplier would refuse counts as priced, for a plan may add to it.
    """
    priced: list[Priced] = []
    set_aside: list[SetAside] = []
    candidates: list[Candidate] = []
    automatic: list[Offer] = []
    unknown: list[Priced] = []
    for one in some:
        if one.match.tier == "automatic":
            automatic.append(one.offer)
        if not one.verdict.stands and one.match.tier == "candidate":
            candidates.append(_judge(here, one))
            continue
        seen = _rejection(here, one) or why_not(here, one.offer) or _price(here, one)
        why = seen if isinstance(seen, str) else _unranked(seen, keep_refused)
        if isinstance(seen, str) or why:
            set_aside.append(_aside(here, one, why))
            if isinstance(seen, Priced) and seen.landed.missing and (keep_refused or not seen.landed.refusal):
                unknown.append(seen)
        else:
            priced.append(seen)
    prices = ShopPrices(here.shop.rates, here.at.date())
    ranked, open_ones = (with_price_warnings(some, automatic, prices) for some in (priced, unknown))
    return Evaluated(priced=ranked, set_aside=tuple(set_aside), candidates=tuple(candidates), unknown=open_ones)


def _rejection(here: ShopAt, one: Judged) -> str:
    """Why it is not what is asked, and what else is in its way; blank where it stands."""
    if one.verdict.stands:
        return ""
    rejected = f"rejected: {'; '.join(one.verdict.objections)}"
    return "; ".join(words for words in (rejected, why_not(here, one.offer)) if words)


def why_not(here: ShopAt, offer: Offer) -> str:
    """Why an offer of the right part can't be ranked; blank where it can."""
    if offer.no_longer_available:
        instead = f"; the supplier names {offer.superseded_by} instead" if offer.superseded_by else ""
        return f"no longer available{instead}"
    if offer.sold_by != "piece":
        return f"sold by the {offer.sold_by}: say the length needed"
    if not offer.breaks:
        return "the sheet gives no net price"
    terms = here.shop.terms.get(offer.supplier)
    if terms is None:
        return f"there are no terms for {offer.supplier}"
    return not_at_the_door(here, offer) or _not_held(offer, terms, here.at.date())


def not_at_the_door(here: ShopAt, offer: Offer) -> str:
    """Why an offer of a supplier with terms has no cost at all, whatever its quantity; blank where it can have one."""
    terms = here.shop.terms[offer.supplier]
    if offer.currency != terms.currency:
        return f"the sheet is in {offer.currency}, the terms are in {terms.currency}"
    return here.shut(offer.supplier)


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


def _price(here: ShopAt, one: Judged) -> Priced:
    offer, match, needed = one.offer, one.match, one.verdict.needed
    door = here.door(offer.supplier)
    pieces = pieces_to_order(offer, needed)
    assert match.path is not None  # a match by a number has one
    item = OrderItem(need=str(match.number), offer=offer, needed=needed, ordered=pieces)
    alone = land_at([item], door, here.at)
    told = (f"{alone.arrival.told}; his sheet is older",) if alone.arrival.told else ()
    return Priced(
        offer=offer,
        supplier_name=door.terms.name,
        path=match.path,
        matched_number=str(match.number),
        landed=alone.landed,
        arrival=alone.arrival,
        warnings=(*told, *_confirmed(here, offer), *deposit_words(offer), *one.verdict.warnings, *match.warnings),
    )


def _confirmed(here: ShopAt, offer: Offer) -> tuple[str, ...]:
    """The price or number he confirmed since. His sheet's still counts: of other pieces he has said nothing."""
    said = (one for one in here.shop.confirmed.get(offer.supplier, ()) if one.is_about(offer))
    return tuple(f"{one.words}; his sheet, which is counted here, is older: ask before you order" for one in said)


def _unranked(one: Priced, keep_refused: bool) -> str:
    """Why a priced offer has no place in a ranking: an open question, or an order the supplier would refuse."""
    return "; ".join(one.landed.open_questions) or ("" if keep_refused else one.landed.refusal)


def _aside(here: ShopAt, one: Judged, reason: str) -> SetAside:
    name = here.supplier_name(one.offer.supplier)
    return SetAside(offer=one.offer, supplier_name=name, reason=reason, rejected=not one.verdict.stands)


def _judge(here: ShopAt, one: Judged) -> Candidate:
    return Candidate(
        offer=one.offer,
        supplier_name=here.supplier_name(one.offer.supplier),
        reasons=one.verdict.objections,
        vetoed=one.match.vetoed or len(one.verdict.objections) > len(one.match.reasons),
        score=1.0,
    )
