"""Prices and numbers a supplier confirmed otherwise than ordered: newer than his sheet, whoever buys there."""

from collections.abc import Iterable, Iterator

from ..basics.confirmed_word import ConfirmedWord
from ..basics.order import OrderEvent
from ..basics.order_now import LineNow, OrderNow
from ..basics.part_number import number_key


def confirmed_otherwise(now: OrderNow) -> tuple[ConfirmedWord, ...]:
    """A word for each line whose price or number, as it stands, is not as it was ordered. The supplier's own words
    count, cancelled lines too: his price is no other for that."""
    return tuple(word for line in now.lines if (word := _word(now, line)) is not None)


def newest_confirmed(words: Iterable[ConfirmedWord]) -> tuple[ConfirmedWord, ...]:
    """Of each number of each supplier the word said last."""
    last: dict[tuple[str, str, str], ConfirmedWord] = {}
    for one in sorted(words, key=lambda one: one.said_at):
        last[one.supplier, number_key(one.supplier_number), number_key(one.maker_number)] = one
    return tuple(last.values())


def says_price_or_number(event: OrderEvent) -> bool:
    """Whether the supplier said a price or a number with it."""
    return event.what == "confirmed" and any(one.unit_price is not None or one.number for one in event.lines)


def _word(now: OrderNow, line: LineNow) -> ConfirmedWord | None:
    order, placed = now.order, line.line
    said = [event for event in now.events if says_price_or_number(event)]
    his = [event for event in said if any(one.line == placed.line for one in event.lines)]
    otherwise = " and ".join(_otherwise(line, order.currency))
    if not his or not otherwise:
        return None
    last = his[-1]
    who = last.said_by or order.supplier_name
    return ConfirmedWord(
        supplier=order.supplier,
        supplier_number=placed.supplier_number,
        maker_number=placed.maker_number,
        said_at=last.at,
        words=f"{who} confirmed {otherwise} on {last.at.date()} of order {order.number}",
    )


def _otherwise(line: LineNow, currency: str) -> Iterator[str]:
    placed = line.line
    if line.unit_price != placed.unit_price:
        per = "each" if placed.price_basis == 1 else f"per {placed.price_basis}"
        yield f"{line.unit_price} {currency} {per} instead of {placed.unit_price} {currency}"
    keys = {number_key(number) for number in (placed.supplier_number, placed.maker_number) if number}
    if line.number and number_key(line.number) not in keys:
        yield f"the number {line.number} instead of {placed.supplier_number}"
