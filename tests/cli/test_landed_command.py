"""`sourcing landed`: an offer, a placed order or a whole sheet at the door, as text, JSON and CSV."""

import csv
import io
import json
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner, Result

from sourcing.basics.offer import PriceBreak
from sourcing.basics.problem import Refused
from sourcing.cli.main import app
from tests.actions.kept_sheets import keep
from tests.actions.landed_shop import new_terms, ordered
from tests.journeys.small_shop import desk_at, shop
from tests.storage.kept_values import offer_row

MONDAY = datetime(2026, 3, 2, 9, 0)


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """A shop with one sheet of three rows."""
    desk = shop(tmp_path, MONDAY)
    rows = [
        _row(4, "NW-77120", "126.90", description="Auger belt, =B88", core_charge=Decimal(15)),
        _row(5, "NW-31207", "0.85", pack=10),
        _row(6, "NW-3", None),
    ]
    keep(desk, "stonegarth", date(2026, 2, 27), *rows)
    return tmp_path


def _row(row: int, number: str, price: str | None, **more: object) -> dict[str, object]:
    breaks = (PriceBreak(from_quantity=1, price=Decimal(price)),) if price else ()
    return offer_row(row, number, **({"maker": "Norrowby", "breaks": breaks, "stock": 50} | more))


def run(folder: Path, *words: str) -> Result:
    """The command in that shop at Monday nine o'clock."""
    told = ["landed", "--database", str(folder / "sourcing.db"), "--at", "2026-03-02T09:00", *words]
    return CliRunner().invoke(app, told)


def text(folder: Path, *words: str) -> str:
    """What it prints, every run of blanks as one."""
    found = run(folder, *words)
    assert found.exit_code == 0, found.output
    assert max(len(line) for line in found.stdout.splitlines()) <= 100
    return " ".join(found.stdout.split())


def test_an_offer_in_words(folder: Path) -> None:
    """Named lines, total, core apart, day with its steps, and one more."""
    told = text(folder, "stonegarth", "NW-77120")
    assert "Goods NW-77120 126.90 USD 1 x 126.90 USD" in told
    assert "Total 141.85 USD" in told
    assert "Core charge beside it: 15.00 USD; cash out 156.85 USD" in told
    assert "old part lost: 15.00 USD is lost" in told
    assert "whether it can go back is not known: ask before ordering" in told
    assert "Here: 2026-03-04" in told and "before the 14:00 cut-off" in told
    assert "1 piece more, 2 in all: +111.95 USD" in told
    assert "No larger order, up to 2 pieces, costs less or the same." in told


def test_a_quantity_in_packs(folder: Path) -> None:
    """Twelve needed are twenty, eight for the shelf."""
    told = text(folder, "stonegarth", "NW-31207", "--quantity", "12")
    assert "12 pieces needed, 20 ordered alone" in told
    assert "8 pieces more than needed, for the shelf at 6.80 USD" in told
    assert "10 pieces more, 30 in all: +8.50 USD, 0.85 USD for each of them" in told


def test_an_offer_without_a_price_says_so(folder: Path) -> None:
    """No zero anywhere."""
    told = text(folder, "stonegarth", "NW-3")
    assert "CAN'T BE ORDERED OR RANKED AS IT STANDS: the sheet gives no net price" in told
    assert "No landed cost." in told and "0.00" not in told


def test_json_and_csv_hold_the_lines(folder: Path) -> None:
    """Decimals as text in JSON; in the CSV one line for each part of the cost."""
    found = run(folder, "stonegarth", "NW-77120", "--json", "--csv", str(folder / "out.csv"))
    (one,) = json.loads(found.stdout)
    assert one["landed"]["total"] == {"amount": "141.85", "currency": "USD"}
    assert [line["kind"] for line in one["landed"]["lines"]] == ["goods", "freight"]
    assert one["one_more"]["difference"]["amount"] == "111.95"
    rows = _csv(folder / "out.csv")
    assert [(row["name"], row["amount"]) for row in rows] == [("Goods NW-77120", "126.90"), ("Freight", "14.95")]
    assert sum(Decimal(row["amount"]) for row in rows) == Decimal("141.85")


