"""Freight by every rule, and what is not known of an order: never in a line, with a range where one is given."""

from decimal import Decimal
from typing import Any

import pytest

from sourcing.basics.freight import Freight, Oversize, WeightBand
from sourcing.basics.landed_cost import LandedOrder
from sourcing.basics.terms import DutyRate, EntryFee, OrderDiscount, Split, TaxPaid
from sourcing.basics.value import changed
from sourcing.landed_cost.duty import duty_percents
from sourcing.landed_cost.order import landed_order
from tests.builders import door, flat, item, named, offer, terms, usd


def only_missing(order: LandedOrder) -> tuple[str, str, str]:
    """The one thing missing: what, least, most."""
    (one,) = order.missing
    return one.what, str(one.least), str(one.most)


def test_freight_by_weight_is_taken_of_the_whole_order() -> None:
    """Two pieces of 1.2 kg and one of 2.2 kg: 4.6 kg, in the band up to 5 kg."""
    bands = tuple(WeightBand(to_weight=Decimal(to), charge=Decimal(each)) for to, each in ((2, 8), (5, 14), (20, 31)))
    at = door(freight=Freight(rule="by weight", weight_bands=bands))
    items = [item(offer(weight_kg=Decimal("1.2")), 2), item(offer(weight_kg=Decimal("2.2")))]
    order = landed_order(items, at)
    assert named(order.lines)["Freight"] == "14.00" and order.freight == usd("14.00")
    heavy = landed_order([item(offer(weight_kg=Decimal(5)), 5)], at)
    assert heavy.open_questions == ("freight of Larkmoor is not known: its rule says nothing for 25.000 kg",)


def test_a_weight_not_stated_is_a_question_with_a_range() -> None:
    """A piece weighs 0.5 to 4 kg: freight 8.00 or 14.00; with free freight it is asked no more."""
    bands = tuple(WeightBand(to_weight=Decimal(to), charge=Decimal(each)) for to, each in ((2, 8), (5, 14)))
    rule = Freight(rule="by weight", weight_bands=bands, piece_weight=(Decimal("0.5"), Decimal(4)))
    order = landed_order([item(offer())], door(freight=rule))
    what = "freight of Larkmoor is not known: weight of X-1 is not stated"
    assert only_missing(order) == (what, "8.00 USD", "14.00 USD")
    assert (order.total, order.least, order.most) == (usd("10.00"), usd("18.00"), usd("24.00"))
    assert not landed_order([item(offer())], door(freight=changed(rule, free_from=Decimal(10)))).missing


def test_freight_said_only_when_asked() -> None:
    """Between 12.00 and 30.00; a tax of 10 % on goods and freight grows with it: 13.20 to 33.00."""
    asked = Freight(rule="asked", between=(Decimal(12), Decimal(30)))
    taxed = door(freight=asked, tax=TaxPaid(name="Tax", percent=Decimal(10)))
    order = landed_order([item(offer())], taxed)
    what = "freight of Larkmoor is said only when asked: 12.00 USD to 30.00 USD"
    assert only_missing(order) == (what, "13.20 USD", "33.00 USD")
    assert order.total == usd("11.00") and "Freight" not in named(order.lines)
    unknown = landed_order([item(offer())], door(freight=Freight(rule="asked")))
    assert (unknown.least, unknown.most) == (None, None)


def oversize(**fields: Any) -> Freight:
    """Flat 10.00, free from 100.00, with an oversize charge."""
    return changed(flat("10.00", "100.00"), oversize=Oversize(charge=Decimal(25), **fields))


def test_oversize_by_the_piece_or_once() -> None:
    """Two long pieces: 50.00 each on its own, 25.00 for the order; free freight does not free them."""
    long = item(offer(price="60.00", length_cm=Decimal(130)), 2)
    each = landed_order([long], door(freight=oversize(longer_than_cm=Decimal(120))))
    assert (named(each.lines)["Freight"], named(each.lines)["Oversize"], each.freight) == ("0.00", "50.00", usd("50"))
    once = landed_order([long, long], door(freight=oversize(longer_than_cm=Decimal(120), per="order")))
    assert named(once.lines)["Oversize"] == "25.00"


def test_oversize_goods_may_not_count_towards_free_freight() -> None:
    """120.00 of goods, of which 70.00 are oversize and do not count: 50.00 is under 100.00."""
    items = [item(offer(price="70.00", oversize=True)), item(offer(price="50.00", oversize=False))]
    order = landed_order(items, door(freight=oversize(counts=False)))
    assert named(order.lines)["Freight"] == "10.00"
    assert named(landed_order(items, door(freight=oversize())).lines)["Freight"] == "0.00"


def test_size_not_stated_is_a_question() -> None:
    """0 or 25.00 a piece; no range where it decides free freight as well."""
    order = landed_order([item(offer(), 3)], door(freight=oversize()))
    what = "whether X-1 counts as oversize: the sheet does not state it"
    assert only_missing(order) == (what, "0.00 USD", "75.00 USD")
    assert landed_order([item(offer())], door(freight=oversize(counts=False))).most is None
    two = landed_order([item(offer(number="A")), item(offer(number="B"))], door(freight=oversize(per="order")))
    assert only_missing(two)[0].startswith("whether A, B counts") and two.most == usd("55.00")


