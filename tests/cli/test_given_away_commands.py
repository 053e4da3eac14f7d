"""Extras given away and discounts at the counter as typed: what is shown, what is refused with one sentence."""

import json
from pathlib import Path

import pytest

from tests.actions.billed_shop import received
from tests.cli.running import sourcing

AT = "2026-03-10T16:30"
CLIP = ("gave-away", "2026-0001", "--what", "cable clip", "--cost", "1.20", "--price", "3.00")


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """The worked job with all goods here, in a folder of its own."""
    received(tmp_path)
    return tmp_path


def test_an_extra_given_away_is_recorded_and_shown(shop: Path) -> None:
    """By the command itself, without figures too, in the job and in the margins."""
    assert sourcing(shop, "gave-away", "2026-0001", at=AT)[1] == "Nothing was given away on job 2026-0001.\n"
    code, output, errors = sourcing(shop, *CLIP, "--words", "the old one fell apart", at=AT)
    assert code == 0, errors
    assert "Given away on job 2026-0001: never approved, never billed." in output
    assert "Cost in all: 1.20 USD." in output
    assert sourcing(shop, "gave-away", "2026-0001", at=AT)[1] == output
    assert "cable clip: cost 1.20 USD" in sourcing(shop, "show-job", "2026-0001", at=AT)[1]
    assert "unapproved extra given away" in sourcing(shop, "margins", "2026-0001", at=AT)[1]
    kept = json.loads(sourcing(shop, "gave-away", "2026-0001", "--json", at=AT)[1])
    assert kept[0]["cost"] == {"amount": "1.20", "currency": "USD"}


def test_what_is_missing_is_asked_for(shop: Path) -> None:
    """Cost left out is a slip of usage; words left out are told in a sentence."""
    code, _, errors = sourcing(shop, "gave-away", "2026-0001", "--what", "clip", "--words", "why", at=AT)
    assert code == 2 and "--cost" in errors
    code, _, errors = sourcing(shop, *CLIP, at=AT)
    assert code == 1 and errors == (
        "sourcing: job 2026-0001: why of the extra given away is not said; say what was fitted with --what and why "
        "with --words.\n"
    )


def test_a_discount_is_seen_before_and_stands_on_the_bill(shop: Path) -> None:
    """Without the reason, which is the owner's; printed again it is the same."""
    off = ("--off", "A=5.00", "--off", "B=1.00", "--off-words", "regular customer")
    code, output, errors = sourcing(shop, "bill", "2026-0001", *off, "--look", at=AT)
    assert code == 0 and "(less $5.00)" in output and "(less $1.00)" in output, errors
    code, output, errors = sourcing(shop, "bill", "2026-0001", *off, at=AT)
    assert code == 0 and "Total: $406.77" in output, errors
    paper = (shop / "B-2026-0001.html").read_text(encoding="utf-8")
    assert "less $5.00" in paper and "regular customer" not in paper + output
    assert sourcing(shop, "bill", "2026-0001", "--html", "again.html", at=AT)[0] == 0
    assert (shop / "again.html").read_text(encoding="utf-8") == paper
    code, _, errors = sourcing(shop, "bill", "2026-0001", *off, at=AT)
    assert code == 1 and "job 2026-0001 is billed already" in errors


@pytest.mark.parametrize(
    ("typed", "code", "told"),
    [
        (("--off", "A=5.00"), 1, "a discount without a reason"),
        (("--off", "A=5.00", "--off", "A=3.00", "--off-words", "why"), 1, "two amounts are to be taken off line A"),
        (("--off", "A=500", "--off-words", "why"), 1, "500 USD can't be taken off line A of job 2026-0001: it costs"),
        (("--off", "A", "--off-words", "why"), 1, "A=5.00"),
        (("--off", "A=much", "--off-words", "why"), 1, "much"),
        (("--off-words", "why"), 2, "there is no --off"),
    ],
)
def test_a_wrong_discount_is_told_in_a_sentence(shop: Path, typed: tuple[str, ...], code: int, told: str) -> None:
    """And no bill is written."""
    done, output, errors = sourcing(shop, "bill", "2026-0001", *typed, at=AT)
    assert (done, output) == (code, "") and told in " ".join(errors.replace("│", " ").split())
    assert not (shop / "B-2026-0001.html").exists()
