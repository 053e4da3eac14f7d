"""Tables of suppliers' sheets: what their columns mean, the sheets kept, their offers and price breaks."""

from sqlalchemy import (
    BigInteger,
    Boolean,
    CheckConstraint,
    Column,
    Date,
    ForeignKey,
    Index,
    Integer,
    Table,
    Text,
    UniqueConstraint,
)

from .exact import Exact, Moment
from .metadata import METADATA

COLUMN_MEANINGS = Table(
    "column_meanings",
    METADATA,
    Column("supplier", Text, primary_key=True),
    Column("header_key", Text, primary_key=True),
    Column("header", Text, nullable=False),
    Column("field", Text, nullable=False),
    Column("from_quantity", BigInteger),
    Column("confirmed_by", Text, nullable=False),
    Column("confirmed_at", Moment, nullable=False),
)

SHEETS = Table(
    "sheets",
    METADATA,
    Column("sheet", Integer, primary_key=True),
    Column("supplier", Text, nullable=False),
    Column("file", Text, nullable=False),
    Column("sheet_date", Date, nullable=False),
    Column("sha256", Text, nullable=False),
    Column("imported_at", Moment, nullable=False),
    Column("imported_by", Text, nullable=False),
    Column("rows", Integer, nullable=False),
    Column("offers", Integer, nullable=False),
    Column("structure", Integer, nullable=False),
    Column("problem_rows", Integer, nullable=False),
    Column("currency", Text, nullable=False),
    Column("body", Text, nullable=False),
    UniqueConstraint("supplier", "sha256"),
    CheckConstraint("rows = offers + structure + problem_rows", name="ck_sheets_rows"),
    # A number once given stays taken after an undo: quotes and deeds name sheets by it.
    sqlite_autoincrement=True,
)

OFFERS = Table(
    "offers",
    METADATA,
    Column("offer", Integer, primary_key=True, autoincrement=False),
    Column("sheet", Integer, ForeignKey(SHEETS.c.sheet, ondelete="CASCADE"), nullable=False),
    Column("supplier", Text, nullable=False),
    Column("worksheet", Text, nullable=False),
    Column("row", Integer, nullable=False),
    Column("supplier_number", Text, nullable=False),
    Column("supplier_key", Text, nullable=False),
    Column("maker", Text, nullable=False),
    Column("maker_key", Text, nullable=False),
    Column("maker_number", Text, nullable=False),
    Column("maker_number_key", Text, nullable=False),
    Column("description", Text, nullable=False),
    Column("currency", Text, nullable=False),
    Column("list_price", Exact()),
    Column("net_price", Exact()),
    Column("net_from_quantity", BigInteger),
    Column("price_basis", BigInteger, nullable=False),
    Column("pack", BigInteger, nullable=False),
    Column("order_multiple", BigInteger, nullable=False),
    Column("minimum", BigInteger, nullable=False),
    Column("stock", BigInteger),
    Column("lead_text", Text),
    Column("lead_least", Integer),
    Column("lead_most", Integer),
    Column("core_charge", Exact()),
    Column("superseded_by", Text, nullable=False),
    Column("no_longer_available", Boolean, nullable=False),
    Column("note", Text, nullable=False),
    # From here on NULL is a blank on the sheet, and the usual case: see `offer_details`.
    Column("lead_leaves_on", Date),
    Column("sold_by", Text),
    Column("gtin", Text),
    Column("discount_code", Text),
    Column("stock_places", Text),
    Column("weight_kg", Text),
    Column("oversize", Boolean),
    Column("hazardous", Boolean),
    Column("origin", Text),
    Column("tariff_code", Text),
    Column("valid_from", Date),
    Column("valid_to", Date),
    Column("length_cm", Text),
    Column("width_cm", Text),
    Column("height_cm", Text),
    Column("returnable", Boolean),
    Index(None, "sheet"),
    # The sheet stands second so that one number is found without walking through every older sheet.
    Index(None, "supplier_key", "sheet"),
    Index(None, "maker_number_key", "sheet"),
)

PRICE_BREAKS = Table(
    "price_breaks",
    METADATA,
    Column("offer", Integer, ForeignKey(OFFERS.c.offer, ondelete="CASCADE"), primary_key=True),
    Column("from_quantity", BigInteger, primary_key=True),
    Column("price", Exact(), nullable=False),
)
