"""Tables of the work: jobs, frozen quotes, answers, purchase orders, receipts, and the ledger of deeds."""

from sqlalchemy import (
    CheckConstraint,
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    Table,
    Text,
    UniqueConstraint,
)

from .exact import RATE_PLACES, Exact, Moment
from .metadata import METADATA

JOBS = Table(
    "jobs",
    METADATA,
    Column("number", Text, primary_key=True),
    Column("year", Integer, nullable=False),
    Column("serial", Integer, nullable=False),
    Column("body", Text, nullable=False),
    UniqueConstraint("year", "serial"),
)

QUOTE_REVISIONS = Table(
    "quote_revisions",
    METADATA,
    Column("job", Text, ForeignKey(JOBS.c.number), primary_key=True),
    Column("revision", Integer, primary_key=True, autoincrement=False),
    Column("body", Text, nullable=False),
    Column("paper", Text, nullable=False),
    Column("sha256", Text, nullable=False),
    Column("made_at", Moment, nullable=False),
    Column("made_by", Text, nullable=False),
)

APPROVALS = Table(
    "approvals",
    METADATA,
    Column("approval", Integer, primary_key=True),
    Column("job", Text, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("label", Text, nullable=False),
    Column("answer", Text, nullable=False),
    Column("amount", Exact(), nullable=False),
    Column("currency", Text, nullable=False),
    Column("who", Text, nullable=False),
    Column("how", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Column("taken_by", Text, nullable=False),
    Column("contact", Text, nullable=False),
    Column("words", Text, nullable=False),
    Column("extra", Exact()),
    Column("total_after", Exact()),
    # 'yes' while it holds. What stands on an order or a bill points at it with 'yes', so the database lets no answer be
    # taken back that goods were ordered on, and no goods be ordered on an answer that was taken back.
    Column("holds", Text, nullable=False, server_default="yes"),
    CheckConstraint("answer IN ('approved', 'declined')", name="ck_approvals_answer"),
    ForeignKeyConstraint(["job", "revision"], [QUOTE_REVISIONS.c.job, QUOTE_REVISIONS.c.revision]),
    # What an order line points at: this answer, of this job.
    UniqueConstraint("approval", "answer", "job"),
    Index("ux_approvals_holds", "approval", "answer", "job", "holds", unique=True),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

PURCHASE_ORDERS = Table(
    "purchase_orders",
    METADATA,
    Column("number", Text, primary_key=True),
    Column("year", Integer, nullable=False),
    Column("serial", Integer, nullable=False),
    Column("supplier", Text, nullable=False),
    Column("placed_at", Moment, nullable=False),
    Column("body", Text, nullable=False),
    UniqueConstraint("year", "serial"),
)

PURCHASE_ORDER_LINES = Table(
    "purchase_order_lines",
    METADATA,
    Column("order", Text, ForeignKey(PURCHASE_ORDERS.c.number), primary_key=True),
    Column("line", Integer, primary_key=True, autoincrement=False),
    Column("job", Text, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("label", Text, nullable=False),
    Column("approval", Integer),
    Column("answer", Text),
    Column("holds", Text),
    Column("cancelled", Text, nullable=False, server_default="no"),
    # Together these two let no line in that the job's customer did not approve, whoever writes to the database.
    # Revision and label are not part of it: a yes to the same line of an earlier revision holds for a later one.
    # A line that was cancelled lets go of the answer.
    CheckConstraint(
        "(cancelled = 'no' AND approval IS NOT NULL AND answer IS NOT NULL AND answer = 'approved' "
        "AND holds IS NOT NULL AND holds = 'yes') OR (cancelled = 'yes' AND approval IS NULL)",
        name="ck_purchase_order_lines_answer",
    ),
    ForeignKeyConstraint(
        ["approval", "answer", "job", "holds"],
        [APPROVALS.c.approval, APPROVALS.c.answer, APPROVALS.c.job, APPROVALS.c.holds],
    ),
    UniqueConstraint("order", "job", "revision", "label"),
    Index("ux_purchase_order_lines_cancelled", "order", "line", "cancelled", unique=True),
    Index(None, "job"),
)

RECEIPTS = Table(
    "receipts",
    METADATA,
    Column("receipt", Integer, primary_key=True),
    Column("order", Text, ForeignKey(PURCHASE_ORDERS.c.number), nullable=False),
    Column("paper", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Column("received_by", Text, nullable=False),
    Column("freight", Exact(), nullable=False),
    Column("currency", Text, nullable=False),
    Column("rate", Exact(RATE_PLACES), nullable=False),
    Column("body", Text, nullable=False),
    UniqueConstraint("order", "paper"),
    sqlite_autoincrement=True,
)

DEEDS = Table(
    "deeds",
    METADATA,
    Column("deed", Integer, primary_key=True),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    # Named apart from the table's own number: the words of what was done.
    Column("done", Text, nullable=False),
    Column("subject", Text, nullable=False),
    Column("detail", Text, nullable=False),
    Index(None, "subject"),
    sqlite_autoincrement=True,
)
