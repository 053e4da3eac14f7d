"""Every answer to a look-alike, page by page, the newest first."""

from ..basics.judgement import Judgement
from ..basics.value import Value
from .desk import Desk
from .review import all_judgements

ROWS = 50


class AnswersPage(Value, frozen=True, kw_only=True):
    """One page of the answers to one supplier's rows, or to all; `count` of them in all."""

    supplier: str
    shown: tuple[Judgement, ...]
    count: int
    page: int
    pages: int
    first: int


def alike_answers(desk: Desk, supplier: str = "", page: int = 1) -> AnswersPage:
    """A page beyond the last is the last. Those taken back are among them."""
    every = all_judgements(desk, supplier)[::-1]
    pages = max(1, -(-len(every) // ROWS))
    page = min(max(page, 1), pages)
    first = (page - 1) * ROWS
    shown = every[first : first + ROWS]
    return AnswersPage(supplier=supplier, shown=shown, count=len(every), page=page, pages=pages, first=first + 1)
