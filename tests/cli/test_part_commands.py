"""The commands of one part of ours: what they print, what they leave alone, one-sentence refusals."""

import json
from pathlib import Path

from tests.cli.running import sourcing

AT = "2026-01-13T10:15"


def test_a_shop_without_a_table_begins_by_commands(tmp_path: Path) -> None:
    """Part, statement, and the number is found; a change says what differs, what is left out stays."""

    def run(*words: str) -> tuple[int, str, str]:
        return sourcing(tmp_path, *words, at=AT)

    code, output, _ = run("table", "add-part", "PIN", "--name", "Shear pin", "--size", "B36", "--category", "belt")
    assert code == 0 and output.startswith("Our part PIN, Shear pin") and "The size reads as" in output
    assert run("table", "add", "ours:PIN", "same part", "Norrowby:NW-5", "--source", "his list")[0] == 0
    assert "Shear pin" in run("numbers", "NW-5")[1]
    looked = run("table", "change-part", "pin", "--note", "box of ten", "--look")
    done = run("table", "change-part", "pin", "--note", "box of ten", "--json")
    assert "note: '' becomes 'box of ten'" in looked[1] and json.loads(done[1])["part"]["size"] == "B36"
    code, _, errors = run("table", "add-part", "nw 5")
    assert (code, errors.count("\n")) == (1, 1) and "is a number of our part PIN already" in errors
    code, _, errors = run("table", "take-part-out", "PIN")
    assert code == 1 and "statement 1 names it" in errors
    run("table", "add-part", "BOLT")
    assert run("table", "take-part-out", "BOLT")[:2] == (0, "BOLT is no part of ours any more.\n")
