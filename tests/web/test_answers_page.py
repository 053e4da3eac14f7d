"""Answers taken down at the counter: line by line, once, by whom; the running total; a yes taken back."""

import json
import re
import sqlite3
from contextlib import closing
from datetime import date
from itertools import product
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.answers import Spoken, record, standing
from sourcing.actions.jobs import take_in_job
from sourcing.actions.quotes import write_quote
from sourcing.actions.revisions import answer_record
from sourcing.actions.sendings import given
from sourcing.basics.approval import Approval
from sourcing.documents.amounts import money_text
from sourcing.documents.quote_paper import quote_html
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.desks import COUNTER
from tests.web.orders_world import desk_of
from tests.web.world import APPROVED, ORDERED, QUOTED, Browser, logged_in

LATER = date(2026, 1, 22)
"""A day by which the parts can still be here."""

PAGE = f"/jobs/{QUOTED}/answers"
BACK = f"/jobs/{APPROVED}/answers/take-back"
SAID = {"do": "record", "who": "Maud Tilbrook", "how": "telephone", "contact": "555-0142"}
BY_PHONE = {**SAID, "line-1": "yes", "line-2": "yes", "line-A": "yes", "line-B": "no", "line-C": ""}


def test_a_line_that_is_ordered_is_named_with_what_comes_first(clerk: Browser) -> None:
    """Its yes stands until its order is cancelled."""
    page = clerk.get(f"/jobs/{ORDERED}/answers/take-back")
    assert "Ordered already, so its yes stands:" in page and "Cancel the order of a line first" in page
    assert "Ordered already" not in clerk.get(f"/jobs/{APPROVED}/answers/take-back")


def words(app: Flask, job: str = QUOTED) -> dict[str, str]:
    """The answers by label."""
    return dict(standing(desk_of(app), job).answers.by_label)


def holding(app: Flask, label: str) -> Approval:
    """The answer that holds for a line of the quoted job."""
    return standing(desk_of(app), QUOTED).holding[label]


def test_an_answer_by_telephone_is_taken_down_once(app: Flask, technician: Browser) -> None:
    """By the technician; sent twice it is one occasion. What nobody answered waits."""
    hidden = technician.hidden(PAGE, PAGE)
    fields = {**BY_PHONE, "words": "fine, but not the bearing", "condition": "ready by Friday"}
    pages = [technician.send_again(hidden, PAGE, **fields) for _ in range(2)]
    assert [page.status_code for page in pages] == [200, 200]
    assert "All that is approved comes to $374.77 with tax." in pages[0].text
    assert "Approved: 1, 2, A. Declined: B. Waiting: C." in pages[0].text
    assert words(app) == {"1": "approved", "2": "approved", "A": "approved", "B": "declined", "C": "waiting"}
    (occasion,) = answer_record(desk_of(app), QUOTED).occasions
    assert (occasion.who, occasion.contact, occasion.taken_by) == ("Maud Tilbrook", "555-0142", "Piet Halloway-Rusk")
    assert holding(app, "1").condition == "ready by Friday" and holding(app, "B").condition == ""


def test_after_an_answer_it_is_told_where_a_yes_is_taken_back(app: Flask, clerk: Browser) -> None:
    """The page after it leads there; after a no alone there is nothing to take back."""
    assert f'href="/jobs/{QUOTED}/answers/take-back">Take it back' in clerk.send(PAGE, **BY_PHONE).text
    assert "Take it back</a>" not in clerk.send(PAGE, **SAID, **{"line-C": "no"}).text


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"who": "another", "another": "Nobody Known"}, "Nobody Known"),
        ({"who": ""}, "may"),
        ({"how": ""}, "how"),
        ({"line-1": "", "line-2": "", "line-A": "", "line-B": ""}, "answer"),
        ({"line-1": "no", "line-2": "no", "line-A": "no", "condition": "x"}, "condition"),
    ],
)
def test_what_is_refused_keeps_what_was_filled_in(app: Flask, clerk: Browser, wrong: dict[str, str], told: str) -> None:
    """Nothing is recorded; the marks and words are in the form again."""
    fields = {**BY_PHONE, "words": "said so", **wrong}
    answer = clerk.send(PAGE, **fields)
    refused = re.search(r'id="refused".*?</div>', answer.text, re.DOTALL)
    assert answer.status_code == 409 and refused and told in refused.group(0)
    assert ">said so</textarea>" in answer.text and 'value="555-0142"' in answer.text
    for label in "12AB":
        value = fields[f"line-{label}"]
        assert f'name="line-{label}" value="{value}" checked' in answer.text
    assert set(words(app).values()) == {"waiting"}


