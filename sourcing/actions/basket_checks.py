"""What fits the fields of a basket and still can't be: told with its place, all of it at once."""

from collections.abc import Hashable, Iterable, Iterator
from datetime import date
from decimal import Decimal

from ..basics.basket import Basket, BasketOffer
from ..basics.currency import is_currency
from ..basics.offer import PriceBreak
from ..basics.plan import PlanNeed, PlanWishes
from ..basics.problem import Refused
from ..basics.rate import Rates
from ..basics.settings import Settings
from ..basics.terms import Terms
from ..basics.terms_checks import contradictions as terms_contradictions
from ..basics.value import Value
from ..landed_cost.date_checks import check_dates, check_shop_dates, check_zone
from ..matching.dimensions.size_check import is_designation
from ..sheets.cells.code_cells import is_gtin
from .basket_shop import currencies_at, started
from .fitting import in_json


class Wrong(Value, frozen=True, kw_only=True):
    """A code of `basket_problem_kinds` with its facts: the place in the file, what is there, what to do."""

    code: str
    at: str
    found: str
    wanted: str


ABOVE_ZERO = ("list_price", "weight_kg", "length_cm", "width_cm", "height_cm")
PIECES = ("price_basis", "pack", "order_multiple", "minimum")
FAR_FUTURE = date(9999, 12, 31)


def contradictions(basket: Basket, settings: Settings) -> Iterator[Wrong]:
    """Everything in the basket that contradicts itself or can't be. `settings` are made of it."""
    if not is_currency(basket.currency):
        yield _is("currency", basket.currency, "write the shop's currency by ISO 4217, such as USD")
    yield from _shop(basket, settings)
    yield from _suppliers(basket, settings)
    yield from _rates(basket)
    by_supplier = currencies_at(basket.suppliers, basket.at.date())
    for number, offer in enumerate(basket.offers):
        yield from _offer(f"offers[{number}]", offer, by_supplier, basket.at.date())
    same = [(one.our_part, *_article(one)) for one in basket.offers]
    yield from _twice("offers", same, "is the same offer as", "keep one of them, or make its price breaks one list")
    places = [(one.supplier, one.supplier_number, _row(one)) for one in basket.offers]
    wanted = "name the worksheet and row each of them stands in, or leave source out"
    yield from _twice("offers", places, "has the number and the source of", wanted)
    yield from _needs(basket)
    yield from _wishes("wishes", basket.wishes, basket.at.date())


def _is(at: str, found: object, wanted: str) -> Wrong:
    return Wrong(code="field-can-not-be", at=at, found=str(found) or "blank", wanted=wanted)


def _says(at: str, found: str, wanted: str) -> Wrong:
    return Wrong(code="basket-contradicts", at=at, found=found, wanted=wanted)


def _twice(at: str, keys: Iterable[Hashable], words: str, wanted: str) -> Iterator[Wrong]:
    first: dict[Hashable, int] = {}
    for number, key in enumerate(keys):
        if key in first:
            yield _says(f"{at}[{number}]", f"it {words} {at}[{first[key]}]", wanted)
        first.setdefault(key, number)


def _shop(basket: Basket, settings: Settings) -> Iterator[Wrong]:
    shop = basket.shop
    for name in ("mileage_rate", "rate_per_km", "clerk_cost"):
        yield from _not_below_zero(f"shop.{name}", getattr(shop, name))
    for one in check_shop_dates(settings):
        yield _says("shop", one.what, one.remedy)


def _suppliers(basket: Basket, settings: Settings) -> Iterator[Wrong]:
    for number, terms in enumerate(basket.suppliers):
        yield from _terms(f"suppliers[{number}]", terms, settings)
    versions = [(terms.supplier, terms.starts_on) for terms in basket.suppliers]
    yield from _twice("suppliers", versions, "is for the same supplier and day as", "keep the one that holds")


def _terms(at: str, terms: Terms, settings: Settings) -> Iterator[Wrong]:
    told = terms_contradictions(terms)
    for one in told:
        yield _says(f"{at}.{in_json(one.field)}", one.found, "correct it")
    if not told:
        for wrong in (*check_dates(terms), *check_zone(terms, settings)):
            yield _says(at, wrong.what, wrong.remedy)


