"""What is wrong between one supplier and the shop takes his offers out, and nobody else's."""

from datetime import date
from pathlib import Path

import pytest

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.actions.landed import landed_offers
from sourcing.actions.landed_sheet import landed_sheet
from sourcing.actions.plan import JOB_WISHES, plan_job
from sourcing.actions.terms import set_terms, take_terms
from sourcing.documents.landed import landed_sheet_text
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import MONDAY, SHEET_DAY, new_terms, priced
from tests.journeys.small_shop import shop, take_in

SHUT = [
    ({"currency": "EUR"}, "the sheet is in USD, the terms are in EUR", "currency-differs"),
    (
        {"entry_fees": '[{ name = "Broker", charge = 5, currency = "JPY" }]'},
        "the rate table has no rate from JPY to USD on or before 2026-03-02",
        "supplier-without-rate",
    ),
    (
        {"time_zone": "Europe/Berlin"},
        "the cut-off of 'stonegarth' is on a clock in Europe/Berlin, and the shop's own time zone is not set",
        "shop-without-zone",
    ),
]


def _desk(folder: Path) -> Desk:
    """Two suppliers sell the belt, Stonegarth for less."""
    desk = shop(folder, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "20.00"))
    keep(desk, "pellbrook", SHEET_DAY, priced("NW-77120", "40.00"))
    return desk


@pytest.mark.parametrize(("said", "why", "minded"), SHUT)
def test_his_offers_are_set_aside_and_the_others_stand(
    tmp_path: Path, said: dict[str, str], why: str, minded: str
) -> None:
    """In a comparison, a plan, and at the door; whoever changes the terms is told at once."""
    desk = _desk(tmp_path)
    told = set_terms(desk, "stonegarth", said).told
    assert minded in {one.code for one in told}
    found = compare(desk, "BELT", 1)
    assert [one.priced.offer.supplier for one in found.ranked] == ["pellbrook"]
    assert [(one.offer.supplier, one.reason) for one in found.set_aside] == [("stonegarth", why)]
    job = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1\n')
    plan = plan_job(desk, job, None, wishes=JOB_WISHES)
    assert [one.landed.supplier for one in plan.orders] == ["pellbrook"]
    (alone,) = landed_offers(desk, "stonegarth", "NW-77120")
    assert alone.landed is None and alone.why_not == why
    sheet = landed_sheet(desk, "stonegarth")
    assert [(one.words, one.offers) for one in sheet.not_priced] == [(why, 1)]


def test_a_change_that_keeps_nothing_from_being_priced_is_not_told_of(tmp_path: Path) -> None:
    """A minimum order is no such thing."""
    assert not set_terms(_desk(tmp_path), "stonegarth", {"minimum_order": "5.00"}).told


def test_terms_taken_from_a_file_are_looked_at_too(tmp_path: Path) -> None:
    """By what holds on the first day of the new terms."""
    desk, path = _desk(tmp_path), tmp_path / "suppliers.toml"
    entry = path.read_text().split("[[supplier]]")[1].replace("2025-01-01", "2026-05-01")
    path.write_text("[[supplier]]" + entry.replace('"USD"', '"GBP"'))
    (done,) = take_terms(desk, path)
    assert done.starts_on == date(2026, 5, 1)
    assert {one.code for one in done.told} == {"supplier-without-rate", "currency-differs"}


def test_goods_replaced_by_different_numbers_are_counted_once(tmp_path: Path) -> None:
    """In each row its own number stands."""
    desk = shop(tmp_path, MONDAY)
    gone = [
        priced(f"NW-{at}", "1.00", no_longer_available=True, superseded_by=f"NW-9{at}") | {"row": 4 + at}
        for at in range(3)
    ]
    keep(desk, "stonegarth", SHEET_DAY, *gone)
    found = landed_sheet(desk, "stonegarth")
    words = "no longer available; the supplier names another instead"
    assert [(one.words, one.offers) for one in found.not_priced] == [(words, 3)]
    assert "names NW-92 instead" in found.rows[2].why_not


def test_an_old_rate_is_noted_at_the_door(tmp_path: Path) -> None:
    """Beside one offer and above a whole sheet."""
    desk = shop(tmp_path, MONDAY)
    (tmp_path / "rates.csv").write_text("currency,into,dated,rate,source\nEUR,USD,2009-01-02,1.39,bank\n")
    new_terms(desk, tmp_path, ('currency = "USD"', 'currency = "EUR"'), starts="2026-02-01")
    keep(desk, "stonegarth", SHEET_DAY, priced("NW-77120", "20.00", currency="EUR"))
    note = "the rate is 6,268 days old: 1 EUR = 1.39 USD on 2009-01-02"
    (alone,) = landed_offers(desk, "stonegarth", "NW-77120")
    sheet = landed_sheet(desk, "stonegarth")
    assert note in alone.notes and note in sheet.notes and f"MIND: {note}" in landed_sheet_text(sheet)
