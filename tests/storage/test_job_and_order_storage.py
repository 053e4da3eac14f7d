"""Jobs, frozen quotes, answers, orders and receipts; and that no order line gets in without the customer's yes."""

from datetime import date

import pytest
from sqlalchemy import Connection, text
from sqlalchemy.exc import IntegrityError

from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage import deeds as deeds_module
from sourcing.storage import quotes as quotes_module
from sourcing.storage.database import Store
from sourcing.storage.jobs import add_job, change_job, job, jobs
from sourcing.storage.orders import add_order, add_receipt, next_order_number, order, orders, receipts
from sourcing.storage.quotes import add_approvals, add_quote, approvals, newest_quote, quote
from tests.storage import kept_values as values

LINE = (
    'INSERT INTO purchase_order_lines ("order", line, job, revision, label, approval, answer, holds) '
    "VALUES (:order, :line, :job, 1, :label, :approval, :answer, 'yes')"
)


def quoted(connection: Connection) -> str:
    """A job with one frozen revision; its number."""
    number = add_job(connection, values.job()).number
    add_quote(connection, values.frozen(number), "Oona Brandeth")
    return number


def refusal(caught: pytest.ExceptionInfo[Refused]) -> str:
    """The kind of the first problem."""
    return caught.value.problems[0].code


def test_jobs_are_numbered_by_year_and_come_back(store: Store) -> None:
    with store.writing() as connection:
        kept = [add_job(connection, values.job(date(year, 3, 1))) for year in (2026, 2025, 2026)]
        assert [one.number for one in kept] == ["2026-0001", "2025-0001", "2026-0002"]
        assert kept[2] == changed(values.job(date(2026, 3, 1)), number="2026-0002")
        assert [one.number for one in jobs(connection)] == ["2025-0001", "2026-0001", "2026-0002"]
        assert job(connection, "2026-0002") == kept[2]
        change_job(connection, changed(kept[2], complaint="It howls"))
        assert job(connection, "2026-0002").complaint == "It howls"
        assert job(connection, "2026-0001") == kept[0]


def test_an_unknown_job_is_refused_with_at_most_five_near_numbers(store: Store) -> None:
    with store.writing() as connection:
        for _ in range(12):
            add_job(connection, values.job())
        with pytest.raises(Refused) as caught:
            job(connection, "2026-0013")
        with pytest.raises(Refused) as strange:
            change_job(connection, changed(values.job(), number="zzz"))
    assert refusal(caught) == refusal(strange) == "no-such-job"
    suggestions = caught.value.problems[0].suggestions
    assert len(suggestions) == 5
    assert {"2026-0003", "2026-0010", "2026-0011", "2026-0012"} <= set(suggestions)
    assert strange.value.problems[0].suggestions == ()


