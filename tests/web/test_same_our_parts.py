"""Parts of ours by pages: added, found, changed with what that touches, taken out; a new shop begins so."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.part_deeds import opened_part
from sourcing.web.app import make_app
from sourcing.web.counter import CounterSetup
from sourcing.web.desks import STORE
from tests.web.test_shop_begin import FIRST
from tests.web.world import CLERK, NOW, OWNER, PASSWORDS, Browser

PARTS = "/same-parts/our-parts"
PIN = {"code": "PIN", "name": "Shear pin", "category": "pin"}


def _desk(app: Flask) -> Desk:
    return Desk(store=app.config[STORE], at=NOW, who=CLERK)


@pytest.fixture
def empty(tmp_path: Path) -> Iterator[Browser]:
    """The owner of a shop that was set up by its small form a minute ago."""
    app = make_app(CounterSetup(database=str(tmp_path / "new.db"), clock=lambda: NOW))
    app.config["TESTING"] = True
    browser = Browser(app)
    browser.send("/first-visit", name=OWNER, password=PASSWORDS[OWNER])
    browser.send("/shop/begin", **FIRST, tax_name="", tax_percent="")
    yield browser
    app.config[STORE].close()


def test_a_new_shop_begins_by_pages_alone(empty: Browser) -> None:
    """A number nobody knows leads to the form with it filled in, this to a statement, and then the number is found."""
    unknown = empty.client.get("/find?number=NW-5").text
    form = re.search(rf'href="({PARTS}/add\?code=NW-5[^"]*)"', unknown)
    assert form and 'value="NW-5"' in empty.get(form[1].replace("&amp;", "&"))
    added = empty.send(f"{PARTS}/add?number=NW-5", **PIN)
    assert "PIN is a part of ours now" in added.text and added.request.path == "/same-parts/add"
    assert re.search(r'name="left_whose" value="ours" checked', added.text) and 'value="NW-5"' in added.text
    said = {"relation": "same part", "right_number": "NW-5", "right_maker": "Norrowby", "source": "his list"}
    where = added.request.full_path
    kept = empty.send_again(empty.hidden(where, where), where, left_whose="ours", left_number="PIN", **said)
    assert "The statement is kept" in kept.text
    assert "<h1>Shear pin</h1>" in empty.get("/find?number=NW-5")


@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ({"code": " -- "}, "our code for the part holds no letter"),
        ({"code": "belt auger"}, "is a part of ours already: BELT-AUGER, Auger drive belt"),
        ({"code": "NW 40388"}, "is a number of our part BELT-AUGER already"),
        ({"code": "1.23E+11"}, "is no code as somebody would write it"),
        ({"code": "SET", "sold_as": "matched set", "pieces": "two"}, "is not a count of pieces"),
    ],
)
def test_what_a_row_of_the_table_is_refused_for_the_form_is_too(
    app: Flask, clerk: Browser, typed: dict[str, str], told: str
) -> None:
    """In sentences without a worksheet; what was typed stays."""
    refused = clerk.send(f"{PARTS}/add", **{"name": "Odd thing", **typed})
    assert refused.status_code == 409 and told.casefold() in _words(refused.text).casefold()
    assert 'value="Odd thing"' in refused.text and "worksheet" not in refused.text


def test_a_part_sent_twice_is_added_once_and_taken_out_again(app: Flask, clerk: Browser) -> None:
    """A double click leads to the same page; the way back is a click away while nothing names it."""
    hidden = clerk.hidden(f"{PARTS}/add", f"{PARTS}/add")
    pages = [clerk.send_again(hidden, f"{PARTS}/add", **PIN) for _ in range(2)]
    assert [one.status_code for one in pages] == [200, 200] and pages[0].request.path == pages[1].request.path
    assert f"{PARTS}/take-out?code=PIN" in pages[0].text
    gone = clerk.send(f"{PARTS}/take-out?code=PIN")
    assert "PIN is no part of ours any more" in gone.text and "name=Shear+pin" in gone.text
    assert clerk.status(f"{PARTS}/change?code=PIN") == 409


def test_a_part_that_something_names_stays(app: Flask, clerk: Browser) -> None:
    """A statement, though withdrawn since, or a job; the page says which and offers no button."""
    page = clerk.get(f"{PARTS}/take-out?code=BELT-AUGER")
    assert "statement 1" in page and "job 2026-0001" in page and "<form method=" not in page.split("<main")[1]
    hidden = clerk.hidden(f"{PARTS}/add", f"{PARTS}/add")
    kept = clerk.send_again(hidden, f"{PARTS}/take-out?code=BELT-AUGER")
    assert kept.status_code == 409 and opened_part(_desk(app), "BELT-AUGER").part


@pytest.mark.parametrize(
    ("size", "category", "told"),
    [
        ("B36", "belt", "The size reads as"),
        ("B36", "bearing", "reads as a belt, and the category is"),
        ("M8x20", "bolt", "no size of a belt, a bearing or a chain"),
    ],
)
def test_how_the_size_reads_is_told_at_once(clerk: Browser, size: str, category: str, told: str) -> None:
    """A size nobody can read holds nothing back; one of another kind of thing is doubted."""
    assert told in _words(clerk.send(f"{PARTS}/add", code="NEW", size=size, category=category).text)


def test_another_size_tells_what_it_touches_before_it_is_kept(app: Flask, clerk: Browser) -> None:
    """Offers held back from now on, the open jobs, what contradicts it; then it is kept, and its way back is shown."""
    change = f"{PARTS}/change?code=BELT-AUGER"
    before = opened_part(_desk(app), "BELT-AUGER").part
    other = {"name": before.name, "size": "B60", "category": before.category, "note": before.note, "look": "yes"}
    seen = clerk.send(change, **other)
    words = _words(seen.text)
    assert (
        f"'{before.size}' becomes 'B60'" in words
        and "Held back for its size from then on" in words
        and "2026-0004" in words
    )
    assert opened_part(_desk(app), "BELT-AUGER").part == before
    mark = re.search(r'name="seen" value="(\w+)"', seen.text)
    assert mark
    del other["look"]
    kept = clerk.send(change, **other, seen=mark[1], keep="yes")
    assert "BELT-AUGER is changed" in kept.text and opened_part(_desk(app), "BELT-AUGER").part.size == "B60"
    back = re.search(rf'href="({PARTS}/change\?[^"]+)">Take it back', kept.text)
    assert back and f'value="{before.size}"' in clerk.get(back[1].replace("&amp;", "&"))


def test_what_was_not_seen_is_not_kept(app: Flask, clerk: Browser) -> None:
    """Another size than the one that was looked at is shown first."""
    refused = clerk.send(f"{PARTS}/change?code=BRG-IDLER", name="Idler", size="6204", seen="0", keep="yes")
    assert refused.status_code == 409 and opened_part(_desk(app), "BRG-IDLER").part.size != "6204"


def test_a_statement_about_a_code_that_is_none_leads_to_the_form(clerk: Browser) -> None:
    """With the code filled in; no worksheet is spoken of."""
    said = {
        "left_whose": "ours",
        "left_number": "PIN",
        "relation": "same part",
        "right_number": "P-1",
        "source": "list",
    }
    refused = clerk.send("/same-parts/add", **said)
    assert refused.status_code == 409 and f'href="{PARTS}/add?code=PIN"' in refused.text
    assert "worksheet" not in refused.text


def test_a_technician_adds_and_changes_no_part(technician: Browser) -> None:
    """Nor is she shown where one could."""
    for page in ("add", "change?code=BELT-AUGER", "take-out?code=BELT-AUGER"):
        assert technician.status(f"{PARTS}/{page}") == 403
    for page in ("/same-parts", "/find?number=ZZ-999", "/same-parts/number?number=BELT-AUGER"):
        assert PARTS not in technician.client.get(page).text


def _words(page: str) -> str:
    return page.replace("&#39;", "'").split("<main")[1]


def test_a_statement_is_refused_in_the_words_of_its_page(clerk: Browser) -> None:
    """No option of a command, no column, no row of a worksheet."""
    said = {"left_whose": "ours", "left_number": "BELT-AUGER", "relation": "same part", "right_number": "X-1"}
    for wrong in (
        {"source": ""},
        {"source": "list", "right_number": "1.23E+11"},
        {"source": "list", "right_number": " "},
    ):
        refused = clerk.send("/same-parts/add", **{**said, **wrong})
        told = refused.text.split('id="refused"')[1].split("</div>")[0]
        assert refused.status_code == 409 and not re.search("--|column|cell|row", told), told


def test_a_number_a_job_names_in_vain_leads_to_the_form(clerk: Browser) -> None:
    """As typed, blanks and all."""
    told = clerk.send(
        "/jobs/new", name="Ada", machine_description="thrower", title="Replace it", part="OV 99", quantity="1"
    )
    assert f'href="{PARTS}/add?code=OV+99&amp;number=OV+99"' in told.text
