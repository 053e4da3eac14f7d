"""A number no part of ours is known under: which of them it may mean, and which rows of sheets bear it or nearly."""

from collections.abc import Iterator, Mapping
from itertools import islice, product

from sqlalchemy import Connection

from ..basics.equivalence import OurPart
from ..basics.offer import Offer
from ..basics.part_number import number_key
from ..basics.value import Value
from ..matching.numbers.characters import SECOND
from ..matching.numbers.damage import explain
from ..storage.numbers import nearest
from ..storage.offers import offers_by_keys
from ..storage.shop import terms_on
from .desk import Desk
from .known_table import known_table

MOST_ROWS = 20
MOST_TRIED = 64
"""Ways of reading a number with its look-alike letters and figures taken for one another."""
_LIKE = set(SECOND) | set(SECOND.values())
TAKEN_FOR = {one: sorted(other for other in _LIKE if SECOND.get(other, other) == SECOND.get(one, one)) for one in _LIKE}
"""By character all that are easily taken for it, itself among them."""


class NearNumber(Value, frozen=True, kw_only=True):
    """A number of the table that looks like the one asked for. `why`: what differs, in words; blank: several things."""

    number: str
    why: str


class BearingRow(Value, frozen=True, kw_only=True):
    """A row of a newest sheet that bears the number, or the number with look-alike characters taken for one another.

    `why` blank: it bears the number itself.
    """

    supplier_name: str
    number: str
    description: str
    why: str


class NearNumbers(Value, frozen=True, kw_only=True):
    """What is near a number. `parts`: more than one of ours bears it; then a person says which is meant."""

    asked: str
    parts: tuple[OurPart, ...]
    near: tuple[NearNumber, ...]
    rows: tuple[BearingRow, ...]


def near_numbers(desk: Desk, number: str) -> NearNumbers:
    """What the number may mean. Only to look at: none of it is ever taken instead."""
    key = number_key(number)
    if not key:
        return NearNumbers(asked=number, parts=(), near=(), rows=())
    with desk.store.reading() as connection:
        table = known_table(desk.store, connection)
        codes = table.borne.bearers.get(key, frozenset())
        return NearNumbers(
            asked=number,
            parts=tuple(table.every.graph.parts[code] for code in sorted(codes)),
            near=tuple(_near(table.printed, number, key)),
            rows=tuple(_rows(connection, desk, number, key)),
        )


def _near(printed: Mapping[str, str], number: str, key: str) -> Iterator[NearNumber]:
    for near in nearest(key, (one for one in printed if one != key)):
        found = explain(key, near, number, printed[near])
        yield NearNumber(number=printed[near], why=found.words if found else "")


def _rows(connection: Connection, desk: Desk, number: str, key: str) -> Iterator[BearingRow]:
    """Rows of the newest sheets, those that bear the number itself first."""
    names = {one.supplier: one.name for one in terms_on(connection, desk.at.date()).values()}
    offers = offers_by_keys(connection, set(readings(key)), desk.at.date())
    for offer in sorted(offers, key=lambda one: (not _bears(one, key), one.identity))[:MOST_ROWS]:
        why = "" if _bears(offer, key) else _why(offer, number, key)
        yield BearingRow(
            supplier_name=names.get(offer.supplier, offer.supplier),
            number=offer.shown_number,
            description=offer.description,
            why=why,
        )


def readings(key: str) -> Iterator[str]:
    """The key, and what it may be with look-alike letters and figures taken for one another; so many and no more."""
    places = [at for at, one in enumerate(key) if one in TAKEN_FOR]
    yield key
    for letters in islice(product(*(TAKEN_FOR[key[at]] for at in places)), MOST_TRIED):
        changed = dict(zip(places, letters, strict=True))
        yield "".join(changed.get(at, one) for at, one in enumerate(key))


def _bears(offer: Offer, key: str) -> bool:
    return any(number.key == key for number in offer.numbers())


def _why(offer: Offer, number: str, key: str) -> str:
    found = (explain(key, other.key, number, other.printed) for other in offer.numbers())
    return next((one.words for one in found if one), "")
