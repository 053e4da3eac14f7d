"""What was done to statements since a file of them was written out: the file, not knowing of it, must not undo it."""

from collections.abc import Iterable, Mapping

from ..basics.equivalence import Statement
from ..basics.problem import Place, Problem, problem
from ..basics.statement_history import KeptStatement


class Since:
    """Changes are numbered in the order they happened; a row says up to which of them it knows (`as_of`, by row).

    A row that says nothing was made by hand and is taken at its word. With `file_wins` every row is.
    """

    def __init__(self, as_of: Mapping[int, int], last: Mapping[int, int], file_wins: bool = False) -> None:
        """`last`: of each statement ever kept the number of what happened to it last; not there: nothing known."""
        self._as_of, self._last = as_of, last
        self._trusts = file_wins
        self._newest = max(last.values(), default=0)
        # Rows of several exports in one file: what the oldest of them could not know of is no reason to withdraw it.
        self._oldest = min(as_of.values(), default=None)

    def is_changed(self, row: int | None, kept: KeptStatement) -> bool:
        """Whether the statement was changed after what the row knows of."""
        known_to = self._as_of.get(row or 0)
        return known_to is not None and not self._trusts and self._of(kept.statement) > known_to

    def is_newer(self, statement: Statement) -> bool:
        """Whether a statement that is not in the file was stated or changed after the file was written."""
        return self._oldest is not None and not self._trusts and self._of(statement) > self._oldest

    def wrong_row(self, row: int | None, file: str) -> Problem | None:
        """What is wrong with a row that knows more than has happened: it is another table's, or was filled down."""
        known_to = self._as_of.get(row or 0, 0)
        if known_to <= self._newest:
            return None
        place = Place(file=file, worksheet="statements", row=row)
        return problem("change-not-yet", place=place, found=known_to, newest=self._newest)

    def _of(self, statement: Statement) -> int:
        return self._last.get(statement.number or 0, 0)


def since_words(row: int | None, kept: KeptStatement) -> str:
    """'row 12: changed at the desk since this file was written, by Oona Brandeth on 2026-01-12'."""
    last = kept.last
    where = f"by {last.file}" if last and last.file else "at the desk"
    signed = f", by {last.who} on {last.at:%Y-%m-%d}" if last else ""
    return f"row {row}: changed {where} since this file was written{signed}"


def apart(statements: Iterable[Statement], since: Since) -> tuple[list[Statement], list[Statement]]:
    """The statements the file could know of, and those that are newer than it."""
    both: tuple[list[Statement], list[Statement]] = ([], [])
    for one in statements:
        both[since.is_newer(one)].append(one)
    return both
