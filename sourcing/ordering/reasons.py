"""Why these goods are bought here and in this number, in words for the shop's own eyes."""

from collections.abc import Iterator

from ..basics.landed_cost import CostLine, LandedItem, LandedOrder
from ..basics.offer import Offer
from ..basics.quote import Behind


def order_reasons(landed: LandedOrder, jobs: int) -> tuple[str, ...]:
    """Why the goods of an order are bought together: what of its charges is saved, or paid once for all of it."""
    return tuple(_order_reasons(landed, jobs))


def line_reasons(behind: Behind, item: LandedItem) -> tuple[str, ...]:
    """Why a line is ordered from this offer and in so many pieces."""
    words = [f"quoted from it: {behind.landed_rule}"] if behind.landed_rule else []
    if behind.held:
        words.append("the customer was promised the price, whatever the part costs")
    words.extend(_surplus_words(item))
    return tuple(words)


def _order_reasons(landed: LandedOrder, jobs: int) -> Iterator[str]:
    for line in landed.lines:
        if line.is_freight and not line.amount.amount and line.rule.startswith("free from"):
            yield f"the order passes free freight: {line.rule}"
        if line.kind == "discount" and not line.is_goods:
            yield f"the order passes a discount: {line.amount}, {line.rule}"
    once = [line for line in landed.lines if _paid_once(line)]
    if once and len(landed.items) > 1:
        charges = ", ".join(f"{line.name.lower()} {line.amount}" for line in once)
        yield f"paid once for {len(landed.items)} lines{f' of {jobs} jobs' if jobs > 1 else ''}: {charges}"


def _paid_once(line: CostLine) -> bool:
    return line.amount.amount > 0 and (line.is_freight or line.kind in ("handling", "small-order fee", "entry fee"))


def _surplus_words(item: LandedItem) -> Iterator[str]:
    bought = item.item
    if bought.surplus <= 0:
        return
    why = _why_more(bought.offer, bought.needed, bought.ordered)
    shelf = f"{bought.surplus} {'goes' if bought.surplus == 1 else 'go'} on the shelf at {item.surplus_cost}"
    yield f"{bought.ordered} ordered though {bought.needed} needed: {why}, {shelf}"


def _why_more(offer: Offer, needed: int, ordered: int) -> str:
    if max(offer.minimum, offer.breaks[0].from_quantity if offer.breaks else 1) == ordered:
        return f"at least {ordered} are sold"
    for word, step in (("pack of", offer.pack), ("sold in multiples of", offer.order_multiple)):
        if step > 1 and ordered - needed < step:
            return f"{word} {step}"
    return f"the price from {ordered} on makes them cheaper together than fewer"
