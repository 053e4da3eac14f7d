"""Goods in and goods back at the command line: what is said, what is written, what is refused in a sentence."""

import csv
import io
import json
from pathlib import Path

import pytest

from tests.actions.landed_shop import ordered
from tests.cli.running import sourcing

WEDNESDAY, FRIDAY = "2026-03-04T09:30", "2026-03-06T09:00"


def said(folder: Path, *words: str, at: str = WEDNESDAY) -> str:
    """What the command prints; it must not fail."""
    code, output, errors = sourcing(folder, *words, at=at)
    assert code == 0, errors
    return output


def refusal(folder: Path, *words: str, at: str = WEDNESDAY) -> str:
    """The one sentence it is refused with."""
    code, output, errors = sourcing(folder, *words, at=at)
    assert (code, output) == (1, ""), errors
    (line,) = errors.splitlines()
    return line


def test_a_delivery_with_every_kind_of_trouble(tmp_path: Path) -> None:
    """One keeper damaged, three charged, the belt under another number, freight and handling, a total."""
    order = ordered(tmp_path)
    trouble = "--damaged 2=1 --charged 2=3 --number 1=CV-B880K --maker 1=Corrivane --charge Handling=2.00"
    told = said(
        tmp_path, "receive", order, "--paper", "DN-1", "--freight", "14.95", *trouble.split(), "--total", "165.45"
    )
    # 126.90 + 3 x 6.20 + 14.95 + 2.00 = 162.45
    assert told == (
        "PO-2026-0001: 3 pieces taken in on paper DN-1, 2 of them good.\n"
        "Look: line 1: the customer's yes was for NW-77120, CV-B880K came: see 'sourcing alarms 2026-0001'\n"
        "  before it is fitted.\n"
        "Look: 3.00 USD of paper DN-1 is not explained by its lines: look for a price, charge or count not\n"
        "  said.\n"
        "Differs: NW-77120: 1 came as CV-B880K.\n"
        "Differs: NW-31207: 3 charged on paper DN-1, 2 came, 6.20 USD.\n"
        "Differs: NW-31207: 1 of 2 damaged, 6.20 USD.\n"
        "Differs: Handling 2.00 USD on paper DN-1, the order has 0.00 USD, 2.00 USD.\n"
        "Differs: paper DN-1 says 165.45 USD in all, its lines come to 162.45 USD, 3.00 USD.\n"
        "Lines still open: 2 (1 piece).\n"
        "Freight 14.95 USD shared by value: line 1 13.62 USD, line 2 1.33 USD.\n"
    )


def test_the_claim_on_paper_and_in_tables(tmp_path: Path) -> None:
    """The page shows what the text says; the table has a row for each difference."""
    order = ordered(tmp_path)
    said(tmp_path, "receive", order, "--paper", "DN-1", "--freight", "14.95", "--price", "1=130.00")
    text = said(tmp_path, "claim", order, "--html", "c.html", "--csv", "c.csv", "--xlsx", "c.xlsx", at=FRIDAY)
    assert "line 1, NW-77120: charged 130.00 instead of 126.90 on paper DN-1: 3.10 USD" in text
    assert "In all: 3.10 USD" in text and "Tilbrook" not in text
    page = (tmp_path / "c.html").read_text()
    assert (
        "charged 130.00 instead of 126.90" in page
        and "Tilbrook" not in page
        and "2026-0001" not in page.replace(order, "")
    )
    (row,) = csv.DictReader(io.StringIO((tmp_path / "c.csv").read_text()))
    assert (row["Amount"], row["Claimed"], row["Line"]) == ("3.10", "yes", "1")
    assert (tmp_path / "c.xlsx").read_bytes()[:2] == b"PK"
    assert "To be claimed: 3.10 USD" in said(tmp_path, "differences", order)


