"""What was not approved can't be ordered, received or billed: every answer that is no yes, through every face.

The belt was approved, ordered and has come. Two keepers (A) and their freight (B) were found at tear-down, and for each
case something stands in the way of them. Tried by the command, by the action, by the storage's own function and by a
statement written to the database; afterwards every row is what it was.
"""

from collections.abc import Callable, Iterator, Sequence
from decimal import Decimal
from pathlib import Path
from shutil import copytree

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from sourcing.actions.answers import record
from sourcing.actions.bill import look_at_bill, write_bill
from sourcing.actions.order_changes import change_order
from sourcing.actions.orders import look_at_orders, place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.bill import LeftOut
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.bill_paper import bill_html
from sourcing.storage.after_quote import add_bill
from sourcing.storage.orders import add_order, add_receipt, order, receipts
from tests.actions.answered_shop import said
from tests.journeys.cutting import Host
from tests.journeys.small_shop import desk_at
from tests.journeys.test_power_cut import Kept, kept
from tests.journeys.unapproved_shop import (
    BELT_ORDER,
    BILL,
    BILL_LINE,
    CASES,
    CLAIMS,
    HELD_BY_DATABASE,
    JOB,
    LATER,
    ORDER_LINE,
    RECEIPT_LINE,
    World,
    answers_at_hand,
    forged,
)  # fmt: skip


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory) -> Iterator[World]:
    """Cases are made once: none of what is tried on them changes a row."""
    scratch = tmp_path_factory.mktemp("cases")
    host = Host(scratch)
    yield World(host, scratch)
    host.close()


@pytest.fixture
def unchanged(world: World, tmp_path: Path) -> Iterator[Callable[[str], Path]]:
    """The folder of a case; at the end of the test every row of it is looked at."""
    before: list[tuple[Path, Kept]] = []

    def of(name: str) -> Path:
        folder = world.case(name)
        before.append((folder, kept(folder)))
        return folder

    yield of
    for folder, rows in before:
        assert kept(folder) == rows


def refusal(do: Callable[..., object], *told: object) -> tuple[str, str]:
    """Code and sentence of what is refused."""
    with pytest.raises(Refused) as caught:
        do(*told)
    first = caught.value.problems[0]
    return first.code, first.what


@pytest.mark.parametrize("name", CASES)
def test_it_is_not_ordered(world: World, unchanged: Callable[[str], Path], name: str) -> None:
    """Named or not, by command and by action, looked at or placed."""
    folder = unchanged(name)
    desk = desk_at(folder, LATER)
    word = "declined" if name in ("declined", "replaced") else "waiting"
    doors: Sequence[Callable[..., object]] = (place_orders, look_at_orders)
    for door in doors:
        assert refusal(door, desk, [JOB], ["A"]) == (
            "line-declined" if word == "declined" else "not-approved",
            f"line A of job {JOB} is {word}, so it can't be ordered",
        )
        assert f"all that is approved of {JOB} is ordered" in refusal(door, desk, [JOB])[1]
    for words in (f"order {JOB} --line A", f"order {JOB}", f"order {JOB} --look --line A"):
        code, told = world.command(folder, words)
        assert (code, "all that is approved of" in told or f"line A of job {JOB} is {word}" in told) == (1, True), told
    assert not list(folder.glob("PO-*"))


@pytest.mark.parametrize("name", HELD_BY_DATABASE)
def test_no_order_is_kept_past_the_actions(unchanged: Callable[[str], Path], name: str) -> None:
    """The storage's own function told a lie, and SQL with every claim about every answer there is."""
    desk = desk_at(unchanged(name), LATER)
    with desk.store.reading() as connection:
        pointed, placed = answers_at_hand(connection), order(connection, BELT_ORDER)
    lie = changed(placed, number="PO-2026-0099", lines=(changed(placed.lines[0], label="A", revision=2),))
    for what, at in pointed.items():
        with pytest.raises((Refused, IntegrityError)), desk.store.writing() as connection:
            add_order(connection, lie, {} if at is None else {1: at})
        for answer, holds in CLAIMS:
            row = {"order": BELT_ORDER, "job": JOB, "approval": at, "answer": answer, "holds": holds}
            with pytest.raises(IntegrityError), desk.store.writing() as connection:
                connection.execute(text(ORDER_LINE), row)
                pytest.fail(f"{name}: ordered on {what} as {answer}, {holds}")


@pytest.mark.parametrize("name", CASES)
def test_it_is_not_received(world: World, unchanged: Callable[[str], Path], name: str) -> None:
    """No order has it, or the line was cancelled: nothing can be received against it, through any face."""
    folder = unchanged(name)
    desk = desk_at(folder, LATER)
    bought, line = ("PO-2026-0002", 1) if name == "let_go" else (BELT_ORDER, 2)
    delivery = Delivery(paper="D9", freight=Decimal(0), quantities={line: 2})
    assert refusal(receive, desk, bought, delivery)[0] in (
        "no-such-order-line",
        "line-was-cancelled",
    )
    code, told = world.command(folder, f"receive {bought} --paper D9 --freight 0 --line {line}=2")
    assert code == 1, told
    with desk.store.reading() as connection:
        (first,) = receipts(connection, BELT_ORDER)
    lie = changed(first, order=bought, paper="D9", lines=(changed(first.lines[0], line=line, quantity=2),))
    with pytest.raises((Refused, IntegrityError)), desk.store.writing() as connection:
        add_receipt(connection, lie)
    for claim in ("no", "yes"):
        with pytest.raises(IntegrityError), desk.store.writing() as connection:
            connection.execute(text(RECEIPT_LINE), {"order": bought, "line": line, "no": claim})


