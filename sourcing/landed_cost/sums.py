"""What an item adds to its order, as the plan counts it: the figures of a single order's line, and its weight."""

from ..basics.landed_cost import OrderItem
from ..basics.schedule import ItemSums
from .door import Door
from .figures import Figures, figures
from .freight import BY_WEIGHT
from .minor import reached_from
from .prepared import Prepared, prepared
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
        surplus=one.surplus,
        grams=grams,
        volume_grams=volume,
        oversize=one.oversize,
    )


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
