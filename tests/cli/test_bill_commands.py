"""Deposit and bill as typed: what is shown, what is written, what is refused with one sentence."""

import json
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.receive import Delivery, receive
from tests.actions.billed_shop import BELT_ORDER, DELIVERY, EXTRAS_ORDER, answered, ordered, received
from tests.cli.running import in_a_process, sourcing
from tests.journeys.small_shop import desk_at

AT = "2026-03-10T16:30"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """The worked job with all goods here, in a folder of its own."""
    received(tmp_path)
    return tmp_path


def test_from_deposit_to_bill(shop: Path) -> None:
    """Look, pay ahead, bill, print again: the same paper to the letter, and the job is closed."""
    code, output, errors = sourcing(shop, "deposit", "2026-0001", "--taken", "113.10", "--how", "cash", at=AT)
    assert code == 0, errors
    assert output.splitlines()[0] == "Deposit of job 2026-0001: asked nothing, held 113.10 USD."
    code, output, errors = sourcing(shop, "bill", "2026-0001", "--look", at=AT)
    assert code == 0 and "Only a look; nothing is kept." in output and "Left to pay: $300.09" in output
    assert not (shop / "B-2026-0001.html").exists()
    code, output, errors = sourcing(shop, "bill", "2026-0001", at=AT)
    assert code == 0, errors
    assert "Total: $413.19" in output and "The paper is in B-2026-0001.html." in output
    paper = (shop / "B-2026-0001.html").read_bytes()
    again, at = shop / "again.html", "2027-05-05T09:00"
    code, output, errors = sourcing(shop, "bill", "2026-0001", "--html", str(again), at=at)
    assert code == 0 and output.startswith("Printed again as it was made.")
    assert again.read_bytes() == paper
    assert "closed" in sourcing(shop, "jobs", "--all", at=AT)[1]
    assert "1 closed job is not shown" in sourcing(shop, "jobs", at=AT)[1]


def test_the_bill_as_pdf_and_as_json(shop: Path) -> None:
    """The PDF is made from the kept page; machines read amounts as text, never as binary numbers."""
    pytest.importorskip("plutoprint")
    code, output, errors = sourcing(shop, "bill", "2026-0001", "--pdf", "bill.pdf", "--json", at=AT)
    assert code == 0, errors
    again = sourcing(shop, "bill", "2026-0001", "--pdf", "bill.pdf", at=AT)[1]
    assert "The paper is in B-2026-0001.html, as PDF in bill.pdf." in again
    assert (shop / "bill.pdf").read_bytes().startswith(b"%PDF-")
    kept = json.loads(output)
    assert kept["bill"]["due"] == {"amount": "413.19", "currency": "USD"} and len(kept["sha256"]) == 64
    assert "behind" not in output or all(line["behind"] is None for line in kept["bill"]["lines"])


def test_where_no_pdf_can_be_made_no_bill_is_kept(shop: Path) -> None:
    """The job stays open, so that the command can be said again without --pdf."""
    (shop / "plutoprint.py").write_text('raise ImportError("it is not here")')
    code, output, errors = in_a_process(shop, "bill", "2026-0001", "--pdf", "bill.pdf", at=AT)
    assert (code, output) == (1, "") and "leave out --pdf" in errors
    code, output, errors = in_a_process(shop, "bill", "2026-0001", at=AT)
    assert code == 0 and not output.startswith("Printed again"), errors


def test_a_line_not_done_needs_its_reason(shop: Path) -> None:
    """Refused with one sentence, then billed without it; a wish to change a bill that is there is refused."""
    code, _, errors = sourcing(shop, "bill", "2026-0001", "--not-done", "B", at=AT)
    assert code == 1 and errors == (
        "sourcing: job 2026-0001 leaves out lines that were approved, without a reason; say why with --words: it "
        "stands on the bill.\n"
    )
    code, output, errors = sourcing(shop, "bill", "2026-0001", "--not-done", "B", "--words", "Did not fit.", at=AT)
    assert code == 0 and "B  Idler: Did not fit." in output and "Total: $352.11" in output, errors
    code, _, errors = sourcing(shop, "bill", "2026-0001", "--not-done", "A", "--words", "Nor this.", at=AT)
    assert code == 1 and "job 2026-0001 is billed already" in errors


def test_what_stands_in_the_way_is_told_line_by_line(tmp_path: Path) -> None:
    """Exit 1, one sentence each, nothing written."""
    answered(tmp_path)
    code, output, errors = sourcing(tmp_path, "bill", "2026-0001", at=AT)
    assert (code, output) == (1, "")
    assert [line.split(";")[0] for line in errors.splitlines()] == [
        "sourcing: line 1 of job 2026-0001 can't be billed: nothing good has come on PO-2026-0001",
        "sourcing: line A of job 2026-0001 can't be billed: its part was never ordered",
        "sourcing: line B of job 2026-0001 can't be billed: its part was never ordered",
    ]
    assert not list(tmp_path.glob("B-*"))


@pytest.mark.parametrize(
    ("words", "code", "sentence"),
    [
        (["--taken", "5"], 1, "it is not said how the money was paid"),
        (["--taken", "-5", "--how", "cash"], 1, "-5 is no amount that can be paid"),
        (["--taken", "1.005", "--how", "cash"], 1, "at most 2 decimals"),
        (["--taken", "1e2", "--how", "cash"], 1, "1e2"),
        (["--taken", "500", "--how", "cash"], 1, "500.00 USD is too much for job 2026-0001"),
        (["--back", "5", "--how", "cash"], 1, "5.00 USD can't be given back for job 2026-0001: 0.00 USD is held"),
        (["--taken", "5", "--back", "5", "--how", "cash"], 2, "not both"),
    ],
)
def test_a_deposit_that_can_not_be(shop: Path, words: list[str], code: int, sentence: str) -> None:
    """One sentence; nothing is kept."""
    found, _, errors = sourcing(shop, "deposit", "2026-0001", *words, at=AT)
    assert found == code and sentence in errors
    assert "held 0.00 USD" in sourcing(shop, "deposit", "2026-0001", at=AT)[1]


def test_a_look_and_the_bill_say_which_charges_are_not_said_yet(tmp_path: Path) -> None:
    """The extra parts were only counted, and their freight is given to the customer: nothing waits, but it is told."""
    ordered(tmp_path)
    desk = desk_at(tmp_path, DELIVERY)
    receive(desk, BELT_ORDER, Delivery(paper="D-1", freight=Decimal("9.95")))
    receive(desk, EXTRAS_ORDER, Delivery(paper="D-2", freight=Decimal(0), only_counted=True))
    gift = ("--not-done", "D", "--words", "freight is on us")
    for words in ((*gift, "--look"), gift):
        code, told, errors = sourcing(tmp_path, "bill", "2026-0001", *words, at=AT)
        assert code == 0, errors
        assert f"Look at this: the charges of paper D-2 of {EXTRAS_ORDER} are not said yet" in told
        assert "D-1" not in told
