"""Read the files a person edits: TOML into values, rates from CSV; what does not fit is told with its place."""

import csv
import io
import tomllib
from collections.abc import Iterator
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import TypeVar

import msgspec

from ..basics.currency import is_currency
from ..basics.problem import Place, Refused, problem, refused
from ..basics.rate import Rate
from ..basics.value import from_plain

V = TypeVar("V")


def read_bytes(path: Path) -> bytes:
    """The file's bytes. Refuses a file that is not there or can't be read."""
    try:
        return path.read_bytes()
    except FileNotFoundError:
        raise refused("no-such-file", found=path.name) from None
    except OSError as error:
        raise refused("file-not-understood", file=path.name, found=error.strerror or "it can't be read") from None


def read_toml(path: Path, kind: type[V], top: str = "") -> V:
    """The TOML file as a value; with `top`, what stands under that key. Numbers with a point come as Decimal."""
    text = _text(read_bytes(path), path.name)
    try:
        data = tomllib.loads(text, parse_float=Decimal)
        return from_plain(data[top] if top else data, kind)
    except tomllib.TOMLDecodeError as error:
        raise refused("file-not-understood", file=path.name, found=str(error)) from None
    except KeyError:
        raise refused("file-not-understood", file=path.name, found=f"it has no [[{top}]]") from None
    except msgspec.ValidationError as error:
        raise _of(error, path.name) from None


def _of(error: msgspec.ValidationError, file: str) -> Refused:
    """A refusal raised while a value was made (contradicting terms) keeps its own words and gains its place."""
    cause = error.__cause__
    if isinstance(cause, Refused):
        return cause
    return refused("file-not-understood", file=file, found=str(error).replace("`", "'").replace("$.", ""))


def read_rates(path: Path) -> tuple[Rate, ...]:
    """The shop's rate table: CSV with the columns currency, into, rate, dated, source."""
    reader = csv.DictReader(io.StringIO(_text(read_bytes(path), path.name)))
    return tuple(_rates(reader, path.name))


def _rates(reader: "csv.DictReader[str]", file: str) -> Iterator[Rate]:
    for at, row in enumerate(reader, 2):
        cells = {title: (cell or "").strip() for title, cell in row.items() if isinstance(cell, str)}
        place = Place(file=file, row=at)
        found = ", ".join(cells.values())
        try:
            rate, dated = Decimal(cells["rate"]), date.fromisoformat(cells["dated"])
        except (KeyError, InvalidOperation, ValueError):
            raise refused("rates-row", place=place, found=found) from None
        if not rate.is_finite() or rate <= 0:
            raise refused("rates-row", place=place, found=found)
        for code in (cells.get("currency", ""), cells.get("into", "")):
            if not is_currency(code):
                raise Refused(problem("unknown-currency", place=place, found=code))
        source = cells.get("source", "")
        yield Rate(currency=cells["currency"], into=cells["into"], rate=rate, dated=dated, source=source)


def _text(data: bytes, file: str) -> str:
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise refused("file-not-understood", file=file, found="it is not UTF-8 text") from None
