"""How Alembic runs the migrations here: on the connection it is handed, in the transaction already open there.

Loaded by Alembic only; importing it by hand fails.
"""

from alembic import context
from sqlalchemy import Connection

from sourcing.storage.schema import VERSION_TABLE
from sourcing.storage.tables import METADATA


def run(connection: Connection) -> None:
    """Run the steps asked for."""
    context.configure(connection=connection, target_metadata=METADATA, version_table=VERSION_TABLE)
    with context.begin_transaction():
        context.run_migrations()


run(context.config.attributes["connection"])
