"""What the counter has done by a process of its own: reading a sheet and comparing two, so that no page waits for it.

The process is started by `in_a_process` and gets one errand as JSON on its input; it writes a line of JSON for each
step and one for what came of it. It has the counter's rights and no more; a file that breaks it breaks nothing else.
"""

import os
import subprocess
import sys
import tempfile
import traceback
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from datetime import datetime
from pathlib import Path
from threading import Timer
from typing import Any, Literal

import msgspec

from ..basics.problem import Problem, Refused, refused
from ..basics.value import Value, from_json, to_json

MOST_MINUTES = 20
POLITE = 5
"""How much the process lets others go first (nice, where the system knows it)."""

Tell = Callable[[str], None]


class TakeIn(Value, frozen=True, kw_only=True, tag="take in"):
    """Keep the sheet held at `path`, or say what is asked. `said`: as JSON of `actions.import_sheets.Said`.

    `look`: show what every column is read as before anything is kept.
    """

    database: str
    at: datetime
    who: str
    path: str
    file: str
    said: str
    look: bool = False


class Compare(Value, frozen=True, kw_only=True, tag="compare"):
    """Compare two sheets of a supplier; all of it as a file in `folder`, named '<against>-<sheet>', of kind `kind`."""

    database: str
    at: datetime
    file: str
    supplier: str
    sheet: int
    against: int
    folder: str
    kind: Literal["csv", "xlsx"] = "csv"


class LookThrough(Value, frozen=True, kw_only=True, tag="look through"):
    """Look through the sheets that count for rows that may be parts of ours; `file` is what it is called."""

    database: str
    at: datetime
    who: str
    file: str


Errand = TakeIn | Compare | LookThrough
Runner = Callable[[Errand, Tell], bytes]
"""Does an errand and gives what came of it as JSON. Raises Refused."""


class Line(Value, frozen=True, kw_only=True):
    """A line the process writes: how far it is, or what came of it, or why not, or where a fault is told."""

    words: str = ""
    done: str = ""
    problems: tuple[Problem, ...] = ()
    fault: str = ""


def do(errand: Errand, tell: Tell) -> bytes:
    """Do it here and now: what came of it, as JSON."""
    if isinstance(errand, TakeIn):
        return _take_in(errand, tell)
    if isinstance(errand, LookThrough):
        return _look_through(errand, tell)
    return _compare(errand, tell)


def in_a_process(errand: Errand, tell: Tell) -> bytes:
    """The same in a process of its own. Refuses what breaks off and what takes too long."""
    for line in _lines(errand):
        if line.problems:
            raise Refused(*line.problems)
        if line.fault:
            print(f"sourcing serve: {type(errand).__name__}: details are in {line.fault}")
            break
        if line.done:
            return line.done.encode()
        tell(line.words)
    raise refused("reading-broke-off", found=errand.file)


def main() -> None:
    """The process: one errand in, lines out."""
    with suppress(AttributeError, OSError):
        os.nice(POLITE)
    errand = msgspec.json.decode(sys.stdin.buffer.read(), type=Errand)
    try:
        _write(Line(done=do(errand, lambda words: _write(Line(words=words))).decode()))
    except Refused as refusal:
        _write(Line(problems=refusal.problems))
    except Exception as error:
        _write(Line(fault=_kept(error)))


def _take_in(errand: TakeIn, tell: Tell) -> bytes:
    from ..actions.desk import open_desk
    from ..actions.import_sheets import Said
    from ..actions.sheet_sent import take_in_sent

    desk = open_desk(errand.database, errand.at, errand.who)
    with desk.store:
        content = Path(errand.path).read_bytes()
        return to_json(take_in_sent(desk, content, errand.file, from_json(errand.said, Said), tell, errand.look))


def _look_through(errand: LookThrough, tell: Tell) -> bytes:
    from ..actions.candidates import find_candidates
    from ..actions.desk import open_desk

    desk = open_desk(errand.database, errand.at, errand.who)
    with desk.store:
        return msgspec.json.encode(len(find_candidates(desk, tell=tell)))


def _compare(errand: Compare, tell: Tell) -> bytes:
    from ..actions.changes import sheet_changes
    from ..actions.desk import open_desk
    from ..actions.sheet_concerns import sheet_concerns
    from ..documents.changes import changes_csv, changes_xlsx
    from ..documents.changes_shown import changes_shown
    from ..documents.sheet_words import concern_words

    desk = open_desk(errand.database, errand.at, "the counter")
    with desk.store:
        tell(f"{errand.file}: comparing the two sheets")
        found = sheet_changes(desk, errand.supplier, errand.sheet, errand.against)
        ours = {place: concern_words(one) for place, one in sheet_concerns(desk, errand.sheet).items()}
    tell(f"{errand.file}: writing the file")
    path = Path(errand.folder) / f"{errand.against}-{errand.sheet}.{errand.kind}"
    path.write_bytes(changes_csv(found).encode() if errand.kind == "csv" else changes_xlsx(found))
    return to_json(changes_shown(found, ours))


def _lines(errand: Errand) -> Iterator[Line]:
    with _process() as process:
        assert process.stdin is not None and process.stdout is not None
        out_of_time = Timer(MOST_MINUTES * 60, process.kill)
        out_of_time.start()
        try:
            with suppress(BrokenPipeError):
                process.stdin.write(to_json(errand))
                process.stdin.close()
            for text in process.stdout:
                with suppress(msgspec.DecodeError):
                    yield from_json(text, Line)
        finally:
            was_in_time = out_of_time.is_alive()
            out_of_time.cancel()
    if not was_in_time:
        raise refused("reading-too-long", found=errand.file, minutes=MOST_MINUTES)


@contextmanager
def _process() -> Iterator["subprocess.Popen[bytes]"]:
    package = str(Path(__file__).parents[2])
    paths = os.pathsep.join(filter(None, (package, os.environ.get("PYTHONPATH", ""))))
    with subprocess.Popen(
        [sys.executable, "-m", __name__],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        env={**os.environ, "PYTHONPATH": paths, "PYTHONIOENCODING": "utf-8"},
    ) as process:
        try:
            yield process
        finally:
            process.kill()  # over already, but where its lines are no longer wanted


def _write(line: Line) -> None:
    sys.stdout.buffer.write(to_json(line) + b"\n")
    sys.stdout.buffer.flush()


def _kept(error: Exception) -> str:
    with tempfile.NamedTemporaryFile(
        "w", prefix="sourcing-fault-", suffix=".txt", delete=False, encoding="utf-8"
    ) as to:
        to.write("".join(traceback.format_exception(error)))
    return to.name


def decoded(result: bytes, kind: type[Any]) -> Any:
    """What came of an errand."""
    return from_json(result, kind)


if __name__ == "__main__":
    main()
