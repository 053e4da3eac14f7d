"""What an offer may say besides its price: by the foot, warehouses, weight, origin, the days its price holds.

Written out in full and never changed: the tables in code go on, this step stays what it was. Every column may be
NULL, which is a blank on the sheet, so the offers of an older database need no filling in.
"""

from alembic import op
from sqlalchemy import Boolean, Column, Date, Text

revision = "0003"
down_revision = "0002"

NAMES = (
    "lead_leaves_on",
    "sold_by",
    "gtin",
    "discount_code",
    "stock_places",
    "weight_kg",
    "oversize",
    "hazardous",
    "origin",
    "tariff_code",
    "valid_from",
    "valid_to",
)


def upgrade() -> None:
    """Add the columns; a column that may be NULL is added without touching the rows."""
    op.add_column("offers", Column("lead_leaves_on", Date()))
    op.add_column("offers", Column("sold_by", Text()))
    op.add_column("offers", Column("gtin", Text()))
    op.add_column("offers", Column("discount_code", Text()))
    op.add_column("offers", Column("stock_places", Text()))
    op.add_column("offers", Column("weight_kg", Text()))
    op.add_column("offers", Column("oversize", Boolean()))
    op.add_column("offers", Column("hazardous", Boolean()))
    op.add_column("offers", Column("origin", Text()))
    op.add_column("offers", Column("tariff_code", Text()))
    op.add_column("offers", Column("valid_from", Date()))
    op.add_column("offers", Column("valid_to", Date()))


def downgrade() -> None:
    """Take the columns away again, with all that is in them."""
    for name in reversed(NAMES):
        op.drop_column("offers", name)
