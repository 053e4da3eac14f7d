"""Taxes changed at the counter: another rate takes the old one's place, and a tax beside another is asked about."""

from datetime import date

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.settings_edit import settings_now
from sourcing.web.desks import STORE
from tests.web.test_counter_words import refused_words
from tests.web.test_shop import fields_of, keep, look, upload
from tests.web.world import NOW, OWNER, Browser

PAGE = "/shop/change/charges"


def _with_a_tax(owner: Browser, name: str, on: tuple[str, ...] = ("parts", "freight")) -> dict[str, object]:
    second = {"tax-2-name": [name], "tax-2-percent": ["7.25"], "tax-2-starts_on": ["2026-01-12"], "tax-2-on": list(on)}
    return {**fields_of(owner.get(PAGE)), **second}


@pytest.mark.parametrize("name", ["Sales tax", "Sales Tax", " sales  TAX", "Salestax"])
def test_another_rate_takes_the_old_ones_place_however_its_name_is_written(
    app: Flask, owner: Browser, name: str
) -> None:
    """13.75 per cent in silence would be charged by a capital letter; what is charged is said before it is kept."""
    fields = _with_a_tax(owner, name)
    shown = look(owner, PAGE, **fields).text.replace("&#39;", "'")
    assert "'Sales tax', 7.25 %, takes the place of 6.5 % from Jan 15, 2026 on" in shown, "the settings hold from then"
    assert "charged beside '" not in shown
    assert keep(owner, PAGE, **fields).status_code == 200
    now_is = settings_now(Desk(store=app.config[STORE], at=NOW, who=OWNER), date(2026, 2, 1))
    assert now_is and {one.name for one in now_is.settings.charge_rules.taxes} == {"Sales tax"}


def test_a_tax_beside_another_is_asked_about(owner: Browser) -> None:
    """Most places charge one. Said to be right, what it comes to is shown and kept; nothing more is asked of it."""
    fields = _with_a_tax(owner, "Sales tax 2026")
    asked = look(owner, PAGE, **fields)
    told = refused_words(asked)
    assert asked.status_code == 409 and 'name="sure"' in asked.text and "Keep it" not in asked.text
    assert (
        "'Sales tax 2026', 7.25 %, would be charged beside 'Sales tax', 6.5 %, on parts and freight from Jan 15" in told
    )
    assert "the law of the place decides" in told and "tick that it is right as typed" in told
    shown = look(owner, PAGE, **fields, sure="yes").text.replace("&#39;", "'")
    assert "is charged beside 'Sales tax', 6.5 %, on parts and freight from Jan 15, 2026 on" in shown
    assert keep(owner, PAGE, **fields, sure="yes").status_code == 200
    again = look(owner, PAGE, **{**fields_of(owner.get(PAGE)), "tax-2-percent": ["7.5"]})
    assert again.status_code == 200 and "would be charged beside" not in again.text


def test_a_tax_on_other_things_is_not_asked_about(owner: Browser) -> None:
    """Labour bears no other tax."""
    assert look(owner, PAGE, **_with_a_tax(owner, "Labour tax", ("labour",))).status_code == 200


def test_one_tax_twice_from_one_day_is_refused(owner: Browser) -> None:
    """By its name as it is compared."""
    fields = {**_with_a_tax(owner, "SALES TAX"), "tax-2-starts_on": ["2025-01-01"]}
    assert "is 'SALES TAX' from Jan 1, 2025 on a second time" in refused_words(look(owner, PAGE, **fields))


def test_a_file_with_a_tax_beside_another_is_asked_about(owner: Browser) -> None:
    """As the form is."""
    tax = '{ name = "Sales tax", percent = 6.5, on = ["parts", "freight"], starts_on = 2025-01-01 },'
    text = owner.client.get("/shop.toml").text
    assert tax in text
    second = tax.replace("Sales tax", "Town tax").replace("2025", "2026")
    told = upload(owner, "shop.toml", text.replace(tax, f"{tax}\n{second}"))
    assert told.status_code == 409 and "would be charged beside" in told.text and "Town tax" in told.text
