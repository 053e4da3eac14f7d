"""The shop's settings in words, part by part; and as the file shop.toml, which reads back to the same values."""

from collections.abc import Iterator
from datetime import date

from ..basics.settings import Settings
from ..basics.settings_words import bands_words, fee_words, tax_words
from ..basics.terms import Calendar
from ..basics.toml_text import stated, toml_text
from ..basics.value import Value
from .plain_text import count

Line = tuple[str, str]

OWNERS = ("prices",)
"""Parts that show what the shop adds to its costs."""

HEAD = """# The shop's own settings, as they hold on {on}.
# Money is in 'currency', rates are per hour, per cent as printed (7 is 7 %). Fields left out are not set.
"""


def settings_words(settings: Settings, for_owner: bool) -> dict[str, tuple[Line, ...]]:
    """By part what holds, each a name and its words. Only the owner is told bands, floor and what an hour costs."""
    parts = {
        "shop": _shop(settings),
        "prices": _prices(settings),
        "labour": _labour(settings, for_owner),
        "charges": _charges(settings),
        "days": _days(settings),
        "papers": _papers(settings),
    }
    return {
        name: tuple(line for line in lines if line[1])
        for name, lines in parts.items()
        if for_owner or name not in OWNERS
    }


def _shop(settings: Settings) -> Iterator[Line]:
    shop = settings.shop
    yield "Name", shop.name
    yield "Address", ", ".join(shop.address)
    yield "Telephone", shop.telephone
    yield "E-mail", shop.email


def _prices(settings: Settings) -> Iterator[Line]:
    yield "Price from cost", bands_words(settings.markup_bands)
    for one in settings.category_bands:
        yield f"Category '{one.category}'", bands_words(one.bands)
    yield "Floor of bands", "no band sells below what the band under it ends at" if settings.floor_bands else ""
    ending = settings.price_ending
    if ending:
        ends = " or ".join(map(str, ending.endings))
        yield "Prices end in", f"{ends}, raised to the next, from {ending.from_price} on"
    never = f"never above it where it is in {settings.currency}; one in another currency holds no price down"
    yield "List price", never if settings.cap_at_list_price else "prices may be above it"
    yield "Margin floor", f"a parts margin below {settings.margin_floor_percent} % of the price is told"


def _labour(settings: Settings, for_owner: bool) -> Iterator[Line]:
    money = settings.currency
    yield "Labour, an hour", f"{settings.labour_rate} {money} to the customer"
    if for_owner:
        yield "Technician, an hour", f"costs the shop {settings.technician_cost} {money}"
        none = "not stated: what needs it when goods are picked up is not known"
        yield "Clerk, an hour", f"costs the shop {settings.clerk_cost} {money}" if settings.clerk_cost else none
    none = "not stated"
    yield "A mile driven", f"{settings.mileage_rate} {money}" if settings.mileage_rate else none
    km = settings.rate_per_km
    yield "A kilometre driven", f"{km} {money}" if km is not None else "by the mile, converted"


def _charges(settings: Settings) -> Iterator[Line]:
    for tax in settings.taxes:
        yield tax.name, tax_words(tax)
    supplies, money = settings.supplies, settings.currency
    if supplies:
        yield "Shop supplies", f"{supplies.percent_of_labour} % of labour, at most {supplies.most} {money}"
    for rule in settings.fee_rules:
        yield rule.name, fee_words(rule, money)
    billed = settings.freight_to_customer == "billed"
    yield "Freight", "on a line of its own, at cost" if billed else "is in the prices of parts"
    deposit = settings.deposit
    if deposit:
        least = f", where that is {deposit.from_amount} {money} or more" if deposit.from_amount else ""
        yield "Deposit", f"{deposit.percent} % of {deposit.of}{least}"
    yield "A price may rise", _tolerance(settings)


def _tolerance(settings: Settings) -> str:
    one = settings.tolerance
    words = [f"{one.percent} %"] if one.percent else []
    words += [f"{one.amount} {settings.currency}"] if one.amount else []
    return f"by {' and at most '.join(words)} without a new question" if words else "by nothing without a new question"


def _days(settings: Settings) -> Iterator[Line]:
    yield "Open", ", ".join(settings.calendar.week)
    yield "Public holidays", _place(settings.calendar)
    yield "Also closed", ", ".join(map(str, settings.calendar.closed))
    yield "A quote is good for", count(settings.quote_valid_days, "day")
    yield "Clock", settings.time_zone or "the one on the wall; no supplier's time zone can be reckoned with"


def _place(calendar: Calendar) -> str:
    return f"of {calendar.country} {calendar.region}".strip() if calendar.country else "none: no country is named"


def _papers(settings: Settings) -> Iterator[Line]:
    yield "Money", settings.currency
    yield "Days and numbers", settings.locale
    yield "Paper", settings.paper_size or "by the locale"
    yield "On the quote", "\n".join(settings.terms_text)
    yield "On special orders", "\n".join(settings.special_order_terms)
    yield "What the law asks", "\n".join(settings.law_text)
    dated = f"gone over on {settings.cautions_dated}" if settings.cautions_dated else "nobody said when gone over"
    yield "Cautions", "\n".join([*settings.cautions, f"({dated})"]) if settings.cautions else ""


def settings_toml(settings: Settings, on: date) -> str:
    """The file: plain fields first, lists of entries a line for each, then a table for each part of its own."""
    fields = stated(settings)
    plain = [f"{name} = {_plain(one)}" for name, one in fields.items() if not isinstance(one, Value)]
    tables = [
        "\n".join(["", f"[{name}]", *(f"{key} = {toml_text(each)}" for key, each in stated(one).items())])
        for name, one in fields.items()
        if isinstance(one, Value)
    ]
    return "\n".join([HEAD.format(on=on), *plain, *tables, ""])


def _plain(found: object) -> str:
    if isinstance(found, tuple) and found:
        return "\n".join(["[", *(f"  {toml_text(one)}," for one in found), "]"])
    return toml_text(found)
