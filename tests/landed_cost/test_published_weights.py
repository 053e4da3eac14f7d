"""Weight by volume as forwarders publish it: seven worked examples, sides and divisors retyped from their pages."""

from decimal import ROUND_HALF_UP, Decimal
from typing import Literal

import pytest

from sourcing.basics.freight import Dimensional, Freight
from sourcing.landed_cost.weights import CM_PER_INCH, GRAMS, freight_by_weight, weigh
from tests.builders import item, offer

D = Decimal
CENT = D("0.01")

Example = tuple[str, tuple[str, str, str], str, Literal["in3/lb", "cm3/kg"], str, str, str]

EXAMPLES: list[Example] = [
    # source, sides, divisor, its unit, actual weight (0.01 where the page gives none), exact volume weight, charged
    ("a forwarder's weight page, inches", ("30", "20", "20"), "139", "in3/lb", "0.01", "86.33", "87"),
    ("a forwarder's weight page, volume more", ("140", "100", "90"), "6000", "cm3/kg", "150", "210.00", "210"),
    ("a forwarder's weight page, weight more", ("140", "100", "90"), "6000", "cm3/kg", "260", "210.00", "260"),
    ("a mover's tips page, older divisor", ("30", "24", "22"), "166", "in3/lb", "0.01", "95.42", "96"),
    ("a shipping page, volume more", ("18", "18", "18"), "194", "in3/lb", "21", "30.06", "31"),
    ("a shipping page, weight more", ("18", "18", "18"), "194", "in3/lb", "40", "30.06", "40"),
    ("a shipping page, 167 kg per cubic metre", ("46", "46", "46"), "5988", "cm3/kg", "12", "16.26", "17"),
]


@pytest.mark.parametrize("example", EXAMPLES, ids=[example[0] for example in EXAMPLES])
def test_published_volume_weights(example: Example) -> None:
    """Up to the next whole pound or kilogramme, as every one of the pages does; one money unit for each."""
    source, sides, divisor, unit, actual, exact, charged = example
    mass: Literal["lb", "kg"] = "lb" if unit == "in3/lb" else "kg"
    side = CM_PER_INCH if mass == "lb" else D(1)
    length, width, height = (D(one) * side for one in sides)
    piece = offer(
        weight_kg=D(actual) * GRAMS[mass] / 1000, length_cm=length, width_cm=width, height_cm=height, description=source
    )
    freight = Freight(
        rule="per weight",
        per_weight=D(1),
        weight_unit=mass,
        weight_step=D(1),
        dimensional=Dimensional(divisor=D(divisor), unit=unit),
    )
    weighed = weigh([item(piece)], freight)
    assert (weighed.volume_grams / GRAMS[mass]).quantize(CENT, ROUND_HALF_UP) == D(exact)
    found = freight_by_weight(freight, weighed.charged)
    assert found is not None and found[0] == D(charged)


def test_sides_rounded_to_whole_inches_before_multiplying() -> None:
    """The first example as its page begins it: 30.4 x 19.6 x 19.5 in are taken as 30 x 20 x 20, so 87 lb and not 84."""
    charged = []
    ways: tuple[Literal["rounded", "as they are", "rounded up"], ...] = ("rounded", "as they are", "rounded up")
    for sides in ways:
        rule = Dimensional(divisor=D(139), unit="in3/lb", sides=sides)
        freight = Freight(rule="per weight", per_weight=D(1), weight_unit="lb", weight_step=D(1), dimensional=rule)
        length, width, height = (D(one) * CM_PER_INCH for one in ("30.4", "19.6", "19.5"))
        piece = offer(weight_kg=D("0.1"), length_cm=length, width_cm=width, height_cm=height)
        found = freight_by_weight(freight, weigh([item(piece)], freight).charged)
        assert found is not None
        charged.append(int(found[0]))
    assert charged == [87, 84, 90]  # 11,618.88 and 12,400 cubic inches: computed


@pytest.mark.parametrize(
    ("divisor", "unit", "metric"),
    [
        ("139", "in3/lb", "5021.7"),
        ("166", "in3/lb", "5997.1"),
        ("194", "in3/lb", "7008.7"),
        ("366", "in3/kg", "5997.7"),
    ],
)
def test_divisors_in_inches_are_the_metric_ones_published_beside_them(
    divisor: str, unit: Literal["in3/lb", "in3/kg"], metric: str
) -> None:
    """A piece of one litre weighs by the inch divisor what it weighs by its metric equivalent, to four figures.

    Source: divisors of the forwarders' pages above, equivalents re-computed from the units (rounded to one decimal).
    """
    grams = []
    for rule in (Dimensional(divisor=D(divisor), unit=unit), Dimensional(divisor=D(metric), unit="cm3/kg")):
        piece = offer(weight_kg=D("0.001"), length_cm=D(10), width_cm=D(10), height_cm=D(10))
        grams.append(weigh([item(piece)], Freight(rule="by weight", dimensional=rule)).volume_grams)
    assert abs(grams[0] - grams[1]) < D("0.002")
