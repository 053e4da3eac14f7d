"""Transactions: all or nothing, writers in turn, readers undisturbed, and exact numbers."""

import threading
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sqlalchemy import text
from sqlalchemy.exc import DBAPIError

from sourcing.basics.deed import Deed
from sourcing.basics.problem import Refused
from sourcing.basics.rate import Rate
from sourcing.storage.database import Store, open_store
from sourcing.storage.deeds import deeds, record
from sourcing.storage.exact import DigitsLost, scaled, unscaled
from sourcing.storage.jobs import add_job, jobs
from sourcing.storage.shop import has_settings, put_rates, put_settings, rates
from tests.storage.kept_values import AT, job, settings

pytestmark = pytest.mark.usefixtures("migrated_step_by_step")

NUMBERS = st.decimals(min_value=-9_000_000_000, max_value=9_000_000_000, places=6)


def test_a_failure_leaves_nothing_of_the_transaction(store: Store) -> None:
    with pytest.raises(RuntimeError), store.writing() as connection:
        put_settings(connection, settings(), date(2026, 1, 1))
        add_job(connection, job())
        raise RuntimeError("the clerk pulls the plug")
    with store.reading() as connection:
        assert not has_settings(connection)
        assert jobs(connection) == []


def test_two_writers_at_once_lose_nothing(store: Store) -> None:
    each, failures = 15, []

    def take_in(who: str) -> None:
        try:
            for _ in range(each):
                with store.writing() as connection:
                    number = add_job(connection, job()).number
                    record(connection, Deed(at=AT, who=who, deed="job", subject=number, detail="taken in"))
        except BaseException as error:
            failures.append(error)

    threads = [threading.Thread(target=take_in, args=(who,)) for who in ("Oona", "Greta", "Piet")]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []
    with store.reading() as connection:
        numbers = [one.number for one in jobs(connection)]
        assert numbers == [f"2026-{serial:04d}" for serial in range(1, 3 * each + 1)]
        assert sorted(one.subject for one in deeds(connection)) == numbers


def test_two_at_once_may_open_a_new_database(address: str) -> None:
    failures: list[BaseException] = []
    start = threading.Barrier(4)

    def begin() -> None:
        try:
            start.wait()
            open_store(address).close()
        except BaseException as error:
            failures.append(error)

    threads = [threading.Thread(target=begin) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert failures == []


def test_a_writer_that_waits_too_long_is_told(address: str) -> None:
    with open_store(address, patience=0.2) as store, store.writing() as connection:
        add_job(connection, job())
        with pytest.raises(Refused) as caught, store.writing():
            pytest.fail("two wrote at once")
    assert caught.value.problems[0].code == "database-busy"


def test_a_reader_is_not_held_up_and_sees_one_moment(store: Store) -> None:
    with store.reading() as reader:
        assert jobs(reader) == []
        with store.writing() as writer:
            add_job(writer, job())
        assert jobs(reader) == []
    with store.reading() as reader:
        assert len(jobs(reader)) == 1


def test_writing_in_a_reading_transaction_fails(store: Store) -> None:
    with pytest.raises((DBAPIError, Refused)), store.reading() as connection:
        add_job(connection, job())


def test_between_deeds_the_one_file_is_all(tmp_path: Path) -> None:
    with open_store(str(tmp_path / "shop.db")) as store:
        with store.writing() as connection:
            add_job(connection, job())
        assert [path.name for path in tmp_path.iterdir()] == ["shop.db"]


def test_sqlite_is_set_as_promised(tmp_path: Path) -> None:
    with open_store(str(tmp_path / "shop.db"), patience=7) as store, store.writing() as connection:
        told = {
            name: connection.execute(text(f"PRAGMA {name}")).scalar()
            for name in ("foreign_keys", "journal_mode", "busy_timeout")
        }
    assert told == {"foreign_keys": 1, "journal_mode": "wal", "busy_timeout": 7000}


@given(NUMBERS)
def test_an_exact_number_comes_back_equal(number: Decimal) -> None:
    assert unscaled(scaled(number, 6), 6) == number


@pytest.mark.parametrize(
    "text",
    ["0.0000001", "12.3456789", "9223372036855", "1E+30", "NaN", "Infinity", "1.0000000000000000000000000000001"],
)
def test_lost_digits_are_refused(text: str) -> None:
    with pytest.raises(DigitsLost):
        scaled(Decimal(text), 6)


@pytest.mark.parametrize("number", [0.1, 1, True, "1.00"])
def test_only_decimals_are_exact(number: object) -> None:
    with pytest.raises(TypeError):
        scaled(number, 6)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("given_text", "back"), [("12.5", "12.50"), ("12.345000", "12.345"), ("7", "7.00"), ("-0.000001", "-0.000001")]
)
def test_a_number_shows_the_decimals_it_needs_and_at_least_two(given_text: str, back: str) -> None:
    assert str(unscaled(scaled(Decimal(given_text), 6), 6)) == back


def test_a_number_with_too_many_digits_is_told_and_nothing_kept(store: Store) -> None:
    good = Rate(currency="EUR", into="USD", rate=Decimal("1.09"), dated=date(2026, 1, 9))
    bad = Rate(currency="CHF", into="USD", rate=Decimal("1.12345678901"), dated=date(2026, 1, 9))
    with pytest.raises(Refused) as caught, store.writing() as connection:
        put_rates(connection, [good, bad])
    assert caught.value.problems[0].code == "digits-lost"
    assert "1.12345678901" in str(caught.value)
    with store.reading() as connection:
        assert rates(connection, "USD").rates == ()
