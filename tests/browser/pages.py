"""Windows of people at the counter: phone or desktop, with or without JavaScript, dark or light, logged in or not."""

import re
from pathlib import Path
from typing import Any, Literal

from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Response, expect

from tests.web.world import PASSWORDS, ROLES

Profile = Literal["phone", "desktop"]
PROFILES: tuple[Profile, ...] = ("phone", "desktop")
SIZES: dict[Profile, dict[str, Any]] = {
    "phone": {
        "viewport": {"width": 390, "height": 844},
        "device_scale_factor": 2,
        "is_mobile": True,
        "has_touch": True,
    },
    "desktop": {"viewport": {"width": 1280, "height": 900}},
}
PATIENCE = 10_000
"""Milliseconds a page may take before a test gives up: the machine may be busy."""

HIDDEN = re.compile(r'<input type="hidden" name="([^"]+)" value="([^"]*)">')

MOST_LOOKS = 40
EVERY_PICTURE = """() => {
  const all = [...document.images];
  for (const one of all) one.loading = 'eager';
  return all.every(one => one.complete);
}"""
"""Asks for the pictures further down as well, and tells whether all are there."""

NOT_OURS = "Failed to load resource"
"""The browser's word for a refusal (4xx) or a lost network; faults of the server (5xx) are counted by themselves."""


class Pages:
    """Opens windows, and keeps what their scripts, policies and answers complained of."""

    def __init__(self, browser: Browser, address: str, screenshots: Path) -> None:
        self._browser, self.address, self._screenshots = browser, address, screenshots
        self._contexts: list[BrowserContext] = []
        self.complaints: list[str] = []

    def open(self, profile: Profile = "desktop", *, script: bool = True, **wishes: Any) -> Page:
        """A window of a person of its own, with no page in it yet; addresses in it may begin with "/".

        `script=False` turns JavaScript off. `wishes` are Playwright's own: color_scheme="dark",
        reduced_motion="reduce", locale="de-DE", offline=True, accept_downloads and so on.
        """
        context = self._browser.new_context(
            **SIZES[profile], base_url=self.address, java_script_enabled=script, **{"locale": "en-US", **wishes}
        )
        context.set_default_timeout(PATIENCE)
        self._contexts.append(context)
        context.on("page", self._listen)
        return context.new_page()

    def log_in(self, page: Page, role: str) -> Page:
        """Log in as owner, clerk or technician, by the page itself."""
        page.goto("/log-in")
        page.get_by_label("Your name").fill(ROLES[role])
        page.get_by_label("Password").fill(PASSWORDS[ROLES[role]])
        page.get_by_role("button", name="Log in").click()
        expect(page.get_by_text(ROLES[role]).first).to_be_visible()
        return page

    def logged_in(self, role: str, profile: Profile = "desktop", *, script: bool = True, **wishes: Any) -> Page:
        """A window of somebody who is logged in."""
        return self.log_in(self.open(profile, script=script, **wishes), role)

    def at_work(self, role: str, profile: Profile = "desktop", *, script: bool = True, **wishes: Any) -> Page:
        """A window of somebody who logged in before this test began, which is quicker; no page in it yet."""
        page = self.open(profile, script=script, **wishes)
        sends = page.context.request
        hidden = dict(HIDDEN.findall(sends.get("/log-in").text()))
        typed = {"name": ROLES[role], "password": PASSWORDS[ROLES[role]]}
        answer = sends.post("/log-in", form={**hidden, **typed}, headers={"Origin": self.address}, max_redirects=0)
        assert answer.status == 303, answer.text()
        return page

    def shot(self, page: Page, name: str) -> Path:
        """Leave a picture of the whole page, its window's width in its name."""
        size = page.viewport_size
        assert size
        path = self._screenshots / f"{name}-{size['width']}.png"
        for _ in range(MOST_LOOKS):
            if page.evaluate(EVERY_PICTURE):
                break
            page.wait_for_timeout(50)
        page.screenshot(path=path, full_page=True, scale="css")
        return path

    def check(self) -> None:
        """Fails where something complained; a test that expects it clears `complaints` first."""
        assert not self.complaints, "\n".join(self.complaints)

    def close(self) -> None:
        """Close all windows."""
        for context in self._contexts:
            context.close()

    def _listen(self, page: Page) -> None:
        page.on("pageerror", lambda error: self.complaints.append(f"{page.url}: script: {error.message}"))
        page.on("console", self._heard)
        page.on("response", self._answered)

    def _heard(self, message: ConsoleMessage) -> None:
        if message.type == "error" and not message.text.startswith(NOT_OURS):
            self.complaints.append(f"{message.page.url if message.page else ''}: {message.text}")

    def _answered(self, response: Response) -> None:
        if response.status >= 500:
            self.complaints.append(f"{response.request.method} {response.url}: {response.status}")
