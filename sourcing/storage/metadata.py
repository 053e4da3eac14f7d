"""The one MetaData of all tables, and how constraints are named so that migrations can find them (checks in full)."""

from sqlalchemy import MetaData

METADATA = MetaData(
    naming_convention={
        "pk": "pk_%(table_name)s",
        "uq": "uq_%(table_name)s_%(column_0_N_name)s",
        "fk": "fk_%(table_name)s_%(column_0_N_name)s",
        "ix": "ix_%(table_name)s_%(column_0_N_name)s",
    }
)
