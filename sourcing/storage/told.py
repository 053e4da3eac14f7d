"""Turn what a database driver says about disk, lock and connection into one sentence for a person."""

import sqlite3

from sqlalchemy.exc import DBAPIError, InterfaceError, OperationalError

from ..basics.problem import Refused, refused

SQLITE_KINDS = {
    sqlite3.SQLITE_BUSY: "database-busy",
    sqlite3.SQLITE_LOCKED: "database-busy",
    sqlite3.SQLITE_READONLY: "database-not-writable",
    sqlite3.SQLITE_CANTOPEN: "database-not-writable",
    sqlite3.SQLITE_PERM: "database-not-writable",
    sqlite3.SQLITE_FULL: "database-disk",
    sqlite3.SQLITE_IOERR: "database-disk",
    sqlite3.SQLITE_NOTADB: "not-a-database",
    sqlite3.SQLITE_CORRUPT: "database-damaged",
}

POSTGRESQL_KINDS = {"55P03": "database-busy", "25006": "database-not-writable", "53100": "database-disk"}
"""SQLSTATE of PostgreSQL: lock not available, read-only transaction, disk full (its manual, appendix A)."""


def told(error: DBAPIError, shown: str) -> Refused | None:
    """The refusal for a trouble of the outside world; None where it is a bug of ours and must show as one.

    `shown` is the database's address without a password.
    """
    code = _sqlite(error) or POSTGRESQL_KINDS.get(getattr(error.orig, "sqlstate", None) or "")
    if code is None and _unreachable(error):
        code = "database-unreachable"
    return refused(code, found=shown) if code else None


def _sqlite(error: DBAPIError) -> str | None:
    number = getattr(error.orig, "sqlite_errorcode", None)
    # An extended code keeps its primary code in the lowest byte (SQLite, "Result and Error Codes").
    return None if number is None else SQLITE_KINDS.get(number & 0xFF)


def _unreachable(error: DBAPIError) -> bool:
    """No server, a wrong password, or a connection that broke: these come without an SQLSTATE or with class 08, 28."""
    if isinstance(error.orig, sqlite3.Error) or not isinstance(error, OperationalError | InterfaceError):
        return False
    state = getattr(error.orig, "sqlstate", None)
    return state is None or state[:2] in ("08", "28", "3D", "57")
