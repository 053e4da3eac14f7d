"""The quote at the counter: read as the customer sees it, given out, compared; and what only the owner sees."""

from datetime import date
from decimal import Decimal

import pytest
from flask import Flask

from sourcing.actions.quotes import reprint, write_quote
from sourcing.actions.revisions import revisions
from sourcing.basics.value import changed, from_plain, to_plain
from sourcing.documents.quote_paper import quote_html
from sourcing.storage.jobs import change_job
from sourcing.storage.jobs import job as stored_job
from tests.web.orders_world import desk_of
from tests.web.world import APPROVED, NOW, QUOTED, TAKEN_IN, Browser

PAGE = f"/jobs/{QUOTED}/quote"
COSTS = ("119.00", "16.90", "11.60", "46.00", "133.08", "195.08")
LATER = date(2026, 1, 22)
MARGINS = ("21.97", "28.16", "47.60", "28.57", "1.40", "PB-4038")
"""What the shop pays for the quote's goods; what they earn, by which band, and from whom."""


def test_the_paper_stands_in_a_frame_as_it_was_kept(app: Flask, technician: Browser) -> None:
    """To the letter, with its own styles allowed and nothing else."""
    page = technician.get(PAGE)
    assert f'src="{PAGE}/1.html"' in page and "Quote of job 2026-0003, revision 1" in page
    answer = technician.client.get(f"{PAGE}/1.html")
    assert answer.text == reprint(desk_of(app), QUOTED, 1).paper
    assert "script-src" not in answer.headers["Content-Security-Policy"]
    assert "sandbox" in answer.headers["Content-Security-Policy"]


@pytest.mark.parametrize("kind", ["html", "txt", "xlsx", "pdf"])
def test_the_paper_is_saved_as_a_file(technician: Browser, kind: str) -> None:
    """Its name is made of the job and the revision alone."""
    answer = technician.client.get(f"{PAGE}/1/save.{kind}")
    assert answer.status_code == 200 and len(answer.data) > 500
    assert answer.headers["Content-Disposition"] == f'attachment; filename="quote-2026-0003-1.{kind}"'


def test_a_file_of_another_kind_is_not_there(owner: Browser) -> None:
    """Nothing is guessed of what was meant."""
    assert owner.status(f"{PAGE}/1/save.exe") == 404
    assert owner.status(f"{PAGE}/1/figures.exe") == 404


def test_the_message_can_be_copied(clerk: Browser) -> None:
    """With every add-on and its price with tax, line by line."""
    page = clerk.get(PAGE)
    assert "A Replace the bent belt keepers (pair): $62.08&#10;" in page and "No answer is not a yes." in page


def test_giving_it_is_noted_once_with_who_and_how(app: Flask, technician: Browser) -> None:
    """Also when the form is sent twice."""
    hidden = technician.hidden(PAGE, PAGE)
    pages = [technician.send_again(hidden, PAGE, how="text", sent_to="555-0142") for _ in range(2)]
    assert [page.status_code for page in pages] == [200, 200]
    assert "It is noted that revision 1 was given to the customer" in pages[0].text
    (row,) = revisions(desk_of(app), QUOTED).rows
    assert [(one.how, one.sent_to, one.who, one.at) for one in row.given] == [
        ("text", "555-0142", "Piet Halloway-Rusk", NOW)
    ]


def test_another_way_of_giving_is_refused_and_nothing_noted(app: Flask, clerk: Browser) -> None:
    """What was typed stays in the form."""
    answer = clerk.send(PAGE, how="by pigeon", sent_to="the loft")
    assert answer.status_code == 409 and 'value="the loft"' in answer.text
    assert revisions(desk_of(app), QUOTED).rows[0].given == ()


def test_two_revisions_are_compared_in_the_customers_words(app: Flask, owner: Browser, clerk: Browser) -> None:
    """What changed for the customer; nobody's costs, not even for the owner on this page."""
    write_quote(desk_of(app), QUOTED, quote_html, LATER)
    page = clerk.get(f"{PAGE}?revision=1")
    assert "Revision 2 is newer." in page and "What revision 2 says otherwise than revision 1" in page
    assert "valid to Jan 20, 2026" in page
    assert clerk.get(f"{PAGE}?from=2&to=2").count("Both say the same.") == 1
    assert clerk.status(f"{PAGE}?revision=7") == 409 and clerk.status(f"{PAGE}?from=x") == 409


def test_only_the_owner_reads_the_warnings(owner: Browser, clerk: Browser, technician: Browser) -> None:
    """They tell margins."""
    told = "under the floor of 28 % on price"
    assert told in owner.get(PAGE)
    assert told not in clerk.get(PAGE) and told not in technician.get(PAGE)


