"""How fast the best plan is proven, in seconds and beside a plain formulation of the same instances on the same solver.

Run by hand: `python -m tests.benchmarks.plan_speed [instances] [sizes such as 10x8 50x20]`. Instances are of the
project's own kind (`free_freight`). Ours is timed from needs, offers and terms to the whole plan with its alternatives,
the plain one from numbers to its optimum. Both must find the same sum. 'more' lets more pieces be bought than needed
where that pays, which the plain one can't say; 'all rules' puts weights, discounts, duty, fees and taxes on.
"""

import statistics
import sys
import time
from collections.abc import Sequence
from decimal import Decimal

from sourcing.basics.plan import Plan, PlanWishes
from sourcing.basics.value import Value, changed
from tests.benchmarks.plain_plan import by_line, plain_optimum
from tests.choosing.instances import Shops, free_freight, shops_trial
from tests.choosing.planned import plan_of
from tests.choosing.random_terms import Dice, random_terms
from tests.choosing.trial import Trial

SIZES = {"10x8": 0.1, "50x20": 2.0, "100x50": 10.0}
FRONT = 1.0
COUNT = 20
FEW = 5
"""With all rules on, larger instances take long: so many of them."""
NEVER = PlanWishes(more_than_needed="never", seconds=60)
MORE = PlanWishes(seconds=60)
WITH_FRONT = PlanWishes(more_than_needed="never", front=True, seconds=60)


class Timed(Value, frozen=True, kw_only=True):
    """One instance solved: seconds, the sum counted in cents, whether it is proven, the gap in per cent."""

    seconds: float
    cents: int
    proven: bool
    gap: Decimal


def timed(trial: Trial) -> Timed:
    """Our plan, timed."""
    start = time.perf_counter()
    plan: Plan = plan_of(trial)
    seconds = time.perf_counter() - start
    return Timed(seconds=seconds, cents=plan.counted.minor(), proven=plan.proven, gap=plan.gap_percent)


def plain(shops: Shops) -> tuple[float, int]:
    """The plain formulation, timed: seconds and cents."""
    start = time.perf_counter()
    cents = plain_optimum(shops)
    return time.perf_counter() - start, cents


def all_rules(shops: Shops, seed: int) -> Trial:
    """The same needs and prices with every rule of the terms on at random, and weights and sizes on the sheets."""
    trial, dice = shops_trial(shops, MORE), Dice(seed)
    doors = {
        name: changed(door, terms=changed(random_terms(dice, name, "USD"), minimum_order=None))
        for name, door in trial.doors.items()
    }
    offers = {
        label: tuple(
            changed(
                offer,
                weight_kg=Decimal(dice.randint(50, 4000)) / 1000,
                length_cm=Decimal(dice.randint(5, 60)),
                width_cm=Decimal(dice.randint(5, 30)),
                height_cm=Decimal(dice.randint(1, 20)),
                origin=dice.choice(["CN", "DE", "US"]),
                tariff_code=dice.choice(["401039", "848210", "731511"]),
            )
            for offer in some
        )
        for label, some in trial.offers.items()
    }
    return changed(trial, doors=doors, offers=offers)


def row(name: str, ours: Sequence[Timed], target: float | None) -> str:
    """One line of the table: median and worst seconds, how many are proven."""
    seconds = [one.seconds for one in ours]
    proven = sum(one.proven for one in ours)
    aim = "" if target is None else f"  (at most {target:g} s)"
    gap = "" if proven == len(ours) else f"  largest gap {max(one.gap for one in ours)} %"
    middle, worst = statistics.median(seconds), max(seconds)
    return f"{name:24} median {middle:7.3f} s  worst {worst:7.3f} s  proven {proven}/{len(ours)}{gap}{aim}"


def measure(size: str, count: int) -> None:
    """One size against the plain formulation, and with more on."""
    needs, suppliers = (int(word) for word in size.split("x"))
    instances = [free_freight(seed, needs, suppliers) for seed in range(count)]
    ours, others = [], []
    for shops in instances:
        ours.append(timed(shops_trial(shops, NEVER)))
        others.append(plain(shops))
    wrong = sum(one.cents != cents for one, (_, cents) in zip(ours, others, strict=True) if one.proven)
    dearer = [100 * (by_line(shops) / cents - 1) for shops, (_, cents) in zip(instances, others, strict=True)]
    ratio = statistics.median(one.seconds / seconds for one, (seconds, _) in zip(ours, others, strict=True))
    print(row(size, ours, SIZES.get(size)))
    print(
        f"{'':24} plain  {statistics.median(seconds for seconds, _ in others):7.3f} s  ours takes {ratio:.2f} times"
        f" as long (median); {wrong} sums differ; cheapest per line is {statistics.median(dearer):.1f} % dearer"
        f" ({min(dearer):.1f} to {max(dearer):.1f})"
    )
    more = [timed(shops_trial(shops, MORE)) for shops in instances]
    print(row(f"{size}, more", more, None))
    if needs <= 50:
        some = instances if needs <= 10 else instances[:FEW]
        print(row(f"{size}, all rules", [timed(all_rules(shops, at)) for at, shops in enumerate(some)], None))


def front(count: int) -> None:
    """The whole front of cost and date."""
    points = [timed(shops_trial(free_freight(seed, 10, 8), WITH_FRONT)) for seed in range(count)]
    print(row("10x8, whole front", points, FRONT))


def main() -> None:
    """The table."""
    words = sys.argv[1:]
    count = int(words[0]) if words else COUNT
    plan_of(shops_trial(free_freight(0, 2, 2), NEVER))  # what is loaded once is not counted
    for size in words[1:] or SIZES:
        measure(size, count)
    front(count)


if __name__ == "__main__":
    main()
