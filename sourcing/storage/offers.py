"""Offers of the sheets that count: found by number key, listed whole, and all keys for finding look-alikes."""

from collections import defaultdict
from collections.abc import Collection, Iterator, Sequence
from datetime import date
from decimal import Decimal
from functools import lru_cache
from sys import intern
from typing import Any

from sqlalchemy import BigInteger, ColumnElement, Connection, Select, case, false, func, select, type_coerce, union

from ..basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from ..basics.part_number import maker_key
from .exact import PRICE_PLACES, unscaled
from .offer_details import STORED, details_from
from .sheet_tables import OFFERS, PRICE_BREAKS, SHEETS
from .sheets import newest_sheets

CHUNK = 400
"""Keys asked for at once, each twice: SQLite before 3.32 takes 999 values in a statement."""

FETCHED = 10_000
"""Rows taken from the driver at once: one at a time takes a third longer over a whole sheet."""

LINE = "\n"
"""Stands between keys; no key holds one."""

PLACED = (
    *("offer", "sheet", "worksheet", "row", "net_from_quantity"),
    *("lead_text", "lead_least", "lead_most", "lead_leaves_on"),
)
PRICES = ("net_price", "list_price", "core_charge")
PLAIN_FIELDS = (
    *("supplier", "supplier_number", "currency", "maker", "maker_number", "description", "price_basis", "pack"),
    *("order_multiple", "minimum", "stock", "superseded_by", "no_longer_available", "note"),
)
REPEATED = ("supplier", "currency", "maker")
"""Kept once in memory and not once an offer, as file and worksheet are."""
DETAILS = tuple(STORED)
NO_DETAILS = (None,) * len(DETAILS)
PLAIN = len(PLACED) + len(PRICES)
COLUMNS = (
    *(OFFERS.c[name] for name in PLACED),
    *(type_coerce(OFFERS.c[name], BigInteger) for name in PRICES),
    *(OFFERS.c[name] for name in (*PLAIN_FIELDS, *DETAILS)),
)


def offers_by_keys(connection: Connection, keys: Collection[str], day: date) -> list[Offer]:
    """Offers whose supplier's or maker's number has one of the keys, on each supplier's newest sheet on that day.

    In the order imported, each once. A blank key finds nothing.
    """
    found: dict[int, Offer] = {}
    for some in _chunks(sorted(set(keys) - {""})):
        found.update(_offers(connection, OFFERS.c.offer.in_(_numbers_with(some, day))))
    return [found[number] for number in sorted(found)]


def offers_of_sheet(connection: Connection, sheet: int) -> list[Offer]:
    """Every offer of one sheet in the order of its rows; nothing for an unknown sheet."""
    return list(_offers(connection, OFFERS.c.sheet == sheet).values())


def offers_numbered(connection: Connection, numbers: Collection[int]) -> dict[int, Offer]:
    """Offers by their numbers in the database, whatever sheet they stand on; unknown numbers are left out."""
    found: dict[int, Offer] = {}
    wanted = sorted(set(numbers))
    for at in range(0, len(wanted), CHUNK):
        found.update(_offers(connection, OFFERS.c.offer.in_(wanted[at : at + CHUNK])))
    return found


def newest_number_keys(connection: Connection, day: date, only_sold: bool = False) -> list[tuple[str, str, str]]:
    """Every number of that day's newest sheets as (number key, maker key, supplier), each once.

    A number belongs to whom `Offer.numbers` says: beside a maker's number the supplier's own is the supplier's.
    `only_sold`: without the rows that a sheet calls no longer available.
    """
    table = OFFERS
    query = select(table.c.supplier, table.c.supplier_key, table.c.maker_key, table.c.maker_number_key)
    query = query.where(table.c.sheet.in_(newest_sheets(day)))
    if only_sold:
        query = query.where(table.c.no_longer_available == false())
    rows = connection.execute(query.order_by(table.c.offer)).all()
    suppliers = {supplier: maker_key(supplier) for supplier in {row[0] for row in rows}}
    # Made distinct here and not by the database, which takes three times as long over 200,000 rows.
    own = ((key, suppliers[supplier] if other else maker, supplier) for supplier, key, maker, other in rows)
    makers = ((other, maker, supplier) for supplier, _, maker, other in rows)
    return [one for one in dict.fromkeys((*own, *makers)) if one[0]]


