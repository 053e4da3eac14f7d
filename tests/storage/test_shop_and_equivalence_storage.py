"""Settings, terms, rates, the equivalence table and the ledger come back as they were put."""

from datetime import date
from decimal import Decimal
from typing import get_type_hints

import pytest

from sourcing.basics.asked import Asked
from sourcing.basics.deed import Deed
from sourcing.basics.equivalence import EquivalenceTable, MakerAlias, OurPart, Statement
from sourcing.basics.problem import Refused
from sourcing.basics.rate import Rate
from sourcing.basics.statement_history import Signed
from sourcing.basics.value import changed
from sourcing.storage.database import Store
from sourcing.storage.deeds import deeds, record
from sourcing.storage.equivalence import equivalence_table, maker_aliases, our_parts, put_aliases, put_parts
from sourcing.storage.shop import has_settings, put_rates, put_settings, put_terms, rates, settings_on, terms_on
from sourcing.storage.statements import state
from tests.builders import number, statement, terms
from tests.storage.kept_values import AT, settings

SIGNED = Signed(at=AT, who="Oona Brandeth")
ASKED = Asked(cord="aramid", cover="wrapped", cogs="plain", side="left", sold_as="matched set", pieces=2)
BELT = OurPart(code="AUGER-BELT", name="Auger belt", size="A36", category="belts", note="dry", asked=ASKED)
KEEPER = OurPart(code="A-KEEPER", name="Belt keeper")
SAME = statement(number("NW-40388", "Norrowby"), "same part", number("CV 4036", "Corrivane"))
NEVER = statement(number("NW-40388", "Norrowby"), "must not", number("4L360"), "unchecked")
KIT = changed(
    statement(number("K1"), "kit contains", number("B2"), condition="two sheaves"),
    **{"count": 3, "machine": "NW-826", "serial_from": "0700", "serial_to": "0799", "doubt": "only two came"},
)


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
    """With every field of statements and parts, and the numbers the table gave."""
    said = (at_row(NEVER, 2), at_row(SAME, 3), at_row(KIT, 7))
    aliases = (MakerAlias(alias="NORROWBY MFG", maker="Norrowby"), MakerAlias(alias="Cv.", maker="Corrivane"))
    with store.writing() as connection:
        assert equivalence_table(connection) == EquivalenceTable(parts=(), statements=())
        put_parts(connection, (BELT, KEEPER))
        put_aliases(connection, aliases)
        numbers = state(connection, said, SIGNED, ["", "", ""])
    with store.reading() as connection:
        found = equivalence_table(connection)
    assert found.parts == (BELT, KEEPER) and found.aliases == aliases
    assert found.statements == tuple(changed(one, number=at) for one, at in zip(said, numbers, strict=True))


def test_this_test_knows_every_field_of_a_statement_and_of_a_part() -> None:
    """A field added to them and forgotten in storage would be lost in silence."""
    blank = changed(SAME, row=None, number=None)
    differing = {name for name in get_type_hints(Statement) if getattr(KIT, name) != getattr(blank, name)}
    assert differing | {"row", "number", "standing", "stated_by", "source", "stated_on"} == set(
        get_type_hints(Statement)
    )
    plain = OurPart(code="", name="")
    assert all(getattr(BELT, name) != getattr(plain, name) for name in get_type_hints(OurPart))
    assert all(getattr(BELT.asked, name) != getattr(Asked(), name) for name in get_type_hints(Asked))


def test_parts_and_names_put_again_take_the_place_of_the_ones_before(store: Store) -> None:
    with store.writing() as connection:
        put_parts(connection, (BELT,))
        put_parts(connection, (KEEPER, changed(BELT, note="wet")))
        put_aliases(connection, (MakerAlias(alias="CV", maker="Corrivane"),))
        put_aliases(connection, ())
    with store.reading() as connection:
        assert our_parts(connection) == (KEEPER, changed(BELT, note="wet"))
        assert maker_aliases(connection) == ()


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