def _rates(basket: Basket) -> Iterator[Wrong]:
    for number, rate in enumerate(basket.rates):
        at = f"rates[{number}]"
        if not is_currency(rate.currency):
            yield _is(f"{at}.currency", rate.currency, "write a currency of ISO 4217, such as EUR")
        if rate.into != basket.currency:
            yield _is(f"{at}.into", rate.into, f"give rates into the basket's currency, {basket.currency}")
        if rate.rate <= 0:
            yield _is(f"{at}.rate", rate.rate, "a rate is above zero")
    same = [(rate.currency, rate.dated) for rate in basket.rates]
    yield from _twice("rates", same, "is for the same currency and day as", "keep the one that holds")
    table, day = Rates(into=basket.currency, rates=basket.rates), basket.at.date()
    for number, terms in enumerate(basket.suppliers):
        if terms not in started(basket.suppliers, day).values():
            continue
        yield from _without_rate(f"suppliers[{number}].currency", terms.currency, table, day)
        for place, fee in enumerate(terms.entry_fees):
            yield from _without_rate(f"suppliers[{number}].entry_fees[{place}].currency", fee.currency, table, day)


def _without_rate(at: str, currency: str, table: Rates, day: date) -> Iterator[Wrong]:
    if not is_currency(currency):  # blank, or told already
        return
    try:
        table.on(currency, day)
    except Refused:
        found = f"there is no rate from {currency} to {table.into} on or before {day}"
        yield _says(at, found, "add one with its date to rates")


def _offer(at: str, offer: BasketOffer, currencies: dict[str, str], today: date) -> Iterator[Wrong]:
    if not offer.our_part.strip():
        yield _is(f"{at}.our_part", "blank", "write the part as a need names it")
    if not offer.supplier_number.strip():
        yield _is(f"{at}.supplier_number", "blank", "write the supplier's number")
    if offer.supplier not in currencies:
        yield _says(f"{at}.supplier", f"there are no terms for '{offer.supplier}'", "add an entry to suppliers")
    elif offer.currency != currencies[offer.supplier]:
        theirs = currencies[offer.supplier]
        yield _is(f"{at}.currency", offer.currency, f"write prices in the currency of the supplier's terms, {theirs}")
    yield from _amounts(at, offer)
    yield from _breaks(f"{at}.breaks", offer.breaks)
    yield from _days(at, offer, today)


def _amounts(at: str, offer: BasketOffer) -> Iterator[Wrong]:
    for name in ABOVE_ZERO:
        value: Decimal | None = getattr(offer, name)
        if value is not None and value <= 0:
            yield _is(f"{at}.{name}", value, "leave it out if it is not known")
    for name in PIECES:
        if getattr(offer, name) < 1:
            yield _is(f"{at}.{name}", getattr(offer, name), "count at least 1")
    yield from _not_below_zero(f"{at}.core_charge", offer.core_charge)
    yield from _not_below_zero(f"{at}.stock", offer.stock)
    for number, place in enumerate(offer.stock_places):
        yield from _not_below_zero(f"{at}.stock_places[{number}].pieces", place.pieces)
    if offer.gtin and not is_gtin(offer.gtin):
        yield _is(
            f"{at}.gtin", f"'{offer.gtin}'", "write 8, 12, 13 or 14 digits of which the last is a right check digit"
        )
    if offer.origin and not (len(offer.origin) == 2 and offer.origin.isalpha() and offer.origin.isupper()):
        yield _is(f"{at}.origin", f"'{offer.origin}'", "write the country as two letters of ISO 3166-1, such as DE")


def _not_below_zero(at: str, value: Decimal | int | None) -> Iterator[Wrong]:
    if value is not None and value < 0:
        yield _is(at, value, "write it without a minus")


