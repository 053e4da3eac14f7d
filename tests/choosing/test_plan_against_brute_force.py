"""The plan against the slow obvious twin on random questions with every rule on: sum, day, front, what is left out.

400 questions here; more with PLAN_TRIALS=20000 in the environment, or `python -m tests.choosing.many 20000`.
"""

import os
from decimal import Decimal

import pytest

from sourcing.basics.money import Money
from sourcing.basics.plan import PlanWishes
from sourcing.basics.value import changed
from tests.choosing.agreement import differences
from tests.choosing.hand_worked import MONDAY_14_40, THURSDAY, job
from tests.choosing.many import OUT_OF_TIME, failures
from tests.choosing.planned import plan_of

COUNT = int(os.environ.get("PLAN_TRIALS", "400"))
TOGETHER = 20
SECONDS = 60


@pytest.mark.parametrize("first", range(0, COUNT, TOGETHER))
def test_the_plan_is_what_trying_everything_finds(first: int) -> None:
    """Twenty seeds at a time; each can be replayed with `random_trial(seed)`."""
    told = failures(range(first, min(first + TOGETHER, COUNT)), SECONDS)
    assert [words for words in told if OUT_OF_TIME not in words] == []


def test_a_plan_that_is_not_least_is_found_out() -> None:
    """Another's plan, a cent too much, and a plan that comes late are each told."""

    trial = job("belt", "keeper", "idler", wishes=PlanWishes(need_by=THURSDAY), at=MONDAY_14_40)
    plan = plan_of(trial)
    assert differences(trial, plan) == []
    cent = Money(amount=Decimal("0.01"), currency="USD")
    assert "priced again" in differences(trial, changed(plan, counted=plan.counted + cent))[0]
    dearer = plan_of(changed(trial, offers={label: some[1:] for label, some in trial.offers.items()}))
    assert any("the least is 16330" in words for words in differences(trial, dearer))
    late = job("belt", "keeper", "idler", wishes=PlanWishes(), at=MONDAY_14_40, waiting=True)
    assert "breaks a rule" in differences(trial, changed(plan_of(late), wishes=trial.wishes))[0]
