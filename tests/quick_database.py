"""A new SQLite file gets its tables in one go, and no statement is written as SQL twice: many thousand tests need both.

The first file of a run is migrated, the others get the tables it ended with. Tests of opening and migrating
(tests/storage/test_database_opening.py and test_transactions.py) and every process of its own go the true way.
"""

from collections.abc import Callable

from sqlalchemy import Engine, create_engine

from sourcing.storage import database
from sourcing.storage.engines import make_engine
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


def _written_once() -> Callable[[str, float], Engine]:
    """Makes engines that share what was written as SQL once; a statement is known by its engine's dialect otherwise."""
    first = create_engine("sqlite://", query_cache_size=3000)
    first.connect().close()  # a dialect learns what its database can do at the first connection
    first.dispose()

    def engine(address: str, patience: float) -> Engine:
        made = make_engine(address, patience)
        if made.dialect.name == "sqlite":
            made.dialect, made._compiled_cache = first.dialect, first._compiled_cache
        return made

    return engine


def use() -> None:
    """From now on new files are made so in this process."""
    vars(database).update(_migrate=_migrate_quickly, make_engine=_written_once())
