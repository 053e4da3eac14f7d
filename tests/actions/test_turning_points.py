"""How far a figure may move before the first place changes hands: landed and ranked anew at the point and beyond it."""

from collections.abc import Callable
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from sourcing.actions.ranked import turning_points_of
from sourcing.basics.choice import Priced, Ranking, RankWishes, TurningPoint
from sourcing.basics.freight import Freight, FreightBand
from sourcing.basics.offer import Offer
from sourcing.basics.terms import EntryFee, OrderDiscount, TaxPaid
from sourcing.basics.value import changed
from sourcing.choosing.ranking import rank
from sourcing.landed_cost.door import Door
from sourcing.landed_cost.order import landed_order
from tests.builders import door, flat, item, offer
from tests.choosing.priced_values import ASKED, priced

NOTHING = RankWishes()
Again = Callable[[int], Priced]
"""An offer with one of its figures moved by so many minor units."""


def bought(of: Offer, at: Door, needed: int = 1, days: int = 3) -> Priced:
    """The offer bought through that door."""
    bare = priced(of.supplier, days=days)
    return changed(bare, offer=of, landed=landed_order([item(of, needed)], at))


def points(
    some: list[Priced], doors: dict[str, Door], wishes: RankWishes = NOTHING
) -> dict[tuple[int, str], TurningPoint]:
    """Turning points by place and figure."""
    found = turning_points_of(rank(some, wishes, ASKED), wishes, ASKED, doors.__getitem__)
    return {(one.place, one.figure): one for one in found}


def first(ranking: Ranking) -> str:
    """Who is first."""
    return ranking.ranked[0].priced.offer.supplier


def dearer(of: Offer, by: Decimal) -> Offer:
    """The offer with every price so much higher, or lower, never below nothing."""
    steps = tuple(changed(step, price=max(step.price + by, Decimal(0))) for step in of.breaks)
    return changed(of, breaks=steps)


def test_by_hand() -> None:
    """104.50 + 11.50 = 116.00 against 119.00 + 12.50 = 131.50: a gap of 15.50; a tie goes by name."""
    doors = {"larkmoor": door("larkmoor", freight=flat("11.50")), "pellbrook": door("pellbrook", freight=flat("12.50"))}
    one = bought(offer("larkmoor", price="104.50"), doors["larkmoor"])
    two = bought(offer("pellbrook", price="119.00"), doors["pellbrook"])
    found = points([two, one], doors)
    assert found[1, "freight"].words == "Larkmoor stays first until its freight rises by more than 15.50 USD"
    assert found[1, "price"].words == "Larkmoor stays first until its price rises by more than 15.50 USD each"
    assert found[2, "price"].words == "Pellbrook becomes first if its price falls by 15.51 USD each"
    assert found[2, "freight"].words == "Pellbrook does not become first however far its freight falls"
    assert found[2, "freight"].by is None
    assert str(found[1, "landed cost"].by) == "15.50 USD"


def test_a_price_that_rises_past_free_freight_is_found_where_it_first_loses() -> None:
    """95.00 + 12.00, free from 100.00, against 110.00: dearer at 98.01, and first again at 100.00."""
    doors = {
        "larkmoor": door("larkmoor", freight=flat("12.00", "100.00")),
        "pellbrook": door("pellbrook", freight=flat("0.00")),
    }
    one = bought(offer("larkmoor", price="95.00"), doors["larkmoor"])
    two = bought(offer("pellbrook", price="110.00"), doors["pellbrook"])
    assert str(points([one, two], doors)[1, "price"].by) == "3.00 USD"
    one = bought(offer("larkmoor", price="99.00"), doors["larkmoor"])
    two = bought(offer("pellbrook", price="111.50"), doors["pellbrook"])
    assert str(points([one, two], doors)[1, "price"].by) == "0.50 USD", "99.50 + 12.00; 100.00 and no freight is later"


def test_a_price_that_loses_and_wins_again_by_the_rounding_of_a_discount_is_found_where_it_first_loses() -> None:
    """A euro is half a dollar, 30 % off from 0.50 EUR on; the rival costs 0.38 USD, and a tie goes by name.

    1.08: 0.54 - 0.16 = 0.38; 1.09: 0.55 (0.545) - 0.16 (0.1635) = 0.39; 1.10: 0.55 - 0.17 (0.165) = 0.38 again.
    """
    off = (OrderDiscount(from_value=Decimal("0.50"), percent=Decimal(30)),)
    doors = {
        "larkmoor": door("larkmoor", "0.5", currency="EUR", freight=flat("0.00"), order_discounts=off),
        "pellbrook": door("pellbrook", freight=flat("0.00")),
    }
    one = bought(offer("larkmoor", price="0.99", currency="EUR"), doors["larkmoor"])
    two = bought(offer("pellbrook", price="0.38"), doors["pellbrook"])
    assert points([one, two], doors)[1, "price"].words == (
        "Larkmoor stays first until its price rises by more than 0.09 EUR each"
    )


