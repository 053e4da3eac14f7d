"""Goods that went back to the supplier before the bill are not received any more: their price is not earned."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.bill import write_bill
from sourcing.actions.goods_back import BackStep, send_back
from sourcing.actions.margins import margins
from sourcing.basics.bill import LeftOut
from sourcing.basics.margin import Stage
from sourcing.basics.money import Money
from sourcing.documents.bill_paper import bill_html
from tests.actions.billed_shop import BELT_ORDER, BILLING, EXTRAS_ORDER, billing, received
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


def test_what_was_bought_for_nothing_and_credited_is_lost_once(tmp_path: Path) -> None:
    """Two keepers of a line not done: 2 x 6.40 and 5.42 of 14.95 freight (12.80 of 35.30 goods), 18.22, of which 14.73
    was quoted: without line C their share of the freight is 3.49 more. Sent back for 4.00, 10.24 of 12.80 credited:
    1.93 + 3.49 + 4.00 + 2.56 is lost, 18.22 - 10.24 + 4.00 = 11.98."""
    number = received(tmp_path)
    write_bill(billing(tmp_path), number, bill_html, LeftOut(labels=("A",), words="not needed after all"))
    assert lost(tmp_path, number) == {"bought and not used": usd("14.73"), **FREIGHT}
    desk = desk_at(tmp_path, BILLING)
    sent = BackStep(line=1, kind="goods", step="sent", pieces=2, freight=Decimal("4.00"))
    send_back(desk, EXTRAS_ORDER, sent)
    send_back(
        desk,
        EXTRAS_ORDER,
        BackStep(line=1, kind="goods", step="credited", pieces=2, credit=Decimal("10.24"), words="his terms"),
    )
    assert lost(tmp_path, number) == {
        "bought and not used": usd("1.93"),
        **FREIGHT,
        "return restocked": usd("4.00"),
        "return credited short": usd("2.56"),
    }


FREIGHT = {"freight and fees above the quote": usd("3.49")}


def lost(folder: Path, number: str) -> dict[str, Money]:
    """The leaks of line A by name."""
    (job,) = margins(desk_at(folder, BILLING), number)
    return {leak.name: leak.amount for leak in job.leaks if leak.label == "A"}
