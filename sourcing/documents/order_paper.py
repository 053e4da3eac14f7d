"""The purchase order as the supplier reads it: HTML to print or send, CSV to load; and the paper of a change.

Only what the supplier needs: no customer, no job, no landed cost, no markup; amounts in the supplier's currency.
Days are ISO 8601 (2026-01-16), since the reader may be in another country.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.money import Money
from ..basics.order import OrderEvent, PurchaseOrder, PurchaseOrderLine
from ..basics.order_now import LineNow, OrderNow
from ..basics.value import Value, changed
from .csv_text import Cell, csv_text
from .pages import render
from .paper_size import paper_size
from .pdf import PaperSize

CSV_HEADERS = (
    "order", "line", "supplier number", "maker number", "description", "pieces", "pack", "packs", "price",
    "price for pieces", "line total", "core charge", "currency", "need by", "ship to", "telephone", "note",
)  # fmt: skip


class ShownLine(Value, frozen=True, kw_only=True):
    """A line as printed. `packs` is None where goods come singly or the pieces are no whole packs; `was` are the pieces
    before a change, None where the line is as it was."""

    line: int
    supplier_number: str
    maker_number: str
    description: str
    pieces: int
    pack: int
    packs: int | None
    price: str
    goods: str
    core: str = ""
    was: int | None = None


class Heading(Value, frozen=True, kw_only=True):
    """What stands over the paper: its title, what to do with it in one sentence, what to do with the lines."""

    title: str
    ask: str
    lines: str
    goods: str = "Goods"
    prices: str = "Prices are those of your price sheet."


def order_html(order: PurchaseOrder) -> str:
    """The order as a paper, as it was placed."""
    heading = Heading(
        title="Purchase order", ask="Please put this number on your papers and on the parcel.", lines="What we order"
    )
    return _paper(order, heading, [_shown(line, order.currency) for line in order.lines], order.goods_total)


def change_html(now: OrderNow, event: OrderEvent, change: int) -> str:
    """The paper of a change or cancellation: what holds from now on. `now` is the order as it stood after the event;
    `change` counts changes of the order from 1."""
    order, before = now.order, _pieces_before(now, event)
    heading = Heading(
        title=change_title(now, event, change),
        ask="Please change the order as said here, and tell us in writing that you have.",
        lines="What holds from now on",
        goods="Goods from now on",
        prices="Prices as agreed.",
    )
    lines = [_shown_now(one, order.currency, before) for one in now.lines]
    return _paper(order, heading, lines, now.goods_total, event)


def change_title(now: OrderNow, event: OrderEvent, change: int) -> str:
    """'Change 1 of purchase order', or 'Cancellation of purchase order' where nothing is wanted any more."""
    if now.cancelled and event.what == "cancelled":
        return "Cancellation of purchase order"
    return f"Change {change} of purchase order"


def order_paper_size(order: PurchaseOrder) -> PaperSize:
    """Letter or A4, as the shop's settings said when it was placed; A4 for orders kept before that was written down."""
    return paper_size(order.paper_size, order.locale) if order.locale else order.paper_size or "A4"


def order_csv(order: PurchaseOrder) -> str:
    """The order's lines as CSV, the order's number, need-by day and ship-to on each. See `csv_text` for safety."""
    return csv_text(CSV_HEADERS, order_rows(order))


def order_rows(order: PurchaseOrder) -> tuple[tuple[Cell, ...], ...]:
    """The order's lines as rows under `CSV_HEADERS`."""
    ship_to = ", ".join((order.shop_name, *order.ship_to))
    return tuple(
        (
            order.number,
            line.line,
            line.supplier_number,
            line.maker_number,
            line.description,
            line.ordered,
            line.pack,
            _packs(line.ordered, line.pack),
            line.unit_price,
            line.price_basis,
            line.goods.rounded().amount,
            line.core_charge.amount if line.core_charge else None,
            order.currency,
            order.need_by,
            ship_to,
            order.shop_telephone,
            order.supplier_note,
        )
        for line in order.lines
    )


def price_words(price: Decimal, currency: str, basis: int) -> str:
    """A price with its basis: '11.90 USD each', '119.00 USD per 100'. At least the currency's decimals, none cut."""
    smallest = Money(amount=price, currency=currency).rounded()
    amount = smallest.amount if smallest.amount == price else price
    return f"{amount:f} {currency} {'each' if basis == 1 else f'per {basis}'}"


def _paper(
    order: PurchaseOrder,
    heading: Heading,
    lines: Sequence[ShownLine],
    goods_total: Money,
    event: OrderEvent | None = None,
) -> str:
    return render(
        "order.html",
        page_size=order_paper_size(order),
        title=heading.title,
        ask=heading.ask,
        what=heading.lines,
        goods_word=heading.goods,
        prices=heading.prices,
        number=order.number,
        supplier=(order.supplier_name, *order.supplier_address),
        shop=order.shop_name,
        ship_to=order.ship_to,
        reach=[words for words in (order.shop_telephone, order.shop_email) if words],
        placed_on=order.placed_at.date(),
        placed_by=order.placed_by,
        changed_on=event.at.date() if event else None,
        changed_by=event.who if event else "",
        change_words=event.words if event else "",
        need_by=order.need_by,
        note=order.supplier_note,
        currency=order.currency,
        discount=order.discount_percent,
        lines=list(lines),
        goods_total=str(goods_total),
        language="en",
    )


def _pieces_before(now: OrderNow, event: OrderEvent) -> dict[int, int]:
    """Pieces of each line before the event: as ordered, or as the last event before it left them."""
    pieces = {line.line: line.ordered for line in now.order.lines}
    for one in now.events:
        if one == event:
            break
        pieces |= {said.line: said.pieces for said in one.lines if said.pieces is not None}
    return pieces


def _shown(line: PurchaseOrderLine, currency: str) -> ShownLine:
    return ShownLine(
        line=line.line,
        supplier_number=line.supplier_number,
        maker_number=line.maker_number,
        description=line.description,
        pieces=line.ordered,
        pack=line.pack,
        packs=_packs(line.ordered, line.pack),
        price=price_words(line.unit_price, currency, line.price_basis),
        goods=str(line.goods),
        core=str(line.core_charge) if line.core_charge and line.core_charge.amount else "",
    )


def _shown_now(one: LineNow, currency: str, before: Mapping[int, int]) -> ShownLine:
    was = before.get(one.line.line)
    return changed(
        _shown(one.line, currency),
        pieces=one.pieces,
        packs=_packs(one.pieces, one.line.pack),
        price=price_words(one.unit_price, currency, one.line.price_basis),
        goods=str(one.goods),
        core="",
        was=was if was != one.pieces else None,
    )


def _packs(pieces: int, pack: int) -> int | None:
    whole, rest = divmod(pieces, pack)
    return whole if pack > 1 and not rest else None