def test_quotes_come_back_to_the_letter(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        add_quote(connection, values.frozen(number, 2, "second"), "Oona Brandeth")
    with store.reading() as connection:
        assert quote(connection, number, 1) == values.frozen(number)
        assert newest_quote(connection, number) == values.frozen(number, 2, "second")
        assert newest_quote(connection, "2020-0001") is None
        with pytest.raises(Refused) as caught:
            quote(connection, number, 3)
    assert refusal(caught) == "no-such-revision"


def test_a_revision_is_never_written_over(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        with pytest.raises(Refused) as caught:
            add_quote(connection, values.frozen(number, 1, "cheaper"), "Oona Brandeth")
        assert refusal(caught) == "revision-taken"
        assert quote(connection, number, 1) == values.frozen(number)
        wrong = changed(values.frozen(number, 2), sha256="0" * 64)
        with pytest.raises(ValueError, match="hash"):
            add_quote(connection, wrong, "Oona Brandeth")


def test_a_paper_that_was_touched_is_refused(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        connection.execute(text("UPDATE quote_revisions SET paper = paper || ' '"))
        with pytest.raises(Refused) as one:
            quote(connection, number, 1)
        with pytest.raises(Refused) as newest:
            newest_quote(connection, number)
    assert refusal(one) == refusal(newest) == "quote-damaged"


def test_nothing_offers_to_change_a_quote_an_answer_or_a_deed() -> None:
    for module in (quotes_module, deeds_module):
        assert not {"update", "delete"} & set(vars(module))


def test_answers_keep_their_order_and_every_one_stays(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        given = [values.answer(number), values.answer(number, "declined"), values.answer(number)]
        first = add_approvals(connection, given[:2])
        last = add_approvals(connection, given[2:])
        kept = [*(changed(one, holds="replaced") for one in given[:2]), given[2]]
        assert approvals(connection, number) == list(zip([*first, *last], kept, strict=True))
        assert approvals(connection, "2020-0001") == []
        assert add_approvals(connection, []) == []
    assert first[0] < first[1] < last[0]


def test_an_answer_to_a_quote_that_was_never_made_is_refused_by_the_database(store: Store) -> None:
    with pytest.raises(IntegrityError), store.writing() as connection:
        add_approvals(connection, [values.answer(quoted(connection), revision=2)])


def test_orders_and_receipts_come_back(store: Store) -> None:
    with store.writing() as connection:
        one, other = quoted(connection), quoted(connection)
        first, second = add_approvals(connection, [values.answer(one), values.answer(other)])
        assert next_order_number(connection, 2026) == "PO-2026-0001"
        both = values.purchase_order("PO-2026-0001", [one, other])
        add_order(connection, both, {1: first, 2: second})
        assert next_order_number(connection, 2026) == "PO-2026-0002"
        assert next_order_number(connection, 2027) == "PO-2027-0001"
        again = values.purchase_order("PO-2026-0002", [one])
        add_order(connection, again, {1: first})
        came = [values.receipt("PO-2026-0001"), values.receipt("PO-2026-0001", "L-0100")]
        for receipt in came:
            add_receipt(connection, receipt)
        add_receipt(connection, values.receipt("PO-2026-0002"))
    with store.reading() as connection:
        assert order(connection, "PO-2026-0001") == both
        assert orders(connection) == [both, again]
        assert orders(connection, other) == [both]
        assert receipts(connection, "PO-2026-0001") == came
        assert receipts(connection, "PO-2026-0009") == []


def test_the_same_paper_counts_once(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_order(connection, values.purchase_order("PO-2026-0001", [number]), {1: yes})
        add_receipt(connection, values.receipt("PO-2026-0001"))
        with pytest.raises(Refused) as caught:
            add_receipt(connection, values.receipt("PO-2026-0001"))
        assert refusal(caught) == "same-paper"
        with pytest.raises(Refused) as caught:
            add_receipt(connection, values.receipt("PO-2026-0002"))
        assert refusal(caught) == "no-such-order"
        assert caught.value.problems[0].suggestions == ("PO-2026-0001",)
        assert len(receipts(connection, "PO-2026-0001")) == 1


@pytest.mark.parametrize("case", ["declined", "taken back", "missing", "of another job", "unknown"])
def test_an_order_without_a_yes_that_holds_is_refused_whole(store: Store, case: str) -> None:
    with store.writing() as connection:
        number, other = quoted(connection), quoted(connection)
        (theirs,) = add_approvals(connection, [values.answer(other)])
        (no,) = add_approvals(connection, [values.answer(number, "declined")])
        (yes,) = add_approvals(connection, [values.answer(number)])
        if case == "taken back":
            add_approvals(connection, [values.answer(number, "declined")])
        given = {"declined": no, "taken back": yes, "of another job": theirs, "unknown": 999}
        approval_of = {1: theirs, 2: given[case]} if case in given else {1: theirs}
        new = values.purchase_order("PO-2026-0001", [other, number])
        with pytest.raises(Refused) as caught:
            add_order(connection, new, approval_of)
        assert refusal(caught) == "not-approved"
        assert orders(connection) == []


@pytest.mark.parametrize("case", ["declined", "says approved", "another job", "unknown", "twice"])
def test_the_database_itself_refuses_an_order_line_without_a_yes(store: Store, case: str) -> None:
    with store.writing() as connection:
        number, other = quoted(connection), quoted(connection)
        yes, no = add_approvals(connection, [values.answer(number), values.answer(number, "declined")])
        (theirs,) = add_approvals(connection, [values.answer(other)])
        add_order(connection, values.purchase_order("PO-2026-0001", [other]), {1: theirs})
    good = {"order": "PO-2026-0001", "line": 2, "job": number, "label": "1", "approval": yes, "answer": "approved"}
    wrong: dict[str, dict[str, object]] = {
        "declined": {"approval": no, "answer": "declined"},
        "says approved": {"approval": no},
        "another job": {"approval": theirs},
        "unknown": {"approval": 999},
        "twice": {"job": other, "approval": theirs},
    }
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text(LINE), {**good, **wrong[case]})
    with store.writing() as connection:
        connection.execute(text(LINE), good)


def test_the_database_refuses_to_turn_a_used_yes_into_a_no(store: Store) -> None:
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_order(connection, values.purchase_order("PO-2026-0001", [number]), {1: yes})
    for sql in (
        "UPDATE approvals SET answer = 'declined'",
        "DELETE FROM approvals",
        "UPDATE approvals SET answer = 'x'",
    ):
        with pytest.raises(IntegrityError), store.writing() as connection:
            connection.execute(text(sql))
