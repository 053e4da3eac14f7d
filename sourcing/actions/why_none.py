"""Why a need that no offer can fill has none: what stands in the way of each offer there is, nearest first."""

from collections.abc import Mapping, Sequence

from ..basics.choice import Priced, RankWishes
from ..basics.plan import PlanNeed, PlanWishes
from ..choosing.wishes import against
from .sorted_offers import Evaluated

NOBODY, NO_SET = "nobody offers it", "no set of orders"
"""How a plan's sentence goes on for a need without any choice, and for one that fits in no plan."""
SHOWN = 4
"""Offers named with their reasons; the others are counted."""


def with_reasons(
    unfilled: Sequence[str], needs: Sequence[PlanNeed], seen: Mapping[str, Evaluated], wishes: PlanWishes
) -> tuple[str, ...]:
    """The sentences, with what stands in the way where offers were there and none could be used."""
    said = {f"{need.label}: {need.quantity} x {need.our_part}: ": need for need in needs}
    return tuple(_told(words, said, seen, wishes) for words in unfilled)


def _told(words: str, said: Mapping[str, PlanNeed], seen: Mapping[str, Evaluated], wishes: PlanWishes) -> str:
    what = next((one for one in said if words.startswith((f"{one}{NOBODY}", f"{one}{NO_SET}"))), None)
    if what is None:
        return words
    found = seen[said[what].label]
    if words.startswith(f"{what}{NOBODY}"):
        why = _why(said[what], found, wishes)
        return f"{what}{why}" if why else words
    # Of an offer that could be ordered alone nothing more is to be said; of the others, what is in their way alone.
    reasons = [] if found.priced else _reasons(found, wishes)[:SHOWN]
    return f"{words}; alone {'; '.join(reasons)}" if reasons else words


def _why(need: PlanNeed, seen: Evaluated, wishes: PlanWishes) -> str:
    """Blank where there is no offer at all."""
    if need.asks.contradicted and not (seen.priced or seen.set_aside):
        return f"nothing is ordered for it yet: {need.asks.contradicted}"
    reasons = _reasons(seen, wishes)
    judged = _counted(len(seen.candidates), "offer is for a person to judge", "offers are for a person to judge")
    if not reasons:
        return judged
    more = len(reasons) - SHOWN
    shown = reasons[:SHOWN] + ([f"{more} more, as a comparison shows"] if more > 0 else [])
    count = _counted(len(reasons), "offer, and it can't be ordered", "offers, and none can be ordered")
    return f"{count}: {'; '.join(shown)}" + (f"; {judged}" if judged else "")


def _reasons(seen: Evaluated, wishes: PlanWishes) -> list[str]:
    """Kept out by a wish, then lacking something of their cost, then not to be had, then rejected."""
    open_ones = {id(one.offer) for one in seen.unknown}
    aside = sorted(seen.set_aside, key=lambda one: (one.rejected, id(one.offer) not in open_ones))
    wished = [f"{one.supplier_name} {one.offer.shown_number}: {_against(one, wishes)}" for one in seen.priced]
    return wished + [f"{one.supplier_name} {one.offer.shown_number}: {one.reason}" for one in aside]


def _against(one: Priced, wishes: PlanWishes) -> str:
    asked = RankWishes(trusted_only=wishes.trusted_only, in_stock_only=wishes.in_stock_only)
    return against(one, asked) or "no order of it can be worked out"


def _counted(count: int, one: str, many: str) -> str:
    return f"{count} {one if count == 1 else many}" if count else ""
