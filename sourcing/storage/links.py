"""Customers' links, what was signed through them, and photos of jobs."""

from collections.abc import Collection, Mapping
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, Row, insert, select, update

from ..basics.person import CustomerLink, Photo, Signature
from .counter_tables import CUSTOMER_LINKS, PHOTOS, SIGNATURES

_LINK = [column for column in CUSTOMER_LINKS.c if column.name != "secret_sha256"]
_PHOTO = [column for column in PHOTOS.c if column.name != "jpeg"]


def add_link(connection: Connection, new: CustomerLink, secret_sha256: str) -> CustomerLink:
    """Keep a new link and give it its number."""
    row = {column.name: getattr(new, column.name) for column in _LINK if column.name != "link"}
    query = insert(CUSTOMER_LINKS).values({**row, "secret_sha256": secret_sha256}).returning(CUSTOMER_LINKS.c.link)
    return link(connection, int(connection.execute(query).scalar_one()))


def link(connection: Connection, number: int) -> CustomerLink:
    """The link of that number; it is there."""
    return _link(connection.execute(select(*_LINK).where(CUSTOMER_LINKS.c.link == number)).one())


def link_of_secret(connection: Connection, secret_sha256: str) -> CustomerLink | None:
    """The link with that secret."""
    row = connection.execute(select(*_LINK).where(CUSTOMER_LINKS.c.secret_sha256 == secret_sha256)).one_or_none()
    return _link(row) if row else None


def links(connection: Connection, job: str) -> list[CustomerLink]:
    """Every link there ever was to quotes of a job, oldest first."""
    query = select(*_LINK).where(CUSTOMER_LINKS.c.job == job).order_by(CUSTOMER_LINKS.c.link)
    return [_link(row) for row in connection.execute(query)]


def change_link(connection: Connection, number: int, **fields: object) -> None:
    """Note that a link was revoked or answered."""
    connection.execute(update(CUSTOMER_LINKS).where(CUSTOMER_LINKS.c.link == number).values(fields))


def add_signature(connection: Connection, new: Signature) -> None:
    """Keep how an answer was signed. The database refuses a second one for the same link."""
    connection.execute(insert(SIGNATURES).values({name: getattr(new, name) for name in new.__struct_fields__}))


def signatures(connection: Connection, job: str) -> list[Signature]:
    """Every signature on quotes of a job, oldest first."""
    query = select(SIGNATURES).where(SIGNATURES.c.job == job).order_by(SIGNATURES.c.link)
    return [Signature(**row._mapping) for row in connection.execute(query)]


def add_photo(connection: Connection, new: Photo, jpeg: bytes) -> Photo:
    """Keep a photo and give it its number."""
    row = {column.name: getattr(new, column.name) for column in _PHOTO if column.name != "photo"}
    number = connection.execute(insert(PHOTOS).values({**row, "jpeg": jpeg}).returning(PHOTOS.c.photo)).scalar_one()
    return Photo(**{**row, "photo": int(number)})


def photos(connection: Connection, job: str) -> list[Photo]:
    """The photos of a job, those taken out among them, oldest first."""
    query = select(*_PHOTO).where(PHOTOS.c.job == job).order_by(PHOTOS.c.photo)
    return [Photo(**row._mapping) for row in connection.execute(query)]


def photo_bytes(connection: Connection, number: int) -> tuple[Photo, bytes] | None:
    """A photo and its JPEG; None where there is none of that number."""
    row = connection.execute(select(PHOTOS).where(PHOTOS.c.photo == number)).one_or_none()
    if row is None:
        return None
    return Photo(**{column.name: row._mapping[column.name] for column in _PHOTO}), row.jpeg


def take_photos_out(connection: Connection, numbers: Collection[int], at: datetime | None) -> None:
    """Show photos no more; None: show them again."""
    connection.execute(update(PHOTOS).where(PHOTOS.c.photo.in_(numbers)).values(taken_out_at=at))


def label_photos(connection: Connection, job: str, now: Mapping[str, str]) -> None:
    """Say of which line the photos of a job are, by the label they had; a label that is not named stays."""
    for one in photos(connection, job):
        if now.get(one.label, one.label) != one.label:
            connection.execute(update(PHOTOS).where(PHOTOS.c.photo == one.photo).values(label=now[one.label]))


def _link(row: Row[Any]) -> CustomerLink:
    return CustomerLink(**row._mapping)
