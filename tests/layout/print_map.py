"""Print the map of the package from its module docstrings; `--write` puts it into DEVELOPERS.md."""

import ast
import sys
from pathlib import Path

ROOT = Path(__file__).parents[2]
PACKAGE = ROOT / "sourcing"
START, END = "<!-- map -->", "<!-- end of map -->"
WAY = (
    "basics", "sheets", "matching", "landed_cost", "choosing", "quoting", "ordering", "margins",
    "actions", "storage", "documents", "cli", "web",
)  # fmt: skip
"""Folders in the order data takes."""


def first_line(file: Path) -> str:
    """The first line of a module's docstring."""
    text = ast.get_docstring(ast.parse(file.read_text(encoding="utf-8"))) or ""
    return text.splitlines()[0] if text else ""


def package_map() -> str:
    """Folders and modules with one line each, as a fenced block."""
    lines = []
    for folder in WAY:
        lines.append(f"sourcing/{folder}/  {first_line(PACKAGE / folder / '__init__.py')}")
        for file in sorted((PACKAGE / folder).rglob("*.py")):
            name = file.relative_to(PACKAGE / folder).as_posix()
            if name != "__init__.py" and "versions/" not in name:
                lines.append(f"    {name.removesuffix('/__init__.py')}  {first_line(file)}")
    return "\n".join(["```text", *lines, "```"])


def with_map(text: str) -> str:
    """The document with its map made anew."""
    before, rest = text.split(START)
    _, after = rest.split(END)
    return f"{before}{START}\n{package_map()}\n{END}{after}"


if __name__ == "__main__":
    document = ROOT / "DEVELOPERS.md"
    if "--write" in sys.argv:
        document.write_text(with_map(document.read_text(encoding="utf-8")), encoding="utf-8")
    else:
        print(package_map())