def test_later_deliveries_cost_where_each_part_is_sent_when_ready() -> None:
    """Three deliveries: two later ones at 6.00."""
    ready = door(split=Split(sends="as ready", later_charge=Decimal(6)))
    assert named(landed_order([item(offer())], ready, 3).lines)["Freight of later deliveries"] == "12.00"
    assert "Freight of later deliveries" not in named(landed_order([item(offer())], ready).lines)
    together = door(split=Split(sends="together", later_charge=Decimal(6)))
    assert landed_order([item(offer())], together, 3).total == usd("20.00")


def test_pick_up_by_the_kilometre() -> None:
    """74 km at 0.45, or at 0.725 a mile of 1.609344 km: 33.34 (33.336...)."""
    drive = Freight(rule="pick-up", round_trip_km=Decimal(74))
    own = changed(door(freight=drive), rate_per_km=Decimal("0.45"))
    assert named(landed_order([item(offer())], own).lines)["Pick-up, km"] == "33.30"
    order = landed_order([item(offer())], door(freight=drive))
    assert named(order.lines)["Pick-up, km"] == "33.34" and order.freight == usd("33.34")


def test_miles_at_a_rate_per_kilometre() -> None:
    """A shop that states its rate per km alone: 46 miles are 74.029824 km, at 0.45 33.31."""
    drive = Freight(rule="pick-up", round_trip_miles=Decimal(46))
    own = changed(door(freight=drive), rate_per_km=Decimal("0.45"), mileage_rate=Decimal(0))
    assert named(landed_order([item(offer())], own).lines)["Pick-up, miles"] == "33.31"


@pytest.mark.parametrize(
    ("trip", "rates", "missing"),
    [
        ({"round_trip_km": 40}, {"mileage_rate": 0}, "rate per mile or km"),
        ({"round_trip_miles": 40}, {"mileage_rate": 0}, "rate per mile or km"),
        ({"round_trip_km": 40, "round_trip_hours": 1}, {"driver_cost": 0}, "cost per hour"),
        (
            {"round_trip_km": 40, "round_trip_hours": 1},
            {"mileage_rate": 0, "driver_cost": 0},
            "rate per mile or km and no cost per hour",
        ),
    ],
)
def test_a_drive_at_rates_the_shop_does_not_state_is_a_question(
    trip: dict[str, int], rates: dict[str, int], missing: str
) -> None:
    """Never 0.00: the order can't be ranked until the shop says what its driving costs."""
    drive = Freight(rule="pick-up", **{name: Decimal(number) for name, number in trip.items()})  # type: ignore[arg-type]
    at = changed(door(freight=drive), **{name: Decimal(number) for name, number in rates.items()})
    order = landed_order([item(offer())], at)
    assert order.open_questions == (f"pick-up from Larkmoor: the shop states no {missing}",)
    assert not any(line.kind == "pick-up" for line in order.lines)


def test_a_drive_that_costs_nothing_can_be_said() -> None:
    """A kilometre at 0, hours of 0 or none: counted as said, and time left out is told."""
    drive = Freight(rule="pick-up", round_trip_miles=Decimal(40))
    free = changed(door(freight=drive), mileage_rate=Decimal(0), rate_per_km=Decimal(0), driver_cost=Decimal(0))
    (line,) = [one for one in landed_order([item(offer())], free).lines if one.kind == "pick-up"]
    assert line.amount == usd("0.00") and line.rule.endswith("; time not counted, the terms state none")
    timed = changed(free, terms=changed(free.terms, freight=changed(drive, round_trip_hours=Decimal(0))))
    assert named(landed_order([item(offer())], timed).lines)["Pick-up, time"] == "0.00"


def test_the_shop_s_own_drive_is_neither_dutiable_nor_paid_for_by_card() -> None:
    """Duty on goods and freight, a fee for paying: both on the goods alone."""
    drive = Freight(rule="pick-up", round_trip_miles=Decimal(100))
    at = door(freight=drive, duty_percent=Decimal(10), duty_on="goods and freight", payment_percent=Decimal(3))
    found = named(landed_order([item(offer(price="100.00"))], at).lines)
    assert "Duty on freight" not in found and found["Payment fee"] == "3.00"


RATES = (
    DutyRate(percent=Decimal(4), tariff="4010"),
    DutyRate(percent=Decimal(9), tariff="4010.36", origin="CN"),
    DutyRate(percent=Decimal(7), origin="CN"),
    DutyRate(percent=Decimal(0), origin="CA"),
)


