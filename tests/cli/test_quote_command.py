"""The command `sourcing quote`: papers, what the owner is told first, her explanation, what a new one would change."""

import json
import re
from datetime import datetime
from pathlib import Path

import openpyxl
import pytest

from tests.cli.running import in_a_process, sourcing
from tests.journeys.small_shop import SHOP, desk_at, sheet, shop, take_in

MONDAY = datetime(2026, 3, 2, 10, 15)
AT = "2026-03-02T10:15"
JOB = '[[agreed]]\ntitle = "Belt"\npart = "BELT"\nquantity = 1\nhours = 1.5\n'
ADD_ON = """[[add_ons]]
title = "Keepers"
part = "KEEPER"
quantity = 2
hours = 0.3
found = "Both keepers are bent."
why = "They hold the belt in place."
if_declined = "The belt may jump off."
"""
COST, MARGIN = "126.90", "28.57"


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A shop with a margin floor that no line reaches, and job 2026-0001."""
    desk = shop(tmp_path, MONDAY)
    rows = ["NW-77120,Norrowby,Belt B88,189.50,126.90,5,", "NW-31207,Norrowby,Keeper,13.50,6.40,50,"]
    sheet(desk, tmp_path, "stonegarth", "2026-03-01", rows)
    (tmp_path / "shop.toml").write_text(SHOP.replace("[shop]", "margin_floor_percent = 60\n[shop]"))
    assert sourcing(tmp_path, "setup", ".", at=AT)[0] == 0
    assert take_in(desk, tmp_path, JOB + ADD_ON) == "2026-0001"
    return tmp_path


def test_the_owner_is_told_first_and_the_customers_papers_tell_nothing_of_it(folder: Path) -> None:
    """Warnings before the quote; HTML, workbook and message without cost, supplier or margin."""
    code, out, beside = sourcing(
        folder, "quote", "2026-0001", "--html", "q.html", "--xlsx", "q.xlsx", "--owner-xlsx", "o.xlsx", at=AT
    )
    assert code == 0
    assert beside.startswith("For the owner: 1 Belt: margin 28.57 % on price, markup 40.00 % on cost; under the floor")
    assert "quote for job 2026-0001" in out and "For the owner" not in out and MARGIN not in out
    assert "The paper is in q.html." in out
    cells = [str(cell.value) for page in openpyxl.load_workbook(folder / "q.xlsx") for row in page for cell in row]
    for paper in ((folder / "q.html").read_text(), " ".join(cells)):
        assert COST not in paper and MARGIN not in paper and "Stonegarth" not in paper and "stonegarth" not in paper
    owners = [str(cell.value) for page in openpyxl.load_workbook(folder / "o.xlsx") for row in page for cell in row]
    assert "126.9" in owners and MARGIN in owners and "Stonegarth Trade Parts" in owners


def test_left_out_the_paper_goes_where_it_always_went(folder: Path) -> None:
    """quote-NUMBER-REVISION.html; the second time nothing has changed."""
    code, out, _ = sourcing(folder, "quote", "2026-0001", at=AT)
    assert code == 0 and "The paper is in quote-2026-0001-1.html." in out
    code, out, beside = sourcing(folder, "quote", "2026-0001", at="2026-03-02T10:20")
    assert code == 0 and "Nothing has changed; the last revision stands." in out
    assert beside.startswith("For the owner: 1 Belt: margin")


def test_a_message_is_short_and_has_the_total(folder: Path) -> None:
    """Instead of the longer text."""
    _, long, _ = sourcing(folder, "quote", "2026-0001", at=AT)
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--message", at=AT)
    assert code == 0 and "$357.29" in out and len(out) < len(long)


def test_a_message_stands_alone_on_the_output_ready_to_be_sent_on(folder: Path) -> None:
    """Of a new revision and of one printed again; the owner's words and where the paper is stand beside it."""
    for words in ((), ("--revision", "1")):
        code, out, beside = sourcing(folder, "quote", "2026-0001", "--message", *words, at=AT)
        assert code == 0 and out.startswith("Wickenby Yard Machine Repair: quote 2026-0001, revision 1."), out
        assert MARGIN not in out and "owner" not in out and "paper is in" not in out and "again" not in out
        assert f"margin {MARGIN} %" in beside and "The paper is in quote-2026-0001-1.html." in beside


def test_where_no_pdf_can_be_made_nothing_is_kept(folder: Path) -> None:
    """It is looked for first: no revision, no paper; the sentence names no package of some registry."""
    (folder / "plutoprint.py").write_text('raise ImportError("it is not here")')
    code, out, error = in_a_process(folder, "quote", "2026-0001", "--pdf", "q.pdf", at=AT)
    assert (code, out) == (1, "") and "a PDF can't be made on this machine (it is not here)" in error
    assert "pip install '.[pdf]'" in error and "parts-sourcing" not in error and not list(folder.glob("*.html"))
    code, _, error = in_a_process(folder, "quote", "2026-0001", "--revision", "1", at=AT)
    assert code == 1 and "no quote" in error


