"""Tables of what follows a quote and an order: sendings, decisions, promises, changes, goods back, deposits, bills."""

from sqlalchemy import CheckConstraint, Column, ForeignKey, ForeignKeyConstraint, Index, Integer, Table, Text

from .exact import Exact, Moment
from .job_tables import APPROVALS, JOBS, PURCHASE_ORDER_LINES, PURCHASE_ORDERS, QUOTE_REVISIONS, RECEIPTS
from .metadata import METADATA

QUOTE_SENDINGS = Table(
    "quote_sendings",
    METADATA,
    Column("sending", Integer, primary_key=True),
    Column("job", Text, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    Column("how", Text, nullable=False),
    Column("sent_to", Text, nullable=False),
    ForeignKeyConstraint(["job", "revision"], [QUOTE_REVISIONS.c.job, QUOTE_REVISIONS.c.revision]),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

WITHDRAWALS = Table(
    "withdrawals",
    METADATA,
    # One answer is taken back once, whoever writes to the database.
    Column("approval", Integer, ForeignKey(APPROVALS.c.approval), primary_key=True, autoincrement=False),
    Column("job", Text, nullable=False),
    Column("body", Text, nullable=False),
    Index(None, "job"),
)

DECISIONS = Table(
    "decisions",
    METADATA,
    Column("decision", Integer, primary_key=True),
    Column("job", Text, ForeignKey(JOBS.c.number), nullable=False),
    Column("label", Text, nullable=False),
    Column("body", Text, nullable=False),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

PROMISES = Table(
    "promises",
    METADATA,
    Column("promise", Integer, primary_key=True),
    Column("job", Text, nullable=False),
    Column("order", Text, nullable=False),
    Column("body", Text, nullable=False),
    Index(None, "job"),
    Index(None, "order"),
    sqlite_autoincrement=True,
)

ORDER_EVENTS = Table(
    "order_events",
    METADATA,
    Column("event", Integer, primary_key=True),
    Column("order", Text, ForeignKey(PURCHASE_ORDERS.c.number), nullable=False),
    Column("what", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Column("body", Text, nullable=False),
    CheckConstraint("what IN ('confirmed', 'changed', 'cancelled')", name="ck_order_events_what"),
    Index(None, "order"),
    sqlite_autoincrement=True,
)

RECEIPT_LINES = Table(
    "receipt_lines",
    METADATA,
    Column("receipt", Integer, ForeignKey(RECEIPTS.c.receipt), primary_key=True, autoincrement=False),
    Column("order", Text, nullable=False),
    Column("line", Integer, primary_key=True, autoincrement=False),
    Column("pieces", Integer, nullable=False),
    Column("cancelled", Text, nullable=False, server_default="no"),
    # Goods are received only against a line that stands on an order, and such a line stands on a yes.
    CheckConstraint("pieces > 0", name="ck_receipt_lines_pieces"),
    CheckConstraint("cancelled = 'no'", name="ck_receipt_lines_cancelled"),
    ForeignKeyConstraint(
        ["order", "line", "cancelled"],
        [PURCHASE_ORDER_LINES.c.order, PURCHASE_ORDER_LINES.c.line, PURCHASE_ORDER_LINES.c.cancelled],
    ),
    Index(None, "order", "line"),
)

GOODS_BACK = Table(
    "goods_back",
    METADATA,
    Column("step", Integer, primary_key=True),
    Column("order", Text, nullable=False),
    Column("line", Integer, nullable=False),
    Column("body", Text, nullable=False),
    ForeignKeyConstraint(["order", "line"], [PURCHASE_ORDER_LINES.c.order, PURCHASE_ORDER_LINES.c.line]),
    Index(None, "order"),
    sqlite_autoincrement=True,
)

DEPOSITS = Table(
    "deposits",
    METADATA,
    Column("deposit", Integer, primary_key=True),
    Column("job", Text, ForeignKey(JOBS.c.number), nullable=False),
    Column("at", Moment, nullable=False),
    Column("amount", Exact(), nullable=False),
    Column("currency", Text, nullable=False),
    Column("body", Text, nullable=False),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

GIVEN_AWAY = Table(
    "given_away",
    METADATA,
    Column("given", Integer, primary_key=True),
    Column("job", Text, ForeignKey(JOBS.c.number), nullable=False),
    Column("at", Moment, nullable=False),
    Column("cost", Exact(), nullable=False),
    Column("currency", Text, nullable=False),
    Column("body", Text, nullable=False),
    # What cost nothing leaks nothing, and a cost below zero would be a gain.
    CheckConstraint("cost > 0", name="ck_given_away_cost"),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

BILLS = Table(
    "bills",
    METADATA,
    # A job is billed once.
    Column("job", Text, ForeignKey(JOBS.c.number), primary_key=True),
    Column("number", Text, nullable=False, unique=True),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    Column("body", Text, nullable=False),
    Column("paper", Text, nullable=False),
    Column("sha256", Text, nullable=False),
)

BILL_LINES = Table(
    "bill_lines",
    METADATA,
    Column("job", Text, ForeignKey(BILLS.c.job), primary_key=True),
    Column("label", Text, primary_key=True),
    Column("approval", Integer, nullable=False),
    Column("answer", Text, nullable=False),
    Column("holds", Text, nullable=False),
    # As for an order: nothing is billed that the customer did not approve.
    CheckConstraint("answer = 'approved' AND holds = 'yes'", name="ck_bill_lines_answer"),
    ForeignKeyConstraint(
        ["approval", "answer", "job", "holds"],
        [APPROVALS.c.approval, APPROVALS.c.answer, APPROVALS.c.job, APPROVALS.c.holds],
    ),
)
