"""What changed between two sheets, on paper: readable, complete, counts that add up, and nothing that runs."""

import csv
import io
from datetime import date
from decimal import Decimal

import openpyxl
import pytest

from sourcing.basics.change import Changed, KindCount, PriceChange, Several, SheetChanges, SheetPart, WordChange
from sourcing.basics.sheet import KeptSheet
from sourcing.basics.value import changed
from sourcing.documents import changes_tables
from sourcing.documents.changes import changes_csv, changes_text, changes_xlsx, each_words

HOSTILE = '=HYPERLINK("http://x.example")'


def part(number: str, price: str | None, row: int = 2, **fields: object) -> SheetPart:
    """A number on a sheet in US dollars."""
    values: dict[str, object] = {"supplier_number": number, "worksheet": "", "row": row, "currency": "USD"}
    return SheetPart(price=None if price is None else Decimal(price), **{**values, **fields})  # type: ignore[arg-type]


def net(before: str | None, now: str | None, percent: str | None, quantity: int = 1) -> PriceChange:
    """A net price for one piece each."""
    values = [None if one is None else Decimal(one) for one in (before, now, percent)]
    return PriceChange(figure="net price", before=values[0], now=values[1], percent=values[2], from_quantity=quantity)


def kept(sheet: int, day: date) -> KeptSheet:
    """A sheet of nine offers."""
    return KeptSheet(
        sheet=sheet,
        supplier="larkmoor",
        file=f"prices-{day}.csv",
        sheet_date=day,
        sha256="",
        offers=9,
        structure=0,
        problem_rows=0,
        rows=9,
        is_newest=sheet == 2,
    )


ROSE = Changed(
    before=part("LW-0036", "12.50", 7),
    now=part("LW-0036", "14.00", 8, maker="Corrivane", maker_number="CV 4036", description="Belt A36"),
    kinds=("rose", "core charge changed"),
    prices=(net("12.50", "14.00", "12.0"), net("11.00", "12.10", "10.0", 10)),
    headline=net("12.50", "14.00", "12.0"),
)
FELL = Changed(
    before=part("LW-0040", "1.00"),
    now=part("LW-0040", "0.995"),
    kinds=("fell",),
    prices=(net("1.00", "0.995", "-0.5"),),
    headline=net("1.00", "0.995", "-0.5"),
)
OUT = Changed(
    before=part("LW-0050", "5.00"),
    now=part("LW-0050", "5.00", superseded_by="LW-0051"),
    kinds=("superseded",),
    words=(WordChange(what="superseded by", before="", now="LW-0051"),),
    instead=part("LW-0051", "6.25"),
)
PACK = Changed(
    before=part("LW-0060", "10.00", price_basis=3),
    now=part("LW-0060", "11.00", price_basis=3, description=HOSTILE),
    kinds=("sold differently",),
    prices=(PriceChange(figure="net price", before=Decimal(10), now=Decimal(11), before_basis=3, now_basis=3),),
    words=(WordChange(what="pack", before="3", now="6"),),
)
CHANGES = SheetChanges(
    supplier="larkmoor",
    before_offers=9,
    now_offers=8,
    unchanged=2,
    changed=(ROSE, FELL, OUT, PACK),
    vanished=(part("LW-0070", None, description="Keeper", superseded_by="LW-0071"),),
    appeared=(),
    several=(Several(before=(part("LW-9", "1"), part("LW-9", "2", 3)), now=(part("LW-9", "1"), part("LW 9", "3", 4))),),
    counts=tuple(KindCount(kind=one.kinds[0], numbers=1, in_all=1) for one in (ROSE, FELL, OUT, PACK)),
    median_rise=Decimal("12.0"),
    before=kept(1, date(2026, 1, 5)),
    now=kept(2, date(2026, 2, 2)),
)

EXPECTED = """\
larkmoor: sheet 2 of 2026-02-02, prices-2026-02-02.csv
compared with sheet 1 of 2026-01-05, prices-2026-01-05.csv
The price of 1 number rose; the rise in the middle is +12.0 %.

Rose: 1 number
 change number                 description was            is now
------- ---------------------- ----------- -------------- --------------
+12.0 % LW-0036 (Corrivane CV  Belt A36    12.50 USD each 14.00 USD each
        4036)
        net price from 10 pieces: 11.00 USD each to 12.10 USD each (+10.0 %)
        also: core charge changed

Fell: 1 number
change number  description was           is now
------ ------- ----------- ------------- --------------
-0.5 % LW-0040             1.00 USD each 0.995 USD each

Vanished, on the old sheet only: 1 number
number  description                   price
------- ----------------------------- --------
LW-0070 Keeper, superseded by LW-0071 no price

Superseded: 1 number
change number  description was           is now
------ ------- ----------- ------------- -------------
       LW-0050             5.00 USD each 5.00 USD each
       superseded by LW-0051, blank before
       order instead LW-0051, now 6.25 USD each

Sold differently: 1 number
change number  description               was             is now
------ ------- ------------------------- --------------- ---------------
       LW-0060 =HYPERLINK("http://x.exam 10.00 USD per 3 11.00 USD per 3
               ple")
       net price: about 3.3333 USD each to about 3.6667 USD each
       pack 3 to 6

Several offers under one number: 1 number, not compared, please look
  LW-9, old sheet: row 2 1.00 USD each; row 3 2.00 USD each
  LW-9, new sheet: row 2 1.00 USD each; row 4 3.00 USD each

offers                   old sheet new sheet
------------------------ --------- ---------
unchanged                        2         2
rose                             1         1
fell                             1         1
superseded                       1         1
sold differently                 1         1
vanished                         1         0
appeared                         0         0
several under one number         2         2
------------------------ --------- ---------
offers on the sheet              9         8
Stock, lead times and descriptions are not compared.
"""


