"""A supplier's terms as a form has them: the text of each usual field, and what was typed as fields that changed."""

from collections.abc import Mapping
from datetime import time
from typing import NamedTuple

from ..basics.problem import refused
from ..basics.terms import CUT_OFF_NOT_KNOWN, Terms
from ..basics.toml_text import toml_text
from ..basics.value import Value

WORDS, LINES = "words", "lines"
"""Lists typed with commas or lines between, and lists of whole lines."""


class Steps(NamedTuple):
    """A list of entries typed a line for each, 'left = right', by the names of both sides."""

    left: str
    right: str


USUAL: dict[str, str | Steps] = {
    "name": "",
    "currency": "",
    "address": LINES,
    "freight.rule": "",
    "freight.charge": "",
    "freight.free_from": "",
    "freight.bands": Steps("from_value", "charge"),
    "freight.weight_bands": Steps("to_weight", "charge"),
    "freight.weight_unit": "",
    "freight.per_weight": "",
    "freight.least": "",
    "freight.most": "",
    "freight.parcel_limit": "",
    "freight.round_trip_miles": "",
    "freight.round_trip_km": "",
    "freight.round_trip_hours": "",
    "minimum_order": "",
    "small_order_fee": "",
    "handling": "",
    "discount_percent": "",
    "order_discounts": Steps("from_value", "percent"),
    "cash_discount.percent": "",
    "cash_discount.within_days": "",
    "duty_percent": "",
    "entry_fee": "",
    "tax.name": "",
    "tax.percent": "",
    "tax.on": WORDS,
    "cut_off": "",
    "time_zone": "",
    "order_days": WORDS,
    "dispatch_days": "",
    "transit_days": WORDS,
    "calendar.week": WORDS,
    "calendar.country": "",
    "calendar.region": "",
    "calendar.closed": WORDS,
    "prices_hold_days": "",
    "returns": "",
    "return_terms.returnable": "",
    "return_terms.restocking_percent": "",
    "return_terms.freight": "",
    "return_terms.within_days": "",
    "core_return.within_days": "",
    "core_return.freight": "",
}
"""The fields of the form, dotted, and how each is typed. What else there is can be written as 'field = value'."""

RULE = "freight.rule"
UNIT = "freight.weight_unit"
CUT_OFF = "cut_off"
TAX, TAX_ON = ("tax.name", "tax.percent"), "tax.on"


def term_texts(terms: Terms | None) -> dict[str, str]:
    """Each usual field as it would be typed; blank where it says nothing."""
    return {field: _text(_value(terms, field), USUAL[field]) for field in USUAL}


def terms_said(terms: Terms | None, typed: Mapping[str, str], more: str = "") -> dict[str, str]:
    """The fields typed otherwise than they are, as `set_terms` takes them. `more`: further lines 'field = value'.

    Freight whose rule was taken out is not known, whatever else stood there of it; so is a tax whose name and per cent
    were taken out no tax. A cut-off left blank is not known;
    it is never the usual one of a file. Fields that were not typed stay as they are.
    """
    before = term_texts(terms)
    said = {
        field: _as_said(text, USUAL[field])
        for field, text in typed.items()
        if field in USUAL and _same(text) != _same(before[field])
    }
    if RULE in typed and not typed[RULE].strip():
        said.pop(UNIT, None)  # the form has one chosen always
        if before[RULE]:
            said["freight"] = ""  # after all that was typed of it
    if all(field in typed and not typed[field].strip() for field in TAX):
        said = {field: text for field, text in said.items() if field not in (*TAX, TAX_ON)}
        if any(before[field] for field in TAX):
            said["tax"] = ""
    elif TAX_ON in typed and not typed[TAX_ON].strip():
        said[TAX_ON] = "[]"  # marked on nothing, which is refused and never taken for the usual
    if CUT_OFF in typed and not typed[CUT_OFF].strip() and (terms is None or CUT_OFF in said):
        said[CUT_OFF] = f"{CUT_OFF_NOT_KNOWN:%H:%M}"
    return said | _lines_said(more)


def _lines_said(more: str) -> dict[str, str]:
    pairs = (line.partition("=") for line in more.splitlines() if line.strip())
    said = {}
    for field, sign, text in pairs:
        if not sign or not field.strip():
            raise refused("sides-of-a-line", found=f"{field}{sign}"[:60], example="payment_percent = 2")
        said[field.strip()] = text.strip()
    return said


def _same(text: str) -> str:
    """The text as it is compared: line ends and blanks at the end make no difference."""
    return "\n".join(line.strip() for line in text.strip().splitlines() if line.strip())


def _value(terms: Terms | None, field: str) -> object:
    found: object = terms
    for name in field.split("."):
        found = getattr(found, name, None)
    return found


def _text(found: object, kind: str | Steps) -> str:
    if found is None or found == CUT_OFF_NOT_KNOWN:
        return ""
    if isinstance(kind, Steps) and isinstance(found, tuple):
        return "\n".join(f"{getattr(one, kind.left)} = {getattr(one, kind.right)}" for one in found)
    if isinstance(found, tuple):
        return ("\n" if kind == LINES else ", ").join(map(str, found))
    if isinstance(found, bool):
        return "true" if found else "false"
    if isinstance(found, time):
        return f"{found:%H:%M}"
    assert not isinstance(found, Value), kind
    return str(found)


def _as_said(text: str, kind: str | Steps) -> str:
    lines = _same(text).splitlines()
    if isinstance(kind, Steps):
        return f"[{', '.join(_step(line, kind) for line in lines)}]" if lines else ""
    if kind == LINES:
        return toml_text(lines) if lines else ""
    return ", ".join(line.rstrip(",") for line in lines) if kind == WORDS else " ".join(lines)


def _step(line: str, kind: Steps) -> str:
    left, sign, right = (part.strip() for part in line.partition("="))
    if not sign:
        raise refused("sides-of-a-line", found=line[:60], example="250 = 22.00")
    return f"{{ {kind.left} = {left}, {kind.right} = {right} }}"
