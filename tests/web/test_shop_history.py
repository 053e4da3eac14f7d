"""The page of all deeds: newest first, by person, thing and day, page by page."""

from datetime import timedelta

from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, ORDERED, OWNER, TECHNICIAN, Browser


def _many(app: Flask, count: int) -> None:
    for at in range(count):
        desk = Desk(store=app.config[STORE], at=NOW + timedelta(minutes=at), who=OWNER)
        with desk.writing("count") as pen:
            pen.note("shop", f"deed number {at} of many")


def test_long_histories_are_paged(app: Flask, owner: Browser) -> None:
    """Fifty rows a page, the newest first; a page beyond the last is the last."""
    _many(app, 60)
    first, second = owner.get("/history?about=shop"), owner.get("/history?about=shop&page=2")
    assert "Rows 1 to 50 of 61" in first and "Rows 51 to 61 of 61" in second
    assert first.index("number 59 of") < first.index("number 58 of") and "number 9 of" not in first
    assert "number 9 of" in second and "Rows 51 to 61" in owner.get("/history?about=shop&page=99")


def test_the_history_is_narrowed(owner: Browser) -> None:
    """By person, by what it is about, by days with both ends."""
    of_technician = owner.get(f"/history?who={TECHNICIAN}")
    assert "Answer taken down" in of_technician and f"<strong>{CLERK}</strong>" not in of_technician
    assert f"<strong>{TECHNICIAN}</strong>, {ORDERED}" in owner.get(f"/history?about={ORDERED}")
    assert "DN-88213" in owner.get("/history?since=2026-01-15&until=2026-01-15")
    assert "DN-88213" not in owner.get("/history?until=2026-01-14")
    assert "Nothing of that was done" in owner.get("/history?about=nothing")
    assert owner.client.get("/history?since=soon").status_code == 409


def test_the_file_has_every_deed(owner: Browser) -> None:
    """Oldest first."""
    text = owner.get("/history.csv")
    assert text.startswith('"At","Who"') and text.index("first log-in") < text.index("DN-88213")
