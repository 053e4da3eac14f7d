"""Duty on goods by origin and tariff code: the rate that holds, or all that could where the sheet does not say enough.

A rate with a longer tariff code goes before one with a shorter, then one that names the origin before one that does
not; where none fits, the terms' general `duty_percent` holds.
"""

from decimal import Decimal

from ..basics.terms import DutyRate, Terms


def duty_percents(origin: str, tariff_code: str, terms: Terms) -> tuple[Decimal, ...]:
    """The rates in per cent that could hold for goods of that origin and code, rising: one where it is known.

    A blank origin may be any, a blank code any, and a short code ('8436') any that begins with it.
    """
    general = terms.duty_percent if terms.duty_percent is not None else Decimal(0)
    if not terms.duty_rates:
        return (general,)
    code = _plain(tariff_code)
    codes = {code, *(_plain(rate.tariff) for rate in terms.duty_rates if _plain(rate.tariff).startswith(code))}
    origins = {origin.upper()} if origin else {"", *(rate.origin.upper() for rate in terms.duty_rates)}
    found = {_rate(one, each, terms.duty_rates, general) for one in origins for each in codes}
    return tuple(sorted(found))


def not_stated(origin: str, tariff_code: str, terms: Terms) -> str:
    """What of an offer has to be known for its rate, in words: 'the origin', 'the whole tariff code'."""
    code = _plain(tariff_code)
    missing = []
    if not origin and any(rate.origin for rate in terms.duty_rates):
        missing.append("the origin")
    if any(_plain(rate.tariff) != code and _plain(rate.tariff).startswith(code) for rate in terms.duty_rates):
        missing.append("the whole tariff code" if code else "the tariff code")
    return " and ".join(missing)


def order_duty_percents(terms: Terms) -> tuple[Decimal, Decimal]:
    """The lowest and the highest rate that could hold for an order's goods, whatever is in it."""
    rates = {one.percent for one in terms.duty_rates}
    if not any(not one.origin and not one.tariff for one in terms.duty_rates):
        rates.add(terms.duty_percent if terms.duty_percent is not None else Decimal(0))
    return min(rates), max(rates)


def _rate(origin: str, code: str, rates: tuple[DutyRate, ...], general: Decimal) -> Decimal:
    fitting = [one for one in rates if code.startswith(_plain(one.tariff)) and one.origin.upper() in ("", origin)]
    if not fitting:
        return general
    return max(fitting, key=lambda one: (len(_plain(one.tariff)), bool(one.origin))).percent


def _plain(code: str) -> str:
    """A tariff code without the points and spaces it is printed with."""
    return "".join(sign for sign in code if sign.isalnum()).upper()
