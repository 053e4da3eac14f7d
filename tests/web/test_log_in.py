"""Logging in and out, the first visit, passwords; and who may open what."""

import re
from pathlib import Path

from flask import Flask

from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from sourcing.web.guard import ANYBODY, OPEN_TO
from tests.web.world import CLERK, NOW, OWNER, PASSWORDS, Browser, logged_in


def test_first_visit_makes_the_owners_log_in_once(tmp_path: Path) -> None:
    """Before it every page leads there; after it the page is closed."""
    app = make_app(CounterSetup(database=str(tmp_path / "new.db"), clock=lambda: NOW, first_code="K7"))
    browser = Browser(app)
    assert browser.client.get("/log-in").headers["Location"] == "/first-visit"
    words = {"name": "Somebody", "password": PASSWORDS[OWNER]}
    assert browser.send("/first-visit", **words, code="K8").status_code == 409
    done = browser.send("/first-visit", **words, code="K7")
    assert done.status_code == 200 and "Somebody" in done.text
    other = Browser(app)
    assert other.client.get("/first-visit").headers["Location"] == "/log-in"
    hidden = other.hidden("/log-in", "/log-in")
    assert (
        "made already" in other.send_again(hidden, "/first-visit", name="Me", password=PASSWORDS[CLERK], code="K7").text
    )
    app.config[STORE].close()


def test_wrong_name_and_wrong_password_are_told_alike(app: Flask) -> None:
    """Nobody learns from the log-in who has one."""
    browser = Browser(app)
    wrong = [
        browser.send("/log-in", name=name, password="not the password at all").text for name in (OWNER, "Nobody Here")
    ]
    assert all("o log-in of that name has that password" in page for page in wrong)


def test_a_tenth_try_is_the_last(app: Flask) -> None:
    """Guessing is cut short, also from many addresses for one name."""
    browser = Browser(app)
    hidden = browser.hidden("/log-in", "/log-in")
    answers = [
        browser.client.post(
            "/log-in",
            data={**hidden, "name": CLERK, "password": f"guess number {at} of many"},
            environ_overrides={"REMOTE_ADDR": f"10.0.0.{at}"},
        ).status_code
        for at in range(1, 13)
    ]
    assert answers[:10] == [409] * 10 and answers[10:] == [429] * 2


def test_twenty_people_behind_one_address_may_log_in(app: Flask) -> None:
    """A try that was right counts for nothing."""
    assert all(logged_in(app, "clerk").status("/") == 200 for _ in range(20))


def test_after_logging_in_the_browser_has_a_new_session(app: Flask) -> None:
    """A session set beforehand is not taken over (no session fixation)."""
    browser = Browser(app)
    hidden = browser.hidden("/log-in", "/log-in")
    before = browser.client.get_cookie("counter")
    assert before is not None
    browser.client.post("/log-in", data={**hidden, "name": OWNER, "password": PASSWORDS[OWNER]})
    after = browser.client.get_cookie("counter")
    assert after is not None and after.value != before.value
    other = Browser(app)
    other.client.set_cookie("counter", before.value)
    assert other.status("/") == 302


def test_a_cookie_of_a_log_in_that_ended_opens_nothing(app: Flask) -> None:
    """Logging out ends it at the counter, not only in the browser."""
    browser = logged_in(app, "clerk")
    cookie = browser.client.get_cookie("counter")
    assert cookie is not None and browser.status("/") == 200
    hidden = browser.hidden("/", "/log-out")
    browser.send_again(hidden, "/log-out")
    browser.client.set_cookie("counter", cookie.value)
    assert browser.status("/") == 302


def test_a_changed_password_ends_all_other_log_ins(app: Flask) -> None:
    """The one who changed it goes on."""
    here, there = logged_in(app, "clerk"), logged_in(app, "clerk")
    new = "nine bright umbrellas in a tree"
    assert "Password until now" in here.send("/my-password", old="wrong one altogether", new=new).text
    done = here.send("/my-password", old=PASSWORDS[CLERK], new=new)
    assert done.status_code == 200 and "logged out" in done.text
    assert here.status("/") == 200 and there.status("/") == 302


def test_nobody_is_sent_to_another_site_after_logging_in(app: Flask) -> None:
    """Only the counter's own pages are gone back to."""
    for elsewhere in ("https://elsewhere.example/", "//elsewhere.example", "/\\elsewhere.example", "javascript:1"):
        browser = Browser(app)
        hidden = browser.hidden("/log-in", "/log-in")
        fields = {**hidden, "back": elsewhere, "name": OWNER, "password": PASSWORDS[OWNER]}
        assert browser.client.post("/log-in", data=fields).headers["Location"] == "/"


def test_every_page_says_who_may_open_it(app: Flask) -> None:
    """A page without a mark opens to nobody, so a forgotten one is found here and not by a visitor."""
    unmarked = [name for name, view in app.view_functions.items() if name != "static" and not hasattr(view, OPEN_TO)]
    assert unmarked == []


