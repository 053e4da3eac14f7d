"""A discount at the counter: off which part of a line, never more than the line, and what the bill then comes to."""

from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sourcing.basics.bill import Bill, Off
from sourcing.basics.problem import Refused
from sourcing.basics.quote import QuoteLine
from sourcing.basics.value import changed, from_json, to_json
from sourcing.quoting.bill import make_bill
from sourcing.quoting.off import less_off, off_words
from tests.builders import usd
from tests.quoting.bill_values import FRIDAY, RULES, deposit, line, made, quote

WHOLE = line(
    "A", "Keepers", "10.00", 2, "0.5", freight_price=usd("7.00"), fee_price=usd("3.00"), labour_rate=Decimal("96.00")
)
"""Parts 20.00, labour 48.00, freight 7.00, fee 3.00: 78.00."""


def off(*amounts: tuple[str, str], words: str = "regular customer") -> Off:
    """So much off these lines."""
    return Off(amounts=tuple((label, Decimal(amount)) for label, amount in amounts), words=words)


def bill_with(asked: Off, **fields: object) -> Bill:
    """The bill of the worked day, or of other lines, with a discount."""
    return make_bill(made(**{**fields, "off": asked}), "B-2026-0001", FRIDAY, "Oona Brandeth")  # type: ignore[arg-type]


def codes(asked: Off, *lines: QuoteLine) -> list[str]:
    """What is refused."""
    with pytest.raises(Refused) as caught:
        less_off(lines or (WHOLE,), asked, "2026-0001")
    return [one.code for one in caught.value.problems]


@pytest.mark.parametrize(
    ("amount", "parts", "labour", "freight", "fee"),
    [
        ("5.00", "5.00", "0.00", "0.00", "0.00"),
        ("20.00", "20.00", "0.00", "0.00", "0.00"),
        ("20.01", "20.00", "0.01", "0.00", "0.00"),
        ("70.00", "20.00", "48.00", "2.00", "0.00"),
        ("78.00", "20.00", "48.00", "7.00", "3.00"),
    ],
)
def test_parts_first_then_labour_freight_fee(amount: str, parts: str, labour: str, freight: str, fee: str) -> None:
    (left,), (taken,) = less_off((WHOLE,), off(("A", amount)), "2026-0001")
    assert (taken.parts, taken.labour, taken.freight, taken.fee) == (usd(parts), usd(labour), usd(freight), usd(fee))
    assert left.price == WHOLE.price - usd(amount) and taken.amount == usd(amount)
    assert left.parts_price == usd("20.00") - taken.parts and left.labour_price == usd("48.00") - taken.labour
    assert left.unit_price == WHOLE.unit_price and left.hours == WHOLE.hours


def test_no_fee_is_not_a_fee_of_nothing() -> None:
    """A line without a fee stays without one."""
    (left,), _ = less_off((changed(WHOLE, fee_price=None),), off(("A", "75.00")), "2026-0001")
    assert left.fee_price is None and left.price == usd("0.00")


@pytest.mark.parametrize(
    ("asked", "code"),
    [
        (off(("A", "78.01")), "off-above-line"),
        (off(("A", "1" + "0" * 40)), "off-above-line"),
        (off(("A", "0")), "off-amount"),
        (off(("A", "-1.00")), "off-amount"),
        (off(("A", "1.005")), "off-amount"),
        (off(("A", "NaN")), "off-amount"),
        (off(("A", "Infinity")), "off-amount"),
        (off(("Z", "1.00")), "off-unknown"),
        (off(("A", "5.00"), ("A", "3.00")), "off-twice"),
        (off(("A", "5.00"), words="  "), "off-why"),
    ],
)
def test_what_can_not_be_taken_off_is_refused(asked: Off, code: str) -> None:
    assert codes(asked) == [code]


def test_everything_wrong_is_told_at_once() -> None:
    assert codes(off(("A", "99.00"), ("Z", "1.00"), words="")) == ["off-why", "off-above-line", "off-unknown"]


