"""What every page must hold in a browser: nothing sticks out sideways, the keyboard reaches everything, it is light."""

import os
from typing import Any

from playwright.sync_api import CDPSession, Page

STICKING_OUT = """width => [...document.querySelectorAll('body *')]
  .filter(one => one.getBoundingClientRect().right > width + 1)
  .map(one => `${one.tagName.toLowerCase()}${one.id ? '#' + one.id : ''}.${one.className} `
    + `"${(one.textContent || '').trim().slice(0, 40)}" to ${Math.round(one.getBoundingClientRect().right)}`)
  .slice(0, 5)"""

CONTROLS = """() => {
  const seen = one => one.checkVisibility({visibilityProperty: true}) && !one.closest('[inert]');
  const reached = 'a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex="0"]';
  const radios = new Set();
  return [...document.querySelectorAll(reached)].filter(one => {
    if (one.disabled || one.matches('[tabindex^="-"]') || !seen(one)) return false;
    if (one.type !== 'radio') return true;
    const group = `${one.form ? [...document.forms].indexOf(one.form) : ''}:${one.name}`;
    return !radios.has(group) && radios.add(group);
  }).map((one, at) => { one.dataset.tried = one.type === 'radio' ? `radio ${one.name}` : `${at}`; return one; })
    .map(one => [one.dataset.tried, NAME(one)]);
}"""

NAME = """(one => `${one.tagName.toLowerCase()} "${(one.getAttribute('aria-label') || one.labels?.[0]?.textContent
  || one.textContent || one.name || one.id || '').trim().replace(/\\s+/g, ' ').slice(0, 50)}"`)"""

FOCUSED = """() => {
  const one = document.activeElement;
  if (!one || one === document.body || one === document.documentElement) return null;
  const style = getComputedStyle(one), box = one.getBoundingClientRect();
  const clear = ['transparent', 'rgba(0, 0, 0, 0)'].includes(style.outlineColor);
  const wide = style.outlineStyle === 'auto' || parseFloat(style.outlineWidth) >= 2;
  const radio = one.type === 'radio' ? `radio ${one.name}` : '';
  return {
    tried: radio || one.dataset.tried || `unlisted ${[...document.querySelectorAll('*')].indexOf(one)}`,
    name: NAME(one),
    holds_focus_within: one.tagName === 'IFRAME' || ['date', 'time', 'datetime-local', 'month'].includes(one.type),
    outlined: style.outlineStyle !== 'none' && wide && !clear,
    in_sight: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
  };
}"""

MOST_TABS = 600

EVERY_SIZE = "SOURCING_BROWSER_FULL"


def thorough(page: Page) -> bool:
    """Whether axe-core and the keyboard are to go through this page: on the phone, where most is in the way.

    At the desktop's size too where that variable is set: it takes as long again. Every page is opened at both sizes.
    """
    size = page.viewport_size
    return bool(os.environ.get(EVERY_SIZE)) or (size is not None and size["width"] < 600)


def no_sideways_scroll(page: Page) -> None:
    """Fails where the page is wider than its window (WCAG 2.2, 1.4.10), naming what sticks out.

    Measured against the size the window was given: a phone zooms out of a page that is too wide.
    """
    size = page.viewport_size
    assert size
    wide = page.evaluate("document.scrollingElement.scrollWidth")
    assert wide <= size["width"], f"{page.url}: {wide} px in a window of {size['width']}: " + "; ".join(
        page.evaluate(STICKING_OUT, size["width"])
    )


def keyboard_only(page: Page) -> list[str]:
    """Go through the page with the Tab key; what it reached, in its order.

    Fails where a control is not reached or the focus can't leave it (WCAG 2.2, 2.1.1, 2.1.2), where the focus can't be
    seen (2.4.7; an outline of 2 CSS px is asked for, as in 2.4.13), or its control is out of sight (2.4.11).
    """
    page.evaluate("() => { document.activeElement?.blur(); scrollTo(0, 0); }")
    listed: dict[str, str] = dict(page.evaluate(CONTROLS.replace("NAME", NAME)))
    reached = _tabbed(page)
    wrong = [f"{name}: the focus can't be seen" for name, one in reached.items() if not one["outlined"]]
    wrong += [f"{name}: has the focus out of sight" for name, one in reached.items() if not one["in_sight"]]
    tried = {one["tried"] for one in reached.values()}
    wrong += [f"{name}: not reached" for key, name in listed.items() if key not in tried]
    page.evaluate("() => { document.activeElement?.blur(); scrollTo(0, 0); }")  # for the pictures that follow
    assert not wrong, f"{page.url} by keyboard: " + "; ".join(wrong)
    return [one["name"] for one in reached.values()]


def _tabbed(page: Page) -> dict[str, dict[str, Any]]:
    """What Tab reaches from the top of the page until it leaves it or begins again."""
    reached: dict[str, dict[str, Any]] = {}
    last = ""
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        one = page.evaluate(FOCUSED.replace("NAME", NAME))
        if one is None:
            return reached
        key = f"{one['name']} ({one['tried']})"
        if key in reached and key == next(iter(reached)) and len(reached) > 1:
            return reached
        if key == last and not one["holds_focus_within"]:
            assert len(reached) == 1, f"{page.url} by keyboard: the focus can't leave {key}"
            return reached
        assert key == last or key not in reached, f"{page.url} by keyboard: the focus goes round and round at {key}"
        reached.setdefault(key, one)  # inside a date's own little fields the mark stays on the first
        last = key
    raise AssertionError(f"{page.url} by keyboard: no end after {MOST_TABS} times Tab")


def weight(page: Page, address: str) -> int:
    """Bytes a first visit to the address brings over the network, headers and all, without photos."""
    session: CDPSession = page.context.new_cdp_session(page)
    photos: set[str] = set()
    asked: set[str] = set()
    sizes: dict[str, int] = {}

    def came(told: dict[str, Any]) -> None:
        if told["type"] == "Image" and told["response"]["mimeType"] in ("image/jpeg", "image/png", "image/webp"):
            photos.add(told["requestId"])

    def whole(told: dict[str, Any]) -> None:
        sizes[told["requestId"]] = round(told["encodedDataLength"])
        asked.discard(told["requestId"])

    session.on("Network.requestWillBeSent", lambda told: asked.add(told["requestId"]))
    session.on("Network.responseReceived", came)
    session.on("Network.loadingFinished", whole)
    session.on("Network.loadingFailed", lambda told: asked.discard(told["requestId"]))
    session.send("Network.enable")
    session.send("Network.setCacheDisabled", {"cacheDisabled": True})
    page.goto(address)  # until all that the page itself names has come
    while asked:
        page.wait_for_timeout(10)
    session.detach()
    return sum(size for request, size in sizes.items() if request not in photos)
