"""The weight charged: exact units, rounding up once, volume as weight, parcels, and what is not stated."""

from decimal import Decimal
from typing import Any

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.freight import Dimensional, Freight, Oversize, WeightBand
from sourcing.basics.value import changed
from sourcing.landed_cost.order import landed_order
from sourcing.landed_cost.parcels import Load, Room, packed
from sourcing.landed_cost.weights import CM_PER_INCH, GRAMS, freight_by_weight, freight_of_items, is_oversize, weigh
from tests.builders import door, item, offer, usd

D = Decimal


def bands(*pairs: tuple[str, str]) -> tuple[WeightBand, ...]:
    """Weight bands from (up to, charge)."""
    return tuple(WeightBand(to_weight=D(to), charge=D(charge)) for to, charge in pairs)


def sized(length: str, width: str, height: str, weight: str = "1") -> dict[str, Any]:
    """Sides in cm and weight in kg of a piece."""
    return dict(length_cm=D(length), width_cm=D(width), height_cm=D(height), weight_kg=D(weight))


def charge(freight: Freight, grams: str) -> str | None:
    """The charge alone, as text."""
    found = freight_by_weight(freight, D(grams))
    return None if found is None else str(found[0])


def test_units_are_the_exact_ones() -> None:
    """Against pint's registry: pound and inch by the agreement of 1959."""
    units: Any = pint.UnitRegistry(non_int_type=Decimal)
    assert units.Quantity(D(1), "pound").to("gram").magnitude == GRAMS["lb"]
    assert units.Quantity(D(1), "inch").to("centimeter").magnitude == CM_PER_INCH


def test_stated_weights_add_up_by_pieces_ordered() -> None:
    """Ordered and not needed pieces travel: ten of 0.04 kg and one of 1.2 kg."""
    belt, pin = offer(weight_kg=D("1.2")), offer(number="X-2", weight_kg=D("0.04"))
    found = weigh([item(belt), item(pin, needed=2, ordered=10)], Freight(rule="by weight"))
    assert (found.grams, found.least, found.most, found.unknown) == (D(1600), D(1600), D(1600), ())


@pytest.mark.parametrize("weight", [None, "0", "0.000", "-0.5"])
def test_a_weight_not_stated_is_asked_and_never_nothing(weight: str | None) -> None:
    """0.00 on a sheet is a small weight rounded away, not none at all."""
    light = offer(number="X-2", weight_kg=None if weight is None else D(weight))
    found = weigh([item(offer(weight_kg=D(1))), item(light)], Freight(rule="by weight"))
    assert (found.unknown, found.least, found.most) == (("X-2",), None, None)
    assert found.questions == ("weight of X-2 is not stated",)


def test_a_range_for_what_is_not_stated() -> None:
    """1 kg stated and three pieces between half a pound and two pounds."""
    held = Freight(rule="by weight", weight_unit="lb", piece_weight=(D("0.5"), D(2)))
    found = weigh([item(offer(weight_kg=D(1))), item(offer(number="X-2"), needed=3)], held)
    assert (found.least, found.most) == (1000 + D("1.5") * GRAMS["lb"], 1000 + 6 * GRAMS["lb"])
    assert found.unknown == ("X-2",)


def test_an_offer_is_asked_about_though_another_row_of_its_number_states_a_weight() -> None:
    """Two rows under one number: one stated weight does not speak for the other."""
    both = [item(offer()), item(offer(weight_kg=D(1)))]
    assert weigh(both, Freight(rule="by weight")).unknown == ("X-1",)


def test_volume_counts_where_it_is_more() -> None:
    """60 x 40 x 30 cm at 6000 is 12 kg against 5; two of them 24."""
    held = Freight(rule="by weight", dimensional=Dimensional(divisor=D(6000), unit="cm3/kg"))
    found = weigh([item(offer(**sized("60", "40", "30", "5")), needed=2)], held)
    assert (found.grams, found.volume_grams, found.charged, found.least) == (D(10_000), D(24_000), D(24_000), D(24_000))


