"""The ledger after a whole job: every command that changed something stands in it, in order, with who and when.

Two people take turns through a worked day, from the empty folder to the bill; what was entered once stays as it is.
"""

import ast
import shlex
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest
from sqlalchemy import Engine, event

import sourcing
from sourcing.actions.history import history
from sourcing.basics.deed import Deed
from tests.journeys.cutting import COMMANDS
from tests.journeys.power_cut_day import DAY, JOB, Step, begin
from tests.journeys.small_shop import desk_at

PEOPLE = ("Oona Brandeth", "Piet Halloway-Rusk")
AFTER = datetime(2026, 3, 12, 9, 0)
DEEDS = {
    "setup": ["set up"],
    "import": ["import", "import", "find candidates", "find candidates"],
    "job": ["take in job"],
    "quote": ["quote"],
    "given": ["give quote"],
    "answer": ["answer"],
    "take-back": ["take back"],
    "order": ["order"],
    "confirm": ["confirm order"],
    "decide": ["decide", "decide"],  # the way out, and the line it cancelled
    "change-order": ["change order"],
    "cancel-order": ["cancel order"],
    "promise": ["promise"],
    "receive": ["receive"],
    "receive-again": ["set receipt aside"],
    "send-back": ["send back"],
    "gave-away": ["gave an extra away"],
    "bill": ["write bill"],
    "undo": ["undo import"],
}
LOOKS = (
    "jobs --all", f"show-job {JOB}", f"answers {JOB}", f"revisions {JOB}", f"quote {JOB} --owner", f"alarms {JOB}",
    f"quote {JOB} --revision 1 --html again.html", "orders", "order-paper PO-2026-0002", "promises", "going-back",
    "differences PO-2026-0003", f"deposit {JOB}", f"gave-away {JOB}", f"bill {JOB} --html bill.html",
    f"margins {JOB}", f"history {JOB}",
)  # fmt: skip


def deeds_of(step: Step) -> list[str]:
    """The deeds a command enters, oldest first."""
    command = step.words.split()[0]
    if command == "deposit":
        return ["take deposit" if "--taken" in step.words else "give back deposit"]
    return ["change job"] if "--replaces" in step.words else DEEDS[command]


def every(folder: Path) -> tuple[Deed, ...]:
    """The whole ledger."""
    return history(desk_at(folder, AFTER), None)


@pytest.fixture
def statements() -> Iterator[list[str]]:
    """All that is told to any database from now on."""
    told: list[str] = []

    def hear(_connection: object, _cursor: object, words: str, *_more: object) -> None:
        told.append(words.split(maxsplit=1)[0].upper() if "deeds" in words else "")

    event.listen(Engine, "before_cursor_execute", hear)
    yield told
    event.remove(Engine, "before_cursor_execute", hear)


def test_every_change_is_entered_in_order_and_none_is_touched_again(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], statements: list[str]
) -> None:
    """Each command adds its deeds to the end, signed by whoever gave it; a look adds nothing."""
    folder = tmp_path / "shop"
    begin(folder)
    monkeypatch.chdir(folder)
    before: tuple[Deed, ...] = ()
    for at, step in enumerate(DAY):
        who = PEOPLE[at % 2]
        monkeypatch.setenv("SOURCING_AT", step.at)
        monkeypatch.setenv("SOURCING_WHO", who)
        COMMANDS.main(shlex.split(step.words), standalone_mode=False)
        now = every(folder)
        new = now[len(before) :]
        assert now[: len(before)] == before, step.words
        assert [one.deed for one in new] == deeds_of(step), step.words
        assert {(one.at, one.who) for one in new} == {(datetime.fromisoformat(step.at), who)}, step.words
        before = now
    for words in LOOKS:
        COMMANDS.main(shlex.split(words), standalone_mode=False)
    assert every(folder) == before
    of_job = history(desk_at(folder, AFTER), JOB)
    assert of_job == tuple(one for one in before if one.subject == JOB)
    assert [one.at for one in of_job] == sorted(one.at for one in of_job)
    assert (of_job[0].deed, of_job[-1].deed) == ("take in job", "write bill")
    capsys.readouterr()
    COMMANDS.main(["history", JOB], standalone_mode=False)
    printed = capsys.readouterr().out.splitlines()
    assert len(printed) == len(of_job)
    for line, one in zip(printed, of_job, strict=True):
        assert line.startswith(f"{one.at:%Y-%m-%d %H:%M}  {one.who}: {one.deed}") and one.detail in line
    assert set(statements) == {"", "CREATE", "INSERT", "SELECT"}


def test_only_one_module_adds_to_the_ledgers_table_and_none_changes_it() -> None:
    """No other code of the program names it, but for the list of tables and the steps from one version to the next."""
    names: dict[str, set[str]] = {}
    for path in sorted(Path(sourcing.__path__[0]).rglob("*.py")):
        if "migrations" in path.parts or "web" in path.parts:  # pages know no table
            continue
        tree = ast.parse(path.read_text(encoding="utf-8"))
        used = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
        used |= {one.name for node in ast.walk(tree) if isinstance(node, ast.ImportFrom) for one in node.names}
        if "DEEDS" in used:
            names[path.name] = used
    names.pop("job_tables.py")
    assert set(names) == {"deeds.py", "deed_rows.py"}
    assert {"insert", "select"} <= names["deeds.py"] and not names["deeds.py"] & {"update", "delete", "text"}
    for reads in set(names) - {"deeds.py"}:
        assert not names[reads] & {"insert", "update", "delete", "text"}, reads
