"""What follows a quote and an order: sendings, answers taken back, decisions, promises, changes, goods back, bills.

Written out in full and never changed. Answers get a word whether they still hold; the lines of orders point at it, so
their table is made anew and filled with what was in it. Lines of receipts are read out of the receipts there are.
"""

import json

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
    text,
)

revision = "0008"
down_revision = "0007"

OLD_LINE = ("order", "line", "job", "revision", "label", "approval", "answer")


def upgrade() -> None:
    """Add, make and fill; the answers there are hold unless a later one to the same line took their place."""
    op.add_column("approvals", Column("extra", BigInteger()))
    op.add_column("approvals", Column("total_after", BigInteger()))
    op.add_column("approvals", Column("holds", Text(), nullable=False, server_default="yes"))
    op.create_index("ux_approvals_holds", "approvals", ["approval", "answer", "job", "holds"], unique=True)
    rows = _all("purchase_order_lines", OLD_LINE)
    op.drop_index("ix_purchase_order_lines_job", "purchase_order_lines")
    op.drop_table("purchase_order_lines")
    _purchase_order_lines()
    _put("purchase_order_lines", [{**row, "holds": "yes", "cancelled": "no"} for row in rows])
    op.get_bind().execute(
        text(
            "UPDATE approvals SET holds = 'replaced' WHERE EXISTS (SELECT 1 FROM approvals AS later WHERE "
            "later.job = approvals.job AND later.revision = approvals.revision AND later.label = approvals.label AND "
            "later.approval > approvals.approval) AND NOT EXISTS (SELECT 1 FROM purchase_order_lines AS bought WHERE "
            "bought.approval = approvals.approval)"
        )
    )
    _of_answers()
    _of_orders()
    _receipt_lines()
    _deposits()
    _bills()


def downgrade() -> None:
    """Take it all away again, with what is in it; lines of orders that were cancelled go with it."""
    for name in ("bill_lines", "bills", "deposits", "goods_back", "receipt_lines", "order_events", "promises"):
        op.drop_table(name)
    for name in ("decisions", "withdrawals", "quote_sendings"):
        op.drop_table(name)
    rows = [row for row in _all("purchase_order_lines", (*OLD_LINE, "cancelled")) if row.pop("cancelled") == "no"]
    op.drop_index("ux_purchase_order_lines_cancelled", "purchase_order_lines")
    op.drop_index("ix_purchase_order_lines_job", "purchase_order_lines")
    op.drop_table("purchase_order_lines")
    _purchase_order_lines_before()
    _put("purchase_order_lines", rows)
    op.drop_index("ux_approvals_holds", "approvals")
    for name in ("holds", "total_after", "extra"):
        op.drop_column("approvals", name)


def _all(table: str, columns: tuple[str, ...]) -> list[dict[str, object]]:
    named = ", ".join(f'"{name}"' for name in columns)
    return [dict(row) for row in op.get_bind().execute(text(f'SELECT {named} FROM "{table}"')).mappings()]


def _put(table: str, rows: list[dict[str, object]]) -> None:
    if rows:
        named, marks = (", ".join(form % name for name in rows[0]) for form in ('"%s"', ":%s"))
        op.get_bind().execute(text(f'INSERT INTO "{table}" ({named}) VALUES ({marks})'), rows)


def _purchase_order_lines() -> None:
    op.create_table(
        "purchase_order_lines",
        Column("order", Text(), nullable=False),
        Column("line", Integer(), autoincrement=False, nullable=False),
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), nullable=False),
        Column("label", Text(), nullable=False),
        Column("approval", Integer()),
        Column("answer", Text()),
        Column("holds", Text()),
        Column("cancelled", Text(), nullable=False, server_default="no"),
        PrimaryKeyConstraint("order", "line", name="pk_purchase_order_lines"),
        UniqueConstraint("order", "job", "revision", "label", name="uq_purchase_order_lines_order_job_revision_label"),
        CheckConstraint(
            "(cancelled = 'no' AND approval IS NOT NULL AND answer IS NOT NULL AND answer = 'approved' "
            "AND holds IS NOT NULL AND holds = 'yes') OR (cancelled = 'yes' AND approval IS NULL)",
            name="ck_purchase_order_lines_answer",
        ),
        ForeignKeyConstraint(
            ["approval", "answer", "job", "holds"],
            ["approvals.approval", "approvals.answer", "approvals.job", "approvals.holds"],
            name="fk_purchase_order_lines_approval_answer_job_holds",
        ),
        ForeignKeyConstraint(["order"], ["purchase_orders.number"], name="fk_purchase_order_lines_order"),
    )
    op.create_index("ix_purchase_order_lines_job", "purchase_order_lines", ["job"])
    op.create_index(
        "ux_purchase_order_lines_cancelled", "purchase_order_lines", ["order", "line", "cancelled"], unique=True
    )


def _purchase_order_lines_before() -> None:
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


