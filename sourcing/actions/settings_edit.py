"""The shop's settings at the desk: look at them, change them from a day on, take a change back, begin with them."""

import hashlib
from collections.abc import Mapping, Sequence
from datetime import date

from sqlalchemy import Connection

from ..basics.problem import Problem, problem, refused
from ..basics.settings import Settings
from ..basics.terms_view import FieldChange, field_changes
from ..basics.value import Value, to_json
from ..storage.deeds import deeds
from ..storage.settings_versions import every_settings, remove_settings
from ..storage.shop import has_settings, put_settings
from .desk import Desk, Pen
from .far_asked import ask, far_settings, of_taxes
from .settings_labels import as_filled_in, label_of
from .settings_typed import Typed, settings_from
from .setup import ALWAYS, refuse_other_currency
from .setup_warnings import of_bands

DEED = "change settings"
SUBJECT = "shop"


class SettingsNow(Value, frozen=True, kw_only=True):
    """The settings that hold on that day, and the days from which there are any. `later` begin after that day.

    `version`: another one says that somebody has changed any of them since.
    """

    on: date
    settings: Settings
    since: date
    starts: tuple[date, ...]
    later: tuple[date, ...]
    version: str

    @property
    def can_go(self) -> tuple[date, ...]:
        """The days whose settings can be taken back: those that change something before them and are not over."""
        return tuple(day for day in self.starts[1:] if day >= self.on)


class SettingsChange(Value, frozen=True, kw_only=True):
    """What a change does. `is_new`: it begins a version of its own, so that taking it back leaves what held before.

    `told`: what to mind about it, though it may be kept.
    """

    starts_on: date
    changes: tuple[FieldChange, ...]
    is_new: bool
    told: tuple[Problem, ...] = ()


def settings_now(desk: Desk, on: date | None = None) -> SettingsNow | None:
    """What holds on that day (left out: the desk's); None where the shop was never set up."""
    day = on or desk.at.date()
    with desk.store.reading() as connection:
        every = every_settings(connection)
    if not every:
        return None
    since, holds = _holding(every, day)
    starts = tuple(start for start, _ in every)
    later = tuple(one for one in starts if one > day)
    return SettingsNow(on=day, settings=holds, since=since, starts=starts, later=later, version=_version_of(every))


def look_at_settings(
    desk: Desk,
    typed: Mapping[str, Typed],
    starts_on: date | None,
    past: str = "",
    version: str = "",
    sure: bool = False,
) -> SettingsChange:
    """What `keep_settings` would change; nothing is kept. Refuses what it refuses, and what somebody began to type
    before another changed the settings (`version`: what she had before her; blank: whatever it is)."""
    with desk.store.reading() as connection:
        _refuse_meanwhile(connection, version)
        return _changed(connection, desk.at.date(), typed, starts_on, past, sure)[1]


def keep_settings(
    desk: Desk,
    typed: Mapping[str, Typed],
    starts_on: date | None,
    past: str = "",
    version: str = "",
    sure: bool = False,
) -> SettingsChange:
    """Change fields of the settings from that day on (left out: the desk's). Settings that begin that day are replaced.

    Refuses what can't hold, what changes nothing, another currency while jobs are open, a day that is over unless
    `past` says why it must be, and figures that lie far off unless somebody is `sure` of them.
    """
    with desk.writing(DEED) as pen:
        _refuse_meanwhile(pen.connection, version)
        new, done = _changed(pen.connection, desk.at.date(), typed, starts_on, past, sure)
        refuse_other_currency(pen, new)
        put_settings(pen.connection, new, done.starts_on)
        why = f"; a day that is over was changed because: {past.strip()}" if past.strip() else ""
        words = "; ".join(one.words() for one in done.changes)
        pen.note(SUBJECT, f"from {done.starts_on} on; {words}{why}")
        return done


def look_at_withdrawal(desk: Desk, starts_on: date) -> tuple[FieldChange, ...]:
    """What `withdraw_settings` would change, field by field; nothing is done. Refuses what it refuses."""
    with desk.store.reading() as connection:
        return _gone(connection, desk.at.date(), starts_on)


