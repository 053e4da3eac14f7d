"""A plan of orders as text for a terminal 100 columns wide and as XLSX.

Nothing is cut and nothing is coloured. Landed costs are in the shop's currency, prices in the supplier's.
"""

from collections.abc import Iterable

from ..basics.landed_cost import Delivery, LandedItem, LandedOrder
from ..basics.plan import Alternative, FrontPoint, Plan, PlannedOrder
from .landed_words import titled
from .order_paper import price_words
from .plain_text import count, document, row, table, widths_for, wrapped, yes_no
from .plan_tables import plan_tables
from .plan_words import back_words, head_words
from .workbook import workbook_bytes

ALTERNATIVES_HEADER = ("way", "at the door", "more", "here by", "why")
ALTERNATIVES_MOST = (26, 14, 10, 10, 36)
FRONT_HEADER = ("", "at the door", "counted", "here by", "from", "proven")
FRONT_MOST = (6, 16, 16, 10, 40, 6)


def plan_text(plan: Plan) -> str:
    """What was asked and how sure the plan is, the orders with items, cost lines and days, other ways of buying, the
    front of cost and date, what nobody can fill."""
    lines = [line for words in head_words(plan) for line in wrapped(words)]
    lines += titled("Before ordering", _each(plan.warnings))
    for at, order in enumerate(plan.orders, 1):
        lines += ["", *_planned_order(at, order)]
    lines += titled("If it goes back", _each(back_words(plan)))
    lines += titled("Other ways to buy the same", _alternatives(plan.alternatives))
    lines += titled(_front_title(plan), _front(plan))
    lines += titled("Not filled", _each(plan.unfilled))
    return document([*lines, *titled("Notes", _each(plan.notes))])


def plan_xlsx(plan: Plan) -> bytes:
    """The same as a workbook: worksheets Items, Orders, Cost lines, Deliveries, Other ways, Front, Notes."""
    return workbook_bytes(plan_tables(plan))


def _each(sentences: Iterable[str]) -> list[str]:
    return [line for words in sentences for line in wrapped(words, 2)]


def _planned_order(at: int, order: PlannedOrder) -> list[str]:
    landed, least = order.landed, "at least " if order.landed.missing else ""
    head = f"Order {at}: {landed.supplier_name}, {least}{landed.total} at the door, arrives {order.arrival.words()}"
    lines = wrapped(head)
    for item in landed.items:
        lines += wrapped(_item_words(item), 2)
        lines += [line for words in _beside(item) for line in wrapped(words, 6)]
    cells = [(line.name, str(line.amount.rounded().amount), line.rule) for line in landed.lines]
    widths = widths_for(cells, (30, 12, 50)) if cells else []
    lines += [f"    {text}" for cell in cells for text in row(cell, widths, frozenset((1,)))]
    lines += _deliveries(order.arrival.deliveries)
    return lines + [line for words in _doubts(landed) for line in wrapped(words, 4)]


def _beside(item: LandedItem) -> list[str]:
    """Pieces for the shelf and the core charge; whether it can go back is told once an order, further down."""
    spare, core = item.item.surplus, item.core_charge
    words = [f"{count(spare, 'piece')} more than needed, for the shelf at {item.surplus_cost}"] if spare > 0 else []
    return words + ([f"core charge {core} beside it, back when the old part is returned"] if core.amount else [])


def _deliveries(deliveries: tuple[Delivery, ...]) -> list[str]:
    """What comes when, where it does not all come at once."""
    if len(deliveries) < 2:
        return []
    told = (f"{count(one.pieces, 'piece')} here {_days(one)}" for one in deliveries)
    return wrapped(f"comes in {len(deliveries)} deliveries: {'; '.join(told)}", 4)


def _days(one: Delivery) -> str:
    first, last = one.arrives
    return f"on {first}" if first == last else f"from {first} to {last}"


def _doubts(landed: LandedOrder) -> list[str]:
    asked = [f"Not known: {_missing_words(one.what, one.least, one.most)}" for one in landed.missing]
    asked += [f"The supplier would refuse: {landed.refusal}"] if landed.refusal else []
    paid = landed.cash_discount
    return asked + ([f"Not in it: {paid.name.lower()} {paid.amount}, {paid.rule}"] if paid else [])


def _missing_words(what: str, least: object, most: object) -> str:
    if least is not None and most is not None:
        return f"{what}, between {least} and {most}"
    if least is not None or most is not None:
        return f"{what}, at {'least' if least is not None else 'most'} {least if least is not None else most}"
    return what


def _item_words(landed: LandedItem) -> str:
    item, offer = landed.item, landed.item.offer
    price = price_words(landed.unit_price, offer.currency, offer.price_basis)
    what = f"line {item.need}: {count(item.ordered, 'piece')} of {offer.shown_number}"
    what += f", {offer.description}" if offer.description else ""
    return f"{what}: {price}, {landed.landed} at the door"


def _alternatives(some: tuple[Alternative, ...]) -> list[str]:
    cells = [
        (
            one.name,
            str(one.total) if one.total else "not possible",
            str(one.more.rounded().amount) if one.more else "",
            str(one.latest or ("not known" if one.total else "")),
            one.why,
        )
        for one in some
    ]
    return table([ALTERNATIVES_HEADER, *cells], ALTERNATIVES_MOST, frozenset((1, 2))) if cells else []


def _front_title(plan: Plan) -> str:
    """Where waiting is counted, the figures of the front are without it: a plan may be chosen that seems dearer."""
    without = "; waiting is in none of its sums" if plan.waiting is not None else ""
    return f"The front: no plan is both cheaper and sooner than one of these{without}"


def _front(plan: Plan) -> list[str]:
    cells = [_front_cells(one) for one in plan.front]
    return table([FRONT_HEADER, *cells], FRONT_MOST, frozenset((1, 2))) if cells else []


def _front_cells(one: FrontPoint) -> tuple[str, ...]:
    days = str(one.latest or "not known")
    names = ", ".join(one.suppliers)
    return ("chosen" if one.chosen else "", str(one.total), str(one.counted), days, names, yes_no(one.proven))
