"""The JSON Schemas that are shipped say what the program reads and prints (JSON Schema draft 2020-12)."""

import json
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from sourcing.basics.basket import Basket
from sourcing.basics.plan import Plan
from sourcing.basics.value import to_json
from sourcing.documents.schemas import ANSWER_SCHEMA, BASKET_SCHEMA, answer_schema, basket_schema, shipped_schema
from tests.basket.baskets import BASKET, spoilt, told
from tests.basket.filled import filled


def _faults(schema: str, data: bytes) -> list[str]:
    validator = Draft202012Validator(json.loads(shipped_schema(schema)))
    return [error.message for error in validator.iter_errors(json.loads(data))]


@pytest.mark.parametrize(("name", "made"), [(BASKET_SCHEMA, basket_schema), (ANSWER_SCHEMA, answer_schema)])
def test_the_shipped_schema_is_the_one_the_values_make(name: str, made: Any) -> None:
    """`python tests/basket/write_schemas.py --write` renews it."""
    assert json.loads(shipped_schema(name)) == json.loads(made())
    Draft202012Validator.check_schema(json.loads(made()))


def test_a_basket_that_is_taken_fits_the_schema() -> None:
    """The small one, and one with every field."""
    assert _faults(BASKET_SCHEMA, json.dumps(BASKET).encode()) == []
    assert _faults(BASKET_SCHEMA, to_json(filled(Basket))) == []


@pytest.mark.parametrize(
    ("path", "value"),
    [
        ("needs.0.quantty", 2), ("needs.0.quantity", 0), ("needs.0.quantity", ...), ("needs", []),
        ("offers.0.breaks.0.price", "12,50"), ("offers.0.breaks.0.price", None), ("offers.0.pack", 0),
        ("suppliers.0.freight.rule", "flatt"), ("suppliers.0.transit_days", 2), ("suppliers.0.cut_off", "1 pm"),
        ("at", "13.1.2026"), ("rates.0.dated", ...), ("rates.0.dated", "9.1.2026"), ("currency", ...),
    ],
)  # fmt: skip
def test_what_the_schema_refuses_the_program_refuses_too(path: str, value: object) -> None:
    """The schema says less than the program, and never more."""
    data = spoilt(path, value)
    assert _faults(BASKET_SCHEMA, data) and told(data)


def test_a_plan_fits_the_schema_of_answers() -> None:
    """With every field filled in, and a wrong one told."""
    whole = to_json(filled(Plan))
    assert _faults(ANSWER_SCHEMA, whole) == []
    assert _faults(ANSWER_SCHEMA, whole.replace(b'"proven":true', b'"proven":"yes"')) != []
