"""Scripts of others are what the registry's packages hold, with their licences, and each is accounted for.

Source of the digests: `dist.integrity` of the npm registry, checked when they were vendored (see VERSIONS.md there).
"""

import hashlib
import re
from pathlib import Path

import pytest

import sourcing.web

VENDOR = Path(sourcing.web.__file__).parent / "static" / "vendor"
ROW = re.compile(r"^\| (\S+\.js) \| (.+?) (\S+), \S+ \| \S+, (\S+) \| ([0-9a-f]{64}) \|$", re.MULTILINE)
TOLD = ROW.findall((VENDOR / "VERSIONS.md").read_text(encoding="utf-8"))


@pytest.mark.parametrize(("name", "package", "version", "licence", "sha256"), TOLD, ids=[row[0] for row in TOLD])
def test_a_script_is_as_the_registry_holds_it(name: str, package: str, version: str, licence: str, sha256: str) -> None:
    """Not a byte differs; its version is in its name, its licence beside it names who gave it."""
    assert hashlib.sha256((VENDOR / name).read_bytes()).hexdigest() == sha256
    assert version in name and package.split(".")[0] in name
    assert len((VENDOR / licence).read_text(encoding="utf-8")) > 500


def test_nothing_else_is_vendored() -> None:
    """Every file of the folder stands in VERSIONS.md."""
    told = {name for row in TOLD for name in (row[0], row[3])} | {"VERSIONS.md"}
    assert {file.name for file in VENDOR.rglob("*") if file.is_file()} == told
    assert len(TOLD) == 1
