"""The front of cost and date, the soonest plan, and a price for each day of waiting."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.offer import Offer
from sourcing.basics.plan import FrontPoint, Plan, PlanWishes
from sourcing.basics.value import changed
from sourcing.choosing.plan_front import soonest_plan
from tests.builders import door, flat, lead, offer, usd
from tests.choosing.instances import free_freight, shops_trial
from tests.choosing.planned import plan_of
from tests.choosing.small import THURSDAY, Clock, SilentOnThursday, bought, need, plan

DOORS = [
    door("larkmoor", freight=flat("0.00"), transit_days=(7, 7)),
    door("stonegarth", freight=flat("0.00")),
    door("tavishollow", freight=flat("0.00"), transit_days=(1, 1)),
]
LATE, SOON = date(2026, 1, 22), date(2026, 1, 14)
"""Seven working days and one from Tuesday the 13th: nine days of waiting and one. Thursday is two."""


def three() -> list[Offer]:
    """20.00 in nine days, 24.20 in two, 30.20 in one."""
    return [
        offer("larkmoor", "L-1", "20.00"),
        offer("stonegarth", "S-1", "24.20"),
        offer("tavishollow", "T-1", "30.20"),
    ]


def points(of: Plan) -> list[tuple[str, date | None]]:
    """Cost and day of each point of the front."""
    return [(str(one.total.amount), one.latest) for one in of.front]


def by_day(price: str, front: bool = False) -> Plan:
    """The three offers with that price of a day."""
    wishes = PlanWishes(objective="cost and days", value_per_day=Decimal(price), front=front)
    return plan([need()], {"1": three()}, DOORS, wishes)


def test_the_front_goes_from_cheap_to_soon() -> None:
    """Three points, the cheapest is the plan."""
    held = plan([need()], {"1": three()}, DOORS, PlanWishes(front=True))
    assert points(held) == [("20.00", LATE), ("24.20", THURSDAY), ("30.20", SOON)]
    assert [one.chosen for one in held.front] == [True, False, False]
    assert all(one.proven for one in held.front)
    assert [one.suppliers for one in held.front] == [("Larkmoor",), ("Stonegarth",), ("Tavishollow",)]


def test_what_is_beaten_in_both_is_not_on_the_front() -> None:
    """Dearer and later than Stonegarth's, and as cheap as Larkmoor's but sooner."""
    offers = [*three(), offer("pellbrook", "P-1", "25.00"), offer("kesselried", "K-1", "20.00")]
    doors = [*DOORS, door("pellbrook", freight=flat("0.00"), transit_days=(3, 3))]
    doors.append(door("kesselried", freight=flat("0.00"), transit_days=(6, 6)))
    held = plan([need()], {"1": offers}, doors, PlanWishes(front=True))
    assert points(held) == [("20.00", date(2026, 1, 21)), ("24.20", THURSDAY), ("30.20", SOON)]
    assert bought(held)["1"] == [("K-1", 1)]


@pytest.mark.parametrize("slow", ["larkmoor", "stonegarth"])
def test_of_two_as_cheap_only_the_sooner_is_a_point(slow: str) -> None:
    """Whichever of them the solver meets first."""
    who = ("larkmoor", "stonegarth")
    doors = [door(one, transit_days=(4, 4) if one == slow else (2, 2)) for one in who]
    held = plan([need()], {"1": [offer(one, one) for one in who]}, doors, PlanWishes(front=True))
    assert points(held) == [("20.00", THURSDAY)]


def test_a_point_without_a_day_stands_first() -> None:
    """Cheapest of all is one that nobody dates."""
    silent = offer("pellbrook", "P-1", "5.00", stock=0, lead_time=lead("call", None, None))
    held = plan([need()], {"1": [*three(), silent]}, [*DOORS, door("pellbrook")], PlanWishes(front=True))
    assert points(held)[0] == ("15.00", None) and len(held.front) == 4
    assert held.latest is None and held.front[0].chosen


def test_the_soonest_complete_plan_is_the_cheapest_of_that_day() -> None:
    """The second need can't be here before Thursday: the first has no reason to be sooner."""
    offers = {"1": three(), "2": [offer("stonegarth", "S-2")]}
    held = plan([need("1"), need("2")], offers, DOORS, PlanWishes(objective="date"))
    assert bought(held) == {"1": [("S-1", 1)], "2": [("S-2", 1)]}
    assert (held.latest, held.total, held.proven) == (THURSDAY, usd("34.20"), True)
    assert plan([need("1")], offers, DOORS, PlanWishes(objective="date")).latest == SOON


