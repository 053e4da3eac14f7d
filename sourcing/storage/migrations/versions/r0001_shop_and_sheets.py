"""Settings, terms, rates, the equivalence table, sheets and their offers.

Written out in full and never changed: the tables in code go on, this step stays what it was.
"""

from alembic import op
from sqlalchemy import (
    BigInteger,
    Boolean,
    CheckConstraint,
    Column,
    Date,
    ForeignKeyConstraint,
    Integer,
    PrimaryKeyConstraint,
    Text,
    UniqueConstraint,
)

revision = "0001"
down_revision = None


def upgrade() -> None:
    """Make the tables."""
    _shop_settings()
    _supplier_terms()
    _exchange_rates()
    _our_parts()
    _statements()
    _column_meanings()
    _sheets()
    _offers()
    _price_breaks()


def downgrade() -> None:
    """Take them away again, with all that is in them."""
    op.drop_table("price_breaks")
    op.drop_table("offers")
    op.drop_table("sheets")
    op.drop_table("column_meanings")
    op.drop_table("statements")
    op.drop_table("our_parts")
    op.drop_table("exchange_rates")
    op.drop_table("supplier_terms")
    op.drop_table("shop_settings")


def _shop_settings() -> None:
    op.create_table(
        "shop_settings",
        Column("starts_on", Date(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("starts_on", name="pk_shop_settings"),
    )


def _supplier_terms() -> None:
    op.create_table(
        "supplier_terms",
        Column("supplier", Text(), nullable=False),
        Column("starts_on", Date(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("supplier", "starts_on", name="pk_supplier_terms"),
    )


def _exchange_rates() -> None:
    op.create_table(
        "exchange_rates",
        Column("currency", Text(), nullable=False),
        Column("into", Text(), nullable=False),
        Column("dated", Date(), nullable=False),
        Column("rate", BigInteger(), nullable=False),
        Column("source", Text(), nullable=False),
        PrimaryKeyConstraint("currency", "into", "dated", name="pk_exchange_rates"),
    )


def _our_parts() -> None:
    op.create_table(
        "our_parts",
        Column("code", Text(), nullable=False),
        Column("position", Integer(), nullable=False),
        Column("name", Text(), nullable=False),
        Column("size", Text(), nullable=False),
        Column("category", Text(), nullable=False),
        Column("note", Text(), nullable=False),
        PrimaryKeyConstraint("code", name="pk_our_parts"),
    )


def _statements() -> None:
    op.create_table(
        "statements",
        Column("statement", Integer(), nullable=False),
        Column("position", Integer(), nullable=False),
        Column("left_printed", Text(), nullable=False),
        Column("left_maker", Text(), nullable=False),
        Column("relation", Text(), nullable=False),
        Column("right_printed", Text(), nullable=False),
        Column("right_maker", Text(), nullable=False),
        Column("standing", Text(), nullable=False),
        Column("source", Text(), nullable=False),
        Column("stated_on", Date(), nullable=False),
        Column("stated_by", Text(), nullable=False),
        Column("condition", Text(), nullable=False),
        Column("count", Integer(), nullable=False),
        Column("row", Integer()),
        Column("withdrawn", Boolean(), nullable=False),
        PrimaryKeyConstraint("statement", name="pk_statements"),
        CheckConstraint(
            "relation IN ('same part', 'superseded by', 'substitute', 'kit contains', 'must not')",
            name="ck_statements_relation",
        ),
        CheckConstraint("standing IN ('fitted', 'maker', 'supplier', 'unchecked')", name="ck_statements_standing"),
        sqlite_autoincrement=True,
    )


def _column_meanings() -> None:
    op.create_table(
        "column_meanings",
        Column("supplier", Text(), nullable=False),
        Column("header_key", Text(), nullable=False),
        Column("header", Text(), nullable=False),
        Column("field", Text(), nullable=False),
        Column("from_quantity", BigInteger()),
        Column("confirmed_by", Text(), nullable=False),
        Column("confirmed_at", Text(), nullable=False),
        PrimaryKeyConstraint("supplier", "header_key", name="pk_column_meanings"),
    )


def _sheets() -> None:
    op.create_table(
        "sheets",
        Column("sheet", Integer(), nullable=False),
        Column("supplier", Text(), nullable=False),
        Column("file", Text(), nullable=False),
        Column("sheet_date", Date(), nullable=False),
        Column("sha256", Text(), nullable=False),
        Column("imported_at", Text(), nullable=False),
        Column("imported_by", Text(), nullable=False),
        Column("rows", Integer(), nullable=False),
        Column("offers", Integer(), nullable=False),
        Column("structure", Integer(), nullable=False),
        Column("problem_rows", Integer(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("sheet", name="pk_sheets"),
        UniqueConstraint("supplier", "sha256", name="uq_sheets_supplier_sha256"),
        CheckConstraint("rows = offers + structure + problem_rows", name="ck_sheets_rows"),
        sqlite_autoincrement=True,
    )


def _offers() -> None:
    op.create_table(
        "offers",
        Column("offer", Integer(), autoincrement=False, nullable=False),
        Column("sheet", Integer(), nullable=False),
        Column("supplier", Text(), nullable=False),
        Column("worksheet", Text(), nullable=False),
        Column("row", Integer(), nullable=False),
        Column("supplier_number", Text(), nullable=False),
        Column("supplier_key", Text(), nullable=False),
        Column("maker", Text(), nullable=False),
        Column("maker_key", Text(), nullable=False),
        Column("maker_number", Text(), nullable=False),
        Column("maker_number_key", Text(), nullable=False),
        Column("description", Text(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("list_price", BigInteger()),
        Column("net_price", BigInteger()),
        Column("net_from_quantity", BigInteger()),
        Column("price_basis", BigInteger(), nullable=False),
        Column("pack", BigInteger(), nullable=False),
        Column("order_multiple", BigInteger(), nullable=False),
        Column("minimum", BigInteger(), nullable=False),
        Column("stock", BigInteger()),
        Column("lead_text", Text()),
        Column("lead_least", Integer()),
        Column("lead_most", Integer()),
        Column("core_charge", BigInteger()),
        Column("superseded_by", Text(), nullable=False),
        Column("no_longer_available", Boolean(), nullable=False),
        Column("note", Text(), nullable=False),
        PrimaryKeyConstraint("offer", name="pk_offers"),
        ForeignKeyConstraint(["sheet"], ["sheets.sheet"], name="fk_offers_sheet", ondelete="CASCADE"),
    )
    op.create_index("ix_offers_maker_number_key_sheet", "offers", ["maker_number_key", "sheet"])
    op.create_index("ix_offers_sheet", "offers", ["sheet"])
    op.create_index("ix_offers_supplier_key_sheet", "offers", ["supplier_key", "sheet"])


def _price_breaks() -> None:
    op.create_table(
        "price_breaks",
        Column("offer", Integer(), nullable=False),
        Column("from_quantity", BigInteger(), nullable=False),
        Column("price", BigInteger(), nullable=False),
        PrimaryKeyConstraint("offer", "from_quantity", name="pk_price_breaks"),
        ForeignKeyConstraint(["offer"], ["offers.offer"], name="fk_price_breaks_offer", ondelete="CASCADE"),
    )
