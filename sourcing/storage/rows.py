"""Small helps for every table: values as JSON text, one row replaced by its key."""

from typing import Any, TypeVar

from sqlalchemy import Connection, Table, delete, insert

from ..basics.value import from_json, to_json

V = TypeVar("V")


def as_text(value: object) -> str:
    """The value as JSON text for a `body` column."""
    return to_json(value).decode()


def as_value(body: str, kind: type[V]) -> V:
    """The value back from a `body` column."""
    return from_json(body, kind)


def add_row(connection: Connection, table: Table, row: dict[str, Any]) -> int:
    """Add a row to a table that counts its rows by itself, and say which number it got."""
    (number,) = table.primary_key
    return int(connection.execute(insert(table).values(row).returning(number)).scalar_one())


def replace_row(connection: Connection, table: Table, row: dict[str, Any]) -> None:
    """Put the row in the place of the one with the same primary key, if there is one. Same on every database."""
    same = [column == row[column.name] for column in table.primary_key]
    connection.execute(delete(table).where(*same))
    connection.execute(insert(table).values(row))