def test_the_bill_is_worked_out_on_what_is_left() -> None:
    """5.00 off the keepers: 7 % tax on 192.75 instead of 197.75 is 13.49 (13.4925) instead of 13.84. By hand."""
    plain, found = bill_with(Off()), bill_with(off(("A", "5.00")), deposits=(deposit("100.00"),))
    assert dict(found.total.sums)["parts"] == dict(plain.total.sums)["parts"] - usd("5.00")
    (tax,) = found.total.taxes
    assert (tax.taxable, tax.amount) == (usd("192.75"), usd("13.49"))
    assert found.total.total == plain.total.total - usd("5.35") == usd("407.84")
    assert found.due == usd("307.84")
    assert [one.label for one in found.approvals] == ["1", "2", "A", "B", "D"]
    assert off_words(found.off[0]) == "5.00 USD off line A (5.00 off parts): regular customer"


def test_a_discount_on_labour_lowers_a_fee_on_labour_too() -> None:
    """Belt 109.00 and labour 144.00: 129.00 off is 20.00 of labour, and 1.00 less shop supplies at 5 %."""
    of = quote(line("1", "Belt", "109.00", 1, "1.5"), rules=changed(RULES, taxes=()))
    found = bill_with(off(("1", "129.00")), of=of)
    assert found.total.before_tax == usd("130.20") and dict(found.total.sums)["fees"] == usd("6.20")


def test_lines_that_are_not_billed_have_nothing_to_take_off() -> None:
    """C was declined."""
    with pytest.raises(Refused) as caught:
        bill_with(off(("C", "1.00")))
    assert caught.value.problems[0].code == "off-unknown"


def test_a_discount_is_no_way_to_bill_more_than_was_told() -> None:
    """The total before the discount was never told: it is refused whatever is taken off it."""
    with pytest.raises(Refused) as caught:
        bill_with(off(("A", "25.60")), told=usd("413.18"))
    assert caught.value.problems[0].code == "bill-above-told"


def test_a_bill_kept_before_there_were_discounts_is_still_read() -> None:
    """Its JSON has no such field."""
    plain = bill_with(Off())
    old = to_json(plain).replace(b',"off":[]', b"")
    assert old != to_json(plain) and from_json(old, Bill) == plain


CENTS = st.integers(0, 30_000)


@given(
    prices=st.lists(st.tuples(CENTS, st.integers(0, 3), st.integers(0, 40), CENTS), min_size=1, max_size=6),
    shares=st.lists(st.integers(0, 100), min_size=6, max_size=6),
    percent=st.decimals(0, 25, places=3),
)
def test_a_bill_with_discounts_adds_up_to_the_cent(
    prices: list[tuple[int, int, int, int]], shares: list[int], percent: Decimal
) -> None:
    """EN 16931-1:2017 in whole cents: line net amounts are less their allowances (BT-131, BT-136), sums by kind are
    those of the lines (BR-CO-10), the tax stands on them (BR-CO-17); and no discount makes a bill dearer."""
    lines = [
        line(str(at), f"Work {at}", str(Decimal(cents) / 100), pieces, str(Decimal(tenths) / 10),
             freight_price=usd(str(Decimal(freight) / 100)) if pieces else usd("0.00"))
        for at, (cents, pieces, tenths, freight) in enumerate(prices, 1)
    ]  # fmt: skip
    of = quote(*lines, rules=changed(RULES, taxes=(changed(RULES.taxes[0], percent=percent),)))
    amounts = [(one.label, one.price.minor() * share // 100) for one, share in zip(of.lines, shares, strict=False)]
    asked = off(*[(label, str(Decimal(cents) / 100)) for label, cents in amounts if cents])
    found, plain = bill_with(asked, of=of, no=""), bill_with(Off(), of=of, no="")

    given_off, sums = sum(cents for _, cents in amounts), dict(found.total.sums)
    assert sum(one.amount.minor() for one in found.off) == given_off
    for now, before in zip(found.lines, plain.lines, strict=True):
        assert now.price.minor() == before.price.minor() - dict(amounts)[now.label]
        assert min(now.parts_price.minor(), now.labour_price.minor(), now.freight_price.minor()) >= 0
    for kind, taken in (("parts", "parts"), ("labour", "labour"), ("freight", "freight")):
        less = sum(getattr(one, taken).minor() for one in found.off)
        assert sums[kind].minor() == dict(plain.total.sums)[kind].minor() - less  # type: ignore[index]
    fees_less = dict(plain.total.sums)["fees"].minor() - sums["fees"].minor()
    assert found.total.before_tax.minor() == plain.total.before_tax.minor() - given_off - fees_less
    assert found.total.taxes[0].taxable.minor() == sums["parts"].minor() + sums["freight"].minor()
    assert found.total.total <= plain.total.total
