"""Statements are changed, withdrawn and restored and never deleted; a database without their history goes on."""

from datetime import date, datetime

import pytest
from sqlalchemy import text

from sourcing.basics.equivalence import Statement
from sourcing.basics.problem import Refused
from sourcing.basics.statement_history import Happening, KeptStatement, Signed, StatementEvent
from sourcing.basics.value import changed
from sourcing.storage.database import Store, open_store
from sourcing.storage.engines import make_engine
from sourcing.storage.equivalence import equivalence_table, put_aliases, put_parts
from sourcing.storage.statements import (
    add_events,
    correct,
    kept_statement,
    kept_statements,
    put_in_order,
    set_withdrawn,
    state,
)
from sourcing.storage.upgrade import upgrade
from tests.builders import number, statement
from tests.storage.kept_values import AT

SIGNED = Signed(at=AT, who="Greta Lindqvare", file="list.xlsx")
SAME = statement(number("NW-40388", "Norrowby"), "same part", number("CV 4036", "Corrivane"), "supplier")
NEVER = statement(number("NW-40388", "Norrowby"), "must not", number("4L360"), "unchecked")
KIT = changed(statement(number("K1"), "kit contains", number("B2")), count=3)


def event(of: int, what: Happening, reason: str, was: Statement | None = None) -> StatementEvent:
    """Something that happened to a statement."""
    return StatementEvent(
        statement=of, at=AT, who="Greta Lindqvare", what=what, reason=reason, file="list.xlsx", was=was
    )


def test_what_is_stated_gets_a_number_and_the_beginning_of_its_history(store: Store) -> None:
    with store.writing() as connection:
        first, second = state(connection, [SAME, NEVER], SIGNED, ["row 2", "row 3"])
        (third,) = state(connection, [KIT], SIGNED, ["by hand"])
        assert state(connection, [], SIGNED, []) == []
    with store.reading() as connection:
        assert [one.number for one in equivalence_table(connection).statements] == [first, second, third]
        kept = kept_statement(connection, second)
    assert kept.statement == changed(NEVER, number=second)
    assert kept.events == (event(second, "stated", "row 3"),)
    assert not kept.withdrawn and kept.last == kept.events[0]


def test_numbers_of_many_statements_are_those_of_their_rows(store: Store) -> None:
    """Also where the database is handed them in several parts."""
    many = [changed(SAME, source=f"list {at}", row=at) for at in range(2500)]
    with store.writing() as connection:
        numbers = state(connection, many, SIGNED, [f"row {at}" for at in range(2500)])
        kept = {one.statement.number: one for one in kept_statements(connection, numbers)}
    assert len(kept) == 2500
    for at, given in enumerate(numbers):
        assert kept[given].statement.row == at and kept[given].events[0].reason == f"row {at}"


def test_a_withdrawn_statement_counts_no_more_and_stays(store: Store) -> None:
    with store.writing() as connection:
        first, second = state(connection, [SAME, NEVER], SIGNED, ["", ""])
        set_withdrawn(connection, [first], True)
        add_events(connection, [event(first, "withdrawn", "did not fit")])
        assert [one.number for one in equivalence_table(connection).statements] == [second]
        assert [one.withdrawn for one in kept_statements(connection)] == [True, False]
        set_withdrawn(connection, [first], False)
        assert [one.number for one in equivalence_table(connection).statements] == [first, second]
        assert [one.what for one in kept_statement(connection, first).events] == ["stated", "withdrawn"]


def test_a_corrected_statement_keeps_what_it_said_before(store: Store) -> None:
    with store.writing() as connection:
        (first,) = state(connection, [SAME], SIGNED, [""])
        before = kept_statement(connection, first).statement
        now = changed(
            before,
            **{"right": number("CV 4037", "Corrivane"), "standing": "fitted", "stated_on": date(2026, 1, 9), "row": 7},
        )
        correct(connection, [now])
        add_events(connection, [event(first, "changed", "misread", before)])
    with store.reading() as connection:
        kept = kept_statement(connection, first)
    assert kept.statement == now
    assert kept.events[-1].was == before


def test_the_order_is_as_told_and_the_rest_follows(store: Store) -> None:
    with store.writing() as connection:
        first, second, third = state(connection, [SAME, NEVER, KIT], SIGNED, ["", "", ""])
        put_in_order(connection, [third, first])
        (last,) = state(connection, [changed(KIT, count=4)], SIGNED, [""])
        assert [one.number for one in equivalence_table(connection).statements] == [third, first, second, last]


def test_a_number_the_table_does_not_have_is_refused(store: Store) -> None:
    with store.reading() as connection, pytest.raises(Refused, match="no statement number 7"):
        kept_statement(connection, 7)


def test_statements_kept_before_there_was_a_history_are_found_without_one(address: str) -> None:
    """A database with the schema of before, filled by hand, opened by the program of today."""
    engine = make_engine(address, 5)
    with engine.connect().execution_options(sourcing_begin="IMMEDIATE") as connection, connection.begin():
        upgrade(connection, "0003")
        values = "('KEEPER', 0, 'Belt keeper', '', '', '')"
        connection.execute(text(f"INSERT INTO our_parts (code, position, name, size, category, note) VALUES {values}"))
        for row, gone in ((2, "FALSE"), (3, "TRUE")):
            connection.execute(text(OLD.format(row=row, gone=gone)))
    engine.dispose()
    old = Statement(
        left=number("KEEPER", "(ours)"),
        relation="same part",
        right=number("NW-3120", "Norrowby"),
        standing="maker",
        source="parts list",
        stated_on=date(2025, 3, 4),
        stated_by="Oona Brandeth",
        row=2,
        number=1,
    )
    with open_store(address) as store:
        with store.reading() as connection:
            table = equivalence_table(connection)
            assert table.statements == (old,)
            assert [part.code for part in table.parts] == ["KEEPER"] and table.parts[0].asked.cord == ""
            withdrawn = kept_statement(connection, 2)
            assert withdrawn == KeptStatement(statement=changed(old, row=3, number=2), withdrawn=True)
            assert withdrawn.last is None
        with store.writing() as connection:
            put_parts(connection, table.parts)
            put_aliases(connection, table.aliases)
            (new,) = state(connection, [changed(KIT, machine="NW-826")], SIGNED, [""])
            assert new == 3
            later = datetime(2026, 1, 13, 8, 0)
            add_events(connection, [changed(event(1, "doubted", "loose"), at=later)])
            assert kept_statement(connection, 1).events[0].at == later


OLD = """
INSERT INTO statements (position, left_printed, left_maker, relation, right_printed, right_maker, standing, source,
stated_on, stated_by, condition, count, row, withdrawn) VALUES ({row}, 'KEEPER', '(ours)', 'same part', 'NW-3120',
'Norrowby', 'maker', 'parts list', '2025-03-04', 'Oona Brandeth', '', 1, {row}, {gone})
"""
