"""Write down that a part was looked up, so that its candidates are judged before those nobody asks for."""

from ..basics.problem import Refused
from ..storage.part_lookups import add_lookup
from .desk import Desk


def note_lookup(desk: Desk, part: str) -> None:
    """Count a look-up of our part. Where somebody else is writing, or nothing can be written, it is not counted:

    a look-up must never wait or fail for the sake of a count.
    """
    try:
        with desk.store.noting() as connection:
            add_lookup(connection, part, desk.at)
    except Refused:
        return
