"""The shop's rate table as a file a person edits: CSV with the columns currency, into, rate, dated, source."""

import csv
import io
from collections.abc import Iterator
from datetime import date
from decimal import Decimal, InvalidOperation
from pathlib import Path
from typing import Any

from ..basics.currency import is_currency
from ..basics.problem import Place, Problem, Refused, problem
from ..basics.rate import Rate
from .files import read_text

Row = tuple[Place, dict[str, str]]


def read_rates(path: Path) -> tuple[Rate, ...]:
    """The rates of the file. Refuses with every row that can't be used; a row told twice alike counts once."""
    rows = list(_rows(read_text(path), path.name))
    read = [_rate(place, cells) for place, cells in rows]
    problems = [one for one in read if isinstance(one, Problem)]
    rates = [(place, one) for (place, _), one in zip(rows, read, strict=True) if isinstance(one, Rate)]
    problems += _doubled(rates)
    if problems:
        raise Refused(*sorted(problems, key=lambda one: (one.place and one.place.row) or 0))
    return tuple({(rate.currency, rate.into, rate.dated): rate for _, rate in rates}.values())


def _rows(text: str, file: str) -> Iterator[Row]:
    """Each row with its place; blank rows are passed over."""
    reader = csv.DictReader(io.StringIO(text))
    for row in reader:
        cells = {title.strip(): (cell or "").strip() for title, cell in row.items() if isinstance(title, str)}
        if any(cells.values()):
            yield Place(file=file, row=reader.line_num), cells


def _rate(place: Place, cells: dict[str, str]) -> Rate | Problem:
    found = ", ".join(cells.values())
    codes = cells.get("currency", ""), cells.get("into", "")
    unknown = [code for code in codes if not is_currency(code)]
    try:
        rate, dated = Decimal(cells["rate"]), date.fromisoformat(cells["dated"])
    except (KeyError, InvalidOperation, ValueError):
        return problem("rates-row", place=place, found=found)
    if not rate.is_finite() or rate <= 0 or codes[0] == codes[1]:
        return problem("rates-row", place=place, found=found)
    if unknown:
        return problem("unknown-currency", place=place, found=unknown[0])
    return Rate(currency=codes[0], into=codes[1], rate=rate, dated=dated, source=cells.get("source", ""))


def _doubled(rates: list[tuple[Place, Rate]]) -> Iterator[Problem]:
    """Another rate for the same currencies and day as in a row before."""
    first: dict[tuple[str, str, date], tuple[Place, Rate]] = {}
    for place, rate in rates:
        row, before = first.setdefault((rate.currency, rate.into, rate.dated), (place, rate))
        if before.rate != rate.rate:
            facts: dict[str, Any] = {"currency": rate.currency, "into": rate.into, "dated": rate.dated}
            yield problem("rate-doubled", place=place, found=rate.rate, other=before.rate, row=row.row, **facts)
