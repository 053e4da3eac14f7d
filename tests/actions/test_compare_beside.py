"""What a comparison says beside the offers: a near number that is another part's, and kits that hold the part."""

from datetime import date, datetime
from decimal import Decimal
from pathlib import Path

from sourcing.actions.compare import compare
from sourcing.actions.desk import Desk
from sourcing.basics.equivalence import Statement
from sourcing.basics.offer import PriceBreak
from sourcing.basics.part_number import OURS
from sourcing.basics.statement_history import Signed
from sourcing.basics.value import changed
from sourcing.storage.statements import state
from tests.actions.kept_sheets import keep
from tests.builders import number, statement
from tests.journeys.small_shop import shop
from tests.storage.kept_values import offer_row

MONDAY = datetime(2026, 3, 2, 9, 0)
SHEET_DAY = date(2026, 2, 27)


def sold(printed: str, words: str, price: str = "24.00", maker: str = "Norrowby", at: int = 4) -> dict[str, object]:
    """A row of a sheet."""
    breaks = (PriceBreak(from_quantity=1, price=Decimal(price)),)
    return offer_row(at, printed, maker=maker, breaks=breaks, stock=9, description=words)


def say(desk: Desk, *statements: Statement) -> None:
    """Put statements into the table."""
    with desk.writing("test") as pen:
        state(pen.connection, list(statements), Signed(at=MONDAY, who="Greta Lindqvare"), [""] * len(statements))


def held(count: int, kit: str = "NW-31299", what: str = "NW-31207") -> Statement:
    """A kit of Norrowby's holds so many of another number of his."""
    said = statement(number(kit, "Norrowby"), "kit contains", number(what, "Norrowby"), "maker")
    return changed(said, count=count)


def test_what_is_another_part_by_its_number_is_no_look_alike(tmp_path: Path) -> None:
    """NW-31206 stands one character from the keeper's NW-31207 and is the bar's."""
    desk = shop(tmp_path, MONDAY)
    keep(desk, "stonegarth", SHEET_DAY, sold("NW-31206", "Belt keeper"))
    assert [one.offer.supplier_number for one in compare(desk, "KEEPER", 1, None).candidates] == ["NW-31206"]
    say(desk, statement(number("BAR", OURS), "same part", number("NW-31206", "Norrowby"), "maker"))
    keep(desk, "stonegarth", date(2026, 2, 28), sold("NW-31206", "Bar"))
    assert compare(desk, "KEEPER", 1, None).candidates == ()
    assert [one.priced.offer.supplier_number for one in compare(desk, "BAR", 1, None).ranked] == ["NW-31206"]


def test_a_doubtful_row_of_another_parts_number_is_shown_held_back(tmp_path: Path) -> None:
    """It bears the bar's number and another maker's name: nobody knows what it is."""
    desk = shop(tmp_path, MONDAY)
    say(desk, statement(number("BAR", OURS), "same part", number("NW-31206", "Norrowby"), "maker"))
    keep(desk, "stonegarth", SHEET_DAY, sold("NW-31206", "Belt keeper", maker="Dunmarrow"))
    (one,) = compare(desk, "KEEPER", 1, None).candidates
    assert one.vetoed and one.reasons[-1] == "NW-31206 is a number of BAR"


def test_a_kit_is_told_with_its_sellers_and_the_price_of_one_piece(tmp_path: Path) -> None:
    """24.00 for ten is 2.40 for one; the kit stands in a note and is never ranked."""
    desk = shop(tmp_path, MONDAY)
    say(desk, held(10))
    keep(desk, "stonegarth", SHEET_DAY, sold("NW-31299", "Belt keepers, bag of 10"))
    found = compare(desk, "KEEPER", 10, None)
    (note,) = found.notes
    assert note.startswith("kit Norrowby NW-31299 holds 10 of it (")
    assert "Stonegarth Trade Parts NW-31299 at 24.00 USD, 2.40 USD for one piece of it. A kit is not ranked" in note
    assert found.ranked == ()


def test_a_kit_of_several_things_gives_no_price_for_one(tmp_path: Path) -> None:
    desk = shop(tmp_path, MONDAY)
    say(desk, held(2), held(1, what="NW-22203"))
    keep(desk, "stonegarth", SHEET_DAY, sold("NW-31299", "Belt kit"))
    (note,) = compare(desk, "KEEPER", 1, None).notes
    assert "holds 2 of it" in note and ", and other parts: " in note and "for one piece" not in note


def test_a_kit_nobody_sells_is_told_too(tmp_path: Path) -> None:
    """And counts are multiplied through kits in kits: 3 bags of 10."""
    desk = shop(tmp_path, MONDAY)
    say(desk, held(10), held(3, kit="NW-31300", what="NW-31299"))
    notes = compare(desk, "KEEPER", 1, None).notes
    assert [note.split(" (")[0] for note in notes] == [
        "kit Norrowby NW-31299 holds 10 of it",
        "kit Norrowby NW-31300 holds 30 of it",
    ]
    assert all(note.endswith("no newest sheet has it. A kit is not ranked") for note in notes)
