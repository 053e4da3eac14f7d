"""What can't hold in a supplier's terms, field by field, so that a file is told all of it at once."""

from collections.abc import Iterator
from typing import TYPE_CHECKING

from .contradiction import Contradiction, doubled, number_faults
from .currency import is_currency
from .freight_checks import freight_contradictions, rising
from .problem import Refused, problem

if TYPE_CHECKING:
    from .terms import Calendar, EntryFee, Terms


class TermsRefused(Refused):
    """Terms nothing can be worked out from, with all that contradicts in them as `found`."""

    def __init__(self, supplier: str, found: tuple[Contradiction, ...]) -> None:
        told = [f"'{one.field}' {one.found}" for one in found]
        super().__init__(*(problem("terms-contradict", supplier=supplier, found=words) for words in told))
        self.found = found


def contradictions(terms: "Terms") -> tuple[Contradiction, ...]:
    """All that can't hold, the numbers first. Public holidays and time zones are not looked up here."""
    checks = (_who, _freight, _order, _discounts, _duties, _fees, _days)
    found = [*number_faults(terms), *(one for check in checks for one in check(terms))]
    return tuple(found)


def calendar_contradictions(calendar: "Calendar", path: str = "calendar") -> Iterator[Contradiction]:
    """A week without a day, a day named twice, a region of no country."""
    if not calendar.week:
        yield Contradiction(field=f"{path}.week", found="names no day, so nothing would ever leave or arrive")
    yield from doubled(list(calendar.week), f"{path}.week", "the day")
    if calendar.region and not calendar.country:
        yield Contradiction(field=f"{path}.region", found=f"is '{calendar.region}', but no country is named")


def _wrong(field: str, found: str) -> Contradiction:
    return Contradiction(field=field, found=found)


def _who(terms: "Terms") -> Iterator[Contradiction]:
    for field in ("supplier", "name"):
        text = getattr(terms, field)
        if not text.strip():
            yield _wrong(field, "is blank")
        elif text != text.strip():
            yield _wrong(field, f"is '{text}', with a blank before or after it")
    yield from _currency(terms.currency, "currency")


def _currency(code: str, field: str) -> Iterator[Contradiction]:
    if not is_currency(code):
        yield _wrong(field, f"is '{code}', and that is not a currency code of ISO 4217")


def _freight(terms: "Terms") -> Iterator[Contradiction]:
    return freight_contradictions(terms.freight) if terms.freight else iter(())


def _order(terms: "Terms") -> Iterator[Contradiction]:
    """A minimum without a fee is a refusal; a fee without a minimum says nothing."""
    if terms.small_order_fee is not None and terms.minimum_order is None:
        yield _wrong("small_order_fee", "is given, but there is no minimum_order below which it is due")
    if terms.split.sends == "together" and terms.split.later_charge:
        yield _wrong("split.later_charge", "is given, but all is sent together, so there are no later deliveries")


def _discounts(terms: "Terms") -> Iterator[Contradiction]:
    yield from rising([one.from_value for one in terms.order_discounts], "order_discounts", "from_value")


def _duties(terms: "Terms") -> Iterator[Contradiction]:
    rates = terms.duty_rates
    yield from _dutiable_freight(terms)
    keys = [f"{one.origin or 'any origin'}, {one.tariff or 'any tariff code'}" for one in rates]
    yield from doubled(keys, "duty_rates", "the rate for")
    for at, one in enumerate(rates, 1):
        if not one.origin and not one.tariff and terms.duty_percent is not None:
            yield _wrong(f"duty_rates.{at}", "fits every offer, and so does duty_percent: leave one of them out")
        if one.origin and not (len(one.origin) == 2 and one.origin.isascii() and one.origin.isupper()):
            yield _wrong(f"duty_rates.{at}.origin", f"is '{one.origin}', and not two capital letters of ISO 3166")
        if one.tariff and not (one.tariff.isascii() and one.tariff.isdigit()):
            yield _wrong(f"duty_rates.{at}.tariff", f"is '{one.tariff}', and not digits alone")


def _dutiable_freight(terms: "Terms") -> Iterator[Contradiction]:
    every = any(not one.origin and not one.tariff for one in terms.duty_rates)
    if terms.duty_on == "goods and freight" and terms.duty_percent is None and not every:
        yield _wrong("duty_on", "is 'goods and freight', but no duty_percent says at what rate freight is dutiable")


def _fees(terms: "Terms") -> Iterator[Contradiction]:
    yield from doubled([one.name for one in terms.entry_fees], "entry_fees", "the fee")
    for at, fee in enumerate(terms.entry_fees, 1):
        yield from _entry_fee(fee, f"entry_fees.{at}")
    tax = terms.tax
    if tax and not tax.on:
        yield _wrong("tax.on", "names nothing the tax is due on")
    if tax:
        yield from doubled(list(tax.on), "tax.on", "the word")


def _entry_fee(fee: "EntryFee", path: str) -> Iterator[Contradiction]:
    if not fee.name.strip():
        yield _wrong(f"{path}.name", "is blank")
    if fee.currency:
        yield from _currency(fee.currency, f"{path}.currency")
    if not fee.charge and not fee.percent and not fee.least:
        yield _wrong(path, "has neither charge, percent nor least, so it charges nothing")
    if fee.least is not None and fee.most is not None and fee.least > fee.most:
        yield _wrong(f"{path}.least", f"is {fee.least}, more than 'most' ({fee.most})")


def _days(terms: "Terms") -> Iterator[Contradiction]:
    yield from calendar_contradictions(terms.calendar)
    yield from doubled(list(terms.order_days), "order_days", "the day")
    if terms.cut_off.tzinfo is not None:
        yield _wrong("cut_off", f"is {terms.cut_off}: write the time alone and the zone in time_zone")
