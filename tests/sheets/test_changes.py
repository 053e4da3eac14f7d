"""Two sheets compared: each thing that can happen, exact per cents, and every offer in exactly one place."""

from collections.abc import Sequence
from datetime import date
from decimal import ROUND_HALF_UP, Decimal, localcontext
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.change import Changed, SheetChanges
from sourcing.basics.offer import Offer, SheetRow
from sourcing.basics.value import changed, from_json, to_json
from sourcing.sheets.changes import compare_sheets
from tests.builders import offer

LAST_MONTH, TODAY = date(2026, 1, 5), date(2026, 2, 2)


def one_changed(before: dict[str, Any], now: dict[str, Any]) -> Changed | None:
    """How the one number X-1 changed."""
    found = compare_sheets([offer(**before)], [offer(**now)])
    assert found.adds_up and not found.vanished and not found.appeared and not found.several
    assert found.unchanged == 1 - len(found.changed)
    return found.changed[0] if found.changed else None


def moves(one: Changed | None) -> list[tuple[str, int | None, str]]:
    """Figure, quantity and per cent of each price that changed."""
    return [(price.figure, price.from_quantity, str(price.percent)) for price in one.prices] if one else []


@pytest.mark.parametrize(
    ("before", "now", "kinds"),
    [
        ({"price": "10.00"}, {"price": "10.0000"}, ()),
        ({"stock": 1, "description": "belt"}, {"stock": 0, "description": "Belt A36"}, ()),
        ({"price": "10.00"}, {"price": "10.01"}, ("rose",)),
        ({"price": "10.00"}, {"price": "9.99"}, ("fell",)),
        ({"breaks": [(1, "9"), (10, "8")]}, {"breaks": [(1, "9"), (10, "8.50")]}, ("rose",)),
        ({"breaks": [(1, "9"), (10, "8")]}, {"breaks": [(1, "10"), (10, "7")]}, ("rose and fell",)),
        ({"breaks": [(1, "9"), (10, "8")]}, {"breaks": [(1, "9"), (20, "8")]}, ("rose",)),
        ({"breaks": [(1, "9")]}, {"breaks": [(1, "9"), (20, "8")]}, ("fell",)),
        ({"breaks": [(1, "9")]}, {"breaks": [(1, "9"), (20, "9.0")]}, ()),
        ({"list_price": Decimal(20)}, {"list_price": Decimal(22)}, ("rose",)),
        ({"price": "8", "list_price": Decimal(20)}, {"price": "7", "list_price": Decimal(22)}, ("fell",)),
        ({"price": None, "list_price": Decimal(20)}, {"price": None, "list_price": Decimal(19)}, ("fell",)),
        ({"list_price": None}, {"list_price": Decimal(22)}, ("list price changed",)),
        ({"price": None}, {}, ("price appeared",)),
        ({}, {"price": None}, ("price gone",)),
        ({"price": None, "list_price": Decimal(5)}, {"price": None}, ("price gone",)),
        ({}, {"no_longer_available": True}, ("no longer available",)),
        ({}, {"no_longer_available": True, "superseded_by": "X-2"}, ("no longer available", "superseded")),
        ({}, {"superseded_by": "X-2", "price": "12"}, ("superseded", "rose")),
        ({"superseded_by": "X-2"}, {"superseded_by": "x 2"}, ()),
        ({"superseded_by": "X-2"}, {"superseded_by": "X-3"}, ("superseded",)),
        ({"superseded_by": "X-2"}, {"no_longer_available": True}, ("no longer available", "superseded")),
        ({"superseded_by": "X-2"}, {}, ("came back",)),
        ({"no_longer_available": True}, {}, ("came back",)),
        ({"no_longer_available": True}, {"superseded_by": "X-2"}, ("superseded",)),
        (
            {"no_longer_available": True, "superseded_by": "X-2"},
            {"superseded_by": "X-2"},
            ("came back",),
        ),
        ({"currency": "EUR"}, {"price": "90"}, ("currency changed",)),
        ({"pack": 10}, {"pack": 12}, ("sold differently",)),
        ({"price_basis": 100, "price": "1000"}, {"price": "10"}, ("sold differently",)),
        ({"price_basis": 100, "price": "1000"}, {"price": "11"}, ("rose", "sold differently")),
        ({"sold_by": "foot"}, {"price": "99"}, ("sold differently",)),
        ({"minimum": 5}, {}, ("sold differently",)),
        ({"order_multiple": 5}, {}, ("sold differently",)),
        ({"breaks": [(1, "9")]}, {"breaks": [(5, "9")]}, ("sold differently",)),
        ({}, {"core_charge": Decimal("0.00")}, ("core charge changed",)),
        ({"core_charge": Decimal(5)}, {"core_charge": Decimal(6)}, ("core charge changed",)),
        ({"discount_code": "A"}, {"discount_code": "B"}, ("discount code changed",)),
    ],
)
def test_what_happened_to_a_number(before: dict[str, Any], now: dict[str, Any], kinds: tuple[str, ...]) -> None:
    found = one_changed(before, now)
    assert (found.kinds if found else ()) == kinds