def test_everybody_who_gives_it_reads_what_is_doubtful_about_the_parts(
    owner: Browser, clerk: Browser, technician: Browser
) -> None:
    """Line by line, with the way to its evidence. Neither margin nor cost nor supplier is told with them."""
    told = (
        "Line 1, Replace the auger drive belt: Stamped 4L390, both lists say B36: different section",
        "Line 1, Replace the auger drive belt: Cord not stated: ask (asked is aramid).",
        "Line B, Replace the rough idler bearing: Its words differ from ours in one: ball against idler",
        "Line 2, Replace two broken shear pins: Not settled: no list that is about this machine names a part of ours.",
        f'href="/jobs/{QUOTED}/lines/B/which-part"',
    )
    for browser in (owner, clerk, technician):
        page = browser.get(PAGE)
        assert [words for words in told if words not in page] == []
    page = technician.get(PAGE)
    assert [one for one in (*COSTS, *MARGINS, "Pellbrook", "PB-2220", "floor", "margin") if one in page] == []


def test_right_after_writing_a_quote_its_writer_reads_the_doubts(app: Flask, technician: Browser) -> None:
    """Also where it is a new revision, of which the technician sees no warning."""
    assert len(revisions(desk_of(app), QUOTED).rows) == 1
    page = technician.send(f"/jobs/{QUOTED}/write-quote", need_by=str(LATER)).text
    assert "Revision 2 of the quote is written." in page
    assert "Its words differ from ours in one: ball against idler" in page and "floor" not in page


def test_a_revision_for_another_part_than_the_job_asks_for_now_says_so(app: Flask, technician: Browser) -> None:
    """The evidence of the job is about the new part then, and is not told as the quote's."""
    desk = desk_of(app)
    with desk.writing("change job") as pen:
        job = stored_job(pen.connection, QUOTED)
        agreed = tuple(changed(one, part="BRG-IDLER") if one.part == "PIN-SHEAR" else one for one in job.agreed)
        change_job(pen.connection, changed(job, agreed=agreed))
    page = technician.get(PAGE)
    assert "Line 2, Replace two broken shear pins: The job asks for another part by now than this quote." in page
    assert "Line 2, Replace two broken shear pins: Not settled" not in page


def test_the_owner_reads_how_every_figure_came(owner: Browser) -> None:
    """Cost, earned, margin beside markup, and the rule of each figure."""
    page = owner.get(f"{PAGE}/figures")
    for told in ("Pellbrook Power Parts", "$119.00", "28.57", "40.00", "119.00 x 1.40", "374.77 - 312.69"):
        assert told in page, told
    assert owner.client.get(f"{PAGE}/1/figures.xlsx").status_code == 200
    assert "never for the customer" in owner.client.get(f"{PAGE}/1/figures.txt").text
    assert "What a new revision for job 2026-0003 would change" in owner.get(f"{PAGE}/anew?need_by={LATER}")
    assert owner.status(f"{PAGE}/anew") == 409, "the parts can't be here by the job's own day any more"


def test_the_owners_pages_open_to_nobody_else(clerk: Browser, technician: Browser) -> None:
    """Not as a page and not as a file."""
    for address in ("/figures", "/1/figures.xlsx", "/1/figures.txt", "/anew"):
        assert clerk.status(PAGE + address) == technician.status(PAGE + address) == 403


def test_no_cost_and_no_margin_is_in_what_others_get(app: Flask, clerk: Browser, technician: Browser) -> None:
    """Not in the page, its source, or its files; with a cost and a warning nobody would meet by chance."""
    frozen = reprint(desk_of(app), QUOTED, 1)
    assert frozen.quote.lines[0].behind is not None and frozen.quote.warnings
    for browser in (clerk, technician):
        for address in ("", "/1.html", "/1/save.html", "/1/save.txt"):
            text = browser.get(PAGE + address)
            assert [one for one in (*COSTS, *MARGINS) if one in text] == [], address


def test_a_job_without_a_quote_says_so_and_where_one_is_written(clerk: Browser) -> None:
    """The command in the sentence is a link to the page that does it."""
    answer = clerk.client.get(f"/jobs/{TAKEN_IN}/quote")
    assert answer.status_code == 409 and f'href="/jobs/{TAKEN_IN}/write-quote"' in answer.text
    assert clerk.client.get("/jobs/2026-9999/quote").status_code == 409


def test_a_hostile_name_stays_text(app: Flask, owner: Browser) -> None:
    """What a job brings in is never part of the page."""
    from sourcing.actions.job_edit import change_facts, opened

    job, seen = opened(desk_of(app), QUOTED)
    bad = "<script>alert(1)</script>"
    change_facts(
        desk_of(app), seen, from_plain({**to_plain(job.customer), "name": bad}, type(job.customer)), job.machine
    )
    for address in ("quote", "answers", "bill", "not-as-approved", "bill/write", "answers/take-back", "given-away"):
        assert bad not in owner.get(f"/jobs/{QUOTED}/{address}"), address
    assert Decimal("312.69") == reprint(desk_of(app), QUOTED, 1).quote.agreed_total.total.amount
    assert owner.status(f"/jobs/{APPROVED}/quote") == 200