def test_a_whole_sheet(folder: Path) -> None:
    """A head for people, every row in the CSV: blank where there is no cost, and harmless in a spreadsheet."""
    told = text(folder, "stonegarth", "--csv", str(folder / "out.csv"))
    assert "3 offers 2 at the door" in told and "Not priced: 1: the sheet gives no net price" in told
    rows = _csv(folder / "out.csv")
    assert [(row["number"], row["landed"], row["why not"]) for row in rows] == [
        ("NW-77120", "141.85", ""),
        ("NW-31207", "23.45", ""),
        ("NW-3", "", "the sheet gives no net price"),
    ]
    assert len(json.loads(run(folder, "stonegarth", "--json").stdout)["rows"]) == 3


@pytest.mark.parametrize(
    "words", [(), ("stonegarth", "--order", "PO-2026-0001"), ("stonegarth", "--quantity", "2"), ("--quantity", "2")]
)
def test_usage_is_told(folder: Path, words: tuple[str, ...]) -> None:
    """Exit code 2, nothing worked out."""
    assert run(folder, *words).exit_code == 2


@pytest.mark.parametrize(
    ("words", "code"),
    [
        (("stonegarth", "NW-77121"), "number-not-on-sheet"),
        (("stonegarth", "NW-77120", "--quantity", "0"), "quantity-below-one"),
        (("nobody",), "no-sheet-of-supplier"),
        (("--order", "PO-2026-0001"), "no-such-order"),
    ],
)
def test_what_is_not_there_is_refused(folder: Path, words: tuple[str, ...], code: str) -> None:
    """In one sentence each."""
    found = run(folder, *words)
    assert isinstance(found.exception, Refused) and found.exception.problems[0].code == code


def test_a_placed_order_beside_what_it_would_cost_now(tmp_path: Path) -> None:
    """Every part kept, now and the difference; the total below; the same in the CSV."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    new_terms(later, tmp_path, ("14.95", "19.50"))
    told = text(tmp_path, "--order", number, "--at", "2026-04-06T09:00", "--csv", str(tmp_path / "out.csv"))
    assert "by the terms that hold since 2026-04-01" in told
    assert "Freight 14.95 USD 19.50 USD +4.55 USD" in told
    assert "Total 154.25 USD 158.80 USD +4.55 USD" in told
    assert "Ordered now it would be here 2026-04-08." in told
    assert [row["difference"] for row in _csv(tmp_path / "out.csv")] == ["0.00", "0.00", "4.55", "4.55"]
    keep(later, "stonegarth", date(2026, 4, 6), _row(4, "NW-1", "1.00"))
    gone = text(tmp_path, "--order", number, "--at", "2026-04-06T09:00")
    assert "Not known: line 1, NW-77120: not on the newest sheet" in gone
    assert "Total 154.25 USD" in gone and "+" not in gone


def test_an_order_whose_freight_is_not_known_now_has_no_total(tmp_path: Path) -> None:
    """Kept stands, now is blank, and why."""
    number = ordered(tmp_path)
    later = desk_at(tmp_path, datetime(2026, 4, 6, 9, 0))
    new_terms(later, tmp_path, ('freight = { rule = "flat", charge = 14.95, free_from = 150.00 }', ""))
    told = text(tmp_path, "--order", number, "--at", "2026-04-06T09:00", "--csv", str(tmp_path / "out.csv"))
    assert "Freight 14.95 USD Total 154.25 USD How" in told
    assert "Not known: freight of Stonegarth Trade Parts is not known" in told
    assert [(row["kept"], row["now"]) for row in _csv(tmp_path / "out.csv")][2:] == [("14.95", ""), ("154.25", "")]


def test_freight_said_only_when_asked_is_a_range(folder: Path) -> None:
    """What is known, and from what to what it may come; never a total."""
    desk = desk_at(folder, MONDAY)
    asked = 'freight = { rule = "asked", between = [8, 30] }'
    flat = 'freight = { rule = "flat", charge = 14.95, free_from = 150.00 }'
    new_terms(desk, folder, (flat, asked), starts="2026-02-01")
    told = text(folder, "stonegarth", "NW-77120")
    assert "Known so far 126.90 USD" in told and "Total" not in told
    assert "With what is not known: 134.90 USD to 156.90 USD" in told
    assert "said only when asked" in told


def _csv(path: Path) -> list[dict[str, Any]]:
    return list(csv.DictReader(io.StringIO(path.read_text(encoding="utf-8"))))
