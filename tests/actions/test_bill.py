"""From the first yes to the bill, through the actions: what may be billed, what may not, and what is kept."""

import threading
from datetime import datetime
from decimal import Decimal
from pathlib import Path

import pytest
from sqlalchemy import text

from sourcing.actions.answers import TakenBack, record, withdraw
from sourcing.actions.bill import bill_if_any, look_at_bill, write_bill
from sourcing.actions.decide import Agreed, decide
from sourcing.actions.deposits import take_deposit
from sourcing.actions.history import history
from sourcing.actions.orders import place_orders
from sourcing.actions.receive import Delivery, receive
from sourcing.basics.bill import Bill, FrozenBill, LeftOut
from sourcing.basics.order import GoodsBack
from sourcing.basics.part_number import PartNumber
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.documents.bill_paper import bill_html
from sourcing.documents.quote_paper import quote_html
from sourcing.storage.after_order import add_goods_back
from tests.actions.billed_shop import BILLING, ORDERING, agreed, answered, billing, ordered, received, waiting
from tests.builders import usd
from tests.journeys.small_shop import SHOP, desk_at, shop, take_in
from tests.journeys.test_worked_days import MONDAY, yes


def codes(caught: pytest.ExceptionInfo[Refused]) -> list[tuple[str, str]]:
    """Code and sentence of each refusal."""
    return [(one.code, one.what) for one in caught.value.problems]


def refused_bill(folder: Path, number: str, left_out: LeftOut | None = None) -> list[tuple[str, str]]:
    """What stands in the way; a look and the writing say the same, and nothing is kept."""
    with pytest.raises(Refused) as looked:
        look_at_bill(billing(folder), number, left_out)
    with pytest.raises(Refused) as written:
        write_bill(billing(folder), number, bill_html, left_out)
    assert codes(looked) == codes(written)
    assert bill_if_any(billing(folder), number) is None
    return codes(written)


def test_the_worked_job_is_billed_to_the_cent(tmp_path: Path) -> None:
    """413.19 with tax 13.84; C is not on it and stays as declined, with the price it was offered at."""
    number = received(tmp_path)
    frozen = write_bill(billing(tmp_path), number, bill_html)
    bill = frozen.bill
    assert (bill.number, bill.total.total, bill.total.taxes[0].amount) == ("B-2026-0001", usd("413.19"), usd("13.84"))
    assert [line.label for line in bill.lines] == ["1", "2", "A", "B", "D"]
    assert [(one.label, one.offered, one.offered_with_tax) for one in bill.declined] == [
        ("C", usd("147.20"), usd("156.54"))
    ]
    assert [(one.label, one.revision, one.taken_by) for one in bill.approvals][0::2] == [
        ("1", 1, "Oona Brandeth"), ("A", 2, "Piet Halloway-Rusk"), ("D", 2, "Piet Halloway-Rusk"),
    ]  # fmt: skip
    assert (bill.made_at, bill.made_by, bill.due) == (BILLING, "Oona Brandeth", usd("413.19"))


def test_a_look_keeps_nothing_and_shows_the_same(tmp_path: Path) -> None:
    """Then the bill is written as it was seen."""
    number = received(tmp_path)
    seen = look_at_bill(billing(tmp_path), number)
    assert bill_if_any(billing(tmp_path), number) is None
    assert write_bill(billing(tmp_path), number, bill_html).bill == seen


def test_the_bill_prints_again_to_the_letter_whatever_changed_since(tmp_path: Path) -> None:
    """Settings, template and program may change: the paper is the one that was given out."""
    number = received(tmp_path)
    frozen = write_bill(billing(tmp_path), number, bill_html)
    (tmp_path / "shop.toml").write_text(SHOP.replace("percent = 7", "percent = 9").replace("96.00", "120.00"))
    later = desk_at(tmp_path, datetime(2027, 1, 4, 9, 0))
    assert bill_if_any(later, number) == frozen
    assert bill_html(frozen.bill) == frozen.paper


def test_a_job_is_billed_once(tmp_path: Path) -> None:
    """The second is refused, a look as well, and the numbers of the year run on without a gap."""
    number = received(tmp_path)
    write_bill(billing(tmp_path), number, bill_html)
    for again in (
        lambda: write_bill(billing(tmp_path), number, bill_html),
        lambda: look_at_bill(billing(tmp_path), number),
    ):
        with pytest.raises(Refused) as caught:
            again()
        assert codes(caught) == [("billed-already", f"job {number} is billed already")]


