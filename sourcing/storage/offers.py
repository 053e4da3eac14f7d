"""Offers of the sheets that count: found by number key, listed whole, and all keys for finding look-alikes."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from typing import Any, Literal

from sqlalchemy import ColumnElement, Connection, Row, Select, select, union

from ..basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from ..basics.part_number import maker_key
from .sheet_tables import OFFERS, PRICE_BREAKS, SHEETS
from .sheets import newest_sheets

CHUNK = 400
"""Keys asked for at once, each twice: SQLite before 3.32 takes 999 values in a statement."""

PLAIN_FIELDS = (
    "supplier",
    "supplier_number",
    "currency",
    "maker",
    "maker_number",
    "description",
    "list_price",
    "price_basis",
    "pack",
    "order_multiple",
    "minimum",
    "stock",
    "core_charge",
    "superseded_by",
    "no_longer_available",
    "note",
)


def offers_by_keys(
    connection: Connection, keys: Collection[str], on_sheets: Literal["newest"] = "newest"
) -> list[Offer]:
    """Offers whose supplier's or maker's number has one of the keys, on each supplier's newest sheet.

    In the order imported, each once. A blank key finds nothing.
    """
    found: dict[int, Offer] = {}
    for some in _chunks(sorted(set(keys) - {""})):
        found.update(_offers(connection, OFFERS.c.offer.in_(_numbers_with(some))))
    return [found[number] for number in sorted(found)]


def offers_of_sheet(connection: Connection, sheet: int) -> list[Offer]:
    """Every offer of one sheet in the order of its rows; nothing for an unknown sheet."""
    return list(_offers(connection, OFFERS.c.sheet == sheet).values())


def newest_number_keys(connection: Connection) -> list[tuple[str, str, str]]:
    """Every number of the newest sheets as (number key, maker key, supplier), each once.

    A number belongs to whom `Offer.numbers` says: beside a maker's number the supplier's own is the supplier's.
    """
    table = OFFERS
    query = select(table.c.supplier, table.c.supplier_key, table.c.maker_key, table.c.maker_number_key)
    rows = connection.execute(query.where(table.c.sheet.in_(newest_sheets())).order_by(table.c.offer)).all()
    suppliers = {supplier: maker_key(supplier) for supplier in {row[0] for row in rows}}
    # Made distinct here and not by the database, which takes three times as long over 200,000 rows.
    own = ((key, suppliers[supplier] if other else maker, supplier) for supplier, key, maker, other in rows)
    makers = ((other, maker, supplier) for supplier, _, maker, other in rows)
    return [one for one in dict.fromkeys((*own, *makers)) if one[0]]


def _chunks(keys: Sequence[str]) -> Iterator[Sequence[str]]:
    return (keys[at : at + CHUNK] for at in range(0, len(keys), CHUNK))


def _numbers_with(keys: Sequence[str]) -> Select[tuple[int]]:
    """Offer numbers by either key: two searches, each along its own index."""
    table = OFFERS
    newest = table.c.sheet.in_(newest_sheets())
    either = union(
        *(select(table.c.offer).where(table.c[name].in_(keys), newest) for name in ("supplier_key", "maker_number_key"))
    ).subquery()
    return select(either.c.offer)


def _offers(connection: Connection, which: ColumnElement[bool]) -> dict[int, Offer]:
    """Offers by their number in the database, which is the order they were imported in."""
    table = OFFERS
    with_sheet = select(table, SHEETS.c.file, SHEETS.c.sheet_date).join(SHEETS, SHEETS.c.sheet == table.c.sheet)
    later = _later_breaks(connection, which)
    rows = connection.execute(with_sheet.where(which).order_by(table.c.offer))
    return {row.offer: _offer(row, later[row.offer]) for row in rows}


def _later_breaks(connection: Connection, which: ColumnElement[bool]) -> defaultdict[int, list[PriceBreak]]:
    table = PRICE_BREAKS
    query = select(table).join(OFFERS, OFFERS.c.offer == table.c.offer).where(which)
    found: defaultdict[int, list[PriceBreak]] = defaultdict(list)
    for row in connection.execute(query.order_by(table.c.offer, table.c.from_quantity)):
        found[row.offer].append(PriceBreak(from_quantity=row.from_quantity, price=row.price))
    return found


def _offer(row: Row[Any], later: Sequence[PriceBreak]) -> Offer:
    source = SheetRow(sheet=row.sheet, file=row.file, worksheet=row.worksheet, row=row.row, sheet_date=row.sheet_date)
    lead = None
    if row.lead_text is not None:
        lead = LeadTime(text=row.lead_text, least=row.lead_least, most=row.lead_most)
    first = [PriceBreak(from_quantity=row.net_from_quantity, price=row.net_price)] if row.net_price is not None else []
    named = row._mapping
    plain = {name: named[name] for name in PLAIN_FIELDS}
    return Offer(source=source, lead_time=lead, breaks=(*first, *later), **plain)
