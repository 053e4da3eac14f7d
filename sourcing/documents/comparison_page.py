"""The words of a comparison for a page: what stands beside each offer, and what is not ranked, at most so many of each.

The files beside the page hold all of them.
"""

from collections.abc import Sequence

from ..basics.choice import Candidate, Comparison, OpenOffer, RankedOffer, SetAside
from ..basics.offer import Offer
from ..basics.value import Value
from .landed_words import beside_words
from .order_paper import price_words
from .ranked_text import ranked_by, source_words
from .ranking_words import first_place_words, wish_words

MOST = 40
"""Offers of one kind on the page."""


class OfferWords(Value, frozen=True, kw_only=True):
    """A ranked offer with its words. `each`: the price on the sheet; `links`: the statements that lead to its number,
    none where it is our part's own."""

    ranked: RankedOffer
    each: str
    size: str
    links: tuple[str, ...]
    beside: tuple[str, ...]
    source: str


class ApartWords(Value, frozen=True, kw_only=True):
    """An offer that is not ranked: whose, what, and why."""

    supplier_name: str
    number: str
    description: str
    reason: str
    source: str


class PageWords(Value, frozen=True, kw_only=True):
    """What stands around the ranked offers. `left_out`: offers of any kind that only the files show."""

    ranked_by: str
    only: tuple[str, ...]
    first: tuple[str, ...]
    open_offers: tuple[ApartWords, ...]
    rejected: tuple[ApartWords, ...]
    held: tuple[ApartWords, ...]
    to_judge: tuple[ApartWords, ...]
    apart: tuple[ApartWords, ...]
    left_out: int


def offer_words(comparison: Comparison, sizes: Sequence[str]) -> tuple[OfferWords, ...]:
    """The first places. `sizes` are in the order of the ranked offers."""
    return tuple(_offer(one, size) for one, size in zip(comparison.ranked[:MOST], sizes, strict=False))


def page_words(comparison: Comparison) -> PageWords:
    """Everything beside the first places."""
    aside, judged = comparison.set_aside, comparison.candidates
    kinds = (
        [_open(one) for one in comparison.open_offers],
        [_aside(one) for one in aside if one.rejected],
        [_judged(one) for one in judged if one.vetoed],
        [_judged(one) for one in judged if not one.vetoed],
        [_aside(one) for one in aside if not one.rejected],
    )
    open_offers, rejected, held, to_judge, apart = (tuple(some[:MOST]) for some in kinds)
    return PageWords(
        ranked_by=ranked_by(comparison) if comparison.ranked else "",
        only=tuple(wish_words(comparison.wishes)),
        first=tuple(first_place_words(comparison)),
        open_offers=open_offers,
        rejected=rejected,
        held=held,
        to_judge=to_judge,
        apart=apart,
        left_out=sum(max(len(some) - MOST, 0) for some in (comparison.ranked, *kinds)),
    )


def _offer(one: RankedOffer, size: str) -> OfferWords:
    offer, item = one.priced.offer, one.priced.landed.items[0]
    return OfferWords(
        ranked=one,
        each=price_words(item.unit_price, offer.currency, offer.price_basis),
        size=size,
        links=tuple(str(link) for link in one.priced.path.links),
        beside=tuple(beside_words(item, one.priced.warnings)),
        source=source_words(offer),
    )


def _open(one: OpenOffer) -> ApartWords:
    return _apart(one.priced.offer, one.priced.supplier_name, one.reason)


def _aside(one: SetAside) -> ApartWords:
    return _apart(one.offer, one.supplier_name, one.reason.removeprefix("rejected: "))


def _judged(one: Candidate) -> ApartWords:
    return _apart(one.offer, one.supplier_name, "; ".join(one.reasons))


def _apart(offer: Offer, supplier: str, reason: str) -> ApartWords:
    return ApartWords(
        supplier_name=supplier,
        number=offer.shown_number,
        description=offer.description,
        reason=reason,
        source=source_words(offer),
    )
