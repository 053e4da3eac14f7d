"""The scripts of others run under the counter's own policy for pages, and complain of nothing."""

from playwright.sync_api import Page, expect

from sourcing.web.headers import PAGE
from tests.browser.pages import Pages

HTMX = '{"includeIndicatorStyles":false,"allowEval":false,"selfRequestsOnly":true}'
BODY = """<!DOCTYPE html><html lang="en"><head><title>Tried</title>
<meta name="htmx-config" content='CONFIG'>
<script src="/static/vendor/htmx-2.0.11.min.js" defer></script>
<script src="/static/vendor/signature_pad-5.1.4.umd.min.js" defer></script></head>
<body><button type="button" hx-get="/piece" hx-target="#here">Fetch</button><p id="here"></p>
<canvas width="300" height="120"></canvas></body></html>"""


def _tried(page: Page, config: str) -> Page:
    headers = {"Content-Security-Policy": PAGE.format(ancestors="'none'")}
    html = BODY.replace("CONFIG", config)
    page.route("**/tried", lambda route: route.fulfill(body=html, content_type="text/html", headers=headers))
    page.route("**/piece", lambda route: route.fulfill(body="<b>A piece</b>", content_type="text/html"))
    page.goto("/tried")
    return page


def test_a_piece_of_a_page_is_fetched(pages: Pages) -> None:
    """With the settings every page with it has to have."""
    page = _tried(pages.open(), HTMX)
    page.get_by_role("button", name="Fetch").click()
    expect(page.locator("#here")).to_have_text("A piece")


def test_without_the_settings_the_policy_is_broken(pages: Pages) -> None:
    """So that nobody leaves them out: the script would write a style into the page."""
    _tried(pages.open(), "{}")
    assert any("style" in one for one in pages.complaints)
    pages.complaints.clear()


def test_a_signature_can_be_drawn(pages: Pages) -> None:
    """With a mouse; what was drawn can be had as an image."""
    page = _tried(pages.open(), HTMX)
    page.evaluate("() => { window.pad = new SignaturePad(document.querySelector('canvas')) }")
    box = page.locator("canvas").bounding_box()
    assert box
    page.mouse.move(box["x"] + 20, box["y"] + 60)
    page.mouse.down()
    page.mouse.move(box["x"] + 180, box["y"] + 30, steps=6)
    page.mouse.up()
    assert page.evaluate("pad.isEmpty()") is False
    assert page.evaluate("pad.toDataURL()").startswith("data:image/png;base64,")
