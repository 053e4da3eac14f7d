"""The owner's explanation: every figure on the paper is there, and what its words say comes to it."""

import re
from datetime import date
from decimal import ROUND_HALF_UP, Decimal
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.job import Customer, Job, JobFee
from sourcing.basics.quote import Explained, Quote
from sourcing.basics.settings import DepositRule, FeeRule, Supplies, Tax
from sourcing.quoting.bought import Bought
from sourcing.quoting.explain import explain
from tests.builders import door, flat, offer, usd
from tests.quoting.quoted import bought, job, need, quote

CENT = Decimal("0.01")
NUMBER = r"-?\d+(?:\.\d+)?"
DAY = date(2026, 1, 1)


def cents(amount: Decimal) -> Decimal:
    """Half up, away from zero at the tie."""
    return amount.quantize(CENT, rounding=ROUND_HALF_UP)


def worked_out(how: str) -> Decimal:
    """What the sum or product at the start of the words comes to: ' x ', ' % of ', ' + ' or ' - ' between figures."""
    capped = re.search(rf"(?:capped at list price|at most|raised to) ({NUMBER})[^=]*$", how)
    if capped:
        return Decimal(capped[1])
    percent = re.match(rf"({NUMBER}) % of \D*({NUMBER})", how)
    if percent:
        return cents(Decimal(percent[1]) * Decimal(percent[2]) / 100)
    product = re.match(rf"({NUMBER})(?: h)? x ({NUMBER})", how)
    if product:
        return cents(Decimal(product[1]) * Decimal(product[2]))
    total = re.match(rf"{NUMBER}(?: [+-] {NUMBER})*", how)
    assert total, how
    signs = re.findall(rf"([+-]?) ?({NUMBER})", total[0])
    return sum((-Decimal(value) if sign == "-" else Decimal(value) for sign, value in signs), Decimal(0))


def by_figure(found: Quote) -> dict[str, Explained]:
    """The explanations by the words of the figure; none stands there twice."""
    every = explain(found)
    named = {one.figure: one for one in every}
    assert len(named) == len(every)
    return named


BELT = offer("stonegarth", "NW-77120", "126.90", list_price=Decimal("189.50"), returnable=False)
KEEPER = offer("stonegarth", "NW-31207", "6.40", list_price=Decimal("13.50"))
DOORS = {"stonegarth": door("stonegarth", freight=flat("14.95"))}


def worked() -> Quote:
    """Belt and 1.5 h, a pick-up, freight; keepers as an add-on."""
    wanted = job(
        [need("Belt", "BELT", hours=Decimal("1.5"))],
        [need("Keepers", "KEEPER", 2, hours=Decimal("0.3"))],
        fees=(JobFee(name="Pick-up", amount=Decimal("35.00")),),
    )
    what = bought({"1": BELT, "A": KEEPER}, {"1": 1, "A": 2}, DOORS)
    return quote(wanted, what, deposit=DepositRule(percent=Decimal(50)))


def test_the_worked_days_figures_each_with_its_words() -> None:
    """Figures of the case: 177.66, 144.00, 7.20 supplies; 7 % on 192.61 is 13.48."""
    found = {one.figure: (str(one.amount.amount), one.how) for one in by_figure(worked()).values()}
    expected = {
        "1 Belt, each": ("177.66", "126.90 x 1.40"),
        "1 Belt, parts": ("177.66", "177.66 x 1"),
        "1 Belt, labour": ("144.00", "1.5 h x 96.00, rounded once"),
        "1 Belt, before tax": ("321.66", "177.66 + 144.00"),
        "2 Pick-up, fee": ("35.00", "35.00: as the job says"),
        "3 Inbound freight, freight": ("14.95", "14.95: what suppliers and carriers charge, at cost"),
        "agreed work, Shop supplies": ("7.20", "5 % of labour 144.00 USD"),
        "agreed work, fees": ("42.20", "35.00 + 7.20"),
        "agreed work, before tax": ("378.81", "177.66 + 14.95 + 144.00 + 42.20"),
        "agreed work, Sales tax": ("13.48", "7 % of 192.61 (parts, freight), rounded once"),
        "agreed work, with tax": ("392.29", "378.81 + 13.48"),
        # 25.60 + 28.80 + 1.44 supplies, tax 7 % of 218.21 is 15.27 (15.2747): 55.84 + 15.27 - 13.48.
        "A Keepers, agreed work with it": ("449.92", "434.65 + 15.27"),
        "A Keepers, with tax": ("57.63", "449.92 - 392.29: with it less without it"),
        "deposit, everything": ("88.83", "50 % of 177.66, rounded once: 50 % of the special-order parts before tax"),
        "deposit, agreed work": ("88.83", "50 % of 177.66, rounded once: 50 % of the special-order parts before tax"),
    }
    assert {figure: found[figure] for figure in expected} == expected


