"""Which size a text speaks of: every family's reader over it, only what has ground, and one thing or nothing.

The danger is the false reading: 'A36' may be a filter, '608 pcs' a count, 'M8x20' a bolt. What has a distinctive
form is believed; what is short needs a word of the trade in the text, or to be told that the text is a designation.
"""

import re
from functools import lru_cache
from itertools import islice

from . import (
    classical,
    double_v,
    inch_bearings,
    light_duty,
    metric_teeth,
    metric_v,
    narrow,
    plain_bearing,
    plain_chain,
    plain_size,
    roller_chain,
    rolling_bearings,
    synchronous,
    v_ribbed,
    variable_speed,
)
from .beside import with_words
from .compare import compare_sizes
from .size import BearingSize, BeltSize, ChainSize, FamilyName, Found, Size
from .text import LONGEST_TEXT, blocked_in, for_a_machine, plain, spoken_of

_READERS = (
    *(classical.find, light_duty.find, narrow.find, metric_v.find, double_v.find, variable_speed.find, v_ribbed.find),
    *(synchronous.find, metric_teeth.find, plain_size.find),
    *(rolling_bearings.find, inch_bearings.find, plain_bearing.find, roller_chain.find, plain_chain.find),
)

MOST_DESIGNATIONS = 64
"""A text with more of them is a list, and speaks of no one thing (own choice; it keeps hostile cells cheap)."""

_NO_FAMILY: frozenset[FamilyName] = frozenset()

_DASH = "[-–—‑−‐]"
_MAY = re.compile(
    r"BELT|RIEM|COURR|CORREA|SNA[AR]|CINGHI|BEARING|BRN?G|LAGER|ROULEM|RODAM|COJIN|CUSCIN|CHAIN|KETT|CHA[IÎ]N|CADENA|CATEN"
    rf"|[345]L{_DASH}?\d\d\d|[358]VX?{_DASH}?\d\d\d|\d\d\d\dV{_DASH}?\d\d\d|\dP[HJKLM]{_DASH}?\d\d\d"
    rf"|\d\d\d{_DASH}(?:[358]|14|20)M{_DASH}\d|ANSI|\d\s*(?:MM)?\s*L[IADWP](?![A-Z])|2RS|2RZ|DDU|LLU|LLB|ZZ|2Z"
)


def may_hold_size(text: str) -> bool:
    """A quick look: False only where `read_size(text)` would find nothing, and no belt, bearing or chain is spoken of.

    Says nothing of texts of a known family.
    """
    return bool(_MAY.search(text.upper()))


def read_size(text: str, certain: bool = False, family: FamilyName | None = None) -> Size | None:
    """The one size a number or description speaks of; None where there is none, or several that differ.

    certain: the text is known to be a designation (our part's own size). family: known from elsewhere what it speaks
    of. One belt under two names ('B36 / 5L390') is read as its lighter one. Never raises.
    """
    names = read_names(text, certain, frozenset((family,)) if family else _NO_FAMILY)
    if not names or len({name.family for name in names}) > 1:
        return None
    return next((name for name in names if isinstance(name, BeltSize) and name.section.light_duty), names[0])


def read_names(
    text: str,
    certain: bool = False,
    known: frozenset[FamilyName] = _NO_FAMILY,
    blocked: frozenset[FamilyName] = _NO_FAMILY,
) -> tuple[Size, ...]:
    """The names of the thing a text speaks of, of each family at most one thing; empty where there is no ground.

    known, blocked: families spoken of elsewhere, and those of which only something made for them is.
    """
    return tuple(name for names in every_name(text, certain, known, blocked) if agree(names) for name in names)


@lru_cache(maxsize=50_000)
def every_name(
    text: str,
    certain: bool = False,
    known: frozenset[FamilyName] = _NO_FAMILY,
    blocked: frozenset[FamilyName] = _NO_FAMILY,
) -> tuple[tuple[Size, ...], ...]:
    """All names a text has ground for, by family, though they may be names of several things: ask `agree`."""
    upper = plain(text[:LONGEST_TEXT])
    if not any(character.isdigit() for character in upper):
        return ()
    spoken = spoken_of(upper) | known
    barred = _NO_FAMILY if certain else blocked_in(upper) | blocked
    found = [one for one in _found(upper) if one.size.family not in barred]
    spoken |= {one.size.family for one in found if one.ground == "form"}
    held = [one for one in found if _has_ground(one, upper, certain, spoken)]
    named = [with_words(one.size, upper) for one in _outermost(held)]
    return tuple(names for family in ("belt", "bearing", "chain") if (names := _names_of(named, family)))


def agree(names: tuple[Size, ...]) -> bool:
    """Whether names of one family may be names of one thing."""
    return all(_agree(one, other) for at, one in enumerate(names) for other in names[at + 1 :])


def _found(text: str) -> list[Found]:
    found = list(islice((one for reader in _READERS for one in reader(text)), MOST_DESIGNATIONS + 1))
    return found if len(found) <= MOST_DESIGNATIONS else []


def is_whole(text: str, size: Size) -> bool:
    """Whether a text is this designation and nothing else, but for spaces and dashes."""
    return _bare(plain(text)) == _bare(plain(size.designation))


def _bare(text: str) -> str:
    return re.sub(r"[\s-]", "", text.upper())


def _has_ground(one: Found, text: str, certain: bool, spoken: frozenset[FamilyName]) -> bool:
    if one.ground == "form":
        return True
    if one.size.family in spoken:
        return certain or not for_a_machine(text, one.start)
    return certain and one.ground == "context"


def _outermost(found: list[Found]) -> list[Found]:
    """Without what stands inside a longer reading: the '40' of '#40 x 44', the '13x2240' of '13x2240 Li'."""
    return [
        one
        for one in found
        if not any(
            other is not one and other.start <= one.start and one.end <= other.end and _length(other) > _length(one)
            for other in found
        )
    ]


def _length(one: Found) -> int:
    return one.end - one.start


def _names_of(named: list[Size], family: str) -> tuple[Size, ...]:
    sizes = list(dict.fromkeys(size for size in named if size.family == family))
    return tuple(size for size in sizes if not _said_better(size, sizes))


def _said_better(size: Size, sizes: list[Size]) -> bool:
    """Whether another name in the same text says the same and more: '4L390 1/2 x 39', '6203-2RS (6203)'."""
    others = [other for other in sizes if other is not size and other.family == size.family and _is_clear(other)]
    if not _is_clear(size):
        return bool(others) and all(compare_sizes(size, other).verdict != "different" for other in others)
    if isinstance(size, BearingSize) and not (
        size.closure or size.clearance or size.ring or size.bore_in or size.doubt
    ):
        return any(isinstance(other, BearingSize) and other.basic == size.basic and other.closure for other in others)
    return False


def _is_clear(size: Size) -> bool:
    """Whether a name says what it is: not a mere width and length, three dimensions, or pitch and width."""
    if isinstance(size, BeltSize):
        return size.length.kind != "not said"
    return size.roller is not None if isinstance(size, ChainSize) else bool(size.basic)


def _agree(one: Size, other: Size) -> bool:
    """Two names of one thing: a belt of one size in two duties, or two ways of writing the same."""
    check = compare_sizes(one, other)
    if isinstance(one, BeltSize):
        return check.verdict in ("same size", "other duty")
    return check.verdict == "same size"
