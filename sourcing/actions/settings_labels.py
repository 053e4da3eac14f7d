"""What the fields of the settings are called where a person fills them in, for what is told of them.

The words are those of the counter's forms; a test holds them together.
"""

import re

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


KEY = re.compile(r"(?<=[{,] )([a-z_]+)(?= = )")


def as_filled_in(text: str, field: str = "") -> str:
    """A sentence about settings with their fields as the form calls them, and steps as it has them. `field`: of whose
    entries it tells, so that 'starts_on' in one of 'taxes' is called 'charged from'."""
    text = in_form_words(text, LABELS)
    return KEY.sub(lambda found: LABELS.get(f"{field}.{found[1]}", found[1]).rpartition(": ")[2], text)
