"""A plan of orders for many needs: what is asked of it, and what it gives."""

from datetime import date
from decimal import Decimal
from typing import Literal

from .choice import Asks
from .landed_cost import Arrival, LandedOrder
from .money import Money
from .value import Value

MoreThanNeeded = Literal["whatever pays", "cheaper break", "never"]
"""When more pieces may be bought than a need, its packs and minimums call for: whenever the whole plan is cheaper for
it (free freight, a minimum order), only where a price break makes the line cheaper, or never."""

Objective = Literal["cost", "date", "cost and days"]
"""The least landed total; the soonest complete plan, cheapest among these; or landed total plus a price per day."""


class PlanNeed(Value, frozen=True, kw_only=True):
    """A part and quantity a job calls for. `label` is the quote line it belongs to: '1', 'A'.

    `need_by` None: the plan's. `may_split`: it may come from several offers. `together`: needs with the same word come
    from one supplier in one order; blank: each by itself. `size`: the part's designation, such as B88, asked of every
    offer of a basket; blank: not asked (of a job's parts the equivalence table says it).
    """

    label: str
    our_part: str
    quantity: int
    asks: Asks = Asks()
    need_by: date | None = None
    may_split: bool = False
    together: str = ""
    size: str = ""


class PlanWishes(Value, frozen=True, kw_only=True):
    """What the user asks of a plan beside its needs.

    `value_per_day` is the stated price of a calendar day of waiting (shop's currency), counted from the day of
    planning; needed for the objective 'cost and days'. `most_suppliers` None: any number. `surplus_credit_percent`: how
    much of the cost of surplus that packs and minimums force counts as got back, 0 to 100, less the supplier's largest
    order discount; pieces bought beyond that, and those of a need that may split, are charged in full. `cores_lost`:
    the old parts will not go back, so core charges are cost. `in_stock_only`: only what the sheet says is there.
    `seconds`: when to stop and show what was found. `front`: work out the whole front of cost and date.
    """

    objective: Objective = "cost"
    need_by: date | None = None
    value_per_day: Decimal | None = None
    most_suppliers: int | None = None
    more_than_needed: MoreThanNeeded = "whatever pays"
    surplus_credit_percent: Decimal = Decimal(0)
    cores_lost: bool = False
    in_stock_only: bool = False
    trusted_only: bool = False
    front: bool = False
    seconds: int = 30


NOT_IN_TIME, NO_DAY = "nobody has it here by", "no offer names a day"
"""How the sentence of a need goes on that is left out for its day alone."""


class PlannedOrder(Value, frozen=True, kw_only=True):
    """One supplier's share of the plan, with the date it is all here."""

    landed: LandedOrder
    arrival: Arrival


class Alternative(Value, frozen=True, kw_only=True):
    """Another way to fill the same needs and what it costs; `total` None: it is not possible, and `why` says why.

    `more`: how much dearer than the plan; None where it is not possible, or fills needs that the plan leaves out.
    """

    name: str
    total: Money | None
    latest: date | None
    why: str
    more: Money | None = None


class FrontPoint(Value, frozen=True, kw_only=True):
    """A plan no other beats in both cost and date. `counted` is what the objective counts: total, less credit, plus
    lost cores. `chosen`: this is the plan shown."""

    total: Money
    counted: Money
    latest: date | None
    suppliers: tuple[str, ...]
    proven: bool
    chosen: bool = False


class Plan(Value, frozen=True, kw_only=True):
    """Orders that fill the needs at the least landed total, proven by the solver and recomputed.

    `counted` is what was made least (see `FrontPoint`); without credit and lost cores it is `total`. `bound`: no plan
    can count less than this; `proven` says that it equals `counted`. `waiting` is the price of its days where the
    objective counts them; it is in no total. `alternatives` and `front` are for comparison.
    `unfilled` says which needs nobody can fill, and why, with the nearest that could. `warnings` are what must be asked
    or known of a need or of a chosen offer before it is ordered, by line.
    """

    needs: tuple[PlanNeed, ...]
    orders: tuple[PlannedOrder, ...]
    total: Money
    core_charge: Money
    latest: date | None
    proven: bool
    counted: Money
    bound: Money | None = None
    waiting: Money | None = None
    wishes: PlanWishes = PlanWishes()
    notes: tuple[str, ...] = ()
    alternatives: tuple[Alternative, ...] = ()
    front: tuple[FrontPoint, ...] = ()
    unfilled: tuple[str, ...] = ()
    warnings: tuple[str, ...] = ()

    @property
    def waits_for_a_day(self) -> bool:
        """Whether a need is left out for the day alone: nobody has it in time, or nobody names a day."""
        return any(words in one for one in self.unfilled for words in (NOT_IN_TIME, NO_DAY))

    @property
    def gap_percent(self) -> Decimal:
        """How far the plan may be above the least, in per cent of what it counts, to two decimals; 0 where proven."""
        if self.proven or self.bound is None or not self.counted.amount:
            return Decimal(0)
        return (100 * (self.counted.amount - self.bound.amount) / self.counted.amount).quantize(Decimal("0.01"))
