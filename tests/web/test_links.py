"""The shop's side of customers' links: made and shown once, scanned, handed over, listed, ended."""

import re
from base64 import b64encode
from io import BytesIO
from urllib.parse import unquote

import pytest
from flask import Flask
from PIL import Image

from sourcing.storage.after_quote import Sending, sendings
from sourcing.web.desks import STORE
from tests.web.linked import ADDRESS, HER, customer, links_page, made, made_of_another, send
from tests.web.world import CLERK, NOW, ORDERED, QUOTED, TAKEN_IN, Browser, logged_in


@pytest.mark.parametrize("role", ["technician", "clerk", "owner"])
def test_everybody_of_the_shop_can_make_a_link(app: Flask, role: str) -> None:
    """It opens for somebody without a log-in, and the list says by whom it was made."""
    somebody = logged_in(app, role)
    page = made(somebody)
    assert "Quote for job 2026-0003" in customer(app).get(page)
    listed = somebody.get(links_page())
    assert "Link 1 to revision 1" in listed and "open until Jan 20, 2026" in listed and page not in listed


def test_the_form_sent_twice_shows_the_same_address_and_makes_one_link(clerk: Browser) -> None:
    """A double click, and the page loaded again."""
    hidden = clerk.hidden(links_page(), links_page())
    first, second = (clerk.send_again(hidden, links_page(), until="2026-01-18") for _ in range(2))
    assert first.status_code == second.status_code == 200
    assert ADDRESS.findall(first.text)[0] == ADDRESS.findall(second.text)[0]
    listed = clerk.get(links_page())
    assert "Link 1 to" in listed and "Link 2 to" not in listed and "open until Jan 18, 2026" in listed


@pytest.mark.parametrize(
    ("until", "words"), [("2026-01-14", "open until"), ("2026-02-20", "open until"), ("soon", "no day")]
)
def test_a_day_that_makes_no_sense_comes_back(clerk: Browser, until: str, words: str) -> None:
    """With what was typed, and no link."""
    answer = clerk.send(links_page(), until=until)
    assert answer.status_code == 409 and words in answer.text and f'value="{until}"' in answer.text
    assert "None yet." in answer.text


def test_a_job_without_a_quote_offers_no_link(clerk: Browser) -> None:
    """And a job that is not there is told."""
    page = clerk.get(links_page(TAKEN_IN))
    assert "has no quote yet" in page and "Make the link" not in page
    assert clerk.status(links_page("2026-0099")) == 409


def test_the_code_holds_the_whole_address(clerk: Browser) -> None:
    """Read back by its own modules: the image is the QR code of the address that stands under it."""
    import segno

    text = clerk.send(links_page()).text
    address = re.findall(r'<a href="(http://127\.0\.0\.1:8420/q/[^"]+)"', text)[0]
    image = re.findall(r'src="(data:image/svg\+xml[^"]+)"', text)[0]
    code = segno.make(address, error="m", micro=False)
    path = re.findall(r"d='([^']+)'", unquote(image).replace("&#39;", "'"))[-1]
    assert path in code.svg_inline(scale=5).replace('"', "'")
    assert "this computer only" in text


def test_the_address_is_told_to_be_shown_once_and_is_on_no_other_page(clerk: Browser) -> None:
    """Neither in the job's history nor in the list."""
    secret = made(clerk).removeprefix("/q/")
    for page in (links_page(), f"/jobs/{QUOTED}/history", f"/jobs/{QUOTED}/quote", "/"):
        assert secret not in clerk.get(page) if clerk.status(page) == 200 else True


def test_handing_the_tablet_over_logs_this_browser_out(app: Flask, clerk: Browser) -> None:
    """It shows the customer's page, and then nothing of the shop."""
    answer = clerk.send(links_page())
    form = re.findall(r'<form method="post" action="([^"]+hand-over)">(.*?)</form>', answer.text, re.DOTALL)[0]
    hidden = dict(re.findall(r'name="([^"]+)" value="([^"]*)"', form[1]))
    over = clerk.client.post(form[0], data=hidden, follow_redirects=True)
    assert "Quote for job 2026-0003" in over.text and "Log out" not in over.text
    assert clerk.status(links_page()) == 302


def test_handing_over_leads_to_no_other_site(clerk: Browser) -> None:
    """Whatever is sent as a secret stays a part of our own address."""
    token = clerk.hidden(links_page(), links_page())["csrf_token"]
    answer = clerk.client.post(f"{links_page()}/hand-over", data={"csrf_token": token, "secret": "//evil.example/x"})
    assert answer.headers["Location"].startswith("/q/")


