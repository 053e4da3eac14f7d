"""A comparison of one part's offers, and a plan of orders, as text for a terminal 100 columns wide and as XLSX.

Nothing is cut and nothing is coloured: what speaks against an offer stands there in words. Landed costs are in the
shop's currency, prices in the supplier's.
"""

from collections.abc import Sequence

from ..basics.choice import Candidate, Comparison, RankedOffer, SetAside
from ..basics.landed_cost import CostLine, LandedItem
from ..basics.offer import Offer
from ..basics.plan import Plan, PlannedOrder
from .comparison_tables import comparison_tables, plan_tables
from .order_paper import price_words
from .plain_text import count, document, row, table, underline, widths_for, wrapped, yes_no
from .workbook import workbook_bytes

RANKED_HEADER = ("#", "supplier", "number", "each", "landed", "here by", "standing", "front", "in time")
RANKED_MOST = (2, 23, 16, 11, 9, 10, 9, 5, 7)
RANKED_RIGHT = frozenset((0, 4))
ALTERNATIVES_HEADER = ("way", "at the door", "here by", "why")
ALTERNATIVES_MOST = (28, 14, 10, 45)


def comparison_text(comparison: Comparison) -> str:
    """What is asked and doubtful, the ranked offers with reasons and cost parts, what is rejected or set aside and why,
    what a person must judge, and notes.
    """
    lines = _comparison_head(comparison)
    lines += _ranked(comparison.ranked)
    rejected = [one for one in comparison.set_aside if one.rejected]
    lines += _titled("Rejected: not what is asked", _set_aside(rejected))
    lines += _titled("Not ranked", _set_aside([one for one in comparison.set_aside if not one.rejected]))
    lines += _titled("For a person to judge; none of these is ordered by itself", _candidates(comparison.candidates))
    lines += _titled("Notes", [line for note in comparison.notes for line in wrapped(note, 2)])
    return document(lines)


def comparison_xlsx(comparison: Comparison) -> bytes:
    """The same as a workbook: worksheets Ranked, Cost lines, Not ranked, To judge."""
    return workbook_bytes(comparison_tables(comparison))


def plan_text(plan: Plan) -> str:
    """The orders with items, cost lines and days, the total, what other ways of buying cost, what nobody can fill."""
    lines = [
        *_plan_head(plan),
        *_titled("Before ordering", [line for words in plan.warnings for line in wrapped(words, 2)]),
    ]
    for at, order in enumerate(plan.orders, 1):
        lines += ["", *_planned_order(at, order)]
    others = [
        (one.name, str(one.total) if one.total else "not possible", str(one.latest or "not known"), one.why)
        for one in plan.alternatives
    ]
    if others:
        lines += [
            "",
            "Other ways to buy the same",
            *table([ALTERNATIVES_HEADER, *others], ALTERNATIVES_MOST, frozenset((1,))),
        ]
    lines += _titled("Not filled", [line for words in plan.unfilled for line in wrapped(words, 2)])
    lines += _titled("Notes", [line for note in plan.notes for line in wrapped(note, 2)])
    return document(lines)


def plan_xlsx(plan: Plan) -> bytes:
    """The same as a workbook: worksheets Items, Cost lines, Other ways, Notes."""
    return workbook_bytes(plan_tables(plan))


def _titled(title: str, lines: Sequence[str]) -> list[str]:
    return ["", title, *lines] if lines else []


def _set_aside(some: Sequence[SetAside]) -> list[str]:
    return [
        line for one in some for line in _apart(one.offer, one.supplier_name, one.reason.removeprefix("rejected: "))
    ]


def _comparison_head(comparison: Comparison) -> list[str]:
    by = f", needed by {comparison.need_by}" if comparison.need_by else ""
    asked = f"{count(comparison.quantity, 'piece')} of {comparison.our_part}, asked for as {comparison.asked}{by}"
    lines = [*wrapped(comparison.name), *wrapped(asked)]
    if comparison.asks:
        lines += wrapped(f"Asked of an offer: {', '.join(comparison.asks)}")
    return lines + [line for words in comparison.warnings for line in wrapped(f"WARNING: {words}")]


def _ranked(ranked: Sequence[RankedOffer]) -> list[str]:
    if not ranked:
        return ["", "No offer can be ranked."]
    cells = [_ranked_cells(one) for one in ranked]
    widths = widths_for([RANKED_HEADER, *cells], RANKED_MOST)
    currency = ranked[0].priced.landed.total.currency
    lines = [
        "",
        f"Ranked by cost at the door in {currency}, each ordered alone. Front: none is both cheaper and sooner.",
    ]
    lines += [*row(RANKED_HEADER, widths, RANKED_RIGHT), underline(widths)]
    for one, cell in zip(ranked, cells, strict=True):
        lines += [*row(cell, widths, RANKED_RIGHT), *_ranked_details(one), ""]
    return lines[:-1]


