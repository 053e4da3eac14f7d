"""Why one number may be another one damaged, in words for a person, with the places that differ.

The left number is the one that came, the right one is ours. A reason makes a candidate; it never makes a match.
"""

import re
from decimal import Decimal
from typing import Literal

from rapidfuzz.distance import Levenshtein

from ...basics.part_number import number_key
from ...basics.value import Value
from .characters import first_difference
from .damage_words import words_of
from .slip_kinds import OTHER_ARTICLE, Kind, slip_kind

PrintedKind = Literal["point and zero at the end", "zeros after the point", "count after the number", "claim beside it"]
_DECIMAL = re.compile(r"[0-9]*\.[0-9]+|[0-9]+")
_COUNT = re.compile(r"[\s/xX_.*-]+[0-9]{1,4}\s*")
_CLAIM = re.compile(
    r"(?<![^\W_])(?:compatible|comp|reman(?:ufactured)?|rebuilt|refurb(?:ished)?|reconditioned|aftermarket|equiv(?:alent)?"
    r"|replac(?:es|ement|ing)|substitute|fits|for|type|style|used"
    r"|kompatibel|passend|ersetzt|ersatz|überholt|für|statt"
    r"|remplace|reconditionné|pour|adaptable|reemplaza|reacondicionado|para|vervangt|gereviseerd|voor)(?![^\W_])",
    re.IGNORECASE,
)
"""Words by which a seller says that it serves in place of the number beside them (common practice, no source)."""


class DamageReason(Value, frozen=True, kw_only=True):
    """What kind of difference it is, in words, and where.

    `left_at`, `right_at`: places in the printed texts, from 0, of the characters that differ, for marking them.
    `against`: makers tell articles apart by such a difference, or a seller claims to replace the number; however near
    it looks, it speaks against a match.
    """

    kind: Kind | PrintedKind
    words: str
    left_at: tuple[int, ...] = ()
    right_at: tuple[int, ...] = ()
    against: bool = False


def explain(left_key: str, right_key: str, left_printed: str, right_printed: str) -> DamageReason | None:
    """The reason why the left number may be the right one damaged; None where the keys are equal or nothing is known.

    Characters are counted among letters and figures from 1, as in 'O where 0 stands, 2nd character'.
    """
    if left_key == right_key:
        return None
    if (decimal := _as_decimals(left_printed.strip(), right_printed.strip())) is not None:
        return decimal
    kind = slip_kind(left_key, right_key)
    if kind is None:
        return None
    left_at, right_at = _marks(kind, (left_key, right_key), (left_printed, right_printed))
    if kind in ("more after the number", "more before the number"):
        return _glued(kind, (left_printed, right_printed), (left_at, right_at))
    words = words_of(kind, _as_printed(left_key, left_printed), _as_printed(right_key, right_printed))
    return DamageReason(kind=kind, words=words, left_at=left_at, right_at=right_at, against=kind in OTHER_ARTICLE)


def _as_decimals(left: str, right: str) -> DamageReason | None:
    """'12345.0' and '12345', '1.1' and '1.10': equal as numbers, so a spreadsheet may have made one of the other."""
    if "." not in left + right or not (_DECIMAL.fullmatch(left) and _DECIMAL.fullmatch(right)):
        return None
    if Decimal(left) != Decimal(right):
        return None
    if left.removesuffix(".0") == right or right.removesuffix(".0") == left:
        words = f"'.0' after the number, as a spreadsheet leaves it: {left} for {right}"
        return DamageReason(kind="point and zero at the end", words=words)
    words = f"read as a decimal number: {left} for {right}"
    return DamageReason(kind="zeros after the point", words=words)


Marks = tuple[int, ...]


def _glued(kind: Kind, printed: tuple[str, str], marks: tuple[Marks, Marks]) -> DamageReason:
    """What stands before or after the number of one side, as it is printed there."""
    ours = len(marks[1]) > len(marks[0])
    text, at = (printed[1], marks[1]) if ours else (printed[0], marks[0])
    after = kind == "more after the number"
    extra = text[_end_before(text, at[0]) :] if after else text[: _start_after(text, at[-1])]
    where = f"'{extra.strip()}' {'after' if after else 'before'} {'our' if ours else 'the'} number"
    named: Kind | PrintedKind = kind
    if _CLAIM.search(extra):
        named, where = "claim beside it", f"{where}: a claim to serve for it, to be confirmed"
    elif after and _COUNT.fullmatch(extra):
        named, where = "count after the number", f"{where}: may be a count, the price then is for so many"
    elif after:
        where += ": makers tell articles apart so"
    against = named != "more before the number"
    return DamageReason(kind=named, words=where, left_at=marks[0], right_at=marks[1], against=against)


def _end_before(text: str, at: int) -> int:
    """Where the signs that belong to no key begin, just before `at`: the dash of '-12' goes with the 12."""
    while at and not text[at - 1].isalnum():
        at -= 1
    return at


def _start_after(text: str, at: int) -> int:
    at += 1
    while at < len(text) and not text[at].isalnum():
        at += 1
    return at


def _marks(kind: Kind, keys: tuple[str, str], printed: tuple[str, str]) -> tuple[Marks, Marks]:
    """The places in the two printed texts of the characters that differ."""
    if kind == "neighbours swapped":
        at = first_difference(*keys)
        left, right = {at, at + 1}, {at, at + 1}
    else:
        edits = Levenshtein.editops(*keys)
        left = {edit.src_pos for edit in edits if edit.tag != "insert"}
        right = {edit.dest_pos for edit in edits if edit.tag != "delete"}
    return _in_print(printed[0], left), _in_print(printed[1], right)


def _in_print(printed: str, places: set[int]) -> Marks:
    """Places of the key as places of the printed text it was made of."""
    origin = [at for at, sign in enumerate(printed) for _ in number_key(sign)]
    return tuple(sorted({origin[place] for place in places if place < len(origin)}))


def _as_printed(key: str, printed: str) -> str:
    """The key with the letters as they stand in print, small l among them; the key where a letter became two."""
    shown = "".join(sign for sign in printed if number_key(sign))
    return shown if number_key(shown) == key and len(shown) == len(key) else key
