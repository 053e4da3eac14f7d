"""The first page: who waits for whom, and no more of them than can be read; quick also at the start."""

import pytest
from flask import Flask

from sourcing.actions import job_list, job_states
from sourcing.actions.desk import Desk
from sourcing.actions.first_pages import ready_first_pages
from sourcing.storage.database import open_store
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, TAKEN_IN, Browser


def test_those_who_waited_the_longest_are_shown_and_all_are_a_link_away(
    clerk: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Every part says how many there are; a part that shows all has no such link."""
    assert "waited the longest" not in clerk.get("/")
    monkeypatch.setattr(job_list, "MOST", 0)
    page = clerk.get("/")
    assert f"/jobs/{TAKEN_IN}" not in page
    assert 'These waited the longest. <a href="/jobs?waits=us">All 4 of them</a>' in page
    assert "2026-0003" in clerk.get("/jobs?waits=us")


def test_what_was_worked_out_at_the_start_is_not_worked_out_again(
    app: Flask, clerk: Browser, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The first page then asks no job for its facts."""
    ready_first_pages(Desk(store=app.config[STORE], at=NOW, who=CLERK))
    monkeypatch.setattr(job_states, "job_facts", None)
    assert TAKEN_IN in clerk.get("/")


def test_a_shop_that_is_not_set_up_is_readied_too(tmp_path_factory: pytest.TempPathFactory) -> None:
    """What is refused is told on its page, and not at the start."""
    store = open_store(str(tmp_path_factory.mktemp("empty") / "shop.db"))
    ready_first_pages(Desk(store=store, at=NOW, who=CLERK))
    store.close()
