"""Photos on the customer's page, and what she sees when the shop has moved on."""

from datetime import timedelta
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.jobs import change_job_from, take_in_job
from sourcing.actions.quotes import write_quote
from sourcing.basics.person import Photo
from sourcing.documents.quote_paper import quote_html
from sourcing.documents.shipped_files import demo_folder
from sourcing.storage.links import add_photo, take_photos_out
from sourcing.web.desks import STORE
from tests.documents.html_reader import Page
from tests.web.linked import customer, made, send
from tests.web.world import CLERK, NOW, QUOTED, Browser

CAPTION = '"><script>alert(1)</script>'
JPEG = b"\xff\xd8\xff\xe0 a picture"


def desk(app: Flask, minutes: int = 0) -> Desk:
    """The clerk's desk beside the page."""
    return Desk(store=app.config[STORE], at=NOW + timedelta(minutes=minutes), who=CLERK)


def job_file(tmp_path: Path, *changes: tuple[str, str]) -> Path:
    """The world's job with its file edited, and parts allowed to come later than they do now."""
    text = (demo_folder() / "job.toml").read_text(encoding="utf-8")
    for old, new in (("need_by = 2026-01-16", "need_by = 2026-01-30"), *changes):
        assert old in text
        text = text.replace(old, new, 1)
    path = tmp_path / "job.toml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.fixture
def pictured(app: Flask, clerk: Browser, tmp_path: Path) -> tuple[str, str, int, int]:
    """A job whose line A cites one of its two photos: its number, its customer's page, the two photos' numbers."""
    add_on = 'title = "Replace the bent belt keepers (pair)"\n'
    number = take_in_job(desk(app), job_file(tmp_path)).number
    with app.config[STORE].writing() as connection:
        cited, other = (add_photo(connection, _photo(number), JPEG).photo for _ in range(2))
    change_job_from(desk(app), number, job_file(tmp_path, (add_on, f'{add_on}photos = ["photo {cited}", "old.jpg"]\n')))
    write_quote(desk(app), number, quote_html)
    return number, made(clerk, number), cited, other


def _photo(job: str) -> Photo:
    return Photo(photo=0, job=job, label="A", caption=CAPTION, at=NOW, who="Piet", width=8, height=6)


def test_a_photo_that_stands_on_the_quote_is_shown(app: Flask, pictured: tuple[str, str, int, int]) -> None:
    """As an image and nothing else; a photo the counter does not have is named as on the paper."""
    _number, page, cited, _other = pictured
    html = customer(app).get(page)
    images = [one for one in Page(html).all("img") if "/photo/" in one["src"]]
    assert [(one["src"], one["alt"], one["width"]) for one in images] == [(f"{page}/photo/{cited}.jpg", CAPTION, "8")]
    assert "<script>alert" not in html and "Photo: old.jpg" in Page(html).text
    answer = customer(app).client.get(images[0]["src"])
    assert answer.data == JPEG and answer.content_type == "image/jpeg"
    assert answer.headers["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in answer.headers["Content-Security-Policy"]


def test_no_other_photo_is(app: Flask, clerk: Browser, pictured: tuple[str, str, int, int]) -> None:
    """Not another of the same job, not this one through another quote's link, not one taken out."""
    _number, page, cited, other = pictured
    her = customer(app)
    assert her.status(f"{page}/photo/{other}.jpg") == 404
    assert her.status(f"{made(clerk, QUOTED)}/photo/{cited}.jpg") == 404
    with app.config[STORE].writing() as connection:
        take_photos_out(connection, [cited], NOW)
    assert her.status(f"{page}/photo/{cited}.jpg") == 404
    assert f"Photos: photo {cited}" in Page(her.get(page)).text and "<img" not in her.get(page)


def test_a_changed_quote_sends_her_to_the_shop(app: Flask, clerk: Browser, tmp_path: Path) -> None:
    """Opened before, sent after: nothing is kept, and neither old nor new figures are shown."""
    page, her = made(clerk), customer(app)
    hidden = her.hidden(page, page)
    change_job_from(desk(app), QUOTED, job_file(tmp_path, ("hours = 0.4", "hours = 2.4")))
    assert write_quote(desk(app), QUOTED, quote_html).is_new
    fields = {"do": "send", "name": "Maud Tilbrook", "line-1": "approve"}
    for answer in (her.client.get(page), her.send_again(hidden, page, **fields)):
        assert answer.status_code == 410
        assert "has changed this quote" in answer.text and "$" not in answer.text
        assert "Tilbrook" not in answer.text and QUOTED not in answer.text


def test_a_quote_answered_by_telephone_asks_nothing(app: Flask, clerk: Browser) -> None:
    """All lines have their answer: it can be read, and there is no button to send."""
    from sourcing.actions.answers import Spoken, record

    page, her = made(clerk), customer(app)
    words = Spoken(yes=("1", "2", "A"), no=("B", "C"), who="Maud Tilbrook", how="telephone")
    record(desk(app), QUOTED, words)
    html = her.get(page)
    assert "Every line is answered already" in html and "Send my answers" not in html
    assert send(her, page, line_1="approve").status_code in (200, 409)


def test_the_confirmation_of_a_no_says_so(app: Flask, clerk: Browser) -> None:
    """Everything declined: nothing is approved, and it comes to nothing."""
    page, her = made(clerk), customer(app)
    answer = send(her, page, **{f"line_{label}": "decline" for label in ("1", "2", "A", "B", "C")})
    text = Page(answer.text).text
    assert "You declined Line 1" in text and "You approved" not in text and "comes to $0.00" in text
