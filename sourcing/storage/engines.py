"""Make the SQLAlchemy engine for an address: which driver, and how SQLite must be set so that it keeps its word."""

import sqlite3
from contextlib import suppress
from pathlib import Path

from sqlalchemy import URL, Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import ArgumentError, OperationalError
from sqlalchemy.pool import ConnectionPoolEntry, NullPool

from ..basics.problem import refused

SQLITE_HEADER = b"SQLite format 3\x00"
"""First bytes of every SQLite file (SQLite, "Database File Format", section 1.3)."""

POSTGRESQL_NAMES = ("postgresql", "postgres", "postgresql+psycopg")


def make_engine(address: str, patience: float) -> Engine:
    """The engine for a path or URL. Nothing is opened yet, but a path that can't hold a database is refused."""
    url = _url(address)
    if url.drivername == "sqlite":
        return _sqlite(url, patience)
    if url.drivername in POSTGRESQL_NAMES:
        return _postgresql(url.set(drivername="postgresql+psycopg"))
    raise refused("database-address", found=url.render_as_string(hide_password=True))


def _url(address: str) -> URL:
    if "://" not in address:
        return URL.create("sqlite", database=str(Path(address).expanduser()) if address.strip() else "")
    try:
        return make_url(address)
    except (ArgumentError, ValueError):
        # The address is not shown: a password may stand in it.
        raise refused("database-address", found=address.partition("://")[0] + "://...") from None


def _postgresql(url: URL) -> Engine:
    try:
        return create_engine(url, pool_pre_ping=True)
    except ModuleNotFoundError:
        raise refused("database-driver", found=url.render_as_string(hide_password=True)) from None


def _sqlite(url: URL, patience: float) -> Engine:
    _check_file(url)
    # No pool: the last connection that closes folds the write-ahead log in, so between deeds the one file is all.
    engine = create_engine(url, poolclass=NullPool, connect_args={"timeout": patience})
    event.listen(engine, "connect", _on_connect)
    event.listen(engine, "begin", _on_begin)
    return engine


def _check_file(url: URL) -> None:
    name = url.database or ""
    if name in ("", ":memory:"):
        raise refused("database-address", found=name)
    if name.startswith("file:"):
        return
    path = Path(name)
    try:
        if not path.exists():
            if not path.parent.is_dir():
                raise refused("database-folder", found=name)
            return
        with path.open("rb") as file:
            start = file.read(len(SQLITE_HEADER))
    except OSError:
        raise refused("database-not-writable", found=name) from None
    if start not in (b"", SQLITE_HEADER):
        raise refused("not-a-database", found=name)


def _on_connect(connection: sqlite3.Connection, _: ConnectionPoolEntry) -> None:
    # Python's own driver would begin transactions late and by itself; with None it leaves BEGIN to us.
    connection.isolation_level = None
    connection.execute("PRAGMA foreign_keys = ON")


def _on_begin(connection: Connection) -> None:
    options = connection.get_execution_options()
    kind = options.get("sourcing_begin", "DEFERRED")
    if not options.get("sourcing_waits", True):
        connection.exec_driver_sql("PRAGMA busy_timeout = 0")
    if kind == "IMMEDIATE":
        # Readers go on reading while one writes. The mode stays in the file; where somebody is in the way of the
        # change it is made by the next writer, and a file that can't be written is told by BEGIN.
        with suppress(OperationalError):
            connection.exec_driver_sql("PRAGMA journal_mode = WAL")
    else:
        connection.exec_driver_sql("PRAGMA query_only = ON")
    connection.exec_driver_sql(f"BEGIN {kind}")
