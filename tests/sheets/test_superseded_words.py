"""Words in a status, stock, price or note cell that another number took the row's place: it can't be had as it stands.

The words are common practice of price sheets, no source; the sheets are invented. The number is what the sheet names
instead and ties nothing by itself.
"""

import pytest

from sourcing.sheets.cells.cell import successor_in
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

SAID = {
    "SUPERSEDED BY BW-55310": "BW-55310",
    "Superceded by: BW 55 310": "BW 55 310",
    "supprimé, remplacé par VM-8899": "VM-8899",
    "Remplacée par OV 20 417.": "OV 20 417",
    "replaced by 4-417": "4-417",
    "ersetzt durch BW-55310": "BW-55310",
    "entfällt, ersetzt durch BW-55310": "BW-55310",
    "wird ersetzt durch KR-204.0388": "KR-204.0388",
    "NLA use BW-55310": "BW-55310",
    "NLA - see BW-55310": "BW-55310",
    "sustituido por VM-8899": "VM-8899",
    "vervangen door VM-8899": "VM-8899",
    "(superseded by BW-55310)": "BW-55310",
}
OTHER = [
    "", "in stock", "replaces BW-55300", "supersedes BW-55300", "use BW-55310", "see page 12", "replaced by hand",
    "ersetzt BW-55300", "replaced by BW-55310 from March on", "12", "now 3 weeks", "superseded",
]  # fmt: skip


def read(header: str, cell: str) -> SheetReading:
    text = f"Part No;Description;Net;{header}\nA-1;Belt;12,50;{cell}\nA-2;Pin;1,20;\n"
    return read_sheet(text.encode(), "prices.csv", Hints(supplier="x", currency="EUR"))


@pytest.mark.parametrize("header", ["Status", "Availability", "Notes", "Lead time", "Superseded by"])
@pytest.mark.parametrize("cell", SAID)
def test_the_number_that_took_its_place_is_a_hint(header: str, cell: str) -> None:
    offers = read(header, cell).offers
    assert list(offers["superseded_by"]) == [SAID[cell], ""]
    assert list(offers["no_longer_available"]) == [header != "Superseded by", False]
    assert [row[0].price for row in offers["breaks"]]


@pytest.mark.parametrize("cell", OTHER)
def test_other_words_say_nothing_of_the_kind(cell: str) -> None:
    assert successor_in(cell) == ""


def test_such_words_in_the_prices_place_leave_an_offer_without_a_price() -> None:
    text = "Part No;Description;Net\nA-1;Belt;entfällt, ersetzt durch BW-55310\nA-2;Pin;1,20\n"
    reading = read_sheet(text.encode(), "prices.csv", Hints(supplier="x", currency="EUR"))
    assert (list(reading.offers["superseded_by"]), reading.summary.problems) == (["BW-55310", ""], ())
    assert (list(reading.offers["no_longer_available"]), reading.offers["breaks"][0]) == ([True, False], ())
