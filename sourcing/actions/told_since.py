"""The suppliers' words on goods on order that hold at a moment: loaded once, and counted by every door to them."""

from collections import defaultdict
from datetime import datetime

from sqlalchemy import Connection

from ..basics.later_word import LaterWord
from ..basics.order import Receipt
from ..basics.promise import Promise
from ..ordering.order_now import good_pieces, order_now
from ..ordering.promised import RECKONED
from ..ordering.told_since import newest_words, words_on_order
from ..storage.after_order import events, promises
from ..storage.orders import order as stored_order
from ..storage.orders import receipts


def told_since(connection: Connection, at: datetime) -> dict[str, tuple[LaterWord, ...]]:
    """By supplier, what he has last said of each number of his that was on order, as known at that moment.

    Days that are past by then are left out: they put nothing off.
    """
    said: defaultdict[str, list[Promise]] = defaultdict(list)
    for one in promises(connection):
        if one.kind == "parts here" and one.order and one.said_at <= at and one.words != RECKONED:
            said[one.order].append(one)
    open_ones = [some for some in said.values() if max(one.latest for one in some) >= at.date()]
    if not open_ones:
        return {}
    # An order whose days are past may hold the newer word on a number that another order is still waiting for.
    oldest = min(some[-1].said_at for some in open_ones)
    newer = {number: some for number, some in said.items() if some[-1].said_at >= oldest}
    found = [word for number, some in newer.items() for word in _of_order(connection, number, some, at)]
    by_supplier: defaultdict[str, list[LaterWord]] = defaultdict(list)
    for word in newest_words(found):
        if word.latest >= at.date():
            by_supplier[word.supplier].append(word)
    return {supplier: tuple(words) for supplier, words in by_supplier.items()}


def _of_order(connection: Connection, number: str, said: list[Promise], at: datetime) -> tuple[LaterWord, ...]:
    now = order_now(stored_order(connection, number), [one for one in events(connection, number) if one.at <= at])
    came: list[Receipt] = [one for one in receipts(connection, number) if one.at <= at]
    return words_on_order(now, said, good_pieces(came))
