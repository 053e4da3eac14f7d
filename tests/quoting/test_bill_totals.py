"""A bill's sums against outside rules and published invoices: EN 16931 recomputed in whole cents."""

from decimal import Decimal
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.approval import AnswerWord
from sourcing.basics.bill import Bill
from sourcing.basics.settings import ChargeRules
from sourcing.basics.value import changed
from sourcing.quoting.bill import Billed, make_bill
from tests.builders import usd
from tests.quoting.bill_values import FRIDAY, RULES, answer, deposit, line, made, quote


def bill_of(of: Billed) -> Bill:
    """The bill written on Friday."""
    return make_bill(of, "B-2026-0001", FRIDAY, "Oona Brandeth")


CENTS = st.integers(0, 50_000)


@given(
    prices=st.lists(st.tuples(CENTS, st.integers(0, 3), st.integers(0, 40)), min_size=1, max_size=8),
    words=st.lists(st.sampled_from(["approved", "declined"]), min_size=8, max_size=8),
    paid=st.lists(st.integers(-9_000, 90_000), max_size=3),
    percent=st.decimals(0, 25, places=3),
)
def test_a_bill_adds_up_by_en_16931(
    prices: list[tuple[int, int, int]], words: list[AnswerWord], paid: list[int], percent: Decimal
) -> None:
    """Recomputed with whole cents from the lines, rule by rule of EN 16931-1:2017 (names as in its business rules).

    BR-CO-10 sum of line amounts; BR-CO-13 total before tax is lines plus charges; BR-CO-14 tax total is the sum of
    taxes; BR-CO-15 total with tax; BR-CO-16 due is the total less what was paid; BR-CO-17 a tax is its base times the
    per cent, rounded to two decimals once.
    """
    lines = [
        line(str(at), f"Work {at}", str(Decimal(cents) / 100), pieces, str(Decimal(tenths) / 10))
        for at, (cents, pieces, tenths) in enumerate(prices, 1)
    ]
    tax = changed(RULES.taxes[0], percent=percent)
    of = quote(*lines, rules=changed(RULES, taxes=(tax,)))
    holding = {one.label: answer(one, word) for one, word in zip(of.lines, words, strict=False)}
    kept = tuple(deposit(str(Decimal(cents) / 100)) for cents in paid)
    found = bill_of(made(of, holding=holding, deposits=kept))

    billed = [one for one in of.lines if holding[one.label].answer == "approved"]
    sums = dict(found.total.sums)
    of_lines = sums["parts"] + sums["freight"] + sums["labour"]
    assert of_lines.minor() == sum(one.price.minor() for one in billed)  # BR-CO-10
    assert found.total.before_tax.minor() == of_lines.minor() + sums["fees"].minor()  # BR-CO-13
    (charged,) = found.total.taxes
    base = sum(one.parts_price.minor() + one.freight_price.minor() for one in billed)
    exact = Decimal(base) * percent / 100
    assert charged.taxable.minor() == base
    assert abs(charged.amount.minor() - exact) <= Decimal("0.5")  # BR-CO-17
    assert charged.amount.minor() == int(exact + Decimal("0.5"))  # a tie goes up
    assert found.total.total.minor() == found.total.before_tax.minor() + charged.amount.minor()  # BR-CO-14, BR-CO-15
    assert found.due.minor() == found.total.total.minor() - sum(paid)  # BR-CO-16


# Totals published with the example invoices of the EN 16931 validation artefacts and of OASIS UBL 2.1 (figures only):
# each tax's base with its per cent and amount, the total before and with tax, what was prepaid, what is payable. Those
# with allowances and charges on the document are given by the bases that follow from them. Example 1 and 8 stand in
# test_pricing_and_totals.py. The UBL 2.1 example rounds what is payable by 0.30, which the shop's bills do not: its 729
# is 728.70 here before that rounding.
PUBLISHED: list[tuple[str, list[tuple[str, str, str]], str, str, str, str]] = [
    ("EN example 2, NOK", [("1460.50", "25", "365.13"), ("1.00", "15", "0.15"), ("-25.00", "0", "0.00")],
     "1436.50", "1801.78", "1000.00", "801.78"),
    ("EN example 3, DKK", [("900.00", "25", "225.00"), ("800.00", "10", "80.00")],
     "1700.00", "2005.00", "0", "2005.00"),
    ("EN example 4, DKK", [("1500.00", "25", "375.00"), ("2500.00", "12", "300.00")],
     "4000.00", "4675.00", "0", "4675.00"),
    ("EN example 5, DKK", [("1500.00", "25", "375.00"), ("2500.00", "12", "300.00")],
     "4000.00", "4675.00", "2337.50", "2337.50"),
    ("EN example 9, EUR", [("147.00", "21", "30.87")], "147.00", "177.87", "0", "177.87"),
    ("EN discount example, EUR", [("12.12", "25", "3.03")], "12.12", "15.15", "0", "15.15"),
    ("UBL 2.1 example, EUR", [("1460.50", "20", "292.10"), ("1.00", "10", "0.10"), ("-25.00", "0", "0.00")],
     "1436.50", "1728.70", "1000.00", "728.70"),
]  # fmt: skip
KINDS: tuple[Any, ...] = ("parts", "freight", "labour")


@pytest.mark.parametrize(("name", "bases", "before", "with_tax", "prepaid", "payable"), PUBLISHED)
def test_published_totals_come_out_on_a_bill(
    name: str, bases: list[tuple[str, str, str]], before: str, with_tax: str, prepaid: str, payable: str
) -> None:
    """Each rate's base is put on a kind of line of its own, since a tax here goes by kind; sums to the cent."""
    taxes = tuple(
        changed(RULES.taxes[0], name=f"VAT {percent}", percent=Decimal(percent), on=(kind,))
        for (_, percent, _), kind in zip(bases, KINDS, strict=False)
    )
    lines = []
    for at, ((base, _, _), kind) in enumerate(zip(bases, KINDS, strict=False), 1):
        priced = line(str(at), f"Base {at}", "0.00", 1)
        lines.append(changed(priced, **{f"{kind}_price": usd(base)}))
    of = quote(*lines, rules=ChargeRules(taxes=taxes))
    found = bill_of(made(of, no="", deposits=(deposit(prepaid),) if prepaid != "0" else ()))
    assert found.total.before_tax == usd(before), name
    assert [one.amount for one in found.total.taxes] == [usd(amount) for _, _, amount in bases]
    assert (found.total.total, found.due) == (usd(with_tax), usd(payable))
