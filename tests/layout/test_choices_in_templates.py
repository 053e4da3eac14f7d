"""Every choice a template prints says what is printed otherwise: what is not said is refused when the page is made."""

from pathlib import Path

import pytest
from jinja2 import Environment, nodes

FOLDERS = ("templates", "sourcing/web/pages")
TEMPLATES = sorted(path for folder in FOLDERS for path in Path(folder).rglob("*.*") if path.is_file())


@pytest.mark.parametrize("path", TEMPLATES, ids=str)
def test_no_choice_is_left_open(path: Path) -> None:
    """'{{ x if y }}' prints nothing of its own accord in other places; here it is a fault where y does not hold."""
    tree = Environment(extensions=["jinja2.ext.i18n"]).parse(path.read_text(encoding="utf-8"))
    assert [one.lineno for one in tree.find_all(nodes.CondExpr) if one.expr2 is None] == []
