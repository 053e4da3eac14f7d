"""Terms in which every field says something else than its default, and a freight rule of each kind. All invented."""

from datetime import date, time
from decimal import Decimal

from sourcing.basics.freight import Dimensional, Freight, FreightBand, Oversize, WeightBand
from sourcing.basics.terms import (
    Calendar,
    CashDiscount,
    CoreReturn,
    DutyRate,
    EntryFee,
    OrderDiscount,
    Returns,
    Split,
    TaxPaid,
    Terms,
)

D = Decimal
OVERSIZE = Oversize(charge=D("18.50"), longer_than_cm=D("120"), per="order", if_not_stated="not oversize", counts=False)
VOLUME = Dimensional(divisor=D(5000), unit="cm3/kg", sides="rounded up")
WEIGHTS = (WeightBand(to_weight=D("2.5"), charge=D("6.90")), WeightBand(to_weight=D(30), charge=D("14.00")))
VALUES = (FreightBand(from_value=D(0), charge=D("16.00")), FreightBand(from_value=D("250.50"), charge=D("12")))

FREIGHTS = (
    Freight(rule="flat", charge=D("14.95"), free_from=D("200.00"), oversize=OVERSIZE),
    Freight(rule="by order value", bands=VALUES, free_from=D(1000)),
    Freight(
        rule="by weight",
        weight_bands=WEIGHTS,
        weight_unit="lb",
        weight_step=D("0.5"),
        dimensional=VOLUME,
        piece_weight=(D("0.1"), D(4)),
    ),
    Freight(rule="per weight", per_weight=D("1.20"), least=D("7.00"), most=D(45)),
    Freight(rule="per parcel", charge=D("9.90"), parcel_limit=D("31.5")),
    Freight(rule="per parcel", weight_bands=WEIGHTS, parcel_limit=D(30)),
    Freight(rule="pick-up", round_trip_miles=D(46), round_trip_hours=D("1.25")),
    Freight(rule="pick-up", round_trip_km=D("74.5")),
    Freight(rule="included", oversize=Oversize(charge=D(30))),
    Freight(rule="asked", between=(D(8), D("25.00"))),
)
"""Together they use every field of a freight rule."""

FULL = Terms(
    supplier="kesselried",
    name='Kesselried "Antriebsteile" \\ Süd',
    starts_on=date(2026, 1, 5),
    currency="EUR",
    freight=FREIGHTS[0],
    minimum_order=D("25.00"),
    small_order_fee=D("4.50"),
    handling=D("1.10"),
    discount_percent=D("2.5"),
    duty_percent=D("3.0"),
    entry_fee=D("12.00"),
    cut_off=time(13, 30),
    dispatch_days=1,
    transit_days=(5, 8),
    calendar=Calendar(week=("Mon", "Tue", "Sat"), country="DE", region="BY", closed=(date(2026, 2, 20),)),
    prices_hold_days=90,
    returns="Within 14 days, unused.",
    address=("Am Anger 4", "Süd-Ort"),
    breaks="pieces above",
    order_discounts=(OrderDiscount(from_value=D(100), percent=D(2)), OrderDiscount(from_value=D(500), percent=D(5))),
    cash_discount=CashDiscount(percent=D(2), within_days=10),
    handling_per_line=D("0.30"),
    duty_rates=(DutyRate(percent=D("4.5"), origin="CN", tariff="8431"),),
    duty_on="goods and freight",
    entry_fees=(
        EntryFee(
            name="Entry",
            charge=D(1),
            percent=D("0.3464"),
            of="duty",
            least=D("33.58"),
            most=D("651.50"),
            currency="USD",
        ),
    ),
    payment_percent=D("1.5"),
    tax=TaxPaid(name="Entry tax", percent=D(7), on=("goods", "fees"), uplift_percent=D(10)),
    split=Split(sends="as ready", later_charge=D("6.00")),
    return_terms=Returns(returnable=True, restocking_percent=D(15), freight=D("8.00"), within_days=14),
    core_return=CoreReturn(within_days=60, freight=D("12.00")),
    time_zone="Europe/Berlin",
    order_days=("Mon", "Tue"),
)
