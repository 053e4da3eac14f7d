"""Open the shop's database and hold transactions on it: SQLite in one file, or PostgreSQL by its address."""

from collections.abc import Iterator
from contextlib import contextmanager
from types import TracebackType

from sqlalchemy import Connection, Engine, text
from sqlalchemy.exc import DBAPIError

from ..basics.problem import refused
from .engines import make_engine
from .exact import DigitsLost
from .schema import is_current
from .told import told

WRITERS = 20_260_109
"""The PostgreSQL advisory lock all writers of one database take turns on; any number will do that never changes."""


class Store:
    """An open database. Transactions are short: one deed of one person.

    Writers take turns on both kinds of database, so what a writer has read stays true until it is done.
    """

    def __init__(self, engine: Engine, patience: float) -> None:
        self._engine = engine
        self._patience = patience
        self.address = engine.url.render_as_string(hide_password=True)
        self.shown = engine.url.database or self.address if self._is_sqlite else self.address

    @contextmanager
    def writing(self) -> Iterator[Connection]:
        """A transaction to write in: kept at the end, undone whole on any exception.

        Refuses when another writer holds on for longer than the patience, when the disk won't take it, and a number
        whose digits would be lost.
        """
        with self._transaction(sourcing_begin="IMMEDIATE") as connection:
            self._take_turn(connection)
            yield connection

    @contextmanager
    def reading(self) -> Iterator[Connection]:
        """A transaction to read in: it sees one moment of the database. Writing in it is a bug and fails."""
        options: dict[str, object] = {"isolation_level": "REPEATABLE READ", "postgresql_readonly": True}
        if self._is_sqlite:
            options = {"sourcing_begin": "DEFERRED"}
        with self._transaction(**options) as connection:
            yield connection

    @contextmanager
    def noting(self) -> Iterator[Connection]:
        """A transaction for a note that may be lost: where another writer is at work it is refused at once."""
        with self._transaction(sourcing_begin="IMMEDIATE", sourcing_waits=False) as connection:
            if (
                not self._is_sqlite
                and not connection.execute(
                    text("SELECT pg_try_advisory_xact_lock(:writers)"), {"writers": WRITERS}
                ).scalar()
            ):
                raise refused("database-busy", found=self.shown)
            yield connection

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()

    def __enter__(self) -> "Store":
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    @contextmanager
    def _transaction(self, **options: object) -> Iterator[Connection]:
        with (
            self._telling(),
            self._engine.connect() as plain,
            plain.execution_options(**options) as connection,
            connection.begin(),
        ):
            yield connection

    @contextmanager
    def _telling(self) -> Iterator[None]:
        try:
            yield
        except DigitsLost as error:
            raise refused("digits-lost", found=error.value, places=error.places) from error
        except OverflowError as error:  # a count or a day no database and no calendar holds: never our own figures
            raise refused("out-of-reach", found=str(error)) from error
        except DBAPIError as error:
            refusal = told(error, self.shown)
            if refusal is None:
                raise
            raise refusal from error

    def _take_turn(self, connection: Connection) -> None:
        if not self._is_sqlite:
            connection.execute(text(f"SET LOCAL lock_timeout = {int(self._patience * 1000)}"))
            connection.execute(text("SELECT pg_advisory_xact_lock(:writers)"), {"writers": WRITERS})

    @property
    def _is_sqlite(self) -> bool:
        return self._engine.dialect.name == "sqlite"


def open_store(address: str, patience: float = 15.0) -> Store:
    """Open the database at a path or URL (`postgresql+psycopg://...`), made and migrated to the newest schema.

    `patience`: seconds to wait for another writer. Refuses an address that can't be used, a file that is not a
    SQLite database or belongs to another program, and a schema newer than this program.
    """
    store = Store(make_engine(address, patience), patience)
    try:
        with store.reading() as connection:
            current = is_current(connection, store.shown)
        if not current:
            _migrate(store)
    except BaseException:
        store.close()
        raise
    return store


def _migrate(store: Store) -> None:
    from .upgrade import upgrade

    with store.writing() as connection:
        # Somebody else may have migrated it while we waited for our turn.
        if not is_current(connection, store.shown):
            upgrade(connection)
