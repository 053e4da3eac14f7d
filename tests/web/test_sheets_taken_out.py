"""A sheet taken out from which open quotes and orders were worked out: said before, and marked where people work."""

import sqlite3
from pathlib import Path

from flask import Flask

from sourcing.actions.desk import Desk
from sourcing.actions.orders import place_orders
from sourcing.documents.shipped_files import demo_folder
from sourcing.web.desks import STORE
from tests.web.sheets_world import drop, page_of
from tests.web.world import APPROVED, CLERK, ORDERED, ORDERING, QUOTED, Browser

GONE = "A sheet it was worked out from is gone"


def _sheet_of(browser: Browser, supplier: str) -> int:
    """The number of the supplier's sheet that counts."""
    page = browser.get(f"/sheets/of/{supplier}")
    return int(page.split('href="/sheets/')[1].split('"')[0].split("/")[0])


def test_before_it_is_done_the_jobs_and_lines_are_named(clerk: Browser) -> None:
    """With the lines of each quote, and nothing of what is received already."""
    page = clerk.get(f"/sheets/{_sheet_of(clerk, 'pellbrook')}/take-out")
    assert "Worked out from it, and still open" in page
    for job in (APPROVED, QUOTED):
        assert f'href="/jobs/{job}"' in page
    assert "lines 1" in page and "of revision 1" in page
    assert f'href="/jobs/{ORDERED}"' not in page, "all of it is ordered, and some of it came"


def test_a_sheet_nothing_open_came_from_says_nothing(clerk: Browser) -> None:
    """An older sheet, say."""
    assert "Worked out from it" not in clerk.get("/sheets/1/take-out")


def test_afterwards_it_stands_where_a_person_works_on_the_job(app: Flask, clerk: Browser) -> None:
    """On the job and on its quote, with who took it out; no longer once the quote is written anew."""
    sheet = _sheet_of(clerk, "pellbrook")
    assert GONE not in clerk.get(f"/jobs/{QUOTED}")
    done = clerk.send(f"/sheets/{sheet}/take-out")
    assert "marked there: job" in done.text and QUOTED in done.text
    for page in map(clerk.get, (f"/jobs/{QUOTED}", f"/jobs/{QUOTED}/quote", f"/jobs/{QUOTED}/links")):
        assert GONE in page and f'href="/jobs/{QUOTED}/write-quote"' in page
        assert CLERK in page and f"took out sheet {sheet} of Pellbrook Power Parts" in page
    assert GONE not in clerk.get(f"/jobs/{ORDERED}")
    clerk.send(f"/jobs/{QUOTED}/write-quote", need_by="2026-02-27")
    assert GONE not in clerk.get(f"/jobs/{QUOTED}")


def test_the_same_file_dropped_again_takes_the_mark_away(app: Flask, clerk: Browser) -> None:
    """What was quoted stands by it as before."""
    (file,) = (demo_folder() / "pellbrook").glob("*2026*")
    clerk.send(f"/sheets/{_sheet_of(clerk, 'pellbrook')}/take-out")
    assert GONE in clerk.get(f"/jobs/{QUOTED}")
    page_of(clerk, drop(app, clerk, file.read_bytes(), f"pellbrook-{file.name}"))
    assert GONE not in clerk.get(f"/jobs/{QUOTED}")


def test_another_price_in_the_sheet_in_its_place_leaves_the_mark(app: Flask, clerk: Browser, tmp_path: Path) -> None:
    """The offer is there again and costs more: what was quoted does not stand by it."""
    (file,) = (demo_folder() / "pellbrook").glob("*2026*")
    clerk.send(f"/sheets/{_sheet_of(clerk, 'pellbrook')}/take-out")
    page_of(clerk, drop(app, clerk, file.read_bytes(), f"pellbrook-{file.name}"))
    with sqlite3.connect(tmp_path / "shop.db") as store:
        store.execute("UPDATE price_breaks SET price = price * 2")
        store.execute("UPDATE offers SET net_price = net_price * 2")
    store.close()
    assert GONE in clerk.get(f"/jobs/{QUOTED}")


def test_an_order_nobody_confirmed_is_named_and_marked(app: Flask, clerk: Browser) -> None:
    """Until the supplier confirms it: then his word counts, and not the sheet."""
    (placed,) = place_orders(Desk(store=app.config[STORE], at=ORDERING, who=CLERK), [APPROVED]).orders
    order = placed.number
    sheet = _sheet_of(clerk, "pellbrook")
    page = clerk.get(f"/sheets/{sheet}/take-out")
    assert f'href="/orders/{order}"' in page and "not confirmed yet" in page
    clerk.send(f"/sheets/{sheet}/take-out")
    assert f"took out sheet {sheet}" in clerk.get(f"/orders/{order}")


def test_the_technician_sees_the_mark_and_no_cost(clerk: Browser, technician: Browser) -> None:
    """Who is at the bench reads the quote to the customer too."""
    clerk.send(f"/sheets/{_sheet_of(clerk, 'pellbrook')}/take-out")
    assert GONE in technician.get(f"/jobs/{QUOTED}")
