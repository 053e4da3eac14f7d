"""Rank the offers of one part by landed cost, mark the cost and date front, and say each place's reason in words.

No weights and no favourites: landed cost decides, then the earlier last day, then better standing, then the supplier's
name. Ties are told. The order of the input never changes the result.
"""

from collections.abc import Sequence
from datetime import date

from ..basics.choice import Priced, RankedOffer
from ..basics.equivalence import STANDINGS
from ..basics.money import Money

NEVER = date.max
"""Stands for a last day that is not known, so that it sorts after every known one."""


def rank(priced: Sequence[Priced], need_by: date | None) -> tuple[RankedOffer, ...]:
    """Every offer with its place and reason. Offers with open questions do not belong here: they have no total."""
    ordered = sorted(priced, key=_order)
    front = _front(ordered)
    return tuple(
        RankedOffer(
            place=at,
            priced=one,
            on_front=one in front,
            in_time=_in_time(one, need_by),
            reason=_reason(one, at, ordered),
        )
        for at, one in enumerate(ordered, 1)
    )


def _order(one: Priced) -> tuple[object, ...]:
    last = one.arrival.latest or NEVER
    return one.landed.total.amount, last, STANDINGS.index(one.standing), one.supplier_name, one.offer.identity


def _front(ordered: Sequence[Priced]) -> list[Priced]:
    """The offers no other beats: walking from cheap to dear, those that come sooner than all before them."""
    front: list[Priced] = []
    soonest: date | None = None
    for one in ordered:
        last = one.arrival.latest
        if last is not None and (soonest is None or last < soonest):
            front.append(one)
            soonest = last
        elif front and one.landed.total == front[-1].landed.total and last == front[-1].arrival.latest:
            front.append(one)
    return front


def _in_time(one: Priced, need_by: date | None) -> bool | None:
    if need_by is None or one.arrival.latest is None:
        return None
    return one.arrival.latest <= need_by


def _reason(one: Priced, place: int, ordered: Sequence[Priced]) -> str:
    if place == 1:
        return _why_first(one, ordered)
    first = ordered[0]
    gap = one.landed.total - first.landed.total
    if not gap.amount:
        return f"costs the same at the door as {first.supplier_name}{_sooner(one, first)}"
    return f"{gap} dearer at the door than {first.supplier_name}{_sooner(one, first)}{_cheaper_price(one, first)}"


def _why_first(one: Priced, ordered: Sequence[Priced]) -> str:
    if len(ordered) == 1:
        return "the only offer that can be ranked"
    lowest = min(ordered, key=lambda other: (_each(other).amount, _order(other)))
    gap = _each(one) - _each(lowest)
    if lowest is one or gap.amount <= 0:
        return "cheapest at the door and by unit price"
    saved = lowest.landed.total - one.landed.total
    beside = _beside_goods(lowest)
    return (
        f"{_plainly(gap)} dearer each than {lowest.supplier_name}, {saved} cheaper at the door: "
        f"there {beside} come on top"
    )


def _beside_goods(one: Priced) -> str:
    """The named charges that come on top of the goods, largest first."""
    extra = [line for line in one.landed.lines if not line.name.startswith("Goods") and line.amount.amount > 0]
    named = [
        f"{line.name.lower()} {line.amount.amount}" for line in sorted(extra, key=lambda line: -line.amount.amount)
    ]
    return ", ".join(named) or "surplus pieces"


def _each(one: Priced) -> Money:
    """Goods per piece in the shop's currency, without any charge."""
    item = one.landed.items[0]
    return Money(amount=item.goods_cost.amount / item.item.ordered, currency=item.goods_cost.currency)


def _cheaper_price(one: Priced, first: Priced) -> str:
    gap = _each(first) - _each(one)
    if gap.amount <= 0:
        return ""
    return f", though {_plainly(gap)} cheaper each: {_beside_goods(one)} come on top"


def _plainly(amount: Money) -> str:
    return str(amount.rounded().amount)


def _sooner(one: Priced, first: Priced) -> str:
    if one.arrival.latest is None or first.arrival.latest is None:
        return ", day of arrival not known" if one.arrival.latest is None else ""
    days = (first.arrival.latest - one.arrival.latest).days
    if days == 0:
        return ", here by the same day"
    return f", here {abs(days)} day{'s' if abs(days) > 1 else ''} {'sooner' if days > 0 else 'later'}"
