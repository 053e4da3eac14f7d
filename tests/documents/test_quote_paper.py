"""The customer's paper: its figures, its boxes, its order, and that nothing of the owner's side is in it."""

import re
from datetime import date
from itertools import pairwise

import pytest

from sourcing.basics.problem import Refused
from sourcing.basics.quote import Answered, Quote
from sourcing.basics.value import changed, from_plain, to_plain
from sourcing.documents.quote_paper import for_customer, quote_html, quote_text
from tests.documents.html_reader import Page
from tests.documents.quote_values import exempt_quote, long_quote, one_line_quote, rich_quote, wide_words_quote
from tests.documents.values import HOSTILE, OWNERS_WORDS, QUOTE, bare_quote, hostile_quote

QUOTES = {
    "full": QUOTE,
    "bare": bare_quote(),
    "hostile": hostile_quote(),
    "rich": rich_quote(),
    "exempt": exempt_quote(),
    "long": long_quote(),
    "wide": wide_words_quote(),
    "one line": one_line_quote(),
}


@pytest.fixture(params=sorted(QUOTES))
def page(request: pytest.FixtureRequest) -> Page:
    """Each kind of quote as a page."""
    return Page(quote_html(QUOTES[request.param]))


def test_every_figure_is_there() -> None:
    text = Page(quote_html(QUOTE)).text
    for words in (
        "Part, 1 at $166.60 $166.60", "Labour, 1.25 h at $96.00 $120.00", "Before tax $286.60",
        "Parts, 2 at $2.13, before tax $4.26", "Freight, before tax $12.50",
        "Parts, 2 at $16.90 $33.80", "Before tax $71.20 A yes adds, with tax $72.70",
        "A yes adds, with tax $59.99", "A yes adds, with tax $107.28",
        "Before tax $303.36 Sales tax, 6.5 % of $170.86 $11.11 Total $314.47",
        "Before tax $534.56 Sales tax, 6.5 % of $306.06 $19.89 Total $554.45",
        "A: Replace both belt keepers $59.99 $374.46", "B: Replace the idler bearing $72.70 $387.17",
        "C: Replace the scraper bar $107.28 $421.75", "Valid to Jan 19, 2026.",
        "between Jan 15, 2026 and Jan 16, 2026", "Revision 2, made on Jan 12, 2026", "Cautions as of Nov 3, 2025.",
        "Norrowby NW-40388", "serial 826-004417", "Ansgar Tilbrook", "smelled of burnt rubber",
        "What we found One keeper is broken off", "Why it matters A seized idler", "If you decline Nothing breaks",
        "Payment when you collect", "engine off", "differ from place to place", "maker and the rules of your place",
    ):  # fmt: skip
        assert words in text, words


def test_a_kind_that_comes_to_nothing_is_not_listed() -> None:
    assert "Shop supplies" not in Page(quote_html(QUOTE)).text


@pytest.mark.parametrize("words", OWNERS_WORDS)
def test_the_owners_side_does_not_leak(words: str) -> None:
    assert words in repr(QUOTE)
    body = re.sub(r"<style>.*?</style>", "", quote_html(QUOTE), flags=re.S)
    assert words.casefold() not in body.casefold()
    assert words.casefold() not in quote_text(QUOTE).casefold()


def test_no_template_could_print_the_owners_side() -> None:
    paper = for_customer(QUOTE)
    assert all(line.behind is None for line in paper.lines) and paper.warnings == ()
    richer = changed(QUOTE, lines=tuple(changed(line, behind=None) for line in QUOTE.lines), warnings=())
    assert quote_html(QUOTE) == quote_html(richer)


def test_each_line_has_its_own_approve_and_decline_box_and_extras_a_place_for_initials() -> None:
    boxes = {one["id"]: one for one in Page(quote_html(QUOTE)).all("input")}
    for line in (one for one in QUOTE.lines if not one.freight_price.amount):
        pair = [boxes[f"line-{line.label}-{answer}"] for answer in ("approve", "decline")]
        assert [one["name"] for one in pair] == [f"line-{line.label}"] * 2
        assert not any("checked" in one for one in pair), "no answer is not a yes"
        assert (f"line-{line.label}-initials" in boxes) == (line.kind == "add-on")
    asked = {"sign-name", "sign-signature", "sign-date", "sign-time", "sign-conditions", "sign-others"}
    assert {*asked, "how-contact", "how-taken-by"} <= set(boxes)  # the fields of 16 CCR 2722


def test_freight_of_the_agreed_work_has_no_boxes_and_says_with_which_lines_it_goes() -> None:
    """A part can't come without it, so that there is nothing to choose."""
    freight = QUOTE.lines[2]
    assert freight.kind == "agreed" and freight.freight_price.amount and not freight.part
    shown, sent = Page(quote_html(QUOTE)), " ".join(quote_text(QUOTE).split())
    assert not [one for one in shown.all("input") if one["id"].startswith("line-3-")]
    for text in (shown.text, sent):
        assert "It goes with lines 1, 2: a yes to any of them is a yes to this freight too." in text
    one = changed(QUOTE, lines=(*QUOTE.lines[:2], changed(freight, freight_for=("1",)), *QUOTE.lines[3:]))
    assert "It goes with line 1: a yes to that line is a yes to its freight too." in Page(quote_html(one)).text


