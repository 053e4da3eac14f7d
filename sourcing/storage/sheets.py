"""Suppliers' sheets: kept with all their offers, taken out again, and what a supplier's columns mean."""

from collections.abc import Mapping
from datetime import date, datetime
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from sqlalchemy import Connection, Engine, Row, Select, delete, func, select

from ..basics.problem import refused
from ..basics.sheet import Field, KeptSheet, SheetSummary
from ..basics.value import Value
from .rows import add_row, as_text, as_value, replace_row
from .sheet_tables import COLUMN_MEANINGS, OFFERS, SHEETS

if TYPE_CHECKING:
    import pandas as pd

KEPT_FIELDS = ("sheet", "supplier", "file", "sheet_date", "sha256", "offers", "structure", "problem_rows", "rows")


class NewSheet(Value, frozen=True, kw_only=True):
    """What is known of a sheet beside its content: from which day its prices hold, its bytes' SHA-256 (hex)."""

    supplier: str
    sheet_date: date
    sha256: str
    imported_at: datetime
    imported_by: str


def newest_sheets(day: date) -> Select[tuple[int]]:
    """The numbers of each supplier's newest sheet on that day: what counts then.

    Of the sheets dated on or before the day the one of the latest date, and of one date the one imported last. A sheet
    that was taken out again counts on no day.
    """
    table = SHEETS
    newest_first = func.row_number().over(
        partition_by=table.c.supplier, order_by=(table.c.sheet_date.desc(), table.c.sheet.desc())
    )
    placed = select(table.c.sheet, newest_first.label("place")).where(table.c.sheet_date <= day).subquery()
    return select(placed.c.sheet).where(placed.c.place == 1)


def oldest_newest_sheet(connection: Connection, day: date) -> date | None:
    """The date of the oldest among the suppliers' newest sheets on that day; None where there is no sheet."""
    query = select(func.min(SHEETS.c.sheet_date)).where(SHEETS.c.sheet.in_(newest_sheets(day)))
    oldest: date | None = connection.execute(query).scalar_one()
    return oldest


def same_sheet(connection: Connection, supplier: str, sha256: str, day: date) -> KeptSheet | None:
    """The supplier's sheet of the same bytes, None where there is none (or it was taken out again)."""
    kept = kept_sheets(connection, day)
    return next((one for one in kept if (one.supplier, one.sha256) == (supplier, sha256)), None)


def add_sheet(connection: Connection, summary: SheetSummary, offers: "pd.DataFrame", kept: NewSheet) -> KeptSheet:
    """Keep a sheet with its offers. A row without a currency is in the summary's.

    The columns of `offers`: worksheet, row, supplier_number, maker, maker_number, description, currency, list_price,
    breaks, price_basis, pack, order_multiple, minimum, stock, lead_time, core_charge, superseded_by,
    no_longer_available, note; and, where they are there, sold_by, gtin, discount_code, stock_places, weight_kg,
    oversize, hazardous, origin, tariff_code, valid_from, valid_to, length_cm, width_cm, height_cm, returnable. None is
    a blank: no price, stock not stated, sold singly. Refuses a price whose digits would be lost and a quantity with two
    prices, with the row. Raises ValueError where the counts of the summary are not the offers' or do not add up: a slip
    of the program not to be stored.
    """
    from .offer_rows import add_offers

    counts = _counts(summary)
    if counts["offers"] != len(offers) or not all(one.adds_up for one in summary.accounting):
        raise ValueError(f"{summary.file}: {counts} does not account for {len(offers)} offers")
    row = {
        "file": summary.file,
        "currency": summary.currency,
        "body": as_text(summary),
        **counts,
        **{name: getattr(kept, name) for name in kept.__struct_fields__},
    }
    sheet = add_row(connection, SHEETS, row)
    add_offers(connection, summary, offers, kept.supplier, sheet)
    return _one(connection, sheet, kept.imported_at.date())


def remove_sheet(connection: Connection, sheet: int, day: date) -> KeptSheet:
    """Take a sheet and its offers out again and say which it was. Its number is not given a second time."""
    kept = _one(connection, sheet, day)
    connection.execute(delete(SHEETS).where(SHEETS.c.sheet == sheet))
    return kept