def test_a_pdf_that_fails_afterwards_leaves_no_doubt_of_what_is_done(folder: Path) -> None:
    """Its folder is not there: the revision is kept, its page is written and named."""
    code, _, error = sourcing(folder, "quote", "2026-0001", "--pdf", "nowhere/q.pdf", "--xlsx", "q.xlsx", at=AT)
    assert code == 1
    assert "revision 1 of job 2026-0001 is kept and stays so, and its paper is in quote-2026-0001-1.html" in error
    assert (folder / "quote-2026-0001-1.html").exists() and (folder / "q.xlsx").exists()


@pytest.mark.parametrize("name", [".", "x" * 400 + ".html"])
def test_a_paper_that_can_not_be_written_there_is_told(folder: Path, name: str) -> None:
    """A folder, and a name too long: one sentence, no fault of the program."""
    code, _, error = sourcing(folder, "quote", "2026-0001", "--html", name, at=AT)
    assert code == 1 and "can't" in error


def test_the_owners_explanation_prints_every_figure_and_writes_nothing(folder: Path) -> None:
    """Refused before the first revision; then figures with their sums, margin and markup with both words."""
    code, _, error = sourcing(folder, "quote", "2026-0001", "--owner", at=AT)
    assert code == 1 and "has no quote" in error
    sourcing(folder, "quote", "2026-0001", at=AT)
    (folder / "quote-2026-0001-1.html").unlink()
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--owner", at=AT)
    assert code == 0 and not (folder / "quote-2026-0001-1.html").exists()
    assert "for the owner, never for the customer" in out.splitlines()[0]
    assert "Stonegarth Trade Parts NW-77120" in out and "28.57 %" in out and "40.00 %" in out
    assert "1 Belt, each: 177.66 USD = 126.90 x 1.40" in out
    assert "agreed work, Sales tax: 13.48 USD = 7 % of 192.61 (parts, freight), rounded once" in out
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--owner", "--json", at=AT)
    assert code == 0 and json.loads(out)["explained"][0]["figure"] == "1 Belt, each"


def test_check_says_in_words_what_would_change_and_writes_nothing(folder: Path) -> None:
    """No quote yet; the same; a price that rose."""
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--check", at=AT)
    assert code == 0 and "has no quote yet" in out and "357.29 USD" in out
    assert not list(folder.glob("quote-*"))
    sourcing(folder, "quote", "2026-0001", at=AT)
    _, out, _ = sourcing(folder, "quote", "2026-0001", "--check", at=AT)
    assert "Revision 1 of job 2026-0001 says what a new one would say." in out
    tuesday = desk_at(folder, datetime(2026, 3, 3, 10, 15))
    rows = ["NW-77120,Norrowby,Belt B88,208.45,139.59,5,", "NW-31207,Norrowby,Keeper,13.50,6.40,50,"]
    sheet(tuesday, folder, "stonegarth", "2026-03-03", rows)
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--check", at="2026-03-03T10:15")
    assert code == 0 and "Revision 2 of job 2026-0001 would differ from revision 1:" in out
    assert re.search(r"376\.31", out) and out.rstrip().endswith("Nothing was written.")
    _, out, _ = sourcing(folder, "quote", "2026-0001", "--revision", "2", at="2026-03-03T10:15")
    assert not out


def test_check_after_its_last_day_says_that_nothing_but_the_days_would_change(folder: Path) -> None:
    """Valid to the 9th; on the 10th the same prices, another day."""
    sourcing(folder, "quote", "2026-0001", at=AT)
    code, out, _ = sourcing(folder, "quote", "2026-0001", "--check", at="2026-03-10T10:15")
    assert code == 0 and "would differ from revision 1" in out and "2026-03-09" in out


@pytest.mark.parametrize(
    "words",
    [
        ("--check", "--html", "x.html"),
        ("--check", "--owner"),
        ("--check", "--revision", "1"),
        ("--owner", "--pdf", "x.pdf"),
        ("--owner", "--plan", "shop"),
        ("--revision", "1", "--plan", "customer"),
        ("--revision", "1", "--need-by", "2026-03-09"),
    ],
)
def test_words_that_contradict_are_not_half_obeyed(folder: Path, words: tuple[str, ...]) -> None:
    """Exit code 2, and no paper."""
    assert sourcing(folder, "quote", "2026-0001", *words, at=AT)[0] == 2
    assert not list(folder.glob("*.html"))


def test_a_plan_for_nobody_known_is_refused(folder: Path) -> None:
    """'shop' or 'customer'."""
    code, _, error = sourcing(folder, "quote", "2026-0001", "--plan", "supplier", at=AT)
    assert code == 1 and "shop, customer" in error
