"""The worksheets of a plan of orders. Amounts are Decimals beside a column that names their currency."""

from ..basics.landed_cost import LandedItem
from ..basics.plan import Alternative, FrontPoint, Plan, PlannedOrder
from .csv_text import Cell
from .landed_words import cost_cells
from .plain_text import yes_no
from .plan_words import head_words
from .workbook import Table
from .workbook_chart import Scatter

ITEMS = (
    "Order", "Supplier", "For line", "Supplier's number", "Maker's number", "Description", "Pieces needed",
    "Pieces ordered", "Price", "Price for pieces", "Price currency", "Goods", "Landed cost", "For the shelf, at cost",
    "Core charge", "Currency", "Earliest", "Latest", "Can go back", "Lost if it goes back", "Days to go back",
    "Words on going back",
)  # fmt: skip

ORDERS = (
    "Order", "Supplier", "At the door", "Goods", "Goods currency", "Freight", "Core charge", "Currency", "Earliest",
    "Latest", "Not known", "Refused",
)  # fmt: skip
DELIVERIES = ("Order", "Supplier", "Pieces", "Leaves first", "Leaves last", "Here first", "Here last")
OTHER_WAYS = ("Way", "Landed cost", "More", "Currency", "Latest", "Why")
FRONT_CHART = Scatter(
    title="Cost at the door against the last day; the line is what the plan counts",
    x="Latest",
    x_days=True,
    y="Landed cost",
    line="Counted",
    up="at the door",
)
FRONT = ("This plan", "Landed cost", "Counted", "Currency", "Latest", "Suppliers", "Proven")


def plan_tables(plan: Plan) -> tuple[Table, ...]:
    """Worksheets Items, Orders, Cost lines, Deliveries, Other ways, Front, Notes, each also where it is empty."""
    orders = list(enumerate(plan.orders, 1))
    items = [
        _item(at, order.landed.supplier_name, item, (order.arrival.earliest, order.arrival.latest))
        for at, order in orders
        for item in order.landed.items
    ]
    costs = [(at, order.landed.supplier_name, *cost_cells(line)) for at, order in orders for line in order.landed.lines]
    coming = [
        (at, order.landed.supplier_name, one.pieces, *one.leaves, *one.arrives)
        for at, order in orders
        for one in order.arrival.deliveries
    ]
    return (
        Table(title="Items", headers=ITEMS, rows=tuple(items)),
        Table(title="Orders", headers=ORDERS, rows=tuple(_order(at, order) for at, order in orders)),
        Table(
            title="Cost lines", headers=("Order", "Supplier", "Cost", "Amount", "Currency", "Rule"), rows=tuple(costs)
        ),
        Table(title="Deliveries", headers=DELIVERIES, rows=tuple(coming)),
        Table(title="Other ways", headers=OTHER_WAYS, rows=tuple(_way(one) for one in plan.alternatives)),
        Table(
            title="Front",
            headers=FRONT,
            rows=tuple(_front_point(one) for one in plan.front),
            scatter=FRONT_CHART if plan.front else None,
        ),
        Table(title="Notes", headers=("What", "Words"), rows=tuple(_notes(plan))),
    )


def _order(at: int, order: PlannedOrder) -> tuple[Cell, ...]:
    landed, arrival = order.landed, order.arrival
    return (
        at,
        landed.supplier_name,
        landed.total.amount,
        landed.order_value.amount,
        landed.order_value.currency,
        landed.freight.amount,
        landed.core_charge.amount,
        landed.total.currency,
        arrival.earliest,
        arrival.latest,
        "; ".join(landed.open_questions),
        landed.refusal,
    )


def _way(one: Alternative) -> tuple[Cell, ...]:
    total, more = one.total, one.more
    currency = total.currency if total else ""
    return one.name, total.amount if total else None, more.amount if more else None, currency, one.latest, one.why


def _front_point(one: FrontPoint) -> tuple[Cell, ...]:
    cost = (one.total.amount, one.counted.amount, one.total.currency)
    return yes_no(one.chosen), *cost, one.latest, ", ".join(one.suppliers), yes_no(one.proven)


def _notes(plan: Plan) -> list[tuple[Cell, ...]]:
    told: list[tuple[Cell, ...]] = [("Plan", words) for words in head_words(plan)]
    told += [("Before ordering", words) for words in plan.warnings]
    told += [("Not filled", words) for words in plan.unfilled]
    return told + [("Note", words) for words in plan.notes]


def _item(at: int, supplier: str, landed: LandedItem, days: tuple[Cell, Cell]) -> tuple[Cell, ...]:
    item, offer, beside = landed.item, landed.item.offer, landed.beside
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
        yes_no(beside.returnable, "not known"),
        beside.return_loss.amount if beside.return_loss else None,
        beside.return_within_days,
        "; ".join(beside.words),
    )
