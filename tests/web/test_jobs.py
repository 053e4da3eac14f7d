"""Jobs at the counter: taken in, changed after tear-down, two people at once, what the bench may not see."""

import re
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.job_edit import opened
from sourcing.web.desks import STORE
from tests.web.world import APPROVED, NOW, ORDERED, ORDERING, TAKEN_IN, Browser, counter, logged_in

NEW = {
    "name": "Ada Brenmoor",
    "machine_description": "two-stage snow thrower",
    "complaint": "The auger stands still.",
    "title": "Replace the auger drive belt",
    "part": "OV 20 417",
    "quantity": "1",
    "hours": "1.5",
    "received_on": "2026-01-15",
}


def kept(app: Flask, number: str) -> tuple[object, ...]:
    """The titles of a job's lines as they are kept."""
    job = opened(Desk(store=app.config[STORE], at=NOW, who="x"), number)[0]
    return tuple(line.title for _, line in job.labelled())


def test_a_job_is_taken_in_with_its_part_named_by_any_number(technician: Browser, app: Flask) -> None:
    """The component maker's number is as good as our own code."""
    done = technician.send("/jobs/new", **NEW)
    assert done.status_code == 200 and done.request.path == "/jobs/2026-0005"
    assert "BELT-AUGER" in done.text and "is taken in as 2026-0005" in done.text
    assert "rite the quote: <a" not in done.text  # what is next is said once
    assert kept(app, "2026-0005") == ("Replace the auger drive belt",)


def test_sent_twice_a_job_is_taken_in_once(technician: Browser, app: Flask) -> None:
    """A double click, or the back button and once more."""
    hidden = technician.hidden("/jobs/new", "/jobs/new")
    first, second = (technician.send_again(hidden, "/jobs/new", **NEW) for _ in range(2))
    assert first.request.path == second.request.path == "/jobs/2026-0005"
    assert technician.status("/jobs/2026-0006") == 409


@pytest.mark.parametrize(
    ("wrong", "told"),
    [
        ({"part": "NO-SUCH-77"}, "no part"),
        ({"hours": "a while"}, "a while"),
        ({"quantity": "-1"}, "-1"),
        ({"received_on": "12/31"}, "is no day"),
        ({"title": ""}, "no words"),
        ({"name": " "}, "Customer&#39; is blank"),
        ({"email": "nope"}, "E-mail&#39; is &#39;nope&#39;, which is no address"),
    ],
)
def test_what_can_not_be_is_told_and_what_was_typed_stays(
    technician: Browser, wrong: dict[str, str], told: str
) -> None:
    """Nothing is kept; the form comes back as it was."""
    page = technician.send("/jobs/new", **{**NEW, **wrong})
    assert page.status_code == 409 and told in re.sub(r"\s+", " ", page.text), page.text[:3000]
    assert "The auger stands still." in page.text
    assert technician.status("/jobs/2026-0005") == 409


def test_an_add_on_is_added_and_taken_out(technician: Browser, app: Flask) -> None:
    """With what the customer needs to decide."""
    words = {"found": "bent", "why": "they hold the belt", "if_declined": "it may jump off"}
    page = f"/jobs/{TAKEN_IN}/new-line"
    technician.send(page, kind="add-on", title="Grease the drive", hours="0.2", **words)
    assert kept(app, TAKEN_IN)[-1] == "Grease the drive"
    technician.send(f"/jobs/{TAKEN_IN}/lines/D/take-out")
    assert "Grease the drive" not in kept(app, TAKEN_IN)


def test_the_second_of_two_who_change_one_line_overwrites_nothing(app: Flask) -> None:
    """She is told to look first."""
    one, other = logged_in(app, "technician"), logged_in(app, "clerk")
    page = f"/jobs/{TAKEN_IN}/lines/A"
    mine = other.hidden(page, page)
    one.send(page, title="Straighten the keepers", hours="0.5")
    refused = other.send_again(mine, page, title="Something else", hours="0.1")
    assert refused.status_code == 409 and "changed job" in refused.text and "Something else" in refused.text
    assert kept(app, TAKEN_IN)[2] == "Straighten the keepers"