@pytest.mark.parametrize("name", CASES)
def test_it_is_not_billed(world: World, unchanged: Callable[[str], Path], name: str) -> None:
    """What waits stops the bill, by whatever face, until it is left out as not done; what is declined is no line."""
    folder = unchanged(name)
    desk = desk_at(folder, LATER)
    if name in ("declined", "replaced"):
        assert [line.label for line in look_at_bill(desk, JOB).lines] == ["1", "2"]
        code, told = world.command(folder, f"bill {JOB} --look --json")
        assert code == 0 and '"label":"A"' in told  # among the declined
        assert refusal(look_at_bill, desk, JOB, LeftOut(labels=("A",), words="no"))[0] == "not-done-unknown"
        return
    wanted = ("not-approved-for-bill", f"line A of job {JOB} is waiting, so it can't be billed")
    assert refusal(look_at_bill, desk, JOB) == refusal(write_bill, desk, JOB, bill_html) == wanted
    left = look_at_bill(desk, JOB, LeftOut(labels=("A", "B"), words="not answered"))
    assert [line.label for line in left.lines] == ["1", "2"]
    assert (left.not_done[0].label, left.not_done[0].answered) == ("A", False)
    for words in (f"bill {JOB}", f"bill {JOB} --look"):
        code, told = world.command(folder, words)
        assert (code, wanted[1] in told) == (1, True), told
    assert not list(folder.glob("B-*"))


@pytest.mark.parametrize("name", HELD_BY_DATABASE)
def test_no_bill_is_kept_past_the_actions(unchanged: Callable[[str], Path], name: str) -> None:
    """The storage's own function told a lie, and SQL with every claim about every answer there is."""
    desk = desk_at(unchanged(name), LATER)
    with desk.store.reading() as connection:
        pointed, lie = answers_at_hand(connection), forged(connection)
    for what, at in pointed.items():
        with pytest.raises((Refused, IntegrityError)), desk.store.writing() as connection:
            add_bill(connection, lie, {} if at is None else {"A": at})
        for answer, holds in CLAIMS:
            row = {"job": JOB, "approval": at, "answer": answer, "holds": holds}
            with pytest.raises(IntegrityError), desk.store.writing() as connection:
                connection.execute(text(BILL), row)
                connection.execute(text(BILL_LINE), row)
                pytest.fail(f"{name}: billed on {what} as {answer}, {holds}")


def test_no_more_pieces_are_ordered_than_were_approved(world: World, unchanged: Callable[[str], Path]) -> None:
    """An order is changed upwards only as far as the yes goes: one belt was approved."""
    folder = unchanged("waiting")
    refusal(change_order, desk_at(folder, LATER), BELT_ORDER, {1: 2})
    code, told = world.command(folder, f"change-order {BELT_ORDER} --line 1=2")
    assert code == 1, told


def test_with_her_yes_the_same_goes_through(world: World, tmp_path: Path) -> None:
    """Each refusal above is for want of the yes alone: once it is there, it is ordered, received and billed."""
    folder = copytree(world.case("waiting"), tmp_path / "yes")
    desk = desk_at(folder, LATER)
    yes = record(desk, JOB, said("A", "B")).approval_of["A"]
    with desk.store.reading() as connection:
        bought, lie = order(connection, BELT_ORDER), forged(connection)
    line = {"order": BELT_ORDER, "job": JOB, "approval": yes, "answer": "approved", "holds": "yes"}
    for tried in (
        [(ORDER_LINE, line), (RECEIPT_LINE, {"order": BELT_ORDER, "line": 9, "no": "no"})],
        [(BILL, line), (BILL_LINE, line)],
    ):
        with pytest.raises(NotKept), desk.store.writing() as connection:
            for statement, row in tried:
                connection.execute(text(statement), row)
            raise NotKept
    with pytest.raises(NotKept), desk.store.writing() as connection:
        mine = changed(bought.lines[0], label="A", revision=2)
        add_order(connection, changed(bought, number="PO-2026-0099", lines=(mine,)), {1: yes})
        add_bill(connection, lie, {"A": yes})
        raise NotKept
    (placed,) = place_orders(desk, [JOB], ["A"]).orders
    receive(desk, placed.number, Delivery(paper="D9", freight=Decimal("14.95")))
    assert [line.label for line in write_bill(desk, JOB, bill_html).bill.lines] == ["1", "2", "A", "B"]


class NotKept(Exception):
    """Ends a transaction in which all went well, so that none of it is kept."""
