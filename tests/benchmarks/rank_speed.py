"""How fast the offers of one part are ranked, in seconds of one core and as a ratio to sorting the same keys.

Run by hand: `python -m tests.benchmarks.rank_speed [offers]`. The plain way is Python's own sort of (cost, day, name):
it marks no front, gives no reason and no place to what is not known. Best of five each.
"""

import random
import sys
import time
from collections.abc import Callable
from decimal import Decimal

from sourcing.basics.choice import Priced, RankWishes
from sourcing.choosing.ranking import rank
from tests.choosing.priced_values import ASKED, priced

OFFERS, ROUNDS = 10_000, 5


def offers(count: int) -> list[Priced]:
    """Offers of 300 suppliers, the same every time: costs in cents, days up to six weeks, every tenth without a day."""
    dice = random.Random(11)

    def cents(most: int) -> str:
        return str(Decimal(dice.randrange(most)) / 100)

    return [
        priced(
            f"s{at % 300:03}",
            str(Decimal(dice.randrange(5_000, 20_000)) / 100),
            None if dice.random() < 0.1 else dice.randrange(1, 42),
            dice.choice(("fitted", "maker")),
            number=f"N{at}",
            freight=cents(3_000),
            duty=cents(900),
        )
        for at in range(count)
    ]


def best(work: Callable[[], object]) -> float:
    """Seconds of this process's time, the least of several rounds."""
    seconds = []
    for _ in range(ROUNDS):
        begun = time.process_time()
        work()
        seconds.append(time.process_time() - begun)
    return min(seconds)


def main(count: int) -> None:
    """Measure and print."""
    some = offers(count)
    keys = [(one.landed.total.amount, str(one.arrival.latest), one.supplier_name) for one in some]
    plain = best(lambda: sorted(keys))
    print(f"{count:,} offers; a plain sort of (cost, day, name): {plain:.4f} s")
    asked = (("by cost", RankWishes()), ("with 2.50 a day", RankWishes(value_per_day=Decimal("2.50"))))
    for name, wishes in asked:
        seconds = best(lambda wishes=wishes: rank(some, wishes, ASKED))  # type: ignore[misc]
        print(f"  ranked {name}, with front and reasons: {seconds:.3f} s, {seconds / plain:.0f} x")


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else OFFERS)
