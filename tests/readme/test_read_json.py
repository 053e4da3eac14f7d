"""The JSON of `sourcing read --json` is what README says it is, key by key."""

import json
import re
from pathlib import Path
from typing import Any

from typer.testing import CliRunner

from sourcing.cli.main import app

README = Path(__file__).parents[2] / "README.md"
SHEET = """Valid from 2026-01-05
Part No;Net EUR;10+;Stock East;Stock West;Lead time;Weight
NW-40388;12,50;11,80;4;2;2-3 weeks;3
;;;;;;
NW-40389;12,5x;;1;1;;2
"""


def documented() -> dict[str, set[str]]:
    """README's table: for each object the keys named in back quotes."""
    text = README.read_text(encoding="utf-8").split("## Reading whatever a supplier sends")[1]
    rows = re.findall(
        r"^\| (`.*?) \| (.*) \|$", text.split("| key | what it holds |")[1].split("\n\n")[0], re.MULTILINE
    )
    found: dict[str, set[str]] = {"": set()}
    for keys, holds in rows:
        for key in re.findall(r"`([^`]+)`", keys):
            path, name = key.rpartition(".")[0], key.rpartition(".")[2].removesuffix("[]")
            found.setdefault(path.replace("[]", ""), set()).add(name)
            if key.endswith("[]") or "." in key:
                found.setdefault(key.replace("[]", ""), set()).update(re.findall(r"`([^`]+)`", holds))
    return found


def printed(value: Any, path: str, found: dict[str, set[str]]) -> None:
    """The keys of every object of the JSON, by the path to it."""
    if isinstance(value, list):
        for one in value:
            printed(one, path, found)
    elif isinstance(value, dict):
        found.setdefault(path, set()).update(value)
        for key, inner in value.items():
            printed(inner, f"{path}.{key}" if path else key, found)


def test_every_key_is_documented_and_every_documented_key_is_there(tmp_path: Path) -> None:
    sheet = tmp_path / "sheet.csv"
    sheet.write_text(SHEET, encoding="utf-8")
    result = CliRunner().invoke(app, ["read", str(sheet), "--json", "--currency", "USD"])
    reading = json.loads(result.stdout)
    found: dict[str, set[str]] = {}
    printed(reading, "", found)
    assert found == documented()
    assert reading["questions"][0]["code"] == "currency-differs"
    assert result.exit_code == 1
