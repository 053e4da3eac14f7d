"""Freight billed at cost waits for the paper that says what it was."""

from decimal import Decimal
from pathlib import Path

from sourcing.actions.bill import look_at_bill
from sourcing.actions.receive import Delivery, receive, receive_again
from tests.actions.billed_shop import BELT_ORDER, DELIVERY, EXTRAS_ORDER, billing, ordered
from tests.actions.test_bill import refused_bill
from tests.journeys.small_shop import desk_at


def test_freight_at_cost_waits_until_its_paper_says_what_it_charges(tmp_path: Path) -> None:
    """The keepers and the idler were only counted, and line D bills their freight."""
    number = ordered(tmp_path)
    desk = desk_at(tmp_path, DELIVERY)
    receive(desk, BELT_ORDER, Delivery(paper="D-1", freight=Decimal("9.95")))
    receive(desk, EXTRAS_ORDER, Delivery(paper="D-2", freight=Decimal(0), only_counted=True))
    (told,) = refused_bill(tmp_path, number)
    said = f"line D of job {number} bills freight at cost, and of paper D-2 of {EXTRAS_ORDER} nobody has said yet"
    assert told == ("freight-not-said-for-bill", f"{said} what it charges")
    receive_again(desk, EXTRAS_ORDER, "D-2", "now with its charges")
    receive(desk, EXTRAS_ORDER, Delivery(paper="D-2", freight=Decimal("14.95")))
    assert look_at_bill(billing(tmp_path), number).job == number
