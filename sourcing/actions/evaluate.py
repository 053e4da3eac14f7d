"""Every offer of one of our parts, matched, priced at the door and dated; what compare and plan both stand on."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import datetime

from sqlalchemy import Connection

from ..basics.choice import Asks, Candidate
from ..basics.equivalence import Bench
from ..basics.offer import Offer
from ..basics.problem import refused
from ..matching.equivalences.bench import fits, why_not_followed
from ..matching.equivalences.family import Family
from ..matching.equivalences.graph import Families, families
from ..matching.identity.asked_merge import merged
from ..matching.identity.verdict import ban_on, verdict
from ..matching.look_alikes import NearKeys, look_alike
from ..matching.numbers.affixes import dressed
from ..matching.offer_match import Known, OfferMatch, match_offer
from ..matching.settled_rows import SettledRows
from ..storage.equivalence import equivalence_table
from ..storage.judgements import judgements_in_force
from ..storage.offers import offers_by_keys
from .desk import Desk, shop_now
from .known_table import KnownTable, known_table
from .near_now import near_now, near_of
from .our_side import known_numbers
from .settled import keys_of_offer, settled_rows
from .sorted_offers import Evaluated, Judged, ShopAt, sort_out

NOTHING_ASKED = Asks()


@dataclass(frozen=True)
class Catalogue(ShopAt):
    """Our parts' families and everything that holds at the moment: load once, evaluate many parts."""

    connection: Connection
    families: Families
    known: Known
    refused: SettledRows
    near: Callable[[Family], NearKeys]

    def family(self, code: str, bench: Bench | None) -> Family:
        """The part's numbers for the machine on the bench; all of them where none is named."""
        return self.families.graph.family(code, bench) if bench else self.families[code]


def catalogue(connection: Connection, at: datetime, table: KnownTable | None = None) -> Catalogue:
    """Load families, terms, settings and rates. `table`: the equivalence table where it is at hand already."""
    every = table.every if table else families(equivalence_table(connection))
    return Catalogue(
        connection=connection,
        at=at,
        shop=shop_now(connection, at),
        families=every,
        known=known_numbers(connection, every, at.date(), table.borne if table else None),
        refused=_refused(connection, every),
        near=lambda family: near_of(connection, family, at.date()),
    )


def catalogue_to_read(desk: Desk, connection: Connection) -> Catalogue:
    """The same for a transaction that only reads: with the equivalence table and the near numbers kept between two
    pages."""
    found = catalogue(connection, desk.at, known_table(desk.store, connection))
    return replace(found, near=lambda family: near_now(desk.store, connection, family, desk.at.date()))


def _refused(connection: Connection, every: Families) -> SettledRows:
    """What a person has refused, and only that: what was accepted as unchecked stays to be seen."""
    no = (one for one in judgements_in_force(connection) if one.answer == "no")
    return settled_rows(no, every.graph.makers, every)


def evaluate(
    found: Catalogue,
    code: str,
    quantity: int,
    keep_refused: bool = False,
    asks: Asks = NOTHING_ASKED,
    look_alikes: bool = True,
) -> Evaluated:
    """Match and price every offer of our part on the suppliers' newest sheets.

    `asks` is what a job's line asks beside what our part asks. `keep_refused`: an offer whose order alone the supplier
    would refuse counts as priced, for a plan may add to it. `look_alikes`: rows whose number is only near the part's
    are among the candidates; they are looked for among all numbers of the newest sheets.
    """
    if quantity < 1:
        raise refused("quantity-below-one", found=quantity)
    sorted_out = sort_out(found, judged_offers(found, code, asks, quantity), keep_refused)
    near = _look_alikes(found, found.families[code]) if look_alikes else ()
    candidates = [*sorted_out.candidates, *near]
    makers = found.families.graph.makers
    candidates = [one for one in candidates if not found.refused.settled(keys_of_offer(one.offer, makers), code)]
    ordered = sorted(candidates, key=lambda one: (one.vetoed, -one.score, one.offer.identity))
    return replace(sorted_out, candidates=tuple(ordered))


def judged_offers(found: Catalogue, code: str, asks: Asks, quantity: int) -> Iterator[Judged]:
    """Every offer that bears a number of the part, judged, in an order the input does not decide.

    A number that stands for the part only on other machines than the one on the bench is judged too, and rejected.
    """
    every, here = found.families[code], found.family(code, asks.bench)
    asked, _ = merged(("the job's line", asks.asked), ("our part", every.part.asked))
    keys = every.number_keys() | {key for _, key in here.forbidden}
    keys |= dressed((rule for rules in found.known.rules.values() for rule in rules), keys)
    for offer in sorted(offers_by_keys(found.connection, keys, found.at.date()), key=lambda one: one.identity):
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


def _look_alikes(found: Catalogue, family: Family) -> Iterator[Candidate]:
    """Offers with a number near one of the part's; what is another part of ours by its number is not among them."""
    keys = found.near(family)
    for offer in sorted(offers_by_keys(found.connection, keys, found.at.date()), key=lambda one: one.identity):
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
