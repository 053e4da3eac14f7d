"""Exchange rates at the counter: added with their day and source, asked about where they are far off, taken back."""

import re

from flask import Flask

from tests.web.world import CLERK, Browser


def test_a_rate_is_kept_with_its_day_and_source(clerk: Browser) -> None:
    """One that stood there for the day is told; no rate without a source; the shop's own money has none."""
    told = clerk.send("/rates", currency="eur", rate="1.0900", dated="2026-01-14", source="our bank")
    assert "The rate is kept" in told.text and "1.09" in told.text and "our bank" in clerk.get("/rates.csv")
    again = clerk.send("/rates", currency="EUR", rate="1.1", dated="2026-01-14", source="our bank")
    assert again.status_code == 200 and "1.09" in again.text
    for words in (
        {"currency": "EUR", "rate": "1.1", "source": ""},
        {"currency": "USD", "rate": "1", "source": "us"},
        {"currency": "EUR", "rate": "0", "source": "us"},
        {"currency": "EUR", "rate": "one", "source": "us"},
        {"currency": "EURO", "rate": "1", "source": "us"},
    ):
        assert clerk.send("/rates", dated="2026-01-14", **words).status_code == 409


def test_a_rate_far_from_the_last_is_asked_about(clerk: Browser) -> None:
    """A point forgotten would price all of a supplier a hundred times too dear; a right one is kept all the same."""
    far = {"currency": "EUR", "rate": "108", "dated": "2026-01-14", "source": "our bank"}
    assert 'name="sure"' not in clerk.get("/rates")
    asked = clerk.send("/rates", **far)
    assert asked.status_code == 409 and "is far from" in asked.text and 'name="sure"' in asked.text
    assert "108" not in clerk.get("/rates.csv")
    assert "The rate is kept" in clerk.send("/rates", sure="yes", **far).text


def test_a_rate_for_a_wrong_day_is_taken_back_with_who_and_why(app: Flask, clerk: Browser) -> None:
    """What holds without it is shown first; it stays to be read, and may be added anew."""
    added = clerk.send("/rates", currency="EUR", rate="1.2", dated="2026-01-12", source="our bank")
    (way,) = re.findall(r'href="(/rates/take-back/EUR/2026-01-12)">Take it back', added.text)
    page = clerk.get(way)
    assert "1 EUR = 1.085 USD" in page and "keep the rate they were worked out with" in page
    assert clerk.send(way, why="").status_code == 409 and "2026-01-12" in clerk.get("/rates.csv")
    done = clerk.send(way, why="typed for the wrong day")
    assert "is taken back" in done.text and "2026-01-12" not in clerk.get("/rates.csv")
    below = done.text.split("<h2>Taken back</h2>")[1]
    assert "EUR = $1.20" in below and "typed for the wrong day" in below and CLERK in below
    assert clerk.status(way) == 409
    again = {"currency": "EUR", "rate": "1.20", "dated": "2026-01-12", "source": "our bank"}
    asked = clerk.send("/rates", **again)
    assert asked.status_code == 409 and f"was taken back by {CLERK}" in asked.text and 'name="sure"' in asked.text
    assert "is kept" in clerk.send("/rates", sure="yes", **again).text
    assert "is kept" in clerk.send("/rates", **again).text, "somebody was sure of it"


def test_a_rate_in_the_place_of_another_leaves_that_in_the_ledger(owner: Browser) -> None:
    """Nothing that was ever kept is gone without a word."""
    owner.send("/rates", currency="EUR", rate="1.11", dated="2026-01-09", source="our bank")
    assert "until now 1.085" in owner.get("/history?about=rates")


def test_where_no_rate_is_left_who_can_not_be_priced_is_said(clerk: Browser) -> None:
    """Before it is done, and after."""
    for day in ("2026-01-09", "2025-12-05"):
        way = f"/rates/take-back/EUR/{day}"
        assert ("priced" in clerk.get(way)) == (day == "2025-12-05")
        done = clerk.send(way, why="a slip")
    assert "Kesselried Antriebsteile" in done.text and done.status_code == 200


def test_a_rate_taken_back_leaves_papers_as_they_are(app: Flask, clerk: Browser) -> None:
    """The quote that is written stays to the letter."""
    before = clerk.get("/jobs/2026-0001/quote/1.html")
    clerk.send("/rates/take-back/EUR/2026-01-09", why="a slip")
    assert clerk.get("/jobs/2026-0001/quote/1.html") == before and len(before) > 500


def test_rates_are_no_business_of_the_technician(technician: Browser) -> None:
    """Neither to be read nor to be taken back."""
    assert technician.status("/rates/take-back/EUR/2026-01-09") == 403
