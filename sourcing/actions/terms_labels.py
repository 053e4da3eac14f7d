"""What the fields of a supplier's terms are called where a person fills them in; a test holds them to the form."""

import re

from ..basics.contradiction import Contradiction
from ..basics.problem import Problem, Refused
from ..basics.value import changed
from .form_words import in_form_words, label_in

LABELS = {
    "freight": "Freight",
    "freight.rule": "How freight is charged",
    "freight.weight_unit": "Weight in",
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
    "calendar.week": "Works on",
    "order_days": "Takes orders on",
    "address": "Address",
    "returns": "In the supplier's words",
    "return_terms.returnable": "Do goods go back?",
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


RULES = {
    "flat": "so much an order",
    "by order value": "by the value of the order",
    "by weight": "by the weight of the order",
    "per weight": "so much for each unit of weight",
    "per parcel": "so much a parcel",
    "pick-up": "we drive and pick up",
    "included": "the price is delivered",
    "asked": "said only when asked",
}
"""How the form says each rule of freight."""

RULE_OF_FREIGHT = "freight.rule"
RULE = re.compile(r"(?:the rule|(write) rule =) '([a-z -]+)'")
IN_FORM = re.compile(r" \(in the form: [^()]*\)")
"""What `as_typed` adds for who reads the name a file has for the field."""


def in_the_form(text: str, field: str = "") -> str:
    """A sentence about terms with their fields and the rules of freight as the form calls them; as the form has the
    text of a field, where that is named."""
    if field == RULE_OF_FREIGHT:
        return RULES.get(text.strip('"'), text)
    text = RULE.sub(lambda found: f"{'choose ' if found[1] else ''}'{RULES.get(found[2], found[2])}'", text)
    return in_form_words(IN_FORM.sub("", text), LABELS)


def field_in_the_form(field: str) -> str:
    """What the form calls a field; its name in a file where it is not on the form."""
    return label_in(field, LABELS) or field


def problem_in_the_form(one: Problem) -> Problem:
    """The same of a problem with terms that were filled in. Where a field of a file is asked for, it stays."""
    return one if one.code == "no-such-term" else changed(one, what=in_the_form(one.what))


def refused_in_the_form(refusal: Refused) -> Refused:
    """The same of a refusal."""
    return Refused(*map(problem_in_the_form, refusal.problems))
