"""The owner's papers of a quote: everything in them, and harmless whatever the job's words are."""

import io
from decimal import Decimal

import openpyxl

from sourcing.basics.margin import Margin
from sourcing.basics.owners_quote import CheckedQuote, LineEarns, OwnersQuote
from sourcing.basics.quote import Explained, FrozenQuote
from sourcing.basics.value import changed
from sourcing.documents.quote_explained import checked_text, owners_text, owners_xlsx
from tests.documents.values import QUOTE, usd

MARGIN = Margin(
    price=usd("177.66"),
    cost=usd("126.90"),
    earned=usd("50.76"),
    margin_percent=Decimal("28.57"),
    markup_percent=Decimal("40.00"),
)
LINE = LineEarns(
    label="1", title="Belt", supplier_name="Stonegarth", supplier_number="NW-1", margin=MARGIN, under_floor=True
)
OWNERS = OwnersQuote(
    frozen=FrozenQuote(quote=QUOTE, paper="", sha256=""),
    lines=(LINE,),
    agreed=MARGIN,
    everything=changed(MARGIN, margin_percent=None),
    floor_percent=Decimal(30),
    explained=(Explained(figure="1 Belt, each", amount=usd("177.66"), how="126.90 x 1.40"),),
)


def test_margin_and_markup_stand_together_with_their_words() -> None:
    """In every row, and a margin that has no base says so."""
    text = owners_text(OWNERS)
    head = next(row for row in text.splitlines() if row.startswith("part "))
    assert "margin" in head and "markup" in head
    rows = [row for row in text.splitlines() if "126.90" in row and "177.66" in row]
    assert len([row for row in rows if "40.00 %" in row]) == 3
    assert len([row for row in rows if "none" in row]) == 1
    assert "1 Belt (under the floor)" in text and "floor 30 % on price" in text


def test_warnings_stand_first_and_the_paper_says_whom_it_is_for() -> None:
    """Before any table."""
    lines = owners_text(OWNERS).splitlines()
    assert lines[0].endswith("for the owner, never for the customer")
    assert lines[1].startswith("Mind: B: margin 18 % is under the floor")


def test_without_add_ons_there_is_no_sum_of_everything() -> None:
    """Agreed work alone."""
    agreed = tuple(line for line in QUOTE.lines if line.kind == "agreed")
    bare = changed(OWNERS, frozen=changed(OWNERS.frozen, quote=changed(QUOTE, lines=agreed)))
    assert "everything, with freight" in owners_text(OWNERS)
    assert "everything, with freight" not in owners_text(bare)


def test_the_workbook_has_amounts_as_numbers_and_text_as_text() -> None:
    """A title that begins like a formula stays text."""
    hostile = changed(OWNERS, lines=(changed(LINE, title="=1+1"),))
    book = openpyxl.load_workbook(io.BytesIO(owners_xlsx(hostile)))
    assert book.sheetnames == ["Figures", "Earned", "Mind"]
    figures, earned = list(book["Figures"].values), list(book["Earned"].values)
    assert figures[1] == ("1 Belt, each", 177.66, "USD", "126.90 x 1.40")
    assert earned[1][:5] == ("1", "=1+1", "Stonegarth", "NW-1", 177.66) and earned[1][-1] == "yes"
    assert book["Earned"]["B2"].data_type == "s"


def test_a_check_tells_its_changes_and_that_nothing_was_written() -> None:
    """First quote, the same, changed."""
    one = CheckedQuote(
        now=changed(QUOTE, revision=3),
        last=QUOTE,
        same=False,
        changes=("line 1 is dearer",),
        warnings=("thin",),
        notes=("elsewhere",),
    )
    text = checked_text(one)
    assert text.splitlines()[0] == "Revision 3 of job 2026-0001 would differ from revision 2:"
    assert "- line 1 is dearer" in text and "For the owner: thin\nFor the owner: elsewhere\n" in text
    assert text.endswith("Nothing was written.\n")
    assert "says what a new one would say" in checked_text(changed(one, same=True, changes=()))
    assert "has no quote yet; the first would come to 314.47 USD" in checked_text(changed(one, last=None))
