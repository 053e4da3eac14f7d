"""The basket in README is taken as it stands, says what README shows, and README names every field there is."""

import json
import re
from pathlib import Path
from typing import Any

import pytest
from msgspec import inspect
from typer.testing import CliRunner

from sourcing.basics.basket import Basket
from sourcing.basics.plan import Plan
from sourcing.cli.main import app
from tests.readme.console_blocks import ROOT

TITLE = "## Compare and plan from a file\n"
README = (ROOT / "README.md").read_text(encoding="utf-8")
PART = README.partition(TITLE)[2].partition("\n## ")[0]

pytestmark = pytest.mark.skipif(not PART, reason="README does not speak of baskets yet")


def _block(kind: str) -> str:
    return PART.split(f"```{kind}\n")[1].split("```")[0]


def test_the_example_says_what_is_shown(tmp_path: Path) -> None:
    """The plan of the basket shown is the text shown."""
    path = tmp_path / "basket.json"
    path.write_text(_block("json"), encoding="utf-8")
    done = CliRunner().invoke(app, ["plan", "--file", str(path)])
    assert (done.exit_code, done.stdout) == (0, _block("text"))
    assert CliRunner().invoke(app, ["compare", "--file", str(path), "--need", "1"]).exit_code == 0


def _fields(kind: type) -> dict[str, set[str]]:
    """The fields of the value and of all in it, by the name of the kind."""
    found: dict[str, set[str]] = {}

    def go(node: Any) -> None:
        if isinstance(node, inspect.StructType) and node.cls.__name__ not in found:
            found[node.cls.__name__] = {field.name for field in node.fields}
            for field in node.fields:
                go(field.type)
        for inner in (*getattr(node, "types", ()), *getattr(node, "item_types", ())):
            go(inner)
        if isinstance(node, inspect.VarTupleType):
            go(node.item_type)

    go(inspect.type_info(kind))
    return found


def test_every_field_of_a_basket_is_named() -> None:
    """In back quotes in the table of fields."""
    table = PART.split("| place | fields |")[1].split("\n\n")[0]
    named = set(re.findall(r"`([a-z_0-9]+)`", table))
    missing = {kind: sorted(fields - named) for kind, fields in _fields(Basket).items() if fields - named}
    assert not missing
    known = {name for fields in _fields(Basket).values() for name in fields}
    assert named <= known, "README names what is no field"


def test_every_key_of_the_answer_is_named() -> None:
    """Those of a plan and of its orders; what offers hold is in the table of fields."""
    table = PART.split("| key | what it holds |")[1].split("\n\n")[0]
    named = set(re.findall(r"`([a-z_]+)(?:\[\])?`", table)) | set(re.findall(r"\.([a-z_]+)", table))
    fields = _fields(Plan)
    for kind in (
        "Plan",
        "PlannedOrder",
        "LandedOrder",
        "LandedItem",
        "OrderItem",
        "CostLine",
        "Alternative",
        "FrontPoint",
    ):
        assert not fields[kind] - named, kind


def test_the_example_is_json_a_person_can_read() -> None:
    """The shop first, then what is offered, then what is needed."""
    assert list(json.loads(_block("json"))) == [
        "currency",
        "at",
        "shop",
        "suppliers",
        "rates",
        "offers",
        "needs",
        "wishes",
    ]