def test_two_people_bill_at_once(tmp_path: Path) -> None:
    """One bill, one refusal."""
    number = received(tmp_path)
    done: list[FrozenBill] = []
    told: list[Refused] = []
    start = threading.Barrier(2)

    def bill() -> None:
        desk = billing(tmp_path)
        start.wait()
        try:
            done.append(write_bill(desk, number, bill_html))
        except Refused as refusal:
            told.append(refusal)

    both = [threading.Thread(target=bill) for _ in range(2)]
    for one in both:
        one.start()
    for one in both:
        one.join()
    assert len(done) == 1 and [one.problems[0].code for one in told] == ["billed-already"]


def test_a_line_that_waits_stops_the_bill(tmp_path: Path) -> None:
    """The three found things were never answered: silence is no yes and no no."""
    number = waiting(tmp_path)
    receive(billing(tmp_path), "PO-2026-0001", Delivery(paper="D1", freight=Decimal("9.95")))
    assert [words for _, words in refused_bill(tmp_path, number)] == [
        f"line {label} of job {number} is waiting, so it can't be billed" for label in "ABCD"
    ]


def test_an_answer_taken_back_stops_the_bill(tmp_path: Path) -> None:
    """Before the order the yes to B is taken back: B waits, and nothing of it can be billed."""
    number = answered(tmp_path)
    withdraw(desk_at(tmp_path, ORDERING), number, TakenBack(labels=("B",), who="Maud Tilbrook", how="telephone"))
    place_orders(desk_at(tmp_path, ORDERING), [number])
    for order in ("PO-2026-0001", "PO-2026-0002"):
        receive(billing(tmp_path), order, Delivery(paper="D1", freight=Decimal(0)))
    assert refused_bill(tmp_path, number) == [
        ("not-approved-for-bill", f"line B of job {number} is waiting, so it can't be billed")
    ]


def test_goods_that_were_never_ordered_are_not_billed(tmp_path: Path) -> None:
    """Line by line: never ordered, nothing yet, one of two."""
    number = agreed(tmp_path)
    assert refused_bill(tmp_path, number) == [
        ("not-received-for-bill", f"line 1 of job {number} can't be billed: its part was never ordered")
    ]


def test_goods_that_came_in_part_are_told(tmp_path: Path) -> None:
    """Nothing yet, one of two, never ordered."""
    number = answered(tmp_path)
    assert [words.split("billed: ")[1] for _, words in refused_bill(tmp_path, number)] == [
        "nothing good has come on PO-2026-0001", "its part was never ordered", "its part was never ordered",
    ]  # fmt: skip
    place_orders(desk_at(tmp_path, ORDERING), [number])
    receive(billing(tmp_path), "PO-2026-0002", Delivery(paper="D1", freight=Decimal(0), quantities={1: 1}))
    assert [words.split("billed: ")[1] for _, words in refused_bill(tmp_path, number)] == [
        "nothing good has come on PO-2026-0001", "1 of 2 pieces have come on PO-2026-0002",
        "nothing good has come on PO-2026-0002",
    ]  # fmt: skip


def test_a_damaged_piece_is_not_billed(tmp_path: Path) -> None:
    """It came, and can't be used."""
    number = ordered(tmp_path)
    receive(billing(tmp_path), "PO-2026-0001", Delivery(paper="D1", freight=Decimal(0), damaged={1: 1}))
    receive(billing(tmp_path), "PO-2026-0002", Delivery(paper="D2", freight=Decimal(0)))
    assert refused_bill(tmp_path, number) == [
        ("not-received-for-bill", f"line 1 of job {number} can't be billed: nothing good has come on PO-2026-0001")
    ]


def test_the_same_part_under_another_number_is_asked_before_it_is_billed(tmp_path: Path) -> None:
    """OV-20417 is the belt by the maker's word; the yes was to CV-B880K. Once she agrees, the bill names what came."""
    number = ordered(tmp_path)
    ostrevik = PartNumber(printed="OV-20417", maker="Ostrevik")
    receive(billing(tmp_path), "PO-2026-0001", Delivery(paper="D1", freight=Decimal(0), numbers={1: ostrevik}))
    receive(billing(tmp_path), "PO-2026-0002", Delivery(paper="D2", freight=Decimal(0)))
    ((code, words),) = refused_bill(tmp_path, number)
    assert code == "other-number-for-bill" and "OV-20417 came, the customer said yes to Corrivane CV-B880K" in words
    agreed_to = Agreed(who="Maud Tilbrook", how="telephone", contact="555-0142")
    decide(billing(tmp_path), number, "1", "hold", "the same belt", agreed_to)
    frozen = write_bill(billing(tmp_path), number, bill_html)
    assert frozen.bill.due == usd("413.19") and "OV-20417" in frozen.bill.lines[0].number
    assert "you agreed to" in frozen.paper


