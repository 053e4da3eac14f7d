"""Sheets as browsers send them, read in this process where a test does not need one of its own."""

from io import BytesIO
from pathlib import Path

from flask import Flask

from sourcing.actions import sheet_sent
from sourcing.web import errands
from sourcing.web.sheet_desk import PLACE, SheetDesk
from tests.web.world import Browser

PLAIN = b"Part No,Description,Net,List\n" + b"".join(
    b"ZQ-%d,Skid shoe %d,%d.50,%d.00\n" % (at, at, at + 3, at + 6) for at in range(1, 9)
)


sheet_sent.FEW = 10_000
"""The sheets of these tests are short beside those of the demo; a test of that asks for the true figure."""


def in_hand(app: Flask) -> SheetDesk:
    """The counter's desk for sheets, with the reading done in this process."""
    found = app.extensions[PLACE]
    assert isinstance(found, SheetDesk)
    found.run = errands.do
    return found


def drop(app: Flask, browser: Browser, content: bytes, name: str, **fields: object) -> str:
    """Send a sheet and wait until it is read; the address of its page."""
    found = in_hand(app)
    before = set(found.sent)
    answer = browser.client.post(
        "/sheets",
        data={**browser.hidden("/sheets", "/sheets"), "sheets": (BytesIO(content), name), **fields},
        content_type="multipart/form-data",
    )
    assert answer.status_code == 303, answer.text[:3000]
    (new,) = set(found.sent) - before
    settle(app)
    return f"/sheets/sent/{new}"


def settle(app: Flask) -> None:
    """Wait until everything sent is read."""
    for one in app.extensions[PLACE].works.every():
        assert one.ended.wait(60), one.title


def page_of(browser: Browser, sent: str) -> str:
    """Where the page of a sheet leads once it is kept, and the page there."""
    answer = browser.client.get(sent, follow_redirects=True)
    assert answer.status_code == 200, answer.text[:3000]
    return answer.text


def held(app: Flask) -> list[Path]:
    """The files that are held."""
    return sorted(app.extensions[PLACE].held.folder.iterdir())
