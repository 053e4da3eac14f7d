"""What most sheets do not say of an offer is kept and found again, and a database made before it existed goes on."""

from datetime import date
from decimal import Decimal
from typing import get_type_hints

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from sqlalchemy import Connection, text

from sourcing.basics.offer import LeadTime, Offer, PlaceStock, PriceBreak
from sourcing.basics.problem import Refused
from sourcing.basics.sheet import KeptSheet
from sourcing.sheets.frame import OFFER_COLUMNS, offers_frame
from sourcing.storage.database import Store, open_store
from sourcing.storage.engines import make_engine
from sourcing.storage.offers import offers_by_keys, offers_of_sheet
from sourcing.storage.sheets import add_sheet, kept_sheets, sheet_summary
from sourcing.storage.upgrade import upgrade
from tests.storage.kept_values import BREAKS, DETAILS, frame, full_row, new_sheet, offer_row, summary

DAY = date(2026, 1, 5)
NEW_FIELDS = tuple(DETAILS)


def keep(connection: Connection, *rows: dict[str, object]) -> KeptSheet:
    """Keep a sheet of those rows."""
    return add_sheet(connection, summary(len(rows)), frame(*rows), new_sheet("kesselried", DAY, "a"))


def test_every_field_is_kept_and_a_blank_stays_what_the_offer_says_of_a_blank(store: Store) -> None:
    leaves = LeadTime(text="BO 12/05", leaves_on=date(2026, 12, 5))
    blank = dict.fromkeys(NEW_FIELDS)
    with store.writing() as connection:
        full = full_row(4, "KA-0036") | DETAILS | {"lead_time": leaves}
        kept = keep(connection, full, offer_row(5, "KA-1", **blank))
    with store.reading() as connection:
        first, second = offers_of_sheet(connection, kept.sheet)
        assert offers_by_keys(connection, {"KA0036"}, DAY) == [first]
    assert {name: getattr(first, name) for name in NEW_FIELDS} == DETAILS
    assert str(first.weight_kg) == "0.028349523125"
    assert first.lead_time == leaves
    plain = Offer(supplier="kesselried", supplier_number="KA-1", currency="EUR", source=second.source)
    assert second == plain


def test_this_test_knows_every_field_of_an_offer() -> None:
    """A field added to the offer and forgotten here would be lost in silence."""
    known = {*full_row(4, "X"), *DETAILS} - {"worksheet", "row"} | {"supplier", "source"}
    assert known == set(get_type_hints(Offer))
    assert {*full_row(4, "X"), *DETAILS} == set(OFFER_COLUMNS)


@pytest.mark.parametrize("name", NEW_FIELDS)
def test_each_field_is_kept_also_alone_and_on_some_rows_only(store: Store, name: str) -> None:
    default = getattr(Offer(supplier="", supplier_number="", currency="", source=None), name)  # type: ignore[arg-type]
    with store.writing() as connection:
        kept = keep(connection, offer_row(4, "A", **{name: DETAILS[name]}), offer_row(5, "B", **{name: default}))
        found = offers_of_sheet(connection, kept.sheet)
    assert [getattr(one, name) for one in found] == [DETAILS[name], default]
    assert all(getattr(found[0], other) == getattr(found[1], other) for other in NEW_FIELDS if other != name)


def test_oversize_no_is_not_the_same_as_not_stated(store: Store) -> None:
    with store.writing() as connection:
        kept = keep(
            connection, *(offer_row(at, f"A{at}", oversize=said) for at, said in enumerate((True, False, None)))
        )
        assert [one.oversize for one in offers_of_sheet(connection, kept.sheet)] == [True, False, None]


TEXT = st.text(st.characters(exclude_categories=("Cs", "Cc")), max_size=8)
DETAIL_VALUES: dict[str, st.SearchStrategy[object]] = {
    "sold_by": st.sampled_from(("piece", "foot", "metre")),
    **dict.fromkeys(("gtin", "discount_code", "origin", "tariff_code"), TEXT),
    "stock_places": st.lists(
        st.builds(PlaceStock, place=TEXT, pieces=st.none() | st.integers(0, 2**40)), max_size=3
    ).map(tuple),
    "weight_kg": st.none() | st.decimals(0, 10**6, places=12),
    **dict.fromkeys(("length_cm", "width_cm", "height_cm"), st.none() | st.decimals(0, 10**4, places=7)),
    **dict.fromkeys(("oversize", "hazardous", "returnable"), st.none() | st.booleans()),
    **dict.fromkeys(("valid_from", "valid_to"), st.none() | st.dates()),
}


