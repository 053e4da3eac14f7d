"""What the fields of the settings are called where a person fills them in, for what is told of them.

The words are those of the counter's forms; a test holds them together.
"""

import re
from typing import Any

import msgspec

from ..basics.settings import CategoryBands, FeeRule, MarkupBand, Tax
from ..basics.settings_words import bands_words, fee_words, tax_words
from ..basics.value import from_plain
from .field_words import ARROW, BLANKS, changes_in_words, value_of, value_words
from .form_words import in_form_words

LABELS = {
    "shop": "Name of the shop",
    "shop.name": "Name of the shop",
    "shop.address": "Address",
    "shop.telephone": "Telephone",
    "shop.email": "E-mail",
    "currency": "Money",
    "locale": "How days and numbers are written",
    "labour_rate": "An hour of labour, to the customer",
    "technician_cost": "An hour of the technician",
    "clerk_cost": "An hour of the clerk",
    "mileage_rate": "A mile driven",
    "rate_per_km": "A kilometre driven",
    "markup_bands": "Price of a part: its cost times",
    "markup_bands.from_cost": "Price from cost: from cost",
    "markup_bands.multiplier": "Price of a part: its cost times",
    "category_bands": "Other bands for a category",
    "category_bands.category": "Other bands for a category",
    "category_bands.bands": "Other bands for a category",
    "category_bands.bands.from_cost": "Other bands for a category: cost",
    "category_bands.bands.multiplier": "Other bands for a category: cost times",
    "price_ending.endings": "Prices end in",
    "price_ending.from_price": "Prices end in: from this price on",
    "cap_at_list_price": "Above the list price on the supplier's sheet",
    "floor_bands": "May a dearer part sell for less than a cheaper one",
    "margin_floor_percent": "Tell me of a parts margin below",
    "taxes": "Tax",
    "taxes.name": "Name of the tax",
    "taxes.percent": "Tax: per cent",
    "taxes.on": "Tax: due on",
    "taxes.starts_on": "Tax: charged from",
    "fee_rules": "Fee",
    "fee_rules.name": "Fee: name",
    "fee_rules.of": "Fee: reckoned",
    "fee_rules.charge": "Fee: charge",
    "fee_rules.percent": "Fee: per cent",
    "fee_rules.categories": "Fee: only for categories",
    "fee_rules.most": "Fee: at most",
    "fee_rules.starts_on": "Fee: from day",
    "supplies": "Shop supplies",
    "supplies.percent_of_labour": "Shop supplies: per cent of labour",
    "supplies.most": "Shop supplies: at most",
    "freight_to_customer": "Freight of parts",
    "deposit": "Deposit before ordering",
    "deposit.percent": "Deposit before ordering: per cent",
    "deposit.of": "Deposit before ordering: of",
    "deposit.from_amount": "Deposit before ordering: from this amount on",
    "tolerance.percent": "A price may rise without a new question by: per cent",
    "tolerance.amount": "A price may rise without a new question by: amount",
    "calendar.country": "Country whose public holidays you keep",
    "calendar.region": "State or region",
    "calendar.closed": "Also closed on",
    "calendar.week": "Open",
    "quote_valid_days": "Days a quote is good for",
    "time_zone": "Clock of the shop",
    "paper_size": "Paper",
    "terms_text": "On the quote, below the price",
    "special_order_terms": "On each line that is a special order",
    "law_text": "What the law of your place asks of an estimate, in your words",
    "cautions": "Cautions for bench and customer",
    "cautions_dated": "When somebody last went over the cautions",
}


def label_of(field: str) -> str:
    """'Tax: per cent' for 'taxes.1.percent', with its row from the second on. Others keep the name a file gives them.

    What is wrong with one entry of a list of texts is told of the list.
    """
    name = re.sub(r"\.\d+", "", field)
    if name not in LABELS:
        return field
    rows = [int(one) for one in re.findall(r"\.(\d+)\.", f"{field}.")]
    return f"{LABELS[name]} (row {rows[0]})" if rows and rows[0] > 1 else LABELS[name]


BAND = re.compile(r"markup_bands\.(\d+)\.(from_cost|multiplier)")


def band_typed(text: str) -> str:
    """A sentence about bands that were typed a line for each, 'from this cost = cost times'."""
    said = {"from_cost": "from this cost", "multiplier": "cost times"}
    return BAND.sub(lambda found: f"band {found[1]}, '{said[found[2]]}',", text)


CHOICES: dict[str, dict[str | bool, str]] = {
    "freight_to_customer": {"carried": "comes out of the markup", "billed": "on a line of its own, at cost"},
    "cap_at_list_price": {True: "never", False: "prices may be"},
    "floor_bands": {True: "no, held up at what the band below ends at", False: "yes, as the bands say"},
}
"""How the form says what is chosen."""

NONE = ("taxes", "fee_rules", "category_bands", "calendar.closed", "supplies.percent_of_labour", "deposit.percent")
"""Fields of which none is meant where nothing is said."""


def as_filled_in(text: str, field: str = "") -> str:
    """A sentence about settings with their fields and values as the form has them; with `field`, its value alone, which
    the text gives as a file does (blank: not set)."""
    if field:
        return _value(field, text)
    return changes_in_words(text, LABELS, _change, lambda rest: in_form_words(rest, LABELS))


def _change(field: str, before: str, after: str) -> str:
    return f"'{label_of(field)}' {_value(field, before)}{ARROW}{_value(field, after)}"


def _value(field: str, text: str) -> str:
    if not text or text in BLANKS:
        return "none" if field in NONE else text or BLANKS[0]
    found = value_of(text)
    try:
        return _words(field, found)
    except msgspec.ValidationError:  # a deed of long ago may have other fields
        return value_words(found)


def _words(field: str, found: Any) -> str:
    if field in CHOICES and isinstance(found, (str, bool)):
        return CHOICES[field].get(found) or value_words(found)
    if field == "markup_bands":
        return bands_words(from_plain(found, tuple[MarkupBand, ...]))
    if field == "category_bands":
        every = from_plain(found, tuple[CategoryBands, ...])
        return "; ".join(f"{one.category}, {bands_words(one.bands)}" for one in every)
    if field == "taxes":
        return "; ".join(f"{one.name}, {tax_words(one)}" for one in from_plain(found, tuple[Tax, ...]))
    if field == "fee_rules":
        return "; ".join(f"{one.name}, {fee_words(one, '')}" for one in from_plain(found, tuple[FeeRule, ...]))
    return value_words(found)
