"""One box to look anything up: a number or a name, and what in the shop bears it. Nothing here tells a cost."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import islice
from typing import Literal

from sqlalchemy import Connection

from ..basics.job import Job
from ..basics.part_number import number_key
from ..basics.value import Value
from ..storage.database import Store
from ..storage.deeds import Since
from ..storage.jobs import jobs
from ..storage.look_up import is_on_a_sheet, job_of_bill, jobs_numbered, orders_named
from ..storage.numbers import nearest
from ..storage.sheets import kept_sheets
from ..storage.shop import terms_on
from .desk import Desk
from .kept_until import KeptUntil
from .known_table import KnownTable, folded, known_table

MOST = 50
"""Hits of one kind that are shown."""
LONGEST = 200
"""Letters of what is looked for; more is no number and no name."""
MOST_NEAR = 5
SHORTEST_PIECE = 4
"""A piece of a serial or telephone number of fewer characters finds too much."""

HitKind = Literal["job", "order", "bill", "machine", "customer", "supplier", "our part", "number"]


class Hit(Value, frozen=True, kw_only=True):
    """Something that bears what was looked for. `key` leads to it: a job, an order, a supplier's short name, a part's
    code, a number. `is_exact`: it is what was typed, and not only like it; `words` say what it is.
    """

    kind: HitKind
    key: str
    words: str
    is_exact: bool = False


class SearchFound(Value, frozen=True, kw_only=True):
    """What was found, kind after kind, numbers before names. `near`: what looks like it, where nothing was found;
    `left_out`: hits that are too many to show."""

    asked: str
    hits: tuple[Hit, ...]
    near: tuple[Hit, ...] = ()
    left_out: int = 0

    @property
    def straight_to(self) -> Hit | None:
        """The one hit there is to go to at once: the only one that is exactly what was typed, or the only one at all.

        A part found by words of its name is never taken for the one that was meant.
        """
        exact = [one for one in self.hits if one.is_exact]
        if len(exact) == 1:
            return exact[0]
        return self.hits[0] if len(self.hits) == 1 and self.hits[0].kind != "our part" else None


@dataclass(frozen=True)
class _JobNames:
    """What a job can be found by: words without case and accents, keys of numbers."""

    job: str
    customer: str
    machine: str
    words: str
    serials: tuple[str, ...]
    telephones: tuple[str, ...]


@dataclass(frozen=True)
class Names:
    """What names and numbers are looked for in: jobs, and suppliers by their short names, to be found or only named."""

    jobs: tuple[_JobNames, ...]
    suppliers: Mapping[str, str]
    suppliers_too: bool
    table: KnownTable


def search(desk: Desk, text: str, suppliers_too: bool) -> SearchFound:
    """Everything that bears the number or all of the words. Blank finds nothing.

    `suppliers_too`: whether the person may open suppliers' terms.
    """
    asked = " ".join(text.split())[:LONGEST]
    if not asked:
        return SearchFound(asked="", hits=())
    with desk.store.reading() as connection:
        table = known_table(desk.store, connection)
        suppliers = _names_of_suppliers(connection, desk)
        names = Names(tuple(_jobs(connection, desk.store)), suppliers, suppliers_too, table)
        found = list(_hits(connection, asked, names))
        near = () if found else tuple(_near(connection, asked, names))
    shown: list[Hit] = []
    for kind in dict.fromkeys(one.kind for one in found):
        shown += [one for one in found if one.kind == kind][:MOST]
    return SearchFound(asked=asked, hits=tuple(shown), near=near, left_out=len(found) - len(shown))


def _hits(connection: Connection, asked: str, names: Names) -> Iterator[Hit]:
    key, words = number_key(asked), folded(asked).split()
    yield from _orders(connection, asked, names.suppliers)
    if job := job_of_bill(connection, asked.upper()):
        yield Hit(kind="bill", key=job, words=asked.upper(), is_exact=True)
    yield from _of_jobs(names.jobs, asked, key, words)
    if names.suppliers_too:
        yield from _suppliers(names.suppliers, words)
    yield from _parts(connection, asked, names.table)


def _of_jobs(known: Iterable[_JobNames], asked: str, key: str, words: list[str]) -> Iterator[Hit]:
    """Jobs, the newest first: by number, by the machine's serial number, by who brought it and what it is."""
    for one in sorted(known, key=lambda one: _serial_of(one.job), reverse=True):
        who, what = f"{one.customer}, {one.machine}", f"{one.machine}, {one.customer}"
        if asked == one.job or (asked.isdecimal() and int(asked) == _serial_of(one.job)[1]):
            yield Hit(kind="job", key=one.job, words=who, is_exact=asked == one.job)
        elif _bears(key, one.serials):
            yield Hit(kind="machine", key=one.job, words=what, is_exact=key in one.serials)
        elif _bears(key, one.telephones):
            yield Hit(kind="customer", key=one.job, words=who, is_exact=key in one.telephones)
        elif _all_in(words, one.words):
            yield Hit(kind="customer", key=one.job, words=who)


