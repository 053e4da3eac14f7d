"""How large one piece of an offer is in its package, and whether the supplier takes it back.

Written out in full and never changed. Every column may be NULL, which is a blank on the sheet, so the offers of an
older database need no filling in. Lengths are kept as their digits, as weights are.
"""

from alembic import op
from sqlalchemy import Boolean, Column, Text

revision = "0007"
down_revision = "0006"


def upgrade() -> None:
    """Add the columns; a column that may be NULL is added without touching the rows."""
    op.add_column("offers", Column("length_cm", Text()))
    op.add_column("offers", Column("width_cm", Text()))
    op.add_column("offers", Column("height_cm", Text()))
    op.add_column("offers", Column("returnable", Boolean()))


def downgrade() -> None:
    """Take the columns away again, with all that is in them."""
    for name in ("returnable", "height_cm", "width_cm", "length_cm"):
        op.drop_column("offers", name)
