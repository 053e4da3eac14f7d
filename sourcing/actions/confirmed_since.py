"""Prices and numbers that suppliers confirmed since their sheets, as known at a moment: told beside their offers."""

from collections import defaultdict
from datetime import datetime

from sqlalchemy import Connection

from ..basics.confirmed_word import ConfirmedWord
from ..ordering.confirmed_otherwise import confirmed_otherwise, newest_confirmed, says_price_or_number
from ..ordering.order_now import order_now
from ..storage.after_order import events, events_since
from ..storage.orders import order as stored_order
from ..storage.sheets import oldest_newest_sheet


def confirmed_since(connection: Connection, at: datetime) -> dict[str, tuple[ConfirmedWord, ...]]:
    """By supplier, his last word on each number of his. What is older than every newest sheet is left out."""
    oldest = oldest_newest_sheet(connection, at.date())
    if oldest is None:
        return {}
    said = (one.order for one in events_since(connection, oldest) if one.at <= at and says_price_or_number(one))
    found: list[ConfirmedWord] = []
    for number in dict.fromkeys(said):
        happened = [one for one in events(connection, number) if one.at <= at]
        found += confirmed_otherwise(order_now(stored_order(connection, number), happened))
    by_supplier: defaultdict[str, list[ConfirmedWord]] = defaultdict(list)
    for word in newest_confirmed(found):
        by_supplier[word.supplier].append(word)
    return {supplier: tuple(words) for supplier, words in by_supplier.items()}
