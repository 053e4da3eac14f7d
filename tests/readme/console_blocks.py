"""The README's console blocks: run them, compare them, or write them anew (`python -m tests.readme.console_blocks`)."""

import os
import re
import subprocess
import sys
import tempfile
from pathlib import Path

ROOT = Path(__file__).parents[2]
BLOCK = re.compile(r"```console\n(.*?)```", re.DOTALL)


def run_blocks(text: str, folder: Path) -> str:
    """The text with every console block replaced by what its commands print now, run one after another in a folder."""
    here = folder

    def again(match: re.Match[str]) -> str:
        nonlocal here
        lines = []
        for line in match[1].splitlines():
            if line.startswith("$ "):
                lines.append(line)
                command = line[2:]
                if command.startswith("cd "):
                    here = here / command[3:]
                else:
                    lines.append(_printed(command, here))
        return "```console\n" + "\n".join(lines) + "\n```"

    return BLOCK.sub(again, text)


def _printed(command: str, folder: Path) -> str:
    """Standard output and error of a `sourcing` command, by this interpreter."""
    runner = f'"{sys.executable}" -c "from sourcing.cli.main import run; run()"'
    keep = {name: value for name, value in os.environ.items() if not name.startswith("SOURCING_")}
    environment = {**keep, "PYTHONPATH": str(ROOT), "SOURCING_WHO": "Oona Brandeth", "PYTHONIOENCODING": "utf-8"}
    shell = command.replace("sourcing", runner, 1)
    done = subprocess.run(
        shell, shell=True, cwd=folder, env=environment, capture_output=True, text=True, encoding="utf-8", check=False
    )
    return (done.stdout + done.stderr).rstrip("\n")


if __name__ == "__main__":
    readme = ROOT / "README.md"
    with tempfile.TemporaryDirectory() as scratch:
        readme.write_text(run_blocks(readme.read_text(encoding="utf-8"), Path(scratch)), encoding="utf-8")