def withdraw_settings(desk: Desk, starts_on: date, version: str = "") -> None:
    """Take back all settings that begin on that day: what held before holds on. Refuses days that are over, the first
    settings there are, and what somebody looked at before another changed the settings (`version`)."""
    with desk.writing(DEED) as pen:
        _refuse_meanwhile(pen.connection, version)
        changes = _gone(pen.connection, desk.at.date(), starts_on)
        remove_settings(pen.connection, starts_on)
        words = "; ".join(one.words() for one in changes)
        pen.note(SUBJECT, f"took back what held from {starts_on} on; {words}")


def _gone(connection: Connection, today: date, starts_on: date) -> tuple[FieldChange, ...]:
    every = every_settings(connection)
    days = [day for day, _ in every]
    if starts_on not in days[1:] or starts_on < today:
        known = ", ".join(str(day) for day in days[1:] if day >= today) or "none"
        raise refused("settings-stay", day=starts_on, known=known)
    at = days.index(starts_on)
    return field_changes(every[at][1], every[at - 1][1])


def start_shop(desk: Desk, typed: Mapping[str, Typed], sure: bool = False) -> Settings:
    """The first settings, filled in at the counter; they hold from the beginning. Refuses a second time, and figures
    that lie far off unless somebody is `sure` of them."""
    new = settings_from(None, typed)
    with desk.writing(DEED) as pen:
        _refuse_started(pen)
        ask(far_settings(None, new, label_of), sure)
        put_settings(pen.connection, new, ALWAYS)
        pen.note(SUBJECT, f"set up at the counter: {new.shop.name}, {new.currency}")
    return new


def _version_of(every: Sequence[tuple[date, Settings]]) -> str:
    return hashlib.sha256(b"".join(b"%s %s" % (str(day).encode(), to_json(one)) for day, one in every)).hexdigest()[:16]


def _refuse_meanwhile(connection: Connection, version: str) -> None:
    if version and version != _version_of(every_settings(connection)):
        last = deeds(connection, SUBJECT)[-1]
        at, what = last.at.strftime("%Y-%m-%d %H:%M"), as_filled_in(last.detail)
        raise refused("settings-changed-meanwhile", who=last.who, at=at, what=what)


def _refuse_started(pen: Pen) -> None:
    if has_settings(pen.connection):
        raise refused("shop-is-set-up")


def _holding(every: Sequence[tuple[date, Settings]], day: date) -> tuple[date, Settings]:
    """What holds on the day; before the first ones, those."""
    return ([one for one in every if one[0] <= day] or every[:1])[-1]


def _changed(
    connection: Connection, today: date, typed: Mapping[str, Typed], starts_on: date | None, past: str, sure: bool
) -> tuple[Settings, SettingsChange]:
    day, every = starts_on or today, every_settings(connection)
    if not every:
        raise refused("no-settings", day=day)
    before, shown = _holding(every, day)[1], _holding(every, today)[1]
    wanted = settings_from(shown, typed)
    # The form showed what holds today: only what was typed otherwise is changed in what holds on that day.
    touched = {name: one for name, one in typed.items() if getattr(wanted, name) != getattr(shown, name)}
    new = settings_from(before, touched)
    changes = field_changes(before, new)
    if not changes:
        raise refused("settings-the-same", day=day)
    if day < today and not past.strip():
        found = _in_words(changes)
        raise refused("settings-of-the-past", day=day, found=found, today=today)
    ask(far_settings(before, new, label_of, since=day), sure)
    fields = {one.field for one in changes}
    later = [(start, one) for start, one in every if start > day]
    cliffs = [one for one in of_bands(new) if one not in of_bands(before)]
    is_new = all(start != day for start, _ in every)
    told = (*of_taxes(before, new, day), *cliffs, *_later(new, later, fields))
    return new, SettingsChange(starts_on=day, changes=changes, is_new=is_new, told=told)


def _later(new: Settings, later: Sequence[tuple[date, Settings]], fields: set[str]) -> list[Problem]:
    """Settings that begin later and know nothing of the change."""
    told = []
    for start, one in later:
        differs = [change for change in field_changes(new, one) if change.field in fields]
        if differs:
            told.append(problem("later-settings", day=start, found=_in_words(differs)))
    return told


def _in_words(changes: Sequence[FieldChange]) -> str:
    """Every field as the form calls it, with old and new; deeds are entered with the names a file has."""
    return as_filled_in("; ".join(one.words() for one in changes))
