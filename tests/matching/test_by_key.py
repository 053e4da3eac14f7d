"""The pairs of one number, against going through every pair."""

import random

from sourcing.basics.part_number import number_key
from sourcing.matching.by_key import MOST_PAIRS_OF_A_KEY, pairs_by_key


def test_it_finds_what_going_through_every_pair_finds() -> None:
    """Numbers in any dress, blanks among them."""
    dice = random.Random(4)
    numbers = ["", "NW-1", "nw 1", "NW-2", "N.W.2", "B3", "-"]
    rows, parts = ([number_key(dice.choice(numbers)) for _ in range(many)] for many in (200, 50))
    row, part = pairs_by_key(rows, parts)
    slow = [(i, j) for i, one in enumerate(rows) for j, other in enumerate(parts) if one and one == other]
    assert list(zip(row.tolist(), part.tolist(), strict=True)) == slow


def test_a_number_borne_by_thousands_on_both_sides_is_passed_over() -> None:
    """'1' in 3,000 rows and 3,000 parts would be nine million pairs; the others are found all the same."""
    row, part = pairs_by_key(["1"] * 3_000 + ["NW1"], ["NW1"] + ["1"] * 3_000)
    assert (row.tolist(), part.tolist()) == ([3_000], [0])
    row, part = pairs_by_key(["1"] * 100, ["1"] * (MOST_PAIRS_OF_A_KEY // 100))
    assert len(row) == MOST_PAIRS_OF_A_KEY


def test_no_keys_and_no_parts_find_nothing() -> None:
    """Blank ones neither."""
    for rows, parts in (([], ["A1234"]), (["A1234"], []), (["", "A1234"], ["", "B1234"])):
        assert [len(one) for one in pairs_by_key(rows, parts)] == [0, 0]
