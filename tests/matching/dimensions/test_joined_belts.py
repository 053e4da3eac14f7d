"""V-belts joined side by side: how many, in the designation and in the words beside it.

Sources: the form 3/5V850 from memory, after ARPM/RMA IP-20 and IP-22; J for N in the metric letters from the contents
of the ISO standard of the effective system; that joined and single belts do not serve for one another from memory;
words common practice, no source.
"""

import pytest

from sourcing.matching.dimensions.reading import read_size
from sourcing.matching.dimensions.size import BeltSize
from sourcing.matching.dimensions.size_check import check_size


@pytest.mark.parametrize(
    ("text", "designation", "strands"),
    [
        ("belt 2/B36", "2/B36", 2),
        ("belt 3/5V850", "3/5V850", 3),
        ("belt 4/3VX600", "4/3VX600", 4),
        ("Verbundkeilriemen 3/SPB2000", "3/SPB2000", 3),
        ("joined belt 2B36", "2/B36", 2),
        ("banded belt B36, 2 strands", "B36", 2),
        ("courroies jumelées B36, 3 brins", "B36", 3),
        ("correas unidas B36", "B36", None),
        ("banded belt B36", "B36", None),
        ("belt 4/15J2000", "4/15J2000", 4),
        ("belt 15J2000", "15J2000", None),
        ("joined belt 3/8V1250", "3/8V1250", 3),
        ("belt B36", "B36", 1),
        ("belt B36, not joined", "B36", 1),
        ("Belts: 2 x B36", "B36", 1),
        ("belt 4L390/4L390", "4L390", 1),
    ],
)
def test_how_many_are_joined(text: str, designation: str, strands: int | None) -> None:
    """None: several, how many is not said; a count of belts is no count of strands."""
    size = read_size(text)
    assert isinstance(size, BeltSize)
    assert (size.designation, size.strands) == (designation, strands)


@pytest.mark.parametrize("text", ["belt 2B36", "belt 3/8V1250", "belt 5/8V1250", "2/B36", "belt 2-B36", "belt 1/B36"])
def test_what_may_be_another_thing_is_not_read_as_joined(text: str) -> None:
    """Two belts or a part number, three-eighths of an inch, a date: nothing in the text says which."""
    assert read_size(text) is None


@pytest.mark.parametrize(
    ("asked", "offered", "verdict", "said"),
    [
        ("2/B36", ("belt 2/B36",), "same size", "2 joined strands"),
        ("2/B36", ("B36", "Banded belt, 2 strands"), "same size", ""),
        ("2/B36", ("belt B36",), "different", "2 asked and 1 offered"),
        ("B36", ("belt 2/B36",), "different", "1 asked and 2 offered"),
        ("B36", ("B36", "Banded belt, 2 strands"), "different", "1 asked and 2 offered"),
        ("B36", ("B36", "Banded belt"), "different", "1 asked and several offered"),
        ("2/B36", ("belt 3/B36",), "different", "2 asked and 3 offered"),
        ("2/B36", ("belt 2/B38",), "different", "length"),
        ("2/B36", ("belt 2/A36",), "different", "section"),
        ("2/B36", ("joined belt B36",), "cannot be compared", "how many strands"),
        ("3/5V850", ("belt 5V850",), "different", "3 asked and 1 offered"),
        ("3/15J2000", ("belt 3/15J2000",), "same size", ""),
        ("5/8 x 39", ("joined belt 5/8 x 39",), "different", "strands"),
    ],
)
def test_joined_against_single(asked: str, offered: tuple[str, ...], verdict: str, said: str) -> None:
    """Different, by how many strands; what one of the offer's texts says holds for the others."""
    check = check_size(asked, *offered)
    assert check.verdict == verdict and said in check.words
    assert check.vetoes == (verdict != "same size")