def newest_keys_of_length(connection: Connection, lengths: Collection[int], day: date) -> list[str]:
    """The number keys of that day's newest sheets that have so many characters, suppliers' and makers' alike.

    Repeated ones too. They come as one text: a third of a million rows one by one through the driver take a second.
    """
    wanted = sorted(lengths)
    both = (OFFERS.c[name] for name in ("supplier_key", "maker_number_key"))
    texts = (func.aggregate_strings(case((func.length(key).in_(wanted), key)), LINE) for key in both)
    (found,) = connection.execute(select(*texts).where(OFFERS.c.sheet.in_(newest_sheets(day))))
    return [key for text in found if text for key in text.split(LINE)]


def _chunks(keys: Sequence[str]) -> Iterator[Sequence[str]]:
    return (keys[at : at + CHUNK] for at in range(0, len(keys), CHUNK))


def _numbers_with(keys: Sequence[str], day: date) -> Select[tuple[int]]:
    """Offer numbers by either key: two searches, each along its own index."""
    table = OFFERS
    newest = table.c.sheet.in_(newest_sheets(day))
    either = union(
        *(select(table.c.offer).where(table.c[name].in_(keys), newest) for name in ("supplier_key", "maker_number_key"))
    ).subquery()
    return select(either.c.offer)


def _offers(connection: Connection, which: ColumnElement[bool]) -> dict[int, Offer]:
    """Offers by their number in the database, which is the order they were imported in."""
    query = select(*COLUMNS, SHEETS.c.file, SHEETS.c.sheet_date).join(SHEETS, SHEETS.c.sheet == OFFERS.c.sheet)
    later = _later_breaks(connection, which)
    some = connection.execute(query.where(which).order_by(OFFERS.c.offer)).partitions(FETCHED)
    return {row[0]: _offer(tuple(row), later.get(row[0], ())) for rows in some for row in rows}


def _later_breaks(connection: Connection, which: ColumnElement[bool]) -> dict[int, list[PriceBreak]]:
    table = PRICE_BREAKS
    price = type_coerce(table.c.price, BigInteger)
    query = select(table.c.offer, table.c.from_quantity, price).join(OFFERS, OFFERS.c.offer == table.c.offer)
    found: defaultdict[int, list[PriceBreak]] = defaultdict(list)
    for offer, quantity, stored in connection.execute(
        query.where(which).order_by(table.c.offer, table.c.from_quantity)
    ):
        found[offer].append(PriceBreak(from_quantity=quantity, price=unscaled(stored, PRICE_PLACES)))
    return found


def _offer(row: tuple[Any, ...], later: Sequence[PriceBreak]) -> Offer:
    """The offer of a row of COLUMNS, file and sheet's date. By position: by name, a long sheet takes twice the time."""
    _, sheet, worksheet, number, net_from, *lead = row[: len(PLACED)]
    net_price, list_price, core_charge = map(_price, row[len(PLACED) : PLAIN])
    plain, file, sheet_date = row[PLAIN:-2], intern(row[-2]), row[-1]
    fields = dict(zip(PLAIN_FIELDS, plain, strict=False))
    for name in REPEATED:
        fields[name] = intern(fields[name])
    details = plain[len(PLAIN_FIELDS) :]
    if details != NO_DETAILS:
        fields |= details_from(dict(zip(DETAILS, details, strict=True)))
    return Offer(
        source=SheetRow(sheet=sheet, file=file, worksheet=intern(worksheet), row=number, sheet_date=sheet_date),
        list_price=list_price,
        core_charge=core_charge,
        lead_time=None if lead[0] is None else _lead_time(*lead),
        breaks=() if net_price is None else (PriceBreak(from_quantity=net_from, price=net_price), *later),
        **fields,
    )


@lru_cache(maxsize=65536)
def _price(stored: int | None) -> Decimal | None:
    """A stored price. Past the column's own type, which calls Python three times for each of them."""
    return None if stored is None else unscaled(stored, PRICE_PLACES)


@lru_cache(maxsize=4096)
def _lead_time(text: str, least: int | None, most: int | None, leaves_on: date | None) -> LeadTime:
    """A sheet says the same few lead times over and over."""
    return LeadTime(text=text, least=least, most=most, leaves_on=leaves_on)
