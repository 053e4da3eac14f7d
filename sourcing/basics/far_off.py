"""Figures that can be, but lie far from usual or from the last ones: asked about before they are kept, never refused.

A point forgotten makes 160 of 1.60, and every customer is quoted a hundred times the cost. What is asked is only what
was typed anew, and once somebody says that it is right, it is kept. All bounds here: common practice, no source; they
are wide, for a question that comes every day is answered without being read.
"""

import re
from collections.abc import Collection, Iterator
from decimal import Decimal

import msgspec

from .contradiction import Contradiction
from .value import Value

FAR = Decimal(2)
"""So many times the last, or less than that part of it: exchange rates, wages and multipliers do not move so far."""

SLIPPED = Decimal(5)
"""The same of other figures: they may move far, but a point in the wrong place moves them by ten."""

USUAL = {
    "markup_bands.multiplier": ("1", "10"),
    "category_bands.bands.multiplier": ("1", "10"),
    "margin_floor_percent": ("1", "75"),
    "taxes.percent": ("0.3", "30"),
    "supplies.percent_of_labour": ("0.3", "25"),
    "fee_rules.percent": ("0.3", "30"),
    "deposit.percent": ("1", "100"),
    "tolerance.percent": ("0.3", "25"),
    "quote_valid_days": ("1", "180"),
    "duty_percent": ("0.3", "60"),
    "duty_rates.percent": ("0.3", "60"),
    "discount_percent": ("1", "75"),
    "order_discounts.percent": ("0.3", "50"),
    "cash_discount.percent": ("0.3", "15"),
    "payment_percent": ("0.1", "10"),
    "tax.percent": ("0.3", "30"),
    "tax.uplift_percent": ("0.3", "50"),
    "return_terms.restocking_percent": ("1", "60"),
    "entry_fees.percent": ("0.01", "60"),
    "transit_days": ("0", "90"),
    "dispatch_days": ("0", "120"),
    "prices_hold_days": ("1", "1100"),
}
"""Least and most by field; rows of lists are not told apart. Below the least a per cent was typed as a part of one."""

HOURS = {
    "technician_cost": ("0.08", "1"),
    "clerk_cost": ("0.05", "1"),
    "mileage_rate": ("0", "0.1"),
    "rate_per_km": ("0", "0.1"),
    "supplies.most": ("0", "3"),
    "fee_rules.charge": ("0", "3"),
    "tolerance.amount": ("0", "3"),
    "freight.charge": ("0", "5"),
    "freight.bands.charge": ("0", "5"),
    "freight.weight_bands.charge": ("0", "5"),
    "freight.per_weight": ("0", "0.3"),
    "freight.least": ("0", "5"),
    "freight.between": ("0", "10"),
    "freight.oversize.charge": ("0", "5"),
    "small_order_fee": ("0", "2"),
    "handling": ("0", "2"),
    "handling_per_line": ("0", "1"),
    "entry_fee": ("0", "5"),
    "entry_fees.charge": ("0", "5"),
    "split.later_charge": ("0", "5"),
    "minimum_order": ("0", "50"),
    "return_terms.freight": ("0", "5"),
    "core_return.freight": ("0", "5"),
}
"""Amounts of money, measured by what the customer pays for an hour of labour, so that they hold in every currency."""

TIMES = {
    "labour_rate": FAR,
    "technician_cost": FAR,
    "clerk_cost": FAR,
    "markup_bands.multiplier": FAR,
    "category_bands.bands.multiplier": FAR,
    "freight.free_from": SLIPPED,
}
"""How far a figure may lie from the last. Others of the two tables above: `SLIPPED`; days may move as they like."""

SHOPS_MONEY = ("return_terms.freight", "core_return.freight")
"""Fields of a supplier's terms that are not in his money."""


class FarOff(Contradiction, frozen=True, kw_only=True):
    """A figure to ask about: `found` has it beside the last ones and what is usual."""


def far_off(before: Value | None, after: Value, hour: Decimal | None, shops_hour: Decimal | None) -> Iterator[FarOff]:
    """The figures of `after` that `before` does not have and that lie far off. Nothing is asked of 0: it says none.

    Where a list has grown, its new entries need not be near the old ones: a local tax beside the country's, say.
    `hour`: what an hour of labour costs the customer, in the money of the value; `shops_hour`: in the shop's. None
    where it is not known: then amounts are held against the last ones alone.
    """
    last, now = (_by_name(one) for one in (before, after))
    for path, number in _figures(after):
        name = _name(path)
        known = last.get(name, [])
        if number == 0 or number in known:
            continue
        has_grown = len(now[name]) > len(known)
        told = [
            "" if has_grown else _from_last(name, number, known),
            _from_usual(name, number, shops_hour if name in SHOPS_MONEY else hour),
        ]
        if any(told):
            yield FarOff(field=path, found="; ".join([f"is {number}", *filter(None, told)]))


def is_far(number: Decimal, last: Collection[Decimal], times: Decimal) -> bool:
    """Whether it is more than so many times the largest of the last ones, or less than that part of the smallest."""
    return bool(last) and not min(last) / times <= number <= max(last) * times


def _from_last(name: str, number: Decimal, known: list[Decimal]) -> str:
    """What it is far from; blank where it is near, or nothing stood there."""
    times = TIMES.get(name, SLIPPED if (name in USUAL or name in HOURS) and not name.endswith("days") else None)
    stood = [one for one in known if one]
    if times is None or not is_far(number, stood, times):
        return ""
    return f"until now {', '.join(str(one) for one in dict.fromkeys(known))}"


def _from_usual(name: str, number: Decimal, hour: Decimal | None) -> str:
    if name in USUAL:
        least, most = (Decimal(one) for one in USUAL[name])
        return "" if least <= number <= most else f"usual is {least} to {most}"
    if name not in HOURS or not hour:
        return ""
    least, most = (Decimal(one) * hour for one in HOURS[name])
    if least <= number <= most:
        return ""
    return f"usual is {least:.2f} to {most:.2f} where an hour of labour is {hour:.2f}"


def _by_name(value: Value | None) -> dict[str, list[Decimal]]:
    found: dict[str, list[Decimal]] = {}
    for path, number in _figures(value) if value else ():
        found.setdefault(_name(path), []).append(number)
    return found


def _name(path: str) -> str:
    return re.sub(r"\.\d+(?=\.|$)", "", path)


def _figures(value: Value, path: str = "") -> Iterator[tuple[str, Decimal]]:
    """Every number of the value and of the values in it, with its dotted place; entries of lists counted from 1."""
    for field in msgspec.structs.fields(value):
        where = f"{path}.{field.name}" if path else field.name
        yield from _figures_of(getattr(value, field.name), where)


def _figures_of(found: object, path: str) -> Iterator[tuple[str, Decimal]]:
    if isinstance(found, Value):
        yield from _figures(found, path)
    elif isinstance(found, tuple):
        for at, one in enumerate(found, 1):
            yield from _figures_of(one, f"{path}.{at}")
    elif isinstance(found, (Decimal, int)) and not isinstance(found, bool):
        yield path, Decimal(found)