def test_thirds_of_a_pound_do_not_become_a_pound_more() -> None:
    """Three pieces of 100 cubic inches at 150 are two pounds exactly, though each is two thirds."""
    held = Freight(
        rule="by weight", weight_unit="lb", weight_step=D(1), dimensional=Dimensional(divisor=D(150), unit="in3/lb")
    )
    third = offer(**sized("25.4", "25.4", "2.54", "0.01"))
    by_pound = Freight(rule="per weight", weight_unit="lb", weight_step=D(1), per_weight=D(1))
    assert charge(by_pound, str(weigh([item(third, needed=3)], held).charged)) == "2"


def test_a_size_not_stated_is_asked_where_volume_is_charged() -> None:
    """The weight is known, the volume is not: at least the weight, at most the upper end of the range."""
    rule = Dimensional(divisor=D(5000), unit="cm3/kg")
    flat_one = offer(weight_kg=D(2), length_cm=D(90))
    found = weigh([item(flat_one)], Freight(rule="by weight", dimensional=rule))
    assert found.unknown == ("X-1",) and found.least is None and "size of X-1" in found.questions[0]
    ranged = weigh([item(flat_one)], Freight(rule="by weight", dimensional=rule, piece_weight=(D(1), D(4))))
    assert (ranged.least, ranged.most) == (D(2000), D(4000))


@pytest.mark.parametrize(
    ("grams", "charged"),
    [("1", "8"), ("1000", "8"), ("1000.001", "8"), ("1500", "8"), ("1500.1", "14"), ("10000", "14"), ("10001", None)],
)
def test_bands_hold_up_to_and_with_their_weight(grams: str, charged: str | None) -> None:
    """Rounded up to half a kilogramme first; heavier than the last band is not known."""
    held = Freight(rule="by weight", weight_bands=bands(("1.5", "8"), ("10", "14")), weight_step=D("0.5"))
    assert charge(held, grams) == charged


@pytest.mark.parametrize(("grams", "charged"), [("500", "6"), ("4000", "6.00"), ("10000", "15.0"), ("90000", "40")])
def test_per_kilogramme_between_least_and_most(grams: str, charged: str) -> None:
    """1.50 a kilogramme, at least 6 and at most 40."""
    held = Freight(rule="per weight", per_weight=D("1.50"), least=D(6), most=D(40))
    found = freight_by_weight(held, D(grams))
    assert found is not None and found[0] == D(charged)


def test_per_kilogramme_says_how() -> None:
    """Weight, rate and the limit that held."""
    held = Freight(rule="per weight", per_weight=D("1.50"), least=D(6))
    assert freight_by_weight(held, D(1250)) == (D(6), "1.25 kg at 1.50 per kg, at least 6")


@pytest.mark.parametrize(
    ("grams", "charged"), [("0.5", "9"), ("30000", "9"), ("30000.1", "18"), ("60000", "18"), ("75000", "27")]
)
def test_parcels_at_one_charge(grams: str, charged: str) -> None:
    """Full parcels of 30 kg and one for the rest, 9 each."""
    assert charge(Freight(rule="per parcel", charge=D(9), parcel_limit=D(30)), grams) == charged


def test_parcels_by_their_weight() -> None:
    """65 kg: two full ones of 30 kg at 20 and one of 5 kg at 7; a gap in the bands is not known."""
    held = Freight(rule="per parcel", parcel_limit=D(30), weight_bands=bands(("5", "7"), ("30", "20")))
    found = freight_by_weight(held, D(65_000))
    assert found == (D(47), "3 parcels of at most 30 kg for 65 kg, each by its weight")
    short = Freight(rule="per parcel", parcel_limit=D(30), weight_bands=bands(("5", "7")))
    assert (charge(short, "4000"), charge(short, "31000")) == ("7", None)


def parcels(freight: Freight, *pieces: tuple[str, int]) -> tuple[Decimal, str] | None:
    """Freight of pieces of (kg, so many)."""
    items = [item(offer(weight_kg=D(kg)), number, number) for kg, number in pieces]
    return freight_of_items(freight, items, weigh(items, freight).charged)


BY_PARCEL = Freight(rule="per parcel", charge=D(8), parcel_limit=D(10))


