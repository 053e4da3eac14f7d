"""The merge by number and maker, against going through every pair."""

import random

from sourcing.basics.part_number import maker_key, number_key
from sourcing.matching.by_key import NOT_STATED, OTHER, SAME, rows_by_key


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
