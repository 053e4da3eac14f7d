"""Fields of terms as a person types them on the command line: 'freight.free_from=250.00' to the value meant."""

import re
import tomllib
from collections.abc import Mapping
from datetime import date, time
from decimal import Decimal, InvalidOperation
from difflib import get_close_matches
from typing import Any, get_args, get_origin

import msgspec

from ..basics.problem import Problem, Refused, refused
from ..basics.terms import Terms
from ..basics.toml_text import stated
from ..basics.value import Value
from .file_faults import table_kind
from .terms_file import Entry, terms_of

NOT_TO_SET = ("supplier", "starts_on")
"""Whose terms they are and from when is said apart."""


def edited(terms: Terms, said: Mapping[str, str], starts_on: date) -> Terms:
    """The terms with the fields changed and that first day. A blank text: not set, as if it were left out.

    Fields are dotted ('calendar.country'); lists and tables are written as in suppliers.toml, a list of plain words
    also with commas alone. Refuses with all that can't be used or can't hold.
    """
    return _with(plain_of(terms), said, starts_on)


def first_terms(supplier: str, said: Mapping[str, str], starts_on: date) -> Terms:
    """The first terms of a supplier, of nothing but what is said. Refuses as `edited` does."""
    return _with({"supplier": supplier}, said, starts_on)


def _with(table: dict[str, Any], said: Mapping[str, str], starts_on: date) -> Terms:
    table["starts_on"] = starts_on
    problems: list[Problem] = []
    for field, text in said.items():
        try:
            _put(table, field, text.strip())
        except Refused as refusal:
            problems += refusal.problems
    entry = Entry(place=None, words=f"the terms of {table['supplier']} from {starts_on} on")
    new, wrong = terms_of(table, entry)
    if new is None or problems:
        raise Refused(*problems, *wrong)
    return new


def plain_of(value: Value) -> dict[str, Any]:
    """What the value says as tables and lists, as a file would give it."""
    return {name: _plain_of(one) for name, one in stated(value).items()}


def _plain_of(found: object) -> object:
    if isinstance(found, Value):
        return plain_of(found)
    return [_plain_of(one) for one in found] if isinstance(found, tuple) else found


def _put(table: dict[str, Any], field: str, text: str) -> None:
    """Set one dotted field, making the tables on the way; a blank text takes it out."""
    kind: Any = Terms
    *way, last = field.split(".")
    for name in way:
        kind = _kind(kind, name, field)
        table = table.setdefault(name, {}) if text else table.get(name, {})
    kind = _kind(kind, last, field)
    if text:
        table[last] = read_typed(text, kind)
    else:
        table.pop(last, None)


def _kind(kind: Any, name: str, field: str) -> Any:
    """The kind of the field of that name. Refuses one that is not there, or is not to be set."""
    inside = table_kind(kind)
    kinds = {one.name: one.type for one in msgspec.structs.fields(inside)} if inside else {}
    if name not in kinds or field in NOT_TO_SET:
        near = get_close_matches(name, [one for one in kinds if one not in NOT_TO_SET], 2)
        raise refused("no-such-term", found=field, suggestions=tuple(near))
    return kinds[name]


def read_typed(text: str, kind: Any) -> object:
    """The text as a file would give it; what does not fit is left as text, to be told when a value is made of it."""
    kinds = (kind, *get_args(kind))
    if Decimal in kinds:
        return _number(text)
    lists = [one for one in kinds if get_origin(one) is tuple]
    if not lists and (str in kinds or _is_words(kinds)):
        return text
    if time in kinds and re.fullmatch(r"\d\d?:\d\d", text):
        return f"{text:0>5}:00"
    if lists and not text.startswith("["):
        inner = get_args(lists[0])
        if str in inner or _is_words(inner):
            return [word.strip() for word in text.split(",")]
        text = f"[{text}]"
    try:
        return tomllib.loads(f"x = {text}", parse_float=_number)["x"]
    except (tomllib.TOMLDecodeError, RecursionError):
        return text


def _number(text: str) -> Decimal | str:
    """The exact number, or the text where it is none."""
    try:
        return Decimal(text)
    except InvalidOperation:
        return text


def _is_words(kinds: tuple[Any, ...]) -> bool:
    """Whether it is a choice of words."""
    return any(isinstance(word, str) for one in kinds for word in (one, *get_args(one)))
