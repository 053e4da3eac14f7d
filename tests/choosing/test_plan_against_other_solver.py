"""The plan's optimum against another solver's, on instances by recipes of the literature (named in `instances`)."""

import pytest

from sourcing.basics.plan import PlanWishes
from tests.choosing.instances import (
    divided_trial,
    free_freight,
    internet_shopping,
    quantity_discount,
    shops_trial,
)
from tests.choosing.planned import plan_of
from tests.choosing.second_solver import least_divided, least_of_shops


@pytest.mark.parametrize("seed", range(8))
def test_shopping_with_one_delivery_charge_a_shop(seed: int) -> None:
    """Internet shopping, three to ten products in twenty shops."""
    shops = internet_shopping(seed, 3 + seed, discounts=False)
    plan = plan_of(shops_trial(shops, PlanWishes()))
    assert plan.proven and plan.total.minor() == least_of_shops(shops), shops.name


@pytest.mark.parametrize("seed", range(5))
def test_shopping_with_discounts_by_value(seed: int) -> None:
    """The same with discounts that deepen with the value of a shop's order."""
    shops = internet_shopping(seed, 3 + seed, discounts=True)
    plan = plan_of(shops_trial(shops, PlanWishes(more_than_needed="never")))
    assert plan.proven and plan.total.minor() == least_of_shops(shops), shops.name


@pytest.mark.parametrize("seed", range(12))
def test_one_good_divided_over_suppliers(seed: int) -> None:
    """Quantity discounts on all pieces, limited stock, at times at most three winners; more pieces where that pays."""
    divided = quantity_discount(seed, 3 + seed % 4, 2 + seed % 3)
    plan, least = plan_of(divided_trial(divided)), least_divided(divided)
    if least is None:
        assert plan.unfilled and not plan.orders
    else:
        assert plan.proven and plan.total.minor() == least, divided.name


@pytest.mark.parametrize("seed", range(6))
def test_freight_free_above_a_value(seed: int) -> None:
    """The project's own kind, ten needs and eight suppliers."""
    shops = free_freight(seed, 10, 8)
    plan = plan_of(shops_trial(shops, PlanWishes(more_than_needed="never")))
    assert plan.proven and plan.total.minor() == least_of_shops(shops), shops.name
