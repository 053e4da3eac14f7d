"""What happened to a statement of the equivalence table since it was first kept. Nothing of it is ever deleted."""

from datetime import datetime
from typing import Literal

from .equivalence import Statement
from .value import Value

Happening = Literal[
    "stated", "doubted", "doubt answered", "withdrawn", "restored", "standing changed", "changed", "replaced"
]
"""'changed': other words of it were corrected. 'replaced': it was withdrawn because another statement stands for it."""


class Signed(Value, frozen=True, kw_only=True):
    """Who does it and when; `at` is local time without a zone. `file`: from which file; blank: at the desk."""

    at: datetime
    who: str
    file: str = ""


class StatementEvent(Value, frozen=True, kw_only=True):
    """One thing that happened. `reason` is in words; `was` is the statement before, where its words changed.

    `file` is the file that said so; blank: a person at the desk.
    """

    statement: int
    at: datetime
    who: str
    what: Happening
    reason: str = ""
    file: str = ""
    was: Statement | None = None


class KeptStatement(Value, frozen=True, kw_only=True):
    """A statement as it stands with all that happened to it, oldest first; `withdrawn`: it counts no more.

    A statement kept by a version of the program that kept no history has no event of its beginning.
    """

    statement: Statement
    withdrawn: bool = False
    events: tuple[StatementEvent, ...] = ()

    @property
    def last(self) -> StatementEvent | None:
        """What happened to it last, None where nothing was written down."""
        return self.events[-1] if self.events else None
