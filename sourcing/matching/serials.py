"""Serial numbers: how two stand to one another, and where one stands to a span with both ends inclusive.

They are compared only where they are made alike: the same letters and figures in front, the last run of figures alone
differing, leading zeros aside. In '24A100' and '25A050' the front may be a year, a plant or a model: no machine is
guessed into a span. Common practice, no source.
"""

import re
from typing import Final, Literal

from ..basics.part_number import number_key

Standing = Literal["within", "below", "above", "backwards", "open"]
"""'backwards': the span ends before it begins. 'open': it can't be told."""

_LAST_RUN: Final = re.compile(r"([0-9]+)\Z")


def serial_order(one: str, other: str) -> Literal["before", "same", "after"] | None:
    """Where `one` stands beside `other`; None where they are not made alike, or one of them is blank."""
    left, right = number_key(one), number_key(other)
    if left == right:
        return "same" if left else None
    first, second = _LAST_RUN.search(left), _LAST_RUN.search(right)
    if not first or not second or left[: first.start()] != right[: second.start()]:
        return None
    low, high = _figures(first[1]), _figures(second[1])
    return "same" if low == high else "before" if low < high else "after"


def serial_standing(serial: str, first: str, last: str) -> Standing:
    """Where a serial number stands to a span of which either end may be blank. Outside one end is outside."""
    if not first and not last:
        return "within"
    if first and last and serial_order(first, last) == "after":
        return "backwards"
    from_first = serial_order(serial, first) if first else "after"
    from_last = serial_order(serial, last) if last else "before"
    if from_first == "before":
        return "below"
    if from_last == "after":
        return "above"
    return "open" if from_first is None or from_last is None else "within"


def _figures(run: str) -> tuple[int, str]:
    """Figures in the order of the numbers they write, however long: the longer is the larger."""
    bare = run.lstrip("0")
    return len(bare), bare
