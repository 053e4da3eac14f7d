"""A shop for tests of the counter: the invented world of demo_prices/, four jobs, and three people who may log in.

Job 2026-0001 is ordered and partly received, 2026-0002 is approved but nothing is ordered, 2026-0003 is quoted and
waits for the customer, 2026-0004 is only taken in. It is made once in a process; every test gets a copy of the file.
"""

import re
import sqlite3
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime
from decimal import Decimal
from functools import cache
from pathlib import Path
from typing import Any

from argon2 import PasswordHasher
from flask import Flask
from flask.testing import FlaskClient
from werkzeug.test import TestResponse

from sourcing.actions import people
from sourcing.actions.answers import Spoken, record
from sourcing.actions.desk import open_desk
from sourcing.actions.import_sheets import Said, import_sheets
from sourcing.actions.jobs import take_in_job
from sourcing.actions.left_by_import import left_by_import
from sourcing.actions.orders import all_orders, place_orders
from sourcing.actions.people import add_somebody, first_owner
from sourcing.actions.quotes import write_quote
from sourcing.actions.receive import Delivery, receive
from sourcing.actions.setup import set_up
from sourcing.documents.quote_paper import quote_html
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web.quick_pages import CompiledOnce, addresses_built_once

people._hasher = cache(lambda: PasswordHasher(time_cost=1, memory_cost=64, parallelism=1))
"""Passwords of the test world are hashed in no time: a test logs in once or twice."""

Flask.jinja_options = {**Flask.jinja_options, "bytecode_cache": CompiledOnce()}
addresses_built_once()

NOW = datetime(2026, 1, 15, 10, 0)
MORNING, TELEPHONE = datetime(2026, 1, 13, 10, 15), datetime(2026, 1, 13, 11, 20)
ORDERING, DELIVERY = datetime(2026, 1, 13, 11, 40), datetime(2026, 1, 15, 9, 30)

OWNER, CLERK, TECHNICIAN = "Greta Lindqvare", "Oona Brandeth", "Piet Halloway-Rusk"
PASSWORDS = {
    OWNER: "violet gravel under ninety spoons",
    CLERK: "seven kettles beside a slow river",
    TECHNICIAN: "copper lantern walks past noon",
}
ROLES = {"owner": OWNER, "clerk": CLERK, "technician": TECHNICIAN}

ORDERED, APPROVED, QUOTED, TAKEN_IN = "2026-0001", "2026-0002", "2026-0003", "2026-0004"


@cache
def _made() -> Path:
    """The database of the world, whole in one file."""
    path = Path(tempfile.mkdtemp(prefix="counter-world-")) / "shop.db"
    morning = open_desk(str(path), MORNING, CLERK)
    first_owner(open_desk(str(path), MORNING, OWNER), OWNER, PASSWORDS[OWNER])
    add_somebody(morning, CLERK, "clerk", PASSWORDS[CLERK])
    add_somebody(morning, TECHNICIAN, "technician", PASSWORDS[TECHNICIAN])
    set_up(morning, demo_folder())
    left_by_import(morning, import_sheets(morning, [demo_folder()], Said()))
    for _ in (ORDERED, APPROVED, QUOTED, TAKEN_IN):
        take_in_job(morning, demo_folder() / "job.toml")
    for job in (ORDERED, APPROVED, QUOTED):
        write_quote(morning, job, quote_html)
    _answered_and_ordered(str(path))
    morning.store.close()
    return path


def _answered_and_ordered(path: str) -> None:
    for job in (ORDERED, APPROVED):
        words = Spoken(yes=("agreed", "A", "B"), no=("C",), who="Maud Tilbrook", how="telephone", contact="555-0142")
        record(open_desk(path, TELEPHONE, TECHNICIAN), job, words)
    place_orders(open_desk(path, ORDERING, CLERK), [ORDERED])
    desk = open_desk(path, DELIVERY, CLERK)
    order = next(one for one in all_orders(desk, ORDERED) for line in one.lines if line.part == "BRG-IDLER")
    receive(desk, order.number, Delivery(paper="DN-88213", freight=Decimal(0)))


def new_database(folder: Path) -> Path:
    """A copy of the world's database in that folder."""
    path = folder / "shop.db"
    with sqlite3.connect(_made()) as made, sqlite3.connect(path) as copy:
        made.backup(copy)
    made.close()
    copy.close()
    return path


@contextmanager
def counter(folder: Path, now: datetime = NOW, **setup: Any) -> Iterator[Flask]:
    """The counter over a copy of the world."""
    app = make_app(CounterSetup(database=str(new_database(folder)), clock=lambda: now, **setup))
    app.config["TESTING"] = True  # errors no handler takes are raised in the test
    try:
        yield app
    finally:
        app.config[STORE].close()


class Browser:
    """A visitor with cookies, who sends forms as a browser does: with all hidden fields of the page they stand on."""

    def __init__(self, app: Flask) -> None:
        self.client: FlaskClient = app.test_client()

    def get(self, address: str) -> str:
        """The page; it must be there."""
        answer = self.client.get(address)
        assert answer.status_code == 200, f"{address}: {answer.status}\n{answer.text[:2000]}"
        return answer.text

    def status(self, address: str) -> int:
        """The HTTP status of a page."""
        return self.client.get(address).status_code

    def send(self, page: str, to: str = "", **fields: object) -> TestResponse:
        """Open `page`, then send its form to `to` (left out: to itself) with these fields; redirects are followed."""
        return self.send_again(self.hidden(page, to or page), to or page, **fields)

    def hidden(self, page: str, to: str) -> dict[str, str]:
        """The hidden fields of the form of `page` that is sent to `to`."""
        forms = re.findall(r"<form[^>]*>.*?</form>", self.get(page), re.DOTALL)
        mine = [one for one in forms if 'method="post"' in one and _goes_to(one, page) == to]
        assert mine, f"{page} has no form that is sent to {to}"
        return dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', mine[0]))

    def send_again(self, hidden: dict[str, str], to: str, **fields: object) -> TestResponse:
        """Send a form whose hidden fields were read before, as the back button and a double click do."""
        return self.client.post(to, data={**hidden, **fields}, follow_redirects=True)


def _goes_to(form: str, page: str) -> str:
    action = re.match(r'<form[^>]* action="([^"]+)"', form)
    return action.group(1) if action else page


def logged_in(app: Flask, role: str) -> Browser:
    """A browser of somebody with that role."""
    browser = Browser(app)
    name = ROLES[role]
    hidden = browser.hidden("/log-in", "/log-in")
    answer = browser.client.post("/log-in", data={**hidden, "name": name, "password": PASSWORDS[name]})
    assert answer.status_code == 303, answer.text
    return browser
