"""Nothing is ordered against the evidence of which part it is, whatever the customer approved."""

from pathlib import Path

import pytest

from sourcing.actions.identity import add_evidence, take_evidence_back
from sourcing.actions.orders import place_orders
from sourcing.basics.evidence import Evidence
from sourcing.basics.problem import Refused
from tests.journeys.belt_job import BELT_LINE, approved, take_in, three_numbers


def test_nothing_is_ordered_while_the_evidence_names_another_part(tmp_path: Path) -> None:
    """Held although the customer said yes; once the wrong list is taken back with why, it is ordered."""
    desk, _ = three_numbers(tmp_path)
    wrong = Evidence(kind="component list", maker="Norrowby", number="NW-22203", model="OV-88T")
    number = take_in(desk, tmp_path, BELT_LINE)
    approved(desk, number)
    add_evidence(desk, number, "1", wrong)
    with pytest.raises(Refused, match="is not ordered: not settled: the evidence contradicts itself"):
        place_orders(desk, [number])
    take_evidence_back(desk, number, "1", 5, "read from the page of another gearbox")
    placed = place_orders(desk, [number])
    assert len(placed.orders) == 1 and not placed.held
    assert any("stamped 4L880" in words for words in placed.warnings)


def test_nothing_is_ordered_where_the_line_asks_for_another_part(tmp_path: Path) -> None:
    """Plan and quote say so; the order holds it."""
    desk, _ = three_numbers(tmp_path)
    number = take_in(desk, tmp_path, BELT_LINE.replace('"NW-77120"', '"NW-22203"').replace('"OV-20417"', '""'))
    approved(desk, number)
    with pytest.raises(Refused, match="the evidence says IDLER and not BELT"):
        place_orders(desk, [number])
