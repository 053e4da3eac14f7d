"""Commands of orders as a clerk types them: look, order, list, confirm, change, cancel, print."""

import json
from pathlib import Path

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from sourcing.actions.orders import place_orders
from tests.actions.order_shop import MONDAY, approved, orders_shop, quoted
from tests.actions.test_left_to_order import declined_belt
from tests.cli.running import in_a_process, sourcing
from tests.journeys.small_shop import desk_at

AT = "2026-03-02T11:00"


@pytest.fixture
def shop(tmp_path: Path) -> Path:
    """An approved job with a belt and two keepers, and one that waits for its answer; the shop's folder."""
    desk = orders_shop(tmp_path)
    approved(desk, tmp_path, ("BELT", 1), ("KEEPER", 2))
    quoted(desk, tmp_path, ("IDLER", 1))
    return tmp_path


def run(folder: Path, *words: str, at: str = AT) -> str:
    """The output of a command that must succeed, blanks made one."""
    code, out, errors = sourcing(folder, *words, at=at)
    assert code == 0, errors
    return " ".join(out.split())


def refused(folder: Path, *words: str, at: str = AT) -> str:
    """The one sentence of a command that must be refused."""
    code, out, errors = sourcing(folder, *words, at=at)
    assert (code, out) == (1, "") and errors.count("\n") == 1, (code, out, errors)
    return errors


def test_look_first_then_order(shop: Path) -> None:
    """A look writes no file and takes no number; the order writes a page and a CSV."""
    seen = run(shop, "order", "2026-0001", "--look")
    assert "Nothing is ordered yet" in seen and "170.60 USD at the door" in seen and "passes free freight" in seen
    assert not list(shop.glob("PO-*")) and run(shop, "orders") == "No order has been placed."
    placed = run(shop, "order", "2026-0001", "--note", "Side door")
    assert "PO-2026-0001 to Stonegarth Trade Parts: 1 x NW-77120, 2 x NW-31207" in placed
    assert "Side door" in (shop / "PO-2026-0001.html").read_text()
    assert sorted(path.name for path in shop.glob("PO-*")) == ["PO-2026-0001.csv", "PO-2026-0001.html"]


def test_what_is_not_approved_is_refused_in_a_sentence(shop: Path) -> None:
    """By job, by line, and by a look."""
    assert "no line of 2026-0002 that needs parts is approved" in refused(shop, "order", "2026-0002")
    assert "line 1 of job 2026-0002 is waiting" in refused(shop, "order", "2026-0002", "--line", "1")
    assert "no line of 2026-0002" in refused(shop, "order", "2026-0002", "--look")


def test_a_whole_life_of_an_order(shop: Path) -> None:
    """Confirmed late and dearer, moved again, one keeper taken off, the belt cancelled, ordered by nobody twice."""
    run(shop, "order", "2026-0001")
    said = ("--here", "1=2026-03-16:2026-03-18", "--price", "1=152.90", "--said-by", "Ilse", "--words", "backordered")
    told = run(shop, "confirm", "PO-2026-0001", *said)
    assert "152.90 USD each is confirmed, 139.00 was ordered: 13.90 more, 10.00 %" in told
    assert "Not as approved: job 2026-0001 line 1" in told and "'sourcing alarms 2026-0001'" in told
    listed = run(shop, "orders", "2026-0001")
    assert "1 x NW-77120, 2 x NW-31207 2026-03-18, moved 1 time" in listed
    changed = run(shop, "change-order", "PO-2026-0001", "--line", "2=1", "--words", "one is enough")
    assert "Change 1 of purchase order PO-2026-0001: 1 x NW-77120, 1 x NW-31207" in changed
    gone = run(shop, "cancel-order", "PO-2026-0001", "--line", "1", "--pdf", "gone.pdf")
    assert "free freight is no longer passed: freight 14.95 USD" in gone
    assert "Change 2 of purchase order" in PdfReader(shop / "gone.pdf").pages[0].extract_text()
    one = run(shop, "orders", "po-2026-0001")
    assert (
        "1. NW-77120: cancelled; 1 ordered at first" in one and "confirmed by Ilse, taken down by Oona Brandeth" in one
    )
    rest = run(shop, "cancel-order", "PO-2026-0001")
    assert "Cancellation of purchase order PO-2026-0001: nothing of it stands" in rest
    assert {path.name for path in shop.glob("*-change-*.html")} == {
        f"PO-2026-0001-change-{at}.html" for at in (1, 2, 3)
    }
    assert "it was cancelled on 2026-03-02, see --change" in run(shop, "order-paper", "PO-2026-0001")
    assert "PO-2026-0002 to Stonegarth" in run(shop, "order", "2026-0001")


