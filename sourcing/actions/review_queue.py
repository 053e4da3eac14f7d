"""The queue of candidates that wait for a person: what nobody has answered and no number has settled meanwhile."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from rapidfuzz.distance import OSA
from sqlalchemy import Connection

from ..basics.judgement import KeptCandidate, ReviewQueue, Waiting
from ..basics.money import Money
from ..basics.offer import Offer
from ..basics.part_number import OURS, PartNumber
from ..matching.equivalences.family import Family
from ..matching.review_order import InQueue, in_order, worth
from ..storage.candidates import CandidateRow, candidate_rows, kept_candidates, not_looked_through
from ..storage.deeds import deeds
from ..storage.jobs import jobs
from ..storage.judgements import judgements_in_force
from ..storage.offers import offers_numbered
from ..storage.part_lookups import lookups
from ..storage.sheets import kept_sheets
from .desk import Desk, ShopNow, shop_now
from .our_side import OurSide, our_side
from .settled import named, settled_rows
from .setup import TABLE_STAYS
from .shop_prices import ShopPrices

NO_SCORE = Decimal(0)
SCORE_PLACES = Decimal("0.0001")
"""Scores are compared with these decimals: what is shown as 0.95 counts as 0.95."""
LIKELY = Decimal("0.5")
"""Below this a candidate is likelier wrong than right."""
FIND_CANDIDATES = "find candidates"
"""The deed of looking through a sheet, which is its subject."""
CHANGES_TABLE = frozenset(
    (
        *("set up", "import table", "add statement", "withdraw statement", "restore statement", "change standing"),
        *("doubt statement", "answer doubt", "name maker", "take maker's name away"),
        *("add part", "change part", "take part out"),
    )
)
"""Deeds after which another part may be found on a sheet. Answers are none: each settles its own row."""
CHANGES_RULES = frozenset(("confirm number rule", "withdraw number rule"))
"""Deeds after which the numbers of one supplier, their subject, are read differently."""


@dataclass(frozen=True)
class Review:
    """Everything judging needs, loaded once."""

    connection: Connection
    day: date
    shop: ShopNow
    side: OurSide
    prices: ShopPrices
    asked: Counter[str]


def review(connection: Connection, desk: Desk, side: OurSide | None = None) -> Review:
    """Load the shop, our parts (unless they are there already) and how often each was asked for."""
    shop = shop_now(connection, desk.at)
    day = desk.at.date()
    prices = ShopPrices(shop.rates, day)
    return Review(connection, day, shop, side or our_side(connection, day), prices, times_asked(connection))


def review_queue(desk: Desk, supplier: str = "", most: int | None = 20, least: Decimal = NO_SCORE) -> ReviewQueue:
    """The rows that wait, of one supplier or all, most worth first; `most` rows are shown, None: all of them.

    `least`: only candidates with this score or more, as it is shown.
    """
    with desk.store.reading() as connection:
        found = review(connection, desk)
        waiting = [one for one in waiting_rows(found, supplier) if shown_score(one.score) >= least]
        order = queue_order(found, waiting)
        likely = {one.offer for one in waiting if is_likely(one)}
        rows = list(dict.fromkeys(one.row for one in order))
        shown = set(rows if most is None else rows[:most])
        return ReviewQueue(
            supplier=supplier,
            rows=len(rows),
            candidates=len(order),
            shown=tuple(show(found, [one.candidate for one in order if one.row in shown])),
            not_looked_through=tuple(not_looked_through(connection, found.day)),
            table_changed_since=looked_before_a_change(connection, found.day),
            likely=len(likely),
        )


def waiting_rows(found: Review, supplier: str = "") -> list[CandidateRow]:
    """Candidates nobody has answered, of parts that are still ours, on rows that are not automatic by now."""
    return still_waiting(found, candidate_rows(found.connection, found.day, supplier))


def still_waiting(found: Review, rows: Iterable[CandidateRow]) -> list[CandidateRow]:
    """Those of the rows that wait, in their order."""
    makers = found.side.makers
    settled = settled_rows(judgements_in_force(found.connection), makers, found.side.families)
    waiting = [
        one
        for one in rows
        if one.part in found.side.families and not settled.settled(named(one.keys, makers), one.part)
    ]
    automatic = _automatic(found, waiting)
    return [one for one in waiting if one.offer not in automatic]


def is_likely(one: CandidateRow) -> bool:
    """Whether it is likelier right than wrong, and nothing speaks against it."""
    return shown_score(one.score) >= LIKELY and not one.against


def show(found: Review, candidates: Sequence[int]) -> list[Waiting]:
    """The candidates of these numbers as a person is to see them, in this order."""
    kept = kept_candidates(found.connection, candidates)
    return [_waiting(found, kept[number]) for number in candidates if number in kept]


def shown_score(score: float) -> Decimal:
    """The score as it is shown and compared: with four decimals."""
    return Decimal(repr(score)).quantize(SCORE_PLACES)


def times_asked(connection: Connection) -> Counter[str]:
    """How many lines of jobs call for each part and on how many days it was looked up, together."""
    asked = Counter(line.part for job in jobs(connection) for _, line in job.labelled() if line.part)
    asked.update(lookups(connection))
    return asked


def looked_before_a_change(connection: Connection, day: date) -> tuple[int, ...]:
    """The sheets that count and were last looked through before the table changed, by the order of the ledger.

    Or before a number rule of their supplier did. A set-up that left the table as it was changes nothing.
    """
    looked, rules, last = dict[str, int](), dict[str, int](), -1
    for at, deed in enumerate(deeds(connection)):
        if deed.deed == FIND_CANDIDATES:
            looked[deed.subject] = at
        elif deed.deed in CHANGES_RULES:
            rules[deed.subject] = at
        elif deed.deed in CHANGES_TABLE and not deed.detail.endswith(TABLE_STAYS):
            last = at
    found = list[int]()
    for one in kept_sheets(connection, day):
        changed = max(last, rules.get(f"supplier {one.supplier}", -1))
        if one.is_newest and looked.get(f"sheet {one.sheet}", changed) < changed:
            found.append(one.sheet)
    return tuple(sorted(found))


def _automatic(found: Review, waiting: Iterable[CandidateRow]) -> set[int]:
    """Offers that match by themselves now, because of statements made since they were found."""
    bearers, rules = found.side.known.bearers, found.side.known.rules
    maybe = {
        one.offer
        for one in waiting
        if one.keys.supplier_key in bearers
        or one.keys.maker_number_key in bearers
        or rules.get(one.keys.supplier)  # without what the supplier adds it may be one of ours
    }
    return {number for number, offer in offers_numbered(found.connection, maybe).items() if is_automatic(found, offer)}


def is_automatic(found: Review, offer: Offer) -> bool:
    """Whether the offer is one of our parts by its number and the table alone."""
    return any(match.tier == "automatic" for _, match in found.side.matches(offer))


def queue_order(found: Review, waiting: Iterable[CandidateRow]) -> list[InQueue]:
    """Likely rows first, of those what is worth most first; all parts of one row together."""
    in_queue = [
        InQueue(
            candidate=one.candidate,
            row=one.offer,
            price=found.prices.each(one.net_price, one.price_basis, one.currency, one.sold_by),
            asked=found.asked[one.part],
            score=one.score,
            rank=one.rank,
            likely=is_likely(one),
        )
        for one in waiting
    ]
    return in_order(in_queue)


def _waiting(found: Review, kept: KeptCandidate) -> Waiting:
    family = found.side.families[kept.part]
    price, asked = found.prices.of(kept.offer), found.asked[kept.part]
    terms, value = found.shop.terms.get(kept.offer.supplier), worth(price, asked)
    currency = found.prices.currency
    return Waiting(
        kept=kept,
        part=family.part,
        supplier_name=terms.name if terms else kept.offer.supplier,
        price=None if price is None else Money(amount=price, currency=currency).rounded(),
        asked=asked,
        worth=None if value is None else Money(amount=value, currency=currency).rounded(),
        near=_near(kept.offer, family),
    )


def _near(offer: Offer, family: Family) -> tuple[PartNumber, PartNumber] | None:
    """The two numbers most alike, one of the row's and one of the part's; our own code is no number on a sheet."""
    theirs = [number for node, number in family.printed.items() if node not in family.forbidden]
    pairs = [(one, other) for one in offer.numbers() for other in theirs if other.maker != OURS and one.key]
    if not pairs:
        return None
    return max(pairs, key=lambda pair: (OSA.normalized_similarity(pair[0].key, pair[1].key), str(pair[1])))
