"""Every test that DEVELOPERS.md names exists."""

import re
from pathlib import Path

ROOT = Path(__file__).parents[2]


def test_every_test_named_for_developers_exists() -> None:
    """A table of what holds is worth nothing where the test behind it is gone."""
    named = set(re.findall(r"`(test_[a-z0-9_]+)`", (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")))
    there = {
        name
        for file in (ROOT / "tests").rglob("test_*.py")
        for name in re.findall(r"^def (test_\w+)", file.read_text(encoding="utf-8"), re.MULTILINE)
    }
    assert len(named) > 25
    assert sorted(named - there) == []
