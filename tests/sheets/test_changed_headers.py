"""What is noted of a supplier's new sheet against the columns of the one before."""

import pytest

from sourcing.basics.sheet import Column, Field
from sourcing.sheets.headers.changed_headers import changes
from sourcing.sheets.headers.columns import Header, columns_of, meanings_by_key


def sheet(*headers: str, meanings: dict[str, Field] | None = None) -> tuple[Column, ...]:
    """The columns of these headers."""
    return columns_of([Header(text, (text,)) for text in headers], meanings_by_key(meanings or {}))


def notes(before: tuple[Column, ...], now: tuple[Column, ...]) -> list[tuple[str, str]]:
    """Codes and headers of the notes."""
    return [(note.code, note.found) for note in changes(before, now)]


def test_the_same_headers_in_any_order_and_spelling_are_no_change() -> None:
    before = sheet("Part Number", "Net", "List", "Stock", "Gadget")
    assert notes(before, before) == []
    assert notes(before, sheet("LIST", "gadget", "Part #", "Stock", "Net ($)")) == []


def test_another_name_for_the_same_meaning_is_one_note() -> None:
    (note,) = changes(sheet("SKU", "Net"), sheet("SKU", "Dealer Net"))
    assert note.code == "header-changed"
    assert "net price was 'Net' on the sheet before and is 'Dealer Net' now" in note.sentence()


def test_headers_that_went_and_came_are_told_with_their_meaning() -> None:
    found = changes(sheet("SKU", "Net", "Core", "Gadget"), sheet("SKU", "Net", "Weight", "Colour"))
    assert [(note.code, note.found) for note in found] == [
        ("header-gone", "Core"),
        ("header-new", "Weight"),
        ("header-new", "Colour"),
    ]
    assert "meant 'core charge'" in found[0].sentence() and "read as 'not known'" in found[2].sentence()


def test_a_header_that_means_something_else_now_is_told() -> None:
    before = sheet("SKU", "Net", "Price", meanings={"Price": "list price"})
    (note,) = changes(before, sheet("SKU", "Net", "Price"))
    assert note.code == "header-means-other"
    assert "meant 'list price' on the sheet before and is read as 'not known' now" in note.sentence()


def test_a_confirmed_header_that_is_missing_is_told_as_such() -> None:
    (note,) = changes(sheet("SKU", "Net", "Tarif A", meanings={"Tarif A": "list price"}), sheet("SKU", "Net"))
    assert (note.code, note.found) == ("confirmed-header-gone", "Tarif A")


@pytest.mark.parametrize(
    ("before", "now"),
    [(("SKU", "1-9", "10+"), ("SKU", "1-9", "25+")), (("SKU", "Net", "Stock East"), ("SKU", "Net", "Stock West"))],
)
def test_other_breaks_and_other_warehouses_are_no_new_names(before: tuple[str, ...], now: tuple[str, ...]) -> None:
    assert [code for code, _ in notes(sheet(*before), sheet(*now))] == ["header-gone", "header-new"]


def test_two_candidates_for_one_meaning_are_told_apart_from_a_new_name() -> None:
    found = notes(sheet("SKU", "Net"), sheet("SKU", "Dealer", "Distributor"))
    assert found == [("header-gone", "Net"), ("header-new", "Dealer"), ("header-new", "Distributor")]


def test_columns_without_a_header_are_not_compared() -> None:
    nameless = Column(at=3, header="", field="note", why="confirmed")
    assert notes((*sheet("SKU", "Net"), nameless), sheet("SKU", "Net")) == []
