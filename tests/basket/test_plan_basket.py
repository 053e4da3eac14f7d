"""A basket's plan by hand, what can't be filled, and that the order in the file decides nothing."""

import json
import random
from copy import deepcopy
from decimal import Decimal
from typing import Any

import pytest

from sourcing.actions.basket import compare_basket, plan_basket
from sourcing.basics.choice import RankWishes
from sourcing.basics.plan import Plan
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from tests.basket.baskets import BASKET, read, spoilt


def plan_of(data: bytes) -> Plan:
    """The plan of a basket by its own wishes."""
    basket = read(data)
    return plan_basket(basket, basket.wishes)


def _wished(**wishes: object) -> Plan:
    return plan_of(spoilt("wishes", wishes))


def _bought(plan: Plan) -> list[tuple[str, int]]:
    return [(item.item.offer.supplier_number, item.item.ordered) for one in plan.orders for item in one.landed.items]


def test_the_cheapest_at_the_door_by_hand() -> None:
    """43.00 EUR are 46.92 USD, with 3 % duty of 1.41 and 24.00 EUR of freight, 26.19 USD; there 63.00 and 14.95."""
    plan = plan_of(json.dumps(BASKET).encode())
    assert _bought(plan) == [("K-9036", 2)]
    assert plan.total.amount == Decimal("46.92") + Decimal("1.41") + Decimal("26.19") == Decimal("74.52")
    assert plan.proven and plan.counted == plan.total
    by_name = {one.name: one.total for one in plan.alternatives}
    other = by_name["everything from Stonegarth Trade Parts"]
    assert other is not None and other.amount == Decimal("63.00") + Decimal("14.95")


def test_the_files_wishes_are_followed() -> None:
    """A day to be met, a price of waiting, trusted standings, what is in stock."""
    soon = [("SG-77120", 2)]
    assert _bought(_wished(need_by="2026-01-16")) == soon
    assert _bought(_wished(objective="date")) == soon
    assert _bought(_wished(objective="cost and days", value_per_day="0.50")) == soon
    assert _bought(_wished(objective="cost and days", value_per_day="0.01")) == [("K-9036", 2)]
    assert _bought(_wished(trusted_only=True)) == soon
    assert _bought(_wished(in_stock_only=True)) == soon


def test_the_front_has_both() -> None:
    """The dearer comes sooner."""
    front = _wished(front=True).front
    assert [one.total.amount for one in front] in (
        [Decimal("74.52"), Decimal("77.95")],
        [Decimal("77.95"), Decimal("74.52")],
    )


def test_a_need_nobody_sells_is_told_and_the_rest_is_planned() -> None:
    """An answer, not an error; and a part that only an offer names is a question."""
    tree = deepcopy(BASKET)
    tree["needs"].append({"label": "2", "our_part": "BELT-DRIVE", "quantity": 1})
    tree["offers"].append({**tree["offers"][0], "our_part": "BELT DRIVE", "supplier_number": "SG-1"})
    plan = plan_of(json.dumps(tree).encode())
    assert _bought(plan) == [("K-9036", 2)]
    assert len(plan.unfilled) == 1 and plan.unfilled[0].startswith("2: 1 x BELT-DRIVE")
    assert "no need asks for 'BELT DRIVE': 1 offer of it left aside" in plan.notes


def test_an_offer_that_is_not_what_is_asked_is_rejected() -> None:
    """The file's word on the part does not help a belt with another cord."""
    asked = {"label": "1", "our_part": "BELT-AUGER", "quantity": 2, "asks": {"asked": {"cord": "polyester"}}}
    plan = plan_of(spoilt("needs.0", asked))
    assert _bought(plan) == [("K-9036", 2)]
    ranked = compare_basket(read(spoilt("needs.0", asked)), "1", None, RankWishes())
    assert [one.offer.supplier_number for one in ranked.set_aside if one.rejected] == ["SG-77120"]


def test_of_several_terms_the_newest_that_has_started_holds() -> None:
    """So that what was planned last month can be planned again as it was."""
    tree = deepcopy(BASKET)
    dearer = {**tree["suppliers"][1], "freight": {"rule": "flat", "charge": "30.00"}}
    tree["suppliers"] += [{**dearer, "starts_on": "2026-01-10"}, {**dearer, "starts_on": "2026-02-01"}]
    tree["suppliers"][3]["freight"] = {"rule": "flat", "charge": "0.00"}
    assert _bought(plan_of(json.dumps(tree).encode())) == [("SG-77120", 2)]


def test_what_the_terms_leave_open_can_not_be_planned() -> None:
    """Freight left out is not known, and never nothing."""
    plan = plan_of(spoilt("suppliers.1.freight", ...))
    assert _bought(plan) == [("SG-77120", 2)]


@pytest.mark.parametrize("seed", range(5))
def test_the_order_in_the_file_decides_nothing(seed: int) -> None:
    """Suppliers, offers and needs shuffled: the same orders, costs and words."""
    tree: dict[str, Any] = deepcopy(BASKET)
    tree["needs"].append({"label": "2", "our_part": "BELT-AUGER", "quantity": 1})
    first = plan_of(json.dumps(tree).encode())
    shuffle = random.Random(seed).shuffle
    for name in ("suppliers", "offers"):
        shuffle(tree[name])
    again = plan_of(json.dumps(tree).encode())
    assert _without_rows(again) == _without_rows(first)


def _without_rows(plan: Plan) -> tuple[object, ...]:
    orders = [(one.landed.lines, one.arrival, one.landed.total) for one in plan.orders]
    return orders, plan.alternatives, plan.notes, plan.total


def test_another_need_than_the_file_has_is_refused() -> None:
    """With those it has."""
    with pytest.raises(Refused, match="the basket has no need '9'; name one of: 1"):
        compare_basket(read(json.dumps(BASKET).encode()), "9", None, RankWishes())


def test_a_comparison_follows_the_files_wishes_where_nothing_else_is_asked() -> None:
    """Its day first, then the need's, then the basket's."""
    basket = read(spoilt("wishes", {"need_by": "2026-01-20", "trusted_only": True}))
    found = compare_basket(basket, "1", None, RankWishes())
    assert found.need_by is not None and f"{found.need_by}" == "2026-01-20"
    assert [one.priced.offer.supplier_number for one in found.ranked] == ["SG-77120"]
    own = changed(basket, needs=(changed(basket.needs[0], need_by=basket.at.date()),))
    assert compare_basket(own, "1", None, RankWishes()).need_by == basket.at.date()
