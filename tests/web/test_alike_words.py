"""What stands on a look-alike's page: numbers with what differs marked, whatever a supplier writes into them."""

import pytest

from sourcing.documents.review_reasons import ONLY_IN_WORDS, apart
from sourcing.documents.side_by_side import marked


@pytest.mark.parametrize(
    ("theirs", "ours", "above", "below", "words"),
    [
        ("6305-2RS", "6203-2RS", "6<mark>3</mark>0<mark>5</mark>-2RS", "6<mark>2</mark>0<mark>3</mark>-2RS", "3 where"),
        ("NW-4O388", "NW-40388", "NW-4<mark>O</mark>388", "NW-4<mark>0</mark>388", "O where ours has 0, character 5."),
        ("nw 40388", "NW-40388", "nw 40388", "NW-40388", "They do not differ but in capitals, blanks and signs."),
        ("NW-40388", "NW-40388", "NW-40388", "NW-40388", "They are the same."),
        ("NW-40388A", "NW-40388", "NW-40388<mark>A</mark>", "NW-40388<mark>·</mark>", "A where ours has nothing"),
        ("KR-220", "BELT", "KR-220", "BELT", "They have little in common."),
    ],
)
def test_what_differs_is_marked_and_told(theirs: str, ours: str, above: str, below: str, words: str) -> None:
    """Character by character where they have much in common; by looks alone nothing is told."""
    found = marked(theirs, ours)
    assert (str(found.above), str(found.below)) == (above, below) and words in found.words


def test_what_a_supplier_writes_is_never_markup() -> None:
    """Also in the middle of a mark."""
    found = marked("<b>6203</b>&", "<i>6203</i>&")
    assert "<b>" not in found.above and "<i>" not in found.below
    assert "&lt;" in found.above and "&amp;" in found.above


def test_reasons_stand_under_the_heading_that_is_true_of_them() -> None:
    """Where something speaks against it, that heading is never empty."""
    assert apart(["same maker", "different bearing (17 mm)"], True) == (["same maker"], ["different bearing (17 mm)"])
    assert apart(["same maker"], True) == (["same maker"], [ONLY_IN_WORDS])
    assert apart(["same maker"], False) == (["same maker"], [])