@pytest.mark.parametrize(
    ("pieces", "charged"),
    [
        ([("6", 3)], 24),  # 18 kg would go in two parcels if a piece could be divided
        ([("5", 4)], 16),
        ([("3.4", 6)], 24),  # two in a parcel, though 20.4 kg is little more than two parcels
        ([("6", 2), ("4", 2)], 16),
        ([("4", 2), ("6", 2)], 16),  # the heaviest first, however they are ordered
        ([("6", 1), ("3", 2), ("2", 1), ("1", 5)], 16),  # 6+3+1, 3+2+1+1+1+1
        ([("0.001", 10_000)], 8),
        ([("0.003", 10_000)], 32),  # 3,333 in a parcel, one over
    ],
)
def test_no_piece_is_divided_between_parcels(pieces: list[tuple[str, int]], charged: int) -> None:
    """Parcels of 10 kg at 8 each."""
    found = parcels(BY_PARCEL, *pieces)
    assert found is not None and found[0] == charged


def test_the_rule_says_that_whole_pieces_are_packed() -> None:
    """Only where that makes it more than by the weight alone."""
    assert parcels(BY_PARCEL, ("6", 3)) == (
        D(24),
        "3 parcels of at most 10 kg for 18 kg at 8 each; whole pieces, packed heaviest first",
    )
    assert parcels(BY_PARCEL, ("6", 1)) == (D(8), "1 parcel of at most 10 kg for 6 kg at 8 each")


def test_parcels_of_whole_pieces_by_their_weight() -> None:
    """Three of 6 kg: three parcels of up to 6 kg at 5.00, rounded up to whole 2.5 kg; the band to 7.5 holds them."""
    held = Freight(
        rule="per parcel", parcel_limit=D(10), weight_bands=bands(("7.5", "7"), ("10", "9")), weight_step=D("2.5")
    )
    found = parcels(held, ("6", 3))
    assert found is not None and found[0] == 21


def test_a_parcel_is_never_charged_for_more_than_it_may_weigh() -> None:
    """9, 6 and 6 kg alone in parcels of 10 kg: 9 kg in whole 4 kg would be 12, and no parcel may weigh that."""
    held = Freight(rule="per parcel", parcel_limit=D(10), weight_bands=bands(("4", "5"), ("10", "9")), weight_step=D(4))
    found = parcels(held, ("9", 1), ("6", 2))
    assert found is not None and found[0] == 27


def test_parcels_by_volume() -> None:
    """50 x 40 x 20 cm by 5000 is 8 kg: two do not go in a parcel of 15 kg, whatever they weigh."""
    volume = Dimensional(divisor=D(5000), unit="cm3/kg")
    held = changed(BY_PARCEL, parcel_limit=D(15), dimensional=volume)
    items = [item(offer(**sized("50", "40", "20")), 3, 3)]
    found = freight_of_items(held, items, weigh(items, held).charged)
    assert found is not None and found[0] == 24
    exact = changed(held, parcel_limit=D(16))
    found = freight_of_items(exact, items, weigh(items, exact).charged)
    assert found is not None and found[0] == 16


def test_pieces_of_a_weight_not_stated_are_packed_at_both_ends() -> None:
    """Three pieces of 1 to 6 kg in parcels of 10 kg: one parcel at least, three at most."""
    held = door(freight=changed(BY_PARCEL, piece_weight=(D(1), D(6))))
    (missing,) = landed_order([item(offer(), 3, 3)], held).missing
    assert (missing.least, missing.most) == (usd("8.00"), usd("24.00"))


@given(
    st.lists(st.tuples(st.integers(1, 1000), st.integers(0, 1000), st.integers(1, 12)), min_size=1, max_size=6),
)
def test_parcels_hold_every_piece_and_are_those_of_packing_one_by_one(kinds: list[tuple[int, int, int]]) -> None:
    """First fit heaviest first as textbooks define it (from memory), piece by piece; never fewer than by the sum."""
    found = packed([Load(D(weight), D(volume), number) for weight, volume, number in kinds], Room(D(1000), D(1000)))
    slow: list[tuple[int, int]] = []
    for weight, volume, number in sorted(kinds, key=lambda one: max(one[:2]), reverse=True):
        for _ in range(number):
            at = next((n for n, one in enumerate(slow) if one[0] + weight <= 1000 and one[1] + volume <= 1000), None)
            if at is None:
                slow.append((weight, volume))
            else:
                slow[at] = slow[at][0] + weight, slow[at][1] + volume
    assert [(int(one.weight), int(one.volume)) for one in found for _ in range(one.number)] == slow
    assert len(slow) * 1000 >= max(sum(one[side] * one[2] for one in kinds) for side in (0, 1))


