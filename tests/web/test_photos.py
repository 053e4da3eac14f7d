"""Photos: only the picture is kept, only a picture is given out, and only to people of the shop."""

import io
import struct
import zlib

import pytest
from flask import Flask
from PIL import Image
from werkzeug.test import TestResponse

from tests.web.world import TAKEN_IN, Browser

GPS, MAKE, ORIENTATION = 0x8825, 0x010F, 0x0112
PAGE = f"/jobs/{TAKEN_IN}/new-photo"


def picture(kind: str = "JPEG", size: tuple[int, int] = (2400, 1600), **exif: int) -> bytes:
    """A red picture as a phone makes it: with the place, the maker, and which way up."""
    one, out = Image.new("RGB", size, "red"), io.BytesIO()
    facts = one.getexif()
    facts[MAKE] = "Norrowby"
    facts[GPS] = {1: "N", 2: (47.0, 11.0, 6.0)}
    for tag in exif.values():
        facts[ORIENTATION] = tag
    one.save(out, kind, exif=facts)
    return out.getvalue()


def send(browser: Browser, content: bytes, name: str = "IMG_2041.jpg") -> TestResponse:
    """Send a photo of line A."""
    fields = {**browser.hidden(PAGE, PAGE), "line": "A", "caption": "bent", "photo": (io.BytesIO(content), name)}
    return browser.client.post(PAGE, data=fields, content_type="multipart/form-data", follow_redirects=True)


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_where_it_was_taken_is_gone_from_a_photo(technician: Browser, kind: str) -> None:
    """Nothing but pixels is left, at most 1600 of them on a side."""
    assert send(technician, picture(kind), "../../x.php").status_code == 200
    given = technician.client.get("/photos/1.jpg")
    assert given.content_type == "image/jpeg" and given.headers["X-Content-Type-Options"] == "nosniff"
    assert "sandbox" in given.headers["Content-Security-Policy"]
    with Image.open(io.BytesIO(given.data)) as shown:
        assert (
            shown.size == (1600, 1067)
            and not dict(shown.getexif())
            and not set(shown.info) & {"exif", "xmp", "icc_profile"}
        )
    assert b"Norrowby" not in given.data and b"Exif" not in given.data


def test_a_photo_taken_on_its_side_is_turned_upright(technician: Browser) -> None:
    """As the camera says; the word itself is gone."""
    send(technician, picture(turned=6))
    with Image.open(io.BytesIO(technician.client.get("/photos/1.jpg").data)) as shown:
        assert shown.size == (1067, 1600)


@pytest.mark.parametrize(
    "content",
    [
        b"<svg xmlns='http://www.w3.org/2000/svg'><script>alert(1)</script></svg>",
        b"<!DOCTYPE html><script>alert(1)</script>",
        b"GIF89a" + b"\0" * 40,
        b"\xff\xd8\xff\xe0 not a picture at all",
        b"",
    ],
)
def test_what_is_no_photo_is_refused(technician: Browser, content: bytes) -> None:
    """Whatever its name says; nothing is kept."""
    assert send(technician, content).status_code == 409
    assert technician.status("/photos/1.jpg") == 404


def test_what_hangs_behind_a_picture_is_lost(technician: Browser) -> None:
    """A picture that is a page as well is only a picture afterwards."""
    send(technician, picture() + b"<script>alert(1)</script>")
    assert b"script" not in technician.client.get("/photos/1.jpg").data


def test_a_picture_of_too_many_pixels_is_refused_before_it_is_unpacked(technician: Browser) -> None:
    """A few hundred bytes that claim 400 million pixels."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    head = struct.pack(">IIBBBBB", 20_000, 20_000, 8, 2, 0, 0, 0)
    bomb = (
        b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0" * 1000)) + chunk(b"IEND", b"")
    )
    told = send(technician, bomb)
    assert told.status_code == 409 and "too many pixels" in told.text


def test_a_photo_stands_beside_its_line_is_taken_out_and_put_back(technician: Browser) -> None:
    """Taken out it opens nowhere."""
    there = send(technician, picture()).text
    assert 'src="/photos/1.jpg"' in there and "bent" in there
    page = f"/jobs/{TAKEN_IN}"
    out = technician.send(page, "/photos/1/take-out")
    assert "Take it back" in out.text and technician.status("/photos/1.jpg") == 404
    technician.send("/photos/1/put-back")
    assert technician.status("/photos/1.jpg") == 200


def test_without_a_log_in_no_photo_opens(app: Flask, technician: Browser) -> None:
    """The customer's link has a way of its own."""
    send(technician, picture())
    assert Browser(app).status("/photos/1.jpg") == 302
