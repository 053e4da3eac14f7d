"""Take goods in against an order: pieces, numbers, prices and freight charged; what differs, what to do about it."""

from collections.abc import Mapping
from datetime import date
from decimal import Decimal
from typing import Literal

from sqlalchemy import Connection

from ..basics.money import Money, is_amount, zero
from ..basics.order import Difference, PaperCharge, PurchaseOrder, Receipt
from ..basics.order_now import OrderNow
from ..basics.part_number import PartNumber, number_key
from ..basics.problem import refused
from ..basics.value import Value, changed
from ..ordering.claims import differences
from ..ordering.goods_back import line_without_ground
from ..ordering.order_now import good_pieces, open_pieces, order_now
from ..ordering.receiving import LineCame, freight_shares, in_currency, receipt_lines, same_paper
from ..storage.after_order import events, goods_back
from ..storage.orders import add_receipt, order, receipts, set_receipt_aside
from ..storage.shop import terms_on
from .desk import Desk, Pen, shop_now
from .number_on_part import number_on_part
from .receipt_to_do import money_to_do, numbers_to_do, over_to_do


class Delivery(Value, frozen=True, kw_only=True):
    """What came, by order line; amounts in the supplier's currency. `paper`: number of his delivery note or invoice.

    `quantities`: pieces that came; none at all means everything still open. `prices` only where they differ from what
    is agreed, `charged` only where the paper charges other pieces than came, `cores` only where the charge for old
    parts differs. `numbers`: what stands on the parts where it is not the number ordered, `under_number` on how many of
    them (not said: all). `keep_more`: what is more than ordered is kept. `freight`: 0 where none was charged.
    `supplier_total`: what the paper says it comes to. `dated`: the day on the paper; not said: today. `rate`: shop's
    currency for one of the supplier's, where the bank's was another than the shop's table has on that day.
    `only_counted`: the goods were counted by somebody who does not take down what the paper charges; prices and freight
    are still to be said.
    """

    paper: str
    freight: Decimal
    quantities: Mapping[int, int] = {}
    prices: Mapping[int, Decimal] = {}
    charged: Mapping[int, int] = {}
    damaged: Mapping[int, int] = {}
    numbers: Mapping[int, PartNumber] = {}
    under_number: Mapping[int, int] = {}
    cores: Mapping[int, Decimal] = {}
    other_charges: Mapping[str, Decimal] = {}
    supplier_total: Decimal | None = None
    freight_by: Literal["value", "weight"] = "value"
    dated: date | None = None
    rate: Decimal | None = None
    keep_more: bool = False
    words: str = ""
    only_counted: bool = False


class Received(Value, frozen=True, kw_only=True):
    """The receipt kept, what is still open by line, every difference of the order so far, and what to do now.

    `freight_shares`: the paper's freight over its lines.
    """

    order: PurchaseOrder
    receipt: Receipt
    open_lines: dict[int, int]
    differences: tuple[Difference, ...]
    to_do: tuple[str, ...] = ()
    freight_shares: Mapping[int, Money] = {}


def receive(desk: Desk, number: str, delivery: Delivery) -> Received:
    """Keep one delivery as it came, right or wrong. Refuses the same paper twice, unknown and cancelled lines, counts
    that can't hold together, a moment or a paper before the order, and a delivery of everything open where nothing is.
    """
    with desk.writing("receive") as pen:
        return _receive(pen, number, delivery)


def receive_anew(desk: Desk, number: str, delivery: Delivery, words: str) -> Received:
    """Take a paper in anew in place of what was taken down of it before, as one deed. Refuses what `receive_again` and
    `receive` refuse, and then nothing is changed."""
    with desk.writing("receive anew") as pen:
        _set_aside(pen, number, delivery.paper, words)
        return _receive(pen, number, delivery)


def receive_again(desk: Desk, number: str, paper: str, words: str) -> Receipt:
    """Set a receipt aside that was recorded wrongly; its paper can then be taken in as it is. Both stay to be read.

    Refuses a paper that was not taken in, one without which goods went back that had not come, and silence about why.
    """
    with desk.writing("set receipt aside") as pen:
        return _set_aside(pen, number, paper, words)


