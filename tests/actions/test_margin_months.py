"""Margins of some months come to the same as those months of all there ever was, though only their jobs are loaded."""

from datetime import date, datetime
from pathlib import Path

import pytest

from sourcing.actions.desk import Desk, open_desk
from sourcing.actions.margin_loading import load
from sourcing.actions.margin_months import Months, months_typed, newest_months
from sourcing.actions.margins import margins_by
from sourcing.actions.what_if import bands_of_lines, what_if
from sourcing.basics.problem import Refused
from tests.benchmarks.margin_speed import SETTINGS
from tests.margins.many_jobs import keep, papers

TODAY = date(2026, 12, 31)


@pytest.fixture
def desk(tmp_path: Path) -> Desk:
    """Sixty invented jobs, answered over several months."""
    made = open_desk(str(tmp_path / "shop.db"), datetime(2026, 12, 31, 9, 30), "Oona Brandeth")
    with made.store.writing() as connection:
        keep(connection, list(papers(60, 5)), SETTINGS)
    return made


def test_each_month_by_itself_is_that_month_of_all(desk: Desk) -> None:
    """To the cent, at every stage, with its leaks; and no job of another month is loaded."""
    months = margins_by(desk, "month").groups
    assert len(months) > 2
    for one in months:
        within = Months(since=one.name, until=one.name)
        assert margins_by(desk, "month", within).groups == (one,)
        with desk.store.reading() as connection:
            loaded = load(connection, within.answered, TODAY)
        assert len(loaded.jobs) < 60
        assert {f"{day:%Y-%m}" for facts in loaded.jobs for day in facts.approved.values()} == {one.name}


def test_months_from_to_take_both_ends(desk: Desk) -> None:
    """The lines of all months together are all lines."""
    every = margins_by(desk, "line")
    names = [one.name for one in every.months]
    whole = margins_by(desk, "line", Months(since=names[0], until=names[-1]))
    assert whole.groups == every.groups and whole.leaks == every.leaks and whole.low == every.low
    first = margins_by(desk, "line", Months(since=names[0], until=names[1]))
    assert first.whole.lines == every.months[0].lines + every.months[1].lines


def test_other_bands_are_tried_on_the_months_asked_for(desk: Desk) -> None:
    """Their lines add up to those of all."""
    bands = bands_of_lines("50 = 1.40\n\n0=1.60")
    assert [str(one.from_cost) for one in bands.markup_bands] == ["0", "50"]
    names = [one.name for one in margins_by(desk, "month").groups]
    parts = [what_if(desk, bands, Months(since=name, until=name)) for name in names]
    every = what_if(desk, bands)
    assert sum(one.lines + one.not_repriced for one in parts) == every.lines + every.not_repriced


@pytest.mark.parametrize(
    ("since", "until", "found"),
    [
        ("", "", ("2026-12", "2026-12")),
        ("2025-03", "", ("2025-03", "2026-12")),
        ("", "2025-03", ("2025-03", "2025-03")),
        ("2027-05", "", ("2027-05", "2027-05")),
        (" 2025-12 ", "2026-01", ("2025-12", "2026-01")),
    ],
)
def test_months_typed_in_part_are_filled_up(since: str, until: str, found: tuple[str, str]) -> None:
    """A blank end is the newest there can be."""
    made = months_typed(since, until, TODAY)
    assert (made.since, made.until) == found


@pytest.mark.parametrize(("since", "until"), [("2026-00", ""), ("2026-13", ""), ("26-01", ""), ("2026-02", "2026-01")])
def test_what_is_no_month_is_refused(since: str, until: str) -> None:
    """And so are months the wrong way round."""
    with pytest.raises(Refused):
        months_typed(since, until, TODAY)


def test_months_go_over_the_end_of_a_year() -> None:
    """In its first week January is looked at with the December before it, and later by itself."""
    assert newest_months(date(2026, 1, 8)) == Months(since="2026-01", until="2026-01")
    assert newest_months(date(2026, 1, 3)) == Months(since="2025-12", until="2026-01")
    assert Months(since="2025-12", until="2025-12").answered == (datetime(2025, 12, 1), datetime(2026, 1, 1))
