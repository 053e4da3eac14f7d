"""Single parts of ours kept, changed and taken out; and what stands in the shop's data that names one."""

from typing import Any

from sqlalchemy import Column, Connection, Table, and_, delete, func, insert, or_, select, update

from ..basics.equivalence import OurPart
from ..basics.part_number import OURS, number_key
from ..basics.value import to_json
from .job_tables import JOBS, PURCHASE_ORDERS, QUOTE_REVISIONS
from .match_tables import JUDGEMENTS
from .rows import as_text
from .shop_tables import OUR_PARTS, STATEMENTS

FIELDS = ("code", "name", "size", "category", "note")


def keep_part(connection: Connection, part: OurPart) -> None:
    """Keep a new part after all others."""
    last = connection.execute(select(func.max(OUR_PARTS.c.position))).scalar()
    connection.execute(insert(OUR_PARTS).values({"position": 0 if last is None else last + 1, **_row(part)}))


def correct_part(connection: Connection, part: OurPart) -> None:
    """Keep the part with this code as it is now, in its place."""
    connection.execute(update(OUR_PARTS).where(OUR_PARTS.c.code == part.code).values(_row(part)))


def drop_part(connection: Connection, code: str) -> None:
    """The shop has this part no more."""
    connection.execute(delete(OUR_PARTS).where(OUR_PARTS.c.code == code))


def what_names(connection: Connection, code: str) -> tuple[str, ...]:
    """What names this part of ours, in words, the first of each kind; also what counts no more but is kept."""
    named = f'"part":{to_json(code).decode()}'
    key, table = number_key(code), STATEMENTS
    sides = [and_(table.c[f"{side}_maker"] == OURS, table.c[f"{side}_key"] == key) for side in ("left", "right")]
    found = (
        ("statement", _first(connection, table.c.statement, or_(*sides))),
        ("job", _first(connection, JOBS.c.number, _holds(JOBS, named))),
        ("the quote of job", _first(connection, QUOTE_REVISIONS.c.job, _holds(QUOTE_REVISIONS, named))),
        ("order", _first(connection, PURCHASE_ORDERS.c.number, _holds(PURCHASE_ORDERS, named))),
        ("the answer to look-alike", _first(connection, JUDGEMENTS.c.candidate, JUDGEMENTS.c.part == code)),
    )
    return tuple(f"{what} {first}" for what, first in found if first is not None)


def _holds(table: Table, text: str) -> Any:
    return table.c.body.contains(text, autoescape=True)


def _first(connection: Connection, column: Column[Any], where: Any) -> object:
    return connection.execute(select(column).where(where).order_by(column).limit(1)).scalar()


def _row(part: OurPart) -> dict[str, Any]:
    return {"asked": as_text(part.asked), **{name: getattr(part, name) for name in FIELDS}}
