"""What a price is for. Codes: UN/ECE Recommendation 20, and 21 behind an X; C and M: common practice, no source."""

import pytest

from sourcing.sheets.cells.basis_cells import Basis, basis_in_header, parse_basis, unread_unit_in_header
from sourcing.sheets.cells.cell import Bad

REC_20 = [
    ("EA", Basis(1, "piece")), ("C62", Basis(1, "piece")), ("H87", Basis(1, "piece")), ("PR", Basis(1, "piece")),
    ("SET", Basis(1, "piece")), ("NAR", Basis(1, "piece")), ("DZN", Basis(12, "piece")), ("GRO", Basis(144, "piece")),
    ("CEN", Basis(100, "piece")), ("MIL", Basis(1000, "piece")), ("FOT", Basis(1, "foot")), ("MTR", Basis(1, "metre")),
    ("NMP", Basis(1, "pack")), ("XBX", Basis(1, "pack")), ("XPK", Basis(1, "pack")), ("XCT", Basis(1, "pack")),
    ("XPA", Basis(1, "pack")), ("XBG", Basis(1, "pack")), ("XCS", Basis(1, "pack")), ("XPP", Basis(1, "piece")),
]  # fmt: skip
"""The numbers are the conversion factors of the code list: dozen 12, gross 144, hundred 100, thousand 10³."""
NOT_OURS = ["KT", "INH", "YRD", "KGM", "GRM", "LBR", "ONZ", "LTR", "GLL", "HUR", "P1", "ZZ", "RO", "XRO", "RL", "LS"]
"""Units of the same list that are no pieces, feet or metres. KT is defined as a tub, barrel or pail."""


@pytest.mark.parametrize(("code", "basis"), REC_20)
def test_codes_of_recommendation_20(code: str, basis: Basis) -> None:
    assert parse_basis([code, code.lower()]) == [basis, basis]


@pytest.mark.parametrize("code", [*NOT_OURS, "%", "‰", "m", "roll", "-1", "0", "1,000", "10 pack", "12.50", "perhaps"])
def test_another_unit_is_a_problem(code: str) -> None:
    found = parse_basis([code])[0]
    assert isinstance(found, Bad) and found.code == "price-basis-unreadable"


@pytest.mark.parametrize(
    ("text", "basis"),
    [
        ("", Basis(1, "piece")), ("C", Basis(100, "piece")), ("c", Basis(100, "piece")),
        ("/M", Basis(1000, "piece")), ("per M", Basis(1000, "piece")), ("/m", Basis(1, "metre")),
        ("per m", Basis(1, "metre")), ("mtr", Basis(1, "metre")), ("Meter", Basis(1, "metre")),
        ("mètre", Basis(1, "metre")), ("metro", Basis(1, "metre")), ("per foot", Basis(1, "foot")),
        ("ft", Basis(1, "foot")), ("'", Basis(1, "foot")), ("pied", Basis(1, "foot")), ("pie", Basis(1, "foot")),
        ("voet", Basis(1, "foot")), ("C ft", Basis(100, "foot")), ("100 ft", Basis(100, "foot")),
        ("100 m", Basis(100, "metre")), ("per 100", Basis(100, "piece")), ("100 Stk.", Basis(100, "piece")),
        ("au cent", Basis(100, "piece")), ("l'unité", Basis(1, "piece")), ("par lot", Basis(1, "pack")),
        ("c/u", Basis(1, "piece")), ("per stuk", Basis(1, "piece")), ("doos", Basis(1, "pack")),
        ("pack of 10", Basis(10, "piece", True)), ("Dutzend", Basis(12, "piece")), ("kit", Basis(1, "piece")),
    ],
)  # fmt: skip
def test_words_in_five_languages(text: str, basis: Basis) -> None:
    assert parse_basis([text]) == [basis]


@pytest.mark.parametrize(
    ("header", "basis"),
    [
        ("Net per 100", Basis(100, "piece")), ("Price/C", Basis(100, "piece")), ("Price /1000", Basis(1000, "piece")),
        ("Preis je 100 Stück", Basis(100, "piece")), ("Prix au 100", Basis(100, "piece")),
        ("Precio por 100", Basis(100, "piece")), ("Prijs per 100", Basis(100, "piece")),
        ("Price per 1,000", Basis(1000, "piece")), ("Price (per 100) USD", Basis(100, "piece")),
        ("Net EUR/100 Stk.", Basis(100, "piece")), ("Price per ft", Basis(1, "foot")),
        ("Preis pro Meter", Basis(1, "metre")), ("Prix au mètre", Basis(1, "metre")), ("EUR / m", Basis(1, "metre")),
        ("Net/ea", Basis(1, "piece")), ("Price each", Basis(1, "piece")), ("Prix à la pièce", Basis(1, "piece")),
        ("Price per pack", Basis(1, "pack")), ("Prix par lot", Basis(1, "pack")), ("VPE-Preis", Basis(1, "pack")),
        ("Price/box of 10", Basis(10, "piece", True)), ("Price per 100 ft", Basis(100, "foot")),
        ("Price/M", Basis(1000, "piece")), ("PRICE/M", Basis(1000, "piece")), ("PREIS/M", Basis(1, "metre")),
        ("Price/m", Basis(1, "metre")), ("Prix net les 100", Basis(100, "piece")),
        ("Prix aux 100", Basis(100, "piece")), ("Precio los 100", Basis(100, "piece")),
        ("Precio el ciento", Basis(100, "piece")), ("Net CAD / 10", Basis(10, "piece")),
    ],
)  # fmt: skip
def test_a_header_that_says_what_prices_are_for(header: str, basis: Basis) -> None:
    assert basis_in_header(header) == basis


@pytest.mark.parametrize(
    "header",
    ["Net price", "List Price", "Net/List", "Price per unit", "Prix unitaire", "Price Jan/Feb", "Price w/o tax", "",
     "Price per customer", "Price 12/05/2026", "Price / 2026", "Net 100+", "UVP", "Price per lb"],
)  # fmt: skip
def test_a_header_that_says_nothing(header: str) -> None:
    assert basis_in_header(header) is None


@pytest.mark.parametrize(
    ("header", "unit"),
    [("Price per lb", "lb"), ("Preis / kg", "kg"), ("Price per roll", "roll"), ("Price/CFT", "cft"), ("Net/ea", ""),
     ("Net price", ""), ("Price per 100", "")],
)  # fmt: skip
def test_a_header_with_a_unit_that_is_none_of_ours(header: str, unit: str) -> None:
    assert unread_unit_in_header(header) == unit
