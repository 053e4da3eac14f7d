"""The test world with costs that occur nowhere else, and a crawler that reads all a role can reach.

The suppliers' prices are changed in the store before anything is quoted, so that all that follows from them (landed
costs, orders, receipts, margins) is odd too. What a customer may see is subtracted from what is looked for.
"""

import json
import re
import sqlite3
from collections import deque
from collections.abc import Iterator
from contextlib import contextmanager
from decimal import Decimal
from functools import cache
from html.parser import HTMLParser
from io import BytesIO
from pathlib import Path
from tempfile import mkdtemp
from typing import Any, NamedTuple
from urllib.parse import parse_qsl, urlencode, urljoin, urlsplit
from zipfile import ZipFile, is_zipfile

import pytest
from flask import Flask
from werkzeug.test import TestResponse

from sourcing.actions.receive import Delivery
from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web import world
from tests.web.world import NOW, Browser

ODD = """update {table} set {column} = ({column} / 10000) * 10370 + 130000 where {column} is not null"""
"""Every price 3.7 % and 13 cents dearer, so that hardly one keeps its round cents (prices are kept in millionths)."""

DIFFERS = re.compile(r"\d+\.\d{2,}")


@cache
def _odd_world() -> Path:
    """The world's database made again over odd prices."""
    path = Path(mkdtemp(prefix="canary-world-")) / "shop.db"
    kept = world.left_by_import  # type: ignore[attr-defined]

    def with_odd_prices(desk: Any, done: Any) -> Any:
        with sqlite3.connect(desk.store.shown) as one:
            one.execute(ODD.format(table="offers", column="net_price"))
            one.execute(ODD.format(table="price_breaks", column="price"))
        one.close()
        return kept(desk, done)

    def dearer(**said: Any) -> Any:
        prices = {1: Decimal("131.47"), 3: Decimal("9.83")}
        charged = {"freight": Decimal("6.43"), "prices": prices, "supplier_total": Decimal("187.63")}
        return Delivery(**{**said, **charged})

    with pytest.MonkeyPatch.context() as patched:  # the same steps, with one more between, and a dearer paper
        patched.setattr(world, "left_by_import", with_odd_prices)
        patched.setattr(world, "Delivery", dearer)
        made = world._made.__wrapped__()
    made.rename(path)
    return path


@contextmanager
def odd_counter(folder: Path) -> Iterator[Flask]:
    """The counter over a copy of that world."""
    path = folder / "shop.db"
    with sqlite3.connect(_odd_world()) as made, sqlite3.connect(path) as copy:
        made.backup(copy)
    made.close()
    copy.close()
    app = make_app(CounterSetup(database=str(path), clock=lambda: NOW))
    app.config["TESTING"] = True
    try:
        yield app
    finally:
        app.config[STORE].close()


class Secrets(NamedTuple):
    """Amounts that must not be seen: what the shop pays, and what it earns."""

    costs: frozenset[str]
    margins: frozenset[str]
    suppliers: frozenset[str]


def secrets_of(path: Path) -> Secrets:
    """Looked up in the store itself, not in the program."""
    with sqlite3.connect(path) as one:
        quotes = [json.loads(body) for (body,) in one.execute("select body from quote_revisions")]
        papers = [json.loads(body) for table in ("purchase_orders", "receipts") for (body,) in _bodies(one, table)]
        names = [row for row in one.execute("select supplier, json_extract(body, '$.name') from supplier_terms")]
        offers = {_text(net) for (net,) in _offers_of(one)}
        asked = "select net_price from offers union select list_price from offers union select price from price_breaks"
        prices = {_text(price) for (price,) in one.execute(asked) if price}
    one.close()
    hidden = {
        text for quote in quotes for line in quote["lines"] if line["behind"] for text in _amounts(line["behind"])
    }
    shown = {text for quote in quotes for text in _amounts(_without_behind(quote))}
    hidden |= offers | {text for paper in papers for text in _amounts(paper)}
    margins = {str(one) for quote in quotes for one in _margins(quote)}
    return Secrets(
        frozenset(text for text in hidden - shown if _is_odd(text)),
        frozenset(text for text in margins - shown - hidden - prices if _is_odd(text)),
        frozenset(word for row in names for word in row),
    )


def _bodies(one: sqlite3.Connection, table: str) -> list[tuple[str]]:
    return one.execute(f"select body from {table}").fetchall()


def _offers_of(one: sqlite3.Connection) -> list[tuple[int]]:
    """Net prices of whatever is stated to be the same as something: all that finding a number may come upon."""
    known = "select left_key from statements union select right_key from statements"
    return one.execute(f"select net_price from offers where net_price > 0 and maker_number_key in ({known})").fetchall()


def _text(millionths: int) -> str:
    amount = Decimal(millionths) / 1_000_000
    return str(amount.quantize(Decimal("0.01")) if amount == amount.quantize(Decimal("0.01")) else amount.normalize())


def _amounts(body: object) -> Iterator[str]:
    """Every amount in a kept body, also those within its sentences."""
    if isinstance(body, dict):
        for one in body.values():
            yield from _amounts(one)
    elif isinstance(body, list):
        for one in body:
            yield from _amounts(one)
    elif isinstance(body, str):
        yield from DIFFERS.findall(body)


def _without_behind(quote: dict[str, Any]) -> dict[str, Any]:
    lines = [{key: one for key, one in line.items() if key != "behind"} for line in quote["lines"]]
    keep = {key: one for key, one in quote.items() if key in ("totals", "total", "taxes", "supplies", "labour")}
    return {**keep, "lines": lines}


