"""Steps of the order's value: two ladders merged in one, and whether a higher step is ever worse."""

from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.schedule import FreightStep, ValueStep
from sourcing.choosing.value_steps import Step, merged_steps, only_falls


def step(start: int, **fields: Any) -> Step:
    """A step on which nothing is charged unless said."""
    held: dict[str, Any] = {"freight": 0, "fees": 0, "discount": Decimal(0), "by_weight": False, "barred": False}
    return Step(start=start, **{**held, **fields})


def test_each_start_of_either_ladder_is_a_start() -> None:
    """Fee 500 below 30.00, freight 1495 below 150.00."""
    values = [ValueStep(from_value=0, fees=500), ValueStep(from_value=3000, fees=0)]
    freights = [FreightStep(from_value=0, freight=1495), FreightStep(from_value=15000, freight=0)]
    assert merged_steps(values, freights) == [
        step(0, freight=1495, fees=500),
        step(3000, freight=1495),
        step(15000),
    ]


def test_neighbours_that_charge_the_same_are_one_step() -> None:
    """A start at which nothing changes is none."""
    values = [ValueStep(from_value=0, fees=500), ValueStep(from_value=3000, fees=500)]
    freights = [FreightStep(from_value=0, freight=0), FreightStep(from_value=4000, freight=0)]
    assert merged_steps(values, freights) == [step(0, fees=500)]


def test_what_is_refused_or_has_no_known_freight_is_barred() -> None:
    """Below 30.00 the order is refused; from 60.00 on nobody says the freight."""
    values = [ValueStep(from_value=0, fees=0, refused=True), ValueStep(from_value=3000, fees=0)]
    freights = [FreightStep(from_value=0, freight=900), FreightStep(from_value=6000, freight=0, known=False)]
    assert [(one.start, one.barred) for one in merged_steps(values, freights)] == [
        (0, True),
        (3000, False),
        (6000, True),
    ]


def test_discount_and_weight_are_carried_over() -> None:
    """3 per cent from 50.00; by weight until freight is free from 80.00."""
    values = [ValueStep(from_value=0, fees=0), ValueStep(from_value=5000, fees=0, discount_percent=Decimal(3))]
    freights = [FreightStep(from_value=0, freight=0, by_weight=True), FreightStep(from_value=8000, freight=0)]
    assert merged_steps(values, freights) == [
        step(0, by_weight=True),
        step(5000, by_weight=True, discount=Decimal(3)),
        step(8000, discount=Decimal(3)),
    ]


def test_steps_on_which_everything_gets_better_only_fall() -> None:
    """Free freight, no fee, a deeper discount, taken where it was refused."""
    first = step(0, freight=900, fees=500, by_weight=True, barred=True)
    assert only_falls([first, step(3000, freight=900, fees=500), step(9000, discount=Decimal(2))])
    assert only_falls([first])


@pytest.mark.parametrize(
    "worse",
    [
        {"freight": 901},
        {"fees": 501},
        {"freight": 950, "fees": 400},
        {"freight": 800, "fees": 550},
        {"discount": Decimal(1)},
        {"by_weight": True},
        {"barred": True},
    ],
    ids=str,
)
def test_one_charge_that_rises_is_enough_to_hold_orders_down(worse: dict[str, Any]) -> None:
    """More of one though less of another in sum: charges in per cent may look at either alone."""
    before = step(0, freight=900, fees=500, discount=Decimal(2))
    same: dict[str, Any] = {"freight": 900, "fees": 500, "discount": Decimal(2)}
    assert not only_falls([before, step(3000, **{**same, **worse})])
    assert only_falls([before, step(3000, **same)])