def test_the_text_to_the_letter() -> None:
    text = changes_text(CHANGES)
    assert text == EXPECTED


def test_the_text_fits_a_terminal_and_its_counts_add_up() -> None:
    assert CHANGES.adds_up
    lines = changes_text(CHANGES).splitlines()
    assert max(len(line) for line in lines) <= 100
    start = next(at for at, line in enumerate(lines) if line.startswith("offers  "))
    rows = [line.rsplit(maxsplit=2)[1:] for line in lines[start + 2 : -1] if not line.startswith("-")]
    sums = [tuple(int(cell) for cell in cells) for cells in rows]
    assert sums[-1] == (9, 8) == tuple(map(sum, zip(*sums[:-1], strict=True)))


def test_counts_that_do_not_add_up_are_said_to_be_a_bug() -> None:
    wrong = changed(CHANGES, unchanged=3)
    assert "THIS DOES NOT ADD UP" in changes_text(wrong)
    assert "THIS DOES NOT ADD UP" not in changes_text(CHANGES)


def test_only_so_many_of_each_are_shown_and_the_rest_is_counted() -> None:
    many = changed(CHANGES, changed=(ROSE, ROSE, ROSE), vanished=CHANGES.vanished * 5)
    text = changes_text(many, most=2)
    assert text.count("LW-0036") == 2 and "\nand 1 more\n" in text
    assert text.count("LW-0070") == 2 and "\nand 3 more\n" in text


@pytest.mark.parametrize(
    ("price", "basis", "words"),
    [
        ("12.50", 1, "12.50 USD each"),
        ("119.00", 100, "1.19 USD each"),
        ("100.00", 1, "100.00 USD each"),
        ("1.00", 1000, "0.001 USD each"),
        ("10.00", 3, "about 3.3333 USD each"),
    ],
)
def test_the_price_of_a_piece_is_exact_or_said_to_be_about(price: str, basis: int, words: str) -> None:
    assert each_words(Decimal(price), basis, "USD") == words


def test_the_workbook_has_numbers_as_numbers_and_text_as_text() -> None:
    book = openpyxl.load_workbook(io.BytesIO(changes_xlsx(CHANGES)))
    titles = ["Counts", "Rose", "Fell", "Superseded", "Sold differently", "Vanished", "Appeared"]
    assert book.sheetnames == [*titles, "Several under one number", "Prices"]
    for sheet in book.worksheets:
        for cells in sheet.iter_rows():
            assert all(cell.data_type == ("s" if isinstance(cell.value, str) else "n") for cell in cells if cell.value)
    rose = dict(zip(*(tuple(cell.value for cell in row) for row in book["Rose"].iter_rows()), strict=True))
    assert (rose["Change, %"], rose["Net price before"], rose["Net price now"]) == (12, 12.5, 14)
    assert (rose["Supplier's number"], rose["What happened"]) == ("LW-0036", "rose, core charge changed")
    assert book["Superseded"]["N2"].value == 6.25
    assert book["Sold differently"]["F2"].value == HOSTILE and book["Sold differently"]["F2"].quotePrefix
    assert [row[0].value for row in book["Prices"].iter_rows(min_row=2)] == ["LW-0036", "LW-0036", "LW-0040", "LW-0060"]
    assert [cell.value for cell in book["Counts"][book["Counts"].max_row]] == ["offers on the sheet", 9, 8]


def test_a_worksheet_that_would_be_too_long_goes_on_in_another(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(changes_tables, "MOST_ROWS", 3)
    book = openpyxl.load_workbook(io.BytesIO(changes_xlsx(CHANGES)))
    assert [book[name].max_row for name in ("Prices", "Prices 2")] == [4, 2]


def test_the_csv_has_everything_that_happened_and_runs_nothing() -> None:
    rows = list(csv.DictReader(io.StringIO(changes_csv(CHANGES))))
    assert [row["What"] for row in rows] == [
        *("rose", "fell", "superseded", "sold differently", "vanished"),
        *["several under one number"] * 4,
    ]
    assert rows[3]["Description"] == f"'{HOSTILE}"
    assert (rows[0]["Net price before"], rows[0]["Net price now"], rows[0]["Change, %"]) == ("12.50", "14.00", "12.0")
    assert (rows[-1]["Row before"], rows[-1]["Row now"]) == ("", "4")


def test_an_empty_comparison_is_said_plainly() -> None:
    none = SheetChanges(
        supplier="larkmoor", before_offers=1, now_offers=1, unchanged=1, changed=(), vanished=(), appeared=(),
        several=(), counts=(),
    )  # fmt: skip
    text = changes_text(none)
    assert "No price rose." in text and "unchanged" in text and "Rose" not in text
