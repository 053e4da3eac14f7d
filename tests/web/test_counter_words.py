"""No page speaks of a command's option or of a file: whoever stands at the counter never typed either."""

import re
from io import BytesIO
from string import Formatter
from typing import Any

import pytest
from flask import Flask
from werkzeug.test import TestResponse

from sourcing.actions.desk import Desk
from sourcing.actions.orders import all_orders
from sourcing.basics.problem import Problem, at_counter, problem
from sourcing.basics.problem_kinds import KINDS
from sourcing.basics.sheet_problem_kinds import SHEET_KINDS
from sourcing.web.desks import STORE
from sourcing.web.said import said, told
from tests.web.sheets_world import drop, page_of
from tests.web.test_shop import fields_of, keep
from tests.web.world import APPROVED, CLERK, NOW, ORDERED, QUOTED, TAKEN_IN, Browser

COMMAND = re.compile(r"--|'page:|\bsourcing [a-z]")
FILE = re.compile(r"\.toml|\.csv|[a-z]_[a-z]|job file|README")

BY_COMMAND_ALONE = {
    "can-not-listen": "told where the counter is started, before there is a page",
    "no-four-columns": "matching two files without a shop has no page",
    "no-answers": "matching two files without a shop has no page",
    "answer-about-nothing": "matching two files without a shop has no page",
}
ABOUT_FILES = {
    "nothing-to-set-up": "the page takes these very files",
    "no-sheets": "a folder of sheets is named by command alone",
    "no-table-file": "the page takes these very files",
    "entry-doubled": "told of a file of terms, on the page that takes it",
    "no-such-term": "the field is typed as in the file, in the box that says so",
    "accepted-in-a-file": "a job is a file by command alone",
    "json-too-deep": "a basket is a file by command alone",
}
FACTS = {"job": "2026-0001", "order": "PO-2026-0001"}


def _printed(page: str) -> str:
    """The words of the page without its tags: what is drawn by lot for a form may hold two hyphens."""
    return re.sub(r"<[^>]*>", " ", page.split("<main")[1])


def _fields(text: str) -> set[str]:
    return {field for _, field, _, _ in Formatter().parse(text) if field}


def _problem(code: str) -> Problem:
    kind = KINDS[code]
    facts: dict[str, Any] = {field: FACTS.get(field, "X1") for field in _fields(kind.what + kind.remedy)}
    return problem(code, **facts)


def test_no_kind_of_problem_speaks_of_a_command_at_the_counter(app: Flask) -> None:
    """Of every kind there is, but those that are met by command alone."""
    with app.test_request_context("/"):
        shown = {code: said(told(_problem(code))).unescape() for code in KINDS}
    assert {code for code, words in shown.items() if COMMAND.search(words)} == set(BY_COMMAND_ALONE)


def test_no_kind_of_problem_names_a_file_the_counter_has_not(app: Flask) -> None:
    """Nor a field of one."""
    with app.test_request_context("/"):
        shown = {code: said(told(_problem(code))).unescape() for code in KINDS}
    assert {code for code, words in shown.items() if FILE.search(words)} == set(ABOUT_FILES)


def test_the_counters_words_ask_for_nothing_a_problem_does_not_keep() -> None:
    """A problem keeps what was found, and no other fact; a brace left in a sentence would be a slip."""
    for code, kind in KINDS.items():
        there = _fields(kind.what + kind.remedy)
        assert _fields(kind.at_counter + kind.what_at_counter) <= there & {"found"}, code
        assert not re.match(r"[A-Z][a-z]", kind.at_counter) and not kind.at_counter.endswith("."), code


def test_what_the_command_line_says_stays() -> None:
    """The page has words of its own; a problem without such words, and one of no kind, stay as they are."""
    one = _problem("terms-need-why")
    assert one.remedy == "say why (--why)" and at_counter(one).remedy == "say why"
    plain = _problem("file-empty")
    assert at_counter(plain) == plain
    other = Problem(code="made-up", what="it is so", remedy="leave it")
    assert at_counter(other) == other


@pytest.mark.parametrize(
    ("words", "shown"),
    [
        ("to quote that: --plan customer", "to quote that: choose 'the plan under which the customer pays least'"),
        ("the shop's cheapest: --plan shop", "the shop's cheapest: choose 'the plan cheapest for the shop'"),
        ("then decide it again with --agreed-by NAME --how HOW, and line 1", "again with who said yes, and how, and"),
        ("it can go back: sourcing send-back PO-2026-0001 --line 2 --goods --sent", "it can go back: Send it back"),
        ("give back 5.00 of the deposit: sourcing deposit 2026-0001 --back", "give back 5.00 of the deposit: Bill"),
    ],
)
def test_options_in_sentences_of_actions_are_what_the_page_has(app: Flask, words: str, shown: str) -> None:
    """Nothing of the command is left over."""
    with app.test_request_context("/"):
        page = said(words).unescape()
    assert shown in page and not COMMAND.search(page)


