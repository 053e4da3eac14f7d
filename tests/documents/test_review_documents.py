"""Numbers side by side, the queue and the answers in text."""

import io
from datetime import datetime

import openpyxl
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.equivalence import OurPart
from sourcing.basics.judgement import KeptCandidate, ReviewQueue, Waiting
from sourcing.basics.value import changed
from sourcing.documents.review import HEADER, queue_text, queue_xlsx
from sourcing.documents.side_by_side import side_by_side
from tests.builders import number, offer, usd


@pytest.mark.parametrize(
    ("one", "other", "lines"),
    [
        ("NW-77210", "NW-77120", ("NW-77210", "NW-77120", "     ^^")),
        ("NW-40388", "NW-403388", ("NW-403·88", "NW-403388", "      ^")),
        ("PB-NW-1234", "NW-1234", ("PB-NW-1234", "···NW-1234", "^^")),
        ("nw 1234", "NW-1234", ("nw 1234", "NW-1234", "")),
        ("NW-1234", "NW-1234", ("NW-1234", "NW-1234", "")),
        ("754-04060", "OX-7", ("754-04060", "OX-7", "")),
        ("", "", ("", "", "")),
        ("ß123456", "ss123456", ("·ß123456", "ss123456", "^^")),
    ],
)
def test_a_caret_stands_under_each_character_that_differs(one: str, other: str, lines: tuple[str, str, str]) -> None:
    """Case, blanks and punctuation don't count; numbers with little in common are shown as they are."""
    assert side_by_side(one, other) == lines


@given(st.text("AB01- ", max_size=9), st.text("AB01- ", max_size=9))
def test_no_character_is_lost_and_carets_stand_under_them(one: str, other: str) -> None:
    above, below, marks = side_by_side(one, other)
    assert above.replace("·", "") == one and below.replace("·", "") == other
    assert len(marks) <= max(len(above), len(below)) and set(marks) <= {" ", "^"}


def waiting(candidate: int = 7, **more: object) -> Waiting:
    """A candidate of a belt."""
    row = offer("stonegarth", "NW-77210", "120.00", maker="Norrowby", description="=V\x1b[31m B88")
    kept = KeptCandidate(
        candidate=candidate,
        offer=row,
        part="BELT",
        score=0.9123,
        rank=1,
        reasons=("number alike", "descriptions agree"),
        against=False,
        facts=(1,),
        found_at=datetime(2026, 3, 2),
    )
    one = Waiting(
        kept=kept,
        part=OurPart(code="BELT", name="Auger drive belt", size="B88"),
        supplier_name="Stonegarth Trade Parts",
        price=usd("120.00"),
        asked=3,
        worth=usd("360.00"),
        near=(number("NW-77210", "Norrowby"), number("NW-77120", "Norrowby")),
    )
    return changed(one, **more)


def queue(*shown: Waiting) -> ReviewQueue:
    """A queue that shows all it has."""
    return ReviewQueue(supplier="", rows=len(shown), candidates=len(shown), shown=shown)


def test_a_candidate_is_shown_with_everything_a_person_needs() -> None:
    assert queue_text(queue(waiting())).splitlines() == [
        "Candidates of all suppliers: 1 row and 1 candidate wait. None is ordered by itself.",
        "",
        "Candidate 7: score 0.91, place 1 of its row",
        "  worth          360.00 USD: 120.00 USD a piece, asked for 3 times",
        "  from           Stonegarth Trade Parts, sheet of 2026-01-05, row 2",
        "  its row        NW-77210, Norrowby, =V�[31m B88",
        "  our part       BELT, Auger drive belt, B88",
        "  its number     NW-77210  Norrowby",
        "  ours           NW-77120  Norrowby",
        "  differs             ^^",
        "  speaks for     number alike; descriptions agree",
    ]


def test_what_speaks_against_is_named_and_an_unknown_worth_is_not_zero() -> None:
    one, reasons = waiting(price=None, worth=None, asked=0, near=None), ("number alike", "different section")
    text = " ".join(queue_text(queue(changed(one, kept=changed(one.kept, reasons=reasons, against=True)))).split())
    assert "speaks against different section" in text and "speaks for number alike" in text
    assert "not known, no price in the shop's currency; never asked for, which counts as a tenth" in text


def test_nothing_waits() -> None:
    """And sheets nobody has looked through are named."""
    text = queue_text(changed(queue(), supplier="stonegarth", not_looked_through=(3,)))
    assert text.startswith("No candidate of stonegarth waits") and "Not looked through yet: sheet 3" in text


def test_the_workbook_has_a_row_for_each_candidate_and_room_for_the_answer() -> None:
    """A supplier's formula stays text."""
    book = openpyxl.load_workbook(io.BytesIO(queue_xlsx(queue(waiting(), waiting(8)))))
    rows = list(book.worksheets[0].iter_rows(values_only=True))
    assert rows[0] == HEADER and len(rows) == 3
    row = dict(zip(HEADER, rows[1], strict=True))
    assert (row["candidate"], row["answer"], row["our part"], row["score"]) == (7, None, "BELT", 0.9123)
    assert row["description"] == "=V�[31m B88" and row["sheet of"] == datetime(2026, 1, 5)
