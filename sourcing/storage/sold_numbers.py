"""Which of some numbers can be had by the suppliers' newest sheets, without looking at all that is on them."""

from collections.abc import Sequence
from datetime import date

from sqlalchemy import Connection, exists, false, or_, select

from ..basics.part_number import maker_key
from .sheet_tables import OFFERS
from .sheets import newest_sheets

CHUNK = 400
"""Keys asked for at once, each twice: SQLite before 3.32 takes 999 values in a statement."""


def is_anything_sold(connection: Connection, day: date) -> bool:
    """Whether any row of that day's newest sheets can be had; where not, it is not known what is sold."""
    table = OFFERS
    some = exists().where(
        table.c.sheet.in_(newest_sheets(day)),
        table.c.no_longer_available == false(),
        or_(table.c.supplier_key != "", table.c.maker_number_key != ""),
    )
    return bool(connection.execute(select(some)).scalar())


def sold_with_keys(connection: Connection, keys: Sequence[str], day: date) -> set[tuple[str, str]]:
    """Of what is sold on that day, the (number key, maker key) with one of these keys; maker blank: none is named.

    Whose a number is: as `newest_number_keys` says it of all numbers.
    """
    table, wanted = OFFERS, set(keys) - {""}
    columns = (table.c.supplier, table.c.supplier_key, table.c.maker_key, table.c.maker_number_key)
    found: set[tuple[str, str]] = set()
    for at in range(0, len(keys), CHUNK):
        some = keys[at : at + CHUNK]
        for side in (table.c.supplier_key, table.c.maker_number_key):
            query = select(*columns).where(side.in_(some), table.c.no_longer_available == false())
            for supplier, own, maker, other in connection.execute(query.where(table.c.sheet.in_(newest_sheets(day)))):
                found.update(((own, maker_key(supplier) if other else maker), (other, maker)))
    return {one for one in found if one[0] in wanted}
