"""The equivalence table page by page: our parts, one number with all that is said of it, one statement whole."""

from sqlalchemy import Connection

from ..basics.equivalence import Bench, OurPart, Statement
from ..basics.family_view import FamilyView
from ..basics.part_number import number_key
from ..basics.statement_history import KeptStatement
from ..basics.table_finding import Finding
from ..basics.value import Value
from ..storage.deeds import Since
from ..storage.equivalence import our_parts
from ..storage.statements import kept_statement, statements_between, withdrawn_about
from .desk import Desk
from .equivalences import contradictions, family_of, hanging_together, is_contradiction
from .kept_until import KeptUntil
from .our_side_now import answered_in
from .statement_look import found_of

ROWS = 50
MOST_KEYS = 400
MOST_SAID = 300
"""Statements of one number that are listed; the drawing and the paths have the others."""


class OurPartsPage(Value, frozen=True, kw_only=True):
    """One page of the parts all of whose words stand in code, name, size, category or note; `count` of them in all."""

    asked: str
    parts: tuple[OurPart, ...]
    count: int
    page: int
    pages: int
    first: int


class NumberWhole(Value, frozen=True, kw_only=True):
    """A number looked up: its families, every statement between their numbers, and those about them withdrawn."""

    view: FamilyView
    statements: tuple[Statement, ...]
    withdrawn: tuple[KeptStatement, ...]
    left_out: int = 0


class StatementWhole(Value, frozen=True, kw_only=True):
    """A statement with its history and what the check of the table finds about it; None: too much hangs on it."""

    kept: KeptStatement
    findings: tuple[Finding, ...] | None


class TableChecked(Value, frozen=True, kw_only=True):
    """What is to be looked at in the table: what contradicts itself, and what is only worth knowing."""

    wrong: tuple[Finding, ...]
    to_know: tuple[Finding, ...]


def our_parts_page(desk: Desk, asked: str = "", page: int = 1) -> OurPartsPage:
    """Our parts, all or those that bear the words, in their order; a page beyond the last is the last."""
    words = asked.casefold().split()
    with desk.store.reading() as connection:
        every = our_parts(connection)
    found = [one for one in every if all(word in _text(one) for word in words)]
    pages = max(1, -(-len(found) // ROWS))
    page = min(max(page, 1), pages)
    first = (page - 1) * ROWS
    shown = tuple(found[first : first + ROWS])
    return OurPartsPage(asked=asked, parts=shown, count=len(found), page=page, pages=pages, first=first + 1)


def is_named(desk: Desk, number: str) -> bool:
    """Whether a statement or a part of ours names the number, under whatever maker."""
    if not number_key(number):
        return False
    with desk.store.reading() as connection:
        around = hanging_together(connection, number)
        return around is None or bool(around.statements or around.parts)


def number_whole(desk: Desk, number: str, maker: str = "", bench: Bench | None = None) -> NumberWhole:
    """The number with its families. Refuses a number that nothing names, with what looks like it."""
    view = family_of(desk, number, maker, bench)
    keys = _keys_of(view)
    with desk.store.reading() as connection:
        counting = [one.statement for one in statements_between(connection, keys) if not one.withdrawn]
        withdrawn = tuple(withdrawn_about(connection, keys))
    return NumberWhole(
        view=view,
        statements=tuple(counting[:MOST_SAID]),
        withdrawn=withdrawn[:MOST_SAID],
        left_out=max(len(counting) - MOST_SAID, 0) + max(len(withdrawn) - MOST_SAID, 0),
    )


def withdrawn_of(desk: Desk, number: str) -> tuple[KeptStatement, ...]:
    """What was once said of the number and is withdrawn: all there is of a number that nothing names any more."""
    with desk.store.reading() as connection:
        return tuple(withdrawn_about(connection, [number_key(number)]))[:MOST_SAID]


def statement_whole(desk: Desk, number: int) -> StatementWhole:
    """Refuses a number the table does not have."""
    with desk.store.reading() as connection:
        kept = kept_statement(connection, number)
        return StatementWhole(kept=kept, findings=() if kept.withdrawn else found_of(connection, kept.statement))


def check_whole(desk: Desk) -> TableChecked:
    """Everything the check of the table finds, what may send a wrong part first; remembered until something changes."""
    with desk.store.reading() as connection:
        found = _CHECKED.get(connection, desk, lambda: contradictions(desk))
    return TableChecked(
        wrong=tuple(one for one in found if is_contradiction(one)),
        to_know=tuple(one for one in found if not is_contradiction(one)),
    )


def _keys_of(view: FamilyView) -> list[str]:
    """The numbers of the families, of what they hold and of what is banned; the one looked up among them."""
    keys = {number_key(view.asked): None}
    for family in view.families:
        keys |= dict.fromkeys(one.number.key for one in family.members)
        keys |= dict.fromkeys(one.number.key for one in family.banned)
        for item in (*family.contents, *family.in_kits):
            keys |= dict.fromkeys(end.key for link in item.links for end in (link.left, link.right))
    for must_not in view.must_not:
        keys |= dict.fromkeys((must_not.statement.left.key, must_not.statement.right.key))
    return [key for key in keys if key][:MOST_KEYS]


def _text(part: OurPart) -> str:
    return " ".join((part.code, part.name, part.size, part.category, part.note)).casefold()


def _still_checked(found: tuple[Finding, ...], _: Connection, since: Since) -> tuple[Finding, ...] | None:
    answered, others = answered_in(since)
    return None if answered or others else found


_CHECKED = KeptUntil(_still_checked)
