"""Rank the offers of one part by landed cost, mark the cost and date front, and say each place's reason in words.

No weights and no favourites: landed cost decides, then the earlier last day, then better standing, then the supplier's
name. Ties are told. The order of the input never changes the result. Only where the user states a price for a day of
waiting do the days count in money, at that price.
"""

from collections.abc import Sequence
from datetime import date

from ..basics.choice import OpenOffer, Priced, RankedOffer, Ranking, RankWishes
from .figures import Figures, in_order, money
from .front import on_front
from .open_offers import is_open, open_offers
from .reasons import Reasons
from .wishes import against, set_aside


def rank(priced: Sequence[Priced], wishes: RankWishes, asked_on: date) -> Ranking:
    """Every offer in its place with the reason, or beneath the ranked ones, or set aside for what the user wishes.

    `priced` are offers whose order alone the supplier would take. `asked_on` is the day from which waiting counts.
    Amounts are in the shop's currency; nothing is rounded before it is shown.
    """
    wished, apart = [], []
    for one in priced:
        why = against(one, wishes)
        if why:
            apart.append(set_aside(one, why))
        else:
            wished.append(one)
    order = in_order([one for one in wished if not is_open(one, wishes)], wishes, asked_on)
    beneath = open_offers([one for one in wished if is_open(one, wishes)], order, wishes, asked_on)
    return Ranking(
        ranked=_ranked(order, wishes, _may_be_first(order, beneath)),
        open_offers=beneath,
        set_aside=tuple(sorted(apart, key=lambda one: (one.supplier_name, one.offer.identity))),
    )


def _may_be_first(order: Sequence[Figures], beneath: Sequence[OpenOffer]) -> tuple[str, ...]:
    """Names of suppliers with an offer that is not ranked and may yet come before the first."""
    if not order:
        return ()
    first = money(order[0].counted, order[0].currency)
    return tuple(dict.fromkeys(one.priced.supplier_name for one in beneath if one.may_come_first(first)))


def _ranked(order: Sequence[Figures], wishes: RankWishes, perhaps: tuple[str, ...]) -> tuple[RankedOffer, ...]:
    reasons = Reasons(order, wishes.value_per_day, perhaps)
    return tuple(
        RankedOffer(
            place=at + 1,
            priced=one.priced,
            on_front=front,
            in_time=_in_time(one.priced, wishes.need_by),
            reason=reasons.of(at),
            days=one.days,
            waiting=None if one.waiting is None else money(one.waiting, one.currency),
            counted=None if one.waiting is None else money(one.counted, one.currency),
        )
        for at, (one, front) in enumerate(zip(order, on_front(order), strict=True))
    )


def _in_time(one: Priced, need_by: date | None) -> bool | None:
    if need_by is None or one.arrival.latest is None:
        return None
    return one.arrival.latest <= need_by