def test_every_box_has_one_label_and_every_id_is_once(page: Page) -> None:
    ids = [one["id"] for _, one in page.tags if "id" in one]
    assert len(ids) == len(set(ids))
    assert sorted(one["for"] for one in page.all("label")) == sorted(one["id"] for one in page.all("input"))
    assert len(page.all("fieldset")) == len(page.all("legend"))


def test_headings_are_in_order(page: Page) -> None:
    levels = [level for level, _ in page.headings]
    assert levels[0] == 1 and levels.count(1) == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))
    assert all(text.strip() for _, text in page.headings)


def test_tables_name_their_rows_and_columns(page: Page) -> None:
    assert all(one.get("scope") in ("row", "col") for one in page.all("th"))
    assert len(page.all("table")) == len(page.all("caption"))


def test_the_page_needs_nothing_from_outside(page: Page) -> None:
    assert page.all("script", "link", "img", "iframe", "object", "base", "form", "a") == []
    assert not any(name.startswith("on") or name in ("src", "href") for _, one in page.tags for name in one)
    assert "url(" not in page.css and "@import" not in page.css and "@font-face" not in page.css


def test_the_language_and_the_screen_width_are_told(page: Page) -> None:
    assert page.all("html") == [{"lang": "en-US"}]
    assert {"name": "viewport", "content": "width=device-width, initial-scale=1"} in page.all("meta")
    assert {"charset": "utf-8"} in page.all("meta")


def test_hostile_text_stays_text() -> None:
    html = quote_html(QUOTES["hostile"])
    assert "<script" not in html and "alert('x')" not in html.replace("&#39;", "")
    assert "\u202e" not in html and "\x1b" not in html
    page = Page(html)
    assert "<script>alert('x')</script>\" onload=\"x &amp; \ufffd0.01 \ufffd[2J Total 0.00" in page.text
    assert [tag for tag, _ in page.tags] == [tag for tag, _ in Page(quote_html(_plainly(HOSTILE))).tags]


def _plainly(hostile: str) -> Quote:
    """The hostile quote with a harmless word in place of the hostile text: the page's skeleton must be the same."""

    def cleaned(value: object) -> object:
        if isinstance(value, dict):
            return {key: cleaned(one) for key, one in value.items()}
        if isinstance(value, list):
            return [cleaned(one) for one in value]
        return "harmless" if value == hostile else value

    return from_plain(cleaned(to_plain(QUOTES["hostile"])), Quote)


def test_a_quote_without_extras_says_nothing_of_extras() -> None:
    text = Page(quote_html(bare_quote())).text
    assert "Extra" not in text and "Everything" not in text and "one extra line" not in text and "each" not in text
    assert "Tax none charged" in text and "the day is not known yet" in text
    assert "differ from place to place" in text


def test_same_quote_same_bytes() -> None:
    assert quote_html(QUOTE) == quote_html(changed(QUOTE, revision=QUOTE.revision))
    assert quote_html(QUOTE) != quote_html(changed(QUOTE, revision=3))


def test_a_page_break_does_not_part_an_extra_from_its_answer() -> None:
    css = Page(quote_html(QUOTE)).css
    printed = css[css.index("@media print", css.index(".at-a-glance")) :]
    assert re.search(r"\.line,[^{]*\{[^}]*page-break-inside: avoid", printed)
    assert re.search(r"@page \{ size: letter; margin: \d+mm", css) and "@media (max-width: 599px)" in css


def test_short_text() -> None:
    text = quote_text(QUOTE)
    for words in (
        "1  Replace the auger drive belt: $286.60",
        "Sales tax: $11.11",
        "Total with tax: $314.47",
        "C  Replace the scraper bar: $107.28",
        "Total with everything: $554.45",
        "Valid to Jan 19, 2026.",
        "Parts expected: between Jan 15, 2026 and Jan 16, 2026.",
    ):
        assert words in text
    assert max(len(line) for line in text.splitlines()) <= 72
    assert "extra" not in quote_text(bare_quote()).casefold()


def test_short_text_cannot_be_given_a_forged_line() -> None:
    lines = quote_text(QUOTES["hostile"]).splitlines()
    assert not any(line.startswith("Total 0.00") for line in lines)
    assert not any(character in line for line in lines for character in "\u202e\x1b")


def test_an_unknown_locale_is_told() -> None:
    with pytest.raises(Refused, match="locale"):
        quote_html(changed(QUOTE, locale="nowhere"))


def test_a_line_answered_before_says_so_and_has_no_boxes() -> None:
    """The customer is asked about the others alone; the add-on declined may still be wanted."""
    day = date(2026, 1, 12)
    yes = Answered(answer="approved", who="Maud Tilbrook", how="telephone", on=day)
    no = changed(yes, answer="declined", how="in person")
    first, second, freight, extra, *rest = QUOTE.lines
    lines = (changed(first, answered=yes), second, changed(freight, answered=yes), changed(extra, answered=no), *rest)
    asked = changed(QUOTE, lines=lines)
    shown, sent = Page(quote_html(asked)), " ".join(quote_text(asked).split())
    boxed = {one["name"].removeprefix("line-") for one in shown.all("input") if one.get("name", "").startswith("line-")}
    assert boxed == {"2", *(line.label for line in rest)}
    for text in (shown.text, sent):
        told = "Maud Tilbrook said yes to this line by telephone on Jan 12, 2026; it is not asked again."
        assert text.count(told) == 2
        assert "said no to this line in person on Jan 12, 2026; it is not asked again. Tell us if you want it" in text
