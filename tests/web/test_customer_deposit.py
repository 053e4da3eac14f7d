"""What her confirmation asks ahead: for what she approved, to the cent what the shop's own page asks."""

import pytest
from flask import Flask

from sourcing.actions.answers import Spoken, record
from sourcing.actions.deposits import deposits_of
from sourcing.actions.desk import Desk
from sourcing.documents.amounts import money_text
from sourcing.web.desks import STORE
from tests.documents.html_reader import Page
from tests.web.linked import HER, customer, made, send
from tests.web.test_shop import fields_of, keep
from tests.web.world import NOW, QUOTED, Browser

CHARGES = "/shop/change/charges"


def asking(owner: Browser, clerk: Browser, percent: str, of: str, from_amount: str) -> None:
    """The shop asks a deposit, and the quote is written anew."""
    more = {"deposit_percent": [percent], "deposit_of": [of], "deposit_from": [from_amount]}
    assert keep(owner, CHARGES, **{**fields_of(owner.get(CHARGES)), **more}, sure="yes").status_code == 200
    assert clerk.send(f"/jobs/{QUOTED}/write-quote", need_by="2026-01-30").status_code == 200


def told(app: Flask, clerk: Browser, **answers: str) -> tuple[str, str]:
    """Her confirmation, and what the shop's page asks after her answers."""
    page, her = made(clerk), customer(app)
    assert send(her, page, **answers).status_code == 200
    asked = deposits_of(Desk(store=app.config[STORE], at=NOW, who="Oona Brandeth"), QUOTED).asked
    return Page(her.get(page)).text, money_text(asked, "en_US")


@pytest.mark.parametrize(
    ("percent", "of", "amount"),
    [("50", "parts", "$75.53"), ("33.3", "parts", "$50.30"), ("50", "everything", "$145.96")],
)
def test_it_asks_for_what_she_approved(
    app: Flask, owner: Browser, clerk: Browser, percent: str, of: str, amount: str
) -> None:
    """Belt 146.30 and pins 4.76 before tax, 291.92 in all with tax; the extra parts' share is asked of nobody yet."""
    asking(owner, clerk, percent, of, "5")
    text, shops = told(app, clerk, line_1="approve", line_2="approve", line_C="decline")
    assert shops == amount
    assert f"Before we order what you approved we ask for {amount}. It is part of the total, not on top of it." in text
    assert "with all the extra work" not in text


def test_what_she_approved_before_counts(app: Flask, owner: Browser, clerk: Browser) -> None:
    """By telephone; the bar of line C is 73.95 more of parts."""
    asking(owner, clerk, "50", "parts", "5")
    spoken = Spoken(yes=("1", "2"), no=(), who=HER, how="telephone", contact="555-0142")
    record(Desk(store=app.config[STORE], at=NOW, who="Oona Brandeth"), QUOTED, spoken)
    text, shops = told(app, clerk, line_C="approve")
    assert f"Before we order what you approved we ask for {shops}." in text and shops == "$112.51"


def test_where_nothing_is_asked_for_it_that_is_said(app: Flask, owner: Browser, clerk: Browser) -> None:
    """Half of what she approved is less than what the shop begins to ask at; and nothing where nothing is approved."""
    asking(owner, clerk, "50", "parts", "150")
    text, shops = told(app, clerk, line_1="approve", line_2="approve")
    assert shops == "$0.00" and "For what you approved we ask for nothing before we order." in text


def test_a_no_to_everything_asks_nothing_and_says_nothing_of_it(app: Flask, owner: Browser, clerk: Browser) -> None:
    asking(owner, clerk, "50", "parts", "5")
    text, _ = told(app, clerk, line_1="decline", line_2="decline")
    assert "what you approved we ask" not in text and "with all the extra work" not in text
