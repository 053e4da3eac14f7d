"""People of the shop, their log-ins, the counter's keys, and which forms were sent: by secret hash, never by secret."""

from datetime import datetime

from sqlalchemy import Connection, delete, insert, select, update
from sqlalchemy.exc import IntegrityError

from ..basics.person import Person, Role
from .counter_tables import COUNTER_KEYS, FORMS_SENT, LOG_INS, PEOPLE

_PERSON = (PEOPLE.c.person, PEOPLE.c.name, PEOPLE.c.role, PEOPLE.c.since, PEOPLE.c.let_go)


def name_key(name: str) -> str:
    """The name as it is compared: without case and doubled spaces."""
    return " ".join(name.split()).casefold()


def people(connection: Connection) -> list[Person]:
    """Everybody there ever was, by name."""
    return [Person(**row._mapping) for row in connection.execute(select(*_PERSON).order_by(PEOPLE.c.name_key))]


def person_named(connection: Connection, name: str) -> tuple[Person, str] | None:
    """The person of that name and the hash of her password."""
    query = select(*_PERSON, PEOPLE.c.password).where(PEOPLE.c.name_key == name_key(name))
    row = connection.execute(query).one_or_none()
    return row and (Person(**{column.name: row._mapping[column.name] for column in _PERSON}), str(row.password))


def add_person(connection: Connection, name: str, role: Role, password: str, at: datetime) -> int | None:
    """Add somebody; None where the name is taken. `password` is its hash."""
    if person_named(connection, name):
        return None
    shown = " ".join(name.split())
    row = {"name": shown, "name_key": name_key(name), "role": role, "password": password, "since": at}
    return int(connection.execute(insert(PEOPLE).values(row).returning(PEOPLE.c.person)).scalar_one())


def change_person(connection: Connection, person: int, **fields: object) -> None:
    """Change role, password (its hash) or let_go of somebody."""
    connection.execute(update(PEOPLE).where(PEOPLE.c.person == person).values(fields))


def add_log_in(connection: Connection, secret_sha256: str, person: int, at: datetime) -> None:
    """Somebody is logged in from now on."""
    row = {"secret_sha256": secret_sha256, "person": person, "at": at, "seen": at}
    connection.execute(insert(LOG_INS).values(row))


def logged_in(connection: Connection, secret_sha256: str) -> tuple[Person, datetime] | None:
    """Who is logged in by that secret, and when she was last seen."""
    query = select(*_PERSON, LOG_INS.c.seen).join_from(LOG_INS, PEOPLE).where(LOG_INS.c.secret_sha256 == secret_sha256)
    row = connection.execute(query).one_or_none()
    return row and (Person(**{column.name: row._mapping[column.name] for column in _PERSON}), row.seen)


def seen(connection: Connection, secret_sha256: str, at: datetime) -> None:
    """Note that somebody is still there."""
    connection.execute(update(LOG_INS).where(LOG_INS.c.secret_sha256 == secret_sha256).values(seen=at))


def end_log_ins(connection: Connection, *, secret_sha256: str = "", person: int = 0, but: str = "") -> None:
    """End one log-in, or all of a person `but` one. Those of others stay."""
    which = LOG_INS.c.secret_sha256 == secret_sha256 if secret_sha256 else LOG_INS.c.person == person
    connection.execute(delete(LOG_INS).where(which, LOG_INS.c.secret_sha256 != but))


def counter_key(connection: Connection, name: str) -> str | None:
    """A key of the counter, None before it was made."""
    return connection.execute(select(COUNTER_KEYS.c.value).where(COUNTER_KEYS.c.name == name)).scalar_one_or_none()


def add_counter_key(connection: Connection, name: str, value: str) -> None:
    """Keep a new key."""
    connection.execute(insert(COUNTER_KEYS).values(name=name, value=value))


def begin_form(connection: Connection, form: str, who: str, at: datetime) -> str | None:
    """Take a form in hand: None where it is new, else the page it led to (blank: it is being done)."""
    shown = connection.execute(select(FORMS_SENT.c.shown).where(FORMS_SENT.c.form == form)).scalar_one_or_none()
    if shown is None:
        try:
            connection.execute(insert(FORMS_SENT).values(form=form, at=at, who=who, shown=""))
        except IntegrityError:  # on a database whose readers do not wait for writers
            return ""
    return shown


def form_done(connection: Connection, form: str, shown: str) -> None:
    """The form's deed is done and led to that page."""
    connection.execute(update(FORMS_SENT).where(FORMS_SENT.c.form == form).values(shown=shown))


def forget_form(connection: Connection, form: str) -> None:
    """The form's deed was refused: it may be sent again, corrected."""
    connection.execute(delete(FORMS_SENT).where(FORMS_SENT.c.form == form))


def forget_forms_before(connection: Connection, moment: datetime) -> None:
    """Forms older than any page that can still be open."""
    connection.execute(delete(FORMS_SENT).where(FORMS_SENT.c.at < moment))