def later_charge(connection: Connection, desk: Desk, bought: PurchaseOrder) -> Decimal:
    """Freight of each delivery beyond the first by the supplier's terms on the day of the order, in his currency."""
    terms = terms_on(connection, bought.placed_at.date()).get(bought.supplier)
    return terms.split.later_charge if terms and terms.split.sends == "as ready" else Decimal(0)


def _receive(pen: Pen, number: str, delivery: Delivery) -> Received:
    now = order_now(order(pen.connection, number), events(pen.connection, number))
    before = receipts(pen.connection, number)
    _refuse_paper(delivery.paper, number, before)
    came = _lines(pen, now, _with_quantities(now, before, delivery))
    receipt = _receipt(pen, now, delivery, came)
    shares = freight_shares(now.order, receipt)
    add_receipt(pen.connection, receipt)
    _note(pen, now.order, receipt)
    after = [*before, receipt]
    return Received(
        order=now.order,
        receipt=receipt,
        open_lines=open_pieces(now, good_pieces(after)),
        differences=differences(now, after, later_charge(pen.connection, pen.desk, now.order)),
        to_do=(*numbers_to_do(now, receipt), *over_to_do(now, before, receipt), *money_to_do(now, after, receipt)),
        freight_shares=shares,
    )


def _set_aside(pen: Pen, number: str, paper: str, words: str) -> Receipt:
    if not words.strip():
        raise refused("words-missing", found="setting a receipt aside")
    desk, connection = pen.desk, pen.connection
    bought = order(connection, number)
    kept = receipts(connection, number)
    wrong = same_paper(kept, paper)
    if wrong is None:
        known = ", ".join(one.paper for one in kept) or "none"
        raise refused("no-such-paper", order=number, found=paper, known=known)
    now, left = order_now(bought, events(connection, number)), [one for one in kept if one is not wrong]
    back = line_without_ground(now, left, goods_back(connection, number))
    if back is not None:
        raise refused("gone-back-already", order=number, line=back, paper=wrong.paper)
    word = Receipt(
        order=number,
        paper=wrong.paper,
        at=desk.at,
        received_by=desk.who,
        lines=(),
        freight=zero(bought.currency),
        rate=wrong.rate,
        words=words.strip(),
        sets_aside=wrong.paper,
    )
    set_receipt_aside(connection, word)
    for job in _jobs(bought, wrong):
        pen.note(job, f"paper {wrong.paper} of {number} set aside: {words.strip()}")
    return wrong


def _refuse_paper(paper: str, number: str, before: list[Receipt]) -> None:
    if not number_key(paper):
        raise refused("paper-has-no-number", found=paper)
    first = same_paper(before, paper)
    if first is not None:
        on, who = first.at.date(), first.received_by
        raise refused("paper-counted-before", paper=paper, order=number, on=on, who=who, found=first.paper)


def _with_quantities(now: OrderNow, before: list[Receipt], delivery: Delivery) -> Delivery:
    """Everything open where no pieces are said. Refuses what is said of a line of which no pieces are."""
    pieces = delivery.quantities or open_pieces(now, good_pieces(before))
    if not pieces:
        raise refused("order-was-cancelled" if now.cancelled else "order-complete", order=now.order.number)
    told = {
        "a price": delivery.prices,
        "a count on the paper": delivery.charged,
        "damage": delivery.damaged,
        "a number": delivery.numbers,
        "pieces under another number": delivery.under_number,
        "a charge for old parts": delivery.cores,
    }
    for what, said in told.items():
        for at in said:
            if at not in pieces and now.line(at) is not None:
                code = "price-without-goods" if what == "a price" else "said-without-goods"
                raise refused(code, line=at, order=now.order.number, found=what)
    others = {at: 0 for said in told.values() for at in said if at not in pieces}  # refused later, as no such line
    return changed(delivery, quantities={**pieces, **others})