def test_without_a_log_in_every_page_leads_to_it(app: Flask) -> None:
    """Tried on every address there is, also by sending."""
    for rule in app.url_map.iter_rules():
        if rule.endpoint == "static" or getattr(app.view_functions[rule.endpoint], OPEN_TO) == ANYBODY:
            continue
        address = rule.rule
        for name in rule.arguments:
            for kind in ("", "int:", "path:"):
                address = address.replace(f"<{kind}{name}>", "1")
        for method in (rule.methods or set()) & {"GET", "POST"}:
            answer = Browser(app).client.open(address, method=method)
            led_there = answer.status_code == 302 and answer.headers["Location"].startswith("/log-in")
            assert led_there or (method == "POST" and answer.status_code == 400), f"{method} {address}: {answer.status}"


def test_another_sites_form_is_refused(app: Flask) -> None:
    """By its origin, and without the page's token."""
    browser = logged_in(app, "clerk")
    hidden = browser.hidden("/my-password", "/my-password")
    foreign = browser.client.post("/my-password", data=hidden, headers={"Origin": "https://elsewhere.example"})
    assert foreign.status_code == 403
    assert browser.client.post("/my-password", data={"once": hidden["once"]}).status_code == 400


def test_another_name_for_this_computer_gets_nothing(app: Flask) -> None:
    """A name of somebody else's pointed at the counter (DNS rebinding) is no way in."""
    assert Browser(app).client.get("/log-in", headers={"Host": "elsewhere.example"}).status_code == 400


def _sent_after_the_end(app: Flask) -> tuple[Browser, str]:
    """A clerk's browser in which a filled form was sent after the log-in had ended elsewhere; and where that led."""
    browser = logged_in(app, "clerk")
    page = "/same-parts/our-parts/add"
    hidden = browser.hidden(page, page)
    browser.send_again({"csrf_token": hidden["csrf_token"]}, "/log-out")
    gone = browser.client.post(page, data={**hidden, "code": "PIN-9", "name": "A long\nstory", "password": "not this"})
    return browser, gone.headers["Location"]


def _log_in_again(browser: Browser, page: str, name: str) -> str:
    """Where that leads."""
    answer = browser.client.post(
        "/log-in", data={**browser.hidden(page, "/log-in"), "name": name, "password": PASSWORDS[name]}
    )
    assert answer.status_code == 303
    return answer.headers["Location"]


def test_what_was_typed_comes_back_after_logging_in_again(app: Flask) -> None:
    """She is told that nothing was kept; sent now it is done, and twice sent it is done once. No password is held."""
    browser, page = _sent_after_the_end(app)
    assert "You were logged out; nothing was kept" in browser.get(page)
    held = _log_in_again(browser, page, CLERK)
    shown = browser.get(held)
    assert "PIN-9" in shown and "A long\nstory" in shown.replace("&#10;", "\n") and "not this" not in shown
    to = "/same-parts/our-parts/add"
    hidden = browser.hidden(held, to)
    typed = dict(re.findall(r'<textarea name="([^"]+)" hidden>(?:&#10;)?([^<]*)</textarea>', shown))
    pages = [browser.send_again({**hidden, **typed}, to) for _ in range(2)]
    assert all("PIN-9" in one.text and one.status_code == 200 for one in pages)
    assert browser.status("/find?number=PIN-9") == 200


def test_what_one_person_typed_is_shown_to_nobody_else(app: Flask) -> None:
    """Not to who logs in next in the same browser, nor to who knows the address, and then to the first no more."""
    browser, page = _sent_after_the_end(app)
    held = _log_in_again(browser, page, OWNER)
    assert browser.client.get(held).headers["Location"] == "/"
    assert logged_in(app, "clerk").client.get(held).headers["Location"] == "/"
    other, _page = _sent_after_the_end(app)
    assert "PIN-9" not in other.get("/log-in")


def test_a_form_of_an_earlier_log_in_is_not_lost(app: Flask) -> None:
    """Logged out and in again in another window, the old page is sent: its token is old, what was typed is there."""
    browser = logged_in(app, "clerk")
    page = "/same-parts/our-parts/add"
    hidden = browser.hidden(page, page)
    browser.send_again({"csrf_token": hidden["csrf_token"]}, "/log-out")
    browser.client.post(
        "/log-in", data={**browser.hidden("/log-in", "/log-in"), "name": CLERK, "password": PASSWORDS[CLERK]}
    )
    shown = browser.client.post(page, data={**hidden, "code": "PIN-7"}, follow_redirects=True)
    assert (
        shown.request.path == "/typed-again" and "PIN-7" in shown.text and browser.status("/find?number=PIN-7") == 409
    )
    other = {**hidden, "once": "made up", "code": "PIN-7"}
    assert browser.client.post(page, data=other).status_code == 400


def test_a_form_that_names_nobody_is_not_held(app: Flask) -> None:
    """What a stranger sends is let go at once."""
    browser = Browser(app)
    for once in ("made up", "made-up.1.000000000000000000000000"):
        answer = browser.client.post("/same-parts/our-parts/add", data={"once": once, "code": "PIN-9"})
        assert "comes back" not in browser.get(answer.headers["Location"])
