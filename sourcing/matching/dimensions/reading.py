"""Which size a text speaks of: every family's reader over it, only what has ground, and one thing or nothing.

The danger is the false reading: 'A36' may be a filter, '608 pcs' a count, 'M8x20' a bolt. What has a distinctive
form is believed; what is short needs a word of the trade in the text, or to be told that the text is a designation.
"""

import re
from functools import lru_cache

from . import (
    classical,
    double_v,
    light_duty,
    metric_v,
    narrow,
    plain_size,
    roller_chain,
    rolling_bearings,
    synchronous,
    v_ribbed,
    variable_speed,
)
from .compare import compare_sizes
from .size import BearingSize, BeltSize, FamilyName, Found, Size
from .text import blocked_in, plain, spoken_of

_READERS = (
    *(classical.find, light_duty.find, narrow.find, metric_v.find, double_v.find, variable_speed.find, v_ribbed.find),
    *(synchronous.find, plain_size.find, rolling_bearings.find, roller_chain.find),
)

_NO_FAMILY: frozenset[FamilyName] = frozenset()

_DASH = "[-–—‑−‐]"
_MAY = re.compile(
    r"BELT|RIEM|COURR|CORREA|SNA[AR]|CINGHI|BEARING|BRG|LAGER|ROULEM|RODAM|COJIN|CUSCIN|CHAIN|KETT|CHA[IÎ]N|CADENA|CATEN"
    rf"|[345]L{_DASH}?\d\d\d|[358]VX?{_DASH}?\d\d\d|\d\d\d\dV{_DASH}?\d\d\d|\dP[HJKLM]{_DASH}?\d\d\d"
    rf"|\d\d\d{_DASH}(?:[358]|14|20)M{_DASH}\d|ANSI|\d\s*(?:MM)?\s*L[IADWP](?![A-Z])|2RS|2RZ|DDU|LLU|LLB|ZZ|2Z"
)


def may_hold_size(text: str) -> bool:
    """A quick look: False only where `read_size(text)` would find nothing. Says nothing of texts of a known family."""
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


@lru_cache(maxsize=50_000)
def read_names(
    text: str,
    certain: bool = False,
    known: frozenset[FamilyName] = _NO_FAMILY,
    blocked: frozenset[FamilyName] = _NO_FAMILY,
) -> tuple[Size, ...]:
    """The names of the thing a text speaks of, of each family at most one thing; empty where there is no ground.

    known, blocked: families spoken of elsewhere, and those of which only something made for them is.
    """
    upper = plain(text)
    if not any(character.isdigit() for character in upper):
        return ()
    spoken = spoken_of(upper) | known
    barred = _NO_FAMILY if certain else blocked_in(upper) | blocked
    found = [one for reader in _READERS for one in reader(upper) if one.size.family not in barred]
    spoken |= {one.size.family for one in found if one.ground == "form"}
    held = [one for one in found if _has_ground(one, certain, spoken)]
    return tuple(size for family in ("belt", "bearing", "chain") for size in _one_thing(_outermost(held), family))


def is_whole(text: str, size: Size) -> bool:
    """Whether a text is this designation and nothing else, but for spaces and dashes."""
    return _bare(plain(text)) == _bare(plain(size.designation))


def _bare(text: str) -> str:
    return re.sub(r"[\s-]", "", text)


def _has_ground(one: Found, certain: bool, spoken: frozenset[FamilyName]) -> bool:
    return one.ground == "form" or one.size.family in spoken or (certain and one.ground == "context")


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


def _one_thing(found: list[Found], family: str) -> tuple[Size, ...]:
    sizes = list(dict.fromkeys(one.size for one in found if one.size.family == family))
    sizes = [size for size in sizes if not _said_better(size, sizes)]
    agree = all(_agree(one, other) for at, one in enumerate(sizes) for other in sizes[at + 1 :])
    return tuple(sizes) if agree else ()


def _said_better(size: Size, sizes: list[Size]) -> bool:
    """Whether another name in the same text says the same and more: '4L390 1/2 x 39', '6203-2RS (6203)'."""
    others = [other for other in sizes if other is not size and other.family == size.family]
    if isinstance(size, BeltSize) and size.length.kind == "not said":
        clear = [other for other in others if isinstance(other, BeltSize) and other.length.kind != "not said"]
        return bool(clear) and all(compare_sizes(size, other).verdict != "different" for other in clear)
    if isinstance(size, BearingSize) and not (
        size.closure or size.clearance or size.ring or size.bore_in or size.doubt
    ):
        return any(isinstance(other, BearingSize) and other.basic == size.basic and other.closure for other in others)
    return False


def _agree(one: Size, other: Size) -> bool:
    """Two names of one thing: a belt of one size in two duties, or two ways of writing the same."""
    check = compare_sizes(one, other)
    if isinstance(one, BeltSize):
        return check.verdict in ("same size", "other duty")
    return check.verdict == "same size"
