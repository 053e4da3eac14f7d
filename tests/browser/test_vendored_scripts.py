"""The script of others runs under the counter's own policy for pages, and complains of nothing."""

from sourcing.web.headers import PAGE
from tests.browser.pages import Pages

BODY = """<!DOCTYPE html><html lang="en"><head><title>Tried</title>
<script src="/static/vendor/signature_pad-5.1.4.umd.min.js" defer></script></head>
<body><canvas width="300" height="120"></canvas></body></html>"""


def test_a_signature_can_be_drawn(pages: Pages) -> None:
    """With a mouse; what was drawn can be had as an image."""
    page = pages.open()
    headers = {"Content-Security-Policy": PAGE.format(ancestors="'none'")}
    page.route("**/tried", lambda route: route.fulfill(body=BODY, content_type="text/html", headers=headers))
    page.goto("/tried")
    page.evaluate("() => { window.pad = new SignaturePad(document.querySelector('canvas')) }")
    box = page.locator("canvas").bounding_box()
    assert box
    page.mouse.move(box["x"] + 20, box["y"] + 60)
    page.mouse.down()
    page.mouse.move(box["x"] + 180, box["y"] + 30, steps=6)
    page.mouse.up()
    assert page.evaluate("pad.isEmpty()") is False
    assert page.evaluate("pad.toDataURL()").startswith("data:image/png;base64,")
