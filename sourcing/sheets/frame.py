"""The table of offers: one row an offer, one column a field, every column of dtype object.

pandas would make NaN of None and floats of integers; with dtype object a blank stays None and a count stays an int.
"""

from collections.abc import Mapping
from typing import Any

import pandas as pd
from numpy.typing import NDArray

OFFER_COLUMNS = (
    "worksheet", "row", "supplier_number", "maker", "maker_number", "description", "currency", "list_price",
    "breaks", "price_basis", "pack", "order_multiple", "minimum", "stock", "lead_time", "core_charge",
    "superseded_by", "no_longer_available", "note", "sold_by", "gtin", "discount_code", "stock_places", "weight_kg",
    "oversize", "hazardous", "origin", "tariff_code", "valid_from", "valid_to", "length_cm", "width_cm",
    "height_cm", "returnable",
)  # fmt: skip
"""worksheet: '' in a text file. row: from 1, as the file shows it. list_price, core_charge: Decimal or None.
breaks: tuple of PriceBreak, () without a net price. price_basis, pack, order_multiple, minimum: int. stock: int or
None. lead_time: LeadTime or None. weight_kg, length_cm, width_cm, height_cm: Decimal or None, of one piece packed.
oversize, hazardous, returnable: bool, None where not stated. valid_from, valid_to: date or None. The rest is text,
'' where blank; no_longer_available is a bool."""


def offers_frame(columns: Mapping[str, NDArray[Any] | list[object]]) -> pd.DataFrame:
    """The frame of these values, in the order of OFFER_COLUMNS. A missing column is a bug: KeyError."""
    return pd.DataFrame({name: pd.Series(columns[name], dtype=object) for name in OFFER_COLUMNS}, copy=False)
