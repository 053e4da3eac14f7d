"""Two people at one job, each at a window of her own: who comes second is told, and nothing is lost or doubled."""

import re

from playwright.sync_api import Page, expect

from sourcing.actions.answers import standing
from sourcing.actions.desk import open_desk
from sourcing.actions.revisions import answer_record
from tests.browser.journeys import orders_of, step
from tests.browser.pages import Pages
from tests.browser.served import Counter
from tests.web.world import APPROVED, CLERK, ORDERING, QUOTED, TAKEN_IN


def test_who_changes_a_line_second_reads_what_the_first_did_and_loses_nothing(pages: Pages) -> None:
    """She is told who changed it; what she typed stands there still, and is kept once she has read the other."""
    clerk, bench = pages.at_work("clerk"), pages.at_work("technician", "phone")
    for page in (clerk, bench):
        page.goto(f"/jobs/{TAKEN_IN}/lines/1")
    clerk.get_by_label("Hours of work").fill("2.5")
    clerk.get_by_role("button", name="Keep", exact=True).click()
    expect(clerk.get_by_text("Line 1 is changed.")).to_be_visible()
    bench.get_by_label("Why it should be done").fill("Cords show at the edge.")
    bench.get_by_role("button", name="Keep", exact=True).click()
    expect(bench.locator("#refused")).to_contain_text(f"Somebody else changed job {TAKEN_IN} while this was typed")
    expect(bench.locator("#refused")).to_contain_text(CLERK)
    expect(bench.get_by_label("Why it should be done")).to_have_value("Cords show at the edge.")
    expect(bench.get_by_role("heading", name="Line 1 as it stands now")).to_be_visible()
    step(pages, bench, "two-1-line-changed", main=True)
    bench.get_by_label("Hours of work").fill("2.5")
    bench.get_by_label("I have read it").check()
    bench.get_by_role("button", name="Keep", exact=True).click()
    expect(bench.get_by_text("Line 1 is changed.")).to_be_visible()
    expect(bench.get_by_text("Cords show at the edge.")).to_be_visible()
    expect(bench.get_by_text("2.5 hours of work")).to_be_visible()


def test_a_quote_written_by_both_is_one(pages: Pages) -> None:
    """Both see the same revision."""
    windows = pages.at_work("clerk"), pages.at_work("technician")
    for page in windows:
        page.goto(f"/jobs/{TAKEN_IN}/write-quote?need_by=2026-01-30")
    for page in windows:
        page.get_by_role("button", name="Write the quote").click(no_wait_after=True)
    for page in windows:
        expect(page.get_by_role("heading", level=1)).to_contain_text("revision 1")
    windows[0].reload()
    expect(windows[0].get_by_role("link", name="Revision 1")).to_be_visible()
    expect(windows[0].get_by_role("link", name="Revision 2")).to_have_count(0)


def test_a_customer_on_her_page_and_a_technician_on_the_telephone(pages: Pages, counter: Counter, link: str) -> None:
    """Each has the page open while the other answers: who comes second is told so, and every answer is kept once."""
    bench = pages.at_work("technician")
    hers, late = pages.open("phone"), bench.context.new_page()
    hers.goto(link)
    for page in (bench, late):
        page.goto(f"/jobs/{QUOTED}/answers")
    _told(bench, "C", "No")
    expect(bench.get_by_text("Declined: C.")).to_be_visible()

    for label in ("1", "2", "C"):
        hers.get_by_role("group", name=f"Your answer to line {label}").get_by_label("Approve").check()
    hers.get_by_label("Your name").fill("Maud Tilbrook")
    hers.get_by_role("button", name="Send my answers").click()
    expect(hers.locator("#refused")).to_contain_text("The shop was given another answer to one of these lines")
    step(pages, hers, "two-2-her-page", main=True)
    hers.get_by_role("button", name="Send my answers").click()
    expect(hers.get_by_role("heading", level=1)).to_have_text("Your answers are with us. Thank you.")

    _told(late, "1", "No")
    expect(late.locator("#refused")).to_contain_text("Maud Tilbrook")
    step(pages, late, "two-3-telephone")
    desk = open_desk(str(counter.database), counter.at, CLERK)
    kept, record = dict(standing(desk, QUOTED).answers.by_label), answer_record(desk, QUOTED)
    desk.store.close()
    assert kept == {"1": "approved", "2": "approved", "A": "waiting", "B": "waiting", "C": "declined"}
    assert [[line.label for line in one.lines] for one in record.occasions] == [["C"], ["1", "2"]]


def _told(page: Page, label: str, answer: str) -> None:
    """An answer to one line, by telephone."""
    page.bring_to_front()  # a tab that lies behind another is slow
    page.get_by_role("group", name=f"Answer to line {label}", exact=True).get_by_label(answer, exact=True).check()
    page.get_by_label("Maud Tilbrook").check()
    page.get_by_label("By telephone").check()
    page.get_by_label("Number called, or address").fill("555-0142")
    page.get_by_role("button", name="Write the answers down").click()


def test_two_who_order_at_once_place_one_order(pages: Pages, counter: Counter) -> None:
    """Both press the button before either has an answer."""
    counter.at = ORDERING
    windows = pages.at_work("clerk"), pages.at_work("owner")
    for page in windows:
        page.goto(f"/jobs/{APPROVED}/to-order")
    buttons = [page.get_by_role("button", name=re.compile("^(Order from|Place these)")) for page in windows]
    many = re.search(r"Place these (\d+) orders", buttons[0].inner_text())
    for button in buttons:
        button.click(no_wait_after=True)
    for page in windows:
        expect(page.get_by_text(re.compile("Ordered: PO-|is ordered: PO-"))).to_be_visible()
    assert len(orders_of(counter, APPROVED)) == (int(many.group(1)) if many else 1)