def test_prices_are_compared_at_every_quantity_either_sheet_names() -> None:
    found = one_changed(
        {"breaks": [(1, "10.00"), (10, "9.00")], "list_price": Decimal(20), "core_charge": Decimal(4)},
        {"breaks": [(1, "10.50"), (12, "9.00")], "list_price": Decimal(21), "core_charge": Decimal(5)},
    )
    expected = [("net price", 1, "5.0"), ("net price", 10, "16.7"), ("list price", None, "5.0")]
    assert moves(found) == [*expected, ("core charge", None, "25.0")]
    assert found and found.headline and (found.headline.from_quantity, str(found.headline.percent)) == (10, "16.7")


def test_prices_for_other_numbers_of_pieces_are_compared_by_the_piece_to_the_last_digit() -> None:
    """10.00 for 3 pieces is 3.333... each: 1,000.00 for 300 is the same, a millionth more is not."""
    third = {"price": "10.00", "price_basis": 3}
    same = one_changed(third, {"price": "1000.00", "price_basis": 300})
    assert same and same.kinds == ("sold differently",) and moves(same) == [("net price", 1, "0.0")]
    more = one_changed(third, {"price": "1000.000001", "price_basis": 300})
    assert more and more.kinds == ("rose", "sold differently") and moves(more) == [("net price", 1, "0.0")]


@pytest.mark.parametrize(
    ("before", "now", "percent"),
    [
        ("200.00", "200.10", "0.1"),  # 0.05 %: a tie, away from zero
        ("200.00", "199.90", "-0.1"),
        ("200.00", "200.0999", "0.0"),
        ("3.00", "4.00", "33.3"),
        ("0.01", "0.03", "200.0"),
    ],
)
def test_per_cent_is_rounded_half_up_once(before: str, now: str, percent: str) -> None:
    found = one_changed({"price": before}, {"price": now})
    assert found and found.headline and str(found.headline.percent) == percent


@given(st.integers(1, 10**9), st.integers(1, 10**9), st.sampled_from((1, 3, 7, 100)), st.sampled_from((1, 3, 50)))
def test_per_cent_against_decimals_of_many_digits(before: int, now: int, basis: int, basis_now: int) -> None:
    """A slow twin: Python's decimal with 60 digits and its own rounding half up."""
    old, new = (Decimal(one).scaleb(-4) for one in (before, now))
    one = one_changed(
        {"price": str(old), "price_basis": basis, "pack": 2}, {"price": str(new), "price_basis": basis_now}
    )
    with localcontext() as context:
        context.prec = 60
        exact = (new / basis_now) / (old / basis) * 100 - 100
        expected = exact.quantize(Decimal("0.1"), rounding=ROUND_HALF_UP)
    assert one is not None and one.prices[0].percent == expected
    up = Fraction(new) / basis_now > Fraction(old) / basis
    assert ("rose" in one.kinds) == up


def test_the_superseding_number_is_shown_with_its_price_now() -> None:
    before = [offer(number="X-1"), offer(number="X-3"), offer(number="X-4")]
    gone = [
        offer(number="X-1", superseded_by="x2"),
        offer(number="X-3", superseded_by="CV 9"),
        offer(number="X-4", superseded_by="X-9"),
    ]
    new = [offer(number="X-2", price="11.50"), offer(number="Y-9", maker="Corrivane", maker_number="CV-9", price="8")]
    found = compare_sheets(before, [*gone, *new])
    instead = {one.now.supplier_number: one.instead.price if one.instead else None for one in found.changed}
    assert instead == {"X-1": Decimal("11.50"), "X-3": Decimal(8), "X-4": None}
    twice = compare_sheets(before[:1], [gone[0], new[0], offer(number="X2", price="99")])
    assert twice.changed[0].instead is None


def by_maker(*makers: str, price: str = "10.00") -> list[Offer]:
    """Offers of one number, one for each maker."""
    return [offer(maker=maker, price=price) for maker in makers]


@pytest.mark.parametrize(
    ("before", "now", "places"),
    [
        (by_maker(""), by_maker("Corrivane"), (1, 0, 0, 0)),  # one on either sheet: compared whatever the maker
        (by_maker("Corrivane", "Dunmarrow"), by_maker("DUNMARROW", "Corrivane"), (2, 0, 0, 0)),
        (by_maker("Corrivane"), by_maker("Corrivane", "Dunmarrow"), (1, 0, 1, 0)),
        (by_maker("Corrivane", "Dunmarrow"), by_maker("Dunmarrow"), (1, 1, 0, 0)),
        (by_maker(""), by_maker("Corrivane", "Dunmarrow"), (0, 0, 0, 1)),
        (by_maker("Corrivane", "Corrivane"), by_maker("Corrivane"), (0, 0, 0, 1)),
        (by_maker("Corrivane", "Corrivane"), [], (0, 0, 0, 1)),
        (by_maker("Corrivane", "Corrivane", "Dunmarrow"), by_maker("Dunmarrow", "Corrivane"), (1, 0, 0, 1)),
        ([], by_maker("", ""), (0, 0, 0, 1)),
    ],
)
def test_several_offers_of_one_number_are_told_apart_by_maker_or_not_compared(
    before: list[Offer], now: list[Offer], places: tuple[int, int, int, int]
) -> None:
    """Unchanged, vanished, appeared, several."""
    found = compare_sheets(before, now)
    assert found.adds_up
    assert (found.unchanged, len(found.vanished), len(found.appeared), len(found.several)) == places


