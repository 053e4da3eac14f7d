"""A small basket to be spoilt in one place at a time."""

import json
from copy import deepcopy
from datetime import datetime
from typing import Any

from sourcing.actions.basket_read import basket_from
from sourcing.basics.basket import Basket
from sourcing.basics.problem import Refused

NOW = datetime(2026, 1, 13, 10, 15)

BASKET: dict[str, Any] = {
    "currency": "USD",
    "at": "2026-01-13T10:15",
    "shop": {"calendar": {"country": "US"}, "mileage_rate": "0.725", "clerk_cost": "22.00"},
    "suppliers": [
        {
            "supplier": "stonegarth",
            "name": "Stonegarth Trade Parts",
            "currency": "USD",
            "freight": {"rule": "flat", "charge": "14.95", "free_from": "200.00"},
            "cut_off": "13:00",
            "transit_days": [1, 2],
        },
        {
            "supplier": "kesselried",
            "currency": "EUR",
            "freight": {"rule": "flat", "charge": "24.00"},
            "duty_percent": 3,
            "transit_days": [5, 8],
        },
    ],
    "rates": [{"currency": "EUR", "rate": "1.0912", "dated": "2026-01-12", "source": "the shop's bank"}],
    "offers": [
        {
            "our_part": "BELT-AUGER",
            "supplier": "stonegarth",
            "supplier_number": "SG-77120",
            "description": "auger drive belt B36 aramid",
            "standing": "maker",
            "breaks": [{"from_quantity": 1, "price": "31.50"}, {"from_quantity": 10, "price": "27.00"}],
            "stock": 4,
        },
        {
            "our_part": "BELT-AUGER",
            "supplier": "kesselried",
            "supplier_number": "K-9036",
            "breaks": [{"from_quantity": 1, "price": "21.50"}],
            "lead_time": {"least": 0, "most": 1},
            "priced_on": "2026-01-02",
        },
    ],
    "needs": [{"label": "1", "our_part": "BELT-AUGER", "quantity": 2}],
}


def spoilt(path: str, value: object) -> bytes:
    """The basket with another value at a dotted place ('offers.0.stock'); `...` takes the field out."""
    tree = deepcopy(BASKET)
    *way, last = (int(step) if step.isdigit() else step for step in path.split("."))
    node: Any = tree
    for step in way:
        node = node[step]
    if value is ...:
        del node[last]
    elif isinstance(last, int) and last == len(node):
        node.append(value)
    else:
        node[last] = value
    return json.dumps(tree).encode()


def read(data: bytes, at: datetime | None = None) -> Basket:
    """The basket of these bytes, at a fixed moment where the file names none."""
    return basket_from(data, "basket.json", at, NOW)


def told(data: bytes) -> list[str]:
    """The sentences a basket is refused with; none where it is taken."""
    try:
        read(data)
    except Refused as refusal:
        return [one.sentence() for one in refusal.problems]
    return []
