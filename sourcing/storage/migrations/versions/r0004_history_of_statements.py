"""What happened to statements, their machines, serial numbers and doubts; what is asked of parts; names of makers.

Written out in full and never changed: the tables in code go on, this step stays what it was. Statements of an older
database get no invented history: when and by whom they were taken in or withdrawn is not known.
"""

from alembic import op
from sqlalchemy import CheckConstraint, Column, ForeignKeyConstraint, Integer, PrimaryKeyConstraint, Text

revision = "0004"
down_revision = "0003"

OF_STATEMENTS = ("machine", "serial_from", "serial_to", "doubt")


def upgrade() -> None:
    """Add the columns, blank in every row there is, and make the two tables."""
    op.add_column("our_parts", Column("asked", Text(), nullable=False, server_default="{}"))
    for name in OF_STATEMENTS:
        op.add_column("statements", Column(name, Text(), nullable=False, server_default=""))
    _statement_events()
    _maker_aliases()


def downgrade() -> None:
    """Take them away again, with all that is in them."""
    op.drop_table("maker_aliases")
    op.drop_table("statement_events")
    for name in reversed(OF_STATEMENTS):
        op.drop_column("statements", name)
    op.drop_column("our_parts", "asked")


def _statement_events() -> None:
    op.create_table(
        "statement_events",
        Column("event", Integer(), nullable=False),
        Column("statement", Integer(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("what", Text(), nullable=False),
        Column("reason", Text(), nullable=False),
        Column("file", Text(), nullable=False),
        Column("was", Text()),
        PrimaryKeyConstraint("event", name="pk_statement_events"),
        CheckConstraint(
            "what IN ('stated', 'doubted', 'doubt answered', 'withdrawn', 'restored', 'standing changed', 'changed', "
            "'replaced')",
            name="ck_statement_events_what",
        ),
        ForeignKeyConstraint(["statement"], ["statements.statement"], name="fk_statement_events_statement"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_statement_events_statement", "statement_events", ["statement"])


def _maker_aliases() -> None:
    op.create_table(
        "maker_aliases",
        Column("alias_key", Text(), nullable=False),
        Column("alias", Text(), nullable=False),
        Column("maker", Text(), nullable=False),
        Column("position", Integer(), nullable=False),
        PrimaryKeyConstraint("alias_key", name="pk_maker_aliases"),
    )