def test_a_link_is_ended_after_a_question(app: Flask, clerk: Browser) -> None:
    """It opens nothing then; asked again it says so."""
    page, end = made(clerk), f"{links_page()}/1/revoke"
    assert "can't be taken back" in clerk.get(end)
    assert "The link opens nothing any more." in clerk.send(end).text
    assert customer(app).status(page) == 404
    assert "revoked" in clerk.get(links_page()) and "End link 1" not in clerk.get(links_page())
    assert clerk.send(end).status_code == 409
    assert clerk.status(f"{links_page(ORDERED)}/1/revoke") == 404


def test_a_new_link_ends_the_older_one(app: Flask, clerk: Browser) -> None:
    """Of the same job; another job's stays."""
    first, other, second = made(clerk), made_of_another(clerk), made(clerk)
    assert [customer(app).status(page) for page in (first, other, second)] == [404, 200, 200]


def test_the_signature_is_shown_to_the_shop_as_an_image_and_to_nobody_else(app: Flask, clerk: Browser) -> None:
    """With the policy of a file, so that it can never be a page."""
    drawn = BytesIO()
    Image.linear_gradient("L").save(drawn, format="PNG")
    url = "data:image/png;base64," + b64encode(drawn.getvalue()).decode()
    send(customer(app), made(clerk), line_1="approve", line_2="approve", drawing=url)
    assert "Signature of Maud Tilbrook" in clerk.get(links_page())
    answer = clerk.client.get(f"{links_page()}/1/signature.png")
    assert answer.content_type == "image/png" and answer.data.startswith(b"\x89PNG")
    assert "sandbox" in answer.headers["Content-Security-Policy"]
    assert clerk.status(f"{links_page(ORDERED)}/1/signature.png") == 404
    assert customer(app).status(f"{links_page()}/1/signature.png") == 302


def test_a_link_counts_as_given_when_it_is_opened_and_not_when_it_is_made(app: Flask, clerk: Browser) -> None:
    """Nor when somebody of the shop looks at it; the job waits for the customer only from then on."""
    page = made(clerk)
    clerk.get(page)
    assert "Nobody has opened it yet" in clerk.get(links_page())
    assert not _sendings(app)
    for _ in range(2):
        customer(app).get(page)
    (given,) = _sendings(app)
    assert (given.how, given.sent_to, given.who, given.at) == ("customer's page", "link 1", CLERK, NOW)
    assert "The customer has it since Jan 15, 2026, 10:00" in _plain(clerk.get(links_page()))


def test_somebody_may_say_that_a_link_was_given(app: Flask, clerk: Browser) -> None:
    """Once, and not of a link that was ended."""
    made(clerk)
    to = f"{links_page()}/1/given"
    hidden = clerk.hidden(links_page(), to)
    assert "the customer has link 1" in clerk.send_again(hidden, to).text
    clerk.send_again(hidden, to)
    assert [one.who for one in _sendings(app)] == [CLERK]
    made(clerk)
    assert clerk.send(links_page(), to.replace("/1/", "/2/")).status_code == 200
    refused = clerk.client.post(to, data={**hidden, "once": "another form"}, follow_redirects=True)
    assert refused.status_code == 409 and len(_sendings(app)) == 2


def test_an_answer_through_a_link_says_that_it_was_given(app: Flask, clerk: Browser) -> None:
    """Also where she answered at the shop's own screen."""
    page = made(clerk)
    assert send(clerk, page, line_1="approve", line_2="approve").status_code == 200
    assert [one.sent_to for one in _sendings(app)] == ["link 1"]


def test_no_link_is_made_where_every_line_is_answered(app: Flask, clerk: Browser) -> None:
    """The page says so, and the form of a page left open is refused with a sentence."""
    hidden = clerk.hidden(links_page(), links_page())
    page = clerk.get(links_page(ORDERED))
    assert "Every line of revision 1 is answered" in page and "Make the link" not in page
    refused = clerk.send_again(hidden, links_page(ORDERED))
    assert refused.status_code == 409 and "a link would ask the customer nothing" in refused.text


def test_a_link_to_an_older_quote_leaves_her_what_she_wrote_and_the_telephone(app: Flask, clerk: Browser) -> None:
    """An address that leads nowhere shows neither."""
    page, her = made(clerk), customer(app)
    hidden = her.hidden(page, page)
    clerk.send(f"/jobs/{QUOTED}/write-quote", need_by="2026-01-30")
    words = {"do": "send", "name": HER, "line-1": "approve", "words": "Please ring at noon."}
    stale = her.send_again(hidden, page, **words)
    assert stale.status_code == 410 and "Please ring at noon." in stale.text and "The shop's telephone" in stale.text
    assert "shop's telephone" not in her.client.get(f"/q/{'A' * 43}").text


def _sendings(app: Flask) -> list[Sending]:
    with app.config[STORE].reading() as connection:
        return sendings(connection, QUOTED)


def _plain(page: str) -> str:
    return page.replace("\u202f", " ")
