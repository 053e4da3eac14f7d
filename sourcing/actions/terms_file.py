"""Suppliers' terms as a file a person edits: every entry read, everything that can't hold told with its place."""

import re
from collections.abc import Mapping, Sequence
from datetime import date
from pathlib import Path
from typing import Any

import msgspec

from ..basics.contradiction import Contradiction
from ..basics.problem import Place, Problem, Refused, problem, refused
from ..basics.terms import Terms
from ..basics.terms_checks import TermsRefused, contradictions
from ..basics.value import Value, changed, from_plain
from ..landed_cost.clock import zone_problems
from ..landed_cost.date_checks import check_dates
from .file_faults import faults_in
from .files import read_tables, read_text
from .terms_labels import as_typed

TOP = "supplier"
"""The entries stand under [[supplier]]."""

NEEDED: dict[str, object] = {"supplier": "?", "name": "?", "starts_on": date(1970, 1, 1), "currency": "USD"}
"""What stands in for a needed field that can't be read, so that the others can still be looked at."""

TOLD_BY_FIELD = frozenset(("week-without-days", "terms-days-below-zero", "days-falling", "cut-off-with-zone"))
"""Kinds of problem about days that the checks field by field have told already."""


class Entry(Value, frozen=True, kw_only=True):
    """Where an entry stands: the file and row of its [[supplier]], and how it is called in a sentence."""

    place: Place | None
    words: str


def read_terms(path: Path) -> tuple[Terms, ...]:
    """The terms of a file such as suppliers.toml, in its order. Refuses with all that can't hold in any entry."""
    text = read_text(path)
    data: Any = read_tables(text, path.name)
    tables = data.get(TOP)
    if not isinstance(tables, list) or not tables or not all(isinstance(one, dict) for one in tables):
        raise refused("file-not-understood", file=path.name, found=f"it has no [[{TOP}]]")
    others = [Contradiction(field=name, found="stands outside of any entry") for name in data if name != TOP]
    entries = _entries(text, path.name, tables)
    read = [terms_of(table, entry) for table, entry in zip(tables, entries, strict=True)]
    problems = [
        *_told(others, Entry(place=Place(file=path.name), words="")),
        *(one for _, some in read for one in some),
    ]
    problems += _between(tables, entries)
    if problems:
        raise Refused(*problems)
    return tuple(terms for terms, _ in read if terms)


def terms_of(table: Mapping[str, Any], entry: Entry) -> tuple[Terms | None, list[Problem]]:
    """One entry as terms, or None with everything that is wrong with it."""
    faults = list(faults_in(table, Terms))
    bad = {one.field.split(".")[0] for one in faults}
    sound = {name: found for name, found in table.items() if name not in bad}
    terms, found = _made({**NEEDED, **sound})
    problems = _told([*faults, *(one for one in found if one.field.split(".")[0] not in bad)], entry)
    problems += _of_days(terms or _without({**NEEDED, **sound}), entry)
    return (None if problems else terms), problems


def _made(table: Mapping[str, Any]) -> tuple[Terms | None, tuple[Contradiction, ...]]:
    """The terms, if any can be made of the table, and what contradicts in them."""
    try:
        terms = from_plain(table, Terms)
    except TermsRefused as refusal:
        return None, refusal.found
    except msgspec.ValidationError as error:
        return None, (Contradiction(field="", found=str(error)),)
    return terms, contradictions(terms)


def _without(table: Mapping[str, Any]) -> Terms:
    """The terms without what may keep them from being made, so that calendars and clocks can be looked at."""
    dates = ("starts_on", "cut_off", "calendar", "order_days", "time_zone", "supplier")
    return from_plain({**NEEDED, **{name: table[name] for name in dates if name in table}}, Terms)


def _told(found: Sequence[Contradiction], entry: Entry) -> list[Problem]:
    words = f"{entry.words}, " if entry.words else ""
    if entry.place is None:  # typed, not in a file
        found = [Contradiction(field=one.field, found=as_typed(one)) for one in found]
    return [
        problem("entry-contradicts", place=entry.place, entry=words, field=one.field, found=one.found) for one in found
    ]


def _of_days(terms: Terms, entry: Entry) -> list[Problem]:
    """What can't hold in calendars and clocks."""
    found = (*check_dates(terms), *zone_problems(terms.time_zone, f"'{terms.supplier}'"))
    return [changed(one, place=entry.place) for one in found if one.code not in TOLD_BY_FIELD]


def _entries(text: str, file: str, tables: Sequence[Mapping[str, Any]]) -> list[Entry]:
    """The entries' places; without rows where they are not written as [[supplier]], each on a line of its own."""
    header = re.compile(rf"\s*\[\[\s*\"?{TOP}\"?\s*\]\]")
    rows: list[int | None] = [at for at, line in enumerate(text.splitlines(), 1) if header.match(line)]
    if len(rows) != len(tables):
        rows = [None] * len(tables)
    return [
        Entry(place=Place(file=file, row=row), words=_entry_words(at, table))
        for at, (row, table) in enumerate(zip(rows, tables, strict=True), 1)
    ]


def _entry_words(at: int, table: Mapping[str, Any]) -> str:
    name = table.get("supplier")
    return f"entry {at} ({name})" if isinstance(name, str) and name.strip() else f"entry {at}"


def _between(tables: Sequence[Mapping[str, Any]], entries: Sequence[Entry]) -> list[Problem]:
    """What can't hold between two entries: the same supplier and day twice, one supplier written in two ways."""
    days: dict[tuple[str, str], Entry] = {}
    names: dict[str, tuple[str, Entry]] = {}
    problems = []
    for table, entry in zip(tables, entries, strict=True):
        name, day = str(table.get("supplier")), str(table.get("starts_on"))
        first = days.setdefault((name, day), entry)
        if first is not entry:
            problems.append(problem("entry-doubled", place=entry.place, entry=entry.words, other=first.words))
        written, other = names.setdefault(name.strip().casefold(), (name, entry))
        if written != name:
            problems.append(_otherwise(entry, name, other, written))
    return problems


def _otherwise(entry: Entry, name: str, other: Entry, written: str) -> Problem:
    facts: dict[str, Any] = {"entry": entry.words, "found": name, "other": other.words, "name": written}
    return problem("supplier-written-otherwise", place=entry.place, **facts)
