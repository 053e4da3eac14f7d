"""Tables of the shop's own word: settings, terms, exchange rates, our parts, the equivalence table and its history."""

from sqlalchemy import Boolean, CheckConstraint, Column, Date, ForeignKey, Index, Integer, Table, Text

from .exact import RATE_PLACES, Exact, Moment
from .metadata import METADATA

SHOP_SETTINGS = Table(
    "shop_settings",
    METADATA,
    Column("starts_on", Date, primary_key=True),
    Column("body", Text, nullable=False),
)

SUPPLIER_TERMS = Table(
    "supplier_terms",
    METADATA,
    Column("supplier", Text, primary_key=True),
    Column("starts_on", Date, primary_key=True),
    Column("body", Text, nullable=False),
)

EXCHANGE_RATES = Table(
    "exchange_rates",
    METADATA,
    Column("currency", Text, primary_key=True),
    Column("into", Text, primary_key=True),
    Column("dated", Date, primary_key=True),
    Column("rate", Exact(RATE_PLACES), nullable=False),
    Column("source", Text, nullable=False),
)

OUR_PARTS = Table(
    "our_parts",
    METADATA,
    Column("code", Text, primary_key=True),
    Column("position", Integer, nullable=False),
    Column("name", Text, nullable=False),
    Column("size", Text, nullable=False),
    Column("category", Text, nullable=False),
    Column("note", Text, nullable=False),
    # Defaults stand here as in the migration that added the columns to tables with rows in them.
    Column("asked", Text, nullable=False, server_default="{}"),
)

STATEMENTS = Table(
    "statements",
    METADATA,
    Column("statement", Integer, primary_key=True),
    Column("position", Integer, nullable=False),
    Column("left_printed", Text, nullable=False),
    Column("left_maker", Text, nullable=False),
    Column("relation", Text, nullable=False),
    Column("right_printed", Text, nullable=False),
    Column("right_maker", Text, nullable=False),
    Column("standing", Text, nullable=False),
    Column("source", Text, nullable=False),
    Column("stated_on", Date, nullable=False),
    Column("stated_by", Text, nullable=False),
    Column("condition", Text, nullable=False),
    Column("count", Integer, nullable=False),
    Column("row", Integer),
    Column("withdrawn", Boolean, nullable=False),
    Column("machine", Text, nullable=False, server_default=""),
    Column("serial_from", Text, nullable=False, server_default=""),
    Column("serial_to", Text, nullable=False, server_default=""),
    Column("doubt", Text, nullable=False, server_default=""),
    # Made from the printed numbers by `number_key` whenever a row is written.
    Column("left_key", Text, nullable=False, server_default=""),
    Column("right_key", Text, nullable=False, server_default=""),
    CheckConstraint(
        "relation IN ('same part', 'superseded by', 'substitute', 'kit contains', 'must not')",
        name="ck_statements_relation",
    ),
    CheckConstraint("standing IN ('fitted', 'maker', 'supplier', 'unchecked')", name="ck_statements_standing"),
    Index(None, "left_key"),
    Index(None, "right_key"),
    sqlite_autoincrement=True,
)

STATEMENT_EVENTS = Table(
    "statement_events",
    METADATA,
    Column("event", Integer, primary_key=True),
    Column("statement", Integer, ForeignKey(STATEMENTS.c.statement), nullable=False),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    Column("what", Text, nullable=False),
    Column("reason", Text, nullable=False),
    Column("file", Text, nullable=False),
    Column("was", Text),
    CheckConstraint(
        "what IN ('stated', 'doubted', 'doubt answered', 'withdrawn', 'restored', 'standing changed', 'changed', "
        "'replaced')",
        name="ck_statement_events_what",
    ),
    Index(None, "statement"),
    sqlite_autoincrement=True,
)

MAKER_ALIASES = Table(
    "maker_aliases",
    METADATA,
    # One name stands for one maker, whoever writes to the database.
    Column("alias_key", Text, primary_key=True),
    Column("alias", Text, nullable=False),
    Column("maker", Text, nullable=False),
    Column("position", Integer, nullable=False),
)