def kept_sheets(connection: Connection, day: date) -> list[KeptSheet]:
    """Every sheet in the order imported; what counts on that day is marked, and what does not count yet."""
    newest = set(connection.execute(newest_sheets(day)).scalars())
    query = select(*(SHEETS.c[name] for name in KEPT_FIELDS)).order_by(SHEETS.c.sheet)
    return [_kept(row, row.sheet in newest, day) for row in connection.execute(query)]


def sheet_summary(connection: Connection, sheet: int) -> SheetSummary:
    """What was found when the sheet was read: columns, counts, problems. Refuses an unknown sheet."""
    body = connection.execute(select(SHEETS.c.body).where(SHEETS.c.sheet == sheet)).scalar()
    if body is None:
        raise refused("no-sheet-number", found=sheet)
    return as_value(body, SheetSummary)


def has_net_prices(connection: Connection, sheet: int) -> bool:
    """Whether any row of the sheet has a net price."""
    priced = select(OFFERS.c.offer).where(OFFERS.c.sheet == sheet, OFFERS.c.net_price.is_not(None))
    return bool(connection.execute(select(priced.exists())).scalar())


def meanings(connection: Connection, supplier: str) -> dict[str, Field]:
    """What the supplier's columns mean, by header as last confirmed; nothing where none was confirmed."""
    return {row.header: row.field for row in _meanings(connection, supplier)}


def break_quantities(connection: Connection, supplier: str) -> dict[str, int]:
    """From how many pieces on a price column holds, for the headers where somebody said so."""
    found = _meanings(connection, supplier)
    return {row.header: row.from_quantity for row in found if row.from_quantity is not None}


def remember_meanings(
    connection: Connection,
    supplier: str,
    confirmed: Mapping[str, Field],
    who: str,
    at: datetime,
    quantities: Mapping[str, int] | None = None,
) -> None:
    """Remember what a person confirmed; a header that differs only in case and spaces is the same one.

    `quantities`: for net price columns, from how many pieces on they hold.
    """
    for header, field in confirmed.items():
        row = {
            "supplier": supplier,
            "header_key": header_key(header),
            "header": header,
            "field": field,
            "from_quantity": (quantities or {}).get(header),
            "confirmed_by": who,
            "confirmed_at": at,
        }
        replace_row(connection, COLUMN_MEANINGS, row)


def header_key(header: str) -> str:
    """The header without case and with single spaces: what makes it the same header on the next sheet."""
    return " ".join(header.casefold().split())


def _meanings(connection: Connection, supplier: str) -> list[Row[Any]]:
    table = COLUMN_MEANINGS
    query = select(table).where(table.c.supplier == supplier).order_by(table.c.header_key)
    return list(connection.execute(query))


def _counts(summary: SheetSummary) -> dict[str, int]:
    names = ("rows", "offers", "structure", "problem_rows")
    return {name: sum(getattr(one, name) for one in summary.accounting) for name in names}


def _one(connection: Connection, sheet: int, day: date) -> KeptSheet:
    found = next((one for one in kept_sheets(connection, day) if one.sheet == sheet), None)
    if found is None:
        raise refused("no-sheet-number", found=sheet)
    return found


def _kept(row: Row[Any], is_newest: bool, day: date) -> KeptSheet:
    return KeptSheet(
        is_newest=is_newest, not_yet=row.sheet_date > day, **{name: row._mapping[name] for name in KEPT_FIELDS}
    )


def sheets_with_makers_numbers(connection: Connection, day: date) -> frozenset[int]:
    """The sheets that count on that day and have a number of a maker's in at least one row.

    Rows of a kept sheet never change, so each is looked through once: one without any takes a while.
    """
    known = _MAKERS_NUMBERS.setdefault(connection.engine, {})
    query = select(*(SHEETS.c[name] for name in (*KEPT_FIELDS, "imported_at")))
    counting = [tuple(row) for row in connection.execute(query.where(SHEETS.c.sheet.in_(newest_sheets(day))))]
    for row in counting:
        if row not in known:
            one = select(OFFERS.c.offer).where(OFFERS.c.sheet == row[0], OFFERS.c.maker_number_key != "")
            known[row] = bool(connection.execute(select(one.exists())).scalar())
    return frozenset(row[0] for row in counting if known[row])


_MAKERS_NUMBERS: WeakKeyDictionary[Engine, dict[tuple[object, ...], bool]] = WeakKeyDictionary()
"""By database and by what a sheet is known again by whether it has a maker's number."""
