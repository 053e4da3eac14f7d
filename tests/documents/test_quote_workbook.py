"""The quote as a workbook for the customer: every line, every total, numbers as numbers, no owner's figure."""

import io
import zipfile
from decimal import Decimal

import pytest
from openpyxl import load_workbook

from sourcing.basics.quote import FeeAmount, Quote
from sourcing.basics.value import changed
from sourcing.documents.quote_xlsx import quote_xlsx
from tests.documents.quote_values import exempt_quote, rich_quote
from tests.documents.values import OWNERS_WORDS, QUOTE, bare_quote, hostile_quote, usd

Rows = list[tuple[object, ...]]


def sheets(quote: Quote) -> dict[str, Rows]:
    """Each worksheet's rows, its header row among them."""
    book = load_workbook(io.BytesIO(quote_xlsx(quote)))
    return {sheet.title: [tuple(row) for row in sheet.iter_rows(values_only=True)] for sheet in book}


def everything_written(quote: Quote) -> str:
    """All text of the file, as it is packed."""
    with zipfile.ZipFile(io.BytesIO(quote_xlsx(quote))) as made:
        return "".join(made.read(name).decode() for name in made.namelist())


def test_every_line_is_there_with_its_figures() -> None:
    header, *rows = sheets(rich_quote())["Lines"]
    by_label = {row[0]: dict(zip(header, row, strict=True)) for row in rows}
    assert list(by_label) == ["1", "2", "3", "A"]
    assert by_label["1"]["Part number"] == "Norrowby NW-40388"
    assert by_label["1"]["Labour per h, USD"] is None and by_label["1"]["Labour, USD"] == 120
    assert by_label["2"]["Fee, USD"] == 25 and by_label["2"]["Parts, USD"] is None
    assert by_label["3"]["Freight, USD"] == 12.5
    assert by_label["A"]["Before tax, USD"] == 57.8 and by_label["A"]["Labour per h, USD"] == 96
    assert "14 days" in str(by_label["1"]["Ordered specially"]) and by_label["A"]["Ordered specially"] is None
    assert str(by_label["A"]["Old part"]).startswith("Your old parts go back.") and by_label["2"]["Old part"] is None


def test_the_totals_stand_side_by_side() -> None:
    assert sheets(rich_quote())["Totals"][1:] == [
        ("Parts", 166.6, 200.4),
        ("Freight", 12.5, 12.5),
        ("Labour", 120, 144),
        ("Fees on lines of their own", 25, 25),
        ("Shop supplies", 6, 7.2),
        ("Disposal of the old belt", 3.5, 3.5),
        ("Before tax", 333.6, 392.6),
        ("Sales tax", 10.83, 13.03),
        ("Total", 344.43, 405.63),
    ]
    assert sheets(rich_quote())["Extra work"][1:] == [("A", "Replace both belt keepers", 61.2, 405.63)]


def test_two_fees_of_one_name_or_one_called_total_are_not_lost() -> None:
    fees = tuple(FeeAmount(name=name, amount=usd("1.00"), rule="") for name in ("Total", "Disposal", "Disposal"))
    agreed = changed(QUOTE.agreed_total, fees=fees)
    rows = sheets(changed(QUOTE, agreed_total=agreed))["Totals"][1:]
    assert [row[:2] for row in rows].count(("Disposal", 1)) == 2
    assert ("Total", 1) in [row[:2] for row in rows] and rows[-1][0] == "Total" and rows[-1][1] != 1


def test_amounts_keep_their_digits() -> None:
    """The file's own digits, not a binary number's: 59.99 stays 59.99."""
    written = everything_written(QUOTE)
    for amount in (one.price.amount for one in QUOTE.add_on_prices):
        assert f"<v>{amount}</v>" in written
    assert Decimal("59.99") == QUOTE.add_on_prices[0].price.amount


def test_a_quote_without_extras_has_no_worksheet_of_them() -> None:
    assert list(sheets(bare_quote())) == ["Lines", "Totals", "About"]
    assert ("Tax", "No tax is charged: township of Wickenby, certificate 4471") in sheets(exempt_quote())["About"]


def test_what_a_yes_covers_and_the_cautions_come_with_it() -> None:
    about = sheets(rich_quote())["About"]
    words = " ".join(str(row[1]) for row in about)
    for expected in ("that work and part number, at that price", "by up to 2 %", "$83.30", "engine off", "come first"):
        assert expected in words


@pytest.mark.parametrize("words", (*OWNERS_WORDS, "own words"))
def test_nothing_of_the_owners_side(words: str) -> None:
    both = [*sheets(QUOTE).values(), *sheets(rich_quote()).values()]
    written = " | ".join(str(cell) for rows in both for row in rows for cell in row)
    assert words.casefold() not in written.casefold()
    if words.replace(".", "").isdigit():
        assert Decimal(words) not in [cell for rows in both for row in rows for cell in row]


def test_the_same_quote_gives_the_same_bytes_and_hostile_text_is_text() -> None:
    assert quote_xlsx(QUOTE) == quote_xlsx(QUOTE)
    cells = [cell for rows in sheets(hostile_quote()).values() for row in rows for cell in row]
    assert not any("\u202e" in str(cell) or "\x1b" in str(cell) for cell in cells)
