"""Jobs changed at the counter: by the rules of a job file, photos follow their lines, nothing is overwritten."""

import io
from collections.abc import Iterator
from decimal import Decimal
from pathlib import Path

import pytest
from flask import Flask
from PIL import Image

from sourcing.actions.desk import Desk
from sourcing.actions.history import history
from sourcing.actions.job_edit import Seen, add_finding, add_line, change_line, opened, take_finding_out, take_line_out
from sourcing.actions.jobs import change_job_from
from sourcing.actions.needs import line_of
from sourcing.actions.photos import keep_photo, photos_of, put_photo_back, take_photo_out
from sourcing.actions.promises import Said, open_promises, promise
from sourcing.basics.job import Job, JobLine
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.desks import STORE
from tests.web.world import APPROVED, CLERK, NOW, TAKEN_IN, TECHNICIAN, counter


@pytest.fixture
def app(tmp_path: Path) -> Iterator[Flask]:
    """A counter of its own."""
    with counter(tmp_path) as made:
        yield made


@pytest.fixture
def bench(app: Flask) -> Desk:
    """The technician's desk."""
    return Desk(store=app.config[STORE], at=NOW, who=TECHNICIAN)


def picture() -> bytes:
    """A small photo."""
    out = io.BytesIO()
    Image.new("RGB", (40, 30), "red").save(out, "JPEG")
    return out.getvalue()


def titles(job: Job) -> dict[str, str]:
    """The lines by label."""
    return {label: line.title for label, line in job.labelled()}


def shown(desk: Desk) -> dict[str, str]:
    """By photo, the title of the line it is shown at; '' where it is of the job."""
    job = opened(desk, TAKEN_IN)[0]
    return {one.name: titles(job).get(one.label, "") for one in photos_of(desk, TAKEN_IN)}


def test_photos_stay_with_their_lines_when_one_before_them_goes(bench: Desk) -> None:
    """Its own photo is one of the job then; one put back later finds its line under the new label."""
    before, seen = opened(bench, TAKEN_IN)
    first, second = titles(before)["A"], titles(before)["B"]
    for label in ("A", "B", "B"):
        keep_photo(bench, TAKEN_IN, label, "", picture())
    take_photo_out(bench, 3)
    assert shown(bench) == {"photo 1": first, "photo 2": second}
    take_line_out(bench, opened(bench, TAKEN_IN)[1], "A")
    put_photo_back(bench, 3)
    assert shown(bench) == {"photo 1": "", "photo 2": second, "photo 3": second}
    assert line_of(opened(bench, TAKEN_IN)[0], "A").photos == ("photo 2", "photo 3")
    assert seen.version != opened(bench, TAKEN_IN)[1].version


def test_a_file_that_replaces_a_job_leaves_its_photos(bench: Desk) -> None:
    """As long as the line asks for the same part."""
    keep_photo(bench, TAKEN_IN, "A", "", picture())
    change_job_from(bench, TAKEN_IN, demo_folder() / "job.toml")
    assert line_of(opened(bench, TAKEN_IN)[0], "A").photos == ("photo 1",)


def test_who_changed_the_job_meanwhile_is_named_with_what_was_changed(app: Flask, bench: Desk) -> None:
    """So that the second knows whom to ask."""
    clerk = Desk(store=app.config[STORE], at=NOW, who=CLERK)
    seen = opened(clerk, TAKEN_IN)[1]
    add_finding(bench, seen, "muffler loose")
    with pytest.raises(Refused, match=f"{TECHNICIAN}, 10:00: finding: muffler loose"):
        take_line_out(clerk, seen, "B")
    assert "B" in titles(opened(bench, TAKEN_IN)[0])


def test_another_part_starts_without_evidence_and_the_same_part_keeps_it(bench: Desk) -> None:
    """What spoke for the old part says nothing of a new one."""
    line = line_of(opened(bench, TAKEN_IN)[0], "1")
    assert line.evidence
    change_line(bench, opened(bench, TAKEN_IN)[1], "1", changed(line, evidence=(), hours=Decimal(2)))
    assert line_of(opened(bench, TAKEN_IN)[0], "1").evidence == line.evidence
    change_line(bench, opened(bench, TAKEN_IN)[1], "1", changed(line, part="PIN-SHEAR"))
    assert not line_of(opened(bench, TAKEN_IN)[0], "1").evidence


def test_a_change_of_nothing_is_no_deed(bench: Desk) -> None:
    """The history holds what happened."""
    line, deeds = line_of(opened(bench, TAKEN_IN)[0], "A"), len(history(bench, TAKEN_IN))
    change_line(bench, opened(bench, TAKEN_IN)[1], "A", line)
    assert len(history(bench, TAKEN_IN)) == deeds


def test_what_a_file_is_refused_for_is_refused_here(bench: Desk) -> None:
    """A part we do not know, an add-on of no words, a job without an agreed line."""
    seen = Seen(job=TAKEN_IN, version="")
    with pytest.raises(Refused, match="NO-SUCH"):
        add_line(bench, seen, JobLine(title="x", part="NO-SUCH", quantity=1), True)
    with pytest.raises(Refused, match="is blank"):
        add_line(bench, seen, JobLine(title=" "), True)
    take_line_out(bench, opened(bench, TAKEN_IN)[1], "2")
    with pytest.raises(Refused, match="no agreed line"):
        take_line_out(bench, opened(bench, TAKEN_IN)[1], "1")


def test_a_finding_taken_out_stays_in_the_history_with_its_words(bench: Desk) -> None:
    """Nothing seen is lost."""
    add_finding(bench, Seen(job=TAKEN_IN, version=""), "muffler loose")
    take_finding_out(bench, opened(bench, TAKEN_IN)[1], 1)
    assert history(bench, TAKEN_IN)[-1].detail == "finding taken out: muffler loose"


def test_open_promises_follow_each_deed(bench: Desk) -> None:
    """What is remembered of a job is worked out anew when something happened in it."""
    said = Said(kind="machine ready", earliest=NOW.date(), said_by=CLERK)
    assert not [one for one in open_promises(bench) if one.job == APPROVED and one.kind == "machine ready"]
    promise(bench, APPROVED, said)
    assert [one.job for one in open_promises(bench) if one.kind == "machine ready"] == [APPROVED]
    assert open_promises(bench, APPROVED) == tuple(one for one in open_promises(bench) if one.job == APPROVED)
