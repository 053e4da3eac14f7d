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


def _asked_left(**changes: Any) -> dict[str, Any]:
    """Two needs asked for the left, of one supplier who says his freight only when asked, free from 200.00."""
    tree = deepcopy(BASKET)
    tree["suppliers"] = [
        {"supplier": "stonegarth", "currency": "USD", "freight": {"rule": "asked", "free_from": "200.00"}} | changes
    ]
    tree["offers"] = [_sold("P", "SG-1", "110.00"), _sold("Q", "SG-2", "110.00")]
    asks = {"asked": {"side": "left"}}
    tree["needs"] = [
        {"label": at, "our_part": part, "quantity": 1, "asks": asks} for at, part in (("1", "P"), ("2", "Q"))
    ]
    tree["wishes"] = {"more_than_needed": "never"}
    return tree


def _sold(part: str, number: str, price: str, supplier: str = "stonegarth", **fields: Any) -> dict[str, Any]:
    breaks = [{"from_quantity": 1, "price": price}]
    return {"our_part": part, "supplier": supplier, "supplier_number": number, "breaks": breaks, "stock": 50} | fields


def test_an_offer_only_a_larger_order_makes_known_is_warned_of_too() -> None:
    """Alone its freight is open; in the plan it is free, and the side is not stated still."""
    plan = plan_of(json.dumps(_asked_left()).encode())
    assert plan.total.amount == Decimal("220.00")
    assert [words.split(":")[0] for words in plan.warnings] == ["line 1", "line 2"]
    assert all("side not stated" in words for words in plan.warnings)


def test_freight_open_alone_and_a_minimum_order_are_both_met_together() -> None:
    """110.00 is refused below 150.00 and its freight is not known; 220.00 is taken and goes free."""
    plan = plan_of(json.dumps(_asked_left(minimum_order="150.00")).encode())
    assert plan.total.amount == Decimal("220.00") and not plan.unfilled


def test_every_share_of_a_divided_need_is_warned_of() -> None:
    """Five from each of two suppliers, and neither states the side."""
    tree = _asked_left()
    free = {"rule": "flat", "charge": "0.00"}
    tree["suppliers"] = [{"supplier": one, "currency": "USD", "freight": free} for one in ("stonegarth", "larkmoor")]
    tree["offers"] = [_sold("P", "SG-1", "10.00", stock=5), _sold("P", "L-1", "11.00", "larkmoor")]
    tree["needs"] = [tree["needs"][0] | {"quantity": 10, "may_split": True}]
    tree["wishes"] = {"in_stock_only": True}
    plan = plan_of(json.dumps(tree).encode())
    assert sorted(_bought(plan)) == [("L-1", 5), ("SG-1", 5)]
    assert len([words for words in plan.warnings if "side not stated" in words]) == 2


def test_nothing_is_ordered_for_a_need_whose_evidence_contradicts_itself() -> None:
    """The other need is planned; a comparison says it first."""
    tree = _asked_left()
    tree["needs"][0]["asks"] = {"contradicted": "the plate and the tag name two parts"}
    tree["wishes"] = {}
    tree["offers"][1]["breaks"][0]["price"] = "210.00"
    data = json.dumps(tree).encode()
    plan = plan_of(data)
    assert _bought(plan) == [("SG-2", 1)]
    held = "nothing is ordered for it yet: the plate and the tag name two parts"
    assert plan.unfilled == (f"1: 1 x P: {held}",) and plan.warnings[0] == f"line 1: {held}"
    assert compare_basket(read(data), "1", None, RankWishes()).warnings[0] == held


def _unfilled(tree: dict[str, Any]) -> str:
    (words,) = plan_of(json.dumps(tree).encode()).unfilled
    return words


@pytest.mark.parametrize(
    ("terms", "offer", "told"),
    [
        ({"freight": {"rule": "by weight", "weight_bands": [{"to_weight": 20, "charge": 9}]}}, {}, "weight of SG-1 is"),
        ({"duty_rates": [{"percent": 10, "origin": "CN"}]}, {}, "duty on SG-1: the sheet does not state the origin"),
        ({"starts_on": "2027-01-01"}, {}, "there are no terms for stonegarth"),
        ({"prices_hold_days": 1}, {"priced_on": "2026-01-01"}, "held until 2026-01-02"),
        ({}, {"stock": 2, "quantity": 5}, "not in stock for the quantity: 2 of 5"),
    ],
)
def test_an_offer_that_could_not_be_used_is_named_with_its_reason(
    terms: dict[str, Any], offer: dict[str, Any], told: str
) -> None:
    """'Nobody offers it' is said only where nobody does."""
    tree = _asked_left(freight={"rule": "flat", "charge": "0.00"})
    tree["suppliers"][0] |= terms
    tree["needs"] = [{"label": "1", "our_part": "P", "quantity": offer.pop("quantity", 1)}]
    tree["offers"] = [tree["offers"][0] | offer]
    tree["wishes"] = {"in_stock_only": True}
    words = _unfilled(tree)
    assert "1 offer, and it can't be ordered: stonegarth SG-1: " in words and told in words
    tree["offers"] = []
    assert "nobody offers it" in _unfilled(tree)


def test_freight_that_is_not_known_is_said_of_a_need_that_fits_in_no_plan() -> None:
    """No minimum order bars it: what it lacks is said too."""
    tree = _asked_left()
    del tree["suppliers"][0]["freight"]
    tree["needs"] = [{"label": "1", "our_part": "P", "quantity": 1}]
    assert "stonegarth SG-1: freight" in _unfilled(tree)


def test_an_old_rate_is_noted_in_plan_and_comparison() -> None:
    """30 days are not old, 31 are (common practice, no source)."""
    for dated, old in (("2025-12-14", False), ("2025-12-13", True)):
        data = spoilt("rates.0.dated", dated)
        note = f"the rate is 31 days old: 1 EUR = 1.0912 USD on {dated}"
        compared = compare_basket(read(data), "1", None, RankWishes())
        assert (note in plan_of(data).notes, note in compared.notes) == (old, old)


def test_a_year_without_known_public_holidays_is_noted() -> None:
    """Sri Lanka's, which hang on the moon, are known to the package for some years only."""
    tree = deepcopy(BASKET)
    tree["suppliers"][1]["calendar"] = {"country": "LK"}
    tree["at"] = "2099-01-13T10:15"
    data = json.dumps(tree).encode()
    note = "no public holidays of LK in 2099 are known: days there are counted as if it had none"
    assert note in plan_of(data).notes
    assert note in compare_basket(read(data), "1", None, RankWishes()).notes
    assert not any("no public holidays" in words for words in plan_of(json.dumps(BASKET).encode()).notes)


def test_the_currency_is_that_of_the_terms_in_force() -> None:
    """EUR until 2027, USD from then on: on 2026-01-13 prices are in EUR, and a rate for JPY of 2028 is no matter."""
    tree = deepcopy(BASKET)
    later = [
        {**tree["suppliers"][1], "starts_on": f"{year}-01-01", "currency": one}
        for year, one in ((2027, "USD"), (2028, "JPY"))
    ]
    tree["suppliers"] += later
    assert _bought(plan_of(json.dumps(tree).encode())) == [("K-9036", 2)]
    tree["offers"][1]["currency"] = "EUR"
    assert _bought(plan_of(json.dumps(tree).encode())) == [("K-9036", 2)]
