"""Which part it is by its evidence: what settles it, what contradicts it, what is only a clue."""

from collections.abc import Sequence
from typing import Any

import pytest

from sourcing.basics.equivalence import OurPart, Path, Standing
from sourcing.basics.evidence import Evidence
from sourcing.basics.identity import Identity, Tie
from sourcing.basics.job import JobLine, Machine
from sourcing.basics.part_number import OURS, PartNumber
from sourcing.matching.identity.identify import Question, identify
from tests.builders import number, statement

MACHINE = Machine(description="snow thrower", maker="Norrowby", model="NW-4210", serial="1048221", component="OV-88T")
PARTS = {"BELT": OurPart(code="BELT", name="Drive belt", size="B88"), "OTHER": OurPart(code="OTHER", name="Other belt")}
TIED: dict[str, tuple[tuple[str, Standing, str], ...]] = {
    "NW77120": (("BELT", "maker", ""),),
    "OV20417": (("BELT", "fitted", ""),),
    "NW1": (("OTHER", "maker", ""),),
    "DM15880": (("BELT", "supplier", ""),),
    "TWICE1": (("BELT", "maker", ""), ("OTHER", "maker", "")),
    "BAD1": (("BELT", "maker", "it slipped"),),
}


def look_up(asked: PartNumber) -> Sequence[Tie]:
    """A small equivalence table."""
    return [
        Tie(part=part, path=Path(links=(statement(number(part, OURS), "same part", asked, standing),)), banned=banned)
        for part, standing, banned in TIED.get(asked.key, ())
    ]


def judged(*evidence: Evidence, part: str = "BELT", machine: Machine = MACHINE) -> Identity:
    """The judgement of a line with that evidence."""
    line = JobLine(title="belt", part=part, quantity=1 if part else 0, evidence=evidence)
    return identify(Question(line=line, machine=machine), look_up, PARTS)


def says(kind: str, printed: str = "", **fields: Any) -> Evidence:
    """A line of evidence."""
    return Evidence(kind=kind, number=printed, **fields)  # type: ignore[arg-type]


MACHINE_LIST = says("machine list", "NW-77120", maker="Norrowby", size="B88", words="aramid, wrapped")
COMPONENT_LIST = says("component list", "OV-20417", maker="Ostrevik", size="B88")
STAMP = says("printed on the removed part", "4L880")
MEASURED = says("removed part measured", words="about 89 in outside")


def test_both_lists_settle_it() -> None:
    found = judged(MACHINE_LIST, COMPONENT_LIST, STAMP, MEASURED)
    assert (found.part, found.certainty) == ("BELT", "lists agree")
    assert (found.asked.cord, found.asked.cover) == ("aramid", "wrapped")
    assert found.conflicts[0].startswith("stamped 4L880, both lists say B88: different section")
    assert "Norrowby NW-77120 is BELT: BELT is the same part as Norrowby NW-77120" in found.seen[0].words


@pytest.mark.parametrize(
    "evidence", [(), (STAMP,), (STAMP, MEASURED), (says("printed on the removed part", "NW-77120"),)]
)
def test_clues_alone_settle_nothing(evidence: tuple[Evidence, ...]) -> None:
    """Not even a printed number that stands for our part: it may be a wrong part an earlier owner made fit."""
    found = judged(*evidence)
    assert (found.part, found.certainty) == ("", "not settled")
    assert "find the maker's parts list for Norrowby NW-4210, serial 1048221" in found.next_steps


def test_geometry_gives_a_size_only() -> None:
    found = judged(says("drive geometry", "NW-77120", size="B88"))
    assert not found.settled and found.seen[0].use == "size only"


@pytest.mark.parametrize(
    "lists",
    [
        (MACHINE_LIST, says("machine list", "NW-1")),
        (MACHINE_LIST, says("component list", "NW-1")),
        (says("seller's list", "NW-77120"), says("seller's list", "NW-1")),
    ],
)
def test_lists_trusted_alike_that_disagree_settle_nothing(lists: tuple[Evidence, ...]) -> None:
    """Two makers' lists, or two sellers': which of them is right is asked."""
    found = judged(*lists)
    assert (found.part, found.leaning, found.certainty) == ("", "BELT", "contradicted")
    assert found.conflicts[0].startswith("the lists disagree on the part")


def test_a_sellers_list_is_overruled_and_named() -> None:
    found = judged(MACHINE_LIST, says("seller's list", "NW-1"))
    assert (found.part, found.certainty, found.seen[1].use) == ("BELT", "one list", "overruled")
    assert "makers' lists are trusted before it" in found.conflicts[0]


def test_a_sellers_list_alone_says_how_little_it_is() -> None:
    found = judged(says("seller's list", "NW-77120"))
    assert (found.part, found.certainty) == ("BELT", "sellers' lists only")
    assert found.next_steps


def test_a_sellers_list_does_not_settle_against_an_unknown_number_of_the_makers() -> None:
    """The maker's list names a number nobody tied to a part: the seller may mean another part."""
    found = judged(says("machine list", "NW-99999"), says("seller's list", "NW-77120"))
    assert found.part == "" and "a seller's list does not settle it" in found.conflicts[0]


def test_the_drive_speaks_against_a_sellers_list() -> None:
    """Geometry is trusted before a seller, and after a maker."""
    drive = says("drive geometry", size="B81")
    assert judged(says("seller's list", "NW-77120"), drive).part == ""
    told = judged(MACHINE_LIST, drive)
    assert told.part == "BELT" and told.conflicts[0].startswith("the drive asks for B81, the machine list says B88")


