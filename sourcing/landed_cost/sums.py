"""What an item adds to its order, as the plan counts it: the figures of a single order's line, and its weight."""

from decimal import Decimal

from ..basics.landed_cost import OrderItem
from ..basics.schedule import ItemSums
from .door import Door
from .figures import Figures, figures
from .freight import BY_WEIGHT
from .minor import reached_from, whole
from .prepared import Prepared, prepared
from .quantity import pieces_to_order
from .weights import weigh


def item_sums(item: OrderItem, door: Door) -> ItemSums:
    """The item's sums. Grams are rounded down; they are 0 where no rule asks for them.

    Raises ValueError where the item leaves its duty, size or weight open: its order can't be priced (`missing` of the
    landed order says why), so it must be set aside before.
    """
    at = prepared(door)
    one = figures(item, at)
    if len(one.duty_percents) > 1 or one.oversize is None:
        raise ValueError(f"{item.offer.supplier_number}: duty or size is not known")
    grams, volume = _grams(item, one, at)
    return ItemSums(
        value=one.value,
        counted=one.counted,
        goods=one.goods,
        duty=one.duty,
        freight=one.freight,
        fees=one.fees,
        core=one.core,
        surplus=_forced_surplus(item, one, at),
        grams=grams,
        volume_grams=volume,
        oversize=one.oversize,
    )


def _forced_surplus(item: OrderItem, one: Figures, at: Prepared) -> int:
    """What surplus cost that packs and minimums force: its share of the goods, less the largest order discount.

    Pieces ordered beyond the fewest were a choice, and count for nothing here.
    """
    forced = min(item.surplus, pieces_to_order(item.offer, max(1, item.needed)) - item.needed)
    if forced <= 0:
        return 0
    off = max((discount.percent for discount in at.terms.order_discounts), default=Decimal(0))
    return whole(Decimal(one.goods) * forced / item.ordered * (1 - off / 100))


def _grams(item: OrderItem, one: Figures, at: Prepared) -> tuple[int, int]:
    freight = at.terms.freight
    if freight is None or freight.rule not in BY_WEIGHT:
        return 0, 0
    weighed = weigh([item], freight)
    if not weighed.unknown:
        return int(weighed.grams), int(weighed.volume_grams)
    if freight.free_from is not None and one.counted >= reached_from(freight.free_from, at.terms.currency):
        return 0, 0  # every order with this item is free of freight, whatever it weighs
    raise ValueError("; ".join(weighed.questions))
