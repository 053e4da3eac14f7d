"""What the fields of the settings are called where a person fills them in, for what is told of them.

The words are those of the counter's forms; a test holds them together.
"""

import re

LABELS = {
    "shop": "Name of the shop",
    "shop.name": "Name of the shop",
    "shop.email": "E-mail",
    "currency": "Money",
    "locale": "How days and numbers are written",
    "labour_rate": "An hour of labour, to the customer",
    "technician_cost": "An hour of the technician",
    "clerk_cost": "An hour of the clerk",
    "mileage_rate": "A mile driven",
    "rate_per_km": "A kilometre driven",
    "markup_bands": "Price of a part: its cost times",
    "markup_bands.from_cost": "Cost from which the price of a part is reckoned",
    "markup_bands.multiplier": "Price of a part: its cost times",
    "category_bands": "Other bands for a category",
    "category_bands.category": "Other bands for a category",
    "category_bands.bands": "Other bands for a category",
    "category_bands.bands.from_cost": "Other bands for a category: cost",
    "category_bands.bands.multiplier": "Other bands for a category: cost times",
    "price_ending.endings": "Prices end in",
    "price_ending.from_price": "Prices end in: from this price on",
    "margin_floor_percent": "Tell me of a parts margin below",
    "taxes": "Tax",
    "taxes.name": "Name of the tax",
    "taxes.percent": "Tax: per cent",
    "taxes.on": "Tax: due on",
    "taxes.starts_on": "Tax: charged from",
    "calendar.country": "Country whose public holidays you keep",
    "calendar.region": "State or region",
    "calendar.closed": "Also closed on",
    "calendar.week": "Open",
    "quote_valid_days": "Days a quote is good for",
    "time_zone": "Clock of the shop",
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
