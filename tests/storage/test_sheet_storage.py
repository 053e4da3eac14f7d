"""Sheets and their offers: kept whole, found by key on the newest sheet, taken out again without a trace."""

from datetime import date
from decimal import Decimal

import pytest
from sqlalchemy import Connection, text

from sourcing.basics.offer import LeadTime, Offer, PriceBreak, SheetRow
from sourcing.basics.problem import Refused
from sourcing.basics.sheet import KeptSheet
from sourcing.storage import offers as offers_module
from sourcing.storage.candidates import not_looked_through
from sourcing.storage.database import Store
from sourcing.storage.offers import newest_keys_of_length, newest_number_keys, offers_by_keys, offers_of_sheet
from sourcing.storage.sheets import (
    add_sheet,
    break_quantities,
    kept_sheets,
    meanings,
    remember_meanings,
    remove_sheet,
    same_sheet,
    sheet_summary,
    sheets_with_makers_numbers,
)
from sourcing.storage.sold_numbers import is_anything_sold, sold_with_keys
from tests.storage.kept_values import AT, BREAKS, frame, full_row, new_sheet, offer_row, summary

JANUARY, FEBRUARY = date(2026, 1, 5), date(2026, 2, 2)
TODAY = date(2026, 2, 27)


def keep(connection: Connection, supplier: str, day: date, sha256: str, *rows: dict[str, object]) -> KeptSheet:
    """Keep a sheet of those rows."""
    return add_sheet(connection, summary(len(rows)), frame(*rows), new_sheet(supplier, day, sha256))


def numbers(found: list[Offer]) -> list[tuple[str, str, int]]:
    """Supplier, number and sheet of each offer."""
    return [(one.supplier, one.supplier_number, one.source.sheet) for one in found]


def test_every_field_of_an_offer_comes_back_and_a_blank_stays_blank(store: Store) -> None:
    with store.writing() as connection:
        kept = keep(connection, "kesselried", JANUARY, "aa", full_row(4, "KA-0036"), offer_row(5, "0 12-3/A"))
    with store.reading() as connection:
        full, blank = offers_of_sheet(connection, kept.sheet)
    source = SheetRow(sheet=kept.sheet, file="prices.csv", worksheet="Preise", row=4, sheet_date=JANUARY)
    assert full == Offer(
        supplier="kesselried",
        supplier_number="KA-0036",
        currency="CHF",
        source=source,
        maker="Corrivane",
        maker_number="CV 4036",
        description="Keilriemen A36 – verstärkt",
        breaks=BREAKS,
        list_price=Decimal("19.90"),
        price_basis=100,
        pack=2,
        order_multiple=4,
        minimum=8,
        stock=0,
        lead_time=LeadTime(text="3-5 Tage", least=3, most=5),
        core_charge=Decimal("0.00"),
        superseded_by="KA-0037",
        no_longer_available=True,
        note="oversize",
    )
    plain = SheetRow(sheet=kept.sheet, file="prices.csv", worksheet="", row=5, sheet_date=JANUARY)
    assert blank == Offer(supplier="kesselried", supplier_number="0 12-3/A", currency="EUR", source=plain)


def test_a_blank_that_pandas_made_not_a_number_stays_a_blank(store: Store) -> None:
    rows = frame(offer_row(4, "A1", stock=3), offer_row(5, "A2"))
    rows["stock"] = rows["stock"].astype(float)
    rows["pack"] = float("nan")
    with store.writing() as connection:
        kept = add_sheet(connection, summary(2), rows, new_sheet("kesselried", JANUARY, "a"))
        found = offers_of_sheet(connection, kept.sheet)
    assert [(one.stock, one.pack) for one in found] == [(3, 1), (None, 1)]


def test_a_sheet_is_kept_with_its_counts_and_summary(store: Store) -> None:
    with store.writing() as connection:
        kept = keep(connection, "kesselried", JANUARY, "aa", offer_row(4, "A1"), offer_row(5, "A2"))
    with store.reading() as connection:
        assert kept_sheets(connection, TODAY) == [kept]
        assert sheet_summary(connection, kept.sheet) == summary(2)
        assert same_sheet(connection, "kesselried", "aa", TODAY) == kept
        assert same_sheet(connection, "larkmoor", "aa", TODAY) is None
        assert same_sheet(connection, "kesselried", "ab", TODAY) is None
    counts = (kept.rows, kept.offers, kept.structure, kept.problem_rows, kept.is_newest)
    assert counts == (5, 2, 2, 1, True)


