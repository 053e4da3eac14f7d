"""A column nobody knows that holds numbers of the shop's own table, or looks like the makers' numbers, is asked about.

The sheets are invented; that makers' numbers stand under all sorts of headers is common practice, no source.
"""

import pytest

from sourcing.basics.part_number import number_key
from sourcing.basics.sheet import Field
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

TABLE = frozenset(map(number_key, ("BW-20142", "BW-1450", "12", "Skid shoe")))


def read(header: str, cells: tuple[str, ...], more: str = "", said: Field | None = None) -> SheetReading:
    rows = [f"BH-{at},Belt {at} for the deck,{cell},12.50{more and ',X-1'}" for at, cell in enumerate(cells)]
    text = "\n".join([f"Part No,Description,{header},Net{more and ',' + more}", *rows]) + "\n"
    hints = Hints(supplier="x", currency="USD", ours=TABLE, meanings={header: said} if said else {})
    return read_sheet(text.encode(), "prices.csv", hints)


def why(reading: SheetReading) -> list[str]:
    return [one.what for one in reading.summary.questions if one.code == "numbers-left-out"]


def test_numbers_of_ours_are_asked_about_whatever_stands_over_them() -> None:
    found = why(read("Quux", ("bw 20142", "ZZ-9", "BW-1450", "")))
    assert found == [
        "nobody knows what column 'Quux' is, and 2 of its values are in the table of same parts, such as bw 20142"
    ]


def test_also_where_another_column_is_the_makers_number() -> None:
    assert "1 of its values is in the table" in why(read("Quux", ("BW-20142", "ZZ-9"), more="Mfr Part No"))[0]


def test_what_looks_like_part_numbers_is_asked_about_where_no_makers_number_is() -> None:
    cells = ("QT-20142", "QT-1450", "QT-55310", "QT-90021", "QT-6203", "QT-7741")
    assert "look like part numbers" in why(read("Brand number", cells))[0]
    assert why(read("Brand number", cells, more="Mfr Part No")) == []


@pytest.mark.parametrize("cells", [("12", "14", "16"), ("Skid shoe", "red", "blue"), ("A1", "B2", "B2"), ("", "", "")])
def test_sizes_words_and_places_ask_nothing(cells: tuple[str, ...]) -> None:
    assert why(read("Quux", cells)) == []


def test_what_a_person_has_said_holds() -> None:
    for field in ("not used", "maker number"):
        assert why(read("Quux", ("BW-20142", "BW-1450"), said=field)) == []
