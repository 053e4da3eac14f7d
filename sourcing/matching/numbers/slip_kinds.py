"""What kind of damage lies between two keys, named in words. Only the keys are looked at.

How often each kind happens: J. Verhoeff, Error Detecting Decimal Codes (1969), as N. R. Wagner quotes it: of errors
in decimal numbers 60-95 % are one figure changed, 10-20 % neighbours swapped, 10-20 % a figure omitted or added, below
1.5 % each of the rest.
"""

from typing import Literal, get_args

from rapidfuzz.distance import OSA

from .characters import first_difference, folded, folded_further, without_zeros
from .exponents import written_out

Kind = Literal[
    "look-alike character",
    "weak look-alike character",
    "leading zeros",
    "leading zeros and look-alike character",
    "read as a power of ten",
    "neighbours swapped",
    "character left out",
    "character doubled",
    "character added",
    "one character different",
    "left and right",
    "other letter at the end",
    "more before the number",
    "more after the number",
    "swapped across a character",
    "pair of equal characters different",
    "two characters different",
]
"""'left out' and 'added' say what happened to the left key if the right one is right."""

KINDS: tuple[Kind, ...] = get_args(Kind)

OTHER_ARTICLE: frozenset[Kind] = frozenset(("left and right", "other letter at the end", "more after the number"))
"""Differences by which makers tell articles apart: they speak against a match, whatever else agrees."""

SHORTEST = 4
"""Keys of fewer characters are not compared: among them everything is near everything."""
LONG = 9
SHORTEST_PART = 5
"""What is left of a key with something glued on must have at least so many characters."""


def slips_allowed(left: str, right: str) -> int:
    """How many slips may lie between two keys: two where both mix letters and figures and the longer has nine."""
    return 2 if max(len(left), len(right)) >= LONG and is_mixed(left) and is_mixed(right) else 1


def is_mixed(key: str) -> bool:
    """Whether the key has figures and something else, so that a near number by chance is rare."""
    return not key.isdigit() and any(map(str.isdigit, key))


def slip_kind(left: str, right: str) -> Kind | None:
    """The kind of damage that may have made `left` of `right`; None for equal keys and where no kind is known."""
    if left == right or min(len(left), len(right)) < SHORTEST:
        return None
    if (form := _same_form(left, right)) is not None:
        return form
    return kind_by_slips(left, right, OSA.distance(left, right, score_cutoff=2))


def kind_by_slips(left: str, right: str, slips: int) -> Kind | None:
    """As `slip_kind`, of keys known to have no common form and to be so many slips apart."""
    if slips == 1:
        return _one_slip(left, right)
    if (glued := _glued(left, right)) is not None:
        return glued
    return _two_slips(left, right) if slips == 2 else None


def _same_form(left: str, right: str) -> Kind | None:
    if folded(left) == folded(right):
        return "look-alike character"
    if without_zeros(left) == without_zeros(right) != "":
        return "leading zeros"
    further = folded_further(left), folded_further(right)
    if further[0] == further[1]:
        return _end_letters(left, right) or "weak look-alike character"
    if without_zeros(further[0]) == without_zeros(further[1]) != "":
        return "leading zeros and look-alike character"
    written = written_out(left), written_out(right)
    same = written[0] == right or written[1] == left or (written[0] == written[1] != "")
    return "read as a power of ten" if same else None


def _one_slip(left: str, right: str) -> Kind:
    if len(left) == len(right):
        if sorted(left) == sorted(right):
            return "neighbours swapped"
        return _end_letters(left, right) or "one character different"
    long, short = (left, right) if len(left) > len(right) else (right, left)
    at = first_difference(long, short)
    extra = long[at]
    if at == len(short) and extra.isalpha() and short[-1].isdigit():
        return "more after the number"
    if at == 0 and extra.isalpha() and short[0].isdigit():
        return "more before the number"
    if long is right:
        return "character left out"
    return "character doubled" if at and long[at - 1] == extra else "character added"


def _end_letters(left: str, right: str) -> Kind | None:
    """Keys that differ in a letter at the end alone, or in L and R before an H there."""
    if len(left) != len(right):
        return None
    at = first_difference(left, right)
    one, other, rest = left[at], right[at], left[at + 1 :]
    if rest != right[at + 1 :] or rest not in ("", "H") or not (one.isalpha() and other.isalpha()):
        return None
    if {one, other} == {"L", "R"}:
        return "left and right"
    return "other letter at the end" if not rest and left[at - 1 : at].isdigit() else None


def _glued(left: str, right: str) -> Kind | None:
    long, short = (left, right) if len(left) > len(right) else (right, left)
    if len(short) < SHORTEST_PART or len(short) == len(long):
        return None
    if long.startswith(short):
        return "more after the number"
    return "more before the number" if long.endswith(short) else None


def _two_slips(left: str, right: str) -> Kind:
    if len(left) == len(right):
        places = [at for at, (one, other) in enumerate(zip(left, right, strict=True)) if one != other]
        if len(places) == 2 and places[1] - places[0] <= 2:
            (one, two), (was_one, was_two) = ([key[at] for at in places] for key in (left, right))
            if places[1] - places[0] == 2 and (one, two) == (was_two, was_one):
                return "swapped across a character"
            if one == two and was_one == was_two:
                return "pair of equal characters different"
    return "two characters different"
