"""What another number on the part counts as, once it is known what the equivalence table says of it."""

import pytest

from sourcing.basics.order import Came
from sourcing.basics.value import changed
from sourcing.ordering.number_came import Judged, is_ordered_number, number_said, what_came
from tests.ordering_receipts.goods import bought, now_of

LINE = changed(bought().lines[0], maker_number="NW 77120-A")


@pytest.mark.parametrize("number", ["NW-77120", "nw 77120", "NW77120", "NW-77120-A"])
def test_the_number_ordered_under_any_writing(number: str) -> None:
    assert is_ordered_number(LINE, number)


@pytest.mark.parametrize("number", ["NW-77121", "0NW-77120", "", "-", "NW-7712O"])
def test_another_number_is_never_taken_for_it(number: str) -> None:
    """A blank is no number; O is not 0."""
    assert not is_ordered_number(LINE, number)


def test_a_blank_maker_number_is_borne_by_nothing() -> None:
    assert not is_ordered_number(changed(LINE, maker_number=""), "")


def test_what_the_supplier_said_he_sends_stands_where_nothing_is_typed() -> None:
    """So that a number he changed is not taken in under the old one because nobody typed."""
    line = now_of().lines[0]
    assert number_said(line, "") == ""
    told = changed(line, number="NW-77120B")
    assert number_said(told, "") == "NW-77120B"
    assert number_said(told, " NW-77120 ") == "NW-77120"


SAME, OTHER, NOT_WANTED = "yes was for NW-77120, X-1 came", "put X-1 aside", "do not fit X-1; it goes back"


@pytest.mark.parametrize(
    ("judged", "came", "why", "to_do"),
    [
        (Judged(matched="automatic", path="a path"), "same part", "a path", SAME),
        (Judged(matched="automatic", path="p", warnings=("holds only so",)), "same part", "p; holds only so", SAME),
        (Judged(matched="candidate", against=("a supplier says so",)), "another part", "a supplier says so", OTHER),
        (Judged(matched="none"), "another part", "no statement ties X-1 to PART-1", OTHER),
        (Judged(matched="candidate", against=("section",), vetoed=True), "not wanted", "section", NOT_WANTED),
        (Judged(matched="automatic", against=("polyester",)), "not wanted", "polyester", NOT_WANTED),
        (Judged(matched="automatic", banned="must not serve"), "not wanted", "must not serve", NOT_WANTED),
        (Judged(matched="candidate", accepted="accepted by Oona"), "same part", "accepted by Oona", SAME),
        (Judged(matched="candidate", accepted="accepted", banned="banned"), "not wanted", "banned", NOT_WANTED),
    ],
)
def test_only_good_standing_or_a_persons_word_counts(judged: Judged, came: Came, why: str, to_do: str) -> None:
    """And a must-not stands above both."""
    found = what_came(LINE, "X-1", judged)
    assert (found.came, found.why) == (came, why) and to_do in found.to_do
