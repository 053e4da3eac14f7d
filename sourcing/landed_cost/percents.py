"""Charges in per cent of an order's sums, in their order: duty on freight and discount, entry fees, payment fee, tax.

Each is taken once, on sums of amounts already rounded, in the shop's currency.
"""

from collections.abc import Mapping, Sequence
from decimal import Decimal

from ..basics.landed_cost import CostKind, CostLine
from ..basics.money import Money, from_minor
from ..basics.schedule import Percent, SummedPart
from ..basics.terms import EntryFee, TaxedPart, TaxPaid, Terms
from ..basics.value import Value
from .door import Door
from .duty import order_duty_percents
from .minor import whole

Sums = dict[SummedPart, int]
"""The parts of an order in the shop's minor units."""


class PercentCharge(Value, frozen=True, kw_only=True):
    """A charge in per cent with its name and kind; `words` name what it is taken of, `limits` its least and most."""

    name: str
    kind: CostKind
    percent: Percent
    words: str
    limits: str = ""


def percent_charges(door: Door) -> tuple[PercentCharge, ...]:
    """All of the terms, in the order in which they are worked out."""
    terms = door.terms
    fees = (_entry_fee(fee, door) for fee in terms.entry_fees)
    payment = (_payment(terms.payment_percent, door),) if terms.payment_percent else ()
    tax = (_tax(terms.tax, door),) if terms.tax else ()
    return (*_duties(door), *fees, *payment, *tax)


def percent_amount(one: Percent, sums: Mapping[SummedPart, int]) -> int:
    """The charge on these sums."""
    amount = one.fixed
    if one.percent:
        amount += whole(_base(one, sums) * one.percent / 100)
    if one.least is not None and amount < one.least:
        return one.least
    return one.most if one.most is not None and amount > one.most else amount


def add_percents(percents: Sequence[Percent], sums: Sums) -> list[int]:
    """Each charge in turn, added to its part of the sums, which change."""
    amounts = []
    for one in percents:
        amount = percent_amount(one, sums)
        sums[one.part] += amount
        amounts.append(amount)
    return amounts


def percent_lines(charges: Sequence[PercentCharge], sums: Sums, door: Door) -> list[CostLine]:
    """The charges as lines, with the base each was taken of in its rule; the sums grow by them."""
    lines = []
    for one in charges:
        base = _base(one.percent, sums)
        (amount,) = add_percents([one.percent], sums)
        money = from_minor(amount, door.currency)
        lines.append(CostLine(name=one.name, kind=one.kind, amount=money, rule=_rule(one, base, door)))
    return lines


def _base(one: Percent, sums: Mapping[SummedPart, int]) -> Decimal:
    return sum((sums[part] * factor for part, factor in one.of), Decimal(0))


def _rule(one: PercentCharge, base: Decimal, door: Door) -> str:
    fixed, parts = one.percent.fixed, []
    if fixed:
        parts.append(str(from_minor(fixed, door.currency)))
    if one.percent.percent or not fixed:
        of = Money(amount=from_minor(1, door.currency).amount * base, currency=door.currency)
        parts.append(f"{one.percent.percent} % of {one.words} {of}")
    return " and ".join(parts) + one.limits


def _duties(door: Door) -> list[PercentCharge]:
    """Duty on freight and on the order discount. Where goods have different rates nobody says which part of either is
    whose: freight is taken at the highest and the discount at the lowest, so that duty is never told too low.
    """
    terms = door.terms
    lowest, highest = order_duty_percents(terms)
    if not highest:
        return []
    words = ("", "") if lowest == highest else (_one_of(terms, "highest"), _one_of(terms, "lowest"))
    found = []
    if terms.duty_on == "goods and freight" and _charged_freight(door):
        percent = Percent(part="duty", percent=highest, of=_charged_freight(door))
        found.append(
            PercentCharge(name="Duty on freight", kind="duty", percent=percent, words="freight", limits=words[0])
        )
    if terms.order_discounts:
        percent = Percent(part="duty", percent=lowest, of=(("discount", Decimal(1)),))
        name, of = "Duty on the order discount", "the order discount"
        found.append(PercentCharge(name=name, kind="duty", percent=percent, words=of, limits=words[1]))
    return found


def _one_of(terms: Terms, which: str) -> str:
    lowest, highest = order_duty_percents(terms)
    return f", at the {which} rate of {terms.name}'s terms, which go from {lowest} to {highest} %"


def _entry_fee(fee: EntryFee, door: Door) -> PercentCharge:
    rate = door.rate_of(fee.currency)

    def here(amount: Decimal) -> int:
        return rate.convert(Money(amount=amount, currency=rate.currency)).minor()

    least = here(fee.least) if fee.least is not None else None
    most = here(fee.most) if fee.most is not None else None
    of: tuple[tuple[SummedPart, Decimal], ...] = (("duty", Decimal(1)),)
    if fee.of == "goods":
        of = (("goods", Decimal(1)), ("discount", Decimal(1)))
    percent = Percent(part="fees", percent=fee.percent, of=of, least=least, most=most, fixed=here(fee.charge))
    limits = f", at least {fee.least} {rate.currency}" if fee.least is not None else ""
    limits += f", at most {fee.most} {rate.currency}" if fee.most is not None else ""
    rated = f" ({rate.words()})" if rate.currency != door.currency else ""
    words = "goods after discounts" if fee.of == "goods" else "duty"
    return PercentCharge(name=fee.name, kind="entry fee", percent=percent, words=words, limits=limits + rated)


def _payment(percent: Decimal, door: Door) -> PercentCharge:
    of: tuple[tuple[SummedPart, Decimal], ...] = (("goods", Decimal(1)), ("discount", Decimal(1)))
    of += _charged_freight(door)
    words = "goods after discounts and freight" if _charged_freight(door) else "goods after discounts"
    return PercentCharge(
        name="Payment fee", kind="payment fee", percent=Percent(part="fees", percent=percent, of=of), words=words
    )


def _tax(tax: TaxPaid, door: Door) -> PercentCharge:
    raised = 1 + tax.uplift_percent / 100
    freight = tuple((part, raised) for part, _ in _charged_freight(door))
    parts: dict[TaxedPart, tuple[tuple[SummedPart, Decimal], ...]] = {
        "goods": (("goods", raised), ("discount", raised)),
        "freight": freight,
        "duty": (("duty", Decimal(1)),),
        "fees": (("fees", Decimal(1)),),
    }
    on = [part for part in parts if part in tax.on]
    of = tuple(pair for part in on for pair in parts[part])
    words = ", ".join(part for part in on if parts[part])
    lifted = " and ".join(part for part in on if parts[part] and part in ("goods", "freight"))
    if tax.uplift_percent and lifted:
        words += f" ({lifted} raised by {tax.uplift_percent} %)"
    return PercentCharge(
        name=tax.name, kind="tax", percent=Percent(part="tax", percent=tax.percent, of=of), words=words
    )


def _charged_freight(door: Door) -> tuple[tuple[SummedPart, Decimal], ...]:
    """Freight somebody charges the shop for. Its own drive is no purchase: nothing is due on it."""
    freight = door.terms.freight
    return () if freight is None or freight.rule == "pick-up" else (("freight", Decimal(1)),)
