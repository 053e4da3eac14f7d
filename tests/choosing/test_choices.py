"""Ways to fill a need: an offer in a quantity and in further steps of it; what each adds lies between exact ends."""

from collections.abc import Callable
from datetime import date
from decimal import Decimal
from fractions import Fraction
from itertools import pairwise

import pytest

from sourcing.basics.landed_cost import Arrival, OrderItem
from sourcing.basics.offer import Offer
from sourcing.basics.schedule import ItemSums
from sourcing.basics.value import changed
from sourcing.choosing.choices import FIELDS, LOOKED_AT, Choice, choice, divided, sized
from sourcing.landed_cost.arrival import arrival
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.sums import item_sums
from tests.builders import door, item, lead, offer
from tests.choosing.small import AT, THURSDAY

See = Callable[[OrderItem], tuple[ItemSums, Arrival]]


def seen(at: Door) -> See:
    """What an item adds and when it comes, by the landed-cost rules."""
    return lambda of: (item_sums(of, at), arrival(of, at, AT))


def ladder(of: Offer, full: int, step: int, more: int, at: Door | None = None) -> Choice:
    """The offer in `full` pieces and up to `more` further steps."""
    return choice(0, item(of, full), full, (step, more), seen(at or door()))


def test_one_quantity_has_no_ends_and_is_exact() -> None:
    """Two at 10.00: 20.00, here on Thursday."""
    one = ladder(offer(), 2, 1, 0)
    assert (one.sums.goods, one.own_cost(), one.latest, one.ends) == (2000, 2000, THURSDAY, None)
    assert one.exact


def test_its_own_cost_is_all_that_it_brings_itself() -> None:
    """Goods 20.00, duty of 10 per cent, 10.00 handling of its line; the core charge is cash."""
    at = door(duty_percent=Decimal(10), handling_per_line=Decimal(10))
    one = ladder(offer(core_charge=Decimal(5)), 2, 1, 0, at)
    assert (one.sums.duty, one.sums.fees, one.sums.core) == (200, 1000, 1000)
    assert one.own_cost() == 2000 + 200 + 1000


def test_even_prices_have_one_end() -> None:
    """Each further step of two pieces adds 20.00 and nothing in doubt."""
    one = ladder(offer(), 2, 2, 7)
    assert one.ends is not None and one.exact
    assert one.ends.of("goods") == one.ends.of("goods", high=True) == 2000
    assert one.at(3).ordered == 8 and one.at(3).needed == 2
    assert one.ends.of("surplus") == 0, "what was bought by choice is not surplus that a pack forced"


@pytest.mark.parametrize("more", [5, LOOKED_AT, LOOKED_AT + 1, 400])
@pytest.mark.parametrize("price", ["33.333", "0.5", "99.99", "7.006"])
def test_every_further_step_lies_between_the_ends(more: int, price: str) -> None:
    """A price per hundred in euros: the line is rounded, converted and rounded; the ends hold all of it."""
    at = door(rate="1.0873", currency="EUR", discount_percent=Decimal(7), duty_percent=Decimal(3))
    one = ladder(offer(price=price, currency="EUR", price_basis=100), 1, 1, more, at)
    assert one.ends is not None
    for further in range(1, more + 1):
        sums = item_sums(one.at(further), at)
        for field in FIELDS:
            rise = Fraction(getattr(sums, field) - getattr(one.sums, field), further)
            assert one.ends.of(field) <= rise <= one.ends.of(field, high=True), (field, further)


def test_ends_that_differ_are_not_exact() -> None:
    """A third of a cent a piece."""
    one = ladder(offer(price="33.333", price_basis=100), 1, 1, 5)
    assert not one.exact
    assert one.ends is not None and one.ends.of("goods") < one.ends.of("goods", high=True)


@pytest.mark.parametrize("further", [0, 1, 4, 7])
def test_a_ladder_divided_holds_each_quantity_once(further: int) -> None:
    """Quantities 2, 4, ... 16, one of them on its own."""
    one = ladder(offer(price="33.333", price_basis=100), 2, 2, 7)
    parts = list(divided(one, further, seen(door())))
    quantities = [part.at(at).ordered for part in parts for at in range(part.more + 1)]
    assert quantities == [2, 4, 6, 8, 10, 12, 14, 16]
    (alone,) = [part for part in parts if part.item.ordered == 2 + 2 * further]
    assert alone.more == 0 and alone.exact
    assert all(part.sums == item_sums(part.item, door()) for part in parts)
    assert all(before.name < after.name for before, after in pairwise(parts))


def test_a_part_of_a_divided_need_needs_no_more_than_its_own_pieces() -> None:
    """Three of five pieces are all needed; of eight only five."""
    assert sized(item(offer(), 5), 5, 3).needed == 3
    assert sized(item(offer(), 5), 5, 8).needed == 5


def test_a_day_that_is_not_known_is_later_than_all() -> None:
    """'Call' names no day."""
    assert ladder(offer(stock=0, lead_time=lead("call", None, None)), 1, 1, 0).latest == date.max


def test_its_first_quantity_alone_and_its_place() -> None:
    """Without further steps it is exact; at another place only the place differs."""
    one = ladder(offer(price="33.333", price_basis=100), 2, 2, 7)
    assert (one.alone().more, one.alone().ends, one.alone().item) == (0, None, one.item)
    assert one.placed(3).need == 3 and one.placed(3).item == one.item and one.placed(0) is one


def test_a_ladder_divided_says_for_how_many_pieces_each_part_may_be_bought() -> None:
    """Packs of two for a divided need: the first is for one piece at least, each further pack for two more."""
    one = changed(ladder(offer(price="33.333", price_basis=100), 2, 2, 7), least=1)
    parts = list(divided(one, 3, seen(door())))
    assert [(part.item.ordered, part.least) for part in parts] == [(2, 1), (8, 7), (10, 9)]
    assert all(part.least is None for part in divided(changed(one, least=None), 3, seen(door())))


@pytest.mark.parametrize(("full", "further"), [(2, 0), (3, 1), (4, 1), (5, 2), (16, 7), (17, None)])
def test_how_many_further_steps_fill_the_need_alone(full: int, further: int | None) -> None:
    """Packs of two, from two to sixteen pieces."""
    one = changed(ladder(offer(price="33.333", price_basis=100), 2, 2, 7), full=full)
    assert one.to_fill() == further
    if further is not None:
        alone = one.alone_at(further, seen(door()))
        assert (alone.more, alone.item, alone.sums) == (0, one.at(further), item_sums(one.at(further), door()))
        assert alone.exact and alone.least is None
    assert changed(one, least=1).alone_at(3, seen(door())).least == 7
