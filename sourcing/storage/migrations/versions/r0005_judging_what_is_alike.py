"""Candidates for a person, her answers, look-ups of parts, and what suppliers put around every number.

Written out in full and never changed: the tables in code go on, this step stays what it was. An older database has
no candidates: its sheets are looked through when somebody asks for them.
"""

from alembic import op
from sqlalchemy import (
    Boolean,
    CheckConstraint,
    Column,
    Date,
    Double,
    ForeignKeyConstraint,
    Integer,
    PrimaryKeyConstraint,
    Text,
    UniqueConstraint,
)

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Make the tables."""
    _looked_through()
    _candidates()
    _judgements()
    _part_lookups()
    _number_rules()


def downgrade() -> None:
    """Take them away again, with all that is in them."""
    op.drop_table("number_rules")
    op.drop_table("part_lookups")
    op.drop_table("judgements")
    op.drop_table("candidates")
    op.drop_table("looked_through")


def _looked_through() -> None:
    op.create_table(
        "looked_through",
        Column("sheet", Integer(), autoincrement=False, nullable=False),
        Column("automatic", Integer(), nullable=False),
        Column("with_candidates", Integer(), nullable=False),
        Column("like_none", Integer(), nullable=False),
        Column("at", Text(), nullable=False),
        PrimaryKeyConstraint("sheet", name="pk_looked_through"),
        ForeignKeyConstraint(["sheet"], ["sheets.sheet"], name="fk_looked_through_sheet", ondelete="CASCADE"),
    )


def _candidates() -> None:
    op.create_table(
        "candidates",
        Column("candidate", Integer(), nullable=False),
        Column("sheet", Integer(), nullable=False),
        Column("offer", Integer(), nullable=False),
        Column("part", Text(), nullable=False),
        Column("score", Double(), nullable=False),
        Column("rank", Integer(), nullable=False),
        Column("against", Boolean(), nullable=False),
        Column("reasons", Text(), nullable=False),
        Column("facts", Text(), nullable=False),
        Column("found_at", Text(), nullable=False),
        PrimaryKeyConstraint("candidate", name="pk_candidates"),
        ForeignKeyConstraint(["sheet"], ["sheets.sheet"], name="fk_candidates_sheet", ondelete="CASCADE"),
        ForeignKeyConstraint(["offer"], ["offers.offer"], name="fk_candidates_offer", ondelete="CASCADE"),
        UniqueConstraint("offer", "part", name="uq_candidates_offer_part"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_candidates_sheet", "candidates", ["sheet"])


def _judgements() -> None:
    op.create_table(
        "judgements",
        Column("judgement", Integer(), nullable=False),
        Column("candidate", Integer(), nullable=False),
        Column("supplier", Text(), nullable=False),
        Column("supplier_number", Text(), nullable=False),
        Column("maker", Text(), nullable=False),
        Column("maker_number", Text(), nullable=False),
        Column("description", Text(), nullable=False),
        Column("sheet", Integer(), nullable=False),
        Column("sheet_date", Date(), nullable=False),
        Column("part", Text(), nullable=False),
        Column("answer", Text(), nullable=False),
        Column("standing", Text(), nullable=False),
        Column("statement", Integer()),
        Column("words", Text(), nullable=False),
        Column("how", Text(), nullable=False),
        Column("score", Double(), nullable=False),
        Column("against", Boolean(), nullable=False),
        Column("reasons", Text(), nullable=False),
        Column("facts", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        Column("who", Text(), nullable=False),
        Column("taken_back_at", Text()),
        Column("taken_back_by", Text(), nullable=False),
        Column("taken_back_why", Text(), nullable=False),
        PrimaryKeyConstraint("judgement", name="pk_judgements"),
        CheckConstraint("answer IN ('yes', 'no')", name="ck_judgements_answer"),
        CheckConstraint("how IN ('alone', 'file', 'by score')", name="ck_judgements_how"),
        CheckConstraint(
            "(answer = 'no' AND standing = '') OR (answer = 'yes' AND standing IN ('unchecked', 'fitted'))",
            name="ck_judgements_standing",
        ),
        ForeignKeyConstraint(["statement"], ["statements.statement"], name="fk_judgements_statement"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_judgements_candidate", "judgements", ["candidate"])


def _part_lookups() -> None:
    op.create_table(
        "part_lookups",
        Column("lookup", Integer(), nullable=False),
        Column("part", Text(), nullable=False),
        Column("at", Text(), nullable=False),
        PrimaryKeyConstraint("lookup", name="pk_part_lookups"),
    )
    op.create_index("ix_part_lookups_part", "part_lookups", ["part"])


def _number_rules() -> None:
    op.create_table(
        "number_rules",
        Column("rule", Integer(), nullable=False),
        Column("supplier", Text(), nullable=False),
        Column("kind", Text(), nullable=False),
        Column("text", Text(), nullable=False),
        Column("grounds", Text(), nullable=False),
        Column("confirmed_at", Text(), nullable=False),
        Column("confirmed_by", Text(), nullable=False),
        Column("withdrawn_at", Text()),
        Column("withdrawn_by", Text(), nullable=False),
        Column("withdrawn_why", Text(), nullable=False),
        PrimaryKeyConstraint("rule", name="pk_number_rules"),
        CheckConstraint("kind IN ('prefix', 'suffix')", name="ck_number_rules_kind"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_number_rules_supplier", "number_rules", ["supplier"])
