"""What was typed into the forms of the settings, by field as a file such as shop.toml has them. Nothing is judged."""

from collections.abc import Callable, Mapping
from typing import Any

from flask import request

from ...basics.problem import refused
from ..forms import marked, text

Typed = Mapping[str, Any]

MOST_ROWS = 100


def part_typed(part: str) -> Typed:
    """The fields of one part of the settings."""
    return PARTS[part]()


def first_typed() -> Typed:
    """The fields of the form a shop begins with: one band, one tax."""
    tax = {"name": text("tax_name"), "percent": text("tax_percent"), "on": marked("tax_on")}
    return {
        "shop": {"name": text("shop_name")},
        "currency": text("currency").upper(),
        "locale": text("locale"),
        "labour_rate": text("labour_rate"),
        "technician_cost": text("technician_cost"),
        "markup_bands": [{"from_cost": "0", "multiplier": text("multiplier")}],
        "taxes": [{**tax, "starts_on": text("tax_from")}] if tax["name"] or tax["percent"] else [],
        "calendar": {"country": text("country").upper()},
    }


def _lines(name: str) -> list[str]:
    return [line.strip() for line in text(name).splitlines() if line.strip()]


def _words(name: str) -> list[str]:
    """Words with commas or lines between."""
    return [one.strip() for one in text(name).replace("\n", ",").split(",") if one.strip()]


def _rows(prefix: str, *fields: str) -> list[dict[str, Any]]:
    """Rows of fields numbered from 1: 'tax-1-name'."""
    there = [at for at in range(1, MOST_ROWS) if any(f"{prefix}-{at}-{field}" in request.form for field in fields)]
    return [{field: text(f"{prefix}-{at}-{field}") for field in fields} for at in there]


def _shop() -> Typed:
    shop = {name: text(f"shop_{name}") for name in ("name", "telephone", "email")}
    return {"shop": {**shop, "address": _lines("shop_address")}}


def _prices() -> Typed:
    return {
        "markup_bands": _rows("band", "from_cost", "multiplier"),
        "category_bands": [_category(line) for line in _lines("category_bands")],
        "cap_at_list_price": text("cap_at_list_price"),
        "floor_bands": text("floor_bands"),
        "margin_floor_percent": text("margin_floor_percent"),
        "price_ending": {"endings": _words("endings"), "from_price": text("endings_from")} if text("endings") else {},
    }


def _category(line: str) -> Typed:
    """'belts: 0 = 1.60, 20 = 1.50'."""
    name, _, bands = line.rpartition(":")
    pairs = [_sides(one, "belts: 0 = 1.60, 20 = 1.50") for one in bands.split(",") if one.strip()]
    return {"category": name, "bands": [{"from_cost": one, "multiplier": other} for one, other in pairs]}


def _sides(typed: str, example: str) -> tuple[str, str]:
    left, sign, right = typed.partition("=")
    if not sign:
        raise refused("sides-of-a-line", found=typed[:60], example=example)
    return left.strip(), right.strip()


def _labour() -> Typed:
    names = ("labour_rate", "technician_cost", "clerk_cost", "mileage_rate", "rate_per_km")
    return {name: text(name) for name in names}


def _charges() -> Typed:
    taxes = _rows("tax", "name", "percent", "starts_on")
    for at, tax in enumerate(taxes, 1):
        tax["on"] = marked(f"tax-{at}-on")
    fees = _rows("fee", "name", "of", "charge", "percent", "categories", "most", "starts_on")
    for fee in fees:
        fee["categories"] = [one.strip() for one in fee["categories"].split(",") if one.strip()]
    return {
        "taxes": taxes,
        "fee_rules": fees,
        "supplies": {"percent_of_labour": text("supplies_percent"), "most": text("supplies_most")},
        "freight_to_customer": text("freight_to_customer"),
        "deposit": _deposit(),
        "tolerance": {"percent": text("tolerance_percent"), "amount": text("tolerance_amount")},
    }


def _deposit() -> Typed:
    """None is asked where no per cent is given; what it is of says nothing by itself."""
    if not text("deposit_percent"):
        return {}
    return {"percent": text("deposit_percent"), "of": text("deposit_of"), "from_amount": text("deposit_from")}


def _days() -> Typed:
    calendar = {
        "week": list(marked("week")),
        "country": text("country").upper(),
        "region": text("region").upper(),
        "closed": _words("closed"),
    }
    return {"calendar": calendar, "quote_valid_days": text("quote_valid_days"), "time_zone": text("time_zone")}


def _papers() -> Typed:
    texts = {name: _lines(name) for name in ("terms_text", "special_order_terms", "law_text", "cautions")}
    words = {name: text(name) for name in ("locale", "paper_size", "cautions_dated")}
    return {**texts, **words, "currency": text("currency").upper()}


PARTS: dict[str, Callable[[], Typed]] = {
    "shop": _shop,
    "prices": _prices,
    "labour": _labour,
    "charges": _charges,
    "days": _days,
    "papers": _papers,
}
"""The parts of the settings that are changed together."""
