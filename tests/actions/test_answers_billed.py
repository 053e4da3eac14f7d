"""Once a job is billed, its answers stand as they are."""

import hashlib
from datetime import datetime
from pathlib import Path

import pytest

from sourcing.actions.answers import TakenBack, record, standing, withdraw
from sourcing.basics.bill import Bill, FrozenBill
from sourcing.basics.problem import Refused
from sourcing.storage.after_quote import add_bill
from tests.actions.answered_shop import MONDAY, at, quoted, said, torn_down
from tests.journeys.small_shop import desk_at


def test_no_answer_and_no_taking_back_after_the_bill(tmp_path: Path) -> None:
    """The bill is of what was approved; whatever comes after is another job."""
    number = quoted(tmp_path)
    record(desk_at(tmp_path, MONDAY), number, said("agreed"))
    torn_down(tmp_path, number)
    found = standing(at(tmp_path), number)
    quote = found.quote
    bill = Bill(
        number="B-2026-0001",
        job=number,
        revision=quote.revision,
        shop=quote.shop,
        customer=quote.customer,
        machine=quote.machine,
        complaint="",
        made_at=datetime(2026, 3, 5, 9, 0),
        made_by="Oona Brandeth",
        locale=quote.locale,
        currency=quote.currency,
        lines=tuple(line for line in quote.lines if line.kind == "agreed"),
        approvals=(),
        total=found.approved,
        declined=(),
        deposits=(),
        due=found.approved.total,
    )
    with at(tmp_path).store.writing() as connection:
        kept = FrozenBill(bill=bill, paper="paper", sha256=hashlib.sha256(b"paper").hexdigest())
        add_bill(connection, kept, found.approval_of)
    taken = TakenBack(labels=("agreed",), who="Maud Tilbrook", how="telephone")
    words = f"job {number} is billed, so its answers stand as they are"
    for one in (said("A", "D"), said(no=("agreed",), instead=True)):
        with pytest.raises(Refused, match=words):
            record(at(tmp_path), number, one)
    with pytest.raises(Refused, match=words):
        withdraw(at(tmp_path), number, taken)
    assert standing(at(tmp_path), number).answers == found.answers