def _lines(pen: Pen, now: OrderNow, said: Delivery) -> dict[int, LineCame]:
    """Each line with what its number counts as."""
    came: dict[int, LineCame] = {}
    for at, pieces in said.quantities.items():
        line, typed = now.line(at), said.numbers.get(at, PartNumber(printed=""))
        one = LineCame(
            pieces=pieces,
            price=said.prices.get(at),
            on_paper=said.charged.get(at),
            damaged=said.damaged.get(at, 0),
            keeps_more=said.keep_more,
            core=said.cores.get(at),
        )
        if line is not None and pieces:
            number, found = number_on_part(pen.connection, pen.desk, now.order, line, typed)
            bear = said.under_number.get(at)
            one = changed(one, number=number, came=found.came, why=found.why, under_number=bear)
        came[at] = one
    return came


def _receipt(pen: Pen, now: OrderNow, said: Delivery, came: Mapping[int, LineCame]) -> Receipt:
    desk, currency = pen.desk, now.order.currency
    for amount in (said.freight, said.supplier_total):
        if amount is not None and (not is_amount(amount) or amount < 0):
            raise refused("not-an-amount", found=amount)
    _refuse_days(desk, now.order, said.dated)
    charges = [
        PaperCharge(name=name, amount=in_currency(amount, currency)) for name, amount in said.other_charges.items()
    ]
    return Receipt(
        order=now.order.number,
        paper=said.paper.strip(),
        at=desk.at,
        received_by=desk.who,
        lines=receipt_lines(now, came),
        freight=in_currency(said.freight, currency),
        rate=_rate(pen, currency, said),
        freight_by=said.freight_by,
        supplier_total=None if said.supplier_total is None else in_currency(said.supplier_total, currency),
        words=said.words.strip(),
        other_charges=tuple(charges),
        dated=said.dated,
        only_counted=said.only_counted,
    )


def _refuse_days(desk: Desk, bought: PurchaseOrder, dated: date | None) -> None:
    """Goods and their paper are never older than the order: a wrong year would take that year's rate."""
    number, placed = bought.number, bought.placed_at
    if desk.at < placed:
        raise refused(
            "came-before-order", order=number, found=f"{desk.at:%Y-%m-%d %H:%M}", placed=f"{placed:%Y-%m-%d %H:%M}"
        )
    if dated is not None and dated > desk.at.date():
        raise refused("dated-ahead", found=dated, today=desk.at.date())
    if dated is not None and dated < placed.date():
        raise refused("dated-before-order", found=dated, order=number, placed=placed.date())


def _rate(pen: Pen, currency: str, said: Delivery) -> Decimal:
    """As said, else by the shop's table on the day of the paper."""
    known = shop_now(pen.connection, pen.desk.at).rates
    if said.rate is None:
        return known.on(currency, said.dated or pen.desk.at.date()).rate
    if not is_amount(said.rate) or said.rate <= 0 or (currency == known.into and said.rate != 1):
        raise refused("rate-not-usable", found=said.rate, currency=currency, into=known.into)
    return said.rate


def _note(pen: Pen, bought: PurchaseOrder, receipt: Receipt) -> None:
    numbers = {line.line: line.supplier_number for line in bought.lines}
    for job in _jobs(bought, receipt):
        mine = {line.line for line in bought.lines if line.job == job}
        told = []
        for line in receipt.lines:
            if line.line in mine:
                wrong = f", {line.wrong} wrong" if line.wrong else ""
                hurt = f", {line.damaged} damaged" if line.damaged else ""
                other = f" as {line.number} ({line.came})" if line.number else ""
                told.append(f"{line.quantity} x {numbers[line.line]}{other}{hurt}{wrong}")
        pen.note(job, f"{'; '.join(told)} of {bought.number} came on paper {receipt.paper}")


def _jobs(bought: PurchaseOrder, receipt: Receipt) -> list[str]:
    """The jobs that something came for."""
    lines = {line.line for line in receipt.lines}
    return sorted({line.job for line in bought.lines if line.line in lines})
