"""The customer's page reads like the paper: the same words and figures, in the same order; whatever a quote holds."""

from itertools import pairwise

import pytest
from flask import Flask, g

from sourcing.basics.quote import FrozenQuote, Quote
from sourcing.basics.value import changed
from sourcing.documents.amounts import money_text
from sourcing.documents.customer_page import answered_values, page_values
from sourcing.documents.quote_paper import quote_html
from sourcing.quoting.choices import asked_about, choice_total, choice_totals
from sourcing.web.show import show
from tests.documents.html_reader import Page
from tests.documents.quote_values import exempt_quote, long_quote, one_line_quote, rich_quote, wide_words_quote
from tests.documents.values import OWNERS_WORDS, QUOTE, bare_quote, hostile_quote

QUOTES = {
    "full": QUOTE,
    "bare": bare_quote(),
    "hostile": changed(hostile_quote(), job="2026-0001"),  # the number is ours, and not from outside
    "rich": rich_quote(),
    "exempt": exempt_quote(),
    "long": long_quote(),
    "wide": wide_words_quote(),
    "one line": one_line_quote(),
}

FROZEN = FrozenQuote(quote=QUOTE, paper="paper", sha256="0" * 64)

ONLY_ON_PAPER = {
    "Marks made on a screen are not sent to us. Print and sign this paper, or give us your answer by telephone, text "
    "or e-mail.",
    *("Name", "Date", "Time", "Initials", "Signature", "Conditions, if any", "Who else may say yes for you"),
    *("For the shop: how the answer was given", "Number called or address", "Taken down by"),
    *("in person", "telephone", "text", "e-mail", "customer's page"),
    *("The work you asked for and one extra line", "Extra line", "It adds", "Total with tax"),
}
"""What is to be filled in by hand, and the table of single choices, in whose place the running total is."""


def her_page(app: Flask, quote: Quote) -> str:
    """The page for a quote to which nothing is answered yet."""
    with app.test_request_context("/q/" + "x" * 43):
        g.locale = quote.locale
        values = page_values(quote, {}, asked_about(quote, {}), choice_totals(quote, {}), ())
        return show("customer/quote.html", total=choice_total(quote, (), {}), **values)[0]


def texts(html: str) -> list[str]:
    """The texts of a page in their order, blanks made one."""
    return [text for text in (" ".join(one.split()) for one in Page(html).words) if text]


def missing(quote: Quote, html: str) -> list[str]:
    """What of the paper does not stand in the page."""
    have = Page(html).text
    return [
        text
        for text in texts(quote_html(quote))
        if text not in ONLY_ON_PAPER and text.rstrip(".,") not in have and not _stands_otherwise(text, quote)
    ]


def _stands_otherwise(text: str, quote: Quote) -> bool:
    """The file's title; sums and footnote of the table of single choices; a line's name before its boxes."""
    return (
        text == f"Quote for job {quote.job}, revision {quote.revision}"
        or text in {f"Line {line.label}:" for line in quote.lines}
        or text in {f"{line.label}:" for line in quote.lines}
        or text.startswith("What a line adds is the difference of two totals")
        or text in {money_text(one.total_with_it, quote.locale) for one in quote.add_on_prices}
    )


@pytest.mark.parametrize("name", sorted(QUOTES))
def test_every_word_and_figure_of_the_paper_is_on_the_page(app: Flask, name: str) -> None:
    """So the two can't drift apart; only what is filled in by hand stands on paper alone."""
    assert missing(QUOTES[name], her_page(app, QUOTES[name])) == []


def test_a_word_that_is_missing_is_found(app: Flask) -> None:
    """The comparison can fail."""
    page = her_page(app, QUOTE).replace("Why it matters", "Reason")
    assert missing(QUOTE, page) == ["Why it matters"] * 3


@pytest.mark.parametrize("name", sorted(QUOTES))
def test_the_page_is_well_made(app: Flask, name: str) -> None:
    """Headings in order, ids once, every control with a label or a legend, no style or script of its own."""
    page = Page(her_page(app, QUOTES[name]))
    levels = [level for level, _ in page.headings]
    assert levels[0] == 1 and levels.count(1) == 1 and all(b - a <= 1 for a, b in pairwise(levels))
    ids = [one["id"] for _, one in page.tags if "id" in one]
    assert len(ids) == len(set(ids))
    assert not [one for _, one in page.tags for name in one if name == "style" or name.startswith("on")]
    assert all("src" in one for one in page.all("script")) and page.css == ""