def test_a_contrary_answer_is_asked_about_before_it_counts(app: Flask, clerk: Browser) -> None:
    """Two desks can't overwrite each other unseen: the box appears with the refusal, and only then it is taken."""
    clerk.send(PAGE, **BY_PHONE)
    assert 'name="instead"' not in clerk.get(PAGE)
    answer = clerk.send(PAGE, **SAID, **{"line-B": "yes"})
    assert answer.status_code == 409 and 'name="instead"' in answer.text
    assert words(app)["B"] == "declined"
    answer = clerk.send(PAGE, **SAID, **{"line-B": "yes", "instead": "1"})
    assert answer.status_code == 200 and words(app)["B"] == "approved"
    assert "a later answer took its place" in answer.text


def test_the_total_is_worked_out_without_writing_anything_down(app: Flask, clerk: Browser) -> None:
    """What was marked and typed stays."""
    answer = clerk.send(PAGE, **{**BY_PHONE, "do": "total", "who": "", "words": "so far"})
    assert answer.status_code == 200 and '<output id="total" class="figure">$374.77</output>' in answer.text
    assert 'name="line-A" value="yes" checked' in answer.text and ">so far</textarea>" in answer.text
    assert set(words(app).values()) == {"waiting"}


def listed(page: str) -> tuple[list[str], list[str]]:
    """The totals the script looks up, and the labels they are for."""
    totals, asked = re.findall(r'data-totals="([^"]+)" data-asked="([^"]+)"', page)[0]
    return totals.split("|"), asked.split()


def test_the_totals_for_the_script_are_what_the_server_works_out(app: Flask, clerk: Browser) -> None:
    """The list is at the number the marks make to the base of three; the capped fee and the tax are in it."""
    record(desk_of(app), QUOTED, Spoken(yes=("A",), no=("B",), who="Maud Tilbrook", how="telephone"))
    totals, labels = listed(clerk.get(PAGE))
    assert labels == ["1", "2", "A", "B", "C"] and len(totals) == 3**5
    hidden, marks = clerk.hidden(PAGE, PAGE), ("", "yes", "no")
    for said in list(product(range(3), repeat=5))[::17]:
        fields = {f"line-{label}": marks[mark] for label, mark in zip(labels, said, strict=True)}
        answer = clerk.send_again(hidden, PAGE, do="total", **fields)
        total = totals[sum(mark * 3**at for at, mark in enumerate(said))]
        assert f'class="figure">{total}</output>' in answer.text, said


def test_marks_alone_are_worked_out_at_an_address_back_can_lead_to(clerk: Browser) -> None:
    """Lines and nothing else stand in it: who said it, and in which words, is in no address."""
    hidden, marks = clerk.hidden(PAGE, PAGE), {"line-1": "yes", "line-C": "no", "line-2": ""}
    answer = clerk.client.post(PAGE, data={**hidden, "do": "total", **marks})
    assert answer.status_code == 303 and answer.location == f"{PAGE}?line-1=yes&line-C=no#comes-to"
    shown = clerk.get(answer.location)
    assert 'name="line-1" value="yes" checked' in shown and 'name="line-C" value="no" checked' in shown
    answer = clerk.client.post(PAGE, data={**hidden, "do": "total", **marks, "words": "after lunch"})
    assert answer.status_code == 200 and "after lunch</textarea>" in answer.text


@pytest.mark.parametrize("said", ["yyyyy", "yn-y-", "ny---", "nnnnn", "-y-yn", "y---y"])
def test_the_running_total_is_what_comes_of_it_with_freight_of_its_own(app: Flask, owner: Browser, said: str) -> None:
    """Freight billed on lines of its own goes along with the agreed parts, and has a mark where it is for add-ons."""
    job = job_with_freight(app)
    page = f"/jobs/{job}/answers"
    totals, labels = listed(owner.get(page))
    assert "Goes with the answers to its parts." in owner.get(page)
    marks = dict(zip("-yn", ("", "yes", "no"), strict=True))
    fields = {f"line-{label}": marks[mark] for label, mark in zip(labels, said, strict=False)}
    expected = totals[sum("-yn".index(mark) * 3**at for at, mark in zip(range(len(labels)), said, strict=False))]
    answer = owner.send(page, **SAID, **fields)
    assert answer.status_code == 200, answer.text
    now = standing(desk_of(app), job)
    assert money_text(now.approved.total, now.quote.locale) == expected