def _bears(key: str, numbers: Iterable[str]) -> bool:
    return len(key) >= SHORTEST_PIECE and any(key in one for one in numbers)


def _all_in(words: list[str], text: str) -> bool:
    return all(word in text for word in words) and any(len(word) > 1 for word in words)


def _orders(connection: Connection, asked: str, suppliers: Mapping[str, str]) -> Iterator[Hit]:
    wanted = asked.upper()
    if not wanted.startswith("PO"):
        return
    serial = wanted.removeprefix("PO").strip(" -")
    for number, short in reversed(orders_named(connection).items()):
        if number == wanted or (serial.isdecimal() and int(serial) == _serial_of(number)[1]):
            yield _order(number, short, suppliers, number == wanted)


def _order(number: str, short: str, suppliers: Mapping[str, str], is_exact: bool = False) -> Hit:
    return Hit(kind="order", key=number, words=suppliers.get(short, short), is_exact=is_exact)


def _suppliers(suppliers: Mapping[str, str], words: list[str]) -> Iterator[Hit]:
    for short, name in sorted(suppliers.items()):
        text = folded(f"{short} {name}")
        if _all_in(words, text):
            is_exact = " ".join(words) in (folded(short), folded(name))
            yield Hit(kind="supplier", key=short, words=name, is_exact=is_exact)


def _names_of_suppliers(connection: Connection, desk: Desk) -> dict[str, str]:
    day = desk.at.date()
    sheets = {one.supplier: one.supplier for one in kept_sheets(connection, day)}
    return sheets | {one.supplier: one.name for one in terms_on(connection, day).values()}


def _parts(connection: Connection, asked: str, table: KnownTable) -> Iterator[Hit]:
    """Our parts by code and by words of their name; a number that a statement or a sheet names."""
    key, words = number_key(asked), folded(asked).split()
    if not key:
        return
    if part := table.codes.get(key):
        yield Hit(kind="our part", key=part.code, words=part.name, is_exact=True)
    elif key in table.printed or is_on_a_sheet(connection, key):
        yield Hit(kind="number", key=asked, words="", is_exact=True)
    for other, text in table.words:
        if other is not part and _all_in(words, text):
            yield Hit(kind="our part", key=other.code, words=other.name)


def _near(connection: Connection, asked: str, names: Names) -> Iterator[Hit]:
    """Numbers and names that look like it, where nothing bears it."""
    known = {one.job: one for one in names.jobs}
    if re.fullmatch(r"\d[\d-]*", asked):
        yield from (_job(known[one], "job") for one in nearest(asked, known))
    elif asked.upper().startswith("PO"):
        orders = orders_named(connection)
        yield from (_order(one, orders[one], names.suppliers) for one in nearest(asked.upper(), orders))
    if names.suppliers_too:
        for short in _near_names(asked, names.suppliers):
            yield Hit(kind="supplier", key=short, words=names.suppliers[short])
    customers = {one.job: one.customer for one in names.jobs}
    yield from (_job(known[one], "customer") for one in _near_names(asked, customers))


def _job(one: _JobNames, kind: HitKind) -> Hit:
    return Hit(kind=kind, key=one.job, words=f"{one.customer}, {one.machine}")


def _near_names(asked: str, names: Mapping[str, str]) -> list[str]:
    """The keys of the names that have a word like what was typed, or are like it whole; so many and no more."""
    by_word: dict[str, list[str]] = {}
    for key, name in reversed(list(names.items())):
        text = folded(name)
        for word in (text, *text.split()):
            by_word.setdefault(word, []).append(key)
    found = (key for word in nearest(folded(asked), by_word) for key in by_word[word])
    return list(islice(dict.fromkeys(found), MOST_NEAR))


def _serial_of(number: str) -> tuple[int, int]:
    """Year and running number of a job or an order."""
    year, serial = number.split("-")[-2:]
    return int(year), int(serial)


def _jobs(connection: Connection, store: Store) -> list[_JobNames]:
    """Every job as it stands in this transaction; only those a deed was done on since the last look-up are read."""
    with _KEPT.held(connection, store, lambda: _by_number(jobs(connection))) as every:
        return list(every.values())


def _after(every: dict[str, _JobNames], connection: Connection, since: Since) -> dict[str, _JobNames]:
    return every | _by_number(jobs_numbered(connection, since.subjects))


_KEPT = KeptUntil(_after)


def _by_number(some: Iterable[Job]) -> dict[str, _JobNames]:
    return {one.number: _names_of(one) for one in some}


def _names_of(job: Job) -> _JobNames:
    customer, machine = job.customer, job.machine
    what = " ".join(text for text in (machine.maker, machine.model, machine.description) if text)
    serials, telephones = (machine.serial, machine.component_serial), (customer.telephone, customer.text_number)
    return _JobNames(
        job=job.number,
        customer=customer.name,
        machine=what,
        words=folded(" ".join((customer.name, customer.email, what, machine.component))),
        serials=tuple(key for key in map(number_key, serials) if key),
        telephones=tuple(key for key in map(number_key, telephones) if key),
    )