@pytest.mark.parametrize("name", sorted(QUOTES))
def test_the_heading_order_is_that_of_the_paper(app: Flask, name: str) -> None:
    """A customer with the paper beside the phone finds everything in its place."""
    quote = QUOTES[name]
    here = [" ".join(text.split()) for _, text in Page(her_page(app, quote)).headings]
    there = [" ".join(text.split()) for _, text in Page(quote_html(quote)).headings]
    assert here == there


def test_what_was_answered_says_of_the_old_part_what_was_approved_or_left_open(app: Flask) -> None:
    """Of what she declined no old part goes anywhere."""
    frozen = changed(FROZEN, quote=rich_quote())
    belt, keepers = "Your old belt goes back.", "Your old parts go back."
    for line, told in (("A", (belt,)), ("1", (keepers,))):
        with app.test_request_context("/q/" + "x" * 43):
            g.locale = frozen.quote.locale
            shown = {"signed_by": "Maud", "has_drawing": False, "at": frozen.quote.made_at}
            values = {**answered_values(frozen, ()), **shown}
            values["open"] = [one for one in frozen.quote.lines if one.label != line]
            values["declined"] = [one for one in frozen.quote.lines if one.label == line]
            page = show("customer/answered.html", **values)[0]
        assert [words for words in (belt, keepers) if words in page] == list(told)


@pytest.mark.parametrize("words", OWNERS_WORDS)
def test_the_owners_words_are_not_in_its_source(app: Flask, words: str) -> None:
    """Words that stand in the quote's owner's side, and nowhere in the page."""
    assert words in repr(QUOTE) and words.casefold() not in her_page(app, QUOTE).casefold()


def test_text_from_outside_stays_text(app: Flask) -> None:
    """What a sheet or a job brings in is shown, and never becomes a tag or an attribute of the page."""
    found = Page(her_page(app, hostile_quote()))
    assert {tag for tag, _ in found.tags} == {tag for tag, _ in Page(her_page(app, rich_quote())).tags} | {"img"} - {
        "img"
    }
    assert not [one for _, one in found.tags for name in one if name.startswith("on")]


def test_a_very_long_quote_is_light(app: Flask) -> None:
    """Sixty lines: under 100 kB; with more lines than totals can be listed for, the server works the total out."""
    html = her_page(app, long_quote())
    assert len(html.encode()) < 100_000 and "data-totals" not in html and 'id="work-out"' in html


def test_no_page_could_print_the_owners_side() -> None:
    """It is taken off before a template sees the quote: no cost, no rule of a fee, no warning."""
    for values in (page_values(QUOTE, {}, (), (), ()), answered_values(FROZEN, ())):
        lines = [one["line"] for key in ("agreed", "add_ons") for one in values[key]]  # type: ignore[attr-defined]
        assert isinstance(values["quote"], Quote) and values["quote"].warnings == ()
        assert all(line.behind is None for line in (*lines, *values["quote"].lines)) and len(lines) == len(QUOTE.lines)
    some = answered_values(FROZEN, ())["open"]
    assert isinstance(some, list) and some and all(line.behind is None for line in some)


def test_what_was_found_and_why_stand_on_lines_of_their_own(app: Flask) -> None:
    """Whoever types on a telephone sets no stops: 'Belt glazed It slips' would be one sentence of two."""
    words = {"found": "Belt glazed", "why": "It slips", "if_declined": "It breaks"}
    lines = tuple(changed(line, **words) if line.kind == "agreed" else line for line in rich_quote().lines)
    quote = changed(rich_quote(), lines=lines)
    for html in (her_page(app, quote), quote_html(quote)):
        plain = " ".join(html.split())
        assert (
            "<p><bdi>Belt glazed</bdi></p><p><bdi>It slips</bdi></p><p>If you decline: <bdi>It breaks</bdi></p>"
            in plain
        )
