"""Runs commands of the program that kill themselves at a chosen moment, as a power cut would; a process of its own.

`python -m tests.journeys.cutting` answers a line of JSON for each line of JSON. Each command runs in a process forked
from this one, so that loading the program is paid once, and it ends itself with SIGKILL: nothing of Python is left to
tidy up. Where to cut: 'statement 7' is right before the seventh statement given to the database, 'commit 1' right
before the first deed is kept, 'kept 1' right after it, 'file 1' while the first file is written, half of it there, or
right before it is moved to its name, in the order met; blank: nowhere.
"""

import contextlib
import importlib
import io
import json
import os
import pkgutil
import signal
import subprocess
import sys
import tempfile
import traceback
from pathlib import Path
from typing import Any

import typer
from sqlalchemy import Engine, Pool, event

import sourcing
from sourcing.basics.problem import Refused
from sourcing.cli.main import app

COMMANDS = typer.main.get_command(app)
WRITES = ("INSERT", "UPDATE", "DELETE", "CREATE", "ALTER", "DROP")


class Meter:
    """Counts what a command does to database and files, and cuts it off at its moment."""

    def __init__(self, cut: str, folder: Path) -> None:
        self.cut = cut
        self.folder = folder
        self.statements: list[str] = []
        self.commits = 0
        self.kept = 0
        self.files: list[str] = []

    def listen(self) -> None:
        """From now on count."""
        event.listen(Engine, "before_cursor_execute", self._statement)
        event.listen(Engine, "commit", self._commit)
        event.listen(Pool, "checkin", self._checkin)
        sys.addaudithook(self._audit)

    def met(self) -> dict[str, Any]:
        """What was counted: numbers of the writing statements, counted from 1, deeds kept, files."""
        writes = [at for at, words in enumerate(self.statements, 1) if words.lstrip().upper().startswith(WRITES)]
        return {"writes": writes, "commits": self.commits, "files": self.files}

    def _statement(self, _connection: object, _cursor: object, words: str, *_more: object) -> None:
        self.statements.append(words)
        self._cut_at(f"statement {len(self.statements)}")

    def _commit(self, connection: Any) -> None:
        if connection.get_execution_options().get("sourcing_begin") == "IMMEDIATE":
            self.commits += 1
            self._cut_at(f"commit {self.commits}")

    def _checkin(self, *_what: object) -> None:
        """The connection is given back: what was to be kept is kept, but not yet folded into the one file."""
        if self.kept < self.commits:
            self.kept = self.commits
            self._cut_at(f"kept {self.kept}")

    def _audit(self, what: str, told: tuple[Any, ...]) -> None:
        if what == "open" and isinstance(told[0], str) and isinstance(told[1], str) and set(told[1]) & set("wax+"):
            self._file("open", told[0])
        elif what == "os.rename":
            self._file("move", str(told[1]))

    def _file(self, what: str, path: str) -> None:
        full = Path(path).absolute()
        if full.is_relative_to(self.folder):
            self.files.append(f"{what} {full.relative_to(self.folder)}")
            if what == "open" and self.cut == f"file {len(self.files)}":
                os.write(os.open(full, os.O_WRONLY | os.O_CREAT | os.O_TRUNC), b"half of")
            self._cut_at(f"file {len(self.files)}")

    def _cut_at(self, moment: str) -> None:
        if moment == self.cut:
            os.kill(os.getpid(), signal.SIGKILL)


class Host:
    """The process that runs the commands, seen from the tests."""

    def __init__(self, scratch: Path) -> None:
        self.told, self._met = scratch / "told.txt", scratch / "met.json"
        words = [sys.executable, "-m", "tests.journeys.cutting"]
        top = Path(__file__).parents[2]
        self._process = subprocess.Popen(words, cwd=top, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)

    def run(self, folder: Path, at: str, words: tuple[str, ...], cut: str = "") -> int:
        """Run a command in the folder, as if it were that moment; its exit code, -9 where it was cut off."""
        asked = {"folder": str(folder), "at": at, "words": words, "cut": cut}
        assert self._process.stdin and self._process.stdout
        self._process.stdin.write(json.dumps({**asked, "told": str(self.told), "met": str(self._met)}) + "\n")
        self._process.stdin.flush()
        return int(self._process.stdout.readline())

    def met(self) -> dict[str, Any]:
        """What the last command that came to its end did."""
        found: dict[str, Any] = json.loads(self._met.read_text())
        return found

    def close(self) -> None:
        """End it: it stops when nothing more is asked."""
        self._process.communicate()


def command(asked: dict[str, Any]) -> None:
    """Run one command in this process, which does not come back."""
    folder = Path(asked["folder"])
    os.chdir(folder)
    os.environ |= {"SOURCING_AT": asked["at"], "SOURCING_WHO": "Oona Brandeth", "SOURCING_DATABASE": "sourcing.db"}
    out = os.open(asked["told"], os.O_WRONLY | os.O_CREAT | os.O_TRUNC)
    os.dup2(out, 1)
    os.dup2(out, 2)
    sys.stdout, sys.stderr = os.fdopen(1, "w", encoding="utf-8"), os.fdopen(2, "w", encoding="utf-8")
    meter = Meter(asked["cut"], folder)
    meter.listen()
    code = _exit_code(asked["words"])
    met = meter.met()
    sys.stdout.flush()
    sys.stderr.flush()
    Path(asked["met"]).write_text(json.dumps(met))
    os._exit(code)


def _exit_code(words: list[str]) -> int:
    try:
        COMMANDS.main(words, standalone_mode=False)
    except Refused as refusal:
        print(*(one.sentence() for one in refusal.problems), sep="\n")
        return 1
    except Exception:
        traceback.print_exc()
        return 3
    return 0


def serve() -> None:
    """Answer each line with how the command ended: its exit code, or the signal below zero."""
    for line in sys.stdin:
        asked = json.loads(line)
        child = os.fork()
        if child == 0:
            command(asked)
        _, ended = os.waitpid(child, 0)
        print(os.waitstatus_to_exitcode(ended), flush=True)


def load() -> None:
    """Load every module of the program, and make a database, once for all the processes forked from this one."""
    for one in pkgutil.walk_packages(sourcing.__path__, "sourcing."):
        if "migrations" not in one.name:
            importlib.import_module(one.name)
    with tempfile.TemporaryDirectory() as folder, contextlib.redirect_stdout(io.StringIO()):
        COMMANDS.main(["jobs", "--database", f"{folder}/empty.db", "--at", "2026-03-02"], standalone_mode=False)


if __name__ == "__main__":
    load()
    serve()
