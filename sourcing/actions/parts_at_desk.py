"""Parts of ours that were added or changed one by one: a file that does not know of it undoes none of it."""

from collections.abc import Mapping, Sequence

from sqlalchemy import Connection

from ..basics.equivalence import EquivalenceTable, OurPart
from ..basics.part_number import OURS, number_key
from ..basics.problem import Place, problem
from ..basics.table_change import TableChanges
from ..basics.value import changed
from ..matching.equivalences.graph import graph_of
from ..matching.equivalences.number_book import bearers_of
from ..storage.deed_rows import subjects_of
from ..storage.equivalence import equivalence_table
from .part_deeds import ADD, CHANGE, subject_of


def with_parts_at_desk(
    connection: Connection, kept: Sequence[OurPart], table: EquivalenceTable
) -> tuple[EquivalenceTable, tuple[OurPart, ...]]:
    """The shop's own table with the parts as they are at the desk; and those of which the file says something else.

    As with statements: what was made or changed at the desk stays, for the file never knew of it.
    """
    known = subjects_of(connection, (ADD, CHANGE))
    ours = {number_key(one.code): one for one in kept if subject_of(one.code) in known}
    told = {number_key(one.code): one for one in table.parts}
    parts = [ours.get(key, one) for key, one in told.items()] + [one for key, one in ours.items() if key not in told]
    return changed(table, parts=tuple(parts)), tuple(one for key, one in ours.items() if told.get(key, one) != one)


def without_numbers_of_others(connection: Connection, changes: TableChanges) -> TableChanges:
    """The changes without new parts whose code is a number of another part of ours, each a problem instead.

    Statements about such a code go with it: no part would be there for them.
    """
    others = _numbers_of_others(connection, changes)
    if not others:
        return changes
    place = Place(file=changes.file, worksheet="parts")
    parts = [one for one in changes.parts_added if one.code in others]
    wrong = [
        problem("part-number-of-another", place=place, found=one.code, ours=" and ".join(sorted(others[one.code])))
        for one in parts
    ]
    keys = {number_key(one.code) for one in parts}
    names = [
        one for one in changes.added if any(end.maker == OURS and end.key in keys for end in (one.left, one.right))
    ]
    at = (Place(file=changes.file, worksheet="statements", row=one.row) for one in names)
    wrong += [problem("part-not-kept", place=where, found=str(one)) for where, one in zip(at, names, strict=True)]
    return changed(
        changes,
        parts_added=tuple(one for one in changes.parts_added if one.code not in others),
        added=tuple(one for one in changes.added if one not in names),
        problems=(*changes.problems, *wrong),
    )


def _numbers_of_others(connection: Connection, changes: TableChanges) -> Mapping[str, frozenset[str]]:
    """By the code of a new part the other parts of ours that bear it as a number."""
    codes = {number_key(one.code): one.code for one in changes.parts_added}
    if not codes:
        return {}
    table = equivalence_table(connection)
    statements = (*table.statements, *changes.added, *(one.now for one in changes.changed))
    kept = {number_key(one.code): one.code for one in table.parts}
    same = {code: frozenset((kept[key],)) for key, code in codes.items() if key in kept}  # in other case or punctuation
    sides = (end for one in statements for end in (one.left, one.right))
    if not any(end.maker != OURS and end.key in codes for end in sides):
        return same
    parts = (*table.parts, *changes.parts_added)
    after = bearers_of(graph_of(changed(table, parts=parts, statements=statements)))
    return same | {code: others for key, code in codes.items() if (others := after.get(key, frozenset()) - {code})}