def test_numbers_are_compared_by_key_and_nothing_more() -> None:
    found = compare_sheets(
        [offer(number="ka-0036"), offer(number="0123")], [offer(number="KA 0036"), offer(number="123")]
    )
    assert found.unchanged == 1
    assert [one.supplier_number for one in (*found.vanished, *found.appeared)] == ["0123", "123"]
    marks = compare_sheets([offer(number="--"), offer(number="..")], [offer(number="--", price="11")])
    assert len(marks.changed) == 1 and [one.supplier_number for one in marks.vanished] == [".."]


def test_the_biggest_rise_stands_first_and_the_median_is_of_what_rose() -> None:
    before = [
        offer(number=number, price=price) for number, price in zip("ABCDE", ("1", "100", "10", "8", "4"), strict=True)
    ]
    now = [
        offer(number=number, price=price) for number, price in zip("ABCDE", ("1.1", "110", "12", "4", "4"), strict=True)
    ]
    found = compare_sheets(before, [*now[:4], offer(number="E", price="4", pack=2)])
    assert [one.now.supplier_number for one in found.changed] == ["C", "B", "A", "D", "E"]
    assert found.median_rise == Decimal("10.0")
    even = compare_sheets(before[:2], [offer(number="A", price="1.01"), offer(number="B", price="102.30")])
    assert even.median_rise == Decimal("1.7")  # half way between 1 and 2.3 is 1.65
    assert compare_sheets(before, before).median_rise is None


def placed(offers: Sequence[Offer], sheet: int, day: date) -> list[Offer]:
    """The offers in the rows of a sheet."""
    return [
        changed(one, source=SheetRow(sheet=sheet, file="p.csv", worksheet="", row=row, sheet_date=day))
        for row, one in enumerate(offers, 2)
    ]


OFFERS = st.lists(
    st.builds(
        offer,
        number=st.sampled_from(("X-1", "x1", "X-2", "X-3", "--")),
        price=st.sampled_from((None, "10.00", "11.00")),
        maker=st.sampled_from(("", "Corrivane", "Dunmarrow")),
        superseded_by=st.sampled_from(("", "X-2")),
        currency=st.sampled_from(("USD", "EUR")),
        pack=st.sampled_from((1, 2)),
        no_longer_available=st.booleans(),
    ),
    max_size=7,
)


def rows_of(found: SheetChanges, at: str) -> list[int]:
    """The rows of one sheet wherever they went, but for the unchanged."""
    alone = found.vanished if at == "before" else found.appeared
    several = [part for one in found.several for part in getattr(one, at)]
    return [part.row for part in (*(getattr(one, at) for one in found.changed), *alone, *several)]


@given(OFFERS, OFFERS)
def test_every_offer_of_both_sheets_is_in_exactly_one_place(before: list[Offer], now: list[Offer]) -> None:
    old, new = placed(before, 1, LAST_MONTH), placed(now, 2, TODAY)
    found = compare_sheets(old, new)
    assert found.adds_up
    for offers, at in ((old, "before"), (new, "now")):
        rows = rows_of(found, at)
        assert len(set(rows)) == len(rows) == len(offers) - found.unchanged
        assert set(rows) <= {one.source.row for one in offers}
    assert sum(one.numbers for one in found.counts) == len(found.changed)
    assert all(one.in_all >= one.numbers for one in found.counts)
    assert from_json(to_json(found), SheetChanges) == found


@given(OFFERS, OFFERS)
def test_the_other_way_round_it_is_the_other_way_round(before: list[Offer], now: list[Offer]) -> None:
    there, back = compare_sheets(before, now), compare_sheets(now, before)
    assert (there.unchanged, len(there.changed), len(there.several)) == (
        back.unchanged,
        len(back.changed),
        len(back.several),
    )
    assert there.vanished == back.appeared and there.appeared == back.vanished
    up, down = ({one.kind: one.in_all for one in found.counts} for found in (there, back))
    assert (up.get("rose"), up.get("fell")) == (down.get("fell"), down.get("rose"))
    assert (up.get("price gone"), up.get("currency changed")) == (
        down.get("price appeared"),
        down.get("currency changed"),
    )
