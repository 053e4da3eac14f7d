"""All that does not fit in a file a person edits, with its dotted place: not only the first thing that is wrong."""

import re
from collections.abc import Iterator, Mapping
from decimal import Decimal
from difflib import get_close_matches
from typing import Any, Literal, get_args, get_origin

import msgspec

from ..basics.contradiction import Contradiction
from ..basics.value import Value, from_plain

WORDS = {
    "decimal": "a number",
    "float": "a number",
    "int": "a whole number",
    "str": "text",
    "bool": "true or false",
    "date": "a day such as 2026-01-13",
    "time": "a time such as 13:00:00",
    "array": "a list [ ]",
    "object": "a table { }",
    "null": "nothing",
}
"""What msgspec calls the kinds of value, in our words."""


def faults_in(data: object, kind: Any, path: str = "") -> Iterator[Contradiction]:
    """Every place where plain dicts, lists and texts do not fit the kind. Entries of lists are counted from 1.

    What contradicts itself although every field fits is not looked for.
    """
    table, inner = table_kind(kind), list_kind(kind)
    if table and isinstance(data, Mapping):
        yield from _table(data, table, path)
    elif inner and isinstance(data, list):
        for at, one in enumerate(data, 1):
            yield from faults_in(one, inner, f"{path}.{at}" if path else str(at))
    else:
        words = _leaf(data, kind)
        if words:
            yield Contradiction(field=path, found=words)


def table_kind(kind: Any) -> type[Value] | None:
    """The kind of value a table stands for: of `Freight | None` it is Freight; None where it is no table."""
    for one in (kind, *get_args(kind)):
        if isinstance(one, type) and issubclass(one, Value):
            return one if get_origin(kind) is not tuple else None
    return None


def list_kind(kind: Any) -> Any:
    """The kind of the entries of `tuple[kind, ...]`; None where it is no such list."""
    kinds = get_args(kind)
    return kinds[0] if get_origin(kind) is tuple and len(kinds) == 2 and kinds[1] is Ellipsis else None


def _table(data: Mapping[str, object], kind: type[Value], path: str) -> Iterator[Contradiction]:
    fields = {field.name: field for field in msgspec.structs.fields(kind)}
    before = f"{path}." if path else ""
    for name, one in data.items():
        if name in fields:
            yield from faults_in(one, fields[name].type, f"{before}{name}")
        else:
            near = get_close_matches(name, fields, 1)
            hint = f": perhaps '{near[0]}' is meant" if near else ""
            yield Contradiction(field=f"{before}{name}", found=f"is an unknown field '{name}'{hint}")
    for name, field in fields.items():
        if field.required and name not in data:
            yield Contradiction(field=f"{before}{name}", found="is missing")


def _leaf(data: object, kind: Any) -> str:
    """What is wrong with a single value; blank where it fits."""
    try:
        made = from_plain(data, kind)
    except msgspec.ValidationError as error:
        return _with_a_point(data) or _in_our_words(str(error), kind)
    if isinstance(made, Decimal) and not made.is_finite():
        return f"is {made}, and that is no number"
    return ""


def _with_a_point(data: object) -> str:
    """A comma is never taken for a point: '1,234' may be a thousand and more."""
    if isinstance(data, str) and re.fullmatch(r"-?\d+,\d+", data):
        return f"is '{data}'; write {data.replace(',', '.')} with a point, or leave out the comma if it parts thousands"
    return ""


def _in_our_words(told: str, kind: Any) -> str:
    """'needs a number, not text' for 'Expected `decimal`, got `str`'."""
    choices = [word for one in (kind, *get_args(kind)) if get_origin(one) is Literal for word in get_args(one)]
    got = re.fullmatch(r"Expected `([^`]*)`, got `([^`]*)`.*", told)
    if got:
        wanted = [word for word in got[1].split(" | ") if word != "null"]
        return f"needs {' or '.join(WORDS.get(word, word) for word in wanted)}, not {WORDS.get(got[2], got[2])}"
    if told.startswith("Invalid RFC3339 encoded "):
        return f"needs {WORDS.get(told.split()[3], told)}"
    if told.startswith("Invalid decimal string"):
        return f"needs {WORDS['decimal']}"
    value = re.fullmatch(r"Invalid enum value ('.*?')(?: - at .*)?", told)
    if value and choices:
        return f"is {value[1]}, and not one of: {', '.join(map(str, choices))}"
    return f"can't be used: {told.replace('`', chr(39))}"
