"""Which schema a database has and whether this program knows it, without loading the migrations."""

from sqlalchemy import Connection, column, inspect, select, table

from ..basics.problem import refused

VERSION_TABLE = "schema_version"
"""Named apart from Alembic's usual name, so that another program's database is not taken for ours."""

REVISIONS = ("0001", "0002", "0003", "0004", "0005", "0006", "0007", "0008", "0009", "0010")
"""Every schema there has been, oldest first; the last is what this program works with."""

_VERSION = table(VERSION_TABLE, column("version_num"))


def is_current(connection: Connection, shown: str) -> bool:
    """Whether the database has the newest schema. False: empty, or older and to be migrated.

    Refuses a schema newer than the program, and a database with tables that are not ours. `shown` is its address.
    """
    inspector = inspect(connection)
    if inspector.has_table(VERSION_TABLE):
        version = connection.execute(select(_VERSION.c.version_num)).scalar()
        if version is not None and version not in REVISIONS:
            raise refused("database-newer", found=shown, version=version, known=REVISIONS[-1])
        return bool(version == REVISIONS[-1])
    if inspector.get_table_names():
        raise refused("database-not-ours", found=shown)
    return False
