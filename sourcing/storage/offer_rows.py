"""Turn a sheet's offers, columns of a data frame, into rows of the database, many at once.

Written column by column with plain lists, because a sheet may have 300,000 rows: going through one object a row
takes several times as long.
"""

from collections.abc import Iterable, Sequence
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from sqlalchemy import Connection, Table, func, insert, select

from ..basics.part_number import maker_key, number_key
from ..basics.problem import Place, refused
from ..basics.sheet import SheetSummary
from .exact import PRICE_PLACES, DigitsLost, scaled
from .offer_details import Lists, detail_columns
from .sheet_tables import OFFERS, PRICE_BREAKS

if TYPE_CHECKING:
    import pandas as pd

TEXTS = ("worksheet", "supplier_number", "maker", "maker_number", "description", "superseded_by", "note")
AT_LEAST_ONE = ("price_basis", "pack", "order_multiple", "minimum")
PRICES = ("list_price", "core_charge")


def add_offers(
    connection: Connection, summary: SheetSummary, offers: "pd.DataFrame", supplier: str, sheet: int
) -> None:
    """Insert all offers of a sheet and their price breaks.

    Refuses a price whose digits would be lost and a quantity with two prices, with the row.
    """
    lists = {str(name): _plain(offers[name]) for name in offers.columns}
    first = int(connection.execute(select(func.max(OFFERS.c.offer))).scalar() or 0) + 1
    columns = _columns(lists, summary)
    count = len(lists["row"])
    columns["offer"] = list(range(first, first + count))
    columns["sheet"] = [sheet] * count
    columns["supplier"] = [supplier] * count
    _check_quantities(lists, summary.file)
    breaks = _later_breaks(columns["offer"], lists, summary.file)
    _insert(connection, OFFERS, columns)
    _insert(connection, PRICE_BREAKS, breaks)


def _plain(column: "pd.Series[Any]") -> list[Any]:
    """The column as a list in which every blank is None, also where pandas made it NaN."""
    values = column.astype(object)
    return values.where(values.notna(), None).tolist()


def _columns(lists: Lists, summary: SheetSummary) -> Lists:
    columns: Lists = {name: ["" if value is None else str(value) for value in lists[name]] for name in TEXTS}
    columns |= {name: [1 if value is None else int(value) for value in lists[name]] for name in AT_LEAST_ONE}
    columns["row"] = [int(value) for value in lists["row"]]
    columns["stock"] = [None if value is None else int(value) for value in lists["stock"]]
    columns["currency"] = [value or summary.currency for value in lists["currency"]]
    columns["no_longer_available"] = [bool(value) for value in lists["no_longer_available"]]
    columns |= {name: _scaled(lists[name], name, lists, summary.file) for name in PRICES}
    return columns | _keys(columns) | _lead_times(lists) | _first_breaks(lists, summary.file) | detail_columns(lists)


def _keys(columns: Lists) -> Lists:
    makers = {maker: maker_key(maker) for maker in set(columns["maker"])}
    return {
        "supplier_key": [number_key(number) for number in columns["supplier_number"]],
        "maker_number_key": [number_key(number) for number in columns["maker_number"]],
        "maker_key": [makers[maker] for maker in columns["maker"]],
    }


def _lead_times(lists: Lists) -> Lists:
    times = lists["lead_time"]
    return {
        "lead_text": [None if time is None else time.text for time in times],
        "lead_least": [None if time is None else time.least for time in times],
        "lead_most": [None if time is None else time.most for time in times],
    }


def _first_breaks(lists: Lists, file: str) -> Lists:
    firsts = [breaks[0] if breaks else None for breaks in lists["breaks"]]
    prices = [None if first is None else first.price for first in firsts]
    return {
        "net_price": _scaled(prices, "net price", lists, file),
        "net_from_quantity": [None if first is None else first.from_quantity for first in firsts],
    }


def _later_breaks(offers: Sequence[int], lists: Lists, file: str) -> Lists:
    later = [(at, one) for at, breaks in enumerate(lists["breaks"]) for one in (breaks or ())[1:]]
    rows: Lists = {name: [lists[name][at] for at, _ in later] for name in ("worksheet", "row")}
    return {
        "offer": [offers[at] for at, _ in later],
        "from_quantity": [one.from_quantity for _, one in later],
        "price": _scaled([one.price for _, one in later], "net price", rows, file),
    }


def _check_quantities(lists: Lists, file: str) -> None:
    """Two prices from one quantity: which of them holds is not for the program to say."""
    for at, breaks in enumerate(lists["breaks"]):
        if breaks and len(breaks) > 1:
            quantities = [one.from_quantity for one in breaks]
            if len(set(quantities)) < len(quantities):
                twice = next(one for one in quantities if quantities.count(one) > 1)
                place = Place(file=file, worksheet=lists["worksheet"][at] or "", row=int(lists["row"][at]))
                found = lists["supplier_number"][at]
                raise refused("break-quantity-twice", place=place, found=found, quantity=twice)


def _scaled(values: Iterable[Decimal | None], column: str, rows: Lists, file: str) -> list[int | None]:
    """The prices as stored. `rows` says where each of them stands, for the refusal."""
    done: list[int | None] = []
    try:
        for value in values:
            done.append(None if value is None else scaled(value, PRICE_PLACES))
    except DigitsLost as error:
        at = len(done)
        place = Place(
            file=file,
            worksheet=rows["worksheet"][at] or "",
            row=int(rows["row"][at]),
            column=column.replace("_", " "),
        )
        raise refused("digits-lost", place=place, found=error.value, places=PRICE_PLACES) from error
    return done


def _insert(connection: Connection, table: Table, columns: Lists) -> None:
    """All rows at once. The values are stored forms already (scaled prices), so the types of columns are passed by.

    A driver that counts places (SQLite) takes tuples, one that does not takes names. A column that is not given is
    NULL in every row.
    """
    names = [column.name for column in table.columns if column.name in columns]
    if not columns[names[0]]:
        return
    statement = insert(table).compile(dialect=connection.dialect, column_keys=names)
    order = list(statement.positiontup or ())
    if order:
        connection.exec_driver_sql(str(statement), list(zip(*(columns[name] for name in order), strict=True)))
    else:
        named = [dict(zip(names, row, strict=True)) for row in zip(*(columns[name] for name in names), strict=True)]
        connection.exec_driver_sql(str(statement), named)
