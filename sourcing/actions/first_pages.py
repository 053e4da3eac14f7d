"""What the first pages of a counter that has just started would have to work out, worked out before anybody asks."""

from collections.abc import Callable
from contextlib import suppress

from ..basics.problem import Refused
from .back_list import back_list
from .desk import Desk
from .job_list import waiting
from .known_table import known_table
from .promises import open_promises
from .waiting_now import waiting_now


def ready_first_pages(desk: Desk) -> None:
    """Remember the jobs, the table of same parts and the queue of look-alikes. What is refused is told on its page."""
    some: tuple[Callable[[Desk], object], ...] = (waiting, open_promises, back_list, _table, _look_alikes)
    for one in some:
        with suppress(Refused):
            one(desk)


def _table(desk: Desk) -> None:
    with desk.store.reading() as connection:
        known_table(desk.store, connection)


def _look_alikes(desk: Desk) -> None:
    with desk.store.reading() as connection:
        waiting_now(connection, desk)
