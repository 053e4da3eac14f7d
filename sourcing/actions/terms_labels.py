"""What the fields of a supplier's terms are called where a person fills them in; a test holds them to the form."""

import re

from ..basics.contradiction import Contradiction
from ..basics.problem import Problem, Refused
from ..basics.value import changed
from .field_words import ARROW, BLANKS, changes_in_words, value_of, value_words
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
    "tax": "Tax at the border that the shop can't get back",
    "tax.name": "That tax, its name",
    "tax.percent": "That tax, per cent",
    "tax.on": "That tax is due on",
}

OTHERS = {
    "breaks": "Price breaks hold for",
    "duty_on": "Duty is on",
    "duty_rates": "Other rates of duty",
    "entry_fees": "Other entry fees",
    "handling_per_line": "Handling of each line",
    "payment_percent": "Payment fee, per cent",
    "split.sends": "Part of it late: he sends",
    "split.later_charge": "Charge of each later delivery",
    "tax.uplift_percent": "That tax: goods and freight are raised by, per cent",
    "freight.between": "Freight that is asked for, least and most",
    "freight.piece_weight": "Weight of a piece whose weight is not stated, least and most",
    "freight.weight_step": "Weight is rounded up to",
    "freight.dimensional.divisor": "Weight by size: divisor",
    "freight.dimensional.unit": "Weight by size: unit",
    "freight.dimensional.sides": "Weight by size: sides",
    "freight.oversize.charge": "Oversize: charge",
    "freight.oversize.longer_than_cm": "Oversize: longer than, cm",
    "freight.oversize.per": "Oversize: charged for each",
    "freight.oversize.if_not_stated": "Oversize: where nothing is stated",
    "freight.oversize.counts": "Oversize: counts towards free freight",
}
"""What fields are called that the form has no place of their own for; they are typed as a file has them."""

NAMED = {**LABELS, **OTHERS}


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


NOT_KNOWN = ("cut_off", "duty_percent", RULE_OF_FREIGHT)
"""Fields that are not known where nothing is said; so are those of goods and old parts that go back."""


def in_the_form(text: str, field: str = "") -> str:
    """A sentence about terms with their fields, their values and the rules of freight as the form has them; with
    `field`, its value alone, which the text gives as a file does (blank: not set)."""
    return _value(field, text) if field else changes_in_words(text, NAMED, _change, _rest)


def _rest(text: str) -> str:
    text = RULE.sub(lambda found: f"{'choose ' if found[1] else ''}'{RULES.get(found[2], found[2])}'", text)
    return in_form_words(IN_FORM.sub("", text), LABELS)


def _change(field: str, before: str, after: str) -> str:
    return f"'{field_in_the_form(field)}' {_value(field, before)}{ARROW}{_value(field, after)}"


def _value(field: str, text: str) -> str:
    if not text or text in BLANKS:
        if field == "prices_hold_days":
            return "until the next sheet"
        is_open = field in NOT_KNOWN or field.startswith(("return_terms.", "core_return."))
        return BLANKS[is_open or text == BLANKS[1]]
    found = value_of(text)
    return RULES.get(str(found), str(found)) if field == RULE_OF_FREIGHT else value_words(found)


def field_in_the_form(field: str) -> str:
    """What the form calls a field; its name in a file where nothing is known of it."""
    return NAMED.get(field) or label_in(field, LABELS) or field


def problem_in_the_form(one: Problem) -> Problem:
    """The same of a problem with terms that were filled in. Where a field of a file is asked for, it stays."""
    return one if one.code == "no-such-term" else changed(one, what=in_the_form(one.what))


def refused_in_the_form(refusal: Refused) -> Refused:
    """The same of a refusal."""
    return Refused(*map(problem_in_the_form, refusal.problems))
