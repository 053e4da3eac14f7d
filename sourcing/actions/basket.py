"""Compare and plan what stands in a basket: the same steps as with the shop's database, and nothing is kept."""

from collections.abc import Iterator
from datetime import date

from ..basics.basket import Basket, BasketOffer
from ..basics.choice import Comparison, RankWishes
from ..basics.equivalence import Path, Statement
from ..basics.part_number import OURS, PartNumber
from ..basics.plan import Plan, PlanNeed, PlanWishes
from ..basics.problem import refused
from ..basics.value import changed
from ..matching.dimensions.size_check import check_size
from ..matching.identity.verdict import verdict
from ..matching.offer_match import OfferMatch
from .basket_shop import shop_of
from .plan import plan_offers
from .ranked import ranked_into
from .sorted_offers import Evaluated, Judged, ShopAt, sort_out

NOTHING = Evaluated(priced=(), set_aside=(), candidates=())


def need_of(basket: Basket, label: str) -> PlanNeed:
    """The need with that label. Refuses another, naming those there are."""
    for need in basket.needs:
        if need.label == label:
            return need
    raise refused("no-such-need", found=label, known=", ".join(one.label for one in basket.needs))


def compare_basket(basket: Basket, label: str, quantity: int | None, asked: RankWishes) -> Comparison:
    """The comparison of one need's offers, for its own quantity or another. What is not asked here, the basket's own
    wishes ask. Refuses a label the basket does not have and a quantity below one."""
    need = need_of(basket, label)
    if quantity is not None:
        if quantity < 1:
            raise refused("quantity-below-one", found=quantity)
        need = changed(need, quantity=quantity)
    here = shop_of(basket)
    bare = Comparison(
        asked=f"need {need.label}",
        our_part=need.our_part,
        name=need.our_part,
        quantity=need.quantity,
        need_by=None,
        ranked=(),
        set_aside=(),
        candidates=(),
        asks=tuple(words for words in (need.size, *need.asks.asked.words()) if words),
        warnings=need.asks.doubts,
    )
    seen = evaluate_basket(basket, here, need)
    return ranked_into(bare, seen, _wishes(basket, need, asked), here.at, here.door)


def plan_basket(basket: Basket, wishes: PlanWishes) -> Plan:
    """The best plan for the basket's needs; `wishes` go in place of the basket's own.

    A need whose evidence contradicts it stands in `unfilled`: nothing is ordered for it.
    """
    here = shop_of(basket)
    seen = {
        need.label: NOTHING if need.asks.contradicted else evaluate_basket(basket, here, need, keep_refused=True)
        for need in basket.needs
    }
    plan = plan_offers(here, basket.needs, seen, wishes)
    return changed(plan, notes=(*plan.notes, *_not_asked(basket)))


def _not_asked(basket: Basket) -> Iterator[str]:
    """Offers of parts no need names: a slip in a part's name would leave them out in silence."""
    asked = {need.our_part for need in basket.needs}
    for part in sorted({one.our_part for one in basket.offers} - asked):
        count = sum(one.our_part == part for one in basket.offers)
        yield f"no need asks for '{part}': {count} offer{'s' if count > 1 else ''} of it left aside"


def _wishes(basket: Basket, need: PlanNeed, asked: RankWishes) -> RankWishes:
    own = basket.wishes
    return changed(
        asked,
        need_by=asked.need_by or need.need_by or own.need_by,
        trusted_only=asked.trusted_only or own.trusted_only,
        in_stock_only=asked.in_stock_only or own.in_stock_only,
        value_per_day=own.value_per_day if asked.value_per_day is None else asked.value_per_day,
    )


def evaluate_basket(basket: Basket, here: ShopAt, need: PlanNeed, keep_refused: bool = False) -> Evaluated:
    """Every offer of the basket for the need's part: priced, set aside with the reason, or for a person to judge."""
    return sort_out(here, _judged(basket, need), keep_refused)


def _judged(basket: Basket, need: PlanNeed) -> Iterator[Judged]:
    """The file says which part an offer is for; what the need asks beside it is compared with the offer's words."""
    some = [one for one in basket.offers if one.our_part == need.our_part]
    for one in sorted(some, key=lambda one: one.identity):
        offer, asks = one.offer(), need.asks
        match = OfferMatch(tier="automatic", number=offer.numbers()[0], path=_path(one, basket.at.date()))
        sized = check_size(need.size, offer.supplier_number, offer.maker_number, offer.description)
        against = (sized.words,) if sized.vetoes else ()
        yield Judged(offer, match, verdict(offer, against, asks.asked, asks.overrides, "", need.quantity))


def _path(one: BasketOffer, day: date) -> Path:
    said = Statement(
        left=PartNumber(printed=one.our_part, maker=OURS),
        relation="same part",
        right=one.numbers()[0],
        standing=one.standing,
        source=one.source.file,
        stated_on=day,
        stated_by=one.source.file,
    )
    return Path(links=(said,))