def test_who_has_read_what_another_changed_may_keep_her_own_in_its_place(app: Flask) -> None:
    """Of customer and machine too: what stands now is shown beside what she typed, and is not changed unread."""
    one, other = logged_in(app, "technician"), logged_in(app, "clerk")
    page = f"/jobs/{TAKEN_IN}/facts"
    mine = other.hidden(page, page)
    typed = {"name": "Maud Tilbrook", "machine_description": "snow thrower", "complaint": "It stands still."}
    one.send(page, **{**typed, "complaint": "It smells burnt."})
    refused = other.send_again(mine, page, **typed)
    assert refused.status_code == 409 and "The job as it stands now" in refused.text
    assert "<dd>It smells burnt.</dd>" in refused.text and "It stands still.</textarea>" in refused.text
    read = re.findall(r'type="checkbox" name="version" value="(\w+)"', refused.text)
    unread = re.findall(r'type="hidden" name="version" value="(\w+)"', refused.text)
    assert unread == [mine["version"]] and read not in ([], unread)
    once = dict(re.findall(r'type="hidden" name="(once|csrf_token)" value="([^"]+)"', refused.text))
    assert other.send_again(once, page, **typed, version=unread[0]).status_code == 409
    assert "It stands still." in other.send_again(once, page, **typed, version=[*read, *unread]).text


def test_two_who_add_something_do_not_stand_in_each_others_way(app: Flask) -> None:
    """Both findings stand."""
    one, other = logged_in(app, "technician"), logged_in(app, "clerk")
    to = f"/jobs/{TAKEN_IN}/findings"
    mine = other.hidden(f"/jobs/{TAKEN_IN}", to)
    one.send(f"/jobs/{TAKEN_IN}", to, what="muffler loose")
    page = other.send_again(mine, to, what="skid worn").text
    assert "muffler loose" in page and "skid worn" in page


def test_the_bench_does_not_price_its_lines(technician: Browser, app: Flask) -> None:
    """What a technician sends beside the form is not taken."""
    page = f"/jobs/{TAKEN_IN}/lines/1"
    technician.send(page, title="Belt", part="BELT-AUGER", quantity="1", hours="1.2", labour_flat="1.00")
    desk = Desk(store=app.config[STORE], at=NOW, who="x")
    assert opened(desk, TAKEN_IN)[0].agreed[0].labour_flat is None


def test_the_bench_reads_no_amount_of_an_order_in_a_jobs_history(app: Flask) -> None:
    """The clerk does; who did what when is for both."""
    bench, clerk = (logged_in(app, role).get(f"/jobs/{ORDERED}/history") for role in ("technician", "clerk"))
    assert "at the door" in clerk and "at the door" not in bench
    assert bench.count("<tr>") == clerk.count("<tr>")


def test_evidence_is_added_and_taken_back_with_why(technician: Browser) -> None:
    """It stays to be read."""
    page = f"/jobs/{TAKEN_IN}/lines/2/which-part"
    there = technician.send(page, kind="seller's list", number="NW-10408", source="a list")
    assert "NW-10408" in there.text
    back = f"/jobs/{TAKEN_IN}/lines/2/evidence-back"
    assert "Why" in technician.get(page)
    done = technician.send(page, back, at="1", why="read the wrong row")
    assert "read the wrong row" in done.text


def test_the_list_finds_by_words_and_by_who_waits(clerk: Browser) -> None:
    """And says how many there are."""
    assert clerk.get("/jobs?for=tilbrook+0003").count('class="what"') == 1
    assert "No job fits" in clerk.get("/jobs?waits=the+supplier")
    assert "Jobs 1 to 4 of 4" in clerk.get("/jobs")
    assert clerk.get("/jobs.csv").startswith('"job","customer"')


def test_the_plan_of_a_job_leads_to_its_quote_in_one_click(clerk: Browser) -> None:
    """Revision 1 of a job that had none."""
    page = clerk.get(f"/jobs/{TAKEN_IN}/plan")
    assert "proven to be the least" in page
    send = f"/jobs/{TAKEN_IN}/write-quote"
    late = clerk.send(f"/jobs/{TAKEN_IN}/plan", send)
    assert late.status_code == 409 and "nobody has it here by" in late.text
    done = clerk.send(send, need_by="2026-01-30")
    assert done.request.path == f"/jobs/{TAKEN_IN}/quote" and "Revision 1" in done.text


def test_a_promised_day_is_written_down(technician: Browser) -> None:
    """With who said it; a day that is none is told."""
    page = f"/jobs/{APPROVED}/promise"
    done = technician.send(page, kind="machine ready", earliest="2026-01-23", said_by="Oona Brandeth")
    assert done.request.path == f"/jobs/{APPROVED}" and "machine ready" in done.text
    assert technician.send(page, kind="machine ready", earliest="soon", said_by="Oona").status_code == 409
    assert "Jan 23, 2026" in technician.get("/promised")


