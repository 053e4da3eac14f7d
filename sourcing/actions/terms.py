"""Suppliers' terms at the desk: look at them, take entries in, change fields from a day on, withdraw a version."""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path

from sqlalchemy import Connection

from ..basics.problem import Place, Refused, problem, refused
from ..basics.rate import Rates
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..basics.terms_view import SupplierTerms, TermsChange, changed_fields
from ..storage.deeds import deeds
from ..storage.shop import every_terms, has_settings, put_terms, rates, remove_terms, settings_on
from .desk import Desk, Pen
from .far_asked import ask, far_terms
from .terms_compare import change_words, subject, terms_change, terms_changes
from .terms_edit import edited, first_terms
from .terms_file import read_terms
from .terms_open import not_known
from .terms_told import with_told

DEED = "change terms"
TOLD = (DEED, "set up")
"""Deeds that change terms."""


def every_suppliers_terms(desk: Desk, on: date | None = None) -> tuple[SupplierTerms, ...]:
    """All suppliers by name of their folder, with what holds on that day (left out: the desk's) and what is open."""
    day = on or desk.at.date()
    with desk.store.reading() as connection:
        side = _shops_side(connection, day)
        kept = every_terms(connection)
        return tuple(_looked_at(connection, _of(kept, name), side, day) for name in _names(kept))


def suppliers_terms(desk: Desk, supplier: str, on: date | None = None) -> SupplierTerms:
    """One supplier's terms, every version of them, and what persons changed. Refuses a supplier without terms."""
    day = on or desk.at.date()
    with desk.store.reading() as connection:
        return _looked_at(connection, _versions(connection, supplier), _shops_side(connection, day), day)


def take_terms(desk: Desk, path: Path, past: str = "", sure: bool = False) -> tuple[TermsChange, ...]:
    """Keep the entries of a file such as suppliers.toml, all or none; entries that say nothing new are passed over.

    An entry that changes what held on days that are over is refused, unless `past` says why. The first entries of a
    new supplier change nothing that was worked out before. Figures that lie far off are asked about unless somebody is
    `sure` of them.
    """
    every = read_terms(path)
    with desk.writing(DEED) as pen:
        kept = every_terms(pen.connection)
        done = terms_changes(kept, every, past)
        _not_of_the_past(desk, done, {one.supplier for one in kept})
        ask(far_terms(pen.connection, done, desk.at.date(), Place(file=path.name)), sure)
        for one in done:
            _keep(pen, one, f" ({path.name})")
        return tuple(with_told(pen.connection, one, desk.at.date()) for one in done)


def set_terms(
    desk: Desk,
    supplier: str,
    said: Mapping[str, str],
    starts_on: date | None = None,
    past: str = "",
    sure: bool = False,
) -> TermsChange:
    """Make a new version of the terms that hold on that day (left out: the desk's), with some fields changed.

    `said` are dotted fields with their texts, blank for not set. A version that begins on the very day is replaced.
    Refuses fields and values that can't be used, what changes nothing, a day that is over unless `past` says why, and
    figures that lie far off unless somebody is `sure` of them.
    """
    with desk.writing(DEED) as pen:
        done = _set(pen.connection, desk, supplier, said, (starts_on, past))
        ask(far_terms(pen.connection, [done], desk.at.date()), sure)
        _keep(pen, done)
        return with_told(pen.connection, done, desk.at.date())


def look_at_terms(
    desk: Desk,
    supplier: str,
    said: Mapping[str, str],
    starts_on: date | None = None,
    past: str = "",
    sure: bool = False,
) -> TermsChange:
    """What `set_terms` would change; nothing is kept. Refuses what it refuses."""
    with desk.store.reading() as connection:
        done = _set(connection, desk, supplier, said, (starts_on, past))
        ask(far_terms(connection, [done], desk.at.date()), sure)
        return with_told(connection, done, desk.at.date())


STATED = {
    "cut_off": "Ordered by this time it leaves the same day",
    "dispatch_days": "Working days until stock leaves",
    "transit_days": "Working days on the road",
    "handling": "Handling an order",
    "entry_fee": "Entry fee an order",
}
"""What a new supplier's days and costs are reckoned with, by the words of the form. A file may leave it out."""

SHORT_NAME = re.compile(r"[A-Za-z0-9]+(-[A-Za-z0-9]+)*")
"""It stands in addresses and is the name of the folder of the sheets."""


