"""The papers' look: contrast by the formula of WCAG 2.2, one file, plain black on white, boxes big enough to hit."""

import re
from itertools import product

import pytest

from sourcing.documents.bill_paper import bill_html
from sourcing.documents.margins import margins_html
from sourcing.documents.order_paper import order_html
from sourcing.documents.quote_paper import quote_html
from tests.documents.buying_values import JOB_MARGIN, ORDER
from tests.documents.html_reader import Page
from tests.documents.test_bill_paper import BILL
from tests.documents.values import QUOTE

PAPERS = {
    "quote": quote_html(QUOTE),
    "order": order_html(ORDER),
    "bill": bill_html(BILL),
    "margins": margins_html([JOB_MARGIN]),
}


def luminance(colour: str) -> float:
    """Relative luminance. Source: WCAG 2.2, definition of relative luminance (W3C)."""

    def linear(part: int) -> float:
        share = part / 255
        return share / 12.92 if share <= 0.04045 else ((share + 0.055) / 1.055) ** 2.4

    red, green, blue = (linear(int(colour[at : at + 2], 16)) for at in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Contrast ratio. Source: WCAG 2.2, definition of contrast ratio (W3C)."""
    lighter, darker = sorted((luminance(one), luminance(other)), reverse=True)
    return (lighter + 0.05) / (darker + 0.05)


def test_the_formula_gives_the_standards_ends() -> None:
    assert round(contrast("#000000", "#ffffff"), 6) == 21.0  # WCAG 2.2: ratios range from 1 to 21
    assert round(contrast("#767676", "#ffffff"), 2) == 4.54  # from memory: the lightest grey that passes 4.5 on white


@pytest.fixture(params=sorted(PAPERS))
def page(request: pytest.FixtureRequest) -> Page:
    """Each paper as a page."""
    return Page(PAPERS[request.param])


def test_words_and_rules_stand_out_from_the_paper(page: Page) -> None:
    colours = dict(re.findall(r"--(\w+): (#[0-9a-f]{6})", page.css))
    assert set(colours) == {"ink", "quiet", "rule", "paper"}
    assert contrast(colours["ink"], colours["paper"]) >= 7  # success criterion 1.4.6
    assert contrast(colours["quiet"], colours["paper"]) >= 7
    assert contrast(colours["rule"], colours["paper"]) >= 3  # success criterion 1.4.11, edges of boxes


def test_no_colour_comes_in_by_another_way(page: Page) -> None:
    assert len(re.findall(r"#[0-9a-fA-F]{3,8}\b", page.css)) == 4
    used = re.findall(r"(?<![-\w])(?:color|background|border(?:-\w+)?|outline): ([^;]+);", page.css)
    assert used
    for value in used:
        assert re.fullmatch(r"(0|[\d.]+px solid var\(--\w+\)|var\(--\w+\)|collapse|none)", value), value
    assert not any("style" in one for _, one in page.tags)


def test_greys_are_greys(page: Page) -> None:
    for colour in re.findall(r"#([0-9a-f]{6})", page.css):
        assert len({colour[at : at + 2] for at in (0, 2, 4)}) == 1, "words, not colours, carry the meaning"


def test_boxes_can_be_hit_with_a_thumb() -> None:
    css = Page(PAPERS["quote"]).css
    sizes = re.search(r"input\[type=radio\] \{[^}]*height: ([\d.]+)rem;[^}]*width: ([\d.]+)rem", css)
    assert sizes and min(float(size) * 16 for size in sizes.groups()) >= 24  # WCAG 2.2, success criterion 2.5.8


def test_no_outside_font_or_picture(page: Page) -> None:
    fonts = set(re.findall(r"font(?:-family)?: ([^;]+);", page.css))
    assert all(font == "inherit" or font.endswith(("serif", "sans-serif")) for font in fonts)
    for tag, forbidden in product(
        ("script", "link", "img", "svg", "iframe"), ("url(", "@import", "@font-face", "http")
    ):
        assert page.all(tag) == [] and forbidden not in page.css
    assert "http" not in page.text


def test_structure(page: Page) -> None:
    assert [level for level, _ in page.headings].count(1) == 1
    assert all(one.get("scope") in ("row", "col") for one in page.all("th"))
    assert len(page.all("main")) == 1 and len(page.all("table")) == len(page.all("caption"))
