"""Sheets that want to do harm: on every page of the counter their text is text, and their names are no paths.

What is tried follows OWASP's cross-site scripting and CSV injection pages, and Unicode Standard Annex 9 for marks.
"""

import csv
import io
import re
from html.parser import HTMLParser
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.sheet_sent import file_name
from tests.web.sheets_world import drop, held, page_of, settle
from tests.web.world import Browser

NASTY = (
    "<script>alert(1)</script>",
    '"><img src=x onerror=alert(1)>',
    "javascript:alert(1)",
    "{{7*7}}",
    "\u202egnirts",
    '=HYPERLINK("http://example.invalid")',
    "' onfocus='alert(1)",
)
NAME = "stonegarth-<script>'><img onerror=x>\u202e{{7*7}}-2026-01-14.csv"
TRAPS = Path(__file__).parents[1] / "traps" / "sheets"


def hostile(last_header: str = "Net") -> bytes:
    """A sheet with harm in every text cell, in headers and in a line below."""
    out = io.StringIO()
    rows = csv.writer(out)
    rows.writerow(["Part No", f"Description {NASTY[0]}", *NASTY, last_header, "Pack"])
    for at in range(20):
        bad = NASTY[at % len(NASTY)]
        rows.writerow([f"HX-{at} {bad}", bad * 2, *NASTY, f"{at + 1}.25" if at % 5 else bad, bad if at % 4 else "10"])
    rows.writerow(["total", NASTY[0], NASTY[1]])
    return out.getvalue().encode()


class Harm(HTMLParser):
    """Collects what a page must not have: scripts that are not ours, handlers, addresses that run."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """A tag of the page."""
        given = dict(attrs)
        self.found += [f"{tag} {name}" for name in given if name.startswith("on") or name == "style"]
        if tag == "script" and not (given.get("src") or "").startswith("/static/"):
            self.found.append("script")
        if tag == "img" or any((given.get(name) or "").startswith("javascript:") for name in ("href", "src", "action")):
            self.found.append(tag)


def assert_harmless(page: str) -> None:
    """Nothing of the sheet became part of the page."""
    seen = Harm()
    seen.feed(page)
    assert not seen.found
    assert "\u202e" not in page


def test_a_hostile_sheet_is_asked_about_harmlessly(app: Flask, clerk: Browser) -> None:
    """Headers, cells and the file's name stand on the page of questions as they are."""
    sent = drop(app, clerk, hostile("<script>alert(9)</script> {{7*7}} Net"), NAME)
    page = clerk.get(sent)
    assert_harmless(page)
    assert "J: &lt;script&gt;alert(9)&lt;/script&gt; {{7*7}} Net</label>" in page
    assert_harmless(clerk.get("/sheets"))


def test_a_hostile_header_that_is_asked_about_is_text(app: Flask, clerk: Browser) -> None:
    """In the question itself."""
    rows = "".join(f"ZQ-{at},Shoe,{at + 3}.50,{at + 2}.25\n" for at in range(9))
    sheet = f"Part No,Description,Price,<script>alert(9)</script> Net\n{rows}".encode()
    page = clerk.get(drop(app, clerk, sheet, NAME))
    assert_harmless(page)
    assert "<legend>&lt;script&gt;alert(9)&lt;/script&gt; Net</legend>" in page


def test_a_hostile_sheet_is_kept_and_compared_harmlessly(app: Flask, clerk: Browser) -> None:
    """Its page, its problems, its supplier, the changes, and the page of taking it out."""
    page_of(clerk, answered(app, clerk, drop(app, clerk, hostile(), NAME)))
    newer = hostile().replace(b"7.25", b"8.75").replace(b"HX-3 ", b"HY-3 ")
    page = page_of(clerk, answered(app, clerk, drop(app, clerk, newer, NAME.replace("01-14", "01-15"))))
    assert_harmless(page)
    assert "&lt;script&gt;" in page
    for address in ("/sheets/8/changes", "/sheets/of/stonegarth", "/sheets/8/take-out", "/sheets", "/sheets/8?page=2"):
        assert_harmless(clerk.get(address))
    for address in ("/sheets/8/problems.csv", "/sheets/8/changes.csv"):
        saved = clerk.client.get(address)
        assert saved.headers["Content-Disposition"].startswith('attachment; filename="')
        assert "sandbox" in saved.headers["Content-Security-Policy"]
        assert not [c for row in csv.reader(io.StringIO(saved.text)) for c in row if c.startswith(("=", "@", "+HY"))]


def answered(app: Flask, clerk: Browser, sent: str) -> str:
    """The sheet with every question answered 'not used'."""
    for _ in range(3):
        answer = clerk.client.get(sent)
        if answer.status_code != 200:
            break
        assert_harmless(answer.text)
        fields = {name: "not used" for name in re.findall(r'name="(said-\d+)"', answer.text)}
        clerk.send(sent, **fields)
        settle(app)
    return sent


@pytest.mark.parametrize(
    "sheet",
    sorted(one.name for one in TRAPS.iterdir() if one.suffix != ".json" and one.stat().st_size < 60_000)[::6],
)
def test_trap_sheets_end_in_a_page(sheet: str, app: Flask, clerk: Browser) -> None:
    """Whatever is in the file: kept, asked about or told why not, without a fault of the program and without harm."""
    sent = drop(app, clerk, (TRAPS / sheet).read_bytes(), sheet, supplier="pellbrook", dated="2026-01-14")
    page = page_of(clerk, sent)
    assert_harmless(page)
    assert "A fault of this program" not in page and len(page) < 100_000


@pytest.mark.parametrize(
    ("sent", "kept"),
    [
        ("../../etc/passwd", "passwd"),
        ("..\\..\\windows\\win.ini", "win.ini"),
        ("C:\\Users\\x\\prices.xlsx", "prices.xlsx"),
        ("", "sheet"),
        ("/", "sheet"),
        ("a\u202eb\nc.csv", "a_b_c.csv"),
        ("x" * 300 + ".xlsx", "x" * 115 + ".xlsx"),
    ],
)
def test_names_of_files_are_never_paths(sent: str, kept: str) -> None:
    """The last part, without what turns or hides text."""
    assert file_name(sent) == kept


def test_a_file_is_held_under_a_random_name(app: Flask, clerk: Browser) -> None:
    """Whatever the browser called it, and nothing of it is written elsewhere."""
    drop(app, clerk, hostile("Price"), "../../stonegarth-2026-01-14.csv")
    (path,) = held(app)
    assert re.fullmatch(r"[0-9a-f]{32}", path.name)
    assert path.parent.stat().st_mode & 0o077 == 0
