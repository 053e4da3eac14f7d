"""Who may import whom, held against the code's own imports."""

import ast
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[2] / "sourcing"
STEPS = ("sheets", "matching", "landed_cost", "choosing", "quoting", "ordering", "margins")

ALLOWED: dict[str, set[str]] = {
    "basics": set(),
    **{step: {"basics"} for step in STEPS},
    "storage": {"basics"},
    "documents": {"basics"},
    "actions": {"basics", "storage", *STEPS},
    "cli": {"basics", "actions", "documents", "web"},  # for `sourcing serve` alone
    "web": {"basics", "actions", "documents"},
}

PAGE_WORDS = "page_words.py"
"""What the counter's pages say with values in it; their templates are otherwise Flask's business."""

WORLD = {
    "os",
    "pathlib",
    "shutil",
    "subprocess",
    "socket",
    "urllib",
    "http",
    "sqlite3",
    "sqlalchemy",
    "time",
    "tempfile",
}
"""What a step may not touch: file, clock, network, database."""


KEEPS_QUIET = "quiet.py"
"""The compiled reader writes to the error output by itself; keeping it quiet is all this module does."""


def modules() -> list[Path]:
    """Every module of the package but what a wheel carries along and generated migrations."""
    return [file for file in PACKAGE.rglob("*.py") if "_files" not in file.parts]


def folder_of(file: Path) -> str:
    """The folder of the layout a module lives in; blank for the package itself."""
    parts = file.relative_to(PACKAGE).parts
    return parts[0] if len(parts) > 1 else ""


def imported(file: Path) -> Iterator[str]:
    """Dotted names of everything imported anywhere in the module, relative ones made absolute."""
    package = ["sourcing", *file.relative_to(PACKAGE).parts[:-1]]
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (name.name for name in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = package[: len(package) - node.level + 1] if node.level else []
            stem = ".".join([*base, *([node.module] if node.module else [])])
            yield stem
            yield from (f"{stem}.{name.name}" for name in node.names)


@pytest.mark.parametrize("file", modules(), ids=lambda file: str(file.relative_to(PACKAGE)))
def test_imports_run_one_way(file: Path) -> None:
    """Steps never import one another; the world stays at the edges."""
    here = folder_of(file)
    for name in imported(file):
        parts = name.split(".")
        if parts[0] == "sourcing" and len(parts) > 1 and here:
            there = parts[1]
            if there in ALLOWED and there != here:
                assert there in ALLOWED[here], f"{here} must not import {name}"
        if here == "basics" or here in STEPS:
            excused = parts[0] == "os" and file.name == KEEPS_QUIET
            assert parts[0] not in WORLD or excused, f"{here} must not touch {parts[0]}"


def test_only_documents_use_templates() -> None:
    """Jinja2 stands in one folder, SQLAlchemy in storage and where an action passes a connection on."""
    for file in modules():
        names = {name.split(".")[0] for name in imported(file)}
        assert "jinja2" not in names or folder_of(file) == "documents" or file.name == PAGE_WORDS, file
        assert "sqlalchemy" not in names or folder_of(file) in ("storage", "actions"), file


def test_no_clock_is_read_below_the_edge() -> None:
    """Today is an argument: .now() and .today() stand in the command line only."""
    for file in modules():
        if folder_of(file) != "cli":
            text = file.read_text(encoding="utf-8")
            assert ".now(" not in text and ".today(" not in text, file


@pytest.mark.parametrize("start", ["import sourcing", "import sourcing.cli.main"])
def test_start_up_loads_no_pandas_and_no_web_framework(start: str) -> None:
    """In a fresh interpreter."""
    heavy = ["pandas", "numpy", "flask", "starlette", "sqlalchemy", "alembic", "openpyxl", "scipy", "holidays"]
    code = f"{start}; import sys; print([name for name in {heavy!r} if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "[]"


def test_top_level_is_exactly_what_was_agreed() -> None:
    """Seven names; hidden ones and what tools leave behind do not count."""
    root = PACKAGE.parent
    listed = subprocess.run(["git", "ls-files"], cwd=root, capture_output=True, text=True, check=False)
    if listed.returncode:
        pytest.skip("not a checkout")
    top = {line.split("/")[0] for line in listed.stdout.splitlines()}
    shown = {name for name in top if not name.startswith(".")}
    agreed = {"README.md", "DEVELOPERS.md", "pyproject.toml", "sourcing", "templates", "tests", "demo_prices"}
    assert shown <= agreed
