"""Look at a supplier's file without keeping anything: what it holds, its rows as they stand, its table alone."""

from collections.abc import Iterable
from pathlib import Path

from ..basics.problem import Refused
from ..basics.sheet import Column
from ..sheets.plain import PlainTable, Row, grid_rows, plain_table
from ..sheets.proposal import proposed_columns
from ..sheets.reading import Hints, SheetReading, Tell, read_sheet, silent
from .files import read_bytes, read_toml
from .import_answers import refuse_unknown_headers
from .import_sheets import Said


def read_only(path: Path, said: Said, currency: str, tell: Tell = silent) -> SheetReading:
    """Read a sheet without keeping anything; `currency` where the sheet does not state its own, else blank."""
    hints = Hints(
        supplier=said.supplier,
        currency=currency,
        meanings=said.columns,
        quantities=said.quantities,
        dated=said.dated,
        tell=tell,
    )
    reading = read_sheet(read_bytes(path), path.name, hints)
    refuse_unknown_headers(reading.summary, said.columns)
    return reading


def columns_to_fill(path: Path, said: Said) -> tuple[Column, ...]:
    """What the columns of a file may mean that could not be read; () where it is no sheet or has no table."""
    try:
        return proposed_columns(read_bytes(path), path.name, said.columns)
    except Refused:
        return ()


def rows_of(path: Path) -> Iterable[Row]:
    """Every row of every worksheet of the file, as text."""
    return grid_rows(read_bytes(path), path.name)


def table_of(path: Path, said: Said) -> PlainTable:
    """The header and the body of the file's table."""
    return plain_table(read_bytes(path), path.name, said.columns)


def columns_from(path: Path) -> dict[str, str]:
    """What columns mean, from a TOML file with a table [columns] as `read --write-columns` makes it."""
    found = read_toml(path, dict[str, str], top="columns")
    return {header: meaning for header, meaning in found.items() if meaning != "?"}
