"""The machine is switched off in the middle of every action: the deed is kept whole or not at all.

Each command of a worked day ends itself with SIGKILL right before its first, a middle and its last writing statement,
before and after the deed is kept, and between that and each paper it writes. The file is opened again as anybody would.
What the power takes from a disk that lies about having written is beyond a test; that SQLite waits for the disk is held
by PRAGMA synchronous = 2 (SQLite, "Pragma statements": FULL).
"""

import shlex
import shutil
import sqlite3
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import text

from sourcing.storage.database import open_store
from tests.journeys.cutting import Host
from tests.journeys.power_cut_day import CUT, DAY, Step, begin

DATABASE = "sourcing.db"
Kept = dict[str, list[tuple[Any, ...]]]


@dataclass(frozen=True)
class Done:
    """A step that nothing interrupted: the folder before and after it, what it did, and what is kept after it."""

    step: Step
    before: Path
    after: Path
    met: dict[str, Any]
    kept_before: Kept
    kept_after: Kept


@dataclass
class Day:
    """The whole day as it went without a cut, with a process to run commands in."""

    host: Host
    scratch: Path
    done: dict[str, Done]

    def again(self, one: Done) -> Path:
        """A fresh copy of the folder as it was before the step."""
        shutil.rmtree(self.scratch / "cut", ignore_errors=True)
        return shutil.copytree(one.before, self.scratch / "cut")

    def cut(self, one: Done, moment: str) -> Path:
        """The step begun and cut off at that moment; the folder."""
        folder = self.again(one)
        ended = self.host.run(folder, one.step.at, tuple(shlex.split(one.step.words)), moment)
        assert ended == -9, f"{one.step.name} was to be cut at {moment}: {ended} {self.host.told.read_text()}"
        return folder

    def run(self, one: Done, folder: Path) -> int:
        """The step said once more there; its exit code."""
        return self.host.run(folder, one.step.at, tuple(shlex.split(one.step.words)))


@pytest.fixture(scope="module")
def day(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Day]:
    """The day gone through once without a cut."""
    scratch = tmp_path_factory.mktemp("day")
    host, done = Host(scratch), {}
    folder = scratch / "0"
    begin(folder)
    for at, step in enumerate(DAY, 1):
        before, folder = folder, shutil.copytree(folder, scratch / str(at))
        ended = host.run(folder, step.at, tuple(shlex.split(step.words)))
        assert ended == 0, f"{step.words}: {host.told.read_text()}"
        if step.name:
            done[step.name] = Done(step, before, folder, host.met(), kept(before, scratch), kept(folder, scratch))
    yield Day(host, scratch, done)
    host.close()


def kept(folder: Path, scratch: Path | None = None) -> Kept:
    """Every row of every table, after opening the file as the program does. Checks that the file is whole.

    `scratch`: look at a copy made there, so that the folder stays as it is.
    """
    path = folder / DATABASE
    if scratch is not None:
        looked = scratch / "looked"
        shutil.rmtree(looked, ignore_errors=True)
        path = shutil.copytree(folder, looked) / DATABASE
    open_store(str(path)).close()
    connection = sqlite3.connect(path)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchall() == [("ok",)]
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
        names = [name for (name,) in connection.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        return {name: sorted(connection.execute(f'SELECT * FROM "{name}"').fetchall(), key=repr) for name in names}
    finally:
        connection.close()


def papers(folder: Path) -> dict[str, bytes]:
    """Every file a person would open, by its place in the folder; not the database, nor what was being written."""
    files = (path for path in folder.rglob("*") if path.is_file() and not path.name.startswith(DATABASE))
    return {str(path.relative_to(folder)): path.read_bytes() for path in files if path.suffix != ".part"}


def moments(met: dict[str, Any]) -> list[str]:
    """Where to cut: a middle and the last writing statement, before and after the deed is kept, and the first file."""
    writes, files, last = met["writes"], met["files"], met["commits"]
    statements = sorted({writes[len(writes) // 2], writes[-1]})
    return [
        *(f"statement {at}" for at in statements),
        f"commit {last}",
        f"kept {last}",
        *(("file 1",) if files else ()),
    ]


def is_kept(moment: str) -> bool:
    """Whether the deed was kept by then."""
    return moment.startswith(("kept", "file"))


@pytest.mark.parametrize("name", [step.name for step in CUT])
def test_a_deed_is_kept_whole_or_not_at_all(day: Day, name: str) -> None:
    """Whatever the moment, the shop's data are those before or after, and no paper is half written.

    What was not kept is said again and ends as if it had never been cut. An import has two deeds, the sheets and then
    what is looked for in them: cut between them the sheets are kept.
    """
    one = day.done[name]
    before, after = papers(one.before), papers(one.after)
    begun = kept(day.cut(one, "kept 1")) if one.step.rest else one.kept_before
    for moment in moments(one.met):
        folder = day.cut(one, moment)
        found, written = kept(folder), papers(folder)
        assert all(paper in (before.get(path), after.get(path)) for path, paper in written.items()), moment
        if is_kept(moment):
            assert found == one.kept_after, moment
            assert written.keys() >= before.keys(), moment
        else:
            assert found in (one.kept_before, begun), moment
            assert written == before, moment
        if moment.startswith("commit"):
            assert day.run(one, folder) == 0, day.host.told.read_text()
            if one.step.rest:
                assert day.host.run(folder, one.step.at, (one.step.rest,)) == 0, day.host.told.read_text()
            assert kept(folder) == one.kept_after and papers(folder) == after


@pytest.mark.parametrize("name", [step.name for step in CUT if step.again])
def test_a_deed_that_was_kept_is_not_done_twice(day: Day, name: str) -> None:
    """Nobody saw what was kept when the light went out: said again it changes nothing, and its papers can be had."""
    one = day.done[name]
    folder = day.cut(one, "file 1" if one.met["files"] else f"kept {one.met['commits']}")
    ended = day.run(one, folder)
    assert (ended, kept(folder)) == (0 if one.step.again == "changes nothing" else 1, one.kept_after)
    made = {path: paper for path, paper in papers(one.after).items() if path not in papers(one.before)}
    if one.step.prints:
        ends = {Path(path).suffix[1:]: path for path in made}
        assert day.host.run(folder, one.step.at, tuple(shlex.split(one.step.prints.format(**ends)))) == 0
    assert {path: papers(folder).get(path) for path in made} == made


def test_a_new_database_is_made_whole(day: Day) -> None:
    """Cut off while its tables are made, there are none of them, and the next command makes them all."""
    one = day.done["set up"]
    for moment in ("statement 40", "commit 1"):
        folder = day.cut(one, moment)
        connection = sqlite3.connect(folder / DATABASE)
        assert connection.execute("SELECT count(*) FROM sqlite_master").fetchone() == (0,), moment
        connection.close()
    assert kept(folder) == one.kept_before


def test_a_deed_waits_until_the_disk_has_it(tmp_path: Path) -> None:
    """SQLite, "PRAGMA synchronous": 2 is FULL, which waits for the disk at each deed that is kept."""
    with open_store(str(tmp_path / DATABASE)) as store, store.writing() as connection:
        assert connection.execute(text("PRAGMA synchronous")).scalar() == 2
