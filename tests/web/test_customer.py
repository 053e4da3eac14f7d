"""The customer's page: read, answered once, kept; and what it never shows."""

import re
import sqlite3
from datetime import datetime
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.answers import Spoken, record, standing
from sourcing.actions.desk import Desk
from sourcing.actions.link_answers import PAGE
from sourcing.actions.quotes import reprint
from sourcing.basics.money import Money
from sourcing.basics.quote import Quote
from sourcing.basics.value import from_plain, to_plain
from sourcing.documents.amounts import money_text
from sourcing.web.desks import STORE
from tests.documents.html_reader import Page
from tests.web.linked import HER, customer, made, made_of_another, send
from tests.web.world import NOW, QUOTED, TAKEN_IN, Browser


def desk(app: Flask, at: datetime = NOW) -> Desk:
    """A desk of the shop beside the page."""
    return Desk(store=app.config[STORE], at=at, who="Oona Brandeth")


def words(app: Flask, job: str = QUOTED) -> dict[str, str]:
    """The answers by label."""
    return dict(standing(desk(app), job).answers.by_label)


def test_it_is_read_and_answered_without_a_log_in_and_without_cookies(app: Flask, clerk: Browser) -> None:
    """The answers are kept as given on her page, and the page becomes the confirmation."""
    page, her = made(clerk), customer(app)
    answer = send(her, page, line_1="approve", line_2="approve", line_A="approve", line_B="decline", words="thanks")
    assert answer.status_code == 200 and "Your answers are with us" in answer.text
    assert her.client.get_cookie("counter") is None
    assert words(app) == {"1": "approved", "2": "approved", "A": "approved", "B": "declined", "C": "waiting"}
    text = Page(her.get(page)).text
    for told in (
        "You approved Line 1: Replace the auger drive belt approved $281.80 before tax",
        "You declined Line B: Replace the rough idler bearing declined $50.30",
        "You left open Line C: Replace the worn scraper bar waiting $116.60",
        "All that is approved comes to $374.77 with tax", "By Maud Tilbrook", "Jan 15, 2026, 10:00",
        "Quote for job 2026-0003, revision 1", "Your words thanks",
        reprint(desk(app), QUOTED, 1).sha256,
    ):  # fmt: skip
        assert told in text, told


def test_what_was_answered_before_stands_on_it_for_the_total_counts_it(app: Flask, clerk: Browser) -> None:
    """Her yes by telephone with its condition, her no, and on which day; whatever she says later."""
    by_phone = Spoken(yes=("1", "2"), no=("C",), who=HER, how="telephone", contact="555-0142", conditions="By Friday")
    record(desk(app), QUOTED, by_phone)
    page, her = made(clerk), customer(app)
    assert send(her, page, line_A="approve").status_code == 200
    record(desk(app), QUOTED, Spoken(yes=("B",), who=HER, how="telephone", contact="555-0142"))
    text = Page(her.get(page)).text
    for told in (
        "You approved Line A: ",
        "Answered before Line 1: Replace the auger drive belt approved $281.80 before tax "
        "Answered on Jan 15, 2026. On condition that: By Friday",
        "Line C: Replace the worn scraper bar declined $116.60 before tax Answered on Jan 15, 2026.",
        "You left open Line B: Replace the rough idler bearing waiting",
        "All that is approved comes to $374.77 with tax",
    ):
        assert told in text, told


def test_the_total_is_worked_out_without_script(app: Flask, clerk: Browser) -> None:
    """What was marked and typed stays, nothing is kept."""
    page, her = made(clerk), customer(app)
    fields = {"line-1": "approve", "line-2": "approve", "line-A": "approve", "line-C": "decline"}
    answer = her.send(page, do="total", name="Mau", words="so far", **fields)
    assert answer.status_code == 200 and '<output id="total" class="figure">$374.77</output>' in answer.text
    assert 'value="Mau"' in answer.text and ">so far</textarea>" in answer.text
    assert 'name="line-A" value="approve" checked' in answer.text
    assert 'name="line-C" value="decline" checked' in answer.text
    assert set(words(app).values()) == {"waiting"}


def test_marks_alone_are_worked_out_at_an_address_back_can_lead_to(app: Flask, clerk: Browser) -> None:
    """Lines and nothing else stand in it: what she wrote herself is in no address."""
    page, her = made(clerk), customer(app)
    hidden = her.hidden(page, page)
    marks = {"line-1": "approve", "line-2": "approve", "line-C": "decline", "line-A": "", "drawing": "x"}
    answer = her.client.post(page, data={**hidden, "do": "total", **marks})
    assert answer.status_code == 303
    assert answer.location == f"{page}?line-1=approve&line-2=approve&line-C=decline#comes-to"
    shown = her.get(answer.location)
    assert 'class="figure">$312.69</output>' in shown and 'name="line-C" value="decline" checked' in shown
    for written in ("name", "conditions", "words"):
        answer = her.client.post(page, data={**hidden, "do": "total", **marks, written: "so far"})
        assert answer.status_code == 200 and "so far" in answer.text
    assert set(words(app).values()) == {"waiting"}


