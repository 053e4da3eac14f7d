"""Which plan for whom: the shop's cheapest may not be the customer's, for a dearer part carries more markup.

Looked at beside the shop's plan: everything from a single supplier, and every plan that is sooner here. The customer's
cheapest is the least of these, so a mixture nobody looked at may be less still; the words say what was looked at.
"""

from collections.abc import Iterator
from typing import Literal

from ..basics.margin import Margin
from ..basics.plan import Plan
from ..basics.problem import Refused
from ..basics.quote import Quote
from ..basics.value import Value
from ..quoting.bought import Bought
from ..quoting.build import build_quote
from .quote_margins import everything_margin, margin_words
from .quote_plan import Market

PlanFor = Literal["shop", "customer"]
"""For whom the plan is the cheapest."""

MOST_ALONE, MOST_SOONER = 4, 3
"""So many suppliers who could fill everything alone, and sooner plans, are looked at."""


class Way(Value, frozen=True, kw_only=True):
    """A plan, the quote that follows from it, and what the parts with freight earn."""

    name: str
    bought: Bought
    quote: Quote
    earns: Margin


class Chosen(Value, frozen=True, kw_only=True):
    """What the quote is built on, and the words for the owner about the other plan."""

    bought: Bought
    notes: tuple[str, ...] = ()


def chosen_plan(here: Market, wanted: PlanFor, revision: int) -> Chosen:
    """The plan that is wanted. Refuses where the shop's plan can't be quoted."""
    shop = _way(here, here.plan(), "the shop's cheapest plan", revision)
    ways = [shop, *_others(here, shop, revision)]
    least = min(ways, key=lambda one: one.quote.everything_total.total.amount)  # of equals the shop's own, it is first
    taken = least if wanted == "customer" else shop
    return Chosen(bought=taken.bought, notes=tuple(_words(shop, least, wanted, here.job.number)))


def _words(shop: Way, least: Way, wanted: PlanFor, number: str) -> Iterator[str]:
    mine, hers = shop.quote.everything_total.total, least.quote.everything_total.total
    if least is shop:
        return
    compared = f"{least.name}: {hers} with tax against {mine}, {mine - hers} less"
    earned = f"parts would earn {_earned(least)} against {_earned(shop)}"
    if wanted == "customer":
        yield f"quoted as the customer pays least, {compared}; {earned}; the shop's cheapest: --plan shop"
    else:
        yield f"the customer would pay least with {compared}; {earned}; to quote that: --plan customer"


def _earned(one: Way) -> str:
    return f"{one.earns.earned} ({margin_words(one.earns)})"


def _others(here: Market, shop: Way, revision: int) -> Iterator[Way]:
    """Other plans that can be quoted, each different from the shop's."""
    seen = [_bought_items(shop.bought.plan)]
    for name, plan in (*_alone(here), *_sooner(here)):
        if plan is None or plan.unfilled or _bought_items(plan) in seen:
            continue
        seen.append(_bought_items(plan))
        try:
            yield _way(here, plan, name, revision)
        except Refused:  # what can't be quoted is no choice
            continue


def _alone(here: Market) -> Iterator[tuple[str, Plan | None]]:
    """Everything from one supplier, for those who offer every need."""
    sellers = [{one.offer.supplier for one in (*seen.priced, *seen.unknown)} for seen in here.seen.values()]
    for supplier in sorted(set.intersection(*sellers) if sellers else ())[:MOST_ALONE]:
        yield f"everything from {here.found.supplier_name(supplier)}", here.plan_beside(supplier)


def _sooner(here: Market) -> Iterator[tuple[str, Plan | None]]:
    """The plans of the front of cost and day that are sooner than the cheapest."""
    if len(here.needs) < 2:
        return
    front = here.plan_beside(front=True)
    points = [point for point in front.front if not point.chosen and point.latest is not None] if front else []
    for point in points[:MOST_SOONER]:
        yield f"the plan that is here by {point.latest}", here.plan_beside(need_by=point.latest)


def _bought_items(plan: Plan) -> set[tuple[object, ...]]:
    items = (one.item for order in plan.orders for one in order.landed.items)
    return {(item.need, item.offer.identity, item.ordered) for item in items}


def _way(here: Market, plan: Plan, name: str, revision: int) -> Way:
    bought = here.bought(plan)
    quote = build_quote(here.job, bought, here.found.shop.settings, here.found.at, revision)
    return Way(name=name, bought=bought, quote=quote, earns=everything_margin(quote))