@pytest.mark.parametrize(
    ("price", "number", "waiting"),
    [
        ("0", "L-1", "0.00"),
        ("0.59", "L-1", "5.31"),
        ("0.60", "S-1", "1.20"),
        ("5.99", "S-1", "11.98"),
        ("6.00", "T-1", "6.00"),
        ("6.01", "T-1", "6.01"),
    ],
)
def test_a_price_per_day_decides_between_the_points(price: str, number: str, waiting: str) -> None:
    """4.20 for seven days sooner is 0.60 a day, 6.00 for one day more 6.00; at exactly that the sooner is taken."""
    held = by_day(price)
    assert (bought(held)["1"], held.waiting, held.proven) == ([(number, 1)], usd(waiting), True)
    assert held.total == held.counted == held.bound


def test_the_price_of_days_is_in_no_total_and_the_front_is_shown() -> None:
    """The chosen point is marked, and only it."""
    held = by_day("0.60", front=True)
    assert held.total == usd("24.20") and [one.chosen for one in held.front] == [False, True, False]


def test_a_plan_without_a_day_has_no_price_of_waiting() -> None:
    """It is taken only where no plan has a day."""
    silent = offer("larkmoor", "L-9", "1.00", stock=0, lead_time=lead("call", None, None))
    wishes = PlanWishes(objective="cost and days", value_per_day=Decimal(1))
    only = plan([need()], {"1": [silent]}, DOORS, wishes)
    assert (bought(only)["1"], only.waiting, only.latest) == ([("L-9", 1)], None, None)
    both = plan([need()], {"1": [silent, *three()]}, DOORS, wishes)
    assert bought(both)["1"] == [("S-1", 1)]


@pytest.mark.parametrize("seed", range(4))
def test_each_point_is_what_planning_for_that_day_gives(seed: int) -> None:
    """Ten needs, eight suppliers: solved again for each day on which a plan of the front is complete."""
    trial = shops_trial(free_freight(seed, 10, 8), PlanWishes(more_than_needed="never", front=True))
    front = plan_of(trial).front
    assert len(front) > 1 and all(one.proven for one in front)
    for one in front:
        again = plan_of(changed(trial, wishes=PlanWishes(more_than_needed="never", need_by=one.latest)))
        assert (again.total, again.latest) == (one.total, one.latest)


def cut(looks: int, wishes: PlanWishes) -> Plan:
    """The three offers with a clock that runs out after so many looks."""
    return plan([need()], {"1": three()}, DOORS, changed(wishes, seconds=100), Clock(looks))


def settled(front: tuple[FrontPoint, ...]) -> bool:
    """Whether the front is the whole one."""
    return [one.latest for one in front] == [LATE, THURSDAY, SOON]


@pytest.mark.parametrize("looks", range(2, 16))
def test_a_front_that_time_cut_short_is_not_proven_to_its_end(looks: int) -> None:
    """Whenever the clock runs out: the last point is proven only if it is the soonest there is."""
    held = cut(looks, PlanWishes(front=True))
    assert settled(held.front) or not held.front[-1].proven
    assert all(one.proven for one in held.front[:-1])


@pytest.mark.parametrize("looks", range(2, 16))
def test_the_soonest_plan_is_proven_only_if_nothing_sooner_was_left_to_try(looks: int) -> None:
    """A plan of Thursday is not called proven where Wednesday's was not looked for."""
    held = cut(looks, PlanWishes(objective="date"))
    assert not held.proven or held.latest == SOON
    if held.latest != SOON:
        assert "time ran out before this plan was proven the cheapest" in held.notes
        assert held.bound is not None and held.bound <= held.counted


@pytest.mark.parametrize("looks", range(2, 16))
@pytest.mark.parametrize(("price", "number"), [("5.00", "S-1"), ("0.10", "L-1")])
def test_a_price_per_day_proves_nothing_on_half_a_front(looks: int, price: str, number: str) -> None:
    """At 5.00 a day Stonegarth's 34.20 is least, at 0.10 Larkmoor's 20.90: proven only beside the whole front."""
    held = cut(looks, PlanWishes(objective="cost and days", value_per_day=Decimal(price)))
    assert held.proven == settled(held.front)
    if held.proven:
        assert bought(held)["1"] == [(number, 1)]
    assert held.bound is not None and held.bound <= held.counted


def test_a_day_not_searched_to_its_end_is_not_passed_over() -> None:
    """Friday's plan is not taken for the soonest where Thursday may have one."""
    search: Any = SilentOnThursday()
    assert soonest_plan(search, search.found(LATE)) == (None, None, False)


def test_a_cut_front_is_met_and_so_is_a_whole_one() -> None:
    """The looks above are neither all too few nor all enough."""
    whole = [settled(cut(looks, PlanWishes(front=True)).front) for looks in range(2, 16)]
    assert any(whole) and not all(whole)
