"""Offers taken out before solving: only what no best plan could hold, and the plan is the same with them."""

import random
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.freight import Freight, Oversize
from sourcing.basics.offer import Offer
from sourcing.basics.plan import PlanWishes
from sourcing.basics.terms import EntryFee, OrderDiscount, Split
from sourcing.basics.value import changed
from sourcing.choosing import plan as planning
from sourcing.choosing.choices import Choice, choice
from sourcing.choosing.dominated import without_dominated
from sourcing.choosing.programme import Conditions
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.schedule import schedule
from sourcing.landed_cost.sums import item_sums
from tests.builders import door, flat, item, lead, offer
from tests.choosing.planned import plan_of
from tests.choosing.random_trials import random_trial
from tests.choosing.small import AT, bought, need, plan

ONE_NEED = Conditions(needs=1)
LARKMOOR, STONEGARTH = door("larkmoor"), door("stonegarth")


def one(of: Offer, at: Door, place: int = 0) -> Choice:
    """One piece of an offer for the need at that place."""
    moment: datetime = AT
    return choice(place, item(of), 1, (1, 0), lambda each: (item_sums(each, at), arrival(each, at, moment)))


def kept(offers: Sequence[tuple[Offer, int]], doors: Sequence[Door], conditions: Conditions = ONE_NEED) -> list[str]:
    """Numbers of the offers that stay; each offer with the place of its need."""
    by_name = {each.terms.supplier: each for each in doors}
    schedules = {name: schedule(each, 10_000) for name, each in by_name.items()}
    choices = [one(of, by_name[of.supplier], place) for of, place in offers]
    return [each.item.offer.supplier_number for each in without_dominated(choices, conditions, schedules)]


def pair(
    cheap: Door = LARKMOOR,
    dear: Door = STONEGARTH,
    price: str = "99.00",
    conditions: Conditions = ONE_NEED,
    **fields: Any,
) -> list[str]:
    """What stays of Larkmoor's L-1 at 10.00 and Stonegarth's S-1; fields are of L-1."""
    return kept(
        [(offer("larkmoor", "L-1", **fields), 0), (offer("stonegarth", "S-1", price), 0)], [cheap, dear], conditions
    )


def test_what_is_dearer_than_any_charge_could_make_up_is_taken_out() -> None:
    """99.00 against 10.00 and freight of 10.00 at either: dearer even where the one order pays freight and saves it."""
    assert pair() == ["L-1"]


@pytest.mark.parametrize(("price", "stays"), [("29.00", True), ("30.00", True), ("30.10", False)])
def test_what_charges_could_make_up_stays(price: str, stays: bool) -> None:
    """10.00 more freight here and 10.00 less there: 20.00 may be made up, and a few cents of rounding."""
    assert pair(price=price) == (["L-1", "S-1"] if stays else ["L-1"])


def test_what_comes_sooner_stays_and_what_comes_later_goes() -> None:
    """A dear offer that is here sooner may be needed; the cheaper and sooner one beats the later."""
    slow = door("larkmoor", transit_days=(4, 4))
    assert pair(cheap=slow) == ["L-1", "S-1"]
    assert pair(dear=door("stonegarth", transit_days=(4, 4))) == ["L-1"]


def test_what_names_no_day_beats_nothing_that_names_one() -> None:
    """'Call' is later than all."""
    assert pair(stock=0, lead_time=lead("call", None, None)) == ["L-1", "S-1"]


@pytest.mark.parametrize(
    "conditions",
    [
        changed(ONE_NEED, most_suppliers=2),
        changed(ONE_NEED, credit_percent=Decimal(10)),
        changed(ONE_NEED, cores_lost=True),
        changed(ONE_NEED, divided=frozenset({0})),
        changed(ONE_NEED, needs=2, together=((0, 1),)),
        changed(ONE_NEED, needs=2, need_by=(AT.date(), None)),
    ],
    ids=["few suppliers", "credit", "cores", "divided", "together", "days"],
)
def test_nothing_is_taken_out_where_another_rule_may_need_it(conditions: Conditions) -> None:
    """A supplier who is used anyway, a part of a divided need, a need that comes together with another."""
    assert pair(conditions=conditions) == ["L-1", "S-1"]


def test_other_needs_are_still_thinned() -> None:
    """Only the need that may be divided keeps all of its offers; one day for all of them is no reason."""
    some = [(offer("larkmoor", f"L-{at}"), at) for at in (0, 1)]
    some += [(offer("stonegarth", f"S-{at}", "99.00"), at) for at in (0, 1)]
    conditions = Conditions(needs=2, divided=frozenset({1}), need_by=(AT.date(), AT.date()))
    assert sorted(kept(some, [LARKMOOR, STONEGARTH], conditions)) == ["L-0", "L-1", "S-1"]


