"""Jobs, quotes, answers, purchase orders, receipts and the ledger.

Written out in full and never changed: the tables in code go on, this step stays what it was.
"""

from alembic import op
from sqlalchemy import (
    BigInteger,
    CheckConstraint,
    Column,
    ForeignKeyConstraint,
    Integer,
    PrimaryKeyConstraint,
    Text,
    UniqueConstraint,
)

revision = "0002"
down_revision = "0001"


def upgrade() -> None:
    """Make the tables."""
    _jobs()
    _quote_revisions()
    _approvals()
    _purchase_orders()
    _purchase_order_lines()
    _receipts()
    _deeds()


def downgrade() -> None:
    """Take them away again, with all that is in them."""
    op.drop_table("deeds")
    op.drop_table("receipts")
    op.drop_table("purchase_order_lines")
    op.drop_table("purchase_orders")
    op.drop_table("approvals")
    op.drop_table("quote_revisions")
    op.drop_table("jobs")


def _jobs() -> None:
    op.create_table(
        "jobs",
        Column("number", Text(), nullable=False),
        Column("year", Integer(), nullable=False),
        Column("serial", Integer(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("number", name="pk_jobs"),
        UniqueConstraint("year", "serial", name="uq_jobs_year_serial"),
    )


def _quote_revisions() -> None:
    op.create_table(
        "quote_revisions",
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), autoincrement=False, nullable=False),
        Column("body", Text(), nullable=False),
        Column("paper", Text(), nullable=False),
        Column("sha256", Text(), nullable=False),
        Column("made_at", Text(), nullable=False),
        Column("made_by", Text(), nullable=False),
        PrimaryKeyConstraint("job", "revision", name="pk_quote_revisions"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_quote_revisions_job"),
    )


def _approvals() -> None:
    op.create_table(
        "approvals",
        Column("approval", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), nullable=False),
        Column("label", Text(), nullable=False),
        Column("answer", Text(), nullable=False),
        Column("amount", BigInteger(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("how", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("taken_by", Text(), nullable=False),
        Column("contact", Text(), nullable=False),
        Column("words", Text(), nullable=False),
        PrimaryKeyConstraint("approval", name="pk_approvals"),
        UniqueConstraint("approval", "answer", "job", name="uq_approvals_approval_answer_job"),
        CheckConstraint("answer IN ('approved', 'declined')", name="ck_approvals_answer"),
        ForeignKeyConstraint(
            ["job", "revision"], ["quote_revisions.job", "quote_revisions.revision"], name="fk_approvals_job_revision"
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_approvals_job", "approvals", ["job"])


def _purchase_orders() -> None:
    op.create_table(
        "purchase_orders",
        Column("number", Text(), nullable=False),
        Column("year", Integer(), nullable=False),
        Column("serial", Integer(), nullable=False),
        Column("supplier", Text(), nullable=False),
        Column("placed_at", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("number", name="pk_purchase_orders"),
        UniqueConstraint("year", "serial", name="uq_purchase_orders_year_serial"),
    )


def _purchase_order_lines() -> None:
    op.create_table(
        "purchase_order_lines",
        Column("order", Text(), nullable=False),
        Column("line", Integer(), autoincrement=False, nullable=False),
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), nullable=False),
        Column("label", Text(), nullable=False),
        Column("approval", Integer(), nullable=False),
        Column("answer", Text(), nullable=False),
        PrimaryKeyConstraint("order", "line", name="pk_purchase_order_lines"),
        UniqueConstraint("order", "job", "revision", "label", name="uq_purchase_order_lines_order_job_revision_label"),
        CheckConstraint("answer = 'approved'", name="ck_purchase_order_lines_answer"),
        ForeignKeyConstraint(
            ["approval", "answer", "job"],
            ["approvals.approval", "approvals.answer", "approvals.job"],
            name="fk_purchase_order_lines_approval_answer_job",
        ),
        ForeignKeyConstraint(["order"], ["purchase_orders.number"], name="fk_purchase_order_lines_order"),
    )
    op.create_index("ix_purchase_order_lines_job", "purchase_order_lines", ["job"])


def _receipts() -> None:
    op.create_table(
        "receipts",
        Column("receipt", Integer(), nullable=False),
        Column("order", Text(), nullable=False),
        Column("paper", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("received_by", Text(), nullable=False),
        Column("freight", BigInteger(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("rate", BigInteger(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("receipt", name="pk_receipts"),
        UniqueConstraint("order", "paper", name="uq_receipts_order_paper"),
        ForeignKeyConstraint(["order"], ["purchase_orders.number"], name="fk_receipts_order"),
        sqlite_autoincrement=True,
    )


def _deeds() -> None:
    op.create_table(
        "deeds",
        Column("deed", Integer(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("done", Text(), nullable=False),
        Column("subject", Text(), nullable=False),
        Column("detail", Text(), nullable=False),
        PrimaryKeyConstraint("deed", name="pk_deeds"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_deeds_subject", "deeds", ["subject"])
