"""What a plan may be asked, rule by rule, on questions of a line or two; every figure stands in the test.

Freight is 10.00 a supplier unless said.
"""

import itertools
import random
from datetime import date
from decimal import Decimal

import pytest

from sourcing.basics.freight import Freight, FreightBand
from sourcing.basics.plan import PlanNeed, PlanWishes
from sourcing.basics.problem import Refused
from sourcing.basics.terms import Split
from sourcing.basics.value import changed
from tests.builders import door, flat, lead, offer, usd
from tests.choosing.planned import plan_of
from tests.choosing.random_trials import random_trial
from tests.choosing.small import THURSDAY, bought, need, plan

TIED = "another plan costs the same; this one is complete as soon as any of them"
NEVER = PlanWishes(more_than_needed="never")
CHARGED_FROM_15 = Freight(
    rule="by order value",
    bands=(
        FreightBand(from_value=Decimal(0), charge=Decimal(0)),
        FreightBand(from_value=Decimal(15), charge=Decimal(10)),
    ),
)


@pytest.mark.parametrize("seed", range(0, 60))
def test_the_order_of_the_input_never_decides(seed: int) -> None:
    """Needs, offers and suppliers shuffled: the same pieces of the same offers, and the same said of them."""
    trial, dice = random_trial(seed), random.Random(seed)
    needs = dice.sample(trial.needs, len(trial.needs))
    labels, suppliers = dice.sample([*trial.offers], len(trial.offers)), dice.sample([*trial.doors], len(trial.doors))
    shuffled = changed(
        trial,
        needs=tuple(needs),
        offers={label: tuple(dice.sample(trial.offers[label], len(trial.offers[label]))) for label in labels},
        doors={supplier: trial.doors[supplier] for supplier in suppliers},
    )
    one, other = plan_of(trial), plan_of(shuffled)
    assert (one.orders, one.notes, one.alternatives, one.front) == (
        other.orders,
        other.notes,
        other.alternatives,
        other.front,
    )
    assert sorted(one.unfilled) == sorted(other.unfilled)


@pytest.mark.parametrize("labels", [*itertools.permutations("ABC")])
def test_crossing_ties_are_broken_alike_whatever_the_order(labels: tuple[str, ...]) -> None:
    """Freight is charged from 15.00 on: one part of 10.00 from each of three suppliers, six ways to share them."""
    offers = {
        label: [offer(who, f"{who[0]}-{label}") for who in ("stonegarth", "pellbrook", "larkmoor")] for label in labels
    }
    doors = [door(who, freight=CHARGED_FROM_15) for who in ("pellbrook", "stonegarth", "larkmoor")]
    held = plan([need(label) for label in labels], offers, doors)
    assert held.total == usd("30.00") and held.notes == (TIED,)
    ordered = {label: sorted(some, key=lambda one: one.supplier) for label, some in sorted(offers.items())}
    assert bought(held) == bought(plan([need(label) for label in "ABC"], ordered, doors))


def test_a_tie_is_told_and_a_plan_alone_has_none() -> None:
    """Two suppliers at 10.00, then one a cent dearer."""
    doors = [door("stonegarth"), door("larkmoor")]
    two = [offer("stonegarth", "S-1"), offer("larkmoor", "L-1")]
    assert plan([need()], {"1": two}, doors).notes == (TIED,)
    assert plan([need()], {"1": [two[0], offer("larkmoor", "L-1", "10.01")]}, doors).notes == ()


@pytest.mark.parametrize("slow", ["larkmoor", "stonegarth"])
def test_of_equal_plans_the_soonest(slow: str) -> None:
    """Both 20.00; one is on the road two days longer. No tie is told: nothing as cheap comes as soon."""
    doors = [door(who, transit_days=(4, 4) if who == slow else (2, 2)) for who in ("larkmoor", "stonegarth")]
    held = plan([need()], {"1": [offer("larkmoor", "larkmoor"), offer("stonegarth", "stonegarth")]}, doors)
    assert bought(held) != {"1": [(slow, 1)]} and (held.latest, held.notes) == (THURSDAY, ())