def test_a_price_capped_at_the_list_says_so() -> None:
    """71.25 x 1.55 is 110.44; the list says 109.00."""
    belt = offer("pellbrook", "CV-B880K", "71.25", list_price=Decimal("109.00"))
    one = by_figure(quote(job([need("Belt", "BELT")]), bought({"1": belt}, {"1": 1})))["1 Belt, each"]
    assert one.amount == usd("109.00") and one.how == "71.25 x 1.55 = 110.44, capped at list price 109.00"


def test_no_tax_for_a_customer_free_of_it_is_explained() -> None:
    """With the certificate's words."""
    parish = Customer(name="Parish of Wickenby", tax_exempt=True, exempt_because="certificate 88-2 of the county")
    found = by_figure(quote(job([need("Look", hours=Decimal(1))], customer=parish), bought({}, {})))
    tax = found["agreed work, tax"]
    assert tax.amount == usd("0.00") and "certificate 88-2 of the county" in tax.how


money = st.decimals(Decimal("0.01"), Decimal("400.00"), places=2)
hours = st.decimals(Decimal(0), Decimal(6), places=2)


@st.composite
def jobs(draw: st.DrawFn) -> tuple[Job, Bought]:
    """One to four agreed lines, up to four add-ons, some with parts, some flat, a fee or none."""
    count, extra = draw(st.integers(1, 4)), draw(st.integers(0, 4))
    labels = [*(str(at) for at in range(1, count + 1)), *(chr(65 + at) for at in range(extra))]
    offers, pieces, lines = {}, {}, []
    for label in labels:
        pieces[label] = draw(st.integers(1, 5)) if draw(st.booleans()) else 0
        part = f"P{label}" if pieces[label] else ""
        work = {"hours": draw(hours), "labour_flat": draw(st.none() | money)}
        lines.append(need(f"Line {label}", part, pieces[label], **work))
        if part:
            said = {"list_price": draw(st.none() | money), "returnable": draw(st.sampled_from((True, False, None)))}
            seller = draw(st.sampled_from(("stonegarth", "larkmoor")))
            offers[label] = offer(seller, f"N-{label}", str(draw(money)), **said)
    fees = tuple(JobFee(name="Pick-up", amount=draw(money)) for _ in range(draw(st.integers(0, 1))))
    return job(lines[:count], lines[count:], fees=fees), bought(offers, pieces)


SHOP: dict[str, Any] = {
    "supplies": Supplies(percent_of_labour=Decimal(5), most=Decimal("12.00")),
    "fee_rules": (FeeRule(name="Old oil", of="document", charge=Decimal("4.50"), starts_on=DAY),),
    "deposit": DepositRule(percent=Decimal("33.3"), of="parts", from_amount=Decimal("20.00")),
    "taxes": (
        Tax(name="State tax", percent=Decimal("6.5"), on=("parts", "freight"), starts_on=DAY),
        Tax(name="City tax", percent=Decimal("0.75"), on=("parts", "labour", "fees"), starts_on=DAY),
    ),
}


@given(jobs())
def test_what_the_words_say_comes_to_the_figure(drawn: tuple[Job, Bought]) -> None:
    """Every figure but fees told by words alone, recomputed from its own words to the cent."""
    wanted, what = drawn
    for one in explain(quote(wanted, what, **SHOP)):
        if "once for the document" not in one.how:
            assert worked_out(one.how) == one.amount.amount, one


@given(jobs())
def test_every_figure_on_the_paper_is_explained(drawn: tuple[Job, Bought]) -> None:
    """Prices of lines, sums, taxes, totals, add-ons, deposit: each amount stands among the explained ones."""
    wanted, what = drawn
    found = quote(wanted, what, **SHOP)
    told = {one.figure: one.amount for one in explain(found)}
    for line in found.lines:
        own = [amount for figure, amount in told.items() if figure.startswith(f"{line.label} {line.title},")]
        assert line.price in own
        assert not line.part or line.unit_price in own
        assert not line.labour_price.amount or line.labour_price in own
    for name, document in (("agreed work", found.agreed_total), ("everything", found.everything_total)):
        assert told[f"{name}, with tax"] == document.total and told[f"{name}, before tax"] == document.before_tax
        for tax in document.taxes:
            assert told[f"{name}, {tax.name}"] == tax.amount
        for fee in document.fees:
            assert told[f"{name}, {fee.name}"] == fee.amount
    for price in found.add_on_prices:
        line_of = next(line for line in found.lines if line.label == price.label)
        assert told[f"{price.label} {line_of.title}, with tax"] == price.price
    if found.deposit:
        assert told["deposit, everything"] == found.deposit.everything