@given(st.lists(st.fixed_dictionaries(DETAIL_VALUES), min_size=1, max_size=4))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_whatever_the_fields_hold_comes_back(store: Store, details: list[dict[str, object]]) -> None:
    """Through the frame the reader of sheets makes."""
    rows = [offer_row(at, f"A{at}", no_longer_available=False) | one for at, one in enumerate(details, 2)]
    columns = {name: [row[name] for row in rows] for name in OFFER_COLUMNS}
    with store.writing() as connection:
        sheet = new_sheet("kesselried", DAY, f"a{len(kept_sheets(connection, DAY))}")
        kept = add_sheet(connection, summary(len(rows)), offers_frame(columns), sheet)
        found = offers_of_sheet(connection, kept.sheet)
    assert [{name: getattr(one, name) for name in NEW_FIELDS} for one in found] == details


@pytest.mark.parametrize("quantities", [(1, 1), (1, 5, 5), (5, 1, 5)])
def test_two_prices_from_one_quantity_are_refused_with_the_row(store: Store, quantities: tuple[int, ...]) -> None:
    breaks = tuple(PriceBreak(from_quantity=at, price=Decimal(9)) for at in quantities)
    with pytest.raises(Refused) as caught, store.writing() as connection:
        keep(connection, full_row(4, "A1"), offer_row(17, "A2", breaks=breaks))
    (found,) = caught.value.problems
    assert found.code == "break-quantity-twice"
    assert found.place is not None and (found.place.file, found.place.row) == ("prices.csv", 17)
    assert "A2 has two prices that hold from" in found.sentence()
    with store.reading() as connection:
        assert kept_sheets(connection, DAY) == []


def test_offers_kept_before_there_were_these_fields_are_found_with_blanks(address: str) -> None:
    """A database with the schema of before, filled by hand, opened by the program of today."""
    engine = make_engine(address, 5)
    with engine.connect().execution_options(sourcing_begin="IMMEDIATE") as connection, connection.begin():
        upgrade(connection, "0002")
        connection.execute(text(OLD_SHEET), {"body": OLD_BODY})
        connection.execute(text(OLD_OFFER))
        connection.execute(text("INSERT INTO price_breaks (offer, from_quantity, price) VALUES (7, 10, 11500000)"))
    engine.dispose()
    with open_store(address) as store:
        with store.reading() as connection:
            (found,) = offers_of_sheet(connection, 3)
            body = sheet_summary(connection, 3)
            assert (body.regions, body.questions, body.notes, body.reading) == ((), (), (), "")
            assert (body.columns[0].place, body.columns[0].suggested) == ("", None)
        assert found.breaks == (PriceBreak(from_quantity=1, price=Decimal("12.345678")), BREAKS[1])
        assert found.lead_time == LeadTime(text="3 Tage", least=3, most=3)
        assert (found.list_price, found.weight_kg, found.sold_by, found.stock_places) == (
            Decimal("19.90"),
            None,
            "piece",
            (),
        )
        with store.writing() as connection:
            newer = keep(connection, offer_row(4, "KA-1", **DETAILS))
            assert offers_of_sheet(connection, newer.sheet)[0].gtin == DETAILS["gtin"]


OLD_SHEET = """
INSERT INTO sheets (sheet, supplier, file, sheet_date, sha256, imported_at, imported_by, rows, offers, structure,
problem_rows, currency, body) VALUES (3, 'kesselried', 'old.csv', '2025-12-01', 'old', '2025-12-02T08:00:00',
'Oona Brandeth', 1, 1, 0, 0, 'EUR', :body)
"""
OLD_OFFER = """
INSERT INTO offers (offer, sheet, supplier, worksheet, row, supplier_number, supplier_key, maker, maker_key,
maker_number, maker_number_key, description, currency, list_price, net_price, net_from_quantity, price_basis, pack,
order_multiple, minimum, lead_text, lead_least, lead_most, superseded_by, no_longer_available, note)
VALUES (7, 3, 'kesselried', '', 2, 'KA-1', 'KA1', '', '', '', '', 'Keilriemen', 'EUR', 19900000, 12345678, 1, 1, 1,
1, 1, '3 Tage', 3, 3, '', FALSE, '')
"""
OLD_BODY = (
    '{"file":"old.csv","columns":[{"at":0,"header":"Artikel","field":"supplier number","from_quantity":null,'
    '"why":"the header says so"}],"accounting":[{"worksheet":"","rows":1,"offers":1,"structure":0,"problem_rows":0}],'
    '"problems":[],"sheet_date":null,"currency":"EUR"}'
)
"""The body as the program wrote it before summaries had regions, questions, notes and columns had places."""
