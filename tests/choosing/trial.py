"""One planning question as plain values: what brute force, the second solver and the plan itself are all asked."""

from collections.abc import Collection, Mapping
from datetime import date, datetime

from sourcing.basics.offer import Offer
from sourcing.basics.plan import PlanNeed, PlanWishes
from sourcing.basics.value import Value, changed
from sourcing.landed_cost.door import Door


class Trial(Value, frozen=True, kw_only=True):
    """Needs, the offers of each by its label, the way to each supplier, the wishes, and the moment of ordering.

    `at` is on every supplier's clock: the doors have no time zones. `extra_steps`: brute force tries so many packs more
    than the fewest.
    """

    name: str
    needs: tuple[PlanNeed, ...]
    offers: Mapping[str, tuple[Offer, ...]]
    doors: Mapping[str, Door]
    at: datetime
    wishes: PlanWishes = PlanWishes()
    extra_steps: int = 2

    def day_of(self, need: PlanNeed) -> date | None:
        """The day by which a need must be here: its own, else the whole plan's."""
        return need.need_by or self.wishes.need_by

    def only(self, labels: Collection[str]) -> "Trial":
        """The same question for some of the needs."""
        return changed(self, needs=tuple(need for need in self.needs if need.label in labels))
