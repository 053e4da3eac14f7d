"""A delivery under another number, against the table: the same part, another part, or one not to be fitted."""

from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest

from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.receipt_told import receipt_told
from sourcing.actions.receive import Delivery, Received, receive, receive_again
from sourcing.actions.statement_add import Told, add_statement
from sourcing.basics.order import Came, LineEvent
from sourcing.basics.part_number import PartNumber
from tests.actions.landed_shop import ordered
from tests.journeys.small_shop import desk_at, sheet

WEDNESDAY = datetime(2026, 3, 4, 9, 30)


def belt_came(folder: Path, number: str, printed: str = "", maker: str = "", **more: object) -> Received:
    """The belt of the order came, under that number where one is said."""
    numbers = {1: PartNumber(printed=printed, maker=maker)} if printed else {}
    delivery = Delivery(paper="D1", freight=Decimal("14.95"), quantities={1: 1}, numbers=numbers, **more)  # type: ignore[arg-type]
    return receive(desk_at(folder, WEDNESDAY), number, delivery)


@pytest.mark.parametrize(
    ("printed", "maker", "came", "why"),
    [
        ("NW-77120", "", "as ordered", ""),
        ("nw 77120", "", "as ordered", ""),
        ("CV-B880K", "", "same part", "BELT is the same part as Corrivane CV-B880K (fitted: a list)"),
        ("CV-B880K", "Corrivane", "same part", "is the same part as Corrivane CV-B880K"),
        (
            "NW-77120",
            "Dunmarrow",
            "another part",
            "that of Norrowby NW-77120, but the row names Dunmarrow",
        ),
        ("DM-15880", "Dunmarrow", "another part", "the weakest statement is only 'supplier'"),
        ("NW-31207", "", "another part", "NW-31207 is a number of KEEPER, not of BELT"),
        ("XX-1", "", "another part", "no statement ties XX-1 to BELT"),
    ],
)
def test_what_the_table_says_of_the_number(tmp_path: Path, printed: str, maker: str, came: Came, why: str) -> None:
    """Only what the table ties to the part by a good path counts as received."""
    done = belt_came(tmp_path, ordered(tmp_path), printed, maker)
    (line,) = done.receipt.lines
    assert line.came == came and why in line.why, line.why
    counts = came in ("as ordered", "same part")
    assert (1 not in done.open_lines) == counts
    assert bool(done.to_do) == (came != "as ordered")


def test_a_number_that_was_replaced_is_told_with_the_statement(tmp_path: Path) -> None:
    """It is the older number: the table leads from it to the belt, and not from the belt to it."""
    number = ordered(tmp_path)
    told = Told(
        left="Norrowby:NW-77119", right="Norrowby:NW-77120", relation="superseded by", standing="maker", source="a list"
    )
    add_statement(desk_at(tmp_path, WEDNESDAY), told)
    done = belt_came(tmp_path, number, "NW-77119")
    (line,) = done.receipt.lines
    assert line.came == "another part"
    assert "Norrowby NW-77119 is superseded by Norrowby NW-77120" in line.why, line.why
    assert "so NW-77119 does not count as BELT" in line.why and "no statement" not in line.why


def test_a_number_tied_after_it_came_says_what_helps(tmp_path: Path) -> None:
    """A paper is judged when it is taken in: set aside and taken in again, the part counts."""
    number = ordered(tmp_path)
    belt_came(tmp_path, number, "XX-B4190K")
    desk = desk_at(tmp_path, WEDNESDAY)
    (before,) = receipt_told(desk, number, "D1").goods
    assert "until the table of equivalent numbers ties the two and its paper is taken in after that" in before
    told = Told(left="ours:BELT", right="Corrivane:XX-B4190K", relation="same part", standing="maker", source="a list")
    add_statement(desk, told)
    first, after = receipt_told(desk, number, "D1").goods
    path = "XX-B4190K: BELT is the same part as Corrivane XX-B4190K (maker: a list)"
    helps = "set paper D1 aside and take it in again, and XX-B4190K counts as NW-77120"
    assert (first, after) == (before, f"line 1: the table ties the two by now ({path}): {helps}")
    receive_again(desk, number, "D1", "the table ties it by now")
    again = belt_came(tmp_path, number, "XX-B4190K")
    assert again.receipt.lines[0].came == "same part" and 1 not in again.open_lines
    assert "set paper" not in " ".join(receipt_told(desk, number, "D1").goods)


def test_the_same_part_says_whose_yes_it_was_not(tmp_path: Path) -> None:
    done = belt_came(tmp_path, ordered(tmp_path), "CV-B880K")
    (told,) = done.to_do
    yes_was = "line 1: the customer's yes was for NW-77120, CV-B880K came"
    assert told == f"{yes_was}: see 'sourcing alarms 2026-0001' before it is fitted"


def test_the_suppliers_own_sheet_says_what_the_number_is(tmp_path: Path) -> None:
    """By the table it would serve; by his row of it, it is a belt of another section."""
    number = ordered(tmp_path)
    rows = ["NW-77120,Norrowby,Belt B88,189.50,126.90,2,", "CV-B880K,Corrivane,Belt 4L880,99.00,70.00,2,"]
    sheet(desk_at(tmp_path, WEDNESDAY), tmp_path, "stonegarth", "2026-03-03", rows)
    done = belt_came(tmp_path, number, "CV-B880K")
    assert done.receipt.lines[0].came == "not wanted" and "section" in done.receipt.lines[0].why
    assert done.to_do == ("line 1: do not fit CV-B880K; it goes back",)


def test_a_must_not_stated_since_the_order_holds_the_number_ordered_too(tmp_path: Path) -> None:
    """Somebody tried it on another machine last night: it does not go to the bench because the order is older."""
    number = ordered(tmp_path)
    told = Told(
        left="ours:BELT", relation="must not", right="Norrowby:NW-77120", source="tried, slips", standing="fitted"
    )
    add_statement(desk_at(tmp_path, WEDNESDAY), told)
    done = belt_came(tmp_path, number)
    (line,) = done.receipt.lines
    assert (line.came, line.number) == ("not wanted", "NW-77120") and "must not serve" in line.why
    assert done.open_lines[1] == 1


def test_a_number_the_supplier_confirmed_is_looked_at_without_typing_it(tmp_path: Path) -> None:
    """He said he sends another one; that nobody typed it at the door does not make it the one ordered."""
    number = ordered(tmp_path)
    said = Confirmation(said_by="Stonegarth", lines=(LineEvent(line=1, number="XX-1"),))
    confirm(desk_at(tmp_path, WEDNESDAY), number, said)
    assert belt_came(tmp_path, number).receipt.lines[0].came == "another part"


def test_some_of_a_line_under_another_number(tmp_path: Path) -> None:
    """Two keepers came, one of them is something else: one counts, one waits to go back."""
    number = ordered(tmp_path)
    delivery = Delivery(
        paper="D1",
        freight=Decimal("14.95"),
        quantities={2: 2},
        numbers={2: PartNumber(printed="XX-1")},
        under_number={2: 1},
    )
    done = receive(desk_at(tmp_path, WEDNESDAY), number, delivery)
    assert done.open_lines == {1: 1, 2: 1}
    assert (done.receipt.lines[0].good, done.receipt.lines[0].wrong) == (1, 1)
