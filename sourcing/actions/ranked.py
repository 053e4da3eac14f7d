"""One part's offers, priced and dated, as a comparison: ranked, beneath, set aside, and how long the first stays first.

The same with the shop's database and with a basket.
"""

from collections.abc import Callable, Sequence
from datetime import date, datetime

from ..basics.choice import Comparison, Priced, Ranking, RankWishes, TurningPoint
from ..basics.value import changed
from ..choosing.front import day_spans
from ..choosing.ranking import rank
from ..choosing.turning import turning_points
from ..choosing.wishes import against
from ..landed_cost.door import Door
from .basis_notes import basis_notes
from .movements import movements
from .sorted_offers import Evaluated

DoorOf = Callable[[str], Door]
"""What stands between a supplier, by his short name, and the shop at the moment of asking."""


def ranked_into(bare: Comparison, seen: Evaluated, wishes: RankWishes, at: datetime, door_of: DoorOf) -> Comparison:
    """The comparison with its offers in order, beneath and apart, turning points, day spans and a note on time.

    `bare` says what was asked; its notes are kept and stand after the one on time. `at` is the moment of asking.
    """
    ranking = rank([*seen.priced, *seen.unknown], wishes, at.date())
    beneath = {id(one.offer) for one in seen.unknown}
    apart = [one for one in seen.set_aside if id(one.offer) not in beneath]
    return changed(
        bare,
        need_by=wishes.need_by,
        wishes=wishes,
        asked_on=at.date(),
        ranked=ranking.ranked,
        open_offers=ranking.open_offers,
        set_aside=(*ranking.set_aside, *apart),
        candidates=seen.candidates,
        turning_points=turning_points_of(ranking, wishes, at.date(), door_of),
        day_spans=day_spans(ranking.ranked),
        notes=(*_time_notes(wishes, seen.priced), *_basis_notes(ranking, at.date(), door_of), *bare.notes),
    )


def _basis_notes(ranking: Ranking, today: date, door_of: DoorOf) -> tuple[str, ...]:
    """Of the ranked offers and those beneath them."""
    some = [*(one.priced for one in ranking.ranked), *(one.priced for one in ranking.open_offers)]
    days = [one.arrival.latest for one in some if one.arrival.latest]
    suppliers = sorted({one.offer.supplier for one in some})
    return basis_notes(map(door_of, suppliers), today, max(days, default=None))


def turning_points_of(
    ranking: Ranking, wishes: RankWishes, asked_on: date, door_of: DoorOf
) -> tuple[TurningPoint, ...]:
    """How far landed cost, freight and price of the first may rise, and of the second must fall, each alone."""
    if len(ranking.ranked) < 2:
        return ()
    one, two = (at.priced for at in ranking.ranked[:2])
    first, second = movements(one, door_of(one.offer.supplier), 1), movements(two, door_of(two.offer.supplier), -1)
    return turning_points(ranking, wishes, asked_on, first, second)


def _time_notes(wishes: RankWishes, priced: Sequence[Priced]) -> tuple[str, ...]:
    """Where no offer is here in time, which one is nearest; what the other wishes take out is not looked at."""
    by = wishes.need_by
    if by is None:
        return ()
    rest = changed(wishes, need_by=None, only_in_time=False)
    dated = [(one.arrival.latest, one.supplier_name) for one in priced if one.arrival.latest and not against(one, rest)]
    if any(day <= by for day, _ in dated):
        return ()
    if not dated:
        return (f"no offer names a day, so none can be promised by {by}; ask when it can be here",) if priced else ()
    day, name = min(dated)
    return (f"no offer is here by {by}; nearest is {name} on {day}",)
