"""Extras given away: fitted without the customer's yes, at the shop's cost, never billed.

Written out in full and never changed.
"""

from alembic import op
from sqlalchemy import BigInteger, CheckConstraint, Column, ForeignKeyConstraint, Integer, PrimaryKeyConstraint, Text

revision = "0009"
down_revision = "0008"


def upgrade() -> None:
    """Add the table; nothing was kept of such extras before."""
    op.create_table(
        "given_away",
        Column("given", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("cost", BigInteger(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("given", name="pk_given_away"),
        CheckConstraint("cost > 0", name="ck_given_away_cost"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_given_away_job"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_given_away_job", "given_away", ["job"])


def downgrade() -> None:
    """Take the table away, with what was given away on record."""
    op.drop_index("ix_given_away_job", "given_away")
    op.drop_table("given_away")