def test_goods_that_are_all_taken_off_again_are_first_at_any_price() -> None:
    """100 % off the order: only the freight is left, 10.00 against 12.00."""
    off = (OrderDiscount(from_value=Decimal("0.50"), percent=Decimal(100)),)
    costs = (("larkmoor", "10.00"), ("pellbrook", "12.00"))
    doors = {name: door(name, freight=flat(cost), order_discounts=off) for name, cost in costs}
    some = [bought(offer(name, price="0.99"), doors[name]) for name in doors]
    assert points(some, doors)[1, "price"].words == "Larkmoor stays first however much its price rises"


def test_a_tie_that_the_day_decides_gives_way_at_any_rise() -> None:
    doors = {"larkmoor": door("larkmoor"), "pellbrook": door("pellbrook")}
    one, two = (bought(offer(name, price="50.00"), doors[name]) for name in doors)
    assert points([one, two], doors)[1, "freight"].words == "at any rise of its freight Pellbrook comes before Larkmoor"


def test_a_single_offer_has_no_turning_point() -> None:
    assert not points([priced()], {"larkmoor": door()})


def test_pick_up_is_not_a_freight_anybody_raises() -> None:
    """The drive is the shop's own cost."""
    drive = Freight(rule="pick-up", round_trip_miles=Decimal(10), round_trip_hours=Decimal(1))
    doors = {"larkmoor": door("larkmoor", freight=drive), "pellbrook": door("pellbrook")}
    some = [bought(offer(name, price="50.00"), doors[name]) for name in doors]
    assert {key for key in points(some, doors)} >= {(1, "price"), (2, "price")}
    place = next(
        at for at, one in enumerate(rank(some, NOTHING, ASKED).ranked, 1) if one.priced.offer.supplier == "larkmoor"
    )
    assert (place, "freight") not in points(some, doors)


ENTRY = EntryFee(name="Entry", percent=Decimal(5), least=Decimal("0.10"), most=Decimal("0.15"))
TAX = TaxPaid(name="Tax", percent=Decimal(19), on=("goods", "freight", "duty"), uplift_percent=Decimal(10))
OFF = (
    (),
    (OrderDiscount(from_value=Decimal(2), percent=Decimal(20)),),
    (OrderDiscount(from_value=Decimal(1), percent=Decimal("62.5")),),
    (
        OrderDiscount(from_value=Decimal(1), percent=Decimal(2)),
        OrderDiscount(from_value=Decimal(3), percent=Decimal(9)),
    ),
)
NEAR = 20
CENTS = st.integers(0, 400).map(lambda cents: Decimal(cents) / 100)


@st.composite
def doors_of(draw: st.DrawFn, name: str) -> Door:
    """Terms with all that bends a cost: thresholds, fees, duty on freight too, discounts, tax, another currency."""
    free = draw(st.one_of(st.none(), CENTS))
    fields: dict[str, Any] = {
        "freight": flat(str(draw(CENTS)), None if free is None else str(free)),
        "duty_percent": draw(st.sampled_from((None, Decimal("2.5"), Decimal(10)))),
        "duty_on": draw(st.sampled_from(("goods", "goods and freight"))),
        "payment_percent": draw(st.sampled_from((Decimal(0), Decimal("1.75")))),
        "order_discounts": draw(st.sampled_from(OFF)),
        "discount_percent": draw(st.sampled_from((Decimal(0), Decimal("12.5")))),
        "entry_fees": draw(st.sampled_from(((), (ENTRY,)))),
        "tax": draw(st.sampled_from((None, TAX))),
    }
    if draw(st.booleans()):
        fields |= {"minimum_order": draw(CENTS), "small_order_fee": draw(st.sampled_from((None, Decimal("0.70"))))}
    rate = draw(st.sampled_from(("1", "1.085", "0.31", "0.0427")))
    return door(name, rate, currency="EUR" if rate != "1" else "USD", **fields)


