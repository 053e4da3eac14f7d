"""The box in every page's head: straight to what bears a number, a list for a name, suggestions for neither."""

from datetime import datetime
from pathlib import Path

import pytest
from flask import Flask
from sqlalchemy import insert

from sourcing.actions.desk import Desk
from sourcing.actions.jobs import take_in_job
from sourcing.actions.known_table import folded
from sourcing.actions.search import search
from sourcing.documents.shipped_files import demo_folder
from sourcing.storage.after_tables import BILLS
from sourcing.web.desks import STORE
from tests.web.world import CLERK, NOW, Browser


def gone_to(browser: Browser, text: str) -> str:
    """Where looking it up leads at once; blank where a page is shown instead."""
    answer = browser.client.get("/search", query_string={"for": text})
    return answer.location if answer.status_code == 303 else ""


def shown(browser: Browser, text: str) -> str:
    """The page of hits."""
    answer = browser.client.get("/search", query_string={"for": text})
    assert answer.status_code == 200
    return answer.text


def new_job(app: Flask, tmp_path: Path, **changes: str) -> None:
    """Take in a job like the demonstration's, with other words in it."""
    text = (demo_folder() / "job.toml").read_text(encoding="utf-8")
    for old, new in changes.items():
        text = text.replace(old, new)
    file = tmp_path / "job.toml"
    file.write_text(text, encoding="utf-8")
    take_in_job(Desk(store=app.config[STORE], at=NOW, who=CLERK), file)


@pytest.mark.parametrize(
    ("text", "page"),
    [
        ("2026-0003", "/jobs/2026-0003"),
        (" 2026-0003 ", "/jobs/2026-0003"),
        ("3", "/jobs/2026-0003"),
        ("po-2026-0001", "/orders/PO-2026-0001"),
        ("PO 1", "/orders/PO-2026-0001"),
        ("stonegarth", "/terms/of/stonegarth"),
        ("Pellbrook Power Parts", "/terms/of/pellbrook"),
        ("nw 40388", "/find?number=nw+40388"),
        ("PB-4038", "/find?number=PB-4038"),
        ("belt-auger", "/find?number=BELT-AUGER"),
    ],
)
def test_a_number_leads_straight_to_what_bears_it(clerk: Browser, text: str, page: str) -> None:
    """Scanned or typed, in any case and with blanks."""
    assert gone_to(clerk, text) == page


def test_the_technician_is_sent_only_where_she_may_go(technician: Browser) -> None:
    """To counting what comes and not to what it costs; no supplier's terms."""
    assert gone_to(technician, "PO-2026-0001") == "/receive/PO-2026-0001"
    assert technician.status("/receive/PO-2026-0001") == 200
    assert gone_to(technician, "stonegarth") == "" and "Stonegarth" not in shown(technician, "stonegarth")
    for text in ("belt", "tilbrook", "2026", "NW-826"):
        assert "$" not in shown(technician, text) and "/terms/" not in shown(technician, text)


def test_a_name_lists_the_customers_jobs_the_newest_first(clerk: Browser) -> None:
    """By part of the name, a telephone number or a serial number too."""
    page = shown(clerk, "TILBR")
    assert page.index("Job 2026-0004") < page.index("Job 2026-0001") and "Customers" in page
    assert "Customers" in shown(clerk, "555 0142") and "Machines by serial number" in shown(clerk, "5180427")
    assert "Job 2026-0002" in shown(clerk, "snow maud")


def test_a_job_is_found_as_soon_as_it_is_taken_in(app: Flask, clerk: Browser, tmp_path: Path) -> None:
    """Though names are remembered between two look-ups; case and accents do not matter."""
    assert "Nothing here bears" in shown(clerk, "ångström")
    new_job(app, tmp_path, **{"Maud Tilbrook": "Zoë Ångström", "5180427": "777-31"})
    for text in ("Ångström", "ANGSTROM", "zoe", "77731"):
        assert gone_to(clerk, text) == "/jobs/2026-0005", text


def test_a_part_found_by_its_name_is_never_taken_at_once(clerk: Browser) -> None:
    """A size is no part: B36 lists the one belt that has it, and a person goes on."""
    assert gone_to(clerk, "B36") == ""
    assert 'href="/find?number=BELT-AUGER">BELT-AUGER</a>' in shown(clerk, "b36")


def test_a_bill_leads_to_its_job(app: Flask, clerk: Browser) -> None:
    """By the number on the paper."""
    with app.config[STORE].writing() as connection:
        row = {"job": "2026-0001", "number": "B-2026-0077", "at": datetime(2026, 1, 15, 9), "who": CLERK}
        connection.execute(insert(BILLS).values(**row, body="{}", paper="", sha256=""))
    assert gone_to(clerk, "b-2026-0077") == "/jobs/2026-0001/bill"


@pytest.mark.parametrize(
    ("text", "near"),
    [("tillbrok", "Maud Tilbrook"), ("2026-0009", "Job 2026-0001"), ("stonegart parst", "Stonegarth")],
)
def test_what_nothing_bears_has_suggestions_and_leads_to_the_part_numbers(clerk: Browser, text: str, near: str) -> None:
    """Names with a slip, numbers near the one typed."""
    page = shown(clerk, text)
    assert "Nothing here bears" in page and near in page and "as a part number" in page


def test_nothing_and_hostile_text_are_harmless(clerk: Browser) -> None:
    """No fault, and no markup of a visitor's."""
    assert "Type a part number" in shown(clerk, "  ")
    assert "<script>alert" not in shown(clerk, "<script>alert(1)</script>")
    assert shown(clerk, "%_\\'\";--") and shown(clerk, "9" * 5000)


def test_too_many_hits_are_told(app: Flask, tmp_path: Path) -> None:
    """Fifty of a kind are shown, the newest."""
    for _ in range(52):
        new_job(app, tmp_path)
    found = search(Desk(store=app.config[STORE], at=NOW, who=CLERK), "tilbrook", suppliers_too=False)
    assert len(found.hits) == 50 and found.left_out == 6 and found.hits[0].key == "2026-0056"


def test_folding_sets_case_and_accents_aside() -> None:
    """Unicode Standard Annex 15, form KD: a letter and its mark apart."""
    assert folded("  Zoë  ÅNGSTRÖM ") == "zoe angstrom"
