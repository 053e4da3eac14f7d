"""What an edited equivalence table changes in the one that is kept. Values in, values out; nothing is kept here.

A row finds its statement by the number it carries, else by what it says, else by its two numbers, relation, source and
conditions. A blank doubt in the file answers no doubt: the file may be older than the doubt.
"""

from collections import defaultdict
from collections.abc import Callable, Hashable, Iterable, Mapping, Sequence
from datetime import date
from typing import Any, TypeVar

from ..basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Statement
from ..basics.part_number import maker_key
from ..basics.problem import Place, Problem, problem
from ..basics.statement_history import KeptStatement
from ..basics.table_change import ChangedStatement, TableChanges
from ..basics.value import Value, changed
from .table_since import Since, apart, since_words

T = TypeVar("T")

WORDS = {
    "left": "left number",
    "relation": "relation",
    "right": "right number",
    "count": "count",
    "condition": "condition",
    "machine": "machine",
    "serial_from": "serial from",
    "serial_to": "serial to",
    "standing": "standing",
    "source": "source",
    "stated_on": "stated on",
    "stated_by": "stated by",
    "doubt": "doubt",
}
"""What a field is called to a person: the name of its column."""

NOT_IN_FILE = "not in equivalence.xlsx any more"
"""The reason of a statement withdrawn by setting up again from a folder whose table has it no more."""


class Rule(Value, frozen=True, kw_only=True):
    """How the file is meant. `why_gone`: missing statements are withdrawn for this reason; blank: they stay.

    `is_the_shops`: the file is the shop's own table (equivalence.xlsx of the set-up folder). Then parts missing from
    it go, its rows are remembered and set the order, what only the file had withdrawn comes back with it. Of the
    missing statements only those that came from it are withdrawn: it never knew the ones made at the desk. And what
    was changed at the desk since stays as it is: the file does not know of it.

    `today`: no statement is taken that says it was stated later; None: the day is not looked at.

    `last`: of each statement the number of the last change, so that rows which say what they know of undo nothing that
    came later. `file_wins`: they may.
    """

    file: str
    why_gone: str = ""
    is_the_shops: bool = False
    last: Mapping[int, int] = {}
    file_wins: bool = False
    today: date | None = None


Match = tuple[Statement, KeptStatement | None]


def compare_tables(
    kept: Sequence[KeptStatement], before: EquivalenceTable, table: EquivalenceTable, rule: Rule
) -> tuple[TableChanges, tuple[Statement, ...]]:
    """What taking `table` in would change; and the statements of it that say what they said before.

    `kept`: every statement there ever was; `before`: the parts and makers' names as they are.
    """
    since = Since({} if rule.is_the_shops else table.as_of, rule.last, rule.file_wins)
    matches, problems = _matches(kept, table.statements, rule)
    found = {one.statement.number for _, one in matches if one}
    missing = [one.statement for one in kept if not one.withdrawn and one.statement.number not in found]
    known, newer = apart(missing, since)
    goes = [one for one in known if rule.why_gone and (one.row is not None or not rule.is_the_shops)]
    going = {one.number for one in goes}
    aliases, more = _aliases(before.aliases, table.aliases, rule.file)
    old = {_numbers_and_source(one): one for one in goes}
    wrong = [
        (since.wrong_row(said.row, rule.file) if there else None) or _unusable(said, there, old, rule)
        for said, there in matches
    ]
    usable = [match for match, why in zip(matches, wrong, strict=True) if why is None]
    lists = _sorted_out(usable, rule, since)
    same = lists.pop("unchanged", ())
    changes = TableChanges(
        file=rule.file,
        **lists,
        unchanged=len(same),
        withdrawn=tuple(goes),
        missing=tuple(one for one in missing if one.number not in going),
        missing_newer=tuple(newer),
        **_parts(before.parts, table.parts, rule),
        **aliases,
        problems=(*problems, *filter(None, wrong), *more),
        why_withdrawn=rule.why_gone if goes else "",
    )
    return changes, same


