"""JSON as it stands: numbers to the digit, no field lost that is written twice, and the place of what is not JSON."""

import json
from decimal import Decimal
from typing import Any, NoReturn

from ..basics.problem import Place, refused


class Fields(dict[str, Any]):
    """The fields of a JSON object, and the names that were written more than once."""

    def __init__(self, pairs: list[tuple[str, Any]]) -> None:
        super().__init__(pairs)
        names = [name for name, _ in pairs]
        self.twice = sorted({name for name in names if names.count(name) > 1}) if len(names) > len(self) else []


def exact_json(data: bytes, file: str) -> Any:
    """The JSON of a file: objects as `Fields`, whole numbers as int, others as Decimal with every digit written.

    Refuses what is not UTF-8 or not JSON with line and column; also NaN and Infinity, which JSON does not have.
    """
    text = _text(data, file)
    try:
        return json.loads(
            text, object_pairs_hook=Fields, parse_float=Decimal, parse_int=_whole, parse_constant=_no_constant
        )
    except json.JSONDecodeError as error:
        place, found = Place(file=file), error.msg[:1].lower() + error.msg[1:]
        raise refused("json-broken", place=place, line=error.lineno, column=error.colno, found=found) from None
    except _Constant as error:
        raise _at(text, str(error), file) from None
    except RecursionError:
        raise refused("json-too-deep", place=Place(file=file)) from None


class _Constant(Exception):
    """NaN or Infinity, which Python reads and JSON does not know."""


def _no_constant(name: str) -> NoReturn:
    raise _Constant(name)


def _whole(digits: str) -> int | Decimal:
    """An int; a number too long for one is kept as Decimal, to be refused where it stands."""
    return int(digits) if len(digits) <= 30 else Decimal(digits)


def _at(text: str, name: str, file: str) -> Exception:
    before = text[: _outside_text(text, name)]
    line, column = before.count("\n") + 1, len(before) - before.rfind("\n")
    found = f"{name} is not a number of JSON"
    return refused("json-broken", place=Place(file=file), line=line, column=column, found=found)


def _outside_text(text: str, name: str) -> int:
    """Where the word first stands outside quotes."""
    inside, at = False, 0
    while at < len(text):
        if inside and text[at] == "\\":
            at += 1
        elif text[at] == '"':
            inside = not inside
        elif not inside and text.startswith(name, at):
            return at
        at += 1
    return 0


def _text(data: bytes, file: str) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = data[: error.start].count(b"\n") + 1
        found = f"line {line} is not UTF-8 text; save it as UTF-8"
        raise refused("file-not-understood", file=file, found=found) from None
