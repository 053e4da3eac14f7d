"""The final paper: its figures are the bill's, it is one sound page, and it holds nothing of the owner's side."""

import io
from collections.abc import Iterator
from itertools import pairwise

import pytest

from sourcing.basics.bill import Bill, LeftOut
from sourcing.basics.job import Customer, Finding, Machine
from sourcing.basics.settings import Shop
from sourcing.basics.value import changed
from sourcing.documents.amounts import money_text
from sourcing.documents.bill_paper import bill_html, bill_pdf, bill_text, due_row, glance, occasions, sum_rows
from sourcing.quoting.bill import make_bill
from tests.builders import usd
from tests.documents.html_reader import Page
from tests.documents.values import BEHIND, HOSTILE, OWNERS_WORDS
from tests.quoting.bill_values import FRIDAY, LINES, RULES, answer, deposit, line, made, quote

PAID = (deposit("113.10"), deposit("-13.10", "card"))
LEFT = LeftOut(labels=("B",), words="The idler came with another bore and went back.")


def full_bill() -> Bill:
    """A bill with everything on it: declined, not done, paid ahead, findings."""
    of = changed(
        quote(*(changed(one, behind=BEHIND) for one in LINES)),
        findings=(Finding(what="Keepers are bent.", photos=("IMG_2041.jpg",)),),
    )
    return make_bill(made(of, deposits=PAID, left_out=LEFT), "B-2026-0001", FRIDAY, "Oona Brandeth")


BILL = full_bill()
PLAIN = make_bill(made(), "B-2026-0001", FRIDAY, "Oona Brandeth")


def figures(bill: Bill) -> Iterator[str]:
    """Every figure that must be on the paper, as it is written."""
    for one in bill.lines:
        yield money_text(one.price, bill.locale)
    for _, amount in sum_rows(bill):
        yield money_text(amount, bill.locale)
    for tax in bill.total.taxes:
        yield money_text(tax.amount, bill.locale)
    yield money_text(bill.total.total, bill.locale)
    for kept in bill.deposits:
        yield money_text(-kept.amount, bill.locale)
    for declined in bill.declined:
        yield money_text(declined.offered, bill.locale)
        yield money_text(declined.offered_with_tax, bill.locale)


def test_every_figure_of_the_bill_is_on_the_page() -> None:
    """Lines, sums, tax, total, money paid and given back, what was offered, what is left."""
    text = Page(bill_html(BILL)).text
    for figure in figures(BILL):
        assert figure in text
    assert "Left to pay: $252.11." in text
    assert "$413.19" in Page(bill_html(PLAIN)).text


def test_the_sums_shown_add_up_to_the_total_before_tax() -> None:
    """Fees of the job on lines of their own are not counted twice."""
    fee = line("3", "Fetching the machine", fee_price=usd("25.00"))
    bill = make_bill(made(quote(*LINES[:2], fee), no=""), "B-2026-0001", FRIDAY, "Oona Brandeth")
    rows = dict(sum_rows(bill))
    assert rows["Fees of this job"] == usd("25.00") and rows["Shop supplies"] == usd("7.20")
    assert sum(amount.minor() for _, amount in sum_rows(bill)) == bill.total.before_tax.minor()
    untold = changed(bill, total=changed(bill.total, fees=()))
    assert dict(sum_rows(untold))["Shop supplies and fees"] == usd("7.20"), "kept before fees were told apart"


def test_declined_work_stands_with_price_word_and_risk() -> None:
    """What a later reader needs to know: it was offered, and the customer said no."""
    text = Page(bill_html(BILL)).text
    assert "Line C: Bar" in text
    assert "Offered at $147.20 before tax, which would have added $156.54 to the total." in text
    assert "Declined by Greta Lindqvare on Mar 4, 2026 at 11:20." in text and "Leave the bar for the spring." in text
    assert "The housing wears until it is replaced." in text


def test_work_approved_and_not_done_says_why() -> None:
    """It is not among the work done."""
    text = Page(bill_html(BILL)).text
    done, rest = text.split("What it comes to")
    assert "Idler" not in done and "another bore and went back" in rest


def test_who_said_yes_is_told_once_for_each_occasion() -> None:
    """Lines of one telephone call stand together; another word stands alone."""
    assert [one.labels for one in occasions(PLAIN)] == ["1, 2, A, B, D"]
    of = made()
    alone = answer(LINES[0], revision=1, how="in person", words="Yes please.")
    bill = make_bill(
        changed(of, holding={**of.holding, "1": alone}, answered={**of.answered, 1: quote(revision=1)}),
        "B-2026-0001", FRIDAY, "Oona Brandeth",
    )  # fmt: skip
    assert [one.labels for one in occasions(bill)] == ["1", "2, A, B, D"]
    text = Page(bill_html(bill)).text
    assert "in person" in text and "Yes please." in text and "telephone, 555-0142; quote revision 2" in text


@pytest.mark.parametrize("words", OWNERS_WORDS)
def test_nothing_of_the_owners_side(words: str) -> None:
    """Neither on the page nor in the text, nor in the value they are made from."""
    assert words not in Page(bill_html(BILL)).text and words not in bill_text(BILL)
    assert all(one.behind is None for one in BILL.lines)


@pytest.mark.parametrize(
    ("paid", "row", "sentence"),
    [
        ("100.00", ("Left to pay", "313.19"), "Left to pay: $313.19."),
        ("413.19", ("Left to pay", "0.00"), "Nothing is left to pay."),
        ("500.00", ("We owe you", "86.81"), "We owe you: $86.81."),
    ],
)
def test_what_is_due_is_said_without_a_minus(paid: str, row: tuple[str, str], sentence: str) -> None:
    """A tired reader takes -86.81 for a debt."""
    bill = make_bill(made(deposits=(deposit(paid),)), "B-2026-0001", FRIDAY, "Oona Brandeth")
    assert due_row(bill) == (row[0], usd(row[1])) and glance(bill) == sentence