def test_the_end_of_an_orders_number_is_no_job(app: Flask) -> None:
    """A link from a sentence about an order would lead to the job that happens to have its number."""
    with app.test_request_context("/"):
        assert "2026-0001" not in said(told(_problem("order-cancelled"))).replace("PO-2026-0001", "")


def refused_words(answer: TestResponse, file: str = "") -> str:
    """What was refused, without its links. `file`: the one that was sent, which may be named."""
    assert answer.status_code == 409, answer.status
    block = answer.text.split('id="refused"')[1].split("</div>")[0]
    words = " ".join(re.sub("<[^>]+>", "", block.partition(">")[2]).split())
    words = words.replace("&#39;", "'").replace("&#34;", '"').replace("&gt;", ">")
    assert not COMMAND.search(words) and not FILE.search(words.replace(file, "") if file else words), words
    return words


def test_bill_and_deposit_are_refused_in_the_words_of_their_pages(clerk: Browser) -> None:
    """The tick, the box and the field that stand there."""
    page = f"/jobs/{ORDERED}/bill/write"
    told = clerk.get(f"{page}?not_done=1").replace("&#39;", "'")
    assert "without a reason; say why it was not done: it stands on the bill." in told
    assert "say why: the owner reads it later." in clerk.get(f"{page}?off-1=1.00")
    assert not COMMAND.search(_printed(told))
    taken = clerk.send(f"/jobs/{APPROVED}/bill", f"/jobs/{APPROVED}/deposit/take", taken="20", how="")
    assert "say how, such as cash or card" in refused_words(taken)
    given = clerk.send(f"/jobs/{APPROVED}/given-away", what="", cost="3", words="")
    assert "fill in what was fitted, and why it was fitted without asking" in refused_words(given)


def test_answers_are_refused_in_the_words_of_their_page(clerk: Browser) -> None:
    """Yes, No and Not yet; the box for the customer's words."""
    page, who = f"/jobs/{QUOTED}/answers", {"who": "Maud Tilbrook", "how": "telephone", "contact": "555-0142"}
    assert "a line left at 'Not yet' stays waiting" in refused_words(clerk.send(page, do="record", **who))
    told = refused_words(clerk.send(page, do="record", condition="by Friday", **{"line-1": "no"}, **who))
    assert "under 'The customer's words'" in told
    other = refused_words(
        clerk.send(page, do="record", **{"line-1": "yes"}, **{**who, "who": "another", "another": "Bo"})
    )
    assert "under 'Who else may say yes'" in other


def _order(app: Flask) -> str:
    desk = Desk(store=app.config[STORE], at=NOW, who=CLERK)
    return next(one.number for one in all_orders(desk, ORDERED) if any(line.part == "BRG-IDLER" for line in one.lines))


def test_goods_going_back_are_refused_in_the_words_of_their_page(app: Flask, clerk: Browser) -> None:
    """What happened, what he gave back, what was said."""
    order = _order(app)
    step = f"/going-back/{order}/1"
    assert "choose 'Send back goods' of the line" in refused_words(clerk.send(f"{step}/core", step="sent", pieces="1"))
    credited = clerk.send(f"{step}/goods", step="credited", pieces="1", credit="5")
    assert "keep 'Sent back' first" in refused_words(credited)
    wrong = refused_words(clerk.send(f"{step}/goods", step="sent", pieces="1", credit="5"))
    assert "fill in what he gave back and his fee with 'Credited'" in wrong


def test_questions_about_columns_speak_of_choosing(app: Flask, clerk: Browser) -> None:
    """What each answer means stands beside what is asked; nothing is said of how a command would put it."""
    sheet = b"Part number,Description,Price\nZQ-1,belt,12.00\nZQ-2,pin,3.00\n"
    asked = clerk.get(drop(app, clerk, sheet, "prices.csv", supplier="stonegarth", dated="2026-01-14"))
    asked = asked.replace("&#39;", "'")
    assert "could be the net price or the list price; choose which of the two it is." in asked
    assert not COMMAND.search(_printed(asked))


def test_promises_and_the_table_are_refused_in_the_words_of_their_pages(clerk: Browser) -> None:
    """The field that is blank is named."""
    told = refused_words(clerk.send(f"/jobs/{TAKEN_IN}/promise", kind="machine ready", earliest="2026-01-20"))
    assert "fill in 'Who said it'" in told
    answer = clerk.client.get("/terms/of/nobody")
    assert "or take him in under Suppliers' terms" in refused_words(answer) and 'href="/terms"' in answer.text