def test_a_list_for_other_serial_numbers_is_set_aside_with_the_reason() -> None:
    found = judged(MACHINE_LIST, says("machine list", "NW-1", serial_from="1050000"))
    assert found.part == "BELT" and found.seen[1].use == "set aside"
    assert found.seen[1].words == "the list is for serial 1050000 and up; 1048221 is below it"


def test_a_list_whose_range_cannot_be_told_keeps_it_open() -> None:
    """The serial number is not noted: one of two lists holds, and nobody knows which."""
    unread = Machine(description="snow thrower", model="NW-4210")
    found = judged(MACHINE_LIST, says("machine list", "NW-1", serial_from="1050000"), machine=unread)
    assert found.part == "" and "the machine's serial number is not noted" in found.conflicts[0]
    assert "read model and serial number from the machine's own plate" in found.next_steps


@pytest.mark.parametrize("printed", ["DM-15880", "TWICE-1", "BAD-1", "NW-99999"])
def test_what_must_first_be_found_out_settles_nothing(printed: str) -> None:
    """A statement nobody confirmed, a number of two parts, a must-not, a number in no statement."""
    found = judged(says("machine list", printed))
    assert found.part == "" and found.seen[0].use == "open"
    assert any(step.startswith("clear up the machine list") for step in found.next_steps)


@pytest.mark.parametrize("size", ["A88", "B81"])
def test_a_list_whose_size_is_not_our_parts_settles_nothing(size: str) -> None:
    """Either the table is wrong or the list."""
    assert judged(says("machine list", "NW-77120", size=size)).certainty == "contradicted"
    assert judged(MACHINE_LIST, says("component list", size=size)).certainty == "contradicted"


def test_the_line_asks_for_another_part() -> None:
    found = judged(MACHINE_LIST, part="OTHER")
    assert "the job's line asks for OTHER, the evidence says BELT: one of the two is wrong" in found.conflicts
    assert found.asked.cord == ""  # what the list says of the other part is not asked of this one


def test_lists_that_differ_on_the_cord_are_told() -> None:
    found = judged(MACHINE_LIST, says("component list", "OV-20417", words="polyester cord"))
    assert any(
        "the machine list asks for cord aramid, the component list for polyester" in one for one in found.conflicts
    )


def test_a_printed_number_of_another_part_is_explained() -> None:
    found = judged(MACHINE_LIST, says("printed on the removed part", "NW-1"))
    assert found.part == "BELT" and "an earlier owner may have fitted another part" in found.conflicts[0]


def test_a_clue_that_agrees_says_so() -> None:
    notes = [one.words for one in judged(MACHINE_LIST, says("printed on the removed part", "OV-20417")).seen]
    assert notes[1] == "another number of the same part: agrees"
    sized = judged(MACHINE_LIST, says("removed part measured", size="B88")).seen[1]
    assert sized.words.startswith("agrees in size, which alone settles nothing")


def test_evidence_taken_back_counts_for_nothing() -> None:
    gone = says("machine list", "NW-1", taken_back="Oona Brandeth on 2026-03-02: misread")
    found = judged(MACHINE_LIST, gone)
    assert found.part == "BELT" and found.seen[1].use == "set aside"


def test_the_order_of_the_lines_decides_nothing() -> None:
    one, other = judged(MACHINE_LIST, COMPONENT_LIST, STAMP), judged(STAMP, COMPONENT_LIST, MACHINE_LIST)
    assert (one.part, one.certainty, set(one.conflicts)) == (other.part, other.certainty, set(other.conflicts))


SELLER_SIZE = says("seller's list", size="A88")


def test_a_sellers_size_against_a_makers_list_is_told_and_overruled() -> None:
    """It names no number, and is heard all the same."""
    found = judged(MACHINE_LIST, SELLER_SIZE)
    assert (found.part, found.certainty) == ("BELT", "one list")
    (told,) = found.conflicts
    assert told.startswith("a seller's list says A88, the machine list says B88: different section")
    assert told.endswith("makers' lists are trusted before it")


def test_a_sellers_size_against_another_sellers_list_settles_nothing() -> None:
    """Both are trusted alike."""
    found = judged(says("seller's list", "NW-77120", maker="Norrowby", size="B88"), SELLER_SIZE)
    assert (found.part, found.certainty) == ("", "contradicted")
    assert found.conflicts[0].startswith("the seller's list says")
    assert found.against_ordering("BELT").startswith("not settled: the evidence contradicts itself")


def test_a_list_that_agrees_in_size_is_said_and_heard_against_the_stamp() -> None:
    """It names no number, so it is no second list that names the part."""
    found = judged(MACHINE_LIST, says("component list", size="B88"), STAMP)
    assert (found.part, found.certainty) == ("BELT", "one list")
    assert found.words.endswith("the component list (B88) agrees in size and names no number")
    assert found.seen[1].words == "names no number; agrees in size"
    alone = judged(says("machine list", "NW-77120", maker="Norrowby"), says("component list", size="B88"), STAMP)
    assert alone.conflicts[0].startswith("stamped 4L880, the machine list says B88") is False
    assert "B88: different section" in alone.conflicts[0]


def test_a_size_nobody_can_read_is_said() -> None:
    """'B eighty' is compared with nothing, and that is told."""
    found = judged(MACHINE_LIST, says("component list", size="B eighty"))
    assert found.seen[1].words == "names no number; its size 'B eighty' can't be read, so it is compared with none"


def test_nothing_is_ordered_against_the_evidence() -> None:
    """A doubt is none; a contradiction and another part are."""
    assert judged(MACHINE_LIST).against_ordering("BELT") == ""
    assert judged(STAMP).against_ordering("BELT") == ""
    assert judged(MACHINE_LIST).against_ordering("OTHER") == "the evidence says BELT and not OTHER"
