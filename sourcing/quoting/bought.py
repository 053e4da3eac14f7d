"""What would be bought for a quote: the plan, its agreed lines alone, what was decided, what is ordered already."""

from collections.abc import Mapping
from datetime import date

from ..basics.alarm import Decision
from ..basics.landed_cost import LandedItem
from ..basics.money import Money, share_out, total
from ..basics.plan import Plan, PlannedOrder
from ..basics.quote import QuoteLine
from ..basics.terms import Returns
from ..basics.value import Value


class Found(Value, frozen=True, kw_only=True):
    """The plan's item for a line and the order it is in."""

    landed: LandedItem
    order: PlannedOrder

    @property
    def freight_share(self) -> Money:
        """The item's share of its order's freight, by value of goods as every other charge."""
        items = self.order.landed.items
        shares = share_out(self.order.landed.freight, [one.goods_cost.amount for one in items])
        return shares[[one.item.need for one in items].index(self.landed.item.need)]


class Bought(Value, frozen=True, kw_only=True):
    """`plan` fills agreed lines and add-ons together; `agreed_alone` are the same offers of the agreed lines as orders
    of their own, which is what they cost when every add-on is declined.

    By line label: `decisions`, the last one of each line where it still speaks of this part; `settled`, lines that
    stand on an order already, as they were approved: they are in no plan; `promised`, lines not ordered yet whose price
    was promised since whatever the part costs, and with it their freight. `returns` by supplier, `names` and
    `categories` by our part. `kept_freight`: what the last revision billed for the settled and promised lines;
    `kept_arrives`: the days it promised for the settled. `freight_choices`: what the plan's offers of each choice of
    parts cost in freight as orders of their own; empty where freight is carried.
    """

    plan: Plan
    agreed_alone: tuple[PlannedOrder, ...] = ()
    decisions: Mapping[str, Decision] = {}
    settled: Mapping[str, QuoteLine] = {}
    returns: Mapping[str, Returns] = {}
    names: Mapping[str, str] = {}
    categories: Mapping[str, str] = {}
    promised: frozenset[str] = frozenset()
    kept_freight: tuple[QuoteLine, ...] = ()
    kept_arrives: tuple[date, date] | None = None
    freight_choices: Mapping[frozenset[str], Money] = {}

    def found(self, label: str) -> Found | None:
        """What the plan buys for that line; None where nothing is bought for it."""
        for order in self.plan.orders:
            for landed in order.landed.items:
                if landed.item.need == label:
                    return Found(landed=landed, order=order)
        return None

    def cost_alone(self, label: str) -> Money | None:
        """An agreed line's landed cost, without what goes on the shelf, when every add-on is declined."""
        items = (one for order in self.agreed_alone for one in order.landed.items)
        return next((one.landed - one.surplus_cost for one in items if one.item.need == label), None)

    def freight(self, currency: str) -> tuple[Money, Money]:
        """Inbound freight of the agreed lines alone, and of everything together. Settled lines are in neither."""
        alone, every = (
            total((order.landed.freight for order in orders), currency)
            for orders in (self.agreed_alone, self.plan.orders)
        )
        return alone, every