def test_the_totals_for_the_script_are_those_of_every_choice(app: Flask, clerk: Browser) -> None:
    """The list the script looks up, against the total the server works out for the same marks."""
    page, her = made(clerk), customer(app)
    totals, asked = re.findall(r'data-totals="([^"]+)" data-asked="([^"]+)"', her.get(page))[0]
    labels = asked.split()
    assert labels == ["1", "2", "A", "B", "C"] and len(totals.split("|")) == 32
    hidden = her.hidden(page, page)
    for place, total in enumerate(totals.split("|")):
        marks = {f"line-{label}": "approve" for at, label in enumerate(labels) if place & 1 << at}
        answer = her.send_again(hidden, page, do="total", **marks)
        assert f'class="figure">{total}</output>' in answer.text


def test_a_refusal_keeps_what_was_filled_in(app: Flask, clerk: Browser) -> None:
    """And tells no name that may answer."""
    page, her = made(clerk), customer(app)
    answer = send(her, page, line_A="approve", name="Nobody Known", conditions="by <b>Friday</b>")
    assert answer.status_code == 409 and "has not noted &#39;Nobody Known&#39;" in answer.text
    assert "by &lt;b&gt;Friday&lt;/b&gt;</textarea>" in answer.text
    assert 'name="line-A" value="approve" checked' in answer.text
    assert set(words(app).values()) == {"waiting"}


def test_a_double_click_and_the_back_button_answer_once(app: Flask, clerk: Browser) -> None:
    """The same form leads to the same confirmation; another tab's is told that it was not taken."""
    page, her = made(clerk), customer(app)
    first, other = her.hidden(page, page), her.hidden(page, page)
    fields = {"do": "send", "name": HER, "line-1": "approve", "line-2": "approve"}
    for hidden, status in ((first, 200), (first, 200), (other, 409)):
        answer = her.send_again(hidden, page, **fields)
        assert answer.status_code == status and "Your answers are with us" in answer.text
    assert "was not taken" in answer.text
    assert words(app)["1"] == "approved"


def test_the_secret_is_not_kept_with_the_form_either(app: Flask, clerk: Browser, tmp_path: Path) -> None:
    """A form sent is remembered with the page it led to: that one must not hold the secret."""
    page = made(clerk)
    send(customer(app), page, line_1="approve", line_2="approve", name="Wrong Name")
    send(customer(app), page, line_1="approve", line_2="approve")
    with sqlite3.connect(tmp_path / "shop.db") as kept:
        kept.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        dumped = "\n".join(kept.iterdump())
    assert "customer_links" in dumped and page.removeprefix("/q/") not in dumped
    assert all(page.removeprefix("/q/").encode() not in file.read_bytes() for file in tmp_path.iterdir())


def amounts(value: object) -> set[str]:
    """Every amount of money in a value."""
    if isinstance(value, Money):
        return {str(value.amount)}
    if isinstance(value, (tuple, list)):
        return {one for each in value for one in amounts(each)}
    fields = getattr(value, "__struct_fields__", ())
    return {one for name in fields for one in amounts(getattr(value, name))}


def owners_side(quote: Quote) -> set[str]:
    """All that stands behind the lines, but amounts the customer reads anyway."""
    behind = [line.behind for line in quote.lines if line.behind]
    bare = from_plain({**to_plain(quote), "lines": [{**to_plain(one), "behind": None} for one in quote.lines]}, Quote)
    secret = {one for each in behind for one in amounts(each)} - amounts(bare) - {"0.00", "0"}
    said = {text for one in behind for text in (one.supplier, one.supplier_number, one.price_rule, one.landed_rule)}
    return secret | {text for text in said if text} | {text for one in behind for text in one.warnings}


@pytest.mark.parametrize("by_telephone", [False, True])
def test_nothing_of_the_owners_side_is_in_any_of_her_pages(app: Flask, owner: Browser, by_telephone: bool) -> None:
    """No cost, supplier, number of a supplier, rule or warning: before and after, refused, and in the paper; also
    where some of it was answered by telephone meanwhile."""
    page, her = made(owner), customer(app)
    if by_telephone:
        said = Spoken(yes=("agreed", "A"), no=("B",), who=HER, how="telephone", contact="555-0142")
        record(desk(app), QUOTED, said)
    kept = reprint(desk(app), QUOTED, None).quote
    hidden = owners_side(kept)
    assert len(hidden) > 12
    pages = [her.get(page), her.get(f"{page}/paper"), send(her, page, name="Nobody").text]
    pages += [send(her, page, line_C="decline" if by_telephone else "approve").text, her.get(page)]
    for text in pages:
        body = re.sub(
            r'data-totals="[^"]*"|[?&]v=\w+|name="once" value="[^"]+"|<style>.*?</style>', "", text, flags=re.S
        )
        shown = Page(body).text
        for one in hidden:
            pattern = rf"(?<![\w.]){re.escape(one)}(?![\w])"
            assert not re.search(pattern, body, re.I), f"{one} in {shown[:200]}"
        assert "margin" not in shown.lower() and "markup" not in shown.lower()


