"""A customer's link that opens nothing: unknown, revoked, past its last minute; and what is sent through one."""

from datetime import datetime
from pathlib import Path

import pytest
from flask import Flask

from tests.web.linked import HER, customer, links_page, made
from tests.web.test_customer import words
from tests.web.world import NOW, Browser, counter, logged_in


def test_unknown_and_ended_links_look_alike(app: Flask, clerk: Browser) -> None:
    """To the letter but for the addresses in them."""
    page, her = made(clerk), customer(app)
    clerk.send(f"{links_page()}/1/revoke")
    told = [her.client.get(one) for one in (page, "/q/" + "x" * 43, "/q/short")]
    assert [one.status_code for one in told] == [404, 404, 404]
    assert told[0].text == told[1].text == told[2].text and "new one" in told[0].text


@pytest.mark.parametrize(("minute", "status"), [(59, 200), (60, 410)])
def test_a_link_ends_to_the_minute(tmp_path: Path, minute: int, status: int) -> None:
    """Open at 23:59 of its last day, over at midnight; then no figure is shown."""
    moments = [NOW]
    with counter(tmp_path) as app:
        app.config["sourcing.counter"] = type(app.config["sourcing.counter"])(
            database="", clock=lambda: moments[-1], outward="http://127.0.0.1:8420"
        )
        page = made(logged_in(app, "clerk"), until="2026-01-15")
        moments.append(datetime(2026, 1, 15 + minute // 60, 23 if minute < 60 else 0, minute % 60))
        answer = customer(app).client.get(page)
    assert answer.status_code == status
    assert ("$" in answer.text) == (status == 200)
    assert ("This link was open until Jan 15, 2026, 11:59" in answer.text) == (status == 410)


def test_answers_sent_through_a_link_that_ended_are_told_as_not_taken(app: Flask, clerk: Browser) -> None:
    """She sends what she marked before the shop ended it; who only reads is told no such thing."""
    page, her = made(clerk), customer(app)
    hidden = her.hidden(page, page)
    clerk.send(f"{links_page()}/1/revoke")
    told = "Your answers were not taken: nothing was sent to the shop."
    assert told in her.send_again(hidden, page, **{"do": "send", "name": HER, "line-1": "approve"}).text
    assert told not in her.client.get(page).text and words(app)["1"] == "waiting"
