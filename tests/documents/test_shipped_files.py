"""The templates and the demo's files are found in a wheel and in a checkout, and never in a stranger's folder."""

from pathlib import Path

import pytest

from sourcing.documents import shipped_files
from sourcing.documents.pages import environment, render
from sourcing.documents.shipped_files import NotShipped, demo_folder, template_folder


@pytest.fixture
def package(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty package in an empty place."""
    made = tmp_path / "sourcing"
    made.mkdir()
    monkeypatch.setattr(shipped_files, "PACKAGE", made)
    return made


def test_the_templates_are_found_here() -> None:
    assert {"paper.html", "quote.html", "order.html", "margins.html"} <= {
        one.name for one in template_folder().iterdir()
    }


def test_inside_the_package_comes_first(package: Path) -> None:
    inside, beside = package / "_files" / "demo_prices", package.parent / "demo_prices"
    beside.mkdir()
    (package.parent / "pyproject.toml").touch()
    assert demo_folder() == beside
    inside.mkdir(parents=True)
    assert demo_folder() == inside


def test_a_strangers_folder_beside_an_installed_package_is_not_taken(package: Path) -> None:
    (package.parent / "templates").mkdir()
    with pytest.raises(NotShipped, match=r"without its folder 'templates'.*bug of the program"):
        template_folder()


def test_every_template_escapes_and_none_may_lack_a_value() -> None:
    assert environment().autoescape is True
    made = environment().from_string("{{ words }}|{{ words|upper }}")
    assert made.render(words="<b>\u202e") == "&lt;b&gt;\ufffd|&lt;B&gt;\ufffd"
    from jinja2 import UndefinedError

    with pytest.raises(UndefinedError):
        render("order.html", language="en", number="PO-1")


def test_a_template_can_print_neither_a_float_nor_a_whole_value() -> None:
    made = environment().from_string("{{ thing }}")
    for thing in (0.1, ["a"], {"a": 1}, object(), None):
        with pytest.raises(TypeError, match="a template may print"):
            made.render(thing=thing)
