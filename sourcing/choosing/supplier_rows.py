"""One supplier's charges as rows of the programme: his schedule on the sums of what is chosen from him.

Nothing here may ever say more than the true charge; where it may say less (a weight rounded down, a half unit), the
search prices the order by the landed-cost rules and asks again.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from ..basics.landed_cost import Arrival
from ..basics.schedule import FreightStep, Percent, Schedule, SummedPart, ValueStep
from ..basics.value import changed
from .choices import Choice
from .model import Model, Sum, plus
from .value_steps import Step, merged_steps, only_falls

FINEST = Fraction(1, 1000)
"""Halves are told from what lies below them where a per cent gives nothing finer than this; finer is not seen."""


@dataclass(frozen=True)
class Taken:
    """A choice in the programme: whether it is taken, and how many further steps (None: it has none)."""

    choice: Choice
    taken: int
    further: int | None

    def sum_of(self, field: str, high: bool = False) -> Sum:
        """What it adds to a sum of its order: at least, or with `high` at most."""
        result: Sum = {}
        first = getattr(self.choice.sums, field)
        if first:
            result[self.taken] = first
        if self.further is not None and self.choice.ends is not None:
            slope = self.choice.ends.of(field, high)
            if slope:
                result[self.further] = slope
        return result

    def most(self, field: str) -> Fraction:
        """The largest it can add to that sum."""
        first, ends = Fraction(getattr(self.choice.sums, field)), self.choice.ends
        return first if ends is None else max(first, first + ends.of(field, high=True) * self.choice.more)


class SupplierRows:
    """Adds a supplier's rows to the model. `used` is the sum that is 1 as soon as anything is bought of him."""

    def __init__(
        self,
        model: Model,
        schedule: Schedule,
        taken: Sequence[Taken],
        divided: frozenset[int],
        over: Sequence[tuple[int, Arrival]] = (),
    ) -> None:
        self.model, self.schedule, self.taken, self.divided, self.over = model, schedule, taken, divided, over
        self.used: Sum = {}
        self.freight: Sum = {}
        self.fees: Sum = {}
        self.duty: Sum = {}
        self.discount: Sum = {}
        self._free: Sum = {}
        freights = schedule.freight_steps
        if not schedule.weight_steps and schedule.freight_per_kg is None:  # by weight, and no weight has a price
            freights = tuple(changed(one, known=one.known and not one.by_weight) for one in freights)
        if all(one.choice.sums.value == one.choice.sums.counted for one in taken):
            self._ladder(merged_steps(schedule.steps, freights), "value")
        else:
            self._ladder(merged_steps(schedule.steps, (FreightStep(from_value=0, freight=0),)), "value")
            self._ladder(merged_steps((ValueStep(from_value=0, fees=0),), freights), "counted")
        self._linked()
        self._weight()
        self._oversize()
        self._later_deliveries()
        self._percents()

    def summed(self, field: str, high: bool = False) -> Sum:
        """The sum of a field over everything that is taken."""
        result: Sum = {}
        for one in self.taken:
            plus(result, one.sum_of(field, high))
        return result

    def _ladder(self, steps: Sequence[Step], meter: str) -> None:
        """Put the order on the step its value falls in."""
        reach = self._reach(meter)
        steps = [step for at, step in enumerate(steps) if at == 0 or step.start <= reach]
        on = [self.model.variable(cost=step.freight + step.fees, top=0 if step.barred else 1) for step in steps]
        if len(steps) > 1:
            bottoms = {at: -step.start for at, step in zip(on, steps, strict=True) if step.start}
            self.model.row(plus(self._capped(meter, steps), bottoms), least=0)
            if not only_falls(steps):
                tops = [*(step.start - 1 for step in steps[1:]), max(int(reach) + 1, steps[-1].start)]
                self.model.row(plus(self.summed(meter), {at: -top for at, top in zip(on, tops, strict=True)}), most=0)
        if self.used:
            self.model.row(plus(dict.fromkeys(on, 1), self.used, -1), least=0, most=0)
        else:
            self.used = dict.fromkeys(on, 1)
            self.model.row(dict(self.used), most=1)
        plus(self.freight, {at: step.freight for at, step in zip(on, steps, strict=True) if step.freight})
        plus(self.fees, {at: step.fees for at, step in zip(on, steps, strict=True) if step.fees})
        if any(step.by_weight for step in steps):
            plus(self._free, {at: 1 for at, step in zip(on, steps, strict=True) if not step.by_weight})
        self._discounts(steps, on)

    def _capped(self, meter: str, steps: Sequence[Step]) -> Sum:
        """The value as the lower ends of steps see it; above the only one nothing more counts, which is tighter."""
        starts = [step.start for step in steps if step.start]
        result: Sum = {}
        for one in self.taken:
            own = one.sum_of(meter, high=True)
            if len(starts) == 1 and one.further is None and own:
                own = {one.taken: min(own[one.taken], starts[0])}
            plus(result, own)
        return result

    def _discounts(self, steps: Sequence[Step], on: Sequence[int]) -> None:
        """A discount on the whole order: one whole amount, each step's per cent of the value that falls on the step."""
        reach, best = self._reach("value"), max(step.discount for step in steps)
        if not best:
            return
        amount = self.model.variable(cost=-1, top=int(reach * Fraction(best) / 100) + 1)
        plus(self.discount, {amount: -1})
        shares: Sum = {}
        value: Sum = {}
        ends = [*(step.start for step in steps[1:]), max(ceil(reach), steps[-1].start)]
        for at, step, end in zip(on, steps, ends, strict=True):
            part = self.model.variable(top=end, whole=False)
            self.model.row({part: 1, at: -end}, most=0)
            value[part] = 1
            shares[part] = -Fraction(step.discount) / 100
        self.model.row(plus(dict(value), self.summed("value", high=True), -1), most=0)
        self.model.row({amount: 1, **shares}, most=Fraction(1, 2))

    def _reach(self, meter: str) -> Fraction:
        """The most an order of his can come to: one choice of each need, one of each offer of a divided one."""
        most: dict[tuple[object, ...], Fraction] = {}
        for one in self.taken:
            key = self._part_of(one)
            most[key] = max(most.get(key, Fraction(0)), one.most(meter))
        return sum(most.values(), Fraction(0))

    def _part_of(self, one: Taken) -> tuple[object, ...]:
        """Of what only one choice is taken: the need, or the offer of a divided one."""
        return (one.choice.need, *(one.choice.item.offer.identity if one.choice.need in self.divided else ()))

    def _linked(self) -> None:
        """Nothing is taken of a supplier who is not used: one row for each need, for each offer of a divided one."""
        groups: dict[tuple[object, ...], Sum] = {}
        for one in self.taken:
            groups.setdefault(self._part_of(one), {})[one.taken] = 1
        for group in groups.values():
            self.model.row(plus(group, self.used, -1), most=0)

    def _weight(self) -> None:
        """Freight by weight, not charged on the steps where freight is free."""
        at = self.schedule
        if at.freight_per_kg is None and not at.weight_steps:
            return
        meters: tuple[str, ...] = ("grams", "volume_grams")
        grams = [self.summed(meter) for meter in meters]
        reach = max(self._reach(meter) for meter in meters)
        if at.freight_per_kg is not None:
            self._per_kg(grams, reach)
        else:
            self._by_step(grams, reach)

    def _by_step(self, grams: Sequence[Sum], reach: Fraction) -> None:
        """The step of the weight, by both meters; heavier than the heaviest only where freight is free."""
        at = self.schedule
        steps = [step for step in at.weight_steps if step.above < reach or not step.above]
        limit = reach if at.heaviest is None else min(reach, Fraction(at.heaviest))
        tops = [*(min(Fraction(step.above), limit) for step in steps[1:]), limit]
        on = [self.model.variable() for _ in steps]
        self.model.row(plus(dict.fromkeys(on, 1), self.used, -1), least=0, most=0)
        for sums in grams:
            row = plus(dict(sums), {z: -top for z, top in zip(on, tops, strict=True)})
            if limit < reach:
                plus(row, self._free, -reach)
            self.model.row(row, most=0)
        dearest = max(step.freight for step in steps)
        amount = self.model.variable(cost=1, top=dearest, whole=False)
        charge = {z: -step.freight for z, step in zip(on, steps, strict=True)}
        self.model.row(plus(plus({amount: 1}, charge), self._free, dearest), least=0)
        plus(self.freight, {amount: 1})

    def _per_kg(self, grams: Sequence[Sum], reach: Fraction) -> None:
        at, per_gram = self.schedule, Fraction(self.schedule.freight_per_kg or 0) / 1000
        if at.weight_started is not None:
            grams, reach, per_gram = self._started(grams, reach, Fraction(at.weight_started), per_gram)
        most = int(max(reach * per_gram + 1, Fraction(at.weight_least)))
        amount = self.model.variable(cost=1, top=most)
        self.model.row(plus(plus({amount: 1}, self.used, -at.weight_least), self._free, at.weight_least), least=0)
        capped: Sum = {}
        if at.weight_most is not None and at.weight_most < most:
            capped = {self.model.variable(): 1}
            self.model.row(plus(plus({amount: 1}, capped, -at.weight_most), self._free, at.weight_most), least=0)
        for sums in grams:
            row = plus(plus({amount: 1}, sums, -per_gram), self._free, most)
            self.model.row(plus(row, capped, most), least=Fraction(-1, 2))
        plus(self.freight, {amount: 1})

    def _started(
        self, grams: Sequence[Sum], reach: Fraction, started: Fraction, per_gram: Fraction
    ) -> tuple[list[Sum], Fraction, Fraction]:
        """The weight as whole started steps: their sum, how many there can be, and what each costs."""
        most = int(reach / started) + 1
        steps = self.model.variable(top=most)
        for sums in grams:
            self.model.row(plus({steps: 1}, sums, -1 / started), least=0)
        return [{steps: 1}], Fraction(most), per_gram * started

    def _oversize(self) -> None:
        large = [one for one in self.taken if one.choice.sums.oversize]
        if not large or not self.schedule.oversize_once:
            return
        once = self.model.variable(cost=self.schedule.oversize_once)
        for one in large:
            self.model.row({once: 1, one.taken: -1}, least=0)
        plus(self.freight, {once: self.schedule.oversize_once})

    def _later_deliveries(self) -> None:
        """Freight of each range of days of leaving beyond the first; what has no day will not leave with the others."""
        if not self.schedule.later_delivery:
            return
        leaving: dict[object, int] = {}
        for at, arrival in [*((one.taken, one.choice.arrival) for one in self.taken), *self.over]:
            for range_of_days in (*(each.leaves for each in arrival.deliveries), *(() if arrival.known else (None,))):
                if range_of_days not in leaving:
                    leaving[range_of_days] = self.model.variable(cost=self.schedule.later_delivery)
                self.model.row({leaving[range_of_days]: 1, at: -1}, least=0)
        if not leaving:
            return
        # The first is paid for: taken off through a variable of its own, so that the charge can be summed.
        first = self.model.variable(cost=-self.schedule.later_delivery)
        self.model.row(plus({first: 1}, self.used, -1), most=0)
        self.model.row(plus({first: 1}, dict.fromkeys(leaving.values(), 1), -1), most=0)
        plus(self.freight, dict.fromkeys(leaving.values(), self.schedule.later_delivery))
        plus(self.freight, {first: -self.schedule.later_delivery})

    def _percents(self) -> None:
        """Each charge in per cent as a whole amount, at least the half-up rounding of its share, within its ends."""
        for one in self.schedule.percents:
            if not one.percent and not one.fixed and not one.least:
                continue
            self._percent(one)

    def _percent(self, one: Percent) -> None:
        base: Sum = {}
        for part, factor in one.of:
            plus(base, self._part(part), Fraction(factor))
        share, fixed = Fraction(one.percent) / 100, one.fixed
        if all(part == "discount" for part, _ in one.of):
            off = self.model.variable(cost=-1, top=int(-self._lowest(base) * share) + 1)
            self.model.row(plus({off: 1}, base, share), most=Fraction(1, 2))
            plus(self.duty, {off: -1})
            return
        room = int(self._largest(base) * share + fixed) + 1
        amount = self.model.variable(cost=1, top=max(room, one.least or 0))
        row = plus(plus({amount: 1}, base, -share), self.used, -fixed)
        capped: Sum = {}
        if one.most is not None and room > one.most:
            capped = {self.model.variable(): 1}
            plus(row, capped, room)
            self.model.row(plus({amount: 1}, capped, -one.most), least=0)
        self.model.row(row, least=Fraction(-1, 2) + _above_half(one))
        if one.least:
            self.model.row(plus({amount: 1}, self.used, -one.least), least=0)
        if one.part in ("fees", "duty"):
            plus(self.fees if one.part == "fees" else self.duty, {amount: 1})

    def _part(self, part: SummedPart) -> Sum:
        own: Sum = {} if part in ("discount", "tax") else self.summed(part)
        more = {"freight": self.freight, "fees": self.fees, "duty": self.duty, "discount": self.discount}
        return plus(own, more.get(part, {}))

    def _largest(self, sums: Sum) -> Fraction:
        return sum(
            (Fraction(factor) * Fraction(str(self._top(at))) for at, factor in sums.items() if factor > 0), Fraction(0)
        )

    def _lowest(self, sums: Sum) -> Fraction:
        return -self._largest({at: -factor for at, factor in sums.items()})

    def _top(self, at: int) -> float:
        return self.model.tops[at]


def _above_half(one: Percent) -> Fraction:
    """Halves are rounded up: what the row asks beyond half a unit less, if the solver can see it."""
    finest = Fraction(1)
    for _, factor in one.of:
        product = Fraction(factor) * Fraction(one.percent) / 100
        finest = min(finest, Fraction(1, product.denominator))
    return finest / 2 if finest >= FINEST else Fraction(0)
