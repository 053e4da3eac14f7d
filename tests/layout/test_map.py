"""DEVELOPERS.md shows the package as it is: its map is the modules' own docstrings."""

from tests.layout.print_map import ROOT, with_map


def test_the_map_is_true() -> None:
    """If this fails: python tests/layout/print_map.py --write."""
    text = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
    assert with_map(text) == text
