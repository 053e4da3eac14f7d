"""A problem is a value: what is wrong, where, and what to do. `Refused` carries problems to the person."""

import re

from .problem_kinds import KINDS
from .value import Value, changed

COLUMN_SAID = re.compile(r"^(?P<name>.+)=(?P<field>[a-z ]*[a-z])")
"""A suggestion as the option --column takes it: 'Price=net price'."""


class Place(Value, frozen=True, kw_only=True):
    """Where in a file: worksheet name (blank in a CSV), row counted from 1, column header or letter."""

    file: str = ""
    worksheet: str = ""
    row: int | None = None
    column: str = ""

    def __str__(self) -> str:
        parts = [self.file, self.worksheet and f"worksheet '{self.worksheet}'"]
        parts += [
            f"row {self.row}" if self.row is not None else "",
            self.column and f"column '{self.column}'",
        ]
        return ", ".join(part for part in parts if part)


class Problem(Value, frozen=True, kw_only=True):
    """One thing wrong. `found` is the text as it stood; `suggestions` are for a person, never taken by themselves."""

    code: str
    what: str
    remedy: str
    place: Place | None = None
    found: str = ""
    suggestions: tuple[str, ...] = ()

    def sentence(self) -> str:
        """One sentence: where, what, and what to do."""
        hint = f" Perhaps: {', '.join(self.suggestions)}." if self.suggestions else ""
        return f"{self.fault()}; {self.remedy}.{hint}"

    def fault(self) -> str:
        """Where and what alone, without an end."""
        where = f"{self.place}: " if self.place and str(self.place) else ""
        return f"{where}{self.what}"


class Refused(Exception):
    """What the program will not do, with the problems that say why. Shown as sentences, exit code 1."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__("\n".join(problem.sentence() for problem in problems))
        self.problems = problems


def problem(code: str, *, place: Place | None = None, suggestions: tuple[str, ...] = (), **facts: object) -> Problem:
    """A problem of a known kind with its facts filled in. An unknown code or a missing fact is a bug: KeyError."""
    kind = KINDS[code]
    what, remedy = kind.what.format(**facts), kind.remedy.format(**facts)
    found = str(facts.get("found", ""))
    return Problem(code=code, what=what, remedy=remedy, place=place, found=found, suggestions=suggestions)


def refused(code: str, *, place: Place | None = None, suggestions: tuple[str, ...] = (), **facts: object) -> Refused:
    """A refusal with one problem, ready to raise."""
    return Refused(problem(code, place=place, suggestions=suggestions, **facts))


def at_counter(one: Problem) -> Problem:
    """The problem as a page tells it: without options of commands, and with what stands on the page instead of files.

    Kinds that have no other words for the counter, and problems of no kind in the table, stay as they are.
    """
    kind = KINDS.get(one.code)
    if kind is None or not (kind.at_counter or kind.what_at_counter):
        return one
    if "--column" in one.remedy:
        one = changed(
            one, suggestions=tuple(COLUMN_SAID.sub(r"'\g<field>' for '\g<name>'", s) for s in one.suggestions)
        )
    what = kind.what_at_counter.format(found=one.found) or one.what
    return changed(one, what=what, remedy=kind.at_counter.format(found=one.found) or one.remedy)
