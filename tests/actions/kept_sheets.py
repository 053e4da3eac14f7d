"""Sheets put into the shop's database row by row, past the reader: what a field does is tested, not how it is read."""

from datetime import date

from sourcing.actions.desk import Desk
from sourcing.basics.sheet import KeptSheet
from sourcing.basics.value import changed
from sourcing.storage.sheets import add_sheet
from tests.storage.kept_values import frame, new_sheet, summary


def keep(desk: Desk, supplier: str, day: date, *rows: dict[str, object]) -> KeptSheet:
    """Keep a sheet in US dollars of those rows; two with the same rows are two sheets."""
    read = changed(summary(len(rows)), currency="USD")
    sha256 = f"{day} {len(rows)} {rows!r}"
    with desk.writing("import") as pen:
        return add_sheet(pen.connection, read, frame(*rows), new_sheet(supplier, day, sha256))
