"""Look-alikes: what waits, one judged after the other, taken back, many at once."""

import io
import re
from html import unescape

import openpyxl
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.review import all_judgements
from sourcing.actions.review_queue import review_queue
from sourcing.basics.judgement import Waiting
from sourcing.web.desks import STORE
from tests.web.sheets_world import in_hand
from tests.web.world import CLERK, NOW, Browser

QUEUE = "/look-alikes"


def _desk(app: Flask) -> Desk:
    return Desk(store=app.config[STORE], at=NOW, who=CLERK)


def _waiting(app: Flask) -> list[Waiting]:
    return list(review_queue(_desk(app), most=None).shown)


def _one(app: Flask, against: bool) -> int:
    return next(one.kept.candidate for one in _waiting(app) if one.kept.against == against)


def _statement_of(page: str) -> str:
    found = re.search(r"/same-parts/statements/(\d+)", page)
    assert found, page
    return found.group(1)


def test_the_list_says_how_many_wait_and_shows_a_page_of_them(app: Flask, clerk: Browser) -> None:
    """As many as the queue holds, most worth first, twenty rows a page."""
    queue = review_queue(_desk(app), most=None)
    first = clerk.get(QUEUE)
    assert f"{queue.rows} rows wait" in first and f"Rows 1 to 20 of {queue.rows}" in first
    rows = list(dict.fromkeys(one.kept.offer.source for one in queue.shown))
    in_order = [one.kept.candidate for one in queue.shown if one.kept.offer.source in rows[:20]]
    assert re.findall(r'class="what" href="/look-alikes/(\d+)"', first) == [str(one) for one in in_order]
    last = clerk.get(f"{QUEUE}?page=999")
    assert f"to {queue.rows} of {queue.rows}" in last and "Rows after" not in last


def test_likely_rows_stand_before_others_and_each_says_why_it_is_there(app: Flask, clerk: Browser) -> None:
    """No worth and no score that nobody can read; how likely, how often asked for, what a piece costs."""
    page = clerk.get(QUEUE).split("What waits")[1]
    said = re.findall(r'<span class="word[^"]*">([a-z ]+)</span>', page)
    likely = [one in ("likely", "very likely") for one in said]
    assert len(said) == 20 and likely == sorted(likely, reverse=True) and 0 < sum(likely) < 20
    assert "Nobody has asked for this part yet; $" in page and "asked for 4 times" in page.lower()
    assert "counts as a tenth" not in page and "Score" not in page


def test_the_list_is_narrowed_by_supplier_part_and_likelihood(app: Flask, clerk: Browser) -> None:
    """And the way to judge keeps to what was chosen."""
    every = _waiting(app)
    mine = {one.kept.offer.source for one in every if one.kept.offer.supplier == "larkmoor"}
    page = clerk.get(f"{QUEUE}?supplier=larkmoor")
    assert f"{len(mine)} rows wait" in page and "Kesselried" not in page.split("What waits")[1].split("</section>")[0]
    likely = review_queue(_desk(app)).likely
    assert f"{likely} rows wait" in clerk.get(f"{QUEUE}?likely=yes")
    gone = clerk.client.get(f"{QUEUE}/next?supplier=larkmoor&part=belt-auger")
    assert gone.status_code == 303 and gone.location.endswith("?supplier=larkmoor&part=belt-auger")
    assert "Nothing waits" in clerk.get(f"{QUEUE}?part=NO-SUCH-PART")


def test_what_differs_is_marked_and_what_speaks_against_is_said(app: Flask, clerk: Browser) -> None:
    """In marks, and in words for who can't see them."""
    bearing = next(one for one in _waiting(app) if one.kept.offer.supplier_number == "6305-2RS")
    page = clerk.get(f"{QUEUE}/{bearing.kept.candidate}")
    assert "6<mark>3</mark>0<mark>5</mark>-2RS" in page and "6<mark>2</mark>0<mark>3</mark>-2RS" in page
    assert "3 for 2 at the 2nd, 5 for 3 at the 4th" in page and "Different bearing" in page
    assert "Needed for a yes" in page