def job_with_freight(app: Flask) -> str:
    """The demo's job whose inbound freight is billed on lines of its own."""
    path = Path(app.config[COUNTER].database).with_name("job.toml")
    text = (demo_folder() / "job.toml").read_text(encoding="utf-8")
    path.write_text(f'freight_to_customer = "billed"\n{text}', encoding="utf-8")
    desk = desk_of(app)
    job = take_in_job(desk, path).number
    write_quote(desk, job, quote_html, LATER)
    return job


def test_what_is_ordered_can_not_be_declined_or_taken_back(clerk: Browser) -> None:
    """There is no mark for it, and no box."""
    page = clerk.get(f"/jobs/{ORDERED}/answers")
    assert 'name="line-1" value="yes"' in page and 'name="line-1" value="no"' not in page
    assert "There is no yes that could be taken back" in clerk.get(f"/jobs/{ORDERED}/answers/take-back")


def test_a_yes_is_taken_back_and_stays_on_record(app: Flask, technician: Browser) -> None:
    """The line waits again; who took it back stands there."""
    answer = technician.send(BACK, line="A", who="Maud Tilbrook", how="in person", words="too dear")
    assert answer.status_code == 200 and "Taken back: A." in answer.text
    assert words(app, APPROVED)["A"] == "waiting" and words(app, APPROVED)["1"] == "approved"
    assert "taken back" in technician.get(f"/jobs/{APPROVED}/answers")
    assert "too dear" in technician.client.get(f"/jobs/{APPROVED}/answers.txt").text


def test_nothing_ticked_takes_nothing_back(app: Flask, clerk: Browser) -> None:
    """It is refused, and what was typed stays."""
    answer = clerk.send(BACK, who="Maud Tilbrook", how="in person", words="hm")
    assert answer.status_code == 409 and ">hm</textarea>" in answer.text
    assert words(app, APPROVED)["A"] == "approved"


def test_which_revision_was_answered_is_asked_where_only_an_older_one_was_given(app: Flask, clerk: Browser) -> None:
    """Nothing is recorded until it is said; then the answer is to that revision."""
    desk = desk_of(app)
    given(desk, QUOTED, 1, "telephone", "")
    write_quote(desk, QUOTED, quote_html, LATER)
    assert f'href="{PAGE}?revision=1"' in clerk.get(PAGE)
    assert clerk.send(PAGE, **SAID, **{"line-C": "no"}).status_code == 409
    older = f"{PAGE}?revision=1"
    assert 'data-totals="' not in clerk.get(older)
    assert clerk.send(older, older, **SAID, **{"line-C": "no"}).status_code == 200
    assert answer_record(desk, QUOTED).occasions[0].revision == 1


def test_nobody_sees_a_cost_among_the_answers(app: Flask) -> None:
    """Not in the page and not in the record."""
    for role in ("technician", "clerk", "owner"):
        browser = logged_in(app, role)
        for address in (f"/jobs/{ORDERED}/answers", f"/jobs/{ORDERED}/answers.txt", BACK):
            text = browser.get(address)
            assert not any(one in text for one in ("119.00", "PB-4038", "Pellbrook")), (role, address)


def test_who_asks_on_the_telephone_and_who_works_on_the_machine_read_what_becomes_of_the_old_part(
    app: Flask, tmp_path: Path, technician: Browser
) -> None:
    """As the customer's paper says it; on the job's page it is to be kept."""
    told = ("Your old part goes back.", "Tell us if you want to keep it.")
    with closing(sqlite3.connect(tmp_path / "shop.db")) as kept, kept:
        (body,) = kept.execute("SELECT body FROM quote_revisions WHERE job = ?", (QUOTED,)).fetchone()
        quote = json.loads(body)
        quote["lines"][0]["core_words"] = told
        kept.execute("UPDATE quote_revisions SET body = ? WHERE job = ?", (json.dumps(quote), QUOTED))
    assert f"<p><strong>{told[0]}</strong> {told[1]}</p>" in technician.get(PAGE)
    assert technician.get(f"/jobs/{QUOTED}").count("Keep the old part: it goes back to the supplier.") == 1
