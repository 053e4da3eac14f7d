"""Tables of the counter: people and their log-ins, keys, forms that were sent, customers' links, signatures, photos."""

from sqlalchemy import (
    CheckConstraint,
    Column,
    ForeignKey,
    ForeignKeyConstraint,
    Index,
    Integer,
    LargeBinary,
    Table,
    Text,
)

from .exact import Moment
from .job_tables import JOBS, QUOTE_REVISIONS
from .metadata import METADATA

PEOPLE = Table(
    "people",
    METADATA,
    Column("person", Integer, primary_key=True),
    Column("name", Text, nullable=False),
    # The name without case and doubled spaces: two people are never told apart by a capital.
    Column("name_key", Text, nullable=False, unique=True),
    Column("role", Text, nullable=False),
    Column("password", Text, nullable=False),
    Column("since", Moment, nullable=False),
    Column("let_go", Moment),
    CheckConstraint("role IN ('technician', 'clerk', 'owner')", name="ck_people_role"),
    sqlite_autoincrement=True,
)

LOG_INS = Table(
    "log_ins",
    METADATA,
    Column("secret_sha256", Text, primary_key=True),
    Column("person", Integer, ForeignKey(PEOPLE.c.person), nullable=False),
    Column("at", Moment, nullable=False),
    Column("seen", Moment, nullable=False),
    Index(None, "person"),
)

COUNTER_KEYS = Table(
    "counter_keys",
    METADATA,
    Column("name", Text, primary_key=True),
    Column("value", Text, nullable=False),
)

FORMS_SENT = Table(
    "forms_sent",
    METADATA,
    Column("form", Text, primary_key=True),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    # Blank while the deed is being done; then the page to show, also to whoever sends the same form again.
    Column("shown", Text, nullable=False),
)

CUSTOMER_LINKS = Table(
    "customer_links",
    METADATA,
    Column("link", Integer, primary_key=True),
    Column("secret_sha256", Text, nullable=False, unique=True),
    Column("job", Text, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("made_at", Moment, nullable=False),
    Column("made_by", Text, nullable=False),
    Column("until", Moment, nullable=False),
    Column("revoked_at", Moment),
    Column("revoked_by", Text, nullable=False),
    Column("answered_at", Moment),
    ForeignKeyConstraint(["job", "revision"], [QUOTE_REVISIONS.c.job, QUOTE_REVISIONS.c.revision]),
    Index(None, "job"),
    sqlite_autoincrement=True,
)

SIGNATURES = Table(
    "signatures",
    METADATA,
    # One link is answered and signed once, whoever writes to the database.
    Column("link", Integer, ForeignKey(CUSTOMER_LINKS.c.link), primary_key=True, autoincrement=False),
    Column("job", Text, nullable=False),
    Column("revision", Integer, nullable=False),
    Column("at", Moment, nullable=False),
    Column("name", Text, nullable=False),
    Column("drawing", LargeBinary, nullable=False),
    Index(None, "job"),
)

PHOTOS = Table(
    "photos",
    METADATA,
    Column("photo", Integer, primary_key=True),
    Column("job", Text, ForeignKey(JOBS.c.number), nullable=False),
    Column("label", Text, nullable=False),
    Column("caption", Text, nullable=False),
    Column("at", Moment, nullable=False),
    Column("who", Text, nullable=False),
    Column("width", Integer, nullable=False),
    Column("height", Integer, nullable=False),
    Column("taken_out_at", Moment),
    Column("jpeg", LargeBinary, nullable=False),
    Index(None, "job"),
    sqlite_autoincrement=True,
)