def test_a_yes_leads_to_the_next_one_and_can_be_taken_back(app: Flask, clerk: Browser) -> None:
    """The next in order comes; the sentence says what follows and where it is undone; taken back, it waits again."""
    first, second = (one.kept.candidate for one in _waiting(app)[:2])
    before = review_queue(_desk(app)).rows
    answer = clerk.send(f"{QUEUE}/{first}", answer="yes", words="")
    assert answer.request.path == f"{QUEUE}/{second}" and "is kept as unchecked for" in answer.text
    assert f'href="{QUEUE}/{first}/take-back">Take it back' in answer.text
    assert f"{before - 1} that wait" in answer.text and review_queue(_desk(app)).rows == before - 1
    assert "does not wait" in clerk.get(f"{QUEUE}/{first}")
    back = clerk.send(f"{QUEUE}/{first}/take-back", words="wrong row")
    assert "waits again" in back.text and f"of {before} that wait" in back.text
    assert "wrong row" in clerk.get(f"{QUEUE}/answers") and review_queue(_desk(app)).rows == before


def test_a_no_keeps_the_row_away(app: Flask, clerk: Browser) -> None:
    """It waits no more, also after the counter has forgotten what it remembered."""
    one = _waiting(app)[3].kept.candidate
    assert "does not come back" in clerk.send(f"{QUEUE}/{one}", answer="no", words="other flange").text
    assert one not in [other.kept.candidate for other in _waiting(app)]
    assert "other flange" in clerk.get(f"{QUEUE}/{one}")


def test_a_yes_against_which_something_speaks_needs_words(app: Flask, clerk: Browser) -> None:
    """Without them nothing is kept, and the page comes back with why."""
    one = _one(app, against=True)
    refused = clerk.send(f"{QUEUE}/{one}", answer="yes", words=" ")
    assert refused.status_code == 409 and "Not done" in refused.text and not all_judgements(_desk(app))
    kept = clerk.send(f"{QUEUE}/{one}", answer="fitted", words="sat in the machine for a year")
    assert kept.status_code == 200 and all_judgements(_desk(app))[0].standing == "fitted"


def test_an_answer_sent_twice_is_kept_once(app: Flask, clerk: Browser) -> None:
    """A double click, and the back button with the same form."""
    one = _waiting(app)[0].kept.candidate
    hidden = clerk.hidden(f"{QUEUE}/{one}", f"{QUEUE}/{one}")
    for _ in range(2):
        assert clerk.send_again(hidden, f"{QUEUE}/{one}", answer="no").status_code == 200
    assert len(all_judgements(_desk(app))) == 1


def test_who_leaves_a_row_for_later_sees_the_next_row(app: Flask, clerk: Browser) -> None:
    """Nothing is kept, and it still waits."""
    first, second = (one.kept.candidate for one in _waiting(app)[:2])
    assert re.search(rf'href="{QUEUE}/{second}"[^>]*>Later', clerk.get(f"{QUEUE}/{first}"))
    assert not all_judgements(_desk(app))


def _second_part(app: Flask, candidate: int, part: str) -> None:
    """Another part for the row of a candidate, less likely."""
    names = "sheet, offer, score, against, reasons, facts, found_at"
    with app.config[STORE].writing() as connection:
        connection.exec_driver_sql(
            f"INSERT INTO candidates ({names}, part, rank) SELECT {names}, '{part}', 2 FROM candidates "
            f"WHERE candidate = {candidate}"
        )


def test_a_row_that_may_be_two_parts_is_asked_about_twice_only_after_a_no(app: Flask, clerk: Browser) -> None:
    """Left for later, the next row comes; after a no to the likelier part, the other one comes."""
    first, following = (one.kept.candidate for one in _waiting(app)[:2])
    _second_part(app, first, "BRG-WHEEL")
    page = clerk.get(f"{QUEUE}/{first}")
    assert "Other parts the row may be" in page and "may it be BRG-WHEEL?" in page
    assert re.search(rf'href="{QUEUE}/{following}"[^>]*>Later', page)
    assert "may it be BRG-WHEEL?</h1>" in clerk.send(f"{QUEUE}/{first}", answer="no").text


def test_another_pages_deed_is_seen_at_once(app: Flask, clerk: Browser) -> None:
    """The remembered queue notices what was done to the table: a number that is tied waits no more."""
    one = next(one for one in _waiting(app) if one.part.code == "KEEPER-BELT")
    assert f"{QUEUE}/{one.kept.candidate}" in clerk.get(f"{QUEUE}?part=KEEPER-BELT")
    number = one.kept.offer.numbers()[0]
    clerk.send(
        "/same-parts/add",
        left_whose="ours",
        left_number="KEEPER-BELT",
        relation="same part",
        right_number=number.printed,
        right_maker=number.maker,
        standing="fitted",
        source="fitted on the bench",
    )
    assert f"{QUEUE}/{one.kept.candidate}" not in clerk.get(f"{QUEUE}?part=KEEPER-BELT")


