"""A brand-new database: from the first visit to a shop that can quote, at the counter alone."""

import re
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
from flask import Flask
from werkzeug.test import TestResponse

from sourcing.actions import settings_file
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
        ("multiplier", "", "Price of a part: its cost times&#39; is missing"),
        ("multiplier", "0.5", "sold for less than it costs"),
        ("labour_rate", "", "An hour of labour, to the customer&#39; is missing"),
        ("labour_rate", "90 dollars", "An hour of labour, to the customer&#39; needs a number"),
        ("labour_rate", "78,50", "write 78.50 with a point"),
        ("currency", "dollars", "ISO 4217"),
        ("locale", "", "How days and numbers are written&#39; is missing"),
        ("locale", "zz", "no language and country we know"),
        ("shop_name", "", "Name of the shop&#39; is missing"),
        ("tax_percent", "6.5", "Name of the tax&#39; is missing"),
        ("country", "QQ", "QQ"),
    ],
)
def test_what_is_missing_or_wrong_is_told(first: Browser, field: str, text: str, told: str) -> None:
    """Nothing is kept; what was typed stands in the form again."""
    answer = first.send("/shop/begin", **{**FIRST, field: text})
    assert answer.status_code == 409 and told in answer.text
    assert field == "shop_name" or 'value="Tilbrook Repairs"' in answer.text
    assert "/shop/begin" in first.get("/shop")


def test_a_first_figure_far_from_usual_is_asked_about(first: Browser) -> None:
    """Where nothing stood before, what is usual stands beside it; said to be right, it is kept."""
    slip = {**FIRST, "multiplier": "160"}
    asked = first.send("/shop/begin", **slip)
    assert asked.status_code == 409 and "usual is 1 to 10" in asked.text and 'name="sure"' in asked.text
    assert "/shop/begin" in first.get("/shop")
    assert "The shop is set up" in first.send("/shop/begin", sure="yes", **slip).text


def test_files_with_a_figure_far_from_usual_are_asked_about(first: Browser) -> None:
    """None of them is kept before; the place in the file is named."""
    names = ("shop.toml", "suppliers.toml", "rates.csv")
    texts = {name: (demo_folder() / name).read_bytes() for name in names}
    texts["shop.toml"] = texts["shop.toml"].replace(b"multiplier = 1.40", b"multiplier = 140")
    texts["suppliers.toml"] = texts["suppliers.toml"].replace(b"charge = 14.95", b"charge = 1495")
    texts["rates.csv"] = texts["rates.csv"].replace(b"1.0850", b"10850")

    def send(**more: str) -> TestResponse:
        files = [(BytesIO(content), name) for name, content in texts.items()]
        data = {**first.hidden("/shop/files", "/shop/files"), "files": files, **more}
        return first.client.post("/shop/files", data=data, content_type="multipart/form-data", follow_redirects=True)

    asked = send()
    assert asked.status_code == 409 and 'name="sure"' in asked.text
    assert "shop.toml: &#39;markup_bands.5.multiplier&#39; is 140" in asked.text
    assert "suppliers.toml: stonegarth from" in asked.text and "is far from" in asked.text
    assert "/shop/begin" in first.get("/shop")
    assert send(sure="yes").status_code == 200 and "1495" in first.get("/suppliers.toml")
    assert send().status_code == 200, "what is kept already is not asked about again"


def test_what_to_do_is_said_once(first: Browser) -> None:
    """However many fields are wrong."""
    page = first.send("/shop/begin", **dict.fromkeys(FIRST, "")).text
    assert page.count("is missing") > 2 and page.lower().count("nothing was changed") == 1


def test_a_language_nobody_knows_closes_no_page(bare: Flask, first: Browser, monkeypatch: pytest.MonkeyPatch) -> None:
    """One that was kept before names were checked: it can still be corrected at the counter."""
    with monkeypatch.context() as before:
        before.setattr(settings_file, "known_locale", lambda name: name)
        first.send("/shop/begin", **{**FIRST, "locale": "zz"})
    assert first.status("/") == 200
    looked = first.send("/shop/change/papers", locale="en_GB", currency="USD", paper_size="", starts_on="2026-01-15")
    assert looked.status_code == 200 and "This would change" in looked.text, looked.text


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
    assert answer.status_code == 409 and re.search("No file was chosen", answer.text)
