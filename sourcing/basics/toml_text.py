"""Values in the notation of the files a person edits (TOML 1.0): exact decimals, days, times, inline tables."""

import json
from collections.abc import Mapping
from datetime import date, time
from decimal import Decimal

import msgspec

from .value import Value


def stated(value: Value) -> dict[str, object]:
    """The fields that say something: all that are required, and those that differ from what holds without them."""
    fields = msgspec.structs.fields(value)
    every = {field.name: (getattr(value, field.name), field.default) for field in fields}
    return {name: found for name, (found, default) in every.items() if found != default}


def toml_text(plain: object) -> str:
    """The value on one line. Raises TypeError for None and anything else TOML has no notation for."""
    if isinstance(plain, bool):
        return "true" if plain else "false"
    if isinstance(plain, (Decimal, int)):
        return str(plain)
    if isinstance(plain, str):
        return json.dumps(plain, ensure_ascii=False).replace("\x7f", "\\u007f")
    if isinstance(plain, (date, time)):
        return plain.isoformat()
    if isinstance(plain, (tuple, list)):
        return f"[{', '.join(map(toml_text, plain))}]"
    if isinstance(plain, Value):
        return toml_text(stated(plain))
    if isinstance(plain, Mapping):
        return f"{{ {', '.join(f'{name} = {toml_text(one)}' for name, one in plain.items())} }}"
    raise TypeError(f"no notation for {type(plain).__name__}")