def test_what_is_remembered_is_what_the_queue_says(app: Flask, clerk: Browser) -> None:
    """After yes, no and taking back, the pages count what the queue counts anew."""
    every = [one.kept.candidate for one in _waiting(app) if not one.kept.against]
    clerk.get(QUEUE)
    for at, answer in enumerate(("yes", "no", "fitted", "no", "yes")):
        clerk.send(f"{QUEUE}/{every[at * 7]}", answer=answer, words="looked at")
        assert f"{review_queue(_desk(app)).rows} rows wait" in clerk.get(QUEUE)
    clerk.send(f"{QUEUE}/{every[14]}/take-back", words="slip")
    queue = review_queue(_desk(app), most=None)
    assert f"{queue.rows} rows wait" in clerk.get(QUEUE)
    assert f"{QUEUE}/{every[14]}" in [f"{QUEUE}/{one.kept.candidate}" for one in queue.shown]


def test_a_workbook_goes_out_and_comes_back(app: Flask, clerk: Browser) -> None:
    """Good answers are kept; a row that was edited is told and not taken."""
    book = openpyxl.load_workbook(io.BytesIO(clerk.client.get(f"{QUEUE}/candidates.xlsx").data))
    sheet = book.worksheets[0]
    sheet["B2"], sheet["B3"], sheet["E3"] = "no", "no", "OTHER-1"
    out = io.BytesIO()
    book.save(out)
    told = clerk.send(f"{QUEUE}/file", file=(io.BytesIO(out.getvalue()), "..\\answers.xlsx"))
    assert told.status_code == 200 and "Row 2:" in told.text and "Not taken" in told.text
    assert "OTHER-1" in told.text and len(all_judgements(_desk(app))) == 1
    assert clerk.send(f"{QUEUE}/file", file=(io.BytesIO(b"no workbook"), "a.xlsx")).status_code == 409


def test_by_score_what_is_accepted_was_shown(app: Flask, clerk: Browser) -> None:
    """The count that was shown goes with the form; another count keeps nothing."""
    page = f"{QUEUE}/by-score?supplier=larkmoor&least=0.9"
    count = int(re.search(r'name="accept" value="(\d+)"', clerk.get(page)).group(1))  # type: ignore[union-attr]
    hidden = clerk.hidden(page, page)
    assert clerk.send_again({**hidden, "accept": str(count + 1)}, page).status_code == 409
    assert not all_judgements(_desk(app))
    done = clerk.send(page)
    assert f"Accepted as unchecked: {count}" in done.text and len(all_judgements(_desk(app))) == count
    assert clerk.status(f"{QUEUE}/by-score?supplier=larkmoor&least=0.1") == 409


def test_a_number_rule_is_confirmed_and_withdrawn(clerk: Browser) -> None:
    """A rule that no number bears is refused; one that holds is withdrawn with a reason."""
    page = f"{QUEUE}/number-rules"
    refused = clerk.send(page, supplier="larkmoor", text="ZZZ-", kind="prefix")
    assert refused.status_code == 409
    kept = clerk.send(page, supplier="kesselried", text="KR-", kind="prefix")
    assert kept.status_code == 200 and "Take it back" in kept.text
    gone = clerk.send(f"{page}/1", words="not his")
    assert "withdrawn" in gone.text.casefold() and "not his" in unescape(gone.text)
    assert clerk.status(f"{page}/9") == 409


def test_sheets_are_looked_through_again_after_the_table_changed(app: Flask, clerk: Browser) -> None:
    """The list says so and has the button; afterwards it says so no more."""
    clerk.send("/same-parts/makers", "/same-parts/makers/name", name="Norrowbie", maker="Norrowby")
    assert "there may be more on it now" in clerk.get(QUEUE)
    desk = in_hand(app)
    done = clerk.send(QUEUE, f"{QUEUE}/look")
    assert done.status_code == 200
    for work in desk.works.every():
        assert work.ended.wait(60) and work.how == "done", work
    assert "there may be more on it now" not in clerk.get(QUEUE)


def test_the_technician_sees_no_prices_here(technician: Browser) -> None:
    """The pages are closed to her: a row of a sheet stands there with its price."""
    for page in (QUEUE, f"{QUEUE}/next", f"{QUEUE}/1", f"{QUEUE}/candidates.xlsx", f"{QUEUE}/answers"):
        assert technician.status(page) == 403
    assert QUEUE not in technician.get("/same-parts")


def test_what_is_no_candidate_is_told(clerk: Browser) -> None:
    """A number there is none of."""
    assert clerk.status(f"{QUEUE}/999999") == 409