def _breaks(at: str, breaks: tuple[PriceBreak, ...]) -> Iterator[Wrong]:
    for number, one in enumerate(breaks):
        if one.from_quantity < 1:
            yield _is(f"{at}[{number}].from_quantity", one.from_quantity, "count from at least 1 piece")
        if one.price <= 0:
            yield _is(f"{at}[{number}].price", one.price, "leave the entry out if there is no price")
        before = breaks[number - 1].from_quantity if number else 0
        if one.from_quantity == before:
            yield _says(f"{at}[{number}]", f"two prices from {before} pieces on", "keep the one that holds")
        elif one.from_quantity < before:
            found = f"from {one.from_quantity} pieces on stands after from {before}"
            yield _says(f"{at}[{number}]", found, "write the breaks in rising order")


def _days(at: str, offer: BasketOffer, today: date) -> Iterator[Wrong]:
    priced = offer.priced_on
    if priced is not None and priced > today:
        yield _is(f"{at}.priced_on", priced, f"a price can't be of a day after {today}, the day of planning")
    if priced is None and today < offer.source.sheet_date < FAR_FUTURE:
        yield _is(f"{at}.source.sheet_date", offer.source.sheet_date, f"a sheet of a day after {today} does not hold")
    if offer.valid_from and offer.valid_to and offer.valid_to < offer.valid_from:
        yield _says(f"{at}.valid_to", f"{offer.valid_to} is before valid_from, {offer.valid_from}", "correct one")
    lead = offer.lead_time
    if lead is None:
        return
    if (lead.least is None) != (lead.most is None):
        yield _says(f"{at}.lead_time", "least and most go together", "write both, or none where no day is known")
    elif lead.least is not None and lead.most is not None and not 0 <= lead.least <= lead.most:
        yield _says(f"{at}.lead_time", f"{lead.least} to {lead.most} days can't be", "write the smaller number first")


def _needs(basket: Basket) -> Iterator[Wrong]:
    if not basket.needs:
        yield _says("needs", "nothing is needed", "add at least one need")
    for number, need in enumerate(basket.needs):
        yield from _need(f"needs[{number}]", need, basket.at.date())
    yield from _twice("needs", (one.label for one in basket.needs), "has the same label as", "give each its own")


def _need(at: str, need: PlanNeed, today: date) -> Iterator[Wrong]:
    for name in ("label", "our_part"):
        if not getattr(need, name).strip():
            yield _is(f"{at}.{name}", "blank", "write one")
    if need.quantity < 1:
        yield _is(f"{at}.quantity", need.quantity, "ask for at least 1")
    if need.may_split and need.together:
        found = f"it may be split and must come together with '{need.together}'"
        yield _says(at, found, "take one of the two out")
    if need.size and not is_designation(need.size):
        yield _is(f"{at}.size", f"'{need.size}'", "write a standard designation such as B88, or leave it out")
    yield from _not_past(f"{at}.need_by", need.need_by, today)


def _not_past(at: str, day: date | None, today: date) -> Iterator[Wrong]:
    if day is not None and day < today:
        yield _is(at, day, f"name a day from {today} on, the day of planning")


def _wishes(at: str, wishes: PlanWishes, today: date) -> Iterator[Wrong]:
    yield from _not_past(f"{at}.need_by", wishes.need_by, today)
    yield from _not_below_zero(f"{at}.value_per_day", wishes.value_per_day)
    if wishes.objective == "cost and days" and wishes.value_per_day is None:
        yield _says(f"{at}.objective", "'cost and days' needs the price of a day", "add value_per_day")
    if wishes.most_suppliers is not None and wishes.most_suppliers < 1:
        yield _is(f"{at}.most_suppliers", wishes.most_suppliers, "allow at least 1, or leave it out for any number")
    if not 0 <= wishes.surplus_credit_percent <= 100:
        yield _is(f"{at}.surplus_credit_percent", wishes.surplus_credit_percent, "write per cent from 0 to 100")
    if wishes.seconds < 1:
        yield _is(f"{at}.seconds", wishes.seconds, "give at least 1 second")


def _row(offer: BasketOffer) -> tuple[Hashable, ...]:
    """The place on a sheet by which offers of one number are told apart."""
    return offer.source.worksheet, offer.source.row


def _article(offer: BasketOffer) -> tuple[Hashable, ...]:
    """What tells one article of a supplier from another: his number may stand for several packs."""
    maker = (offer.maker, offer.maker_number)
    return offer.supplier, offer.supplier_number, *maker, offer.pack, offer.order_multiple, offer.minimum
