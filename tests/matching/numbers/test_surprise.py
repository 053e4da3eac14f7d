"""How much a near number means, on generated tables.

Measured on open product data: among 50,000 numbers a new 5-digit number has an existing neighbour one slip away in 90
of 100 cases, a 6-digit one in 54, a mixed one of 9 characters in none. How many of them are how long was not told; the
mixture here (3,500 of five digits, 8,900 of six, the rest mixed) is chosen so that random numbers give those shares.
"""

import random
from math import exp

import pytest

from sourcing.matching.numbers.near_numbers import NearNumbers
from sourcing.matching.numbers.surprise import NumberCrowd, crowd_of, surprise

FIVE, SIX, ALL = 3_500, 8_900, 50_000


def mixed(dice: random.Random) -> str:
    """Nine characters, three letters and six figures."""
    return "".join(dice.choice("ABCDEFGHJKMNPRTUVWXY") for _ in range(3)) + f"{dice.randrange(10**6):06d}"


@pytest.fixture(scope="module")
def table() -> tuple[list[str], NearNumbers]:
    """50,000 keys and their index."""
    dice = random.Random(11)
    keys = {*(str(key) for key in dice.sample(range(10_000, 100_000), FIVE))}
    keys |= {str(key) for key in dice.sample(range(100_000, 1_000_000), SIX)}
    while len(keys) < ALL:
        keys.add(mixed(dice))
    return sorted(keys), NearNumbers(sorted(keys))


def new_numbers(keys: list[str], kind: str) -> list[str]:
    """2,000 numbers of a kind that the table has not."""
    dice, known, found = random.Random(12), set(keys), set[str]()
    least = 10_000 if kind == "5 figures" else 100_000
    while len(found) < 2_000:
        key = mixed(dice) if kind == "9 mixed" else str(dice.randrange(least, 10 * least))
        if key not in known:
            found.add(key)
    return sorted(found)


@pytest.mark.parametrize(("kind", "share"), [("5 figures", 0.90), ("6 figures", 0.54), ("9 mixed", 0.00)])
def test_new_numbers_have_neighbours_by_chance(table: tuple[list[str], NearNumbers], kind: str, share: float) -> None:
    """The warning of the issue, and the table's own crowd foretells it: 1 - exp(-crowd) of a Poisson count."""
    keys, index = table
    asked = new_numbers(keys, kind)
    measured = (index.neighbours(asked) > 0).mean().item()
    assert measured == pytest.approx(share, abs=0.03)
    crowd = crowd_of(keys, index)
    assert 1 - exp(-crowd.near[kind]) == pytest.approx(measured, abs=0.04)


def test_the_shorter_and_the_more_numeric_the_less_a_near_number_means(table: tuple[list[str], NearNumbers]) -> None:
    """With one near key each."""
    crowd = crowd_of(*table)
    weights = [surprise(key, 1, crowd) for key in ("12345", "123456", "ABC123456")]
    assert weights[0] < weights[1] < 0.05 and weights[2] > 0.9


def test_the_more_near_keys_the_less_each_means() -> None:
    """Whatever the length."""
    crowd = NumberCrowd(keys=50_000, near={"9 mixed": 0.0, "5 figures": 2.3})
    for key in ("ABC123456", "12345"):
        weights = [surprise(key, count, crowd) for count in (1, 2, 3, 10, 50)]
        assert weights == sorted(weights, reverse=True) and weights[-1] < 0.02
        assert all(0 < weight < 1 for weight in weights)
    assert surprise("ABC123456", 0, crowd) == 0


def test_the_weight_is_the_share_of_slips_in_a_simulated_stream() -> None:
    """Numbers that are no keys: in a fiftieth of cases one of ours with a changed figure, else another article's.

    Among those with exactly n keys near, the share in which a given key is the right one is the weight (Bayes' rule).
    """
    dice = random.Random(5)
    keys = [str(key) for key in dice.sample(range(100_000, 1_000_000), 20_000)]
    known, index = set(keys), NearNumbers(keys)
    streams: list[str] = []
    truths: list[str] = []
    while len(streams) < 60_000:
        slip = dice.random() < 0.02
        truth = dice.choice(keys) if slip else ""
        at = dice.randrange(1, 6)
        number = (
            f"{truth[:at]}{dice.randrange(10)}{truth[at + 1 :]}" if slip else str(dice.randrange(100_000, 1_000_000))
        )
        if number not in known:
            streams.append(number)
            truths.append(truth)
    counts = index.neighbours(streams)
    crowd = crowd_of(keys, index)
    for near in (1, 2):
        right = [bool(truth) for truth, count in zip(truths, counts, strict=True) if count == near]
        weight = surprise("123456", near, crowd)
        assert weight == pytest.approx(sum(right) / len(right) / near, rel=0.25)
