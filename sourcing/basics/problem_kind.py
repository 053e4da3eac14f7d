"""What a kind of problem is: its title, its wording and its remedy, from which messages and pages are made."""

from .value import Value


class ProblemKind(Value, frozen=True, kw_only=True):
    """`what` and `remedy` are format strings; together they make one sentence: '{what}; {remedy}.'"""

    title: str
    what: str
    remedy: str


def kind(title: str, what: str, remedy: str) -> ProblemKind:
    """A kind in three texts."""
    return ProblemKind(title=title, what=what, remedy=remedy)
