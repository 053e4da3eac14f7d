"""Every offer of one of our parts, matched, priced at the door and dated; what compare and plan both stand on."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from sqlalchemy import Connection

from ..basics.choice import Asks, Candidate, Priced, SetAside
from ..basics.equivalence import Bench
from ..basics.landed_cost import OrderItem
from ..basics.offer import Offer
from ..basics.problem import refused
from ..basics.terms import Terms
from ..landed_cost.arrival import arrival
from ..landed_cost.order import landed_order
from ..landed_cost.quantity import pieces_to_order
from ..matching.equivalences.bench import fits, why_not_followed
from ..matching.equivalences.family import Family
from ..matching.equivalences.graph import Families, families
from ..matching.identity.asked_merge import merged
from ..matching.identity.verdict import Verdict, ban_on, verdict
from ..matching.look_alikes import look_alike, near_keys, near_lengths
from ..matching.numbers.affixes import dressed
from ..matching.offer_match import Known, OfferMatch, match_offer
from ..matching.settled_rows import SettledRows
from ..storage.equivalence import equivalence_table
from ..storage.judgements import judgements_in_force
from ..storage.offers import newest_keys_of_length, offers_by_keys
from .desk import ShopNow, shop_now
from .our_side import known_numbers
from .price_warnings import with_price_warnings
from .settled import keys_of_offer, settled_rows
from .shop_prices import ShopPrices

NOTHING_ASKED = Asks()


@dataclass(frozen=True)
class Catalogue:
    """Our parts' families and everything that holds at the moment: load once, evaluate many parts."""

    connection: Connection
    at: datetime
    shop: ShopNow
    families: Families
    known: Known
    refused: SettledRows

    def family(self, code: str, bench: Bench | None) -> Family:
        """The part's numbers for the machine on the bench; all of them where none is named."""
        return self.families.graph.family(code, bench) if bench else self.families[code]

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
        known=known_numbers(connection, every),
        refused=_refused(connection, every),
    )


def _refused(connection: Connection, every: Families) -> SettledRows:
    """What a person has refused, and only that: what was accepted as unchecked stays to be seen."""
    no = (one for one in judgements_in_force(connection) if one.answer == "no")
    return settled_rows(no, every.graph.makers, every)


def evaluate(
    found: Catalogue, code: str, quantity: int, keep_refused: bool = False, asks: Asks = NOTHING_ASKED
) -> Evaluated:
    """Match and price every offer of our part on the suppliers' newest sheets.

    `asks` is what a job's line asks beside what our part asks. `keep_refused`: an offer whose order alone the supplier
    would refuse counts as priced, for a plan may add to it.
    """
    if quantity < 1:
        raise refused("quantity-below-one", found=quantity)
    priced: list[Priced] = []
    set_aside: list[SetAside] = []
    candidates: list[Candidate] = []
    automatic: list[Offer] = []
    for one in judged_offers(found, code, asks, quantity):
        if one.match.tier == "automatic":
            automatic.append(one.offer)
        if not one.verdict.stands and one.match.tier == "candidate":
            candidates.append(_judge(found, one))
            continue
        seen = _rejection(found, one) or why_not(found, one.offer) or _price(found, one)
        why = seen if isinstance(seen, str) else _unranked(seen, keep_refused)
        if isinstance(seen, str) or why:
            set_aside.append(_aside(found, one, why))
        else:
            priced.append(seen)
    candidates += _look_alikes(found, found.families[code])
    makers = found.families.graph.makers
    candidates = [one for one in candidates if not found.refused.settled(keys_of_offer(one.offer, makers), code)]
    ordered = sorted(candidates, key=lambda one: (one.vetoed, -one.score, one.offer.identity))
    ranked = with_price_warnings(priced, automatic, ShopPrices(found.shop.rates, found.at.date()))
    return Evaluated(priced=ranked, set_aside=tuple(set_aside), candidates=tuple(ordered))


@dataclass(frozen=True)
class Judged:
    """An offer that bears a number of our part, how it matches, and how it stands to what is asked."""

    offer: Offer
    match: OfferMatch
    verdict: Verdict


