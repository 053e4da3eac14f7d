"""Runs the command line as a person does: the whole of it, from the words typed to the exit code.

In this process, for starting Python many hundred times takes longer than all the commands do. `in_a_process` starts one
of its own, as the tests of README's commands, of `sourcing read` and of the demo do.
"""

import io
import os
import subprocess
import sys
from contextlib import redirect_stderr, redirect_stdout
from pathlib import Path
from unittest.mock import patch

from sourcing.cli.main import run


def sourcing(folder: Path, *words: str, at: str = "") -> tuple[int, str, str]:
    """Exit code, output and errors of a command run in the folder by Oona Brandeth, at that moment or now."""
    out, err = (io.TextIOWrapper(io.BytesIO(), encoding="utf-8", write_through=True) for _ in range(2))
    before, code = Path.cwd(), 0
    with patch.dict(os.environ, _environment(at), clear=True), patch.object(sys, "argv", ["sourcing", *words]):
        os.chdir(folder)
        try:
            with redirect_stdout(out), redirect_stderr(err):
                run()
        except SystemExit as end:
            code = end.code if isinstance(end.code, int) else 0
        finally:
            os.chdir(before)
    return code, _text(out), _text(err)


def in_a_process(folder: Path, *words: str, at: str = "") -> tuple[int, str, str]:
    """The same in a process of its own, which finds modules in the folder too."""
    done = subprocess.run(
        [sys.executable, "-c", "from sourcing.cli.main import run; run()", *words],
        cwd=folder,
        env=_environment(at) | {"PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    return done.returncode, done.stdout, done.stderr


def _environment(at: str) -> dict[str, str]:
    kept = {name: value for name, value in os.environ.items() if not name.startswith("SOURCING_")}
    return kept | {"SOURCING_WHO": "Oona Brandeth"} | ({"SOURCING_AT": at} if at else {})


def _text(stream: io.TextIOWrapper) -> str:
    kept = stream.buffer
    assert isinstance(kept, io.BytesIO)
    return kept.getvalue().decode("utf-8")
