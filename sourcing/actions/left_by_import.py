"""What an import leaves for a person: rows of the sheets taken in that may be our parts, and sheets still to look at.

Looking for candidates takes longer than importing: measured on two cores, 5,000 rows took 3 s against 31 parts and
13 s against 1,000, 100,000 rows 30 to 40 s. So an import looks through a few thousand rows, and only names the command
for more. It looks after the sheets are kept: whoever breaks it off loses no sheet.
"""

from collections import defaultdict
from collections.abc import Mapping, Sequence

from ..basics.judgement import LeftByImport, SheetLookedThrough
from ..basics.value import changed
from ..storage.equivalence import our_parts
from .candidates import MatchRows, Tell, keep_findings, look_through, sheets_to_look_through
from .desk import Desk
from .import_sheets import Imported
from .review_queue import is_likely, review, waiting_rows

MOST_ROWS = 6_000
"""Rows looked through at once after an import, of all its sheets together."""


def left_by_import(
    desk: Desk, imported: Sequence[Imported], tell: Tell | None = None, match: MatchRows | None = None
) -> tuple[Imported, ...]:
    """The same, with what waits on each sheet just taken in; candidates are looked for unless the sheets are long.

    Nothing is added to a sheet that was there already or does not count, and in a shop without a part of its own.
    `match` stands in for `match_rows`.
    """
    new = {one.kept.sheet for one in imported if not one.again}
    with desk.store.reading() as connection:
        sheets = [one for one in sheets_to_look_through(connection, desk.at.date(), again=False) if one.sheet in new]
        if not sheets or not our_parts(connection):
            return tuple(imported)
        if sum(one.offers for one in sheets) > MOST_ROWS:
            left = {one.sheet: LeftByImport(looked=False) for one in sheets}
            return _with_left(imported, left)
        findings = look_through(connection, desk.at, sheets, tell, match)
    return _with_left(imported, _left(desk, keep_findings(desk, findings)))


def _with_left(imported: Sequence[Imported], left: Mapping[int, LeftByImport]) -> tuple[Imported, ...]:
    return tuple(one if one.again else changed(one, left=left.get(one.kept.sheet)) for one in imported)


def _left(desk: Desk, done: Sequence[SheetLookedThrough]) -> dict[int, LeftByImport]:
    waiting, likely = _waiting(desk)
    return {
        one.sheet: LeftByImport(
            looked=True, ours=one.automatic, waiting=len(waiting[one.sheet]), likely=len(likely[one.sheet])
        )
        for one in done
    }


def _waiting(desk: Desk) -> tuple[defaultdict[int, set[int]], defaultdict[int, set[int]]]:
    """The offers of each sheet that wait, and the likely ones among them."""
    waiting: defaultdict[int, set[int]] = defaultdict(set)
    likely: defaultdict[int, set[int]] = defaultdict(set)
    with desk.store.reading() as connection:
        for one in waiting_rows(review(connection, desk)):
            waiting[one.sheet].add(one.offer)
            if is_likely(one):
                likely[one.sheet].add(one.offer)
    return waiting, likely
