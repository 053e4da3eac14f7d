"""The database itself holds the customer's word: no order line, and no taking back, against it, whoever writes."""

from collections.abc import Callable

import pytest
from sqlalchemy import Connection, text
from sqlalchemy.exc import IntegrityError

from sourcing.basics.approval import Withdrawal
from sourcing.basics.problem import Refused
from sourcing.basics.value import changed
from sourcing.storage.after_order import let_go
from sourcing.storage.after_quote import add_withdrawal, withdrawals
from sourcing.storage.database import Store
from sourcing.storage.held_answers import mark_replaced, ordered_on
from sourcing.storage.jobs import add_job
from sourcing.storage.orders import add_order, orders
from sourcing.storage.quotes import add_approvals, add_quote, approvals, quotes
from tests.builders import usd
from tests.storage import kept_values as values

LINE = (
    'INSERT INTO purchase_order_lines ("order", line, job, revision, label, approval, answer, holds) '
    "VALUES (:order, :line, :job, 1, :label, :approval, :answer, :holds)"
)
ORDER = "PO-2026-0001"


def quoted(connection: Connection) -> str:
    """A job with one frozen revision; its number."""
    number = add_job(connection, values.job()).number
    add_quote(connection, values.frozen(number), "Oona Brandeth")
    return number


def taken_back(number: str, approval: int) -> Withdrawal:
    """Its yes taken back by e-mail."""
    return Withdrawal(
        approval=approval,
        job=number,
        label="1",
        who="Maud Tilbrook",
        how="e-mail",
        at=values.AT,
        taken_by="Oona Brandeth",
        words="Not now.",
    )


def withdrawn(connection: Connection, number: str) -> int:
    """A yes that was taken back."""
    (yes,) = add_approvals(connection, [values.answer(number)])
    add_withdrawal(connection, taken_back(number, yes))
    return yes


def replaced(connection: Connection, number: str) -> int:
    """A yes whose place a later word took."""
    (yes,) = add_approvals(connection, [values.answer(number)])
    mark_replaced(connection, [yes])
    return yes


def declined(connection: Connection, number: str) -> int:
    """A no."""
    return add_approvals(connection, [values.answer(number, "declined")])[0]


def of_another_job(connection: Connection, number: str) -> int:
    """Somebody else's yes."""
    return add_approvals(connection, [values.answer(quoted(connection))])[0]


def silence(connection: Connection, number: str) -> int:
    """No answer at all: a number nobody has."""
    return 999


NO_YES = [withdrawn, replaced, declined, of_another_job, silence]


@pytest.mark.parametrize("case", NO_YES)
def test_no_order_is_kept_on_what_is_no_standing_yes(store: Store, case: Callable[[Connection, str], int]) -> None:
    """Told in a sentence by the storage."""
    with store.writing() as connection:
        number = quoted(connection)
        at = case(connection, number)
        with pytest.raises(Refused) as caught:
            add_order(connection, values.purchase_order(ORDER, [number]), {1: at})
        assert caught.value.problems[0].code == "not-approved"
        assert orders(connection) == []


@pytest.mark.parametrize("answer", ["approved", "declined", None])
@pytest.mark.parametrize("holds", ["yes", "withdrawn", "replaced", None])
@pytest.mark.parametrize("case", NO_YES)
def test_the_database_refuses_an_order_line_on_it_whatever_the_line_claims(
    store: Store, case: Callable[[Connection, str], int], answer: str | None, holds: str | None
) -> None:
    """Raw SQL, every claim: that it is a yes, that it holds, neither, both."""
    with store.writing() as connection:
        number, other = quoted(connection), quoted(connection)
        at = case(connection, number)
        (theirs,) = add_approvals(connection, [values.answer(other)])
        add_order(connection, values.purchase_order(ORDER, [other]), {1: theirs})
    row = {"order": ORDER, "line": 2, "job": number, "label": "1", "approval": at, "answer": answer, "holds": holds}
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text(LINE), row)


def test_the_database_refuses_to_take_back_or_replace_a_yes_that_goods_are_ordered_on(store: Store) -> None:
    """By the functions and by raw SQL; nothing of the withdrawal stays."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_order(connection, values.purchase_order(ORDER, [number]), {1: yes})
        assert ordered_on(connection, number) == {yes}
    for undo in (
        lambda connection: add_withdrawal(connection, taken_back(number, yes)),
        lambda connection: mark_replaced(connection, [yes]),
        lambda connection: connection.execute(text("UPDATE approvals SET holds = 'withdrawn'")),
        lambda connection: connection.execute(text("UPDATE approvals SET answer = 'declined'")),
        lambda connection: connection.execute(text("DELETE FROM approvals")),
    ):
        with pytest.raises(IntegrityError), store.writing() as connection:
            undo(connection)
    with store.reading() as connection:
        assert withdrawals(connection, number) == []
        assert [one.holds for _, one in approvals(connection, number)] == ["yes"]


def test_a_cancelled_line_lets_go_and_then_it_can_be_taken_back(store: Store) -> None:
    """And not be ordered on again."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_order(connection, values.purchase_order(ORDER, [number]), {1: yes})
        let_go(connection, ORDER, [1])
        assert ordered_on(connection, number) == frozenset()
        add_withdrawal(connection, taken_back(number, yes))
        assert withdrawals(connection, number) == [taken_back(number, yes)]
        with pytest.raises(Refused, match="is withdrawn, so it can't be ordered"):
            add_order(connection, values.purchase_order("PO-2026-0002", [number]), {1: yes})


def test_an_answer_is_taken_back_once(store: Store) -> None:
    """Whoever writes."""
    with store.writing() as connection:
        number = quoted(connection)
        yes = withdrawn(connection, number)
    with pytest.raises(IntegrityError), store.writing() as connection:
        add_withdrawal(connection, taken_back(number, yes))


def test_a_later_answer_leaves_a_yes_that_goods_are_ordered_on_as_it_is(store: Store) -> None:
    """The yes asked for again after a rise: both hold, the order keeps its own."""
    with store.writing() as connection:
        number = quoted(connection)
        (yes,) = add_approvals(connection, [values.answer(number)])
        add_order(connection, values.purchase_order(ORDER, [number]), {1: yes})
        add_approvals(connection, [values.answer(number)])
        assert [one.holds for _, one in approvals(connection, number)] == ["yes", "yes"]


def test_what_an_occasion_came_to_comes_back_and_unknown_stays_unknown(store: Store) -> None:
    """None is not nought, and nought is not None."""
    with store.writing() as connection:
        number = quoted(connection)
        totals = [(usd("134.71"), usd("413.19")), (None, usd("73.63")), (usd("0.00"), usd("278.48")), (None, None)]
        for extra, after in totals:
            add_approvals(connection, [changed(values.answer(number), extra=extra, total_after=after)])
        assert [(one.extra, one.total_after) for _, one in approvals(connection, number)] == totals


def test_all_revisions_come_with_their_makers(store: Store) -> None:
    """Oldest first; none for a job without."""
    with store.writing() as connection:
        number = quoted(connection)
        add_quote(connection, values.frozen(number, 2, "second"), "Piet Halloway-Rusk")
        found = quotes(connection, number)
        assert found == [
            (values.frozen(number), "Oona Brandeth"),
            (values.frozen(number, 2, "second"), "Piet Halloway-Rusk"),
        ]
        assert quotes(connection, "2020-0001") == []
