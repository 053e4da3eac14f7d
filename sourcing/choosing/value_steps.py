"""Steps of the order's value: fixed freight and fees, discount, and what can't be planned, merged in one ladder."""

from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal
from itertools import pairwise

from ..basics.schedule import FreightStep, ValueStep


@dataclass(frozen=True)
class Step:
    """From this value on: all fixed charges, what else holds, and whether no such order can be planned."""

    start: int
    freight: int
    fees: int
    discount: Decimal
    by_weight: bool
    barred: bool

    @property
    def charges(self) -> tuple[object, ...]:
        """Everything but where it starts."""
        return self.freight, self.fees, self.discount, self.by_weight, self.barred


def merged_steps(values: Sequence[ValueStep], freights: Sequence[FreightStep]) -> list[Step]:
    """The steps of both, merged; neighbours that charge the same are one."""
    result: list[Step] = []
    starts = {one.from_value for one in values} | {one.from_value for one in freights}
    for start in sorted(starts):
        value = [one for one in values if one.from_value <= start][-1]
        freight = [one for one in freights if one.from_value <= start][-1]
        step = Step(
            start=start,
            freight=freight.freight,
            fees=value.fees,
            discount=value.discount_percent,
            by_weight=freight.by_weight,
            barred=value.refused or not freight.known,
        )
        if not result or result[-1].charges != step.charges:
            result.append(step)
    return result


def only_falls(steps: Sequence[Step]) -> bool:
    """Whether a higher step is never worse, so that no row must hold an order down."""
    return all(
        after.freight + after.fees <= before.freight + before.fees
        and after.freight <= before.freight
        and after.fees <= before.fees
        and after.discount >= before.discount
        and after.by_weight <= before.by_weight
        and after.barred <= before.barred
        for before, after in pairwise(steps)
    )