@pytest.mark.parametrize(
    ("origin", "tariff", "percents"),
    [
        ("CN", "4010.36.00", [9]),
        ("CN", "4010.39", [4]),  # the longer code goes before the origin
        ("CN", "8436.80", [7]),
        ("CA", "8436.80", [0]),
        ("CA", "4010.36", [4]),
        ("DE", "8436.80", [3]),  # the general rate
        ("", "8436.80", [0, 3, 7]),
        ("", "4010.36", [4, 9]),
        ("CN", "4010", [4, 9]),  # a heading only: the code below it may be any
        ("DE", "4010", [4]),
        ("CN", "", [4, 7, 9]),
    ],
)
def test_duty_by_origin_and_tariff(origin: str, tariff: str, percents: list[int]) -> None:
    """The entry that says most wins; what is not stated leaves every rate that could hold."""
    held = terms(duty_percent=Decimal(3), duty_rates=RATES)
    assert list(duty_percents(origin, tariff, held)) == percents


@pytest.mark.parametrize(
    ("general", "rates", "of", "freight", "discount"),
    [
        (3, (), "DE", "1.50", "-3.00"),
        (None, (DutyRate(percent=Decimal(10)),), "DE", "5.00", "-10.00"),
        (5, (DutyRate(percent=Decimal(5), origin="CN"),), "DE", "2.50", "-5.00"),
        (25, (DutyRate(percent=Decimal(0), origin="DE"),), "DE", "12.50", "0.00"),
        (None, (DutyRate(percent=Decimal(7), origin="CN"),), "CN", "3.50", "0.00"),
        (3, (DutyRate(percent=Decimal(7), origin="CN"),), "CN", "3.50", "-3.00"),
        (None, (DutyRate(percent=Decimal(7), origin="CN"), DutyRate(percent=Decimal(2))), "CN", "3.50", "-2.00"),
    ],
)
def test_duty_on_freight_and_discount_is_never_told_too_low(
    general: int | None, rates: tuple[DutyRate, ...], of: str, freight: str, discount: str
) -> None:
    """1,000.00 of goods, 10 % off the order, freight 50.00: at one rate exactly; where goods have different ones
    freight at the highest and the discount at the lowest, and the rule says so."""
    at = door(
        duty_percent=None if general is None else Decimal(general),
        duty_rates=rates,
        duty_on="goods and freight",
        order_discounts=(OrderDiscount(from_value=Decimal(100), percent=Decimal(10)),),
        freight=flat("50.00"),
    )
    order = landed_order([item(offer(price="1000.00", origin=of))], at)
    found = named(order.lines)
    assert (found["Duty on freight"], found["Duty on the order discount"]) == (freight, discount)
    (rate,) = duty_percents(of, "", at.terms)
    duty = sum(Decimal(found[name]) for name in found if name.startswith("Duty"))
    assert duty >= rate * (900 + 50) / 100
    said = [line.rule for line in order.lines if "est rate of Larkmoor's terms, which go from" in line.rule]
    assert len(said) == (2 if Decimal(freight) / 50 != Decimal(discount) / -100 else 0)


def test_duty_not_known_is_missing_with_its_range() -> None:
    """100.00 of goods at 0, 3 or 7 %; the other item's 3.00 stands in its line."""
    at = door(duty_percent=Decimal(3), duty_rates=RATES, freight=flat("0"))
    known = item(offer(number="K", price="100.00", origin="DE", tariff_code="8436.80"))
    open_one = item(offer(number="Q", price="100.00", tariff_code="8436.80"))
    order = landed_order([known, open_one], at)
    assert only_missing(order) == ("duty on Q: the sheet does not state the origin", "0.00 USD", "7.00 USD")
    assert [line.rule for line in order.lines if line.name == "Duty"] == ["3 % of K, rounded line by line"]
    alone = landed_order([open_one], at)
    assert "Duty" not in named(alone.lines) and (alone.least, alone.most) == (usd("100.00"), usd("107.00"))


def test_the_range_is_what_the_order_would_cost_if_all_were_known() -> None:
    """Freight asked at 5.00 or 40.00 and two open duties: with a fee held between limits and a tax on everything, least
    and most are the totals of the same order with these figures given."""
    clearing = EntryFee(name="Clearing", percent=Decimal(50), of="duty", least=Decimal(6), most=Decimal("12.34"))
    tax = TaxPaid(name="Tax", percent=Decimal("7.7"), on=("goods", "freight", "duty", "fees"))
    at = door(
        duty_percent=Decimal(3),
        duty_rates=RATES,
        duty_on="goods and freight",
        entry_fees=(clearing,),
        tax=tax,
        freight=Freight(rule="asked", between=(Decimal(5), Decimal(40))),
    )

    def order(origin: str, freight: Freight | None) -> LandedOrder:
        ordered = [
            item(offer(number=number, price="150.00", origin=origin, tariff_code="8436.80")) for number in ("A", "B")
        ]
        held = at if freight is None else changed(at, terms=changed(at.terms, freight=freight))
        return landed_order(ordered, held)

    unknown = order("", None)
    assert len(unknown.missing) == 3
    assert (unknown.least, unknown.most) == (order("CA", flat("5")).total, order("CN", flat("40")).total)