def add_supplier(
    desk: Desk, supplier: str, said: Mapping[str, str], starts_on: date | None = None, sure: bool = False
) -> TermsChange:
    """Keep the first terms of a new supplier, from that day on (left out: the desk's). `said` as `set_terms` takes it.

    Refuses one that there is already, however it is written, what can't be used, one of whose days or fees nothing is
    said (a day or a cost would be shown that nobody stated), and figures that lie far off unless somebody is `sure`.
    """
    short = supplier.strip()
    if short and not SHORT_NAME.fullmatch(short):
        raise refused("supplier-short-name", found=short[:60])
    if missing := [words for field, words in STATED.items() if not said.get(field, "").strip()]:
        raise refused("days-not-stated", found="; ".join(missing))
    with desk.writing(DEED) as pen:
        there = [one for one in _names(every_terms(pen.connection)) if one.casefold() == short.casefold()]
        if there:
            raise refused("supplier-is-there", found=there[0])
        done = terms_change([], first_terms(short, said, starts_on or desk.at.date()))
        ask(far_terms(pen.connection, [done], desk.at.date()), sure)
        _keep(pen, done)
        return with_told(pen.connection, done, desk.at.date())


def _set(
    connection: Connection, desk: Desk, supplier: str, said: Mapping[str, str], when: tuple[date | None, str]
) -> TermsChange:
    day, past = when[0] or desk.at.date(), when[1]
    versions = _versions(connection, supplier)
    holds = [one for one in versions if one.starts_on <= day]
    if not holds:
        known = ", ".join(str(one.starts_on) for one in versions)
        raise refused("no-such-terms", name=versions[0].name, day=f"or before {day}", known=known)
    done = terms_change(versions, edited(holds[-1], said, day), past)
    if not done.changes:
        raise refused("terms-the-same", name=done.name, day=day, supplier=supplier)
    _not_of_the_past(desk, [done], {supplier})
    return done


def withdraw_terms(desk: Desk, supplier: str, starts_on: date, why: str, past: str = "") -> TermsChange:
    """Take the version that begins on that day out, for a reason: what held before it holds on. The deed keeps it."""
    if not (why.strip() or past.strip()):
        raise refused("terms-need-why")
    with desk.writing(DEED) as pen:
        versions = _versions(pen.connection, supplier)
        gone = next((one for one in versions if one.starts_on == starts_on), None)
        if gone is None:
            known = ", ".join(str(one.starts_on) for one in versions)
            raise refused("no-such-terms", name=versions[-1].name, day=starts_on, known=known)
        holds = [one for one in versions if one.starts_on < starts_on]
        back = holds[-1] if holds else None
        done = TermsChange(
            supplier=supplier,
            name=gone.name,
            starts_on=starts_on,
            before=gone,
            terms=back,
            changes=changed_fields(gone, back),
            past=past.strip(),
        )
        _not_of_the_past(desk, [done], {supplier})
        remove_terms(pen.connection, supplier, starts_on)
        pen.note(
            subject(supplier), f"withdrew the terms from {starts_on} on: {why.strip() or past.strip()}{_list(done)}"
        )
        return with_told(pen.connection, done, desk.at.date())


def _not_of_the_past(desk: Desk, done: Sequence[TermsChange], known: set[str]) -> None:
    """Refuse changes of days that are over and for which no reason is given, all of them at once."""
    today = desk.at.date()
    over = [one for one in done if one.starts_on < today and not one.past and one.supplier in known]
    if over:
        raise Refused(
            *(
                problem("terms-of-the-past", name=one.name, day=one.starts_on, found=change_words(one), today=today)
                for one in over
            )
        )


def _keep(pen: Pen, done: TermsChange, where: str = "") -> None:
    assert done.terms is not None
    put_terms(pen.connection, [done.terms])
    why = f"; a day that is over was changed because: {done.past}" if done.past else ""
    pen.note(subject(done.supplier), f"from {done.starts_on} on{where}{_list(done)}{why}")


def _list(done: TermsChange) -> str:
    return f"; {change_words(done)}" if done.changes else ""


def _names(kept: Sequence[Terms]) -> list[str]:
    return sorted({one.supplier for one in kept})


def _of(kept: Sequence[Terms], supplier: str) -> list[Terms]:
    return [one for one in kept if one.supplier == supplier]


def _versions(connection: Connection, supplier: str) -> list[Terms]:
    """The supplier's versions by day. Refuses a supplier who has none."""
    found = every_terms(connection, supplier)
    if not found:
        known = _names(every_terms(connection))
        raise refused("no-such-supplier", found=supplier, known=", ".join(known) or "none yet")
    return found


def _shops_side(connection: Connection, day: date) -> tuple[Settings | None, Rates | None]:
    """The shop's settings and rates as they hold on that day; nothing where it was never set up."""
    if not has_settings(connection):
        return None, None
    settings = settings_on(connection, day)
    return settings, rates(connection, settings.currency)


def _looked_at(
    connection: Connection, versions: Sequence[Terms], side: tuple[Settings | None, Rates | None], day: date
) -> SupplierTerms:
    found = SupplierTerms(supplier=versions[0].supplier, name=versions[-1].name, on=day, versions=tuple(versions))
    holds = found.holds
    return SupplierTerms(
        supplier=found.supplier,
        name=holds.name if holds else found.name,
        on=day,
        versions=found.versions,
        not_known=not_known(holds, *side, day) if holds else (),
        deeds=tuple(one for one in deeds(connection, subject(found.supplier)) if one.deed in TOLD),
    )