def test_what_is_hidden_would_be_found(app: Flask) -> None:
    """The comparison above can fail: the owner's explanation holds those words."""
    kept = reprint(desk(app), QUOTED, None).quote
    assert any(re.search(rf"(?<![\w.]){re.escape(one)}(?![\w])", repr(kept)) for one in owners_side(kept))


def test_a_link_opens_its_own_quote_only(app: Flask, clerk: Browser) -> None:
    """Nothing of another job is reached through it; nor anything of the shop."""
    page, her = made_of_another(clerk), customer(app)
    assert TAKEN_IN in her.get(page) and QUOTED not in her.get(page)
    for other in (f"{page}/../{QUOTED}", f"{page}/photo/1.jpg", f"{page}/signature.png", f"{page}/links"):
        assert her.status(other) == 404
    assert her.status(f"/jobs/{TAKEN_IN}/quote") == 302


def test_an_answer_by_telephone_meanwhile_is_said_without_a_name(app: Flask, clerk: Browser) -> None:
    """Contrary answers are refused; what is the same is taken."""
    page, her = made(clerk), customer(app)
    hidden = her.hidden(page, page)
    by_phone = Spoken(yes=("1", "2"), no=("A",), who=HER, how="telephone", contact="555-0142")
    record(desk(app), QUOTED, by_phone)
    answer = her.send_again(hidden, page, **{"do": "send", "name": HER, "line-1": "approve", "line-A": "approve"})
    assert answer.status_code == 409 and "another answer to one of these lines" in answer.text
    assert "The shop was given a no to this line on Jan 15, 2026" in answer.text
    assert 'name="line-A"' not in answer.text and words(app)["A"] == "declined"
    assert send(her, page, line_B="approve").status_code == 200
    assert words(app)["B"] == "approved"


def test_todays_page_tells_of_the_answer_by_itself(app: Flask, clerk: Browser) -> None:
    """The job waits for the shop then, not for the customer."""
    page = made(clerk)

    def waits_for_us() -> bool:
        found = re.findall(r"<section.*?</section>", clerk.get("/"), re.S)
        return any("Waits for us" in section and QUOTED in section for section in found)

    customer(app).get(page)
    assert not waits_for_us()
    send(customer(app), page, line_1="approve", line_2="approve", line_A="decline", line_B="decline", line_C="decline")
    assert waits_for_us()


def test_the_deed_is_signed_by_her_page(app: Flask, clerk: Browser) -> None:
    """Also where somebody of the shop is logged in on the tablet."""
    page = made(clerk)
    answer = send(clerk, page, line_1="approve", line_2="approve")
    assert answer.status_code == 200 and "Oona Brandeth" not in answer.text
    held = standing(desk(app), QUOTED).holding["1"]
    assert (held.taken_by, held.how, held.contact, held.who) == (PAGE, PAGE, "link 1", HER)


def test_another_sites_form_is_refused_and_the_address_goes_to_no_other_site(app: Flask, clerk: Browser) -> None:
    """Without a CSRF token the Origin is what is looked at; the policy names no address to others."""
    page, her = made(clerk), customer(app)
    fields = {**her.hidden(page, page), "do": "send", "name": HER, "line-1": "approve", "line-2": "approve"}
    for origin in ("https://evil.example", "null"):
        assert her.client.post(page, data=fields, headers={"Origin": origin}).status_code == 403
    assert set(words(app).values()) == {"waiting"}
    assert her.client.get(page).headers["Referrer-Policy"] == "same-origin"
    assert her.client.get(page).headers["Cache-Control"] == "no-store"
    assert her.client.post(page, data=fields, headers={"Origin": "http://localhost"}).status_code == 303


def test_guessing_is_slowed_down_and_reading_is_not(app: Flask, clerk: Browser) -> None:
    """Thirty wrong links a minute from one address; what opens is not counted."""
    page, her = made(clerk), customer(app)
    assert {her.status(page) for _ in range(40)} == {200}
    assert [her.status(f"/q/{at:043d}") for at in range(31)][-2:] == [404, 429]


def test_every_amount_is_written_as_the_quote_writes_it(app: Flask, clerk: Browser) -> None:
    """By the quote's own locale."""
    kept = reprint(desk(app), QUOTED, None).quote
    text = Page(customer(app).get(made(clerk))).text
    for total in (kept.agreed_total.total, kept.everything_total.total, *(one.price for one in kept.add_on_prices)):
        assert money_text(total, kept.locale) in text
