"""Customers' links in the test world: made by a person of the shop, opened by somebody without a log-in."""

import re

from flask import Flask
from werkzeug.test import TestResponse

from tests.web.world import QUOTED, TAKEN_IN, Browser

ADDRESS = re.compile(r"/q/[A-Za-z0-9_-]{43}")
HER = "Maud Tilbrook"


def links_page(job: str = QUOTED) -> str:
    """The page with the links of a job."""
    return f"/jobs/{job}/links"


def made(by: Browser, job: str = QUOTED, **fields: str) -> str:
    """The address of a new link, without the counter's own."""
    answer = by.send(links_page(job), **fields)
    assert answer.status_code == 200, answer.text
    found = ADDRESS.search(answer.text)
    assert found
    return found.group(0)


def made_of_another(by: Browser) -> str:
    """The same of another job, whose quote is written for it."""
    assert by.send(f"/jobs/{TAKEN_IN}/write-quote", need_by="2026-01-30").status_code == 200
    return made(by, TAKEN_IN)


def customer(app: Flask) -> Browser:
    """A browser nobody is logged in with."""
    return Browser(app)


def send(her: Browser, page: str, **fields: str) -> TestResponse:
    """Send answers as the page's button does; lines are given as line_A='approve'."""
    named = {key.replace("line_", "line-"): value for key, value in fields.items()}
    return her.send(page, **{"do": "send", "name": HER, **named})
