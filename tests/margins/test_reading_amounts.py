"""Amounts as papers keep them, read once into whole minor units and then remembered."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.margins import minor as minor_units_of
from sourcing.margins.minor import minor, reader


@given(st.decimals(-100_000, 100_000, places=4), st.integers(0, 4), st.sampled_from((0, 2, 3)))
def test_an_amount_is_read_as_money_rounds_it(amount: Decimal, decimals: int, places: int) -> None:
    """Whatever decimals it was kept with, the first time and when it is remembered; currencies are kept apart."""
    text = str(round(amount, decimals))
    read = reader(places)
    assert [read[text], read[text]] == [minor(Decimal(text), places)] * 2


def test_what_was_forgotten_is_read_again(monkeypatch: pytest.MonkeyPatch) -> None:
    """Only so many amounts are remembered, and every one is still right."""
    monkeypatch.setattr(minor_units_of, "MOST", 3)
    reader.cache_clear()
    read = reader(2)
    asked = [f"2.{cents:02d}" for cents in (*range(10), *range(10))]
    assert [read[text] for text in asked] == [*range(200, 210), *range(200, 210)]
    assert len(read) <= 3
    reader.cache_clear()
