"""A supplier's terms in words, one line for each thing they settle; what they do not settle has no line."""

from collections.abc import Iterator

from ..basics.terms import CUT_OFF_NOT_KNOWN, Calendar, DutyRate, EntryFee, Terms
from .freight_words import freight_words
from .plain_text import count

Line = tuple[str, str]


def terms_words(terms: Terms) -> dict[str, str]:
    """What holds, by what it is of ('Freight' to '14.95 USD an order'); money is in the supplier's currency."""
    parts = (_order, _discounts, _duty, _border, _days, _after)
    return {name: words for part in parts for name, words in part(terms) if words}


def _order(terms: Terms) -> Iterator[Line]:
    """Freight, minimum, handling."""
    money = terms.currency
    yield "Freight", freight_words(terms.freight, money) if terms.freight else "not known"
    yield "Minimum order", _minimum(terms)
    yield "Handling", f"{terms.handling} {money} an order" if terms.handling else ""
    yield "Handling of lines", f"{terms.handling_per_line} {money} each" if terms.handling_per_line else ""
    paid = f"{terms.payment_percent} % of goods and freight" if terms.payment_percent else ""
    yield "Payment fee", paid
    above = "the lower price holds for the pieces above the step only"
    yield "Price breaks", above if terms.breaks == "pieces above" else "the price of the step holds for all pieces"


def _minimum(terms: Terms) -> str:
    if terms.minimum_order is None:
        return ""
    least = f"{terms.minimum_order} {terms.currency}"
    if terms.small_order_fee is None:
        return f"{least}; an order below it is refused"
    return f"{least}; an order below it costs {terms.small_order_fee} {terms.currency} more"


def _discounts(terms: Terms) -> Iterator[Line]:
    yield "Discount", f"{terms.discount_percent} % of every line" if terms.discount_percent else ""
    steps = [f"{one.percent} % from {one.from_value} {terms.currency} on" for one in terms.order_discounts]
    yield "Order discount", "; ".join(steps)
    cash = terms.cash_discount
    yield "Cash discount", f"{cash.percent} % if paid within {count(cash.within_days, 'day')}" if cash else ""


def _duty(terms: Terms) -> Iterator[Line]:
    on = "goods and freight" if terms.duty_on == "goods and freight" else "goods"
    general = f"{terms.duty_percent} % of {on}" if terms.duty_percent is not None else ""
    special = [f"{one.percent} % {_goods(one)}" for one in terms.duty_rates]
    yield "Duty", "; ".join(words for words in (general, *special) if words)


def _goods(rate: DutyRate) -> str:
    words = [f"from {rate.origin}" if rate.origin else "", f"of tariff code {rate.tariff}" if rate.tariff else ""]
    return f"on goods {' '.join(word for word in words if word)}" if any(words) else "on all other goods"


def _border(terms: Terms) -> Iterator[Line]:
    flat = [f"{terms.entry_fee} {terms.currency} an order"] if terms.entry_fee else []
    yield "Entry fees", "; ".join([*flat, *(_fee(one, terms.currency) for one in terms.entry_fees)])
    tax = terms.tax
    if tax:
        raised = f", raised by {tax.uplift_percent} % of goods and freight" if tax.uplift_percent else ""
        yield "Tax that does not come back", f"{tax.name}, {tax.percent} % of {_joined(tax.on)}{raised}"


def _fee(fee: EntryFee, currency: str) -> str:
    money = fee.currency or currency
    parts = [f"{fee.charge} {money}"] if fee.charge else []
    parts += [f"{fee.percent} % of the {fee.of}"] if fee.percent else []
    bounds = [f"at least {fee.least} {money}"] if fee.least is not None else []
    bounds += [f"at most {fee.most} {money}"] if fee.most is not None else []
    return f"{fee.name}: {', '.join([' and '.join(parts), *bounds] if parts else bounds)}"


def _days(terms: Terms) -> Iterator[Line]:
    clock = f" in {terms.time_zone}" if terms.time_zone else " on the shop's clock"
    known = terms.cut_off != CUT_OFF_NOT_KNOWN
    yield "Cut-off", f"{terms.cut_off:%H:%M}{clock}" if known else "not known"
    yield "Takes orders on", ", ".join(terms.order_days) or "every working day"
    yield "Stock leaves after", count(terms.dispatch_days, "working day")
    least, most = terms.transit_days
    yield "On the road", count(most, "working day") if least == most else f"{least} to {count(most, 'working day')}"
    yield "Works", _calendar(terms.calendar)
    if terms.split.sends == "as ready":
        later = terms.split.later_charge
        charge = f"{later} {terms.currency} for each later delivery" if later else "nothing for later deliveries"
        yield "Part of it late", f"each part is sent as soon as it is ready; {charge}"
    else:
        yield "Part of it late", "all is sent together"
    hold = terms.prices_hold_days
    yield "Prices hold", "until the next sheet" if hold is None else f"{count(hold, 'day')} from the day of the sheet"


def _calendar(calendar: Calendar) -> str:
    place = f"{calendar.country} {calendar.region}".strip()
    kept = f", closed on public holidays of {place}" if place else ""
    closed = f", and on {', '.join(map(str, calendar.closed))}" if calendar.closed else ""
    return f"{', '.join(calendar.week)}{kept}{closed}"


def _after(terms: Terms) -> Iterator[Line]:
    """Returns and old parts."""
    yield "Returns", _returns(terms)
    yield "Returns, in his words", terms.returns
    core = terms.core_return
    words = [f"within {count(core.within_days, 'day')}"] if core.within_days is not None else []
    words += [f"at {core.freight} of freight in the shop's currency"] if core.freight is not None else []
    yield "Old parts go back", ", ".join(words)
    yield "Address", ", ".join(terms.address)


def _returns(terms: Terms) -> str:
    back = terms.return_terms
    losses = [f"restocking {back.restocking_percent} %"] if back.restocking_percent is not None else []
    losses += [f"{back.freight} of freight in the shop's currency"] if back.freight is not None else []
    losses += [f"within {count(back.within_days, 'day')}"] if back.within_days is not None else []
    goes = {True: "goods go back", False: "goods do not go back", None: ""}[back.returnable]
    return ", ".join(word for word in (goes, *losses) if word)


def _joined(words: tuple[str, ...]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"
