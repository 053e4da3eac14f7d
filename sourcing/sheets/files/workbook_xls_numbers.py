"""Numbers of an XLS workbook that python-calamine takes for days, read from its records.

The reader goes by the number of a format before it looks at the text the workbook gives for it, and loses the first
letter of the texts of the older version ('[Red]0.00' would be a day). Written after [MS-XLS], records RK, MulRk, Number
and Format; the layout is from memory and was checked with workbooks three programs saved.
"""

import struct
from typing import cast

from .workbook_formats import shows_a_number

TAKEN_FOR_DAYS = frozenset((*range(14, 23), *range(27, 37), *range(45, 48), *range(50, 59)))
"""Numbers of formats that are days or times in some place of the world."""
NUMBER, SMALL = 0x203, 0x27E


def styles_taken_for_days(codes: dict[int, str], styles: list[int], wide: bool) -> frozenset[int]:
    """The styles whose own format text shows a number, and which the reader takes for a day. `wide`: version 97 or

    newer. `codes`: the texts the workbook itself gives, by number of format.
    """
    numbers = {number for number, code in codes.items() if shows_a_number(number, code)}
    doubtful = {number for number in numbers if number in TAKEN_FOR_DAYS or not wide}
    return frozenset(at for at, number in enumerate(styles) if number in doubtful)


def number_in(kind: int, record: bytes, at: int = 6) -> float:
    """The number a cell's record holds from byte `at` on: eight bytes, or four in the short kinds."""
    if kind == SMALL:
        return small_number(record, at)
    (value,) = struct.unpack_from("<d", record, at)
    return cast(float, value)


def small_number(record: bytes, at: int) -> float:
    """A number of four bytes: two flags (a hundredth, a whole number) and thirty bits."""
    (bits,) = struct.unpack_from("<I", record, at)
    if bits & 2:
        value = struct.unpack("<i", struct.pack("<I", bits))[0] >> 2
    else:
        (value,) = struct.unpack("<d", struct.pack("<Q", (bits & 0xFFFFFFFC) << 32))
    return cast(float, value / 100 if bits & 1 else value / 1)
