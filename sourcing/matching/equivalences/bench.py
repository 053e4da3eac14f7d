"""Whether a statement about a machine and its serial numbers holds for the machine on the bench."""

import re
from typing import Literal

from ...basics.equivalence import Bench, Statement
from ...basics.part_number import number_key
from ...basics.value import changed

Fit = Literal["holds", "contradicts", "open"]
"""'open': it can't be told, so the condition stays a warning in words."""

_FIGURES = re.compile(r"\d+")


def fits(statement: Statement, bench: Bench | None) -> Fit:
    """How the statement's machine and serial numbers stand to the bench; both ends of a span belong to it.

    Serial numbers are compared as numbers where both have the same letters in the same places. A span without a
    machine stays open: a serial number means something only within one model.
    """
    if not statement.machine:
        return "open" if statement.serial_from or statement.serial_to else "holds"
    if bench is None or not number_key(bench.machine):
        return "open"
    for model, serial in ((bench.machine, bench.serial), (bench.component, bench.component_serial)):
        if number_key(model) == number_key(statement.machine):
            return _within(serial, statement.serial_from, statement.serial_to)
    return "contradicts"


def open_words(statement: Statement, bench: Bench | None) -> str:
    """What of the statement's conditions the bench does not settle, in words; blank where nothing is left open."""
    if bench is None or fits(statement, bench) != "holds":
        return statement.holds_when
    return changed(statement, machine="", serial_from="", serial_to="").holds_when


def why_not_followed(statement: Statement, bench: Bench) -> str:
    """Why a statement that contradicts the bench is left aside."""
    only = changed(statement, condition="").holds_when
    serial = f" serial {bench.serial}" if bench.serial else ""
    component = f" with {bench.component} {bench.component_serial}".rstrip() if bench.component else ""
    return f"it holds for {only}; on the bench is {bench.machine}{serial}{component}"


def span_is_backwards(first: str, last: str) -> bool:
    """Whether a span of serial numbers ends before it begins, as far as the two can be compared."""
    one, other = _shape(first), _shape(last)
    return one[0] == other[0] and bool(one[1]) and one[1] > other[1]


def _within(serial: str, first: str, last: str) -> Fit:
    if not first and not last:
        return "holds"
    if span_is_backwards(first, last):
        return "open"
    shape, here = _shape(serial)
    low, high = _shape(first), _shape(last)
    comparable = [bool(here) and shape == end[0] for end in (low, high)]
    if (first and comparable[0] and here < low[1]) or (last and comparable[1] and here > high[1]):
        return "contradicts"
    settled = (not first or comparable[0]) and (not last or comparable[1])
    return "holds" if settled else "open"


def _shape(serial: str) -> tuple[str, tuple[int, ...]]:
    """'AB-0120' is ('AB#', (120,)): the letters with a mark for each run of figures, and the figures as numbers."""
    key = number_key(serial)
    return _FIGURES.sub("#", key), tuple(map(int, _FIGURES.findall(key)))