def test_goods_sent_back_are_not_billed_and_those_refused_are_here_again(tmp_path: Path) -> None:
    """The belt goes back to the supplier, who does not take it."""
    number = received(tmp_path)
    desk = billing(tmp_path)
    step = GoodsBack(order="PO-2026-0001", line=1, kind="goods", step="sent", pieces=1, at=BILLING, who="Oona Brandeth")
    with desk.store.writing() as connection:
        add_goods_back(connection, step)
    assert refused_bill(tmp_path, number) == [
        ("not-received-for-bill", f"line 1 of job {number} can't be billed: nothing good has come on PO-2026-0001")
    ]
    with desk.store.writing() as connection:
        add_goods_back(connection, changed(step, kind="core"))
        add_goods_back(connection, changed(step, step="refused"))
    assert look_at_bill(desk, number).due == usd("413.19")


def test_a_line_left_out_is_on_record_and_not_on_the_bill(tmp_path: Path) -> None:
    """The idler never came: with the reason said, the rest is billed."""
    number = ordered(tmp_path)
    receive(billing(tmp_path), "PO-2026-0001", Delivery(paper="D1", freight=Decimal(0)))
    receive(billing(tmp_path), "PO-2026-0002", Delivery(paper="D2", freight=Decimal(0), quantities={1: 2}))
    assert [code for code, _ in refused_bill(tmp_path, number)] == ["not-received-for-bill"]
    assert [code for code, _ in refused_bill(tmp_path, number, LeftOut(labels=("B",)))] == ["not-done-why"]
    left = LeftOut(labels=("B",), words="None to be had before summer.")
    frozen = write_bill(billing(tmp_path), number, bill_html, left)
    assert frozen.bill.due == usd("352.11") and "None to be had before summer." in frozen.paper
    assert history(billing(tmp_path), number)[-1].detail == (
        "wrote bill B-2026-0001: total 352.11 USD, due 352.11 USD; not done B: None to be had before summer."
    )


def test_deposits_come_off_the_bill(tmp_path: Path) -> None:
    """Half of the parts paid ahead."""
    number = received(tmp_path)
    take_deposit(billing(tmp_path), number, Decimal("113.10"), "cash")
    bill = write_bill(billing(tmp_path), number, bill_html).bill
    assert (bill.total.total, bill.due) == (usd("413.19"), usd("300.09"))


def test_no_answer_is_taken_once_the_job_is_billed(tmp_path: Path) -> None:
    """The paper is out; what it stands on stays as it is."""
    number = received(tmp_path)
    write_bill(billing(tmp_path), number, bill_html)
    with pytest.raises(Refused):
        record(billing(tmp_path), number, yes("C"))


def test_the_numbers_of_a_year_run_on(tmp_path: Path) -> None:
    """Labour alone needs no goods; a new year begins anew."""
    desk = shop(tmp_path, MONDAY)
    found = []
    for at in (MONDAY, MONDAY, datetime(2027, 1, 4, 9, 0)):
        number = take_in(desk, tmp_path, '[[agreed]]\ntitle = "Look it over"\nhours = 0.5')
        quote_and_approve(tmp_path, number)
        found.append(write_bill(desk_at(tmp_path, at), number, bill_html).bill.number)
    assert found == ["B-2026-0001", "B-2026-0002", "B-2027-0001"]


def quote_and_approve(folder: Path, number: str) -> None:
    """The customer says yes to all at once."""
    from sourcing.actions.quotes import write_quote

    desk = desk_at(folder, MONDAY)
    write_quote(desk, number, quote_html)
    record(desk, number, yes("agreed"))


def test_all_or_nothing_when_the_paper_can_not_be_made(tmp_path: Path) -> None:
    """A fault in the middle leaves no bill, no number taken, no deed."""
    number = received(tmp_path)
    before = history(billing(tmp_path), number)

    def broken(bill: Bill) -> str:
        raise RuntimeError(bill.number)

    with pytest.raises(RuntimeError, match="B-2026-0001"):
        write_bill(billing(tmp_path), number, broken)
    assert bill_if_any(billing(tmp_path), number) is None and history(billing(tmp_path), number) == before
    assert write_bill(billing(tmp_path), number, bill_html).bill.number == "B-2026-0001"


def test_a_bill_that_was_touched_is_never_printed(tmp_path: Path) -> None:
    """One letter changed in the database: told, not shown."""
    number = received(tmp_path)
    write_bill(billing(tmp_path), number, bill_html)
    desk = billing(tmp_path)
    with desk.store.writing() as connection:
        connection.execute(text("UPDATE bills SET paper = replace(paper, '413.19', '431.19')"))
    with pytest.raises(Refused) as caught:
        bill_if_any(desk, number)
    assert codes(caught)[0][0] == "bill-damaged"
