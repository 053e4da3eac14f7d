"""Text from outside stays text on every page and in every file: a world in which all that people typed is hostile.

What is tried follows OWASP's pages on cross-site scripting and CSV injection, and Unicode Standard Annex 9.
"""

import csv
import io
import json
import sqlite3
from collections.abc import Iterator
from html.parser import HTMLParser
from itertools import cycle
from pathlib import Path
from zipfile import is_zipfile

import pytest
from flask import Flask
from openpyxl import load_workbook

from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web.canaries import Crawl
from tests.web.linked import customer, made
from tests.web.world import NOW, QUOTED, logged_in, new_database

NASTY = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "javascript:alert(1)",
    "{{7777*7}}${7777*7}",
    "'-alert(1)-'",
    "</style><svg onload=alert(1)>",
    "\u202egnirts",
    "' autofocus onfocus='alert(1)",
)
ALWAYS = "<b onclick=alert(1)>\" onfocus=alert(1) x='"
"""Behind every text, so that one page of a kind is enough to find where it is not escaped."""

LIVE = '=HYPERLINK("http://example.invalid","x")'

IN_BODIES = {
    *("name", "telephone", "email", "description", "complaint", "title", "found", "why", "if_declined", "words"),
    *("source", "seen_by", "returns", "note", "placed_by", "supplier_name", "supplier_note", "shop_name", "serial"),
    *("received_by", "said_by", "taken_by", "who", "terms_text", "cautions", "address", "component"),
}
"""Fields of kept bodies that people type."""

BODIES = ("jobs", "quote_revisions", "purchase_orders", "receipts", "promises", "supplier_terms", "shop_settings")

COLUMNS = {
    "offers": ("description", "lead_text", "note"),
    "our_parts": ("name", "size", "note"),
    "statements": ("source", "condition", "doubt", "stated_by"),
    "statement_events": ("reason", "file", "who"),
    "approvals": ("who", "how", "taken_by", "contact", "words"),
    "deeds": ("who", "detail"),
    "sheets": ("imported_by",),
    "exchange_rates": ("source",),
}


def _hostile(path: Path) -> None:
    """Put harm behind every text, and a live formula before every fourth."""
    nasty = cycle(NASTY)

    def marred(text: str | None) -> str | None:
        one = next(nasty)
        return text and (f"{LIVE} {text} {ALWAYS}" if one == NASTY[3] else f"{text} {one} {ALWAYS}")

    with sqlite3.connect(path) as store:
        store.create_function("marred", 1, marred)
        store.create_function("marred_body", 1, lambda body: json.dumps(_in_body(json.loads(body), marred)))
        for table, columns in COLUMNS.items():
            for column in columns:
                store.execute(f"update {table} set {column} = marred({column}) where rowid % 5 < 4")
        for table in BODIES:
            store.execute(f"update {table} set body = marred_body(body)")
    store.close()


def _in_body(body: object, marred: object, key: str = "") -> object:
    if isinstance(body, dict):
        return {name: _in_body(one, marred, name) for name, one in body.items()}
    if isinstance(body, list):
        return [_in_body(one, marred, key) for one in body]
    return marred(body) if isinstance(body, str) and key in IN_BODIES and callable(marred) else body


@pytest.fixture(scope="module")
def app(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Flask]:
    """The counter over the hostile world."""
    path = new_database(Path(tmp_path_factory.mktemp("hostile")))
    _hostile(path)
    one = make_app(CounterSetup(database=str(path), clock=lambda: NOW))
    one.config["TESTING"] = True
    yield one
    one.config[STORE].close()