def test_the_page_is_sound() -> None:
    """One heading of the first rank, none skipped; a caption for every table; nothing fetched; language named."""
    for bill in (BILL, PLAIN, nothing_done()):
        page = Page(bill_html(bill))
        ranks = [rank for rank, _ in page.headings]
        assert ranks.count(1) == 1 and ranks[0] == 1
        assert all(after - before <= 1 for before, after in pairwise(ranks))
        assert len(page.all("caption")) == len(page.all("table"))
        assert page.all("html")[0]["lang"] == "en-US" and not page.all("script", "link", "img", "input", "form")


def nothing_done() -> Bill:
    """Every line declined, no terms, no cautions, no tax."""
    of = changed(quote(rules=changed(RULES, taxes=())), terms_text=(), cautions=(), shop=Shop(name="Wickenby"))
    return make_bill(made(of, no="12ABCD"), "B-2026-0001", FRIDAY, "Oona Brandeth")


def test_a_bill_of_nothing_says_so() -> None:
    """And that no tax is charged, and nothing is left to pay."""
    text = Page(bill_html(nothing_done())).text
    assert "No work was done, and none is billed." in text and "Nothing is left to pay." in text
    assert "No tax is charged." in text and "Who said yes" not in text and "Terms" not in text


def test_an_exempt_customer_reads_why() -> None:
    """In the words of the certificate, on page and text."""
    of = quote(rules=changed(RULES, tax_exempt=True))
    of = changed(of, customer=Customer(name="Greta Lindqvare", exempt_because="Farm certificate 17."))
    bill = make_bill(made(of), "B-2026-0001", FRIDAY, "Oona Brandeth")
    assert "No tax is charged: Farm certificate 17." in Page(bill_html(bill)).text
    assert "No tax is charged: Farm certificate 17." in bill_text(bill)


def test_hostile_words_stay_words() -> None:
    """Markup, turned directions and terminal codes in every field a person fills."""
    declined = changed(BILL.declined[0], title=HOSTILE, words=HOSTILE, who=HOSTILE, if_declined=HOSTILE)
    bill = changed(
        BILL,
        shop=Shop(name=HOSTILE, address=(HOSTILE,), telephone=HOSTILE, email=HOSTILE),
        customer=Customer(name=HOSTILE, telephone=HOSTILE, address=(HOSTILE,)),
        machine=Machine(description=HOSTILE, maker=HOSTILE, component_serial=HOSTILE),
        complaint=HOSTILE,
        findings=(Finding(what=HOSTILE, photos=(HOSTILE,)),),
        lines=tuple(changed(one, title=HOSTILE, number=HOSTILE, description=HOSTILE) for one in BILL.lines),
        declined=(declined,),
        approvals=tuple(changed(one, who=HOSTILE, words=HOSTILE, contact=HOSTILE) for one in BILL.approvals),
        not_done=(changed(BILL.not_done[0], title=HOSTILE, words=HOSTILE),),
        deposits=(changed(BILL.deposits[0], how=HOSTILE),),
        terms_text=(HOSTILE,),
        cautions=(HOSTILE,),
    )
    html = bill_html(bill)
    page = Page(html)
    assert not page.all("script") and "\u202e" not in html and "\x1b" not in html
    text = bill_text(bill)
    assert "\u202e" not in text and "\x1b" not in text and "\nTotal 0.00" not in text


def test_the_same_bill_gives_the_same_bytes() -> None:
    """No clock, no random names."""
    assert bill_html(BILL) == bill_html(full_bill())


def test_the_pdf_says_what_the_page_says() -> None:
    """Every figure, in the same order, on the paper of the shop's country."""
    pypdf = pytest.importorskip("pypdf")
    pytest.importorskip("plutoprint")
    html = bill_html(BILL)
    read = pypdf.PdfReader(io.BytesIO(bill_pdf(BILL, html)))
    text = " ".join(" ".join(page.extract_text() for page in read.pages).split())
    at = 0
    for figure in [money_text(one.price, "en_US") for one in BILL.lines] + ["$352.11", "$252.11", "$147.20"]:
        assert figure in text[at:], figure
        at = text.index(figure, at)
    box = read.pages[0].mediabox
    assert (round(box.width), round(box.height)) == (612, 792)  # US letter in points: 8.5 x 11 in, 72 to the inch


def test_the_text_is_short_and_whole() -> None:
    """For a screen or a message: lines, tax, total, deposits, what is due, what was declined, what was not done."""
    assert bill_text(BILL).splitlines() == [
        "Wickenby Yard Machine Repair: bill B-2026-0001 for job 2026-0001",
        "Greta Lindqvare: snow thrower",
        "",
        "Work done (before tax)",
        "  1  Belt: $253.00",
        "  2  Inbound freight: $9.95",
        "  A  Keepers: $54.40",
        "  D  Freight for the extra parts: $14.95",
        "  Shop supplies: $8.64",
        "  Sales tax, 7 % of $159.50: $11.17",
        "  Total: $352.11",
        "  Deposit paid on Mar 2, 2026, cash: -$113.10",
        "  Deposit given back on Mar 2, 2026, card: $13.10",
        "  Left to pay: $252.11",
        "",
        "Work you declined, not done",
        "  C  Bar: offered at $147.20 before tax, $156.54 in all",
        '     Greta Lindqvare, Mar 4, 2026: "Leave the bar for the spring."',
        "     The housing wears until it is replaced.",
        "",
        "Approved, not done and not billed",
        "  B  Idler: The idler came with another bore and went back.",
    ]
