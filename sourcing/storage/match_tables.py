"""Tables of judging what is alike: candidates, answers, look-ups of parts, what suppliers put around numbers."""

from sqlalchemy import Boolean, CheckConstraint, Column, Date, Double, ForeignKey, Index, Integer, Table, Text
from sqlalchemy import UniqueConstraint as Unique

from .exact import Moment
from .metadata import METADATA
from .sheet_tables import OFFERS, SHEETS
from .shop_tables import STATEMENTS

LOOKED_THROUGH = Table(
    "looked_through",
    METADATA,
    Column("sheet", Integer, ForeignKey(SHEETS.c.sheet, ondelete="CASCADE"), primary_key=True, autoincrement=False),
    Column("automatic", Integer, nullable=False),
    Column("with_candidates", Integer, nullable=False),
    Column("like_none", Integer, nullable=False),
    Column("at", Moment, nullable=False),
)

CANDIDATES = Table(
    "candidates",
    METADATA,
    Column("candidate", Integer, primary_key=True),
    Column("sheet", Integer, ForeignKey(SHEETS.c.sheet, ondelete="CASCADE"), nullable=False),
    Column("offer", Integer, ForeignKey(OFFERS.c.offer, ondelete="CASCADE"), nullable=False),
    Column("part", Text, nullable=False),
    Column("score", Double, nullable=False),
    Column("rank", Integer, nullable=False),
    Column("against", Boolean, nullable=False),
    Column("reasons", Text, nullable=False),
    Column("facts", Text, nullable=False),
    Column("found_at", Moment, nullable=False),
    Unique("offer", "part"),
    Index(None, "sheet"),
    # A number once given stays taken: answers, and files somebody has taken along, name candidates by it.
    sqlite_autoincrement=True,
)

JUDGEMENTS = Table(
    "judgements",
    METADATA,
    Column("judgement", Integer, primary_key=True),
    # Neither the candidate nor the sheet is a key of another table: both may go, the answer stays.
    Column("candidate", Integer, nullable=False),
    Column("supplier", Text, nullable=False),
    Column("supplier_number", Text, nullable=False),
    Column("maker", Text, nullable=False),
    Column("maker_number", Text, nullable=False),
    Column("description", Text, nullable=False),
    Column("sheet", Integer, nullable=False),
    Column("sheet_date", Date, nullable=False),
    Column("part", Text, nullable=False),
    Column("answer", Text, nullable=False),
    Column("standing", Text, nullable=False),
    Column("statement", Integer, ForeignKey(STATEMENTS.c.statement)),
    Column("words", Text, nullable=False),
    Column("how", Text, nullable=False),
    Column("score", Double, nullable=False),
    Column("against", Boolean, nullable=False),
    Column("reasons", Text, nullable=False),
    Column("facts", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    Column("taken_back_at", Moment),
    Column("taken_back_by", Text, nullable=False),
    Column("taken_back_why", Text, nullable=False),
    CheckConstraint("answer IN ('yes', 'no')", name="ck_judgements_answer"),
    CheckConstraint("how IN ('alone', 'file', 'by score')", name="ck_judgements_how"),
    CheckConstraint(
        "(answer = 'no' AND standing = '') OR (answer = 'yes' AND standing IN ('unchecked', 'fitted'))",
        name="ck_judgements_standing",
    ),
    Index(None, "candidate"),
    sqlite_autoincrement=True,
)

PART_LOOKUPS = Table(
    "part_lookups",
    METADATA,
    Column("lookup", Integer, primary_key=True),
    Column("part", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Index(None, "part"),
)

NUMBER_RULES = Table(
    "number_rules",
    METADATA,
    Column("rule", Integer, primary_key=True),
    Column("supplier", Text, nullable=False),
    Column("kind", Text, nullable=False),
    Column("text", Text, nullable=False),
    Column("grounds", Text, nullable=False),
    Column("confirmed_at", Moment, nullable=False),
    Column("confirmed_by", Text, nullable=False),
    Column("withdrawn_at", Moment),
    Column("withdrawn_by", Text, nullable=False),
    Column("withdrawn_why", Text, nullable=False),
    CheckConstraint("kind IN ('prefix', 'suffix')", name="ck_number_rules_kind"),
    Index(None, "supplier"),
    sqlite_autoincrement=True,
)
