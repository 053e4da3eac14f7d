"""The exact plan against brute force on thousands of small markets with every rule of the model on."""

import itertools
import random
from collections.abc import Mapping, Sequence
from datetime import date, timedelta

import pytest

from sourcing.choosing.programme import Solution, Step, Way, solve

Market = tuple[list[Way], dict[str, list[Step]]]


def brute_force(ways: Sequence[Way], steps: Mapping[str, Sequence[Step]]) -> tuple[int, date, int] | None:
    """(least cost, earliest completion among the cheapest, how many plans cost that) by trying every combination."""
    needs = sorted({way.need for way in ways})
    best: list[tuple[int, date]] = []
    for chosen in itertools.product(*([way for way in ways if way.need == need] for need in needs)):
        cost = sum(way.cost for way in chosen)
        refused = False
        for supplier in {way.supplier for way in chosen}:
            value = sum(way.value for way in chosen if way.supplier == supplier)
            step = [one for one in steps[supplier] if one.from_value <= value][-1]
            cost, refused = cost + step.charge, refused or step.refused
        if not refused:
            best.append((cost, max(way.latest or date.max for way in chosen)))
    if not best:
        return None
    least = min(best)
    return least[0], least[1], sum(1 for cost, _ in best if cost == least[0])


def random_market(chance: random.Random) -> Market:
    """Two to four needs, two to four suppliers, free-freight limits, fees below a minimum, refusals, unknown days."""
    suppliers = [f"s{at}" for at in range(chance.randint(2, 4))]
    steps: dict[str, list[Step]] = {}
    for supplier in suppliers:
        limits = sorted(chance.sample(range(500, 12_000, 50), chance.randint(0, 2)))
        first = Step(from_value=0, charge=chance.choice([0, 750, 1250]), refused=chance.random() < 0.15)
        rest = [Step(from_value=at, charge=chance.choice([0, 400, 900]), refused=False) for at in limits]
        steps[supplier] = [first, *rest]
    ways = []
    for need in range(chance.randint(2, 4)):
        for supplier in chance.sample(suppliers, chance.randint(1, len(suppliers))):
            for turn in range(chance.randint(1, 2)):
                cost = chance.randrange(100, 6000, 50)
                late = date(2026, 1, 13) + timedelta(days=chance.randint(1, 6))
                ways.append(
                    Way(
                        need=need,
                        supplier=supplier,
                        name=(supplier, str(need), str(turn)),
                        value=cost if chance.random() < 0.8 else cost - 37,
                        cost=cost,
                        latest=late if chance.random() < 0.9 else None,
                    )
                )
    return ways, steps


def completion(solution: Solution) -> date:
    """The day on which everything is here."""
    return max(way.latest or date.max for way in solution.chosen)


@pytest.mark.parametrize("seed", range(15))
def test_equal_to_brute_force(seed: int) -> None:
    """Cost, completion and tie, twenty markets a seed."""
    chance = random.Random(seed)
    for _ in range(20):
        ways, steps = random_market(chance)
        expected, found = brute_force(ways, steps), solve(ways, steps)
        if expected is None:
            assert found is None
            continue
        assert found is not None and found.proven
        assert (found.cost, completion(found)) == expected[:2]
        assert found.tied == (expected[2] > 1)


def test_the_order_of_the_input_never_decides() -> None:
    """Shuffled ways and suppliers, the same choice."""
    chance = random.Random(99)
    for _ in range(20):
        ways, steps = random_market(chance)
        first = solve(ways, steps)
        shuffled = chance.sample(ways, len(ways))
        backwards = dict(reversed(list(steps.items())))
        assert solve(shuffled, backwards) == first
