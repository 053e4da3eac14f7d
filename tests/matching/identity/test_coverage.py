"""Whether a list is for this machine: model, and serial numbers with both ends inclusive."""

from typing import Any

import pytest

from sourcing.basics.equivalence import Bench
from sourcing.basics.evidence import Evidence
from sourcing.basics.job import Machine
from sourcing.basics.value import changed
from sourcing.matching.equivalences.bench import fits
from sourcing.matching.identity.coverage import coverage
from tests.builders import number, statement

MACHINE = Machine(
    description="snow thrower", maker="Norrowby", model="NW-4210", serial="1048221", component="Ostrevik gearbox OV-88T"
)


def verdict(machine: Machine = MACHINE, **fields: Any) -> str:
    """What coverage says of such a list."""
    return coverage(Evidence(**{"kind": "machine list", "number": "NW-1", **fields}), machine).verdict


@pytest.mark.parametrize(
    ("low", "high", "said"),
    [
        ("1048221", "", "covers"),
        ("", "1048221", "covers"),
        ("1048222", "", "other"),
        ("", "1048220", "other"),
        ("1000000", "1049999", "covers"),
        ("1050000", "1099999", "other"),
        ("A100", "", "unknown"),
        ("1049999", "1000000", "unknown"),
    ],
)
def test_serial_numbers_with_both_ends(low: str, high: str, said: str) -> None:
    """Another way of numbering is not known, never guessed; a range that runs backwards is read again."""
    assert verdict(serial_from=low, serial_to=high) == said


def test_models() -> None:
    assert verdict(model="nw 4210") == "covers"
    assert verdict(model="NW-4211") == "other"
    assert verdict(Machine(description="snow thrower"), model="NW-4210") == "unknown"
    assert verdict(Machine(description="snow thrower", model="NW-4210"), serial_from="1") == "unknown"


def test_a_components_list_looks_at_the_components_own_tag() -> None:
    """Its model stands in a field of its own, or as whole words in the description of the component."""
    assert verdict(kind="component list", model="OV-88T") == "covers"
    assert verdict(kind="component list", model="OV-88") == "other"
    tagged = Machine(description="x", model="NW-4210", component_model="OV-90", component_serial="77")
    assert verdict(tagged, kind="component list", model="OV-88T") == "other"
    assert verdict(tagged, kind="component list", model="OV-90", serial_to="76") == "other"
    assert verdict(Machine(description="x"), kind="component list", model="OV-90") == "unknown"


@pytest.mark.parametrize(
    ("model", "low", "fit"), [("OV-88T", "", "holds"), ("OV-88T", "500", "contradicts"), ("OV-90", "", "contradicts")]
)
def test_a_statement_may_speak_of_the_components_model(model: str, low: str, fit: str) -> None:
    """Two lists apply: the machine's and its component's, which has a tag of its own."""
    bench = Bench(machine="NW-4210", serial="1048221", component="OV-88T", component_serial="400")
    said = changed(statement(number("A"), "superseded by", number("B")), machine=model, serial_from=low)
    assert fits(said, bench) == fit
