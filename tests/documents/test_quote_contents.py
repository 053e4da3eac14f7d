"""What a quote may hold beside the usual: fees, flat labour, special orders, deposits, tolerance, no tax, any paper."""

from datetime import date
from decimal import Decimal
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.money import Money, total
from sourcing.basics.quote import DepositAsked
from sourcing.basics.settings import ChargeRules, FeeRule, Supplies, Tax, Tolerance
from sourcing.basics.value import changed
from sourcing.documents.quote_paper import for_customer, quote_html, quote_text
from sourcing.documents.quote_words import line_rows, tax_rows, total_rows
from sourcing.quoting.totals import document_total
from tests.documents.html_reader import Page
from tests.documents.quote_values import exempt_quote, rich_quote, wide_words_quote
from tests.documents.values import QUOTE, line, usd


def test_everything_a_quote_can_hold_is_on_the_paper() -> None:
    text = Page(quote_html(rich_quote())).text
    for words in (
        "Both belt keepers are bent. (seen on Jan 11, 2026) Photo: keeper-left.jpg The chute turns hard.",
        "Address 3 Quarry Row, Wickenby Telephone 555 0187 Text messages 555 0188", "May also say yes Oona Brandeth",
        "with Ostrevik auger drive AD-3 ; its maker Ostrevik ; its model AD-3 ; its serial OS-204",
        "You want it back by Jan 15, 2026; the parts may come too late for this day",
        "Labour, flat price $120.00", "Labour, 0.25 h at $96.00 $24.00", "Line 2: Fetch the machine You asked us",
        "Fee, before tax $25.00", "Photos: keeper-left.jpg , keeper-right.jpg", "Ordered specially for you.",
        "It can go back within 14 days", "20 % of its price is kept",
        "Your old belt goes back. Ask us if you want to keep it.",
        "Your old parts go back. Ask us if you want to keep them. Local rules come first.",
        "Fees on lines of their own $25.00 Shop supplies $6.00 Disposal of the old belt $3.50 Before tax $333.60",
        "Shop supplies $7.20 Disposal of the old belt $3.50 Before tax $392.60 Sales tax, 6.5 % of $200.40 $13.03",
        "we ask for $83.30 for the work you asked for, or $90.00 with all the extra work. That is 50 % of the special",
        "A line may cost more by up to 2 % of the line, and by no more than $5.00, without our asking again",
        "covers the work and the part number printed there, at the price printed there, if you give it by Jan 19, 2026",
        "What the rules of your place may ask Ask us to give you back", "does not claim to know them all",
        "Conditions, if any", "Who else may say yes for you", "No answer is not a yes",
    ):  # fmt: skip
        assert words in text, words


@pytest.mark.parametrize(("lines", "words"), [(("A",), "Freight for line A,"), (("A", "C"), "Freight for lines A, C,")])
def test_freight_says_which_lines_it_is_for(lines: tuple[str, ...], words: str) -> None:
    freight = changed(QUOTE.lines[2], freight_for=lines)
    assert f"{words} before tax $12.50" in Page(quote_html(changed(QUOTE, lines=(freight, *QUOTE.lines[3:])))).text


def test_how_a_fee_came_is_the_owners_own() -> None:
    assert "the owner's own words" in repr(rich_quote())
    assert "own words" not in quote_html(rich_quote()) + quote_text(rich_quote())
    assert "own words" not in repr(for_customer(rich_quote())), "no template could print it"


def test_a_customer_free_of_tax_is_told_why_and_no_word_speaks_of_tax_in_an_amount() -> None:
    text = Page(quote_html(exempt_quote())).text
    assert "No tax is charged: township of Wickenby, certificate 4471" in text
    assert "Tax none charged Total $303.36" in text and "with tax" not in text and "before tax" not in text.casefold()
    assert "with tax" not in quote_text(exempt_quote())


def test_fees_of_a_quote_kept_before_they_were_told_apart_are_printed_in_one() -> None:
    sums = tuple((kind, usd("7.20") if kind == "fees" else amount) for kind, amount in QUOTE.agreed_total.sums)
    html = quote_html(changed(QUOTE, agreed_total=changed(QUOTE.agreed_total, sums=sums)))
    assert "Shop supplies and fees $7.20" in Page(html).text


def test_a_special_order_without_terms_sends_the_customer_asking() -> None:
    bare = tuple(changed(one, special_order=True) for one in QUOTE.lines)
    assert "Ask us before you say yes whether it can go back." in Page(quote_html(changed(QUOTE, lines=bare))).text


