"""Read the files a person edits: TOML into values; what does not fit is told with its place, all of it at once."""

import tomllib
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any, TypeVar

import msgspec

from ..basics.contradiction import Contradiction
from ..basics.problem import Problem, Refused, problem, refused
from ..basics.value import from_plain
from .file_faults import faults_in

V = TypeVar("V")


def read_bytes(path: Path) -> bytes:
    """The file's bytes. Refuses a file that is not there or can't be read."""
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise refused("no-such-file", found=path.name) from None
    except OSError as error:
        raise refused("file-not-understood", file=path.name, found=error.strerror or "it can't be read") from None


def read_text(path: Path) -> str:
    """The file's text. Refuses what is not UTF-8."""
    try:
        return read_bytes(path).decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("file-not-understood", file=path.name, found="it is not UTF-8 text") from None


def read_tables(text: str, file: str) -> dict[str, Any]:
    """The TOML text as plain dicts and lists. Numbers with a point come as Decimal."""
    try:
        return tomllib.loads(text, parse_float=_exact)
    except tomllib.TOMLDecodeError as error:
        raise refused("file-not-understood", file=file, found=str(error)) from None
    except RecursionError:
        raise refused("file-not-understood", file=file, found="its lists and tables are nested too deep") from None


def read_toml(path: Path, kind: type[V], top: str = "") -> V:
    """The TOML file as a value; with `top`, what stands under that key. All that does not fit is told at once."""
    data: Any = read_tables(read_text(path), path.name)
    if top and top not in data:
        raise refused("file-not-understood", file=path.name, found=f"it has no [[{top}]]")
    return made(data[top] if top else data, kind, path.name)


def made(data: object, kind: type[V], file: str) -> V:
    """The value of plain data out of a file. Refuses with every place where it does not fit."""
    faults = tuple(faults_in(data, kind))
    if faults:
        raise Refused(*(_told(one, file) for one in faults))
    try:
        return from_plain(data, kind)
    except msgspec.ValidationError as error:
        found = str(error).replace("`", "'").replace("$.", "")
        raise refused("file-not-understood", file=file, found=found) from None


def _told(one: Contradiction, file: str) -> Problem:
    found = f"'{one.field}' {one.found}" if one.field else f"it {one.found}"
    return problem("file-not-understood", file=file, found=found)


def _exact(text: str) -> Decimal:
    """A number with a point, exactly; TOML's nan and inf are no figures of a shop."""
    try:
        number = Decimal(text)
    except InvalidOperation:  # an exponent beyond all bounds
        raise tomllib.TOMLDecodeError(f"'{text}' is no number") from None
    if not number.is_finite():
        raise tomllib.TOMLDecodeError(f"'{text}' is no number")
    return number
