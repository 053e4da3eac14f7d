"""The command that compares: wishes as options, the drawing and the workbook as files, everything in the JSON."""

import json
from datetime import date, datetime
from decimal import Decimal
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest

from sourcing.basics.offer import PriceBreak
from tests.actions.kept_sheets import keep
from tests.cli.running import sourcing
from tests.journeys.small_shop import shop
from tests.storage.kept_values import offer_row

AT = "2026-03-02T09:00"
MONDAY = datetime(2026, 3, 2, 9, 0)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A shop with a belt from two dealers: 126.90 + 14.95 with 2 in stock, 124.90 + 9.95 with none stated."""
    made = tmp_path_factory.mktemp("compare")
    desk = shop(made, MONDAY)
    sold: dict[str, Any] = {"maker": "Norrowby", "description": "Auger drive belt"}
    for supplier, price, stock in (("stonegarth", "126.90", 2), ("pellbrook", "124.90", None)):
        breaks = (PriceBreak(from_quantity=1, price=Decimal(price)),)
        keep(desk, supplier, date(2026, 2, 27), offer_row(4, "NW-77120", breaks=breaks, stock=stock, **sold))
    return made


def compare(folder: Path, *words: str) -> tuple[int, str, str]:
    """The command at the shop's database."""
    database = next(folder.glob("*.db"))
    return sourcing(folder, "compare", "BELT", "--database", str(database), *words, at=AT)


def test_a_wish_moves_an_offer_to_what_is_not_ranked(folder: Path) -> None:
    code, text, _ = compare(folder, "--in-stock")
    assert code == 0 and "Ranked only: what is in stock for the quantity" in text
    ranked, apart = text.split("Not ranked")
    assert "1 Stonegarth" in ranked and "Pellbrook" not in ranked
    assert "not known to be in stock: the sheet states no stock; 134.85 USD at the door" in " ".join(apart.split())


def test_json_carries_wishes_turning_points_and_spans(folder: Path) -> None:
    code, text, _ = compare(folder, "--value-per-day", "1.50", "--need-by", "2026-03-06", "--json")
    found = json.loads(text)
    assert code == 0 and found["wishes"]["value_per_day"] == "1.50" and found["asked_on"] == "2026-03-02"
    assert [one["priced"]["offer"]["supplier"] for one in found["ranked"]] == ["stonegarth"]
    assert found["ranked"][0]["counted"]["amount"] and found["day_spans"]
    assert "waiting at 1.50 USD a day can't be counted" in found["open_offers"][0]["reason"]
    both = json.loads(compare(folder, "--json")[1])
    assert {(one["place"], one["figure"]) for one in both["turning_points"]} >= {(1, "freight"), (2, "price")}


def test_the_drawing_and_the_workbook_are_written(folder: Path) -> None:
    code, _, _ = compare(folder, "--scatter", "out.svg", "--xlsx", "out.xlsx")
    assert code == 0 and (folder / "out.xlsx").stat().st_size > 1000
    assert ElementTree.parse(folder / "out.svg").getroot().tag.endswith("svg")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--only-in-time",), "only offers that are here in time are asked for, and no day"),
        (("--value-per-day", "-1"), "the price of a day of waiting is given as -1"),
        (("--value-per-day", "soon"), "'soon' is not an amount"),
        (("--trusted", "--in-stock", "--quantity", "900", "--scatter", "none.svg"), "there is nothing to draw"),
    ],
)
def test_what_means_nothing_is_refused_in_a_sentence(folder: Path, words: tuple[str, ...], said: str) -> None:
    code, _, errors = compare(folder, *words)
    assert code == 1 and errors.count("\n") == 1 and said in errors
    assert not (folder / "none.svg").exists()
