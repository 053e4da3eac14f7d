"""No bill line without a yes that holds: tried with raw SQL and through the storage's own doors, on every database."""

import hashlib
from datetime import datetime
from typing import Any

import pytest
from sqlalchemy import Connection, text
from sqlalchemy.exc import IntegrityError

from sourcing.basics.approval import Withdrawal
from sourcing.basics.bill import Bill, DepositKept, FrozenBill
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.after_quote import (
    add_bill,
    add_deposit,
    add_withdrawal,
    bill_of,
    billed_jobs,
    deposits,
    next_bill_number,
)  # fmt: skip
from sourcing.storage.database import Store
from sourcing.storage.jobs import add_job
from sourcing.storage.quotes import add_approvals, add_quote
from tests.builders import usd
from tests.storage import kept_values as values

LINE = "INSERT INTO bill_lines (job, label, approval, answer, holds) VALUES (:job, :label, :approval, :answer, :holds)"
AT = datetime(2026, 1, 20, 16, 30)


def quoted(connection: Connection) -> str:
    """A job with a quote of one line '1'; its number."""
    number = add_job(connection, values.job()).number
    add_quote(connection, values.frozen(number), "Oona Brandeth")
    return number


def bill(job: str, number: str = "B-2026-0001", paper: str = "Bill – 152,31 €\r\n") -> FrozenBill:
    """A bill of the job's one line."""
    quote = values.frozen(job).quote
    made = Bill(
        number=number, job=job, revision=1, shop=quote.shop, customer=quote.customer, machine=quote.machine,
        complaint=quote.complaint, made_at=AT, made_by="Oona Brandeth", locale="en_US", currency="USD",
        lines=quote.lines, approvals=(), total=quote.agreed_total, declined=(), deposits=(), due=usd("152.31"),
    )  # fmt: skip
    return FrozenBill(bill=made, paper=paper, sha256=hashlib.sha256(paper.encode()).hexdigest())


def withdrawn(connection: Connection, job: str, approval: int) -> None:
    """The customer takes that answer back."""
    add_withdrawal(
        connection,
        Withdrawal(
            approval=approval, job=job, label="1", who="Maud Tilbrook", how="telephone", at=AT, taken_by="Oona Brandeth"
        ),
    )


def refusal(caught: Any) -> str:
    """The code of what was refused."""
    return str(caught.value.problems[0].code)


def test_a_bill_comes_back_to_the_letter(store: Store) -> None:
    """Content, paper, hash; and the list of billed jobs."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        assert next_bill_number(connection, 2026) == "B-2026-0001" and bill_of(connection, number) is None
        add_bill(connection, bill(number), {"1": yes})
    with store.reading() as connection:
        assert bill_of(connection, number) == bill(number)
        assert billed_jobs(connection) == {number: AT}
        assert next_bill_number(connection, 2026) == "B-2026-0002"
        assert next_bill_number(connection, 2027) == "B-2027-0001"


def test_a_job_is_billed_once(store: Store) -> None:
    """By the storage with a sentence, by the database itself whoever writes."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_bill(connection, bill(number), {"1": yes})
        with pytest.raises(Refused) as caught:
            add_bill(connection, bill(number, "B-2026-0002"), {"1": yes})
        assert refusal(caught) == "billed-already"
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text("INSERT INTO bills SELECT job, 'B-2026-0002', at, who, body, paper, sha256 FROM bills"))


