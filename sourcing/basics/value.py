"""The base of every frozen value, and how values become JSON and come back.

All values are msgspec Structs: frozen, compared by content, refusing fields they do not know,
so a typing slip in a file a person edits is told and never silently dropped.
"""

from collections.abc import Callable
from typing import Any, TypeVar

import msgspec


class Value(msgspec.Struct, frozen=True, kw_only=True, forbid_unknown_fields=True, omit_defaults=False):
    """A frozen value with named fields."""


V = TypeVar("V")


def to_json(value: object) -> bytes:
    """The value as JSON: Decimals as text, dates as ISO 8601, keys in field order. Same value, same bytes."""
    return msgspec.json.encode(value, order="deterministic")


def from_json(data: bytes | str, kind: type[V]) -> V:
    """The value back from `to_json`. Raises msgspec.ValidationError naming the path of what does not fit."""
    return msgspec.json.decode(data, type=kind)


def to_plain(value: object) -> Any:
    """The value as dicts, lists, text and numbers, for a table or a template that wants no classes."""
    return msgspec.to_builtins(value)


def from_plain(data: object, kind: type[V]) -> V:
    """A value from plain dicts and lists. Raises msgspec.ValidationError naming the path of what does not fit."""
    return msgspec.convert(data, kind)


def changed(value: V, **fields: object) -> V:
    """A copy of the value with some fields changed."""
    replace: Callable[..., V] = msgspec.structs.replace
    return replace(value, **fields)
