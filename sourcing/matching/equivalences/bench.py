"""Whether a statement about a machine and its serial numbers holds for the machine on the bench."""

from typing import Literal

from ...basics.equivalence import Bench, Statement
from ...basics.part_number import number_key
from ...basics.value import changed
from ..serials import serial_order, serial_standing

Fit = Literal["holds", "contradicts", "open"]
"""'open': it can't be told, so the condition stays a warning in words."""


def fits(statement: Statement, bench: Bench | None) -> Fit:
    """How the statement's machine and serial numbers stand to the bench; both ends of a span belong to it.

    A span without a machine stays open: a serial number means something only within one model.
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
    return serial_order(first, last) == "after"


def _within(serial: str, first: str, last: str) -> Fit:
    standing = serial_standing(serial, first, last)
    if standing in ("below", "above"):
        return "contradicts"
    return "holds" if standing == "within" else "open"
