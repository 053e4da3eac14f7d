"""A small shop with candidates to judge: sheets with numbers near ours, and a plain stand-in for the score.

What is done with candidates is tested here, not how likely they are: the stand-in goes by the numbers alone.
"""

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

from rapidfuzz.distance import OSA

from sourcing.actions.candidates import find_candidates
from sourcing.actions.desk import Desk
from sourcing.actions.review_queue import review_queue
from sourcing.basics.judgement import ReviewQueue, SheetLookedThrough, Waiting
from sourcing.basics.match import Judged, RowMatch
from sourcing.matching.sheet_match import Columns
from tests.journeys.small_shop import sheet, shop

MONDAY = datetime(2026, 3, 2, 9, 0)
LEAST = 0.6
ROWS = [
    "NW-77120,Norrowby,Auger belt B88,189.50,126.90,2,",
    "NW-77210,Norrowby,Auger belt B88,189.50,120.00,2,",
    "NW-31270,Norrowby,Keeper,13.50,6.40,50,",
    "ZZ-1,Dunmarrow,Spark plug,5.00,2.10,50,",
]
"""BELT's own number, one like BELT's, one like KEEPER's, and one like nothing."""


def by_numbers(
    rows: Columns, parts: Columns, codes: Sequence[str], judged: Sequence[Judged] = (), most: int = 5
) -> list[RowMatch]:
    """The parts with a number at least 60 in 100 alike, likeliest first; the facts are the number of a tenth."""
    found = []
    for row, numbers in enumerate(rows.numbers):
        scored = [
            (max((OSA.normalized_similarity(a, b) for a in numbers for b in ours), default=0.0), code)
            for ours, code in zip(parts.numbers, codes, strict=True)
        ]
        near = sorted((one for one in scored if one[0] >= LEAST), key=lambda one: (-one[0], one[1]))[:most]
        for rank, (score, code) in enumerate(near, 1):
            found.append(_match(row, code, score, rank))
        if not near:
            found.append(RowMatch(row=row, part="", tier="none", score=0.0, rank=0, reasons=()))
    return found


def _match(row: int, code: str, score: float, rank: int) -> RowMatch:
    reasons = (f"number alike at {score:.2f}",)
    return RowMatch(
        row=row, part=code, tier="candidate", score=score, rank=rank, reasons=reasons, facts=(int(score * 10),)
    )


def judging_shop(folder: Path, rows: Sequence[str] = ROWS) -> Desk:
    """The shop on Monday with a sheet of Stonegarth's, looked through."""
    desk = shop(folder, MONDAY)
    sheet(desk, folder, "stonegarth", "2026-03-01", rows)
    find(desk)
    return desk


def find(desk: Desk, supplier: str = "") -> tuple[SheetLookedThrough, ...]:
    """Find candidates with the stand-in."""
    return find_candidates(desk, supplier, match=by_numbers)


def queue(desk: Desk, supplier: str = "") -> ReviewQueue:
    """All that waits."""
    return review_queue(desk, supplier, None)


def pairs(desk: Desk, supplier: str = "") -> list[tuple[str, str]]:
    """Number and part of all that waits, in its order."""
    return [(one.kept.offer.supplier_number, one.part.code) for one in queue(desk, supplier).shown]


def waiting(desk: Desk, number: str, part: str) -> Waiting:
    """The candidate of that number and part."""
    (found,) = [one for one in queue(desk).shown if (one.kept.offer.supplier_number, one.part.code) == (number, part)]
    return found