def test_a_piece_heavier_than_a_parcel_is_not_known() -> None:
    """An engine of 41 kg does not go in two parcels; nor does one that may weigh that."""
    held = Freight(rule="per parcel", charge=D(9), parcel_limit=D(30), piece_weight=(D(1), D(40)))
    found = weigh([item(offer(weight_kg=D(41)))], held)
    assert found.unknown == ("X-1",) and (found.least, found.most) == (None, None)
    assert "heavier than a parcel may be (30 kg)" in found.questions[0]
    unstated = weigh([item(offer())], held)
    assert (unstated.least, unstated.most) == (D(1000), None)


@pytest.mark.parametrize("rule", ["flat", "included", "asked", "per weight", "per parcel", "by weight"])
def test_a_figure_left_out_is_not_known(rule: str) -> None:
    """No figure, no charge: never nothing."""
    assert freight_by_weight(Freight(rule=rule, charge=D(5) if rule == "flat" else None), D(1000)) is None  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("fields", "expected"),
    [
        ({"oversize": True}, True),
        ({"oversize": True, "length_cm": D(10)}, True),
        ({"oversize": False}, False),
        ({"oversize": False, "length_cm": D(150)}, True),
        ({"length_cm": D(120)}, False),
        ({"length_cm": D("120.1")}, True),
        ({"length_cm": D(50), "width_cm": D(130)}, True),
        ({"width_cm": D(50)}, None),
        ({}, None),
    ],
)
def test_oversize_by_word_or_by_longest_side(fields: dict[str, Any], expected: bool | None) -> None:
    """Longer than 120 cm, whatever the sheet says; where it says nothing, it is asked or taken as not oversize."""
    asks = Oversize(charge=D(30), longer_than_cm=D(120))
    lenient = Oversize(charge=D(30), longer_than_cm=D(120), if_not_stated="not oversize")
    assert is_oversize(offer(**fields), asks) is expected
    assert is_oversize(offer(**fields), lenient) is (expected or False)


def test_without_a_limit_only_the_word_counts() -> None:
    """A length says nothing where the terms name no limit."""
    word = Oversize(charge=D(30))
    assert is_oversize(offer(length_cm=D(400)), word) is None
    assert is_oversize(offer(oversize=False), word) is False


@given(
    st.lists(st.integers(1, 60_000), min_size=1, max_size=5),
    st.integers(0, 50_000),
    st.sampled_from([None, "0.5", "1"]),
    st.sampled_from(["kg", "lb"]),
)
def test_more_weight_never_costs_less(weights: list[int], more: int, step: str | None, unit: Any) -> None:
    """For a sum of stated weights and any rule whose bands rise."""
    table = bands(("1", "5"), ("10", "9"), ("40", "25"), ("200", "70"), ("900", "300"))
    in_steps = D(step) if step else None
    rules = [
        Freight(rule="by weight", weight_bands=table, weight_step=in_steps, weight_unit=unit),
        Freight(rule="per parcel", weight_bands=table, parcel_limit=D(40), weight_step=in_steps, weight_unit=unit),
        Freight(rule="per parcel", charge=D(8), parcel_limit=D(30), weight_step=in_steps, weight_unit=unit),
        Freight(rule="per weight", per_weight=D("0.7"), least=D(4), weight_step=in_steps, weight_unit=unit),
    ]
    items = [item(offer(number=f"X-{at}", weight_kg=D(grams) / 1000)) for at, grams in enumerate(weights)]
    for rule in rules:
        grams = weigh(items, rule).charged
        assert grams == sum(weights)
        one, two = freight_by_weight(rule, grams), freight_by_weight(rule, grams + more)
        assert one is not None and two is not None and one[0] <= two[0]
