"""The journeys' shop written as a basket: the same texts of terms, settings and sheets, by another way than the shop's.

Nothing of the program makes the file, so that a plan or comparison of it is a second working out of the same case.
"""

import csv
import json
import tomllib
from collections.abc import Mapping, Sequence
from datetime import datetime, time
from decimal import Decimal
from pathlib import Path
from typing import Any

from typer.testing import CliRunner

from sourcing.basics.choice import Comparison
from sourcing.basics.plan import Plan
from sourcing.basics.value import to_json
from sourcing.cli.main import app
from tests.journeys.small_shop import SHOP, STATEMENTS, SUPPLIERS

OURS = {number: (code, standing) for code, _, number, standing in STATEMENTS}
LEAD_TIMES: dict[str, dict[str, object]] = {
    "In stock": {"least": 0, "most": 0},
    "2-3 weeks": {"least": 10, "most": 15},
    "Backorder until 2026-03-30": {"leaves_on": "2026-03-30"},
}
"""What the words of the journeys' sheets mean; a week is five working days (common practice, no source)."""

PER_FILE = ("source", "path")
"""What tells where an offer was read and who says that it is the part: it differs between the shop and a basket."""
COMPARED = ("quantity", "need_by", "ranked", "open_offers", "set_aside", "turning_points", "day_spans")
"""What a comparison says of the offers; the rest is how the part is called and what is known of it."""


def basket_file(
    folder: Path,
    at: datetime,
    sheets: Mapping[str, Sequence[str]],
    needs: Sequence[dict[str, Any]],
    terms: Mapping[str, dict[str, Any]] | None = None,
    more: Mapping[str, Any] | None = None,
) -> Path:
    """Write the case: rows of the suppliers' sheets as `small_shop.sheet` takes them, needs, terms that differ from the
    shop's usual ones, and other keys of a basket."""
    settings = tomllib.loads(SHOP, parse_float=str)
    head = {"mileage_rate": settings["mileage_rate"], "clerk_cost": settings["clerk_cost"]}
    basket = {
        "currency": "USD",
        "at": f"{at:%Y-%m-%dT%H:%M}",
        "shop": head,
        "suppliers": [{**one, **(terms or {}).get(one["supplier"], {})} for one in _suppliers()],
        "offers": [_offer(supplier, row) for supplier, rows in sheets.items() for row in rows],
        "needs": list(needs),
        **(more or {}),
    }
    path = folder / "basket.json"
    path.write_text(json.dumps(basket, default=_plain), encoding="utf-8")
    return path


def _suppliers() -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = tomllib.loads(SUPPLIERS, parse_float=str)["supplier"]
    return found


def _offer(supplier: str, row: str) -> dict[str, Any]:
    number, maker, description, listed, net, stock, lead_time = next(csv.reader([row]))
    code, standing = OURS.get(number, ("BELTS", "maker"))
    return {
        "our_part": code,
        "standing": standing,
        "supplier": supplier,
        "supplier_number": number,
        "maker": maker,
        "description": description,
        "list_price": listed,
        "breaks": [{"from_quantity": 1, "price": net}],
        "stock": int(stock),
        "lead_time": {"text": lead_time, **LEAD_TIMES[lead_time]},
    }


def _plain(found: object) -> str:
    return f"{found:%H:%M}" if isinstance(found, time) else str(found)


def run(*words: str) -> dict[str, Any]:
    """A command's answer in JSON; it must end well."""
    done = CliRunner().invoke(app, [*words, "--json"])
    assert done.exit_code == 0, done.output
    answer: dict[str, Any] = json.loads(done.stdout)
    return answer


def plan_file(path: Path, *options: str) -> dict[str, Any]:
    """`sourcing plan --file`, buying no pieces to spare but for a cheaper break, as for a job."""
    return run("plan", "--file", str(path), "--more-than-needed", "cheaper break", *options)


def compare_file(path: Path, need: str, *options: str) -> dict[str, Any]:
    """`sourcing compare --file` for one need."""
    return run("compare", "--file", str(path), "--need", need, *options)


def as_told(found: Plan | Comparison) -> dict[str, Any]:
    """A plan or comparison of the shop's as the command would print it."""
    told: dict[str, Any] = json.loads(to_json(found))
    return told


def compared(told: Mapping[str, Any]) -> Any:
    """All that a comparison of an answer says of the offers."""
    return figures({name: told[name] for name in COMPARED})


def figures(told: object) -> Any:
    """All of an answer, but where its offers were read."""
    if isinstance(told, dict):
        return {name: figures(found) for name, found in told.items() if name not in PER_FILE}
    return [figures(one) for one in told] if isinstance(told, list) else told


def amount(told: Mapping[str, str]) -> Decimal:
    """A sum of an answer, in US dollars."""
    assert told["currency"] == "USD"
    return Decimal(told["amount"])


def lines(order: Mapping[str, Any]) -> dict[str, str]:
    """The cost lines of an order of an answer, name to amount, after seeing that they sum to its total."""
    landed = order["landed"]
    assert sum(amount(one["amount"]) for one in landed["lines"]) == amount(landed["total"])
    return {one["name"]: one["amount"]["amount"] for one in landed["lines"]}
