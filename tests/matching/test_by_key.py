"""The merge by number and maker, against going through every pair."""

import random

from sourcing.basics.part_number import maker_key, number_key
from sourcing.matching.by_key import MOST_PAIRS_OF_A_KEY, NOT_STATED, OTHER, SAME, pairs_by_key, rows_by_key


def test_it_finds_what_going_through_every_pair_finds() -> None:
    """Numbers in any dress, makers stated or not, blanks among them."""
    dice = random.Random(4)
    numbers = ["", "NW-1", "nw 1", "NW-2", "N.W.2", "B3", "-"]
    makers = ["", "Norrowby", "NORROWBY", "Ostrevik"]
    rows = [(dice.choice(numbers), dice.choice(makers)) for _ in range(200)]
    parts = [(dice.choice(numbers), dice.choice(makers)) for _ in range(50)]
    found = rows_by_key(
        [one for one, _ in rows], [one for _, one in rows], [number_key(one) for one, _ in parts], [m for _, m in parts]
    )
    slow = set()
    for row, (number, maker) in enumerate(rows):
        for part, (other, its) in enumerate(parts):
            if number_key(number) and number_key(number) == number_key(other):
                left, right = maker_key(maker), maker_key(its)
                level = NOT_STATED if not left or not right else SAME if left == right else OTHER
                slow.add((row, part, level))
    assert set(found.itertuples(index=False, name=None)) == slow


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
