"""The plan against brute force on as many random questions as asked: `python -m tests.choosing.many 20000 [first]`.

Prints every question on which they differ, with the seed that gives it again, and those that take long.
"""

import sys
import time
from collections.abc import Iterator

from sourcing.basics.value import changed
from tests.choosing.agreement import differences
from tests.choosing.planned import plan_of
from tests.choosing.random_trials import random_trial

SECONDS = 20
"""These questions are small: that a plan takes so long is told."""

OUT_OF_TIME = "its time ran out, so it was not compared"


def failures(seeds: range, seconds: int = SECONDS) -> Iterator[str]:
    """One text for each seed on which plan and brute force differ, the plan breaks, or its time runs out."""
    for seed in seeds:
        trial = random_trial(seed)
        trial = changed(trial, wishes=changed(trial.wishes, seconds=seconds))
        start = time.monotonic()
        try:
            plan = plan_of(trial)
            out_of_time = time.monotonic() - start > seconds
            wrong = [OUT_OF_TIME] if out_of_time else differences(trial, plan)
        except Exception as error:  # a plan that breaks is a finding like any other
            wrong = [f"{type(error).__name__}: {error}"]
        if wrong:
            yield f"seed {seed}: " + " | ".join(wrong)


def main() -> None:
    """Count and tell."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 2000
    first = int(sys.argv[2]) if len(sys.argv) > 2 else 0
    start, wrong = time.monotonic(), 0
    for told in failures(range(first, first + count)):
        wrong += 1
        print(told, flush=True)
    print(f"{wrong} of {count} differ, {time.monotonic() - start:.0f} s")


if __name__ == "__main__":
    main()