def _margins(quote: dict[str, Any]) -> Iterator[Decimal]:
    """What is earned on the parts of each line, of the lines approved, and of all."""
    lines = [line for line in quote["lines"] if line["behind"]]
    earned = {
        one["label"]: Decimal(one["parts_price"]["amount"]) - Decimal(one["behind"]["cost"]["amount"]) for one in lines
    }
    yield from earned.values()
    yield sum(earned.values(), Decimal(0))
    yield sum((amount for label, amount in earned.items() if label != "C"), Decimal(0))


def _is_odd(text: str) -> bool:
    """Long enough to be no chance: at least three digits before the cents are counted, and no round cents."""
    return "." in text and len(text.replace(".", "").strip("0")) >= 4


AMOUNT = re.compile(r"(?<![\d.,])(\d+)[.,](\d+)(?!\d)(?![.,]\d)")
CENTS = re.compile(r"""(?<=["'=:])(\d{5,})(?=["',}])""")


def found_in(text: str, secrets: frozenset[str]) -> list[str]:
    """The secrets that stand in the text: as printed, with a comma, or in cents, also with more zeros behind."""
    stand = {f"{whole}.{part}" for whole, part in AMOUNT.findall(text)}
    cents = {written[:end] for written in CENTS.findall(text) for end in range(_end(written), len(written) + 1)}
    return [one for one in secrets if one in stand or one.replace(".", "").lstrip("0") in cents]


def _end(written: str) -> int:
    """From where on there are only zeros; amounts in cents of fewer than five digits are not looked for."""
    return max(len(written.rstrip("0")), 5)


class Page(HTMLParser):
    """What leads on from a page, and its forms."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.leads: list[str] = []
        self.forms: list[tuple[str, str, dict[str, str]]] = []
        self.feed(text)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Links, images, frames, styles and scripts; forms with the values their fields have."""
        has = {name: value or "" for name, value in attrs}
        self.leads += [has[name] for name in ("href", "src") if has.get(name)]
        if tag == "form":
            self.forms.append((has.get("method", "get"), has.get("action", ""), {}))
        elif tag in ("input", "select", "textarea", "button") and has.get("name") and self.forms:
            self.forms[-1][2].setdefault(has["name"], has.get("value", ""))


def readable(answer: TestResponse) -> str:
    """All text of an answer; a workbook is opened."""
    content = answer.get_data()
    if is_zipfile(BytesIO(content)):
        with ZipFile(BytesIO(content)) as book:
            return "\n".join(book.read(name).decode("utf-8", "replace") for name in book.namelist())
    heads = "\n".join(f"{name}: {value}" for name, value in answer.headers if name != "Content-Length")
    return heads + "\n" + content.decode("utf-8", "replace")


MOST_OF_A_KIND = 2
"""Addresses that differ only in their query or numbers: so many are read."""

NOT_SENT = ("/log-out", "/links/hand-over", "/my-password")
"""Forms that would end the crawl."""


class Crawl:
    """All that one browser can reach by links, and the forms it met."""

    def __init__(self, browser: Browser, most: int = MOST_OF_A_KIND) -> None:
        self.client, self.most = browser.client, most
        self.read: dict[str, str] = {}
        self.statuses: dict[str, int] = {}
        self.forms: dict[tuple[str, str], dict[str, str]] = {}
        self._kinds: dict[str, int] = {}

    def from_pages(self, *starts: str) -> None:
        """Read these and all they lead to."""
        waiting = deque(starts)
        while waiting:
            address = waiting.popleft()
            if address in self.read or not self._is_wanted(address):
                continue
            answer = self.client.get(address)
            self.statuses[address], self.read[address] = answer.status_code, readable(answer)
            if answer.is_json or answer.mimetype != "text/html":
                waiting.extend([answer.location] if answer.location else [])
                continue
            waiting.extend(self._leads(address, answer))

    def _leads(self, address: str, answer: TestResponse) -> list[str]:
        page = Page(answer.text)
        leads = [answer.location] if answer.location else []
        leads += [urljoin(address, one) for one in page.leads]
        for method, action, fields in page.forms:
            to = urljoin(address, action) if action else address
            if method == "post":
                self.forms.setdefault((to, ",".join(sorted(fields))), fields)
            else:
                leads.append(f"{urlsplit(to).path}?{urlencode(fields)}")
        return [one.partition("#")[0] for one in leads]

    def _is_wanted(self, address: str) -> bool:
        parts = urlsplit(address)
        if parts.netloc or parts.scheme or not address.startswith("/") or address.startswith("/static/"):
            return False
        words = ",".join(name for name, value in parse_qsl(parts.query) if value)
        kind = re.sub(r"\d+", "0", parts.path) + "?" + words
        self._kinds[kind] = self._kinds.get(kind, 0) + 1
        return self._kinds[kind] <= self.most

    def send_all(self, value: str) -> None:
        """Send every form met with this value in every field that has none of its own."""
        for (to, names), fields in list(self.forms.items()):
            if urlsplit(to).path.endswith(NOT_SENT):
                continue
            sent = {name: own if name in ("csrf_token", "do") else value for name, own in fields.items()}
            sent["once"] = f"{len(self.read)}-{value[:6]}"
            answer = self.client.post(to, data=sent)
            key = f"POST {to} {names} = {value[:12]}"
            self.statuses[key], self.read[key] = answer.status_code, readable(answer)
