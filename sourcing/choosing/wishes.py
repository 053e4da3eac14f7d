"""What a user's wishes take out of a ranking, and why, in words."""

from collections.abc import Iterator

from ..basics.choice import Priced, RankWishes, SetAside
from ..basics.equivalence import GOOD_STANDING


def against(one: Priced, wishes: RankWishes) -> str:
    """Why the wishes take the offer out of the ranking: every reason; blank where they do not."""
    return "; ".join(_reasons(one, wishes))


def _reasons(one: Priced, wishes: RankWishes) -> Iterator[str]:
    item, stock = one.landed.items[0].item, one.offer.stock
    if wishes.trusted_only and one.standing not in GOOD_STANDING:
        yield f"the match is not trusted: its weakest statement is '{one.standing}'"
    if wishes.in_stock_only and stock is None:
        yield "not known to be in stock: the sheet states no stock"
    if wishes.in_stock_only and one.arrival.told:
        yield f"not in stock: {one.arrival.told}"
    elif wishes.in_stock_only and stock is not None and stock < item.ordered:
        yield f"not in stock for the quantity: {stock} of {item.ordered}"
    if wishes.without_surplus and item.surplus:
        more = "1 piece" if item.surplus == 1 else f"{item.surplus} pieces"
        yield f"{more} more than needed: {item.ordered} is the least that can be ordered"
    if wishes.only_in_time and wishes.need_by:
        if one.arrival.latest is None:
            yield f"the day of arrival is not known, needed by {wishes.need_by}: ask him when it can be here"
        elif one.arrival.latest > wishes.need_by:
            yield f"not in time: here by {one.arrival.latest}, needed by {wishes.need_by}"


def set_aside(one: Priced, why: str) -> SetAside:
    """The offer as one that is shown and not ranked, with what it would have cost and when it would have come."""
    cost = f"{'at least ' if one.landed.missing else ''}{one.landed.total} at the door"
    day = f"here by {one.arrival.latest}" if one.arrival.latest else "day of arrival not known"
    return SetAside(offer=one.offer, supplier_name=one.supplier_name, reason=f"{why}; {cost}, {day}")