@settings(max_examples=150, deadline=None)
@given(st.data())
def test_every_point_is_the_first_at_which_the_place_changes(data: st.DataObject) -> None:
    """The smaller movements, the first and the last of them, are tried too: the place has not changed hands at any."""
    doors = {name: data.draw(doors_of(name), name) for name in ("larkmoor", "pellbrook")}
    needed = data.draw(st.integers(1, 3))
    wishes = RankWishes(value_per_day=data.draw(st.sampled_from((None, Decimal("0.25"), Decimal("0.333")))))
    some = [_drawn(data, doors[name], needed) for name in doors]
    assume(not any(one.landed.refusal for one in some))
    ranking = rank(some, wishes, ASKED)
    for point in turning_points_of(ranking, wishes, ASKED, doors.__getitem__):
        moved = ranking.ranked[point.place - 1].priced
        rival = ranking.ranked[2 - point.place].priced
        again = _moved(point, moved, doors[moved.offer.supplier], needed)

        def leads(by: int, again: Again = again, rival: Priced = rival) -> bool:
            """Whether the moved offer is first; one whose order is refused then is not."""
            one = again(by)
            return not one.landed.refusal and rank([one, rival], wishes, ASKED).ranked[0].priced is one

        kept = 400 if point.by is None else point.by.minor() - (point.place == 2)
        for by in {*range(min(kept, NEAR) + 1), *range(max(kept - NEAR, 0), kept + 1)}:
            assert leads(by) == (point.place == 1), (point, by)
        assert point.by is None or leads(kept + 1) == (point.place == 2), point


def _drawn(data: st.DataObject, at: Door, needed: int) -> Priced:
    """An offer of some price, each or per 100, bought through that door."""
    basis = data.draw(st.sampled_from((1, 1, 100)))
    price = data.draw(CENTS) * basis
    of = offer(at.terms.supplier, price=str(price), price_basis=basis, currency=at.terms.currency)
    return bought(of, at, needed, data.draw(st.integers(1, 4)))


def _moved(point: TurningPoint, one: Priced, at: Door, needed: int) -> Again:
    """The offer with the figure moved by so many minor units of its own, never below nothing, landed anew."""
    sign = 1 if point.place == 1 else -1

    def again(by: int) -> Priced:
        more = Decimal(sign * by) / 100
        if point.figure == "price":
            return changed(one, landed=landed_order([item(dearer(one.offer, more), needed)], at))
        if point.figure == "freight":
            own = at.terms.freight.charge if at.terms.freight else None
            assert own is not None
            terms = changed(at.terms, freight=changed(at.terms.freight, charge=max(own + more, Decimal(0))))
            return changed(one, landed=landed_order([item(one.offer, needed)], changed(at, terms=terms)))
        total = changed(one.landed.total, amount=max(one.landed.total.amount + more, Decimal(0)))
        return changed(one, landed=changed(one.landed, total=total))

    return again


def test_bands_and_sums_by_parcel_move_as_one_sum() -> None:
    """8.00 by value and 4 x 2.00 by parcel are both 8.00; the rival costs 62.00."""
    bands = (
        FreightBand(from_value=Decimal(0), charge=Decimal(9)),
        FreightBand(from_value=Decimal(40), charge=Decimal(8)),
    )
    parcels = Freight(rule="per parcel", charge=Decimal(2), parcel_limit=Decimal(1))
    for freight in (Freight(rule="by order value", bands=bands), parcels):
        doors = {"larkmoor": door("larkmoor", freight=freight), "pellbrook": door("pellbrook")}
        one = bought(offer("larkmoor", price="12.50", weight_kg=Decimal(1)), doors["larkmoor"], 4)
        two = bought(offer("pellbrook", price="13.00"), doors["pellbrook"], 4)
        assert str(points([one, two], doors)[1, "freight"].by) == "4.00 USD"


def test_a_converted_sum_by_parcel_is_not_guessed_back() -> None:
    parcels = Freight(rule="per parcel", charge=Decimal(2), parcel_limit=Decimal(1))
    doors = {"larkmoor": door("larkmoor", "1.085", freight=parcels, currency="EUR"), "pellbrook": door("pellbrook")}
    one = bought(offer("larkmoor", price="12.50", currency="EUR", weight_kg=Decimal(1)), doors["larkmoor"])
    two = bought(offer("pellbrook", price="13.00"), doors["pellbrook"])
    assert (1, "freight") not in points([one, two], doors)


@pytest.mark.parametrize(("basis", "words"), [(1, "each"), (100, "per 100")])
def test_a_price_moves_as_it_is_printed(basis: int, words: str) -> None:
    """Prices per 100 move per 100."""
    doors = {"larkmoor": door("larkmoor"), "pellbrook": door("pellbrook")}
    one = bought(offer("larkmoor", price="50.00", price_basis=basis), doors["larkmoor"], 50)
    two = bought(offer("pellbrook", price="52.00", price_basis=basis), doors["pellbrook"], 50)
    point = points([one, two], doors)[1, "price"]
    assert point.per == basis and point.words.endswith(f"USD {words}")
