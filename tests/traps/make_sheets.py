"""Writes the sheets that need exact bytes or a spreadsheet's features: python -m tests.traps.make_sheets

The other sheets of the folder are written by hand. The same script gives the same bytes on every machine.
"""

from functools import cache

from tests.traps.broken_files import broken_files
from tests.traps.byte_sheets import byte_sheets
from tests.traps.expectation import SHEETS
from tests.traps.ods_sheets import ods_sheets
from tests.traps.workbook_sheets import workbook_sheets


@cache
def made_sheets() -> dict[str, bytes]:
    """Every made sheet, name to bytes."""
    return byte_sheets() | broken_files() | workbook_sheets() | ods_sheets()


def main() -> None:
    """Write them all over what lies there."""
    for name, data in made_sheets().items():
        (SHEETS / name).write_bytes(data)
    print(f"wrote {len(made_sheets())} sheets to tests/traps/sheets")


if __name__ == "__main__":
    main()
