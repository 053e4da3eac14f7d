"""The smallest movement at which something happens, against trying every one."""

from collections.abc import Callable, Sequence
from itertools import accumulate

from hypothesis import given
from hypothesis import strategies as st

from sourcing.choosing.turning import first_at

STEPS = st.lists(st.integers(0, 3), min_size=40, max_size=40)
JUMPS = st.dictionaries(st.integers(2, 40), st.integers(-30, 30), max_size=3)


def reaching(goods: Sequence[int], off: Sequence[int], jumps: dict[int, int], limit: int) -> Callable[[int, int], bool]:
    """Whether goods less what is taken off come to the limit; from a stop on all is so much more or less."""

    def happens(by: int, discounted: int) -> bool:
        moved = sum(much for stop, much in jumps.items() if stop <= by)
        return goods[by - 1] - off[discounted - 1] + moved >= limit

    return happens


@given(STEPS, STEPS, JUMPS, st.integers(-20, 120))
def test_the_first_is_found_where_the_sum_goes_up_and_down(
    rises: list[int], takes: list[int], jumps: dict[int, int], limit: int
) -> None:
    """Goods and what is taken off each never fall, their difference does."""
    happens = reaching(list(accumulate(rises)), list(accumulate(takes)), jumps, limit)
    plainly = next((by for by in range(1, 41) if happens(by, by)), None)
    assert first_at(happens, 40, sorted(jumps)) == plainly


def test_what_never_happens_is_asked_of_few() -> None:
    """A figure that may move by 10**12 is not gone through one by one."""
    asked: list[int] = []

    def never(by: int, _: int) -> bool:
        asked.append(by)
        return False

    assert first_at(never) is None
    assert len(asked) < 50 and max(asked) == 10**12


def test_nothing_is_tried_beyond_the_most() -> None:
    assert first_at(lambda by, _: by >= 5, 4) is None
    assert first_at(lambda by, _: by >= 5, 5) == 5
    assert first_at(lambda by, _: True, 0) is None