def content(statement: Statement) -> Statement:
    """What a statement says, without its number, its row and the doubt about it."""
    return changed(statement, row=None, number=None, doubt="")


def _tie(statement: Statement) -> Hashable:
    """The numbers and the relation; 'same part' holds both ways, so its numbers may be swapped."""
    left, relation, right = statement.left.node, statement.relation, statement.right.node
    return tuple(sorted((left, right))) if relation == "same part" else (left, right), relation


def claim(statement: Statement) -> Hashable:
    """What is claimed on which ground: the numbers, the relation, the source and the conditions."""
    conditions = (statement.condition, statement.machine, statement.serial_from, statement.serial_to)
    return _tie(statement), statement.source.casefold(), conditions


def _numbers_and_source(statement: Statement) -> Hashable:
    return *sorted((statement.left.node, statement.right.node)), statement.source.casefold()


def _unusable(
    said: Statement, there: KeptStatement | None, going: Mapping[Hashable, Statement], rule: Rule
) -> Problem | None:
    """Why a row is not taken: it is of a day to come, or claims another relation on the old one's source.

    One edited cell must not make a same part of a must-not that keeps the must-not's standing and source. `going`: the
    statements that would be withdrawn because no row stands for them any more.
    """
    place = Place(file=rule.file, worksheet="statements", row=said.row)
    if rule.today is not None and said.stated_on > rule.today:
        return problem("stated-in-the-future", place=place, found=said.stated_on, today=rule.today)
    before = there.statement if there else going.get(_numbers_and_source(said))
    if before is None or before.relation == said.relation or before.source.casefold() != said.source.casefold():
        return None
    return problem(
        "relation-changed",
        place=place,
        number=before.number,
        before=before.claim,
        now=said.claim,
        source=said.source,
    )


def _matches(
    kept: Sequence[KeptStatement], statements: Sequence[Statement], rule: Rule
) -> tuple[list[Match], list[Problem]]:
    """Each row with the statement it stands for; rows whose number is wrong are problems and stand for none."""
    numbered, problems, taken = _by_number(kept, statements, rule)
    found: dict[int, KeptStatement] = dict(numbered)
    current = [one for one in kept if not one.withdrawn]
    gone = [one for one in reversed(kept) if one.withdrawn]
    passes: tuple[tuple[list[KeptStatement], Callable[[Statement], Hashable]], ...]
    passes = ((current, content), (gone, content), (current, claim), (gone, claim))
    waiting = [at for at, one in enumerate(statements) if one.number is None]
    for pool, key in passes:
        free: defaultdict[Hashable, list[KeptStatement]] = defaultdict(list)
        for one in pool:
            if one.statement.number not in taken:
                free[key(one.statement)].append(one)
        # A million new rows look for nothing where nothing is left to be found.
        for at in waiting if free else ():
            if at not in found and (some := free.get(key(statements[at]))):
                found[at] = some.pop(0)
                taken.add(found[at].statement.number)
    rows = [at for at, one in enumerate(statements) if one.number is None or at in found]
    return [(statements[at], found.get(at)) for at in rows], problems


def _by_number(
    kept: Sequence[KeptStatement], statements: Sequence[Statement], rule: Rule
) -> tuple[dict[int, KeptStatement], list[Problem], set[int | None]]:
    numbers = {one.statement.number: one for one in kept}
    found: dict[int, KeptStatement] = {}
    rows: dict[int, int | None] = {}
    problems = []
    for at, one in enumerate(statements):
        if one.number is None:
            continue
        place = Place(file=rule.file, worksheet="statements", row=one.row)
        if one.number not in numbers:
            problems.append(problem("no-such-statement", place=place, found=one.number))
        elif one.number in rows:
            problems.append(problem("statement-number-twice", place=place, found=one.number, first=rows[one.number]))
        else:
            found[at], rows[one.number] = numbers[one.number], one.row
    # A number on a row that can't be used still says that the statement is in the file.
    return found, problems, set(rows)