def test_the_clerk_writes_down_tax_freight_and_fees_and_the_bench_can_not(app: Flask) -> None:
    """What the bench sends beside the form is not taken, and takes nothing away."""
    page = f"/jobs/{TAKEN_IN}/facts"
    facts = {"name": "Ada Brenmoor", "machine_description": "snow thrower", "complaint": "Stands still."}
    fee = {"fee_name_0": "Pick-up", "fee_amount_0": "25.00"}
    logged_in(app, "clerk").send(page, **facts, **fee, tax_exempt="1", exempt_because="Church", need_by="2026-01-20")
    logged_in(app, "technician").send(page, **facts, fee_name_0="Mine", fee_amount_0="1.00", need_by="2026-01-21")
    job = opened(Desk(store=app.config[STORE], at=NOW, who="x"), TAKEN_IN)[0]
    assert [(one.name, str(one.amount)) for one in job.fees] == [("Pick-up", "25.00")]
    assert job.customer.tax_exempt and job.customer.exempt_because == "Church" and str(job.need_by) == "2026-01-21"
    told = logged_in(app, "clerk").send(page, **facts, fee_name_0="Pick-up")
    assert told.status_code == 409 and "Pick-up" in told.text and "no amount" in told.text


def test_what_a_line_asks_of_its_part_is_kept_and_shown_again(technician: Browser) -> None:
    """Such as the side, or a matched set."""
    page = f"/jobs/{TAKEN_IN}/lines/A"
    words = {"title": "Keepers", "part": "KEEPER-BELT", "quantity": "2", "if_declined": "may jump off"}
    technician.send(page, **words, asked_side="left", asked_cover="wrapped")
    form = technician.get(page)
    assert '<option value="left" selected>' in form and 'value="wrapped"' in form
    assert technician.send(page, **words, asked_side="upper").status_code == 409


def test_a_later_day_of_the_plan_leads_to_the_quote_for_that_day(clerk: Browser) -> None:
    """Where not all parts can be here in time."""
    page = clerk.get(f"/jobs/{TAKEN_IN}/plan")
    day = re.findall(rf"/jobs/{TAKEN_IN}/write-quote\?need_by=([0-9-]+)", page)
    assert day == ["2026-01-20"] and "Not filled" in page
    form = clerk.get(f"/jobs/{TAKEN_IN}/write-quote?need_by={day[0]}")
    assert f'value="{day[0]}"' in form
    done = clerk.send(f"/jobs/{TAKEN_IN}/write-quote", need_by=day[0])
    assert done.request.path == f"/jobs/{TAKEN_IN}/quote"


def test_a_sentence_links_only_what_its_reader_may_open(tmp_path: Path) -> None:
    """What comes next is told to the bench too; the order is the clerk's to place."""
    with counter(tmp_path, now=ORDERING) as app:
        bench, clerk = (logged_in(app, role).get("/jobs") for role in ("technician", "clerk"))
    to_order = f'href="/jobs/{APPROVED}/to-order"'
    assert to_order in clerk and to_order not in bench and "To order" in bench


def test_the_head_of_the_job_the_list_and_the_first_page_say_the_same_of_a_line_that_is_held(clerk: Browser) -> None:
    """Two days later the parts would come too late: that is decided, not ordered."""
    pages = [clerk.get(page) for page in ("/", "/jobs", f"/jobs/{APPROVED}")]
    for page in pages:
        told = re.search(r"Lines 1, 2, A, B are not as approved; decide what is to be done about them: <a [^>]+>", page)
        assert told and f'href="/jobs/{APPROVED}/not-as-approved"' in told.group(0)
        assert "Order lines" not in page


def test_the_wanted_day_of_a_quote_is_the_jobs_from_then_on(clerk: Browser, technician: Browser) -> None:
    """So that the next revision is for that day too, whoever writes it."""
    write = f"/jobs/{TAKEN_IN}/write-quote"
    assert clerk.send(write, need_by="2026-01-30").request.path == f"/jobs/{TAKEN_IN}/quote"
    assert 'name="need_by" type="date" autocomplete="off" value="2026-01-30"' in technician.get(write)
    assert "Jan 30, 2026" in technician.get(f"/jobs/{TAKEN_IN}")
