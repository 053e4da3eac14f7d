"""What a careful clerk says a sheet holds, and what the reader says, in one form that can be compared.

Defaults are left out. Money is compared as a number, so "12.5" and "12.50" are the same price. The kind of a
structure row, or a code, may be several joined by ' or ', where a clerk could say either.
"asked": true, and nothing else: the file is refused or a question is open, whichever it is; nothing is kept by itself.
"""

import json
from collections.abc import Mapping
from decimal import Decimal
from pathlib import Path
from typing import Any

import msgspec
import pandas as pd

from sourcing.basics.problem import Problem, Refused
from sourcing.basics.sheet import SheetSummary, StructureRow
from sourcing.sheets.frame import OFFER_COLUMNS
from sourcing.sheets.hints import Hints, SheetReading
from sourcing.sheets.reading import read_sheet

SHEETS = Path(__file__).parent / "sheets"
ENDING = ".expected.json"
TO_BE_CHECKED = "TO BE CHECKED BY HAND"
LISTS = ("offers", "structure", "problems", "questions", "notes")
KEYS = {"why", "supplier_currency", "columns", "refused", "asked", *LISTS}
DEFAULTS: dict[str, Any] = {
    "worksheet": "", "maker": "", "maker_number": "", "description": "", "list_price": None, "breaks": [],
    "price_basis": 1, "pack": 1, "order_multiple": 1, "minimum": 1, "stock": None, "lead_time": None,
    "core_charge": None, "superseded_by": "", "no_longer_available": False, "note": "", "sold_by": "piece",
    "gtin": "", "discount_code": "", "stock_places": [], "weight_kg": None, "oversize": None, "hazardous": None,
    "origin": "", "tariff_code": "", "valid_from": None, "valid_to": None, "length_cm": None, "width_cm": None,
    "height_cm": None, "returnable": None,
}  # fmt: skip
MONEY = ("list_price", "core_charge", "weight_kg", "length_cm", "width_cm", "height_cm")

Plain = dict[str, Any]


def expected_of(sheet: Path) -> Path:
    """Where the expectation of a sheet lies."""
    return sheet.with_name(sheet.name + ENDING)


def sheet_files() -> list[Path]:
    """The sheets, without their expectations."""
    return sorted(file for file in SHEETS.iterdir() if not file.name.endswith(ENDING))


def expectation_files() -> list[Path]:
    """The expectations, with and without a sheet."""
    return sorted(SHEETS.glob("*" + ENDING))


def load(file: Path) -> Plain:
    """An expectation as written; raises ValueError for a word this form does not have."""
    found: Plain = json.loads(file.read_text(encoding="utf-8"))
    strange = set(found) - KEYS
    strange |= {name for offer in found.get("offers", []) for name in set(offer) - set(OFFER_COLUMNS)}
    if strange or not found.get("why"):
        raise ValueError(f"{file.name}: needs 'why' and must not have {sorted(strange)}")
    return found


def read(sheet: Path, expected: Plain) -> SheetReading | Refused:
    """The reader's word on the sheet, with the hints of the expectation."""
    hints = Hints(
        supplier="stonegarth",
        currency=expected.get("supplier_currency", "USD"),
        meanings=expected.get("columns", {}),
    )
    try:
        return read_sheet(sheet.read_bytes(), sheet.name, hints)
    except Refused as refusal:
        return refusal


def plain_reading(reading: SheetReading | Refused, currency: str) -> Plain:
    """The reader's word in the form of an expectation. `currency` is left out where an offer is in it."""
    if isinstance(reading, Refused):
        return {"refused": ", ".join(problem.code for problem in reading.problems)}
    summary: SheetSummary = reading.summary
    rows: list[StructureRow] = list(reading.structure)
    return {
        "offers": [plain_offer(offer, currency) for offer in records(reading.offers)],
        "structure": [[row.worksheet, row.row, row.kind] for row in rows],
        "problems": sorted((_placed(problem) for problem in summary.problems), key=str),
        "questions": sorted(problem.code for problem in summary.questions),
        "notes": sorted(problem.code for problem in summary.notes),
    }


def records(frame: pd.DataFrame) -> list[Plain]:
    """The rows of a frame as dicts."""
    return [{str(name): value for name, value in row.items()} for row in frame.to_dict("records")]


def plain_offer(offer: Mapping[str, Any], currency: str) -> Plain:
    """One offer without its defaults."""
    plain = {name: _plain(name, offer[name]) for name in OFFER_COLUMNS}
    defaults = DEFAULTS | {"currency": currency}
    return {name: value for name, value in plain.items() if name not in defaults or value != defaults[name]}


def _plain(name: str, value: Any) -> Any:
    if name == "breaks":
        return [[one.from_quantity, _amount(one.price)] for one in value]
    if name == "stock_places":
        return [[one.place, one.pieces] for one in value]
    if name == "lead_time" and not _is_blank(value):
        return {key: found for key, found in msgspec.to_builtins(value).items() if found is not None}
    if _is_blank(value):
        return None
    if isinstance(value, Decimal):
        return _amount(value)
    if name in ("valid_from", "valid_to"):
        return str(value)[:10]
    return value.item() if hasattr(value, "item") else value


def _is_blank(value: Any) -> bool:
    return value is None or value is pd.NaT or value is pd.NA or (isinstance(value, float) and value != value)


def _amount(value: Decimal) -> str:
    return f"{value:f}"


def _placed(problem: Problem) -> list[Any]:
    place = problem.place
    return [place.worksheet, place.row, place.column, problem.code] if place else ["", None, "", problem.code]


def same_form(word: Plain, currency: str) -> Plain:
    """An expectation or a reading with numbers and orders made alike, so that equal means equal."""
    if "refused" in word:
        return {"refused": word["refused"]}
    return {
        "offers": [_same_offer(offer, currency) for offer in word.get("offers", [])],
        "structure": [list(row) for row in word.get("structure", [])],
        "problems": sorted((list(one) for one in word.get("problems", [])), key=str),
        "questions": sorted(word.get("questions", [])),
        "notes": sorted(word.get("notes", [])),
    }


def _same_offer(offer: Plain, currency: str) -> Plain:
    full = DEFAULTS | {"currency": currency} | offer
    full["breaks"] = [[quantity, Decimal(price)] for quantity, price in full["breaks"]]
    full["stock_places"] = [list(place) for place in full["stock_places"]]
    return full | {name: Decimal(full[name]) for name in MONEY if full[name] is not None}


def as_text(word: Plain) -> str:
    """The form as JSON, one offer or row a line, so that a person can check it line by line."""
    parts = []
    for key, value in word.items():
        if key in LISTS and value:
            lines = ",\n    ".join(json.dumps(one, ensure_ascii=False) for one in value)
            parts.append(f"  {json.dumps(key)}: [\n    {lines}\n  ]")
        else:
            parts.append(f"  {json.dumps(key)}: {json.dumps(value, ensure_ascii=False)}")
    return "{\n" + ",\n".join(parts) + "\n}\n"
