"""Extras given away, on every database: kept in order, never for nothing, never without a job, never on a bill."""

from datetime import datetime

import pytest
from sqlalchemy import text
from sqlalchemy.exc import IntegrityError

from sourcing.basics.bill import GivenAway
from sourcing.basics.value import changed
from sourcing.storage.after_quote import add_given_away, given_away
from sourcing.storage.database import Store
from sourcing.storage.jobs import add_job
from tests.builders import usd
from tests.storage import kept_values as values
from tests.storage.test_bill_held import LINE

CLIP = GivenAway(
    job="2026-0001", what="cable clip", cost=usd("1.20"), price=usd("3.00"), words="the old one fell apart",
    at=datetime(2026, 3, 9, 15, 0), who="Piet Halloway-Rusk",
)  # fmt: skip
ROW = 'INSERT INTO given_away (job, "at", cost, currency, body) VALUES (:job, :at, :cost, :currency, :body)'
GOOD = {"job": "", "at": "2026-03-09T15:00:00", "cost": 1_200_000, "currency": "USD", "body": "{}"}


def test_extras_come_back_in_order(store: Store) -> None:
    """Of one job, or of all; a price that nobody said stays unknown."""
    with store.writing() as connection:
        one, other = add_job(connection, values.job()).number, add_job(connection, values.job()).number
        kept = [changed(CLIP, job=one), changed(CLIP, job=other, price=None), changed(CLIP, job=one, what="pin")]
        for each in kept:
            add_given_away(connection, each)
        assert given_away(connection) == kept and given_away(connection, one) == [kept[0], kept[2]]
        assert given_away(connection, other)[0].price is None


@pytest.mark.parametrize("wrong", [{"cost": 0}, {"cost": -1}, {"cost": None}, {"job": "2020-0001"}, {"job": None}])
def test_the_database_itself_keeps_no_extra_without_cost_or_job(store: Store, wrong: dict[str, object]) -> None:
    """Whoever writes to it."""
    with store.writing() as connection:
        number = add_job(connection, values.job()).number
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text(ROW), {**GOOD, "job": number, **wrong})
    with store.writing() as connection:
        connection.execute(text(ROW), {**GOOD, "job": number})


def test_an_extra_given_away_can_not_be_put_on_a_bill(store: Store) -> None:
    """A line of a bill stands on a yes, and an extra has none."""
    with store.writing() as connection:
        number = add_job(connection, values.job()).number
        add_given_away(connection, changed(CLIP, job=number))
    line = {"job": number, "label": "cable clip", "approval": 1, "answer": "approved", "holds": "yes"}
    with pytest.raises(IntegrityError), store.writing() as connection:
        connection.execute(text(LINE), line)
