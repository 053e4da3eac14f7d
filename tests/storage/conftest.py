"""A fresh, empty database for each test: a SQLite file, and PostgreSQL where an address of one is given.

Set SOURCING_TEST_POSTGRESQL to the address of a PostgreSQL database, such as postgresql+psycopg://shop@localhost/test;
each test works in a schema of its own there and takes it away again.
"""

import os
from collections.abc import Iterator
from pathlib import Path
from uuid import uuid4

import pytest
from sqlalchemy import create_engine, make_url, text

from sourcing.storage import database
from sourcing.storage.database import Store, open_store
from tests.quick_database import MIGRATE

POSTGRESQL = os.environ.get("SOURCING_TEST_POSTGRESQL", "")
NEEDS_POSTGRESQL = pytest.mark.skipif(not POSTGRESQL, reason="SOURCING_TEST_POSTGRESQL is not set")


@pytest.fixture
def migrated_step_by_step(monkeypatch: pytest.MonkeyPatch) -> None:
    """A new database goes through every migration: for tests of opening one."""
    monkeypatch.setattr(database, "_migrate", MIGRATE)


@pytest.fixture(params=["sqlite", pytest.param("postgresql", marks=NEEDS_POSTGRESQL)])
def address(request: pytest.FixtureRequest, tmp_path: Path) -> Iterator[str]:
    """The address of a database that holds nothing yet."""
    if request.param == "sqlite":
        yield str(tmp_path / "shop.db")
        return
    schema = f"test_{uuid4().hex}"
    engine = create_engine(make_url(POSTGRESQL).set(drivername="postgresql+psycopg"))
    with engine.begin() as connection:
        connection.execute(text(f"CREATE SCHEMA {schema}"))
    url = make_url(POSTGRESQL).update_query_dict({"options": f"-csearch_path={schema}"})
    yield url.render_as_string(hide_password=False)
    with engine.begin() as connection:
        connection.execute(text(f"DROP SCHEMA {schema} CASCADE"))
    engine.dispose()


@pytest.fixture
def store(address: str) -> Iterator[Store]:
    """An open store with the newest schema and nothing in it."""
    with open_store(address) as opened:
        yield opened