def test_goods_from_sending_to_credit(tmp_path: Path) -> None:
    order = ordered(tmp_path)
    said(tmp_path, "receive", order, "--paper", "DN-1", "--freight", "14.95", "--damaged", "2=1")
    waits = said(tmp_path, "going-back", "--xlsx", "w.xlsx", at=FRIDAY)
    assert "not said to be sent goods: 1 x NW-31207" in waits and (tmp_path / "w.xlsx").exists()
    back = ("send-back", order, "--line", "2", "--goods")
    assert refusal(tmp_path, *back, "--credited", "6.20", at=FRIDAY).startswith(
        "sourcing: line 2 of order PO-2026-0001: 1 can't be credited"
    )
    assert said(tmp_path, *back, "--paper", "R-1", at=FRIDAY) == (
        "PO-2026-0001 line 2, goods: 1 piece sent back.\n"
        "Still waits: line 2, goods: 1 piece of NW-31207 for credit.\n"
    )  # fmt: skip
    assert "his to act" in said(tmp_path, "going-back", at=FRIDAY)
    assert said(tmp_path, *back, "--credited", "6.20", "--paper", "CN-1", at=FRIDAY) == (
        "PO-2026-0001 line 2, goods: 1 piece credited, 6.20 USD given back.\n"
    )
    assert said(tmp_path, "going-back", at=FRIDAY) == "Nothing waits to go back, and no credit is awaited.\n"


def test_a_step_of_goods_going_back_is_taken_back(tmp_path: Path) -> None:
    """It says why, and goes with nothing else."""
    order = ordered(tmp_path)
    said(tmp_path, "receive", order, "--paper", "DN-1", "--freight", "14.95", "--damaged", "2=1")
    back = ("send-back", order, "--line", "2", "--goods")
    said(tmp_path, *back, "--paper", "R-1", at=FRIDAY)
    assert "no reason is given for taking a step back" in refusal(tmp_path, *back, "--take-back", at=FRIDAY)
    told = said(tmp_path, *back, "--take-back", "--words", "it lies here still", at=FRIDAY)
    assert told.splitlines() == [
        "PO-2026-0001 line 2, goods: 'sent back' of 2026-03-06, 1 piece, is taken back; it stays to be read.",
        "Still waits: line 2, goods: 1 piece of NW-31207 to be sent.",
    ]
    nothing = refusal(tmp_path, *back, "--take-back", "--words", "again", at=FRIDAY)
    assert nothing.startswith(
        "sourcing: nothing is taken down of the goods of line 2 of order PO-2026-0001 going back;"
    )
    code, _, errors = sourcing(tmp_path, *back, "--take-back", "--words", "x", "--credited", "1.00", at=FRIDAY)
    assert code == 2 and "--take-back goes with --words alone" in errors


def test_taken_in_wrongly_and_again(tmp_path: Path) -> None:
    order = ordered(tmp_path)
    paper = ("receive", order, "--paper", "DN-1", "--freight", "14.95")
    said(tmp_path, *paper, "--line", "1=10")
    assert "receive-again PO-2026-0001 --paper DN-1" in refusal(tmp_path, *paper, "--line", "1=1")
    told = said(tmp_path, "receive-again", order, "--paper", "DN-1", "--words", "10 typed for 1")
    assert told.startswith("Paper DN-1 of PO-2026-0001 is set aside and no longer counts.")
    kept = json.loads(said(tmp_path, *paper, "--line", "1=1", "--json"))
    assert (
        kept["open_lines"] == {"2": 2}
        and set(kept["freight_shares"]) == {"1"}
        and kept["receipt"]["lines"][0]["quantity"] == 1
    )


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--maker", "1=Corrivane"), "say --number for line 1 too"),
        (("--share-by", "size"), "--share-by"),
        (("--total", "ten"), "'ten' is not an amount of money"),
        (("--damaged", "2"), "'2'"),
    ],
)
def test_what_was_typed_wrongly(tmp_path: Path, words: tuple[str, ...], told: str) -> None:
    """Told, and nothing taken in."""
    order = ordered(tmp_path)
    code, output, errors = sourcing(tmp_path, "receive", order, "--paper", "D", "--freight", "0", *words, at=WEDNESDAY)
    assert code in (1, 2) and output == "" and told in errors and "Traceback" not in errors
    assert "still to come" in said(tmp_path, "orders") and "all came" not in said(tmp_path, "orders")


def test_two_steps_at_once_are_one_too_many(tmp_path: Path) -> None:
    order = ordered(tmp_path)
    words = ("send-back", order, "--line", "1", "--core", "--refused", "--lost")
    code, _, errors = sourcing(tmp_path, *words, at=WEDNESDAY)
    assert code == 2 and "one step at a time: refused or lost" in errors