UNSTEADY = [
    {"minimum_order": Decimal(50)},
    {"freight": Freight(rule="asked", free_from=Decimal(50))},
    {"freight": Freight(rule="per weight", per_weight=Decimal(1))},
    {"order_discounts": (OrderDiscount(from_value=Decimal(50), percent=Decimal(10)),)},
    {"entry_fees": (EntryFee(name="Clearing", percent=Decimal(1), least=Decimal(5)),)},
    {"entry_fees": (EntryFee(name="Clearing", percent=Decimal(1), most=Decimal(5)),)},
]
NAMES = ["refused below", "freight asked", "by weight", "order discount", "fee at least", "fee at most"]


@pytest.mark.parametrize("fields", UNSTEADY, ids=NAMES)
def test_an_offer_whose_order_may_move_without_end_neither_beats_nor_goes(fields: dict[str, Any]) -> None:
    """Leaving such a supplier, or going to him, may break a rule or move more than the item itself."""
    weight = Decimal("0.5")
    small, large = offer("larkmoor", "L-1", weight_kg=weight), offer("stonegarth", "S-1", "99.00", weight_kg=weight)
    assert kept([(small, 0), (large, 0)], [door("larkmoor", **fields), STONEGARTH]) == ["L-1", "S-1"]
    assert kept([(small, 0), (large, 0)], [LARKMOOR, door("stonegarth", **fields)]) == ["L-1", "S-1"]


MOVES = [
    ({"handling": Decimal(30)}, "59.00"),
    ({"split": Split(sends="as ready", later_charge=Decimal(30))}, "59.00"),
    (
        {"freight": Freight(rule="flat", charge=Decimal(10), oversize=Oversize(charge=Decimal(30), per="order"))},
        "59.00",
    ),
    ({"entry_fees": (EntryFee(name="Clearing", charge=Decimal(30)),)}, "59.00"),
    ({"payment_percent": Decimal(100)}, "49.00"),
]


@pytest.mark.parametrize(("fields", "price"), MOVES, ids=["handling", "later delivery", "oversize", "fee", "per cent"])
def test_every_charge_that_an_item_may_cause_is_counted(fields: dict[str, Any], price: str) -> None:
    """At Larkmoor one item may cause so much more that Stonegarth's dear one stays; without that it goes."""
    assert pair(price=price, oversize=False) == ["L-1"]
    assert pair(cheap=door("larkmoor", **fields), price=price, oversize=False) == ["L-1", "S-1"]


def test_what_several_needs_could_take_of_one_stock_beats_nothing() -> None:
    """Its last pieces may go to the other need; with no stock stated nothing runs out."""
    for stock, gone in ((5, []), (None, ["S-1"])):
        shared = offer("larkmoor", "L-1", stock=stock)
        offers = [(shared, 0), (shared, 1), (offer("stonegarth", "S-1", "99.00", stock=stock), 0)]
        doors = [LARKMOOR, door("stonegarth", transit_days=(9, 9))]
        assert [number for number in ("S-1",) if number not in kept(offers, doors, Conditions(needs=2))] == gone


def everything(choices: Sequence[Choice], *_: object) -> list[Choice]:
    """Takes nothing out."""
    return list(choices)


@pytest.mark.parametrize("seed", range(500, 560))
def test_the_plan_is_the_same_with_all_of_them(seed: int, monkeypatch: pytest.MonkeyPatch) -> None:
    """Every rule on at random."""
    trial = random_trial(seed)
    thinned = plan_of(trial)
    monkeypatch.setattr(planning, "without_dominated", everything)
    whole = plan_of(trial)
    assert (thinned.counted, thinned.latest, len(thinned.unfilled)) == (
        whole.counted,
        whole.latest,
        len(whole.unfilled),
    )
    assert [(each.counted, each.latest) for each in thinned.front] == [
        (each.counted, each.latest) for each in whole.front
    ]


def test_thousands_of_offers_of_one_need(monkeypatch: pytest.MonkeyPatch) -> None:
    """3,000 offers over 30 suppliers beside a need with two: few reach the solver, and the plan is that of all."""
    dice = random.Random(3000)
    names = [f"shop-{at:02}" for at in range(30)]
    offers = {
        "1": [
            offer(names[at % 30], f"N-{at:04}", str(Decimal(dice.randint(2000, 90_000)) / 100)) for at in range(3000)
        ],
        "2": [offer(names[0], "N-A", "12.00"), offer(names[1], "N-B", "12.50")],
    }
    doors = [door(name, freight=flat(f"{5 + at}.00", "80")) for at, name in enumerate(names)]
    sizes: list[int] = []

    def counted(choices: Sequence[Choice], *more: Any) -> list[Choice]:
        left = without_dominated(choices, *more)
        sizes.append(len(left))
        return left

    wishes = PlanWishes(more_than_needed="never")
    monkeypatch.setattr(planning, "without_dominated", counted)
    thinned = plan([need("1"), need("2")], offers, doors, wishes)
    assert thinned.proven and sizes and max(sizes) < 300
    monkeypatch.setattr(planning, "without_dominated", everything)
    whole = plan([need("1"), need("2")], offers, doors, wishes)
    assert (bought(thinned), thinned.total, thinned.bound) == (bought(whole), whole.total, whole.bound)
