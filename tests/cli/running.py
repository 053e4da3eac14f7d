"""Runs the command line as a person does, in a process of its own."""

import os
import subprocess
import sys
from pathlib import Path


def sourcing(folder: Path, *words: str, at: str = "") -> tuple[int, str, str]:
    """Exit code, output and errors of a command run in the folder by Oona Brandeth, at that moment or now."""
    environment = {name: value for name, value in os.environ.items() if not name.startswith("SOURCING_")}
    environment |= {"SOURCING_WHO": "Oona Brandeth", "PYTHONIOENCODING": "utf-8"}
    if at:
        environment["SOURCING_AT"] = at
    done = subprocess.run(
        [sys.executable, "-c", "from sourcing.cli.main import run; run()", *words],
        cwd=folder,
        env=environment,
        capture_output=True,
        text=True,
        encoding="utf-8",
        check=False,
    )
    return done.returncode, done.stdout, done.stderr
