"""The keys of both numbers of a statement, each with an index: one number is looked up without loading the table.

Written out in full and never changed, but for the rule of keys itself: should that ever change, a later step makes all
keys anew. Nothing a statement says is touched.
"""

from alembic import op
from sqlalchemy import Column, Integer, Text, bindparam, column, select, table, update

from sourcing.basics.part_number import number_keys

revision = "0006"
down_revision = "0005"

_STATEMENTS = table(
    "statements",
    column("statement", Integer()),
    *(column(name, Text()) for name in ("left_printed", "right_printed", "left_key", "right_key")),
)


def upgrade() -> None:
    """Add the columns, fill them for every statement there is, and make their indexes."""
    for name in ("left_key", "right_key"):
        op.add_column("statements", Column(name, Text(), nullable=False, server_default=""))
    _fill()
    for name in ("left_key", "right_key"):
        op.create_index(f"ix_statements_{name}", "statements", [name])


def downgrade() -> None:
    """Take them away again; they can be made anew at any time."""
    for name in ("right_key", "left_key"):
        op.drop_index(f"ix_statements_{name}", "statements")
        op.drop_column("statements", name)


def _fill() -> None:
    connection = op.get_bind()
    c = _STATEMENTS.c
    rows = connection.execute(select(c.statement, c.left_printed, c.right_printed)).all()
    keys = zip(number_keys([row[1] for row in rows]), number_keys([row[2] for row in rows]), strict=True)
    filled = [{"kept": row[0], "one": left, "other": right} for row, (left, right) in zip(rows, keys, strict=True)]
    if filled:
        by_number = update(_STATEMENTS).where(c.statement == bindparam("kept"))
        connection.execute(by_number.values(left_key=bindparam("one"), right_key=bindparam("other")), filled)
