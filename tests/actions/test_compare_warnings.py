"""What a comparison says beside an offer that is ranked: a price far from the others' under the right number."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.basics.offer import PriceBreak
from sourcing.documents.comparison import comparison_text
from tests.actions.kept_sheets import keep
from tests.journeys.small_shop import shop
from tests.storage.kept_values import offer_row

MONDAY = datetime(2026, 3, 2, 9, 0)
SHEET_DAY = date(2026, 2, 27)
FAR = "look whether it is the same thing"


def sell(desk: Desk, supplier: str, price: str, **fields: object) -> None:
    """A sheet with the belt's number at a price."""
    breaks = (PriceBreak(from_quantity=1, price=Decimal(price)),)
    row: dict[str, object] = {"maker": "Norrowby", "breaks": breaks, "stock": 9, "description": "Belt"}
    keep(desk, supplier, SHEET_DAY, offer_row(4, "NW-77120", **(row | fields)))


def warned(desk: Desk) -> dict[str, str]:
    """By supplier what is said of a price."""
    ranked = compare(desk, "BELT", 1, None).ranked
    return {
        one.priced.offer.supplier: next((words for words in one.priced.warnings if FAR in words), "") for one in ranked
    }


def test_a_price_far_from_the_others_is_warned_of(tmp_path: Path) -> None:
    """0.35 among 20 and 21: less than a quarter of the middle, 20.50; the others' middle is 10.675 and 10.175."""
    desk = shop(tmp_path, MONDAY)
    for supplier, price in (("stonegarth", "0.35"), ("pellbrook", "20.00"), ("larkmoor", "21.00")):
        sell(desk, supplier, price)
    said = warned(desk)
    assert said["stonegarth"].startswith("a piece costs 0.35 USD, less than a quarter of what the other offers ask")
    assert "20.50 USD in the middle" in said["stonegarth"]
    assert said["pellbrook"] == said["larkmoor"] == ""


def test_four_times_is_not_far_and_a_pack_is_counted_by_the_piece(tmp_path: Path) -> None:
    """80 against 20 is four times and no more; 200 for ten is 20 a piece."""
    desk = shop(tmp_path, MONDAY)
    sell(desk, "stonegarth", "80.00")
    sell(desk, "pellbrook", "200.00", price_basis=10, pack=10)
    assert warned(desk) == {"stonegarth": "", "pellbrook": ""}
    sell(desk, "stonegarth", "80.04")
    assert all(warned(desk).values())


def test_an_offer_alone_is_compared_with_nothing(tmp_path: Path) -> None:
    """One price says nothing of itself."""
    desk = shop(tmp_path, MONDAY)
    sell(desk, "stonegarth", "0.35")
    assert warned(desk) == {"stonegarth": ""}


def test_another_article_is_shown_for_a_person_with_its_own_words(tmp_path: Path) -> None:
    """It is not ranked, and the page says what the row calls it."""
    desk = shop(tmp_path, MONDAY)
    sell(desk, "stonegarth", "0.35", description="Wheel nut M10")
    sell(desk, "pellbrook", "20.00", description="Keilriemen")
    found = compare(desk, "BELT", 1, None)
    assert [one.priced.offer.supplier for one in found.ranked] == ["pellbrook"]
    assert [one.vetoed for one in found.candidates] == [True]
    text = comparison_text(found)
    assert "NW-77120, Wheel nut M10" in text and "HELD BACK: by its words another article" in text
    assert "'Keilriemen', matched as" in text
