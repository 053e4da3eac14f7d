"""What taking an edited equivalence table in changes: told before it is done, and after."""

from .equivalence import MakerAlias, OurPart, Statement
from .problem import Problem
from .value import Value


class ChangedStatement(Value, frozen=True, kw_only=True):
    """A statement of the table before and now, and in words what differs. Both carry the number of `before`."""

    before: Statement
    now: Statement
    words: tuple[str, ...]


class TableChanges(Value, frozen=True, kw_only=True):
    """Every statement, part and maker's name of the file and of the table that does not just stay what it is.

    `replaced`: a row with the number of a statement now ties other numbers; the old one is withdrawn, a new one
    stated. `restored`: in the file again, though withdrawn when it was not. `missing`: in the table and not in the
    file; they stay unless `withdrawn` lists them. `stay_withdrawn`: in the file, but withdrawn by a person.
    `stay_changed`: changed at the desk since the file was written, or, the shop's own table, last taken in; `now` is
    what the file still says. `missing_newer`: of the missing those stated or changed since the file was written: it
    could not know of them, so they are never withdrawn for it.
    `parts_before`: the changed parts as they were, in the same order.
    `parts_stay`: parts as they were changed at the desk, of which the shop's own table still says something else.
    `doubts_stay`: the file has no doubt where the table has one; only a person answers a doubt.
    """

    file: str
    added: tuple[Statement, ...] = ()
    changed: tuple[ChangedStatement, ...] = ()
    replaced: tuple[ChangedStatement, ...] = ()
    restored: tuple[Statement, ...] = ()
    withdrawn: tuple[Statement, ...] = ()
    missing: tuple[Statement, ...] = ()
    missing_newer: tuple[Statement, ...] = ()
    stay_withdrawn: tuple[Statement, ...] = ()
    stay_changed: tuple[ChangedStatement, ...] = ()
    doubts_stay: tuple[Statement, ...] = ()
    unchanged: int = 0
    parts_added: tuple[OurPart, ...] = ()
    parts_changed: tuple[OurPart, ...] = ()
    parts_before: tuple[OurPart, ...] = ()
    parts_gone: tuple[OurPart, ...] = ()
    parts_missing: tuple[OurPart, ...] = ()
    parts_stay: tuple[OurPart, ...] = ()
    aliases_added: tuple[MakerAlias, ...] = ()
    aliases_changed: tuple[MakerAlias, ...] = ()
    problems: tuple[Problem, ...] = ()
    why_withdrawn: str = ""
    done: bool = False

    @property
    def is_nothing(self) -> bool:
        """Whether the table stays as it is."""
        statements = (self.added, self.changed, self.replaced, self.restored, self.withdrawn)
        rest = (self.parts_added, self.parts_changed, self.parts_gone, self.aliases_added, self.aliases_changed)
        return not any((*statements, *rest))