def test_a_bill_that_was_touched_is_refused(store: Store) -> None:
    """Its hash tells; and a hash that is not the paper's is never kept."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        with pytest.raises(ValueError, match="hash"):
            add_bill(connection, changed(bill(number), sha256="0" * 64), {"1": yes})
        add_bill(connection, bill(number), {"1": yes})
        connection.execute(text("UPDATE bills SET paper = paper || ' '"))
        with pytest.raises(Refused) as caught:
            bill_of(connection, number)
    assert refusal(caught) == "bill-damaged"


@pytest.mark.parametrize("case", ["no answer named", "declined", "withdrawn", "replaced", "of another job", "unknown"])
def test_the_storage_keeps_no_bill_on_a_line_without_a_yes(store: Store, case: str) -> None:
    """All or nothing: no bill is left behind either."""
    with store.writing() as connection:
        number, other = quoted(connection), quoted(connection)
        (no,) = add_approvals(connection, [values.answer(number, "declined")])
        (earlier,) = add_approvals(connection, [values.answer(number)])
        (yes,) = add_approvals(connection, [values.answer(number)])
        (theirs,) = add_approvals(connection, [values.answer(other)])
        if case == "withdrawn":
            withdrawn(connection, number, yes)
    named = {"declined": no, "withdrawn": yes, "replaced": earlier, "of another job": theirs, "unknown": 999}
    approval_of = {"1": named[case]} if case in named else {}
    with pytest.raises((IntegrityError, Refused)), store.writing() as connection:
        add_bill(connection, bill(number), approval_of)
    with store.reading() as connection:
        assert bill_of(connection, number) is None


@pytest.mark.parametrize(
    "case", ["declined", "says approved", "withdrawn", "says it holds", "another job", "unknown", "waiting", "no bill"]
)
def test_the_database_itself_refuses_a_bill_line_without_a_yes(store: Store, case: str) -> None:
    """Whoever writes to it, and whatever the row claims of itself."""
    with store.writing() as connection:
        number, other, unbilled = quoted(connection), quoted(connection), quoted(connection)
        (no,) = add_approvals(connection, [values.answer(number, "declined")])
        (gone,) = add_approvals(connection, [values.answer(number)])
        withdrawn(connection, number, gone)
        (yes,) = add_approvals(connection, [values.answer(number)])
        (theirs,) = add_approvals(connection, [values.answer(other)])
        (elsewhere,) = add_approvals(connection, [values.answer(unbilled)])
        empty = changed(bill(number), bill=changed(bill(number).bill, lines=()))
        add_bill(connection, empty, {})
    good = {"job": number, "label": "1", "approval": yes, "answer": "approved", "holds": "yes"}
    wrong: dict[str, dict[str, object]] = {
        "declined": {"approval": no, "answer": "declined"},
        "says approved": {"approval": no},
        "withdrawn": {"approval": gone, "holds": "withdrawn"},
        "says it holds": {"approval": gone},
        "another job": {"approval": theirs},
        "unknown": {"approval": 999},
        "waiting": {"approval": None},
        "no bill": {"job": unbilled, "approval": elsewhere},
    }
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text(LINE), {**good, **wrong[case]})
    with store.writing() as connection:
        connection.execute(text(LINE), good)


def test_an_answer_that_was_billed_on_can_not_be_turned(store: Store) -> None:
    """Neither taken back nor changed nor deleted."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_bill(connection, bill(number), {"1": yes})
    with pytest.raises(IntegrityError), store.writing() as connection:
        withdrawn(connection, number, yes)
    for sql in ("UPDATE approvals SET answer = 'declined'", "UPDATE approvals SET holds = 'replaced'",
                "UPDATE approvals SET job = '2020-0001'", "DELETE FROM approvals"):  # fmt: skip
        with pytest.raises(IntegrityError), store.writing() as connection:
            connection.execute(text(sql))


def test_deposits_come_back_in_order(store: Store) -> None:
    """Taken and given back, of one job or all."""
    with store.writing() as connection:
        one, other = quoted(connection), quoted(connection)
        kept = [
            DepositKept(job=job, amount=usd(amount), how="cash", at=AT, taken_by="Oona Brandeth", words="half")
            for job, amount in ((one, "113.10"), (other, "5.00"), (one, "-13.10"))
        ]
        for each in kept:
            add_deposit(connection, each)
        assert deposits(connection) == kept and deposits(connection, one) == [kept[0], kept[2]]
    with pytest.raises(IntegrityError), store.writing() as connection:
        add_deposit(connection, changed(kept[0], job="2020-0001"))
