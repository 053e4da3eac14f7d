"""Bring a database to the newest schema. Loaded only when there is something to migrate: Alembic is slow to import."""

from pathlib import Path

from alembic import command
from alembic.config import Config
from sqlalchemy import Connection

MIGRATIONS = Path(__file__).with_name("migrations")


def config_for(connection: Connection | None) -> Config:
    """Alembic's configuration, made in code: there is no alembic.ini to lose. `migrations/env.py` reads it."""
    config = Config()
    config.set_main_option("script_location", str(MIGRATIONS).replace("%", "%%"))
    config.set_main_option("path_separator", "os")
    config.attributes["connection"] = connection
    return config


def upgrade(connection: Connection, to: str = "head") -> None:
    """Migrate within the connection's open transaction: all steps are kept or none."""
    command.upgrade(config_for(connection), to)
