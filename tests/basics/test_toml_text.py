"""Values written in TOML notation read back the same, by the parser of the standard library (tomllib, TOML 1.0)."""

import tomllib
from datetime import date, time
from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.toml_text import stated, toml_text
from tests.builders import terms

PLAIN: st.SearchStrategy[Any] = st.one_of(
    st.booleans(),
    st.integers(-(2**63), 2**63 - 1),
    st.decimals(allow_nan=False, allow_infinity=False, places=4),
    st.dates(),
    st.times(),
    st.text(st.characters(exclude_categories=["Cs"])),
)
NESTED = st.recursive(
    PLAIN,
    lambda inner: st.lists(inner) | st.dictionaries(st.from_regex(r"[a-z_]{1,9}", fullmatch=True), inner),
    max_leaves=8,
)


def read(text: str) -> object:
    """What the parser makes of it."""
    return tomllib.loads(f"x = {text}", parse_float=Decimal)["x"]


@given(NESTED)
def test_what_is_written_reads_back_the_same(plain: object) -> None:
    assert read(toml_text(plain)) == plain


def test_the_decimals_a_person_wrote_stay() -> None:
    assert toml_text(Decimal("30.00")) == "30.00" and str(read("30.00")) == "30.00"


def test_days_and_times_have_no_quotes() -> None:
    assert toml_text((date(2026, 1, 5), time(13, 0))) == "[2026-01-05, 13:00:00]"


def test_a_blank_has_no_notation() -> None:
    with pytest.raises(TypeError):
        toml_text(None)


def test_only_what_says_something_is_stated() -> None:
    """Needed fields always, others where they differ from what holds without them."""
    assert list(stated(terms(prices_hold_days=30))) == [
        *("supplier", "name", "starts_on", "currency", "freight", "transit_days", "prices_hold_days")
    ]


def test_control_characters_are_written_by_their_codes() -> None:
    """TOML 1.0 allows none of them as they are in a text, DEL (U+007F) included."""
    text = "".join(map(chr, range(32))) + "\x7f"
    assert read(toml_text(text)) == text
