"""Every text of the counter can be translated."""

from pathlib import Path

import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo
from flask import Flask

from sourcing.web import words
from tests.web.texts import TEMPLATE, WEB, messages, untranslatable
from tests.web.world import Browser

PAGES = sorted((WEB / "pages").rglob("*.html"))


@pytest.mark.parametrize("page", PAGES, ids=lambda page: str(page.relative_to(WEB)))
def test_no_text_stands_in_a_page_that_nobody_can_translate(page: Path) -> None:
    """Words stand in `_("...")` or in a trans block; only data stands bare."""
    assert list(untranslatable(page.read_text(encoding="utf-8"))) == []


def test_a_bare_text_is_found() -> None:
    """In the text, and in what is read out."""
    page = '<p title="Read out">{{ _("Fine") }} Bare words {% trans %}Fine{% endtrans %}</p>'
    assert list(untranslatable(page)) == ["Read out", "Bare words"]


def test_the_template_of_messages_is_current() -> None:
    """If this fails: python -m tests.web.texts --write."""
    assert TEMPLATE.read_text(encoding="utf-8") == messages()


def test_a_catalogue_is_used_where_the_browser_asks_for_it(
    app: Flask, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A German catalogue put in place is offered to who asks for German, and to nobody else."""
    catalogue = Catalog(locale="de")
    catalogue.add("Log in", "Anmelden")
    folder = tmp_path / "de" / "LC_MESSAGES"
    folder.mkdir(parents=True)
    with (folder / "counter.mo").open("wb") as file:
        write_mo(file, catalogue)
    monkeypatch.setattr(words, "FOLDER", tmp_path)
    words.catalogue.cache_clear()
    client = Browser(app).client
    german = client.get("/log-in", headers={"Accept-Language": "de-AT,de;q=0.9,en;q=0.5"}).text
    assert "Anmelden</h1>" in german and '<html lang="de">' in german
    other = client.get("/log-in", headers={"Accept-Language": "fr"}).text
    assert "Log in</h1>" in other and '<html lang="en">' in other
    words.catalogue.cache_clear()


def test_a_mark_that_turns_the_reading_direction_is_shown_inside_a_sentence_too(app: Flask) -> None:
    """As everywhere else on a page; and what looks like a tag stays text."""
    hostile = "5.00\u202e<b>"
    with app.test_request_context("/"):
        for page in ('{{ _("Job %(it)s", it=it) }}', "{% trans it=it %}Job {{ it }}{% endtrans %}", "{{ it }}"):
            made = app.jinja_env.from_string(page).render(it=hostile)
            assert "\u202e" not in made and "&lt;b&gt;" in made and "\ufffd" in made, page
        assert app.jinja_env.from_string("{{ ngettext('%(num)s day', '%(num)s days', 3) }}").render() == "3 days"