class Harm(HTMLParser):
    """Collects what no page may have: scripts that are not ours, handlers, styles, addresses that run or lead away."""

    ADDRESSES = ("href", "src", "action", "formaction", "data", "xlink:href", "poster")

    def __init__(self, text: str) -> None:
        super().__init__()
        self.found: list[str] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag of the page."""
        given = {name: value or "" for name, value in attrs}
        self.found += [f"{tag} {name}" for name in given if name.startswith("on") or name in ("style", "srcdoc")]
        if tag in ("script", "img", "svg", "iframe", "object", "embed", "base", "meta", "style"):
            self._check_active(tag, given)
        for name in self.ADDRESSES:
            if (
                name in given
                and not given[name].startswith(("/", "#", "?", "data:,", "tel:", "mailto:"))
                and given[name]
            ):
                self.found.append(f"{tag} {name}={given[name][:60]}")

    def _check_active(self, tag: str, given: dict[str, str]) -> None:
        if tag in ("object", "embed", "base", "style") or (tag == "script" and given.get("src", "")[:8] != "/static/"):
            self.found.append(tag)
        if tag == "img" and given.get("src") == "x":
            self.found.append("img of the data")


@pytest.fixture(scope="module")
def crawled(app: Flask) -> Crawl:
    """All the owner can reach, one address of each kind."""
    crawl = Crawl(logged_in(app, "owner"), most=1)
    crawl.from_pages("/", "/find?number=NW-40388", "/same-parts/number?number=NW-40388", "/search?for=Tilbrook")
    assert len(crawl.read) > 60
    return crawl


def test_no_page_runs_what_was_typed(crawled: Crawl) -> None:
    """No script, handler, style or address of any page comes from the data; no template is run; no mark turns text."""
    harm = {address: Harm(text).found for address, text in crawled.read.items() if "text/html" in text[:600]}
    assert {address: found for address, found in harm.items() if found and not _is_paper(address)} == {}
    assert [address for address, text in crawled.read.items() if "54439" in text] == []
    assert any("&lt;script&gt;alert(1)" in text for text in crawled.read.values())  # the harm was there
    assert [address for address, status in crawled.statuses.items() if status >= 500] == []


def _is_paper(address: str) -> bool:
    """Papers bring a style of their own, allowed by its hash; what is in them is looked at in the next test."""
    return ".html" in address or address.endswith("/paper-itself")


def test_papers_run_nothing_either(crawled: Crawl) -> None:
    """A frozen paper has its style and nothing else that acts."""
    papers = {address: text for address, text in crawled.read.items() if _is_paper(address)}
    assert papers
    for address, text in papers.items():
        assert [one for one in Harm(text).found if one != "style"] == [], address
        assert text.count("<style>") <= 1, address


def test_no_mark_turns_the_text_of_a_page(crawled: Crawl) -> None:
    """A right-to-left override would show a number or a name backwards."""
    pages = {address for address, text in crawled.read.items() if "text/html" in text[:600] and "\u202e" in text}
    assert pages == set()


def test_no_file_holds_a_live_formula(app: Flask, crawled: Crawl) -> None:
    """Cells of a CSV and of a workbook that came from outside are text."""
    owner = logged_in(app, "owner").client
    saved = [address for address in crawled.read if any(kind in address for kind in (".csv", ".xlsx"))]
    assert len(saved) > 5
    for address in saved:
        content = owner.get(address).get_data()
        cells = _in_workbook(content) if is_zipfile(io.BytesIO(content)) else _in_csv(content.decode("utf-8-sig"))
        assert [one for one in cells if "HYPERLINK" in one][:3] == [], address


def _in_workbook(content: bytes) -> list[str]:
    sheets = load_workbook(io.BytesIO(content)).worksheets
    return [str(cell.value) for sheet in sheets for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]


def _in_csv(text: str) -> list[str]:
    return [
        cell for row in csv.reader(io.StringIO(text)) for cell in row if cell[:1] in ("=", "+", "-", "@", "\t", "\r")
    ]


def test_the_customers_page_runs_nothing(app: Flask) -> None:
    """Titles, reasons and the shop's own sentences are text there too."""
    page = made(logged_in(app, "clerk"), QUOTED)
    text = customer(app).get(page)
    assert Harm(text).found == [] and "\u202e" not in text
    assert "&lt;script&gt;" in text or "onerror=alert" in text
