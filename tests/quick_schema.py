"""A new SQLite file gets its tables in one go, so that many hundred tests need not migrate step by step.

The first file of a run is migrated, the others get the tables it ended with. Tests of opening and migrating
(tests/storage/test_database_opening.py and test_transactions.py) and every process of its own go the true way.
"""

from sourcing.storage import database
from sourcing.storage.schema import VERSION_TABLE, is_current

MIGRATE = database._migrate
_MADE: list[str] = []


def _tables(store: database.Store) -> list[str] | None:
    """The statements that make what is in the database; None where it is not SQLite."""
    if store.shown == store.address:
        return None
    with store.reading() as connection:
        rows = connection.exec_driver_sql(
            "SELECT sql FROM sqlite_master WHERE sql IS NOT NULL AND name NOT LIKE 'sqlite_%' ORDER BY rowid"
        )
        return [str(row[0]) for row in rows]


def _migrate_quickly(store: database.Store) -> None:
    if _tables(store) != []:
        MIGRATE(store)
        return
    if not _MADE:
        MIGRATE(store)
        with store.reading() as connection:
            version = connection.exec_driver_sql(f"SELECT version_num FROM {VERSION_TABLE}").scalar_one()
        _MADE.extend([*(_tables(store) or ()), f"INSERT INTO {VERSION_TABLE} VALUES ('{version}')"])
        return
    with store.writing() as connection:
        if not is_current(connection, store.shown):
            for statement in _MADE:
                connection.exec_driver_sql(statement)


def use() -> None:
    """From now on new files are made so in this process."""
    database._migrate = _migrate_quickly
