"""Words for needs that nobody fills, or not in time, or not together with the others; with the nearest that could."""

from collections.abc import Sequence
from datetime import date

from ..basics.plan import NO_DAY, NOT_IN_TIME, PlanNeed, PlanWishes
from .choices import Choice
from .search import Market

MOST_ASKED = 3
"""Suppliers named to be asked for a day."""


def unfilled_words(need: PlanNeed, choices: Sequence[Choice], market: Market, wishes: PlanWishes) -> str:
    """Why the need has no choice in time, and who comes nearest."""
    what = f"{need.label}: {need.quantity} x {need.our_part}"
    dated = [one for one in choices if one.arrival.latest is not None]
    if not choices:
        return f"{what}: nobody offers it on a sheet that holds{_only(wishes)}"
    if not dated:
        return f"{what}: {_no_day(choices, market, need.need_by or wishes.need_by)}"
    nearest = min(dated, key=lambda one: (one.latest, one.own_cost(), one.name))
    by, who = need.need_by or wishes.need_by, market.supplier_names[nearest.supplier]
    silent = _names([one for one in choices if one.arrival.latest is None], market, besides=who)
    sooner = f"; ask {silent} too, for no day is named there" if silent else ""
    return f"{what}: {NOT_IN_TIME} {by}; nearest is {who} on {nearest.arrival.latest}{sooner}"


def _names(choices: Sequence[Choice], market: Market, besides: str = "") -> str:
    """'Stonegarth or Pellbrook', the cheapest first."""
    cheapest_first = sorted(choices, key=lambda one: (one.own_cost(), one.name))
    names = dict.fromkeys(market.supplier_names[one.supplier] for one in cheapest_first)
    return " or ".join([one for one in names if one != besides][:MOST_ASKED])


def _no_day(choices: Sequence[Choice], market: Market, by: date | None) -> str:
    """Who is to be asked, the cheapest first, and how it can be bought all the same."""
    names = _names(choices, market)
    words = f"{NO_DAY}, so none is sure by {by}; ask {names} when it can be here"
    return f"{words}, or take it whatever day it comes with --any-day"


def _only(wishes: PlanWishes) -> str:
    """What the wishes leave out of all sheets."""
    trusted = " by a trusted match" if wishes.trusted_only else ""
    return f"{trusted} with all of it in stock" if wishes.in_stock_only else trusted


def left_out_words(need: PlanNeed, wishes: PlanWishes) -> str:
    """Why a need that somebody fills had to be left out of the plan."""
    what = f"{need.label}: {need.quantity} x {need.our_part}"
    rules = ["every supplier's minimum order"]
    if wishes.most_suppliers is not None:
        rules.append(f"at most {wishes.most_suppliers} supplier{'s' if wishes.most_suppliers > 1 else ''}")
    if wishes.in_stock_only:
        rules.append("what is in stock")
    if need.together:
        rules.append(f"that '{need.together}' comes together")
    if need.need_by or wishes.need_by:
        rules.append("the days it is needed by")
    return f"{what}: no set of orders that fills the other needs too holds to {', '.join(rules)}"