def test_a_day_named_is_sooner_than_none() -> None:
    """Both 20.00; of one nobody knows when it comes, and of the other it is five days."""
    late = [offer("larkmoor", "L-1", stock=0, lead_time=lead("call", None, None)), offer("stonegarth", "S-1", stock=0)]
    late[1] = changed(late[1], lead_time=lead("5 days", 5, 5))
    held = plan([need()], {"1": late}, [door("larkmoor"), door("stonegarth")])
    assert bought(held) == {"1": [("S-1", 1)]} and held.latest == date(2026, 1, 22)


def test_totals_are_those_of_the_orders() -> None:
    """Two suppliers, one core charge: landed totals and cash stand apart."""
    offers = {"1": [offer("stonegarth", "S-1", core_charge=Decimal(4))], "2": [offer("larkmoor", "L-2", "7.00")]}
    held = plan([need("1"), need("2")], offers, [door("stonegarth"), door("larkmoor")])
    assert held.total == held.counted == held.bound == usd("37.00")
    assert held.core_charge == usd("4.00") and held.proven and held.gap_percent == 0


def test_a_core_that_is_lost_is_cost() -> None:
    """Stonegarth is 3.00 cheaper and asks 4.00 for the core."""
    offers = {"1": [offer("stonegarth", "S-1", "9.00", core_charge=Decimal(4)), offer("larkmoor", "L-1", "12.00")]}
    doors = [door("stonegarth"), door("larkmoor")]
    back = plan([need()], offers, doors)
    assert (bought(back)["1"], back.counted) == ([("S-1", 1)], usd("19.00"))
    lost = plan([need()], offers, doors, PlanWishes(cores_lost=True))
    assert (bought(lost)["1"], lost.counted) == ([("L-1", 1)], usd("22.00"))
    only = plan([need()], {"1": offers["1"][:1]}, doors, PlanWishes(cores_lost=True))
    assert (only.total, only.counted) == (usd("19.00"), usd("23.00"))


@pytest.mark.parametrize(("most", "who"), [(None, ["L", "P", "S"]), (3, ["L", "P", "S"]), (2, ["L", "S"]), (1, ["S"])])
def test_at_most_so_many_suppliers(most: int | None, who: list[str]) -> None:
    """Each part is cheapest elsewhere and freight is 1.00; Stonegarth sells all three."""
    offers = {
        "1": [offer("stonegarth", "S-1", "10.00"), offer("larkmoor", "L-1", "19.00")],
        "2": [offer("stonegarth", "S-2", "30.00"), offer("larkmoor", "L-2", "10.00")],
        "3": [offer("stonegarth", "S-3", "15.00"), offer("pellbrook", "P-3", "10.00")],
    }
    doors = [door(one, freight=flat("1.00")) for one in ("stonegarth", "larkmoor", "pellbrook")]
    held = plan([need(label) for label in "123"], offers, doors, PlanWishes(most_suppliers=most))
    assert sorted({some[0][0][0] for some in bought(held).values()}) == who
    assert held.proven and not held.unfilled


def test_what_comes_together_comes_from_one_supplier() -> None:
    """Apart 10.00 + 10.00 and two freights of 1.00; together Stonegarth's 10.00 + 14.00 + 1.00 is the least."""
    offers = {
        "1": [offer("stonegarth", "S-1", "10.00"), offer("larkmoor", "L-1", "17.00")],
        "2": [offer("stonegarth", "S-2", "14.00"), offer("larkmoor", "L-2", "10.00")],
    }
    doors = [door("stonegarth", freight=flat("1.00")), door("larkmoor", freight=flat("1.00"))]
    apart = plan([need("1"), need("2")], offers, doors)
    assert (apart.total, len(apart.orders)) == (usd("22.00"), 2)
    together = plan([need("1", together="belts"), need("2", together="belts")], offers, doors)
    assert (together.total, len(together.orders)) == (usd("25.00"), 1)
    others = plan([need("1", together="belts"), need("2", together="pins")], offers, doors)
    assert others.total == usd("22.00")


