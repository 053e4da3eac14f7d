"""The claim as the supplier reads it, and the list of what goes back: hostile text stays text, blanks stay blank."""

import io
from datetime import date, datetime
from decimal import Decimal

import openpyxl

from sourcing.basics.claim import Claim, GoodsBackOpen
from sourcing.basics.order import Difference
from sourcing.basics.value import changed
from sourcing.documents.claims import claim_csv, claim_html, claim_text, claim_xlsx
from sourcing.documents.goods_back import going_back_text, going_back_xlsx
from tests.builders import usd

DAMAGED = Difference(
    order="PO-2026-0001", line=2, what="=NW-1: 1 <b>damaged</b>", amount=usd("6.20"), kind="damaged", paper="DN-1"
)
SHORT = changed(DAMAGED, kind="short", what="NW-1: 3 charged, 2 came")
CHEAPER = changed(DAMAGED, kind="price", what="NW-2: charged less", amount=usd("-1.00"))
UNCLEAR = changed(DAMAGED, kind="total", line=None, what="paper DN-1 says more", amount=usd("3.00"))
CLAIM = Claim(
    order="PO-2026-0001",
    ordered_on=date(2026, 3, 2),
    supplier_name="Stonegarth Trade Parts",
    supplier_address=("9 Quarry Road",),
    shop_name="Wickenby Yard Machine Repair",
    shop_address=("14 Millrace Lane",),
    shop_telephone="555-0117",
    shop_email="",
    currency="USD",
    made_at=datetime(2026, 3, 6, 9, 0),
    made_by="Oona Brandeth",
    lines=(DAMAGED, SHORT),
    told=(CHEAPER, UNCLEAR),
    claimed=usd("12.40"),
    credited=usd("0.00"),
)
WAITS = GoodsBackOpen(
    order="PO-2026-0001",
    line=3,
    job="2026-0001",
    kind="core",
    waits="to be sent",
    pieces=1,
    supplier="stonegarth",
    supplier_name="Stonegarth Trade Parts",
    number="NW-60031",
    why="old part",
    since=date(2026, 3, 4),
    due=date(2026, 4, 3),
    expected=usd("25.00"),
)


def test_each_thing_asked_is_asked_once_and_only_of_what_there_is() -> None:
    text = claim_text(changed(CLAIM, lines=(DAMAGED, DAMAGED)))
    assert text.count("Damaged pieces: please") == 1
    assert "Missing" not in text and "Total: please" in text
    assert "Prices: please" not in text  # he charged less: nothing is asked for it


def test_what_was_credited_is_taken_off_on_every_paper() -> None:
    made = changed(CLAIM, credited=usd("6.20"))
    for paper in (claim_text(made), claim_html(made)):
        assert "Credited so far" in paper and "Still claimed" in paper and "6.20 USD" in paper
    assert "Credited" not in claim_text(CLAIM) and "Credited" not in claim_html(CLAIM)


def test_text_from_outside_stays_text() -> None:
    """On the page, in the table and in the workbook."""
    assert "1 &lt;b&gt;damaged&lt;/b&gt;" in claim_html(CLAIM)
    assert '"\'=NW-1: 1 <b>damaged</b>"' in claim_csv(CLAIM)
    sheet = openpyxl.load_workbook(io.BytesIO(claim_xlsx(CLAIM))).worksheets[0]
    cell = sheet["D2"]
    assert (cell.data_type, cell.quotePrefix) == ("s", True)
    assert [row[4].value for row in sheet.iter_rows(min_row=2)] == [6.2, 6.2, -1, 3]  # only to compare


def test_a_claim_needs_nothing_from_outside() -> None:
    """No script, no address, no picture of another machine."""
    page = claim_html(CLAIM)
    assert not any(word in page for word in ("<script", "http", "src=", "url("))


def test_the_list_says_what_is_over_and_what_is_not_known() -> None:
    over = going_back_text([WAITS], date(2026, 4, 5))
    assert "2 days" in over and "over" in over
    assert "over" not in going_back_text([WAITS], date(2026, 4, 3))
    text = going_back_text([changed(WAITS, due=None, expected=None)], date(2026, 4, 5))
    assert "not said" in text and "not known" in text and "0.00" not in text
    fee = going_back_text([changed(WAITS, kind="goods", fee=usd("1.50"), expected=usd("8.50"))], date(2026, 3, 5))
    assert "8.50 USD" in fee and "1.50" in fee


def test_what_is_not_known_is_blank_in_the_workbook() -> None:
    found = [WAITS, changed(WAITS, due=None, expected=None)]
    sheet = openpyxl.load_workbook(io.BytesIO(going_back_xlsx(found))).worksheets[0]
    header = [cell.value for cell in sheet[1]]
    known, unknown = (
        {name: cell.value for name, cell in zip(header, row, strict=True)} for row in (sheet[2], sheet[3])
    )
    assert Decimal(str(known["Expected"])) == 25 and known["Last day"] == datetime(2026, 4, 3)
    assert unknown["Expected"] is unknown["Last day"] is unknown["Fee"] is None