def _sent(browser: Browser, page: str, field: str, content: bytes, name: str) -> TestResponse:
    data = {**browser.hidden(page, page), field: (BytesIO(content), name)}
    return browser.client.post(page, data=data, content_type="multipart/form-data", follow_redirects=True)


def test_look_alikes_are_refused_in_the_words_of_their_pages(clerk: Browser) -> None:
    """The workbook to take along, the supplier to choose, those to accept."""
    told = refused_words(_sent(clerk, "/look-alikes/file", "file", b"no workbook", "answers.xlsx"))
    assert "take the workbook along again under Look-alikes by a workbook" in told
    rule = clerk.send("/look-alikes/number-rules", supplier="stonegarth", text="ZQX-", kind="prefix")
    assert "choose the supplier whose numbers have it" in refused_words(rule)
    page = "/look-alikes/by-score?supplier=larkmoor&least=0.9"
    other = clerk.send_again({**clerk.hidden(page, page), "accept": "999"}, page)
    assert "look at them again and then accept them" in refused_words(other)


def test_an_edited_table_is_refused_in_the_words_of_its_page(clerk: Browser) -> None:
    """The tick that leaves rows out stands on that page; rows are told as what is to be corrected in the file."""
    columns = "left maker,left number,relation,right maker,right number,standing,source,stated on,stated by\n"
    rows = f"{columns}Norrowby,ZQ-1,same part,Norrowby,ZQ-2,unchecked,,2026-01-02,me\n"
    shown = _sent(clerk, "/same-parts/take-in", "files", rows.encode(), "statements.csv")
    assert shown.status_code == 200 and shown.request.path != "/same-parts/take-in", shown.text[-3000:]
    assert not COMMAND.search(_printed(shown.text))
    mark = dict(re.findall(r'<input type="hidden" name="([^"]+)" value="([^"]*)">', shown.text))
    told = refused_words(clerk.send_again(mark, shown.request.path), "statements.csv")
    assert "tick 'Leave rows out that can't be used'" in told and "row 2: 'source' is blank" in told


def test_makers_names_and_what_was_changed_by_hand(clerk: Browser) -> None:
    """The page of makers' names is linked; a change of terms stands with the labels of its form."""
    names = "/same-parts/makers"
    clerk.send(names, f"{names}/name", name="Nrwby", maker="Norrowby")
    answer = clerk.send(names, f"{names}/name", name="Nrwby", maker="Pellbrook")
    told = refused_words(answer)
    assert "take that away first under Other names of makers" in told and f'href="{names}"' in answer.text
    page = "/terms/of/stonegarth"
    keep(clerk, f"{page}/change", **{**fields_of(clerk.get(f"{page}/change")), "minimum_order": ["30.00"]})
    assert "&#39;Minimum order&#39; 25.00 -&gt; 30.00" in clerk.get(page)


def test_notes_of_a_kept_sheet_say_what_helps_at_the_counter(app: Flask, clerk: Browser) -> None:
    """A sheet is dropped again to be read otherwise; in the table, and in the file of its problems."""
    first = b"Part No,Description,Net,Note,Stock\nZQ-1,Skid shoe,4.50,a,3\nZQ-2,Pin,3.00,b,2\n"
    then = first.replace(b"Note", b"Remark").replace(b"b,2", b"b,when the truck is back")
    for sheet, day in ((first, "2026-01-13"), (then, "2026-01-14")):
        page = page_of(clerk, drop(app, clerk, sheet, "prices.csv", supplier="kesselried", dated=day))
    assert "take the sheet out and drop it again with another meaning" in page
    assert not COMMAND.search(_printed(page))
    number = re.search(r"/sheets/(\d+)/take-out", page)
    assert number
    saved = clerk.get(f"/sheets/{number[1]}/problems.csv")
    assert "drop it again with another meaning" in saved and not COMMAND.search(saved)


def test_the_file_of_jobs_says_what_comes_next_by_the_pages_names(clerk: Browser) -> None:
    """Whoever saved it did so at the counter."""
    saved = clerk.get("/jobs.csv")
    assert '"Write the quote"' in saved and "and write the Bill" in saved and not COMMAND.search(saved)


def test_no_page_is_named_in_the_file_of_a_sheets_problems() -> None:
    """A file has no links; what keeps a sheet out stands on a page alone."""
    marked = {code for code in SHEET_KINDS if "'page:" in KINDS[code].at_counter}
    assert marked == {"currency-not-known"}
