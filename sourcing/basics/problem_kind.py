"""What a kind of problem is: its title, its wording and its remedy, from which messages and pages are made."""

from .value import Value


class ProblemKind(Value, frozen=True, kw_only=True):
    """`what` and `remedy` are format strings; together they make one sentence: '{what}; {remedy}.'

    `at_counter` is the remedy as a page says it, where the remedy names an option of a command, a file or a field of a
    file; `what_at_counter` the same of `what`. Blank: the page says what the command line says. Both may name `{found}`
    alone, for that is what a problem keeps; 'page:orders' in them becomes a link to that page (`web/said.py`).
    """

    title: str
    what: str
    remedy: str
    at_counter: str = ""
    what_at_counter: str = ""


def kind(title: str, what: str, remedy: str, at_counter: str = "", what_at_counter: str = "") -> ProblemKind:
    """A kind in three texts, and what the counter says otherwise."""
    return ProblemKind(title=title, what=what, remedy=remedy, at_counter=at_counter, what_at_counter=what_at_counter)
