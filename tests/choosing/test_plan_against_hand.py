"""Brute force and the plan against sums worked out by hand."""

from datetime import datetime
from decimal import Decimal

from sourcing.basics.plan import PlanWishes
from tests.choosing.agreement import differences
from tests.choosing.brute_force import Tried, brute_force, waiting_of
from tests.choosing.hand_worked import FRIDAY, MONDAY_14_40, THURSDAY, job
from tests.choosing.planned import plan_of
from tests.choosing.trial import Trial

ALL = ("belt", "keeper", "idler")


def only(trial: Trial) -> Tried:
    """The one plan that brute force finds best, and the product with it."""
    (plan,) = brute_force(trial).best
    assert differences(trial, plan_of(trial)) == []
    return plan


def suppliers(plan: Tried) -> list[str]:
    """Who gets an order."""
    return [order.landed.supplier for order in plan.orders]


def test_the_belt_alone_comes_from_the_cheaper_freight() -> None:
    """119.50 + 9.95 = 129.45 against 128.00 + 14.95 = 142.95."""
    plan = only(job("belt", wishes=PlanWishes()))
    assert (plan.count, suppliers(plan)) == (12945, ["larkmoor"])


def test_free_freight_makes_the_dearer_prices_cheaper() -> None:
    """128.00 + 12.80 + 22.50 = 163.30 free; 154.45 + 9.95 = 164.40; line by line 139.65 + 37.45 = 177.10."""
    plan = only(job(*ALL, wishes=PlanWishes(need_by=THURSDAY)))
    assert (plan.count, suppliers(plan), plan.latest) == (16330, ["stonegarth"], THURSDAY)


def test_what_waits_is_ordered_where_it_is_in_time() -> None:
    """The idler comes to Stonegarth in 2-3 weeks: Larkmoor's 164.40, against 155.75 + 39.70 = 195.45 from both."""
    plan = only(job(*ALL, wishes=PlanWishes(need_by=THURSDAY), waiting=True))
    assert (plan.count, suppliers(plan), plan.latest) == (16440, ["larkmoor"], THURSDAY)


def test_after_the_cut_off_nothing_is_in_time() -> None:
    """At 15:10 both cut-offs are past, Larkmoor is here on Friday: no plan, rather than one that is late."""
    at = datetime(2026, 3, 2, 15, 10)
    late = job(*ALL, wishes=PlanWishes(need_by=THURSDAY), waiting=True, at=at)
    assert not brute_force(late).best
    assert [words for words in plan_of(late).unfilled if "nearest is Larkmoor on 2026-03-06" in words]
    # Beside it: all three a day late, in one order.
    (whole,) = [one for one in plan_of(late).alternatives if one.name == "all of it, as soon as can be"]
    assert (str(whole.total), whole.latest) == ("164.40 USD", FRIDAY)
    assert "idler" not in {item.item.need for order in plan_of(late).orders for item in order.landed.items}
    friday = only(job(*ALL, wishes=PlanWishes(need_by=FRIDAY), waiting=True, at=at))
    assert (friday.count, friday.latest) == (16440, FRIDAY)


def test_the_front_is_dearer_only_where_it_is_sooner() -> None:
    """At 13:30 Stonegarth's order leaves today and is here on Wednesday at 163.30: it beats everything else."""
    at = datetime(2026, 3, 2, 13, 30)
    found = brute_force(job(*ALL, wishes=PlanWishes(), at=at))
    assert [count for count, _ in found.front] == [16330]
    trial = job(*ALL, wishes=PlanWishes(front=True), at=at, waiting=True)
    waiting = brute_force(trial)
    # Cheapest of all is Stonegarth's whole order when the idler comes; in time is only Larkmoor's.
    assert [count for count, _ in waiting.front] == [16330, 16440]
    assert [point.counted.minor() for point in plan_of(trial).front] == [16330, 16440]


def test_a_day_has_its_stated_price() -> None:
    """Stonegarth waits for the idler until 26 March: 24 days at 0.05 make 163.30 + 1.20; Larkmoor 164.40 + 0.15."""
    wishes = PlanWishes(objective="cost and days", value_per_day=Decimal("0.05"))
    trial = job(*ALL, wishes=wishes, waiting=True, at=MONDAY_14_40)
    plan = only(trial)
    assert (plan.count, waiting_of(trial, plan), suppliers(plan)) == (16330, 120, ["stonegarth"])
