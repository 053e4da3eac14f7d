"""Goods that went back to the supplier before the bill are not received any more: their price is not earned."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.bill import write_bill
from sourcing.actions.goods_back import BackStep, send_back
from sourcing.actions.margins import margins
from sourcing.basics.margin import Stage
from sourcing.documents.bill_paper import bill_html
from tests.actions.billed_shop import BELT_ORDER, BILLING, billing, received
from tests.builders import usd
from tests.journeys.small_shop import desk_at

WENT_BACK = datetime(2026, 3, 10, 9, 0)


def belt_back(folder: Path, at: datetime = WENT_BACK) -> None:
    """The belt, bought at 71.25, sent back and credited in full."""
    desk = desk_at(folder, at)
    send_back(desk, BELT_ORDER, BackStep(line=1, kind="goods", step="sent"))
    send_back(desk, BELT_ORDER, BackStep(line=1, kind="goods", step="credited", credit=Decimal("71.25")))


def stages(folder: Path, number: str) -> dict[str, list[Stage]]:
    """What each line has reached."""
    (one,) = margins(desk_at(folder, BILLING), number)
    return {line.label: [stage for stage, _ in line.stages] for line in one.lines}


def test_before_the_bill_the_line_is_not_received_any_more(tmp_path: Path) -> None:
    """Nor is the job as a whole; other lines stay as they are."""
    number = received(tmp_path)
    assert stages(tmp_path, number)["1"] == ["quoted", "ordered", "received"]
    belt_back(tmp_path)
    found = stages(tmp_path, number)
    assert found["1"] == ["quoted", "ordered"] and found["A"] == ["quoted", "ordered", "received"]
    (job,) = margins(billing(tmp_path), number)
    assert [stage for stage, _ in job.parts] == ["quoted", "ordered"]


def test_what_was_billed_stays_earned(tmp_path: Path) -> None:
    """After the bill the credit takes the cost away, as it did."""
    number = received(tmp_path)
    write_bill(billing(tmp_path), number, bill_html)
    belt_back(tmp_path, BILLING)
    assert stages(tmp_path, number)["1"] == ["quoted", "ordered", "received"]
    (job,) = margins(billing(tmp_path), number)
    (belt,) = [line for line in job.lines if line.label == "1"]
    assert dict(belt.stages)["received"].price > usd("0.00")