def _of_answers() -> None:
    op.create_table(
        "quote_sendings",
        Column("sending", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("how", Text(), nullable=False),
        Column("sent_to", Text(), nullable=False),
        PrimaryKeyConstraint("sending", name="pk_quote_sendings"),
        ForeignKeyConstraint(
            ["job", "revision"],
            ["quote_revisions.job", "quote_revisions.revision"],
            name="fk_quote_sendings_job_revision",
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_quote_sendings_job", "quote_sendings", ["job"])
    op.create_table(
        "withdrawals",
        Column("approval", Integer(), autoincrement=False, nullable=False),
        Column("job", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("approval", name="pk_withdrawals"),
        ForeignKeyConstraint(["approval"], ["approvals.approval"], name="fk_withdrawals_approval"),
    )
    op.create_index("ix_withdrawals_job", "withdrawals", ["job"])
    op.create_table(
        "decisions",
        Column("decision", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("label", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("decision", name="pk_decisions"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_decisions_job"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_decisions_job", "decisions", ["job"])


def _of_orders() -> None:
    op.create_table(
        "promises",
        Column("promise", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("order", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("promise", name="pk_promises"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_promises_job", "promises", ["job"])
    op.create_index("ix_promises_order", "promises", ["order"])
    op.create_table(
        "order_events",
        Column("event", Integer(), nullable=False),
        Column("order", Text(), nullable=False),
        Column("what", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("event", name="pk_order_events"),
        CheckConstraint("what IN ('confirmed', 'changed', 'cancelled')", name="ck_order_events_what"),
        ForeignKeyConstraint(["order"], ["purchase_orders.number"], name="fk_order_events_order"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_order_events_order", "order_events", ["order"])
    op.create_table(
        "goods_back",
        Column("step", Integer(), nullable=False),
        Column("order", Text(), nullable=False),
        Column("line", Integer(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("step", name="pk_goods_back"),
        ForeignKeyConstraint(
            ["order", "line"],
            ["purchase_order_lines.order", "purchase_order_lines.line"],
            name="fk_goods_back_order_line",
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_goods_back_order", "goods_back", ["order"])


def _receipt_lines() -> None:
    op.create_table(
        "receipt_lines",
        Column("receipt", Integer(), autoincrement=False, nullable=False),
        Column("order", Text(), nullable=False),
        Column("line", Integer(), autoincrement=False, nullable=False),
        Column("pieces", Integer(), nullable=False),
        Column("cancelled", Text(), nullable=False, server_default="no"),
        PrimaryKeyConstraint("receipt", "line", name="pk_receipt_lines"),
        CheckConstraint("pieces > 0", name="ck_receipt_lines_pieces"),
        CheckConstraint("cancelled = 'no'", name="ck_receipt_lines_cancelled"),
        ForeignKeyConstraint(["receipt"], ["receipts.receipt"], name="fk_receipt_lines_receipt"),
        ForeignKeyConstraint(
            ["order", "line", "cancelled"],
            ["purchase_order_lines.order", "purchase_order_lines.line", "purchase_order_lines.cancelled"],
            name="fk_receipt_lines_order_line_cancelled",
        ),
    )
    op.create_index("ix_receipt_lines_order_line", "receipt_lines", ["order", "line"])
    lines: list[dict[str, object]] = []
    for row in _all("receipts", ("receipt", "order", "body")):
        for line in json.loads(str(row["body"]))["lines"]:
            same = {"receipt": row["receipt"], "order": row["order"]}
            lines.append({**same, "line": line["line"], "pieces": line["quantity"], "cancelled": "no"})
    _put("receipt_lines", lines)


def _deposits() -> None:
    op.create_table(
        "deposits",
        Column("deposit", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("amount", BigInteger(), nullable=False),
        Column("currency", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        PrimaryKeyConstraint("deposit", name="pk_deposits"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_deposits_job"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_deposits_job", "deposits", ["job"])


def _bills() -> None:
    op.create_table(
        "bills",
        Column("job", Text(), nullable=False),
        Column("number", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("body", Text(), nullable=False),
        Column("paper", Text(), nullable=False),
        Column("sha256", Text(), nullable=False),
        PrimaryKeyConstraint("job", name="pk_bills"),
        UniqueConstraint("number", name="uq_bills_number"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_bills_job"),
    )
    op.create_table(
        "bill_lines",
        Column("job", Text(), nullable=False),
        Column("label", Text(), nullable=False),
        Column("approval", Integer(), nullable=False),
        Column("answer", Text(), nullable=False),
        Column("holds", Text(), nullable=False),
        PrimaryKeyConstraint("job", "label", name="pk_bill_lines"),
        CheckConstraint("answer = 'approved' AND holds = 'yes'", name="ck_bill_lines_answer"),
        ForeignKeyConstraint(["job"], ["bills.job"], name="fk_bill_lines_job"),
        ForeignKeyConstraint(
            ["approval", "answer", "job", "holds"],
            ["approvals.approval", "approvals.answer", "approvals.job", "approvals.holds"],
            name="fk_bill_lines_approval_answer_job_holds",
        ),
    )
