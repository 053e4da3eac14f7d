"""Settings, terms, rates, the equivalence table and the ledger come back as they were put."""

from datetime import date
from decimal import Decimal

import pytest
from sqlalchemy import text

from sourcing.basics.deed import Deed
from sourcing.basics.equivalence import EquivalenceTable, OurPart, Statement
from sourcing.basics.problem import Refused
from sourcing.basics.rate import Rate
from sourcing.basics.value import changed
from sourcing.storage.database import Store
from sourcing.storage.deeds import deeds, record
from sourcing.storage.equivalence import equivalence_table, replace_table
from sourcing.storage.shop import has_settings, put_rates, put_settings, put_terms, rates, settings_on, terms_on
from tests.builders import number, statement, terms
from tests.storage.kept_values import AT, settings

BELT = OurPart(code="AUGER-BELT", name="Auger belt", size="A36", category="belts", note="dry")
KEEPER = OurPart(code="A-KEEPER", name="Belt keeper")
SAME = statement(number("NW-40388", "Norrowby"), "same part", number("CV 4036", "Corrivane"))
NEVER = statement(number("NW-40388", "Norrowby"), "must not", number("4L360"), "unchecked")
KIT = changed(statement(number("K1"), "kit contains", number("B2"), condition="two sheaves"), count=3)


def test_settings_hold_from_their_day_on(store: Store) -> None:
    with store.writing() as connection:
        assert not has_settings(connection)
        put_settings(connection, settings("85.00"), date(2026, 1, 1))
        put_settings(connection, settings("99.00"), date(2026, 2, 1))
        put_settings(connection, settings("95.00"), date(2026, 2, 1))
    with store.reading() as connection:
        assert has_settings(connection)
        assert settings_on(connection, date(2026, 1, 31)) == settings("85.00")
        assert settings_on(connection, date(2026, 2, 1)) == settings("95.00")
        with pytest.raises(Refused, match="sourcing setup FOLDER"):
            settings_on(connection, date(2025, 12, 31))


def test_terms_hold_from_their_day_on(store: Store) -> None:
    old, new = terms("larkmoor"), terms("larkmoor", starts_on=date(2026, 2, 1), duty_percent=Decimal("2.7"))
    other = terms("kesselried", starts_on=date(2026, 1, 15), currency="EUR")
    with store.writing() as connection:
        put_terms(connection, [new, old, other])
    with store.reading() as connection:
        assert terms_on(connection, date(2026, 1, 1)) == {"larkmoor": old}
        assert list(terms_on(connection, date(2026, 1, 20))) == ["kesselried", "larkmoor"]
        assert terms_on(connection, date(2026, 2, 1)) == {"kesselried": other, "larkmoor": new}


def test_rates_come_back_exact_and_the_same_day_is_replaced(store: Store) -> None:
    def rate(currency: str, worth: str, day: int, into: str = "USD") -> Rate:
        return Rate(currency=currency, into=into, rate=Decimal(worth), dated=date(2026, 1, day), source="bank")

    with store.writing() as connection:
        put_rates(connection, [rate("IDR", "0.0000613", 9), rate("EUR", "1.08", 9), rate("EUR", "1.1", 5)])
        put_rates(connection, [rate("EUR", "1.09", 9), rate("USD", "0.91", 9, "EUR")])
    with store.reading() as connection:
        kept = rates(connection, "USD")
    assert kept.rates == (rate("EUR", "1.1", 5), rate("EUR", "1.09", 9), rate("IDR", "0.0000613", 9))
    assert kept.on("EUR", date(2026, 1, 9)).words() == "1 EUR = 1.09 USD on 2026-01-09"


def at_row(one: Statement, row: int) -> Statement:
    """The statement as read from that row."""
    return changed(one, row=row)


def test_the_equivalence_table_comes_back_in_its_order(store: Store) -> None:
    table = EquivalenceTable(parts=(BELT, KEEPER), statements=(at_row(NEVER, 2), at_row(SAME, 3), at_row(KIT, 7)))
    with store.writing() as connection:
        assert equivalence_table(connection) == EquivalenceTable(parts=(), statements=())
        replace_table(connection, table)
    with store.reading() as connection:
        assert equivalence_table(connection) == table


def test_a_statement_that_goes_is_withdrawn_and_one_that_stays_keeps_its_entry(store: Store) -> None:
    first = EquivalenceTable(parts=(BELT,), statements=(at_row(SAME, 2), at_row(NEVER, 3), at_row(SAME, 4)))
    second = EquivalenceTable(parts=(KEEPER,), statements=(at_row(KIT, 2), at_row(SAME, 9)))
    with store.writing() as connection:
        replace_table(connection, first)
        replace_table(connection, second)
        assert equivalence_table(connection) == second
        rows = connection.execute(text("SELECT relation, withdrawn FROM statements ORDER BY statement")).all()
    assert [(relation, bool(gone)) for relation, gone in rows] == [
        ("same part", False),
        ("must not", True),
        ("same part", True),
        ("kit contains", False),
    ]


def test_the_ledger_keeps_order_and_is_asked_by_subject(store: Store) -> None:
    entries = [
        Deed(at=AT, who="Oona Brandeth", deed="quote", subject="2026-0001", detail="revision 1 – 61.50"),
        Deed(at=AT.replace(year=2025), who="Greta Lindqvare", deed="import", subject="sheet 1", detail="3 offers"),
        Deed(at=AT, who="Oona Brandeth", deed="answer", subject="2026-0001", detail="1 approved"),
    ]
    with store.writing() as connection:
        for entry in entries:
            record(connection, entry)
    with store.reading() as connection:
        assert deeds(connection) == entries
        assert deeds(connection, "2026-0001") == [entries[0], entries[2]]
        assert deeds(connection, "nothing") == []