def test_papers_of_every_kind(shop: Path) -> None:
    """Text for a message without options; files where they are named; a change as a page only."""
    run(shop, "order", "2026-0001")
    assert "Purchase order PO-2026-0001 of Wickenby Yard Machine Repair" in run(shop, "order-paper", "PO-2026-0001")
    kinds = ("--html", "o.html", "--pdf", "o.pdf", "--csv", "o.csv", "--xlsx", "o.xlsx", "--ubl", "o.xml")
    assert run(shop, "order-paper", "PO-2026-0001", *kinds).count("Written:") == 5
    assert (shop / "o.html").read_text() == (shop / "PO-2026-0001.html").read_text()
    assert "NW-77120" in PdfReader(shop / "o.pdf").pages[0].extract_text()
    assert load_workbook(shop / "o.xlsx").sheetnames == ["PO-2026-0001"]
    assert "<cbc:UBLVersionID>2.1</cbc:UBLVersionID>" in (shop / "o.xml").read_text()
    run(shop, "change-order", "PO-2026-0001", "--line", "2=1")
    run(shop, "order-paper", "PO-2026-0001", "--change", "1", "--html", "c.html")
    assert (shop / "c.html").read_text() == (shop / "PO-2026-0001-change-1.html").read_text()
    for option in ("--csv", "--xlsx", "--ubl"):
        assert "not a list of lines" in refused(shop, "order-paper", "PO-2026-0001", "--change", "1", option, "c.x")
    assert not (shop / "c.x").exists()
    assert "has no change 7; use one of: 1" in refused(shop, "order-paper", "PO-2026-0001", "--change", "7")


def test_where_no_pdf_can_be_made_nothing_is_changed_or_cancelled(shop: Path) -> None:
    """The line is still on order; the same command goes through without --pdf."""
    run(shop, "order", "2026-0001")
    (shop / "plutoprint.py").write_text('raise ImportError("it is not here")')
    for words in (("change-order", "PO-2026-0001", "--line", "2=1"), ("cancel-order", "PO-2026-0001", "--line", "1")):
        code, out, error = in_a_process(shop, *words, "--pdf", "c.pdf", at=AT)
        assert (code, out) == (1, "") and "leave out --pdf" in error and error.count("\n") == 1
        assert "1 x NW-77120, 2 x NW-31207" in run(shop, "orders", "2026-0001") and not list(shop.glob("*change*"))


SLIPS = [
    (("confirm", "PO-2026-0001", "--here", "1=18.3.2026"), "'18.3.2026' is no day"),
    (("confirm", "PO-2026-0001", "--here", "1=2026-03-18:"), "'' is no day"),
    (("confirm", "PO-2026-0001", "--price", "1=cheap"), "cheap"),
    (("confirm", "PO-2026-0009"), "PO-2026-0009"),
    (("change-order", "PO-2026-0001", "--line", "2=3"), "more than the customer's yes covers: 2 at most"),
    (("change-order", "PO-2026-0001", "--line", "2=0"), "cancel the line with 'sourcing cancel-order PO-2026-0001"),
    (("cancel-order", "PO-2026-0001", "--line", "9"), "no line 9"),
]


def test_a_slip_is_one_sentence_and_nothing_happened(shop: Path) -> None:
    """No paper is written, no event kept."""
    place_orders(desk_at(shop, MONDAY), ["2026-0001"])
    for words, sentence in SLIPS:
        assert sentence in refused(shop, *words)
    assert not list(shop.glob("*change*"))
    now = json.loads(run(shop, "orders", "PO-2026-0001", "--json"))
    assert now["now"]["events"] == [] and [one["pieces"] for one in now["open"]] == [1, 2]


def test_after_a_partial_yes_look_and_plan_tell_what_is_cheaper_by_itself(tmp_path: Path) -> None:
    """45.00 and freight as quoted, 55.95 from the other supplier; the plan of what is left says the same."""
    _, job = declined_belt(tmp_path)
    code, told, _ = sourcing(tmp_path, "order", job, "--look", at="2026-03-02T09:00")
    assert code == 0 and "it costs 55.95 USD from Pellbrook Power Parts" in " ".join(told.split())
    code, told, _ = sourcing(tmp_path, "plan", job, "--left-to-order", at="2026-03-02T09:00")
    assert code == 0 and "55.95" in told and "Stonegarth Trade Parts: " not in told
    code, _, errors = sourcing(tmp_path, "plan", job, "--left-to-order", "--only-agreed", at="2026-03-02T09:00")
    assert code and "exclude each other" in errors
