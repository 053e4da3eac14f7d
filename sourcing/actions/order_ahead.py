"""What a change or cancellation of an order would bring with it, told before it is done; nothing is kept."""

from collections.abc import Callable, Mapping, Sequence

from .desk import Desk, Pen
from .order_changes import Altered, cancel_on, change_on


class _NotKept(Exception):
    """Ends the transaction so that all of it is taken back."""


def look_at_change(desk: Desk, number: str, pieces: Mapping[int, int]) -> Altered:
    """The order as it would stand after that change, and what it brings with it. Refuses what the change refuses."""
    return _looked(desk, lambda pen: change_on(pen, number, pieces))


def look_at_cancel(desk: Desk, number: str, lines: Sequence[int] = ()) -> Altered:
    """The same for a cancellation of these lines, or of all that has not come."""
    return _looked(desk, lambda pen: cancel_on(pen, number, lines))


def _looked(desk: Desk, deed: Callable[[Pen], Altered]) -> Altered:
    """Do the deed and take it back at once: what is told before is then what the deed itself would tell."""
    found: list[Altered] = []
    try:
        with desk.writing("look ahead") as pen:
            found.append(deed(pen))
            raise _NotKept
    except _NotKept:
        return found[0]
