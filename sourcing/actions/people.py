"""People of the shop: the owner's first log-in, others added, logging in and out, passwords.

Passwords are kept as Argon2id hashes (RFC 9106); a log-in's secret only as its SHA-256, so a copy of the database logs
nobody in. Lengths and the check against passwords tried first follow OWASP ASVS 4.0.3, 2.1.1, 2.1.2, 2.1.7.
"""

import hashlib
import secrets
from datetime import datetime, timedelta
from functools import cache

from argon2 import PasswordHasher
from argon2.exceptions import InvalidHashError, VerifyMismatchError

from ..basics.person import Person, Role
from ..basics.problem import refused
from ..basics.value import Value
from ..storage.people import (
    add_counter_key,
    add_log_in,
    add_person,
    change_person,
    counter_key,
    end_log_ins,
    logged_in,
    people,
    person_named,
    seen,
)
from .desk import Desk

LEAST, MOST = 12, 256
MOST_NAME = 60
EASILY_GUESSED = 10**7
"""A password found within so many tries is refused; the estimate is that of the library zxcvbn."""

IDLE = timedelta(hours=12)
"""A log-in not used for so long is over: a working day with its evening, not a night."""

SEEN_AGAIN = timedelta(minutes=5)
"""How often it is noted that somebody is still there: a page read is not a writing each time."""

SECRET_BYTES = 32


class LoggedIn(Value, frozen=True, kw_only=True):
    """Somebody logged in. `secret` is for her browser alone and kept nowhere else."""

    person: Person
    secret: str


def has_owner(desk: Desk) -> bool:
    """Whether the first log-in was made."""
    with desk.store.reading() as connection:
        return any(one.role == "owner" and one.let_go is None for one in people(connection))


def everybody(desk: Desk) -> tuple[Person, ...]:
    """Everybody there ever was, by name; those let go too."""
    with desk.store.reading() as connection:
        return tuple(people(connection))


class PeopleNow(Value, frozen=True, kw_only=True):
    """Who may log in, and who might once; each by name."""

    may_log_in: tuple[Person, ...]
    let_go: tuple[Person, ...]


def people_now(desk: Desk) -> PeopleNow:
    """Everybody, those who may log in apart from those let go."""
    found = everybody(desk)
    return PeopleNow(
        may_log_in=tuple(one for one in found if one.let_go is None),
        let_go=tuple(one for one in found if one.let_go is not None),
    )


def one_person(desk: Desk, number: int) -> Person:
    """The person of that number. Refuses one that there is not."""
    return _somebody(desk, number)


def first_owner(desk: Desk, name: str, password: str) -> LoggedIn:
    """Make the owner's log-in at the first visit, and log her in. Refuses a second time."""
    hashed = _hashed(name, password)
    with desk.writing("first log-in") as pen:
        if any(one.role == "owner" for one in people(pen.connection)):
            raise refused("owner-is-there")
        if add_person(pen.connection, name, "owner", hashed, desk.at) is None:
            raise refused("name-taken", found=name)
        pen.note("people", f"{name} made the first log-in, as owner")
    return log_in(desk, name, password)


def add_somebody(desk: Desk, name: str, role: Role, password: str) -> None:
    """Add a person who may log in. Refuses a name that is taken, and a password that is short or easily guessed."""
    hashed = _hashed(name, password)
    with desk.writing("add person") as pen:
        if add_person(pen.connection, name, role, hashed, desk.at) is None:
            raise refused("name-taken", found=name)
        pen.note("people", f"{name} may log in as {role}")


def log_in(desk: Desk, name: str, password: str) -> LoggedIn:
    """Log somebody in. A wrong name and a wrong password are refused alike, and take the same time."""
    with desk.store.reading() as connection:
        found = person_named(connection, name)
    fits = _fits(found[1] if found else _nobody(), password[: MOST + 1])
    if not found or not fits or found[0].let_go is not None:
        raise refused("log-in-wrong")
    secret = secrets.token_urlsafe(SECRET_BYTES)
    with desk.store.writing() as connection:
        add_log_in(connection, sha256(secret), found[0].person, desk.at)
    return LoggedIn(person=found[0], secret=secret)


def who_is(desk: Desk, secret: str) -> Person | None:
    """Who is logged in by that secret; None where nobody is, or not any more."""
    hashed = sha256(secret)
    with desk.store.reading() as connection:
        found = logged_in(connection, hashed)
    if not found or found[0].let_go is not None or desk.at - found[1] > IDLE:
        return None
    if desk.at - found[1] > SEEN_AGAIN:
        with desk.store.writing() as connection:
            seen(connection, hashed, desk.at)
    return found[0]


