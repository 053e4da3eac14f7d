"""Values with every field set to something that is not its default, made from the types alone."""

from datetime import date, datetime, time
from decimal import Decimal
from typing import Any

from msgspec import inspect

SAMPLES: dict[type, Any] = {
    inspect.StrType: "US",
    inspect.BoolType: True,
    inspect.IntType: 7,
    inspect.DecimalType: Decimal("7.25"),
    inspect.DateType: date(2026, 1, 9),
    inspect.TimeType: time(13, 30),
    inspect.DateTimeType: datetime(2026, 1, 13, 10, 15),
    inspect.FloatType: 0.5,
}


def filled(kind: type) -> Any:
    """A value of the kind with all its fields, and theirs, filled in."""
    return _of(inspect.type_info(kind))


def _of(node: inspect.Type) -> Any:
    if isinstance(node, inspect.StructType):
        return node.cls(**{field.name: _of(field.type) for field in node.fields})
    if isinstance(node, inspect.VarTupleType):
        return (_of(node.item_type),)
    if isinstance(node, inspect.TupleType):
        return tuple(_of(one) for one in node.item_types)
    if isinstance(node, inspect.UnionType):
        return _of(next(one for one in node.types if not isinstance(one, inspect.NoneType)))
    if isinstance(node, inspect.LiteralType):
        return sorted(map(str, node.values))[-1]
    return SAMPLES[type(node)]
