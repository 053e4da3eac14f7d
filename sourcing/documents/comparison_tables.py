"""The worksheets of a comparison and of a plan. Amounts are Decimals beside a column that names their currency."""

from ..basics.choice import Comparison, RankedOffer
from ..basics.landed_cost import CostLine, LandedItem
from ..basics.offer import Offer
from ..basics.plan import Plan
from .csv_text import Cell
from .plain_text import yes_no
from .workbook import Table

RANKED = (
    "Place", "Supplier", "Supplier's number", "Maker", "Maker's number", "Description", "Pieces needed",
    "Pieces ordered", "Price", "Price for pieces", "Price currency", "Landed cost", "For the shelf, at cost",
    "Core charge", "Currency", "Earliest", "Latest", "In time", "On the front", "Standing", "Matched number",
    "Matched by", "Reason", "Warnings", "File", "Worksheet", "Row", "Sheet of",
)  # fmt: skip
OFFER = ("Supplier", "Supplier's number", "Maker", "Maker's number", "Description")
SOURCE = ("File", "Worksheet", "Row", "Sheet of")
ITEMS = (
    "Order", "Supplier", "For line", "Supplier's number", "Maker's number", "Description", "Pieces needed",
    "Pieces ordered", "Price", "Price for pieces", "Price currency", "Goods", "Landed cost", "For the shelf, at cost",
    "Core charge", "Currency", "Earliest", "Latest",
)  # fmt: skip


def comparison_tables(comparison: Comparison) -> tuple[Table, ...]:
    """Worksheets Ranked, Cost lines, Not ranked, To judge, in this order; each is there even where it is empty."""
    ranked, apart, judged = comparison.ranked, comparison.set_aside, comparison.candidates
    costs = [(one.place, one.priced.supplier_name, *_cost(line)) for one in ranked for line in one.priced.landed.lines]
    away = [
        (*_offer(one.offer, one.supplier_name), yes_no(one.rejected), one.reason, *_source(one.offer)) for one in apart
    ]
    judge = [
        (*_offer(one.offer, one.supplier_name), yes_no(one.vetoed), "; ".join(one.reasons), *_source(one.offer))
        for one in judged
    ]
    return (
        Table(title="Ranked", headers=RANKED, rows=tuple(_ranked(one) for one in ranked)),
        Table(
            title="Cost lines",
            headers=("Place", "Supplier", "Cost", "Amount", "Currency", "Rule"),
            rows=tuple(costs),
        ),
        Table(title="Not ranked", headers=(*OFFER, "Rejected", "Reason", *SOURCE), rows=tuple(away)),
        Table(title="To judge", headers=(*OFFER, "Held back", "Reasons", *SOURCE), rows=tuple(judge)),
    )


def plan_tables(plan: Plan) -> tuple[Table, ...]:
    """Worksheets Items, Cost lines, Other ways, Notes."""
    orders = list(enumerate(plan.orders, 1))
    costs = [(at, order.landed.supplier_name, *_cost(line)) for at, order in orders for line in order.landed.lines]
    others = [
        (
            one.name,
            one.total.amount if one.total else None,
            one.total.currency if one.total else "",
            one.latest,
            one.why,
        )
        for one in plan.alternatives
    ]
    notes = [("Not filled", words) for words in plan.unfilled] + [("Note", words) for words in plan.notes]
    notes += [("Before ordering", words) for words in plan.warnings]
    notes += [("Proven least cost", yes_no(plan.proven))]
    return (
        Table(
            title="Items",
            headers=ITEMS,
            rows=tuple(
                _item(at, order.landed.supplier_name, item, (order.arrival.earliest, order.arrival.latest))
                for at, order in orders
                for item in order.landed.items
            ),
        ),
        Table(
            title="Cost lines", headers=("Order", "Supplier", "Cost", "Amount", "Currency", "Rule"), rows=tuple(costs)
        ),
        Table(title="Other ways", headers=("Way", "Landed cost", "Currency", "Latest", "Why"), rows=tuple(others)),
        Table(title="Notes", headers=("What", "Words"), rows=tuple(notes)),
    )


def _ranked(one: RankedOffer) -> tuple[Cell, ...]:
    priced, offer, item = one.priced, one.priced.offer, one.priced.landed.items[0]
    links = "; ".join(str(link) for link in priced.path.links) or "our part's own number"
    return (
        one.place,
        *_offer(offer, priced.supplier_name),
        item.item.needed,
        item.item.ordered,
        item.unit_price,
        offer.price_basis,
        offer.currency,
        priced.landed.total.amount,
        item.surplus_cost.amount,
        item.core_charge.amount,
        priced.landed.total.currency,
        priced.arrival.earliest,
        priced.arrival.latest,
        yes_no(one.in_time, "not asked" if priced.arrival.known else "not known"),
        yes_no(one.on_front),
        priced.standing,
        priced.matched_number,
        links,
        one.reason,
        "; ".join(priced.warnings),
        *_source(offer),
    )


def _item(at: int, supplier: str, landed: LandedItem, days: tuple[Cell, Cell]) -> tuple[Cell, ...]:
    item, offer = landed.item, landed.item.offer
    return (
        at,
        supplier,
        item.need,
        offer.supplier_number,
        offer.maker_number,
        offer.description,
        item.needed,
        item.ordered,
        landed.unit_price,
        offer.price_basis,
        offer.currency,
        landed.goods.amount,
        landed.landed.amount,
        landed.surplus_cost.amount,
        landed.core_charge.amount,
        landed.landed.currency,
        *days,
    )


def _offer(offer: Offer, supplier: str) -> tuple[str, ...]:
    return supplier, offer.supplier_number, offer.maker, offer.maker_number, offer.description


def _source(offer: Offer) -> tuple[Cell, ...]:
    source = offer.source
    return source.file, source.worksheet, source.row, source.sheet_date


def _cost(line: CostLine) -> tuple[Cell, ...]:
    return line.name, line.amount.amount, line.amount.currency, line.rule
