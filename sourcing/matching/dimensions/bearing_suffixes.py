"""What stands behind a bearing's number: seals and shields, clearance, snap ring. Makers' habit, no part of ISO 15.

2RS, 2RSR, ZZ, 2Z, Z, RS as read on bearing makers' and distributors' pages; the other makers' letters from memory.
RZ, VV, LLB seal without touching. C3 is greater than normal, CN normal; N a snap-ring groove, NR with the ring.
"""

import re

from .text import NOT_COUNTED

CLOSURES = {
    **dict.fromkeys(("2RS", "2RSR", "2RS1", "2RSH", "RS2", "DDU", "LLU"), "two rubber seals"),
    **dict.fromkeys(("2RZ", "VV", "LLB"), "two non-contact seals"),
    **dict.fromkeys(("ZZ", "2Z"), "two metal shields"),
    **dict.fromkeys(("RS", "RSR", "RS1", "RSH", "DU", "LU"), "one rubber seal"),
    **dict.fromkeys(("RZ", "LB"), "one non-contact seal"),
    "Z": "one metal shield",
}
CLOSURE = "|".join(sorted(CLOSURES, key=len, reverse=True))

MARKS = rf"(?:[ ./-]{{0,2}}(?:{CLOSURE}|C[2345]|CN|NR|N))*"
ALONE = re.compile(rf"{NOT_COUNTED}(?!\s?X\s?\d)")
"""What must hold behind a number without suffix: neither a unit nor a size follows."""

_MARK = re.compile(rf"{CLOSURE}|C[2345]|CN|NR|N")
_STRONG = ("2RS", "2RSR", "2RS1", "2RSH", "2RZ", "DDU", "LLU", "LLB", "ZZ", "2Z")
_RINGS = {"N": "snap-ring groove", "NR": "snap-ring groove with ring"}


def marks_in(text: str | None) -> list[str]:
    """The suffixes in what MARKS matched, in order."""
    return _MARK.findall(text or "")


def is_strong(marks: list[str]) -> bool:
    """Whether a suffix is so distinctive that the number before it is a bearing's whatever the text speaks of."""
    return any(mark in _STRONG for mark in marks)


def closure_of(marks: list[str]) -> str:
    """Seals or shields in words; blank where nothing is said."""
    return next((CLOSURES[mark] for mark in marks if mark in CLOSURES), "")


def clearance_of(marks: list[str]) -> str:
    """C2 to C5; blank where normal or nothing is said."""
    return next((mark for mark in marks if mark[0] == "C" and mark != "CN"), "")


def ring_of(marks: list[str]) -> str:
    """The snap-ring groove in words; blank where there is none."""
    return next((_RINGS[mark] for mark in marks if mark in _RINGS), "")
