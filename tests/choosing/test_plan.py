"""The plan against brute force through landed cost itself: every combination priced as whole orders, to the cent."""

import itertools
import random
from collections import defaultdict
from collections.abc import Sequence
from datetime import datetime
from decimal import Decimal

import pytest

from sourcing.basics.freight import Freight, FreightBand
from sourcing.basics.landed_cost import OrderItem
from sourcing.basics.money import Money, total
from sourcing.basics.plan import PlannedOrder, PlanNeed
from sourcing.choosing.plan import Choice, Market, best_plan
from sourcing.choosing.programme import Step
from sourcing.landed_cost.arrival import arrival, latest_of
from sourcing.landed_cost.charges import charge_steps
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order, line_cost
from sourcing.landed_cost.quantity import sensible_quantities
from tests.builders import door, flat, item, offer

AT = datetime(2026, 1, 13, 10, 15)
SUPPLIERS = ("kesselried", "larkmoor", "pellbrook", "stonegarth")


def random_door(supplier: str, chance: random.Random) -> Door:
    """Terms with a random mixture of every rule."""
    bands = tuple(
        FreightBand(from_value=Decimal(at), charge=Decimal(chance.randint(0, 30))) for at in (0, chance.randint(20, 90))
    )
    freight = chance.choice(
        [
            flat(f"{chance.randint(5, 25)}.95", str(chance.randint(40, 160))),
            flat("12.50"),
            Freight(rule="by order value", bands=bands, free_from=Decimal(150)),
            Freight(rule="pick-up", round_trip_miles=Decimal(chance.randint(5, 40)), round_trip_hours=Decimal("0.5")),
            Freight(rule="included"),
        ]
    )
    minimum = chance.choice([None, Decimal(35)])
    return door(
        supplier,
        rate="1.0850" if supplier == "kesselried" else "1",
        currency="EUR" if supplier == "kesselried" else "USD",
        freight=freight,
        minimum_order=minimum,
        small_order_fee=chance.choice([None, Decimal("4.50")]) if minimum else None,
        handling=chance.choice([Decimal(0), Decimal("1.15")]),
        discount_percent=chance.choice([Decimal(0), Decimal("7.5")]),
        duty_percent=chance.choice([None, Decimal("3.3")]),
        entry_fee=chance.choice([Decimal(0), Decimal("12.00")]),
    )


def random_choices(need: PlanNeed, doors: dict[str, Door], chance: random.Random) -> list[Choice]:
    """One offer a supplier, some of them, with packs and breaks that can make more pieces cheaper."""
    result = []
    for supplier in chance.sample(SUPPLIERS, chance.randint(1, 3)):
        price = Decimal(chance.randrange(100, 6000)) / 100
        breaks = [(1, str(price)), (chance.randint(2, 6), str((price * Decimal("0.7")).quantize(Decimal("0.001"))))]
        at = doors[supplier]
        one = offer(
            supplier, f"N-{need.label}", currency=at.terms.currency, breaks=breaks, pack=chance.choice([1, 1, 4])
        )
        for pieces in sensible_quantities(one, need.quantity, at.terms.breaks):
            ordered = item(one, need.quantity, pieces, need.label)
            value, cost = line_cost(ordered, at)
            result.append(Choice(item=ordered, value=value, cost=cost, arrival=arrival(ordered, at, AT)))
    return result


def cheapest_by_trying(choices: Sequence[Sequence[Choice]], doors: dict[str, Door]) -> Money | None:
    """Every combination, each supplier's share priced as one order; refused orders don't count."""
    best: Money | None = None
    for chosen in itertools.product(*choices):
        shares: dict[str, list[OrderItem]] = defaultdict(list)
        for one in chosen:
            shares[one.item.offer.supplier].append(one.item)
        orders = [landed_order(items, doors[supplier]) for supplier, items in shares.items()]
        if not any(order.refusal for order in orders):
            cost = total((order.total for order in orders), "USD")
            best = cost if best is None or cost < best else best
    return best


@pytest.mark.parametrize("seed", range(40))
def test_the_plan_is_the_cheapest_there_is(seed: int) -> None:
    """All rules on, five markets a seed; the plan's own total is landed cost's, to the cent."""
    chance = random.Random(seed)
    for _ in range(5):
        doors = {supplier: random_door(supplier, chance) for supplier in SUPPLIERS}
        needs = [PlanNeed(label=str(at), our_part=f"P{at}", quantity=chance.randint(1, 4)) for at in range(1, 4)]
        choices = {need.label: random_choices(need, doors, chance) for need in needs}

        def land(items: Sequence[OrderItem], doors: dict[str, Door] = doors) -> PlannedOrder:
            at = doors[items[0].offer.supplier]
            return PlannedOrder(landed=landed_order(items, at), arrival=latest_of([arrival(i, at, AT) for i in items]))

        market = Market(
            land=land,
            steps={name: _steps(at) for name, at in doors.items()},
            currency="USD",
            supplier_names={name: name for name in doors},
        )
        plan = best_plan(needs, choices, market, None)
        expected = cheapest_by_trying(list(choices.values()), doors)
        if expected is None:
            assert plan.unfilled and not plan.orders
        else:
            assert plan.total == expected and plan.proven and not plan.unfilled
            assert all(one.total is None or one.total >= plan.total for one in plan.alternatives)


def _steps(at: Door) -> tuple[Step, ...]:
    return tuple(
        Step(from_value=one.from_value.minor(), charge=one.charge.minor(), refused=bool(one.refusal))
        for one in charge_steps(at)
    )
