"""Rows of a sheet that are parts of ours, and the open jobs that call for them: where a new price matters first."""

from collections import defaultdict

from ..basics.sheet_sample import Concern
from ..storage.jobs import jobs_but
from .desk import Desk
from .job_states import job_list
from .our_side import offers_with_our_numbers, our_side

Row = tuple[str, int]
"""Worksheet and row."""


def sheet_concerns(desk: Desk, sheet: int) -> dict[Row, Concern]:
    """By row, for a sheet that counts today; nothing for any other. What only looks alike is not among them."""
    day = desk.at.date()
    with desk.store.reading() as connection:
        side = our_side(connection, day)
        known = [one for one in offers_with_our_numbers(connection, side, day) if one.source.sheet == sheet]
    found: dict[Row, Concern] = {}
    jobs = _open_jobs(desk) if known else {}
    for offer in known:
        part = next((code for code, match in side.matches(offer) if match.tier == "automatic"), "")
        if part:
            place = offer.source.worksheet, offer.source.row
            found[place] = Concern(part=part, jobs=tuple(sorted(jobs.get(part, ()))))
    return found


def _open_jobs(desk: Desk) -> dict[str, set[str]]:
    """By part of ours, the jobs not closed that have a line with it."""
    still_open = {row.job for row in job_list(desk).jobs}
    found: defaultdict[str, set[str]] = defaultdict(set)
    with desk.store.reading() as connection:
        for job in jobs_but(connection, set()):
            for line in (*job.agreed, *job.add_ons):
                if line.part and job.number in still_open:
                    found[line.part].add(job.number)
    return dict(found)
