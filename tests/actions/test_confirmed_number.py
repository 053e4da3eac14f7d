"""Another number confirmed: what the customer's yes is for, as on her paper, and how our table ties the two."""

from pathlib import Path

import pytest

from sourcing.actions.order_changes import Confirmation, confirm
from sourcing.actions.order_full import order_full
from sourcing.actions.orders import place_orders
from sourcing.basics.equivalence import Statement
from sourcing.basics.order import LineEvent
from sourcing.basics.statement_history import Signed
from sourcing.storage.statements import state
from tests.actions.order_shop import MONDAY, approved, orders_shop
from tests.builders import number, statement

ORDER = "PO-2026-0001"
PAPER = number("NW-77120", "Norrowby")
OLD = number("NW-77119", "Norrowby")


def told(folder: Path, confirmed: str, *more: Statement) -> str:
    """What the order's page says after that number was confirmed for the belt, without what was ordered."""
    desk = orders_shop(folder)
    place_orders(desk, [approved(desk, folder, ("BELT", 1), ("KEEPER", 2))])
    with desk.writing("statement") as pen:
        state(pen.connection, more, Signed(at=MONDAY, who="Oona"), ["list"] * len(more))
    done = confirm(desk, ORDER, Confirmation(lines=(LineEvent(line=1, number=confirmed),)))
    assert done.differs == order_full(desk, ORDER).otherwise
    (words,) = done.differs
    head = f"{ORDER} line 1, NW-77120: {confirmed} is confirmed instead of NW-77120; the customer's yes is for Norrowby"
    assert words.startswith(f"{head} NW-77120; ")
    return words.removeprefix(f"{head} NW-77120; ")


@pytest.mark.parametrize(
    ("confirmed", "more", "words"),
    [
        ("NW-77119", (statement(OLD, "superseded by", PAPER, "maker"),), "is an older number, replaced by Norrowby"),
        (
            "NW-77119",
            (statement(PAPER, "superseded by", OLD, "maker"),),
            "came after it (Norrowby NW-77120 is",
        ),
        (
            "NW-77119",
            (statement(PAPER, "must not", OLD, "maker"),),
            "our table Norrowby NW-77119 must not serve",
        ),
        (
            "CV-B880K",
            (),
            "by our table CV-B880K is the same part (BELT is the same part as Norrowby",
        ),
        ("NW-77119", (), "no statement of our table ties NW-77119 to it"),
    ],
)
def test_the_number_on_her_paper_is_named_with_the_way_by_our_table(
    tmp_path: Path, confirmed: str, more: tuple[Statement, ...], words: str
) -> None:
    """The old number replaced by the one approved, the newer one, one that must not serve, the same part, and none."""
    assert words in told(tmp_path, confirmed, *more)