def test_the_newest_sheet_is_the_one_of_the_latest_date_then_the_one_imported_last(store: Store) -> None:
    with store.writing() as connection:
        keep(connection, "kesselried", FEBRUARY, "a", offer_row(4, "A1"))
        keep(connection, "kesselried", FEBRUARY, "b", offer_row(4, "A1"))
        keep(connection, "kesselried", JANUARY, "c", offer_row(4, "A1"))
        keep(connection, "larkmoor", JANUARY, "d", offer_row(4, "A-1"))
        marked = [(one.sha256, one.is_newest) for one in kept_sheets(connection, TODAY)]
        found = offers_by_keys(connection, {"A1"}, TODAY)
    assert marked == [("a", False), ("b", True), ("c", False), ("d", True)]
    assert numbers(found) == [("kesselried", "A1", 2), ("larkmoor", "A-1", 4)]


@pytest.mark.parametrize(
    ("day", "counts", "not_yet"),
    [
        (date(2026, 1, 4), None, ["a", "b", "c"]), (JANUARY, "b", ["a", "c"]), (date(2026, 2, 1), "b", ["a", "c"]),
        (FEBRUARY, "c", []), (TODAY, "c", []),
    ],
)  # fmt: skip
@pytest.mark.parametrize("order", ["abc", "acb", "cab", "bac"])
def test_the_newest_sheet_of_a_past_day_is_the_one_that_was_dated_by_then(
    store: Store, day: date, counts: str | None, not_yet: list[str], order: str
) -> None:
    """'b' is of January, 'a' and 'c' are of one day in February: of these the one imported last counts."""
    dates = {"a": FEBRUARY, "b": JANUARY, "c": FEBRUARY}
    if counts == "c":
        counts = max("ac", key=order.index)
    with store.writing() as connection:
        for name in order:
            keep(connection, "kesselried", dates[name], name, offer_row(4, f"A-1-{name}", maker_number="OV 1"))
        sheets = {one.sheet: one for one in kept_sheets(connection, day)}
        found = offers_by_keys(connection, {"OV1"}, day)
        assert [sheets[one.source.sheet].sha256 for one in found] == ([counts] if counts else [])
        assert [one.sha256 for one in sheets.values() if one.is_newest] == ([counts] if counts else [])
        assert sorted(one.sha256 for one in sheets.values() if one.not_yet) == not_yet
        keys = {key for key, _, _ in newest_number_keys(connection, day)}
        assert keys == ({f"A1{counts.upper()}", "OV1"} if counts else set())
        assert set(newest_keys_of_length(connection, {3}, day)) == keys
        assert is_anything_sold(connection, day) is bool(counts)
        sold = sold_with_keys(connection, ["A1A", "A1B", "A1C"], day)
        assert {key for key, _ in sold} == ({f"A1{counts.upper()}"} if counts else set())
        assert (
            len(sheets_with_makers_numbers(connection, day)) == len(not_looked_through(connection, day)) == len(found)
        )


def test_a_sheet_taken_out_again_counts_on_no_day(store: Store) -> None:
    """Last month's comparison finds the sheet before it, too."""
    with store.writing() as connection:
        old = keep(connection, "kesselried", JANUARY, "a", offer_row(4, "A1"))
        wrong = keep(connection, "kesselried", date(2026, 1, 12), "b", offer_row(4, "A1"))
        keep(connection, "kesselried", FEBRUARY, "c", offer_row(4, "A1"))
        remove_sheet(connection, wrong.sheet, TODAY)
        found = offers_by_keys(connection, {"A1"}, date(2026, 1, 20))
    assert numbers(found) == [("kesselried", "A1", old.sheet)]


