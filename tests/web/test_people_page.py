"""The owner's page of people: letting in, roles, passwords, letting go; each deed in the history."""

import pytest
from flask import Flask

from tests.web.world import CLERK, OWNER, PASSWORDS, TECHNICIAN, Browser, logged_in

NEW, SECRET = "Maud Ellerby", "eleven quiet herons on the wharf"


def _log_in(app: Flask, name: str, password: str) -> int:
    browser = Browser(app)
    hidden = browser.hidden("/log-in", "/log-in")
    return browser.client.post("/log-in", data={**hidden, "name": name, "password": password}).status_code


def _number(owner: Browser, name: str) -> str:
    page = owner.get("/people")
    before = page[: page.index(f">{name}</a>")]
    return before[before.rindex("/people/") + len("/people/") : -1]


def test_somebody_let_in_can_log_in_and_stands_in_the_history(app: Flask, owner: Browser) -> None:
    """Once, however often the form is sent; her role is as it was chosen."""
    hidden = owner.hidden("/people", "/people")
    words = {"name": NEW, "role": "clerk", "password": SECRET}
    first = owner.send_again(hidden, "/people", **words)
    again = owner.send_again(hidden, "/people", **words)
    assert f"{NEW} may log in" in first.text and again.status_code == 200
    assert _log_in(app, NEW, SECRET) == 303
    assert owner.get("/history").count(f"{NEW} may log in as clerk") == 1
    assert SECRET not in owner.get("/history")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        ({"name": CLERK, "role": "clerk", "password": SECRET}, "on the list already"),
        ({"name": NEW, "role": "clerk", "password": "short"}, "The password has 5 characters"),
        ({"name": NEW, "role": "chief", "password": SECRET}, "chief"),
        ({"name": "", "role": "clerk", "password": SECRET}, "No name was given"),
    ],
)
def test_who_can_not_be_let_in_is_told_why(owner: Browser, words: dict[str, str], told: str) -> None:
    """And what was typed stands in the form again, but for the password."""
    answer = owner.send("/people", **words)
    assert answer.status_code == 409 and told in answer.text
    assert SECRET not in answer.text and f'value="{words["name"]}"' in answer.text


def test_a_role_changes_from_the_next_page_on(app: Flask, owner: Browser, technician: Browser) -> None:
    """And back."""
    at = _number(owner, TECHNICIAN)
    assert technician.status("/terms") == 403
    owner.send(f"/people/{at}", f"/people/{at}/role", role="clerk")
    assert technician.status("/terms") == 200
    owner.send(f"/people/{at}", f"/people/{at}/role", role="technician")
    assert technician.status("/terms") == 403


def test_a_password_set_anew_ends_what_was_logged_in(app: Flask, owner: Browser, clerk: Browser) -> None:
    """The old one opens nothing any more."""
    at = _number(owner, CLERK)
    owner.send(f"/people/{at}", f"/people/{at}/password", password=SECRET)
    assert clerk.status("/") == 302
    assert _log_in(app, CLERK, PASSWORDS[CLERK]) == 409 and _log_in(app, CLERK, SECRET) == 303


def test_who_is_let_go_is_out_at_once_and_can_be_let_in_again(app: Flask, owner: Browser, clerk: Browser) -> None:
    """With the same password."""
    at = _number(owner, CLERK)
    done = owner.send(f"/people/{at}", f"/people/{at}/let-go")
    assert "Take it back" in done.text and clerk.status("/") == 302
    assert _log_in(app, CLERK, PASSWORDS[CLERK]) == 409
    owner.send(f"/people/{at}", f"/people/{at}/let-in")
    assert logged_in(app, "clerk").status("/") == 200


def test_the_last_owner_stays(owner: Browser) -> None:
    """Nobody can leave the shop without one."""
    at = _number(owner, OWNER)
    for to, words in (("let-go", {}), ("role", {"role": "clerk"})):
        answer = owner.send(f"/people/{at}", f"/people/{at}/{to}", **words)
        assert answer.status_code == 409 and "only owner" in answer.text


def test_people_and_history_are_the_owners(clerk: Browser, technician: Browser) -> None:
    """Nobody else sees or does any of it."""
    for browser in (clerk, technician):
        assert [browser.status(page) for page in ("/people", "/people/1", "/history", "/history.csv")] == [403] * 4
        assert browser.client.post("/people", data={"name": NEW}).status_code in (400, 403)
