"""The counter: people and their log-ins, keys, forms that were sent, customers' links, signatures, photos.

Written out in full and never changed.
"""

from alembic import op
from sqlalchemy import (
    CheckConstraint,
    Column,
    ForeignKeyConstraint,
    Integer,
    LargeBinary,
    PrimaryKeyConstraint,
    Text,
    UniqueConstraint,
)

revision = "0010"
down_revision = "0009"

TABLES = ("photos", "signatures", "customer_links", "forms_sent", "counter_keys", "log_ins", "people")


def upgrade() -> None:
    """Add the tables; nothing of the kind was kept before."""
    _people()
    _links()
    op.create_table(
        "photos",
        Column("photo", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("job", "label", "caption", "at", "who")),
        *(Column(name, Integer(), nullable=False) for name in ("width", "height")),
        Column("taken_out_at", Text()),
        Column("jpeg", LargeBinary(), nullable=False),
        PrimaryKeyConstraint("photo", name="pk_photos"),
        ForeignKeyConstraint(["job"], ["jobs.number"], name="fk_photos_job"),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_photos_job", "photos", ["job"])


def _people() -> None:
    op.create_table(
        "people",
        Column("person", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("name", "name_key", "role", "password", "since")),
        Column("let_go", Text()),
        PrimaryKeyConstraint("person", name="pk_people"),
        UniqueConstraint("name_key", name="uq_people_name_key"),
        CheckConstraint("role IN ('technician', 'clerk', 'owner')", name="ck_people_role"),
        sqlite_autoincrement=True,
    )
    op.create_table(
        "log_ins",
        Column("secret_sha256", Text(), nullable=False),
        Column("person", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("at", "seen")),
        PrimaryKeyConstraint("secret_sha256", name="pk_log_ins"),
        ForeignKeyConstraint(["person"], ["people.person"], name="fk_log_ins_person"),
    )
    op.create_index("ix_log_ins_person", "log_ins", ["person"])
    op.create_table(
        "counter_keys",
        *(Column(name, Text(), nullable=False) for name in ("name", "value")),
        PrimaryKeyConstraint("name", name="pk_counter_keys"),
    )
    op.create_table(
        "forms_sent",
        *(Column(name, Text(), nullable=False) for name in ("form", "at", "who", "shown")),
        PrimaryKeyConstraint("form", name="pk_forms_sent"),
    )


def _links() -> None:
    op.create_table(
        "customer_links",
        Column("link", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("secret_sha256", "job")),
        Column("revision", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("made_at", "made_by", "until")),
        Column("revoked_at", Text()),
        Column("revoked_by", Text(), nullable=False),
        Column("answered_at", Text()),
        PrimaryKeyConstraint("link", name="pk_customer_links"),
        UniqueConstraint("secret_sha256", name="uq_customer_links_secret_sha256"),
        ForeignKeyConstraint(
            ["job", "revision"],
            ["quote_revisions.job", "quote_revisions.revision"],
            name="fk_customer_links_job_revision",
        ),
        sqlite_autoincrement=True,
    )
    op.create_index("ix_customer_links_job", "customer_links", ["job"])
    op.create_table(
        "signatures",
        Column("link", Integer(), nullable=False),
        Column("job", Text(), nullable=False),
        Column("revision", Integer(), nullable=False),
        *(Column(name, Text(), nullable=False) for name in ("at", "name")),
        Column("drawing", LargeBinary(), nullable=False),
        PrimaryKeyConstraint("link", name="pk_signatures"),
        ForeignKeyConstraint(["link"], ["customer_links.link"], name="fk_signatures_link"),
    )
    op.create_index("ix_signatures_job", "signatures", ["job"])


def downgrade() -> None:
    """Take the tables away, with the people, links, signatures and photos in them."""
    for name in TABLES:
        op.drop_table(name)