def test_offers_are_found_under_either_number_each_once(store: Store, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(offers_module, "CHUNK", 2)
    with store.writing() as connection:
        both = offer_row(4, "ka-36", maker="Corrivane", maker_number="CV 4036", breaks=BREAKS)
        keep(
            connection,
            "kesselried",
            JANUARY,
            "a",
            both,
            offer_row(5, "cv4036"),
            offer_row(6, "012"),
            offer_row(7, "12"),
        )
        found = offers_by_keys(connection, ["KA36", "CV4036", "012", "NONE1", "NONE2", ""], TODAY)
        assert offers_by_keys(connection, [], TODAY) == []
        assert offers_by_keys(connection, {""}, TODAY) == []
    assert [one.source.row for one in found] == [4, 5, 6]
    assert len(found[0].breaks) == 3 and found[1].breaks == ()


def test_number_keys_belong_to_whom_the_offer_says(store: Store) -> None:
    with store.writing() as connection:
        keep(connection, "kessel-ried", JANUARY, "old", offer_row(4, "GONE-1"))
        rows = [
            offer_row(4, "KA-1", maker="Corrivane Ltd", maker_number="CV 1"),
            offer_row(5, "D-2", maker="Dunmarrow"),
            offer_row(6, "X3"),
            offer_row(7, "X 3"),
            offer_row(8, "--"),
        ]
        kept = keep(connection, "kessel-ried", FEBRUARY, "new", *rows)
        found = newest_number_keys(connection, TODAY)
        offers = offers_of_sheet(connection, kept.sheet)
    expected = {(one.key, one.node[0], offer.supplier) for offer in offers for one in offer.numbers() if one.key}
    assert set(found) == expected
    assert len(found) == len(expected) == 4
    assert ("KA1", "kesselried", "kessel-ried") in found


def test_keys_of_a_length_are_those_of_the_newest_sheets(store: Store) -> None:
    """Both columns, no other lengths, nothing of a sheet that a newer one has replaced."""
    with store.writing() as connection:
        keep(connection, "kesselried", JANUARY, "old", offer_row(4, "NW-11111"))
        keep(connection, "kesselried", FEBRUARY, "new", offer_row(4, "NW-22222", maker_number="OV 3333"))
        keep(connection, "larkmoor", JANUARY, "b", offer_row(4, "NW-22222"), offer_row(5, "12345"), offer_row(6, "--"))
        assert sorted(newest_keys_of_length(connection, {6, 7}, TODAY)) == ["NW22222", "NW22222", "OV3333"]
        assert newest_keys_of_length(connection, {9}, TODAY) == newest_keys_of_length(connection, (), TODAY) == []


def test_an_undone_sheet_leaves_nothing_and_its_number_is_not_given_again(store: Store) -> None:
    with store.writing() as connection:
        first = keep(connection, "kesselried", JANUARY, "a", full_row(4, "A1"))
        second = keep(connection, "kesselried", FEBRUARY, "b", full_row(4, "A1"), full_row(5, "A2"))
        assert remove_sheet(connection, second.sheet, TODAY).sheet == second.sheet
        assert numbers(offers_by_keys(connection, {"A1", "A2"}, TODAY)) == [("kesselried", "A1", first.sheet)]
        assert connection.execute(text("SELECT count(*) FROM price_breaks")).scalar() == 2
        again = keep(connection, "kesselried", FEBRUARY, "b", full_row(4, "A1"))
        assert again.sheet > second.sheet
        with pytest.raises(Refused, match="no sheet number 99"):
            remove_sheet(connection, 99, TODAY)
        with pytest.raises(Refused, match="no sheet number 99"):
            sheet_summary(connection, 99)


def test_a_price_with_too_many_digits_is_refused_with_its_row(store: Store) -> None:
    price = (PriceBreak(from_quantity=1, price=Decimal("1")), PriceBreak(from_quantity=5, price=Decimal("0.1234567")))
    for row, column in (
        (offer_row(17, "A2", breaks=price), "net price"),
        (offer_row(17, "A2", breaks=price[1:]), "net price"),
        (offer_row(17, "A2", list_price=Decimal("0.1234567")), "list price"),
        (offer_row(17, "A2", core_charge=Decimal("1E20")), "core charge"),
    ):
        with pytest.raises(Refused) as caught, store.writing() as connection:
            keep(connection, "kesselried", JANUARY, "a", full_row(4, "A1"), row)
        place = caught.value.problems[0].place
        assert caught.value.problems[0].code == "digits-lost"
        assert place is not None and (place.file, place.row, place.column) == ("prices.csv", 17, column)
    with store.reading() as connection:
        assert kept_sheets(connection, TODAY) == []


def test_counts_that_do_not_account_for_the_offers_are_not_stored(store: Store) -> None:
    with pytest.raises(ValueError, match="does not account for 1 offers"), store.writing() as connection:
        add_sheet(connection, summary(2), frame(offer_row(4, "A1")), new_sheet("kesselried", JANUARY, "a"))


def test_meanings_of_columns_are_remembered_for_each_supplier(store: Store) -> None:
    with store.writing() as connection:
        remember_meanings(connection, "kesselried", {"Artikel  Nr.": "note", "Preis": "net price"}, "Oona", AT)
        remember_meanings(connection, "kesselried", {"ARTIKEL nr.": "supplier number"}, "Greta", AT)
        remember_meanings(connection, "larkmoor", {"Preis 10": "net price"}, "Oona", AT, {"Preis 10": 10})
    with store.reading() as connection:
        assert meanings(connection, "kesselried") == {"ARTIKEL nr.": "supplier number", "Preis": "net price"}
        assert break_quantities(connection, "kesselried") == {}
        assert break_quantities(connection, "larkmoor") == {"Preis 10": 10}
        assert meanings(connection, "pellbrook") == {}
