"""The JSON Schemas (draft 2020-12) of a basket and of the plan that answers it, made from the values themselves."""

import json
from collections.abc import Callable, Iterator
from typing import Any

import msgspec

from ..basics.basket import Basket
from ..basics.plan import Plan
from .shipped_files import template_folder

DRAFT = "https://json-schema.org/draft/2020-12/schema"
BASKET_SCHEMA = "basket.schema.json"
ANSWER_SCHEMA = "plan_answer.schema.json"

NUMBER = r"^-?[0-9]+(\.[0-9]+)?([eE][+-]?[0-9]{1,3})?$"
DAY = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}$"
MOMENT = r"^[0-9]{4}-[0-9]{2}-[0-9]{2}[T ][0-9]{2}:[0-9]{2}(:[0-9]{2})?$"
CLOCK = r"^[0-9]{2}:[0-9]{2}(:[0-9]{2})?$"

LEFT_OUT = {
    "Basket": ("at",),
    "BasketOffer": ("currency", "source"),
    "LeadTime": ("text",),
    "Rate": ("into",),
    "Terms": ("name", "starts_on"),
}
"""Fields of a value that a basket may leave out because something else in it says them."""

AT_LEAST_ONE = {
    "BasketOffer": ("price_basis", "pack", "order_multiple", "minimum"),
    "PlanNeed": ("quantity",),
    "PlanWishes": ("most_suppliers", "seconds"),
    "PriceBreak": ("from_quantity",),
}


def basket_schema() -> str:
    """What a basket may hold. It says less than reading one does: contradictions are told there only."""
    made = _schema(Basket, "Basket", _as_written)
    for kind, names in LEFT_OUT.items():
        one = made["$defs"][kind]
        one["required"] = [name for name in one["required"] if name not in names]
    for kind, names in AT_LEAST_ONE.items():
        for name in names:
            made["$defs"][kind]["properties"][name]["minimum"] = 1
    made["$defs"]["Basket"]["properties"]["needs"]["minItems"] = 1
    made["$defs"]["Basket"]["properties"]["at"]["pattern"] = MOMENT
    made["$defs"]["Terms"]["properties"]["cut_off"]["pattern"] = CLOCK
    return _text(made)


def answer_schema() -> str:
    """What `sourcing plan --json` prints."""
    return _text(_schema(Plan, "Plan", _as_printed))


def shipped_schema(name: str) -> str:
    """A schema as it is kept with the program."""
    return (template_folder() / name).read_text(encoding="utf-8")


def _schema(kind: type, title: str, leaf: Callable[[dict[str, Any]], None]) -> dict[str, Any]:
    made: dict[str, Any] = msgspec.json.schema(kind)
    for one in list(_inside(made)):
        one.pop("title", None)
        if "description" in one:
            one["description"] = " ".join(one["description"].split())
        leaf(one)
    return {"$schema": DRAFT, "title": title, **made}


def _inside(node: object) -> Iterator[dict[str, Any]]:
    """Every object of the schema, defaults and names of fields left aside."""
    if isinstance(node, list):
        for one in node:
            yield from _inside(one)
    if isinstance(node, dict):
        yield node
        for name, one in node.items():
            if name in ("properties", "$defs"):
                for field in one.values():
                    yield from _inside(field)
            elif name != "default":
                yield from _inside(one)


def _as_written(node: dict[str, Any]) -> None:
    """What a person writes: amounts as numbers or text."""
    form = node.pop("format", None)
    if form == "decimal":
        node.update(type=["number", "string"], pattern=NUMBER)
    elif form == "date":
        node["pattern"] = DAY


def _as_printed(node: dict[str, Any]) -> None:
    """What the program prints: amounts as text, so that no reader makes binary fractions of them."""
    form = node.pop("format", None)
    if form == "decimal":
        node["pattern"] = NUMBER
    elif form == "date":
        node["pattern"] = DAY


def _text(made: dict[str, Any]) -> str:
    return json.dumps(made, indent=1, ensure_ascii=False) + "\n"
