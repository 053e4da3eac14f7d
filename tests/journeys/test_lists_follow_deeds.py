"""The list of jobs that a counter remembers is, after every deed of a day, the list worked out from nothing."""

import shlex
from pathlib import Path

import pytest

from sourcing.actions.desk import Desk
from sourcing.actions.job_states import job_list
from sourcing.storage.database import open_store
from tests.journeys.cutting import COMMANDS
from tests.journeys.power_cut_day import DAY, JOB, Step, begin
from tests.journeys.test_ledger_of_a_job import AFTER

TOO_MUCH = Step("2026-03-10T16:00", f"deposit {JOB} --taken 452.00 --how cash")
BILL = Step("2026-03-10T16:30", f"bill {JOB} --html bill.html --not-done A --words 'it held after all'")
GIVEN_BACK = Step("2026-03-11T09:10", f"deposit {JOB} --back 5.00 --how cash")


def test_a_remembered_list_is_the_true_one_after_every_deed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One store stays open all day, as the counter's does, while others do the deeds. The day looked from is one,
    for a new day alone makes it look anew at what waits to go back.

    The day's last list differs from the first: a memory that never changed would be found out.
    """
    folder = tmp_path / "shop"
    begin(folder)
    monkeypatch.chdir(folder)
    address = str(folder / "sourcing.db")
    seen = set()
    with open_store(address) as counter:
        for step in (*DAY[:-2], TOO_MUCH, BILL, DAY[-1], GIVEN_BACK):
            monkeypatch.setenv("SOURCING_AT", step.at)
            COMMANDS.main(shlex.split(step.words), standalone_mode=False)
            for closed_too in (False, True):
                with open_store(address) as fresh:
                    true = job_list(Desk(store=fresh, at=AFTER, who="x"), closed_too)
                remembered = job_list(Desk(store=counter, at=AFTER, who="x"), closed_too)
                assert remembered == true, step.words
                seen.add(true)
    assert len(seen) > 10
