"""A part of which no sheet names a day, where a day is wanted: the commands say whom to ask and take it without one."""

from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.quotes import write_quote
from tests.actions.quoted_shop import BELT_LINE, paper
from tests.cli.running import sourcing
from tests.journeys.small_shop import desk_at, sheet, shop, take_in

MONDAY = datetime(2026, 3, 2, 10, 15)
AT = "2026-03-02T10:15"


@pytest.fixture
def job(tmp_path: Path) -> str:
    """A job that wants a belt by Thursday, which is on call."""
    desk = shop(tmp_path, MONDAY)
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", ["NW-77120,Norrowby,Belt B88,189.50,126.90,0,call"])
    return take_in(desk, tmp_path, f"need_by = 2026-03-05\n{BELT_LINE}")


def test_the_plan_says_whom_to_ask_and_with_which_option_it_goes_on(tmp_path: Path, job: str) -> None:
    code, output, _ = sourcing(tmp_path, "plan", job, at=AT)
    told = " ".join(output.split())
    assert code == 0 and "no offer names a day, so none is sure by 2026-03-05; ask Stonegarth" in told
    assert "with --any-day" in told
    code, output, _ = sourcing(tmp_path, "plan", job, "--any-day", at=AT)
    assert code == 0 and "no offer names a day" not in output and "NW-77120" in output


def test_the_quote_is_written_without_a_day(tmp_path: Path, job: str) -> None:
    code, _, errors = sourcing(tmp_path, "quote", job, "--need-by", "2026-03-27", at=AT)
    assert code == 1 and "no offer names a day" in errors and "allow a later day or any day" in errors
    assert sourcing(tmp_path, "quote", job, "--any-day", "--check", at=AT)[0] == 0
    assert sourcing(tmp_path, "quote", job, "--any-day", at=AT)[0] == 0


def test_what_is_quoted_without_a_day_can_be_approved_and_ordered(tmp_path: Path, job: str) -> None:
    """At the counter's word, kept for the job: nobody is then told of a day that is not kept."""
    write_quote(desk_at(tmp_path, MONDAY), job, paper, "any day", keep_day=True)
    yes = ["answer", job, "--yes", "agreed", "--by", "Maud Tilbrook", "--how", "telephone"]
    code, _, errors = sourcing(tmp_path, *yes, at=AT)
    assert code == 0, errors
    assert "not as approved" not in sourcing(tmp_path, "alarms", job, at=AT)[1]
    code, output, errors = sourcing(tmp_path, "order", job, at=AT)
    assert code == 0 and "PO-2026-0001" in output, errors


@pytest.mark.parametrize(
    "words",
    [["plan", "2026-0001", "--any-day", "--need-by", "2026-03-05"], ["plan", "--file", "x.json", "--any-day"]],
    ids=" ".join,
)
def test_what_does_not_go_together_is_usage(tmp_path: Path, job: str, words: list[str]) -> None:
    assert sourcing(tmp_path, *words, at=AT)[0] == 2