def log_out(desk: Desk, secret: str) -> None:
    """End this log-in; the secret opens nothing any more."""
    with desk.store.writing() as connection:
        end_log_ins(connection, secret_sha256=sha256(secret))


def change_password(desk: Desk, me: LoggedIn, old: str, new: str) -> None:
    """Somebody changes her own password; all her other log-ins end. Refuses where the old one is wrong."""
    with desk.store.reading() as connection:
        found = person_named(connection, me.person.name)
    if not found or not _fits(found[1], old[: MOST + 1]):
        raise refused("log-in-wrong")
    _set_password(desk, me.person, new, but=sha256(me.secret))


def set_password(desk: Desk, number: int, new: str) -> None:
    """The owner sets somebody's password anew; that person's log-ins end."""
    _set_password(desk, _somebody(desk, number), new)


def change_role(desk: Desk, number: int, role: Role) -> None:
    """Change what somebody may see and do, from her next page on. Refuses to leave the shop without an owner."""
    one = _somebody(desk, number)
    with desk.writing("change role") as pen:
        if role != "owner":
            _check_not_last_owner(people(pen.connection), one)
        change_person(pen.connection, number, role=role)
        pen.note("people", f"{one.name} is {role} now")


def let_go(desk: Desk, number: int) -> None:
    """Somebody may log in no more; her log-ins end, her deeds stay. Refuses for the last owner."""
    one = _somebody(desk, number)
    with desk.writing("let go") as pen:
        _check_not_last_owner(people(pen.connection), one)
        change_person(pen.connection, number, let_go=desk.at)
        end_log_ins(pen.connection, person=number)
        pen.note("people", f"{one.name} may log in no more")


def let_in_again(desk: Desk, number: int) -> None:
    """Take letting go back; the password is as it was."""
    one = _somebody(desk, number)
    with desk.writing("let in again") as pen:
        change_person(pen.connection, number, let_go=None)
        pen.note("people", f"{one.name} may log in again")


def key_of_counter(desk: Desk) -> str:
    """The key that signs the counter's cookies, made once. A cookie alone logs nobody in: its secret must be known."""
    with desk.store.writing() as connection:
        kept = counter_key(connection, "cookies")
        if kept is None:
            kept = secrets.token_urlsafe(SECRET_BYTES)
            add_counter_key(connection, "cookies", kept)
        return kept


def sha256(secret: str) -> str:
    """The secret as it is kept and looked for. Secrets have 256 random bits, so a plain hash can't be turned round."""
    return hashlib.sha256(secret.encode()).hexdigest()


@cache
def _hasher() -> PasswordHasher:
    return PasswordHasher()  # Argon2id with the library's defaults, which follow RFC 9106's second choice


@cache
def _nobody() -> str:
    """A hash no password fits, so that an unknown name takes as long as a wrong password."""
    return _hasher().hash(secrets.token_urlsafe(SECRET_BYTES))


def _fits(hashed: str, password: str) -> bool:
    try:
        return _hasher().verify(hashed, password)
    except (VerifyMismatchError, InvalidHashError):
        return False


def _hashed(name: str, password: str) -> str:
    """The hash of a new password. Refuses a blank name, and a password too short, too long or easily guessed."""
    import zxcvbn  # its word lists take a while to load

    if not name.split():
        raise refused("name-missing")
    if len(name) > MOST_NAME:
        raise refused("name-too-long", count=len(name), most=MOST_NAME)
    if len(password) < LEAST:
        raise refused("password-short", count=len(password), least=LEAST)
    if len(password) > MOST:
        raise refused("password-long", count=len(password), most=MOST)
    # Looked at to 72 characters: beyond that the library refuses, and nobody guesses what is that long.
    if zxcvbn.zxcvbn(password[:72], user_inputs=[name, *name.split(), "sourcing"])["guesses"] < EASILY_GUESSED:
        raise refused("password-guessed")
    return _hasher().hash(password)


def _set_password(desk: Desk, one: Person, new: str, but: str = "") -> None:
    hashed = _hashed(one.name, new)
    with desk.writing("set password") as pen:
        change_person(pen.connection, one.person, password=hashed)
        end_log_ins(pen.connection, person=one.person, but=but)
        pen.note("people", f"{one.name} has a new password")


def _somebody(desk: Desk, number: int) -> Person:
    for one in everybody(desk):
        if one.person == number:
            return one
    raise refused("person-unknown", found=number)


def _check_not_last_owner(all_people: list[Person], one: Person) -> None:
    owners = [other for other in all_people if other.role == "owner" and other.let_go is None]
    if [other.person for other in owners] == [one.person]:
        raise refused("last-owner", found=one.name)


def today_at(now: datetime) -> datetime:
    """The moment a desk at the counter works at: whole minutes, as on the command line."""
    return now.replace(second=0, microsecond=0, tzinfo=None)
