"""Ask axe-core what a page breaks of WCAG 2.2, levels A and AA.

axe-core is the copy that the package axe-playwright-python carries (4.12.1 in 0.1.8), which has the rules of 2.2 too.
It is evaluated in the page by the browser itself, so a page's Content-Security-Policy may stay as strict as it is.
"""

from functools import cache
from importlib.resources import files
from typing import Any

from playwright.sync_api import Page

TAGS = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")
RUN = "tags => axe.run(document, {runOnly: {type: 'tag', values: tags}, resultTypes: ['violations']})"


@cache
def _source() -> str:
    return (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")


def violations(page: Page) -> list[str]:
    """What is broken, a line for each element: the rule, what it wants, the element, and why. Empty where all is well.

    Needs a page with JavaScript on.
    """
    if not page.evaluate("'axe' in window"):
        page.evaluate(_source())
    found: list[dict[str, Any]] = page.evaluate(RUN, list(TAGS))["violations"]
    return [_line(rule, node) for rule in found for node in rule["nodes"]]


def _line(rule: dict[str, Any], node: dict[str, Any]) -> str:
    why = " ".join(node["failureSummary"].split())
    return f"{rule['id']} ({rule['help']}): {' '.join(map(str, node['target']))}: {node['html'][:120]}: {why}"
