"""A brand-new database: from the first visit to a shop that can quote, at the counter alone."""

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.settings_edit import settings_now
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web.world import NOW, OWNER, PASSWORDS, Browser

FIRST = {
    **{"shop_name": "Tilbrook Repairs", "currency": "usd", "locale": "en_US", "country": "us"},
    **{"labour_rate": "90", "technician_cost": "30.50", "multiplier": "1.60"},
}


@pytest.fixture
def bare(tmp_path: Path) -> Iterator[Flask]:
    """The counter over a database in which nothing was ever kept."""
    app = make_app(CounterSetup(database=str(tmp_path / "new.db"), clock=lambda: NOW))
    app.config["TESTING"] = True
    yield app
    app.config[STORE].close()


@pytest.fixture
def first(bare: Flask) -> Browser:
    """The owner, who has just made her log-in."""
    browser = Browser(bare)
    browser.send("/first-visit", name=OWNER, password=PASSWORDS[OWNER])
    return browser


def test_the_first_page_says_what_to_do(first: Browser) -> None:
    """And leads to both ways of setting up; nobody else's pages break."""
    assert "The shop is not set up yet" in first.get("/") and 'href="/shop"' in first.get("/")
    page = first.get("/shop")
    assert "/shop/begin" in page and "/shop/files" in page


def test_no_page_breaks_before_the_shop_is_set_up(bare: Flask, first: Browser) -> None:
    """Each is there, or says in a sentence what is missing."""
    rules = [rule for rule in bare.url_map.iter_rules() if "GET" in (rule.methods or ()) and not rule.arguments]
    for rule in rules:
        if rule.endpoint != "static":
            assert first.status(rule.rule) < 500, rule.rule


def test_a_small_form_sets_the_shop_up(bare: Flask, first: Browser) -> None:
    """Once; what is not filled in is not made up."""
    done = first.send("/shop/begin", **FIRST, tax_name="", tax_percent="")
    assert "The shop is set up" in done.text and "Tilbrook Repairs" in done.text
    found = settings_now(Desk(store=bare.config[STORE], at=NOW, who=OWNER))
    assert found and (found.settings.currency, found.settings.taxes) == ("USD", ())
    assert str(found.settings.markup_bands[0].multiplier) == "1.60"
    again = first.send("/shop/begin", **FIRST)
    assert again.status_code == 409 and "set up already" in again.text
    assert "not set up" not in first.get("/")


@pytest.mark.parametrize(
    ("field", "text", "told"),
    [
        ("multiplier", "", "markup_bands.1.multiplier"),
        ("multiplier", "0.5", "sold for less than it costs"),
        ("labour_rate", "", "labour_rate"),
        ("labour_rate", "90 dollars", "labour_rate"),
        ("currency", "dollars", "ISO 4217"),
        ("locale", "", "locale"),
        ("shop_name", "", "shop"),
        ("tax_percent", "6.5", "taxes.1.name"),
        ("country", "QQ", "QQ"),
    ],
)
def test_what_is_missing_or_wrong_is_told(first: Browser, field: str, text: str, told: str) -> None:
    """Nothing is kept; what was typed stands in the form again."""
    answer = first.send("/shop/begin", **{**FIRST, field: text})
    assert answer.status_code == 409 and told in answer.text
    assert field == "shop_name" or 'value="Tilbrook Repairs"' in answer.text
    assert "/shop/begin" in first.get("/shop")


def test_files_set_the_shop_up(first: Browser) -> None:
    """All four at once, as from a folder; the table of same parts too."""
    hidden = first.hidden("/shop/files", "/shop/files")
    names = ("shop.toml", "suppliers.toml", "rates.csv", "equivalence.xlsx")
    files = [(BytesIO((demo_folder() / name).read_bytes()), name) for name in names]
    done = first.client.post(
        "/shop/files", data={**hidden, "files": files}, content_type="multipart/form-data", follow_redirects=True
    )
    assert done.status_code == 200 and "Read shop.toml, suppliers.toml" in done.text
    assert "Stonegarth Trade Parts" in first.get("/terms") and "EUR" in first.get("/rates")
    assert "read shop.toml" in first.get("/history")


def test_no_file_is_told(first: Browser) -> None:
    """The form sent without one."""
    hidden = first.hidden("/shop/files", "/shop/files")
    answer = first.client.post("/shop/files", data=hidden, content_type="multipart/form-data")
    assert answer.status_code == 409 and re.search("no file was chosen", answer.text)
