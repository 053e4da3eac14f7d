"""Yes and no in five languages."""

from decimal import Decimal

import pytest

from sourcing.sheets.cells.cell import Bad
from sourcing.sheets.cells.flag_cells import parse_flags, parse_yes
from sourcing.sheets.worksheet import Cell


@pytest.mark.parametrize(
    "cell", ["Y", "yes", "X", "1", "true", "ja", "J", "oui", "sí", "Si", "✓", "HAZ", Decimal(1), "waar"]
)
def test_yes(cell: Cell) -> None:
    assert parse_flags([cell]) == [True]


@pytest.mark.parametrize("cell", ["N", "no", "0", "FALSE", "nein", "non", "nee", "-", Decimal(0), "faux"])
def test_no(cell: Cell) -> None:
    assert parse_flags([cell]) == [False]


def test_a_blank_is_not_stated_and_other_words_are_problems() -> None:
    found = parse_flags(["", " ", "n/a", "perhaps", "2"])
    assert found[:3] == [None, None, None]
    assert [one.code for one in found if isinstance(one, Bad)] == ["yes-or-no-unreadable"] * 2


@pytest.mark.parametrize(
    ("status", "gone"),
    [("", False), ("active", False), ("Discontinued", True), ("obsolete", True), ("aktiv", False), ("NLA", True),
     ("entfallen", True), ("plus disponible", True), ("descatalogado", True), ("niet meer leverbaar", True),
     ("disc.", True), ("current", False)],
)  # fmt: skip
def test_status_words(status: str, gone: bool) -> None:
    assert parse_yes(status) is gone


def test_an_unknown_status_is_a_problem() -> None:
    assert isinstance(parse_yes("phase 2"), Bad)
