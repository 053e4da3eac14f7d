"""What the fields of a supplier's terms are called where a person fills them in; a test holds them to the form."""

import re

from ..basics.contradiction import Contradiction

LABELS = {
    "freight.charge": "Charge an order or a parcel",
    "freight.free_from": "Nothing from this value on",
    "freight.bands": "By value of the order",
    "freight.weight_bands": "By weight, up to",
    "freight.per_weight": "For each unit of weight",
    "freight.least": "At least",
    "freight.most": "At most",
    "freight.parcel_limit": "A parcel weighs at most",
    "freight.round_trip_miles": "Miles there and back",
    "freight.round_trip_km": "Kilometres there and back",
    "freight.round_trip_hours": "Hours there and back",
    "minimum_order": "Minimum order",
    "small_order_fee": "Fee for an order below it",
    "handling": "Handling an order",
    "discount_percent": "Discount on every line, per cent",
    "cash_discount.percent": "Cash discount, per cent",
    "cash_discount.within_days": "Paid within days",
    "order_discounts": "Discount on the whole order",
    "cut_off": "Ordered by this time it leaves the same day",
    "time_zone": "On which clock",
    "dispatch_days": "Working days until stock leaves",
    "transit_days": "Working days on the road",
    "prices_hold_days": "Days a price holds",
    "calendar.country": "Country whose public holidays are kept",
    "calendar.region": "State or region",
    "calendar.closed": "Also closed on",
    "return_terms.restocking_percent": "Restocking, per cent",
    "return_terms.freight": "Freight of a return",
    "return_terms.within_days": "Within days",
    "core_return.within_days": "Old part within days",
    "core_return.freight": "Freight of an old part",
    "name": "Name",
    "currency": "Money",
    "duty_percent": "Duty, per cent",
    "entry_fee": "Entry fee an order",
}


def as_typed(one: Contradiction) -> str:
    """What is wrong, as a person types it and not as a file has it, with what the form calls the field, if it does.

    What is wrong with one entry of a list is told of the list.
    """
    name = one.field
    while name not in LABELS and "." in name:
        name = name.rpartition(".")[0]
    found = re.sub(r"\b(\d\d:\d\d):00\b", r"\1", one.found.replace("a list [ ]", "a list with commas between"))
    return f"{found} (in the form: {LABELS[name]})" if name in LABELS else found
