"""Serial numbers are compared by one rule wherever a machine is held against a span."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.equivalence import Bench
from sourcing.basics.evidence import Evidence
from sourcing.basics.job import Machine
from sourcing.basics.value import changed
from sourcing.matching.equivalences.bench import fits, span_is_backwards
from sourcing.matching.identity.coverage import coverage
from sourcing.matching.serials import Standing, serial_order, serial_standing
from tests.builders import number, statement

SAME_ANSWER: dict[Standing, tuple[str, str]] = {
    "within": ("holds", "covers"),
    "below": ("contradicts", "other"),
    "above": ("contradicts", "other"),
    "backwards": ("open", "unknown"),
    "open": ("open", "unknown"),
}
"""What a statement and what a list says of a machine that stands so."""


def both(serial: str, first: str, last: str) -> tuple[str, str]:
    """What a statement of the table, and what a machine list, says of a machine with that serial number."""
    said = changed(
        statement(number("A"), "superseded by", number("B")), machine="NW-826", serial_from=first, serial_to=last
    )
    listed = Evidence(kind="machine list", number="NW-1", model="NW-826", serial_from=first, serial_to=last)
    machine = Machine(description="snow thrower", model="NW-826", serial=serial)
    return fits(said, Bench(machine="NW-826", serial=serial)), coverage(listed, machine).verdict


@given(st.integers(0, 10**9), st.integers(0, 10**9), st.sampled_from(["", "A", "24B"]))
def test_order_of_serials_is_order_of_numbers(one: int, other: int, prefix: str) -> None:
    """Where letters stand in the same places."""
    expected = "before" if one < other else "after" if one > other else "same"
    assert serial_order(f"{prefix}{one}", f"{prefix}{other}") == expected


@pytest.mark.parametrize(
    ("one", "other"), [("A100", "B100"), ("100", "A100"), ("24A100", "25A050"), ("A", "B"), ("", "1"), ("100A", "150A")]
)
def test_serials_made_in_other_ways_are_not_compared(one: str, other: str) -> None:
    """Other letters, another front, letters at the end, nothing."""
    assert serial_order(one, other) is serial_order(other, one) is None


@pytest.mark.parametrize(
    ("serial", "first", "last", "standing"),
    [
        # A front that differs may be a year or a plant: statements once read these spans across it.
        ("2A100", "1A500", "1A900", "open"),
        ("1A999", "1A500", "2A100", "open"),
        ("1A400", "1A500", "2A100", "below"),
        ("150A", "100A", "200A", "open"),
        ("1A999", "2A100", "1A500", "above"),
        ("XA", "XA", "", "within"),
        ("XB", "XA", "XC", "open"),
        ("1500", "1999", "1000", "backwards"),
        ("2500", "A100", "1999", "above"),
        ("1500", "A100", "1999", "open"),
        ("", "1000", "", "open"),
        ("0001999", "", "1999", "within"),
        ("1", "", "", "within"),
    ],
)
def test_statements_and_lists_say_the_same(serial: str, first: str, last: str, standing: Standing) -> None:
    """One rule, the more careful of the two there were."""
    assert serial_standing(serial, first, last) == standing
    assert both(serial, first, last) == SAME_ANSWER[standing]


def test_only_what_can_be_compared_is_called_backwards() -> None:
    """A span over two fronts is left to a person."""
    assert span_is_backwards("1999", "1000") and not span_is_backwards("2A100", "1A500")


def test_a_serial_number_of_any_length_is_compared() -> None:
    """Python makes no integer of more than 4300 figures; such a cell must not stop a sheet."""
    assert serial_order("1" * 5000, "2" + "1" * 4999) == "before"
    assert serial_order("9" * 4999, "1" + "0" * 4999) == "before"
