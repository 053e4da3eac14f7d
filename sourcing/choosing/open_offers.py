"""Offers of which something is not known: their range, and where they would stand among the ranked ones."""

from bisect import bisect_left
from collections.abc import Sequence
from datetime import date

from ..basics.choice import OpenOffer, Priced, RankWishes
from ..basics.money import Money, total
from .figures import Figures, Key, figures, key


def is_open(one: Priced, wishes: RankWishes) -> bool:
    """Whether the offer can't be ranked: a part of its cost is missing, or its waiting can't be counted."""
    return bool(one.landed.missing) or (wishes.value_per_day is not None and one.arrival.latest is None)


def open_offers(
    some: Sequence[Priced], ranked: Sequence[Figures], wishes: RankWishes, asked_on: date
) -> tuple[OpenOffer, ...]:
    """Each with its range and its places, from the least to the greatest least. `ranked` is in order."""
    keys = [one.key for one in ranked]
    made = [_open_offer(one, keys, wishes, asked_on) for one in some]
    return tuple(sorted(made, key=lambda one: (one.least.amount, one.priced.supplier_name, one.priced.offer.identity)))


def _open_offer(one: Priced, keys: Sequence[Key], wishes: RankWishes, asked_on: date) -> OpenOffer:
    landed = one.landed
    least = landed.total + total((part.least for part in landed.missing if part.least), landed.total.currency)
    most = landed.most
    dated = wishes.value_per_day is None or one.arrival.latest is not None
    ends = [_place(one, end, keys, wishes, asked_on) for end in (least, most) if end] if keys and most and dated else []
    best, worst = (ends[0], ends[-1]) if ends else (None, None)
    return OpenOffer(
        priced=one,
        least=least,
        most=most,
        best_place=best,
        worst_place=worst,
        reason="; ".join([_cost_words(least, most) + _place_words(best, worst), *_missing_words(one, dated, wishes)]),
    )


def _place(one: Priced, cost: Money, keys: Sequence[Key], wishes: RankWishes, asked_on: date) -> int:
    """The place among the ranked ones at that cost."""
    known = figures(one, wishes, asked_on)
    return bisect_left(keys, key(one, cost.minor() + (known.waiting or 0), known.latest)) + 1


def _cost_words(least: Money, most: Money | None) -> str:
    if most is None:
        return f"at least {least} at the door"
    return f"{least} at the door" if most == least else f"between {least.rounded().amount} and {most} at the door"


def _place_words(best: int | None, worst: int | None) -> str:
    if best is None or worst is None:
        return ""
    if best == worst:
        return f": would stand {ordinal(best)}"
    return f": would stand {ordinal(best)} at best, {ordinal(worst)} at worst"


def _missing_words(one: Priced, dated: bool, wishes: RankWishes) -> list[str]:
    words = list(one.landed.open_questions)
    if not dated:
        words.append(
            f"the day of arrival is not known, so waiting at {wishes.value_per_day} "
            f"{one.landed.total.currency} a day can't be counted"
        )
    return words


def ordinal(place: int) -> str:
    """'1st', '2nd', '11th'."""
    end = "th" if place % 100 in (11, 12, 13) else {1: "st", 2: "nd", 3: "rd"}.get(place % 10, "th")
    return f"{place}{end}"
