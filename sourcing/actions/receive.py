"""Take goods in against an order: pieces, prices charged, freight charged; differences listed."""

from collections.abc import Mapping
from decimal import Decimal

from ..basics.currency import minor_units
from ..basics.money import Money, round_half_up
from ..basics.order import Difference, PurchaseOrder, Receipt
from ..basics.problem import refused
from ..basics.value import Value
from ..ordering.receiving import differences, receipt_lines, still_open
from ..storage.orders import add_receipt, order, receipts
from .desk import Desk, shop_now


class Delivery(Value, frozen=True, kw_only=True):
    """What came. `paper`: number of the supplier's delivery note or invoice. `quantities` and `prices` by order line;
    no quantities at all means everything still open. Prices only where they differ from the order. `freight` as
    charged, in the supplier's currency: 0 where none was.
    """

    paper: str
    freight: Decimal
    quantities: Mapping[int, int] = {}
    prices: Mapping[int, Decimal] = {}


class Received(Value, frozen=True, kw_only=True):
    """The receipt kept, what is still open by line, and every difference of the order so far."""

    order: PurchaseOrder
    receipt: Receipt
    open_lines: dict[int, int]
    differences: tuple[Difference, ...]


def receive(desk: Desk, number: str, delivery: Delivery) -> Received:
    """Keep one delivery. Refuses the same paper twice, unknown lines, and goods for an order that is complete."""
    with desk.writing("receive") as pen:
        bought = order(pen.connection, number)
        before = receipts(pen.connection, number)
        quantities = delivery.quantities or still_open(bought, before)
        if not quantities:
            raise refused("order-complete", order=number)
        if delivery.freight < 0:
            raise refused("not-an-amount", found=delivery.freight)
        rate = shop_now(pen.connection, desk.at).rates.on(bought.currency, desk.at.date())
        amount = round_half_up(delivery.freight, minor_units(bought.currency))
        receipt = Receipt(
            order=number,
            paper=delivery.paper,
            at=desk.at,
            received_by=desk.who,
            lines=receipt_lines(bought, quantities, delivery.prices),
            freight=Money(amount=amount, currency=bought.currency),
            rate=rate.rate,
        )
        add_receipt(pen.connection, receipt)
        after = [*before, receipt]
        pieces = sum(line.quantity for line in receipt.lines)
        for job in sorted({line.job for line in bought.lines}):
            pen.note(job, f"{pieces} pieces of {number} came on paper {delivery.paper}")
        return Received(
            order=bought,
            receipt=receipt,
            open_lines=still_open(bought, after),
            differences=differences(bought, after),
        )
