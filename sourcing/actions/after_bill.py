"""What a billed job leaves to do with suppliers: goods and old parts that must go back, and goods that could."""

from collections.abc import Iterable, Iterator

from sqlalchemy import Connection

from ..basics.claim import GoodsBackOpen
from ..basics.order import PurchaseOrder
from ..basics.terms import Terms
from ..ordering.goods_back import expected_credit, last_day, standing
from ..ordering.lots import Lot
from ..ordering.order_now import order_now
from ..storage.after_order import events, goods_back, standing_on
from ..storage.after_quote import bill_of
from ..storage.orders import order, receipts
from ..storage.shop import terms_on
from .desk import Desk
from .goods_back import going_back


def left_with_suppliers(desk: Desk, number: str) -> tuple[str, ...]:
    """A sentence for each thing of the job that waits to be sent or credited, and for goods that are here for a line
    that was not done. Nothing where the job is not billed."""
    with desk.store.reading() as connection:
        bill = bill_of(connection, number)
        if bill is None:
            return ()
        not_done = {one.label for one in bill.bill.not_done}
        could = tuple(_could(connection, desk, number, not_done))
    return (*(_must(one) for one in going_back(desk) if one.job == number and not one.may), *could)


def unused_pieces(desk: Desk, number: str, at: int) -> int:
    """Good pieces of an order's line that are here for work which was not done, by its job's bill; 0 before the bill.
    Refuses an unknown order."""
    with desk.store.reading() as connection:
        bought = order(connection, number)
        line = next((one for one in bought.lines if one.line == at), None)
        bill = bill_of(connection, line.job) if line is not None else None
        if line is None or bill is None or line.label not in {one.label for one in bill.bill.not_done}:
            return 0
        return sum(lot.pieces for lot in _not_used(connection, bought, at))


def _must(one: GoodsBackOpen) -> str:
    what = "old part: " if one.kind == "core" else ""
    due = f", by {one.due}" if one.due and one.waits == "to be sent" else ""
    credit = f"; {one.expected} expected" if one.expected is not None else ""
    return f"{what}{one.pieces} x {one.number} of {one.order} waits {one.waits}{due}{credit}"


def _could(connection: Connection, desk: Desk, number: str, labels: set[str]) -> Iterator[str]:
    for label, on, at in standing_on(connection, number):
        if label not in labels:
            continue
        bought = order(connection, on)
        terms = terms_on(connection, desk.at.date()).get(bought.supplier)
        for lot in _not_used(connection, bought, at):
            here = f"line {label} was not done: {lot.pieces} x {lot.number} of {on} is here and not used"
            yield f"{here}; {_way_back(lot, bought, terms)}: sourcing send-back {on} --line {at} --goods --sent"


def _not_used(connection: Connection, bought: PurchaseOrder, at: int) -> Iterable[Lot]:
    on = bought.number
    now, came = order_now(bought, events(connection, on)), receipts(connection, on)
    return standing(now, at, "goods", came, goods_back(connection, on)).may_go.waiting()


def _way_back(lot: Lot, bought: PurchaseOrder, terms: Terms | None) -> str:
    if terms is None or terms.return_terms.returnable is None:
        return f"ask {bought.supplier_name} whether it can go back"
    if terms.return_terms.returnable is False:
        return f"{bought.supplier_name} takes no goods back by his terms; ask all the same"
    due, (credit, _) = last_day(lot.since, "goods", terms), expected_credit(lot, terms)
    until = f" until {due}" if due else ""
    worth = f" for {credit} of the {lot.amount} charged" if credit is not None else ""
    return f"by his terms it can go back to {bought.supplier_name}{until}{worth}"