def test_a_line_that_costs_nothing_says_so() -> None:
    free = changed(QUOTE, lines=(*QUOTE.lines[:2], line("3", "Look it over", "0.00", 0), *QUOTE.lines[3:]))
    assert "No charge, before tax $0.00" in Page(quote_html(free)).text


@pytest.mark.parametrize(
    ("deposit", "words"),
    [
        (("50.00", "50.00"), "Before we order we ask for $50.00. That is half . It is part of the total"),
        (("0.00", "80.00"), "For the work you asked for we ask for nothing before we order; with all the extra work"),
    ],
)
def test_the_deposit_in_words(deposit: tuple[str, str], words: str) -> None:
    asked = DepositAsked(agreed=usd(deposit[0]), everything=usd(deposit[1]), rule="half")
    assert words in Page(quote_html(changed(QUOTE, deposit=asked))).text


def test_no_deposit_no_word_of_one() -> None:
    assert "eposit" not in Page(quote_html(QUOTE)).text


@pytest.mark.parametrize(
    ("tolerance", "words"),
    [
        (Tolerance(), "Anything else, such as a higher price or another part number, is asked anew."),
        (Tolerance(percent=Decimal(10)), "cost more by up to 10 % of the line without"),
        (Tolerance(amount=Decimal(5)), "cost more by up to $5.00 without"),
    ],
)
def test_how_far_a_price_may_rise_is_told(tolerance: Tolerance, words: str) -> None:
    assert words in Page(quote_html(changed(QUOTE, tolerance=tolerance))).text


@pytest.mark.parametrize(
    ("said", "locale", "size"),
    [
        ("", "en_US", "letter"), ("", "en_CA", "letter"), ("", "es_MX", "letter"), ("", "en_GB", "A4"),
        ("", "de_DE", "A4"), ("", "en", "A4"), ("A4", "en_US", "A4"), ("letter", "en_GB", "letter"),
    ],
)  # fmt: skip
def test_the_size_of_the_paper(said: Literal["", "letter", "A4"], locale: str, size: str) -> None:
    """Letter in the territories of CLDR's paperSize 'US-Letter' (from memory)."""
    assert f"@page {{ size: {size};" in Page(quote_html(changed(QUOTE, paper_size=said, locale=locale))).css


def test_a_name_from_right_to_left_does_not_turn_what_stands_beside_it() -> None:
    html = quote_html(wide_words_quote())
    assert "<dt>Customer</dt><dd><bdi>مها الطويل</bdi></dd>" in html  # HTML Living Standard, the bdi element
    assert "<bdi>توقف المثقاب عن الدوران</bdi>" in html


money = st.integers(0, 10**7).map(lambda cents: usd(str(Decimal(cents).scaleb(-2))))


@given(each=money, labour=money, freight=money, fee=st.none() | money, quantity=st.integers(0, 9))
def test_the_rows_of_a_line_add_up_to_its_price(
    each: Money, labour: Money, freight: Money, fee: Money | None, quantity: int
) -> None:
    one = changed(
        line("1", "Work", str(each.amount), quantity), labour_price=labour, freight_price=freight, fee_price=fee
    )
    assert total((amount for _, amount in line_rows(one, "en_US")), "USD") == one.price


@given(
    prices=st.lists(st.tuples(money, money, money, st.none() | money), min_size=1, max_size=5),
    supplies=st.none() | st.just(Supplies(percent_of_labour=Decimal(5), most=Decimal(12))),
    disposal=st.sampled_from(["0", "3.50"]),
)
def test_the_rows_of_a_total_add_up_to_it(
    prices: list[tuple[Money, Money, Money, Money | None]], supplies: Supplies | None, disposal: str
) -> None:
    lines = tuple(
        changed(line(str(at), "Work", str(part.amount)), labour_price=labour, freight_price=freight, fee_price=fee)
        for at, (part, labour, freight, fee) in enumerate(prices, 1)
    )
    day = date(2026, 1, 1)
    tax = Tax(name="Sales tax", percent=Decimal("6.5"), on=("parts", "fees"), starts_on=day)
    fee_rule = FeeRule(name="Disposal", of="document", starts_on=day, charge=Decimal(disposal))
    made = document_total(lines, ChargeRules(taxes=(tax,), supplies=supplies, fee_rules=(fee_rule,)), day, "USD")
    quote = changed(QUOTE, lines=lines, add_on_prices=())
    assert total((amount for _, amount in total_rows(made, quote)), "USD") == made.before_tax
    assert made.before_tax + total((amount for _, amount in tax_rows(made, "en_US")), "USD") == made.total