def _sorted_out(matches: Iterable[Match], rule: Rule, since: Since) -> dict[str, Any]:
    lists: defaultdict[str, list[Any]] = defaultdict(list)
    for said, kept in matches:
        if kept is None:
            lists["added"].append(said if said.number is None else changed(said, number=None))
            continue
        before = kept.statement
        now = changed(said, number=before.number, doubt=said.doubt or before.doubt)
        if kept.withdrawn:
            back = rule.is_the_shops and _gone_by_file(kept, rule) and content(now) == content(before)
            lists["restored" if back else "stay_withdrawn"].append(changed(before, row=said.row) if back else before)
            continue
        if before.doubt and not said.doubt:
            lists["doubts_stay"].append(before)
        if rule.is_the_shops and not _same(before, now) and _changed_since(kept, rule):
            lists["stay_changed"].append(_difference(before, now))
            lists["unchanged"].append(changed(before, row=said.row))
        elif not _same(before, now) and since.is_changed(said.row, kept):
            lists["stay_changed"].append(_difference(before, now, since_words(said.row, kept)))
        else:
            lists[_kind(before, now)].append(now if _same(before, now) else _difference(before, now))
    return {name: tuple(some) for name, some in lists.items()}


def _gone_by_file(kept: KeptStatement, rule: Rule) -> bool:
    """Whether only its absence from the shop's own table withdrew it, and no person."""
    last = kept.last
    return last is None or (last.what, last.file, last.reason) == ("withdrawn", rule.file, rule.why_gone)


def _changed_since(kept: KeptStatement, rule: Rule) -> bool:
    """Whether it was changed at the desk, or by another file, after the shop's own table last said something of it."""
    since: list[str] = []
    for event in kept.events:
        since = [] if event.file == rule.file else [*since, event.what]
    return "standing changed" in since or "changed" in since


def _same(before: Statement, now: Statement) -> bool:
    return changed(before, row=None) == changed(now, row=None)


def _kind(before: Statement, now: Statement) -> str:
    if _same(before, now):
        return "unchanged"
    return "changed" if _tie(before) == _tie(now) else "replaced"


def _difference(before: Statement, now: Statement, *first: str) -> ChangedStatement:
    words = first + tuple(
        f"{name}: '{_said(before, field)}' becomes '{_said(now, field)}'"
        for field, name in WORDS.items()
        if getattr(before, field) != getattr(now, field)
    )
    return ChangedStatement(before=before, now=now, words=words)


def _said(statement: Statement, field: str) -> str:
    return str(getattr(statement, field))


def _parts(before: Sequence[OurPart], now: Sequence[OurPart], rule: Rule) -> dict[str, Any]:
    old, new = _once(before, lambda part: part.code), _once(now, lambda part: part.code)
    missing = tuple(part for code, part in old.items() if code not in new)
    others = tuple(code for code, part in new.items() if code in old and part != old[code])
    return {
        "parts_added": tuple(part for code, part in new.items() if code not in old),
        "parts_changed": tuple(new[code] for code in others),
        "parts_before": tuple(old[code] for code in others),
        "parts_gone" if rule.is_the_shops else "parts_missing": missing,
    }


def _once(values: Iterable[T], key: Callable[[T], str]) -> Mapping[str, T]:
    return {key(value): value for value in values}


def _aliases(
    before: Sequence[MakerAlias], now: Sequence[MakerAlias], file: str
) -> tuple[dict[str, Any], list[Problem]]:
    old, new = _once(before, lambda one: maker_key(one.alias)), dict[str, MakerAlias]()
    problems = []
    for one in now:
        first = new.setdefault(maker_key(one.alias), one)
        if maker_key(first.maker) != maker_key(one.maker):
            place = Place(file=file, worksheet="makers")
            problems.append(problem("alias-of-another", place=place, found=one.alias, maker=first.maker))
    lists = {
        "aliases_added": tuple(one for key, one in new.items() if key not in old),
        "aliases_changed": tuple(one for key, one in new.items() if key in old and one != old[key]),
    }
    return lists, problems