def test_a_need_has_its_own_day() -> None:
    """The cheap one comes in a week; only the need with a day of its own pays for the sooner one."""
    late = {"stock": 0, "lead_time": lead("5 days", 5, 5)}
    offers = {
        label: [offer("stonegarth", f"S-{label}", "10.00", **late), offer("larkmoor", f"L-{label}", "15.00")]
        for label in "12"
    }
    doors = [door("stonegarth", freight=flat("1.00")), door("larkmoor", freight=flat("1.00"))]
    held = plan([need("1", need_by=THURSDAY), need("2")], offers, doors)
    assert bought(held) == {"1": [("L-1", 1)], "2": [("S-2", 1)]}
    later = plan([need("1", need_by=date(2026, 1, 22)), need("2")], offers, doors, PlanWishes(need_by=THURSDAY))
    assert bought(later) == {"1": [("S-1", 1)], "2": [("L-2", 1)]}, "a need's own day stands before the plan's"


@pytest.mark.parametrize("sends", ["together", "as ready"])
def test_what_is_needed_soon_does_not_wait_for_what_comes_later(sends: str) -> None:
    """Stonegarth has the belt and waits for the pulley. Where he sends all together, the belt comes from Larkmoor."""
    offers = {
        "belt": [offer("stonegarth", "S-B", "10.00"), offer("larkmoor", "L-B", "18.00")],
        "pulley": [offer("stonegarth", "S-P", "10.00", stock=0, lead_time=lead("5 days", 5, 5))],
    }
    split = Split(sends="together") if sends == "together" else Split(sends="as ready")
    doors = [door("stonegarth", freight=flat("1.00"), split=split), door("larkmoor", freight=flat("1.00"))]
    held = plan([need("belt", need_by=THURSDAY), need("pulley")], offers, doors)
    assert bought(held)["belt"] == [("L-B", 1) if sends == "together" else ("S-B", 1)]


CONTRADICTIONS: list[tuple[PlanNeed, PlanWishes, str]] = [
    (need(quantity=0), PlanWishes(), "0 pieces can't be asked for"),
    (need(may_split=True, together="both"), PlanWishes(), "need 1 may be split over several offers and is to come"),
    (need(), PlanWishes(objective="cost and days"), "no price of a day of waiting is stated"),
    (need(), PlanWishes(value_per_day=Decimal(-1)), "the price of a day of waiting is -1"),
    (need(), PlanWishes(surplus_credit_percent=Decimal("100.5")), "100.5 per cent of the surplus can't count"),
    (need(), PlanWishes(surplus_credit_percent=Decimal(-1)), "-1 per cent of the surplus can't count"),
    (need(), PlanWishes(most_suppliers=0), "a plan over at most 0 suppliers has nobody to buy from"),
]


@pytest.mark.parametrize(("asked", "wishes", "words"), CONTRADICTIONS, ids=[words for *_, words in CONTRADICTIONS])
def test_wishes_that_contradict_are_refused_in_a_sentence(asked: PlanNeed, wishes: PlanWishes, words: str) -> None:
    """Each before anything is worked out."""
    with pytest.raises(Refused) as caught:
        plan([asked], {"1": [offer()]}, [door()], wishes)
    assert words in str(caught.value)


def test_two_needs_with_one_label_are_refused() -> None:
    """Whose offers would they be?"""
    with pytest.raises(Refused, match="two needs bear the label 'A'"):
        plan([need("A"), need("B"), need("A")], {"A": [offer()], "B": [offer()]}, [door()])


@pytest.mark.parametrize("percent", ["0", "100"])
def test_the_ends_of_what_may_be_credited_can_be_meant(percent: str) -> None:
    """Nothing of it, or all of it."""
    wishes = PlanWishes(surplus_credit_percent=Decimal(percent), more_than_needed="never")
    assert plan([need()], {"1": [offer()]}, [door()], wishes).proven


def test_a_plan_of_no_needs_is_empty() -> None:
    """Nothing to order costs nothing, and nothing is proven."""
    held = plan([], {}, [door()])
    assert (held.orders, held.total, held.proven, held.unfilled) == ((), usd("0.00"), False, ())