def judged_offers(found: Catalogue, code: str, asks: Asks, quantity: int) -> Iterator[Judged]:
    """Every offer that bears a number of the part, judged, in an order the input does not decide.

    A number that stands for the part only on other machines than the one on the bench is judged too, and rejected.
    """
    every, here = found.families[code], found.family(code, asks.bench)
    asked, _ = merged(("the job's line", asks.asked), ("our part", every.part.asked))
    keys = every.number_keys() | {key for _, key in here.forbidden}
    keys |= dressed((rule for rules in found.known.rules.values() for rule in rules), keys)
    for offer in sorted(offers_by_keys(found.connection, keys), key=lambda one: one.identity):
        against: tuple[str, ...] = ()
        match = match_offer(offer, here, found.known)
        if match.tier == "none":
            match = match_offer(offer, every, found.known)
            against = _for_other_machines(match, asks.bench)
            if match.path is None:  # forbidden, but not on this machine
                continue
        if match.tier == "none":
            continue
        if match.tier == "candidate":
            against += match.reasons
        banned = ban_on([every.makers.node(number) for number in offer.numbers()], here.forbidden)
        yield Judged(offer, match, verdict(offer, against, asked, asks.overrides, banned, quantity))


def _for_other_machines(match: OfferMatch, bench: Bench | None) -> tuple[str, ...]:
    if bench is None or match.path is None:
        return ()
    wrong = [link for link in match.path.links if fits(link, bench) == "contradicts"]
    return tuple(f"{link.right} is for another machine: {why_not_followed(link, bench)}" for link in wrong)


def _rejection(found: Catalogue, one: Judged) -> str:
    """Why it is not what is asked, and what else is in its way; blank where it stands."""
    if one.verdict.stands:
        return ""
    rejected = f"rejected: {'; '.join(one.verdict.objections)}"
    return "; ".join(words for words in (rejected, why_not(found, one.offer)) if words)


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


def _price(found: Catalogue, one: Judged) -> Priced:
    offer, match, needed = one.offer, one.match, one.verdict.needed
    door = found.shop.door(offer.supplier, found.at)
    pieces = pieces_to_order(offer, needed)
    assert match.path is not None  # a match by a number has one
    item = OrderItem(need=str(match.number), offer=offer, needed=needed, ordered=pieces)
    return Priced(
        offer=offer,
        supplier_name=door.terms.name,
        path=match.path,
        matched_number=str(match.number),
        landed=landed_order([item], door),
        arrival=arrival(item, door, found.at),
        warnings=(*one.verdict.warnings, *match.warnings),
    )


def _unranked(one: Priced, keep_refused: bool) -> str:
    """Why a priced offer has no place in a ranking: an open question, or an order the supplier would refuse."""
    return "; ".join(one.landed.open_questions) or ("" if keep_refused else one.landed.refusal)


def _aside(found: Catalogue, one: Judged, reason: str) -> SetAside:
    name = found.supplier_name(one.offer.supplier)
    return SetAside(offer=one.offer, supplier_name=name, reason=reason, rejected=not one.verdict.stands)


def _judge(found: Catalogue, one: Judged) -> Candidate:
    return Candidate(
        offer=one.offer,
        supplier_name=found.supplier_name(one.offer.supplier),
        reasons=one.verdict.objections,
        vetoed=one.match.vetoed or len(one.verdict.objections) > len(one.match.reasons),
        score=1.0,
    )


def _look_alikes(found: Catalogue, family: Family) -> Iterator[Candidate]:
    """Offers with a number near one of the part's; what is another part of ours by its number is not among them."""
    keys = near_keys(family, newest_keys_of_length(found.connection, near_lengths(family)))
    for offer in sorted(offers_by_keys(found.connection, keys), key=lambda one: one.identity):
        near = look_alike(offer, family, keys)
        if near and not any(number.key in family.number_keys() for number in offer.numbers()):
            others, surely = _other_parts(found, family, offer)
            if surely:
                continue
            yield Candidate(
                offer=offer,
                supplier_name=found.supplier_name(offer.supplier),
                reasons=(*near.reasons, *others),
                vetoed=near.vetoed or bool(others),
                score=near.score,
            )


def _other_parts(found: Catalogue, family: Family, offer: Offer) -> tuple[tuple[str, ...], bool]:
    """Which other parts of ours bear a number of the offer, in words; and whether it surely is one of them."""
    said: list[str] = []
    for number in offer.numbers():
        for code in sorted(found.known.bearers.get(number.key, frozenset()) - {family.part.code}):
            if match_offer(offer, found.families[code], found.known).tier == "automatic":
                return (), True
            said.append(f"{number.printed} is a number of {code}")
    return tuple(dict.fromkeys(said)), False