def _ranked_cells(one: RankedOffer) -> tuple[str, ...]:
    priced, offer, item = one.priced, one.priced.offer, one.priced.landed.items[0]
    return (
        str(one.place),
        priced.supplier_name,
        offer.supplier_number,
        price_words(item.unit_price, offer.currency, offer.price_basis).removesuffix(" each"),
        str(priced.landed.total.rounded().amount),
        str(priced.arrival.latest or "not known"),
        priced.standing,
        "front" if one.on_front else "",
        yes_no(one.in_time),
    )


def _ranked_details(one: RankedOffer) -> list[str]:
    priced = one.priced
    landed = priced.landed
    parts = ", ".join(f"{cost_name(line)} {line.amount.rounded().amount}" for line in landed.lines)
    lines = [*wrapped(one.reason, 4), *wrapped(parts, 6)]
    lines += [line for words in _beside(landed.items[0]) for line in wrapped(words, 6)]
    lines += wrapped(match_words(one), 6)
    lines += wrapped(f"arrives {priced.arrival.words()}; {source_words(priced.offer)}", 6)
    return lines + [line for warning in priced.warnings for line in wrapped(f"Warning: {warning}", 6)]


def _beside(item: LandedItem) -> list[str]:
    """What stands beside the cost: pieces for the shelf, and the core charge, which is cash and not cost."""
    words = []
    if item.item.surplus:
        words.append(f"{count(item.item.surplus, 'piece')} more than needed, for the shelf at {item.surplus_cost}")
    if item.core_charge.amount:
        words.append(f"core charge {item.core_charge} beside it, back when the old part is returned")
    return words


def cost_name(line: CostLine) -> str:
    """The name of a cost line inside a sentence about one offer: 'goods', 'freight', 'small-order fee'."""
    return "goods" if line.name.startswith("Goods ") else line.name[:1].lower() + line.name[1:]


def match_words(one: RankedOffer) -> str:
    """How the offer's number is our part: link by link."""
    links = one.priced.path.links
    how = "; ".join(str(link) for link in links) if links else "our part's own number"
    described = f"'{one.priced.offer.description}', " if one.priced.offer.description else ""
    return f"{described}matched as {one.priced.matched_number}: {how}"


def source_words(offer: Offer) -> str:
    """Where the offer stands: file, worksheet, row, date of the sheet."""
    source = offer.source
    worksheet = f", worksheet {source.worksheet}" if source.worksheet else ""
    return f"{source.file}{worksheet}, row {source.row}, sheet of {source.sheet_date}"


def _apart(offer: Offer, supplier: str, reason: str) -> list[str]:
    what = f"{supplier}: {offer.shown_number}"
    what += f", {offer.description}" if offer.description else ""
    return [*wrapped(what, 2), *wrapped(reason, 6), *wrapped(source_words(offer), 6)]


def _candidates(candidates: Sequence[Candidate]) -> list[str]:
    lines = []
    for one in candidates:
        held = "HELD BACK: " if one.vetoed else ""
        lines += _apart(one.offer, one.supplier_name, f"{held}{'; '.join(one.reasons)}")
    return lines


def _plan_head(plan: Plan) -> list[str]:
    sure = "proven to be the least" if plan.proven else "the best found, not proven to be the least"
    by = f", all of it here by {plan.latest}" if plan.latest else ", the last day is not known"
    if not plan.orders:
        return ["No orders: none of the needs can be filled."]
    head = f"{count(len(plan.orders), 'order')}: {plan.total} at the door, {sure}{by}"
    lines = wrapped(head)
    if plan.core_charge.amount:
        lines += wrapped(f"Core charges beside it: {plan.core_charge}, back when the old parts are returned")
    return lines


def _planned_order(at: int, order: PlannedOrder) -> list[str]:
    landed = order.landed
    lines = wrapped(f"Order {at}: {landed.supplier_name}, {landed.total} at the door, arrives {order.arrival.words()}")
    for item in landed.items:
        lines += wrapped(_item_words(item), 2)
        lines += [line for words in _beside(item) for line in wrapped(words, 6)]
    cells = [(line.name, str(line.amount.rounded().amount), line.rule) for line in landed.lines]
    widths = widths_for(cells, (30, 12, 50)) if cells else []
    lines += [f"    {text}" for cell in cells for text in row(cell, widths, frozenset((1,)))]
    lines += [line for question in landed.open_questions for line in wrapped(f"Not known: {question}", 4)]
    return lines + (wrapped(f"The supplier would refuse: {landed.refusal}", 4) if landed.refusal else [])


def _item_words(landed: LandedItem) -> str:
    item, offer = landed.item, landed.item.offer
    price = price_words(landed.unit_price, offer.currency, offer.price_basis)
    what = f"line {item.need}: {count(item.ordered, 'piece')} of {offer.shown_number}"
    what += f", {offer.description}" if offer.description else ""
    return f"{what}: {price}, {landed.landed} at the door"
