"""Writes a first expectation for a sheet: the program's own reading, which a person then checks line by line.

python -m tests.traps.write_expectation NAME [--currency EUR] [--print]
"""

import argparse
import sys

from tests.traps.expectation import SHEETS, TO_BE_CHECKED, Plain, as_text, expected_of, plain_reading, read


def first_expectation(name: str, currency: str) -> str:
    """The text of the expectation. It says 'TO BE CHECKED BY HAND', which the test refuses until replaced."""
    hints: Plain = {"supplier_currency": currency}
    return as_text({"why": TO_BE_CHECKED, **hints, **plain_reading(read(SHEETS / name, hints), currency)})


def main(arguments: list[str]) -> int:
    """Write or print one expectation; 1 where there is no such sheet or an expectation lies there already."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("name")
    parser.add_argument("--currency", default="USD")
    parser.add_argument("--print", action="store_true", help="print it and write nothing")
    said = parser.parse_args(arguments)
    sheet = SHEETS / said.name
    if not sheet.is_file():
        print(f"there is no sheet {said.name} in tests/traps/sheets", file=sys.stderr)
        return 1
    text = first_expectation(said.name, said.currency)
    if said.print:
        print(text, end="")
        return 0
    if expected_of(sheet).exists():
        print(f"{expected_of(sheet).name} is there already; delete it first or use --print", file=sys.stderr)
        return 1
    expected_of(sheet).write_text(text, encoding="utf-8")
    print(f"wrote {expected_of(sheet).name}; check every line by hand and say why the sheet is here")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
