"""Which pairs a person is asked about although their score is low: damage of a number, and sizes or words that agree.

The score takes it that a part stands on a sheet once. A supplier may sell one under three numbers: then each is the
others' rival, and all of them fall below what is asked. A question is cheap, so these are asked all the same, with
their low score: a number that differs from ours as typing, scanning or a spreadsheet makes it differ; and where the row
names no maker, words or a standard size that agree with nothing against them. One digit for another is no such reason:
sister parts differ so. Common practice, no source.
"""

from collections.abc import Collection, Sequence

from .dimensions.size_check import check_size
from .likeness.compared import RESPECTS
from .numbers.slip_kinds import Kind, slip_kind

LOOK_ALIKE: frozenset[Kind] = frozenset(
    (
        "look-alike character", "weak look-alike character", "leading zeros", "leading zeros and look-alike character",
        "read as a power of ten",
    )
)  # fmt: skip
"""Kinds of difference that are hardly ever a sister part's: asked about whatever else speaks against it."""
SLIPS: frozenset[Kind] = frozenset(("neighbours swapped", "character left out", "character doubled"))
"""Kinds that a sister part may have by chance: asked about where nothing speaks against it. 'character left out': the
row has one fewer than we."""

CONTRADICTING = ("measures", "colour", "side", "used", "made for another", "kit", "price")

_AT = {respect: at for at, respect in enumerate(RESPECTS)}
_NEAR = RESPECTS["number"].index("near number")
_MAKER_NOT_STATED = RESPECTS["maker"].index("maker not stated")
_WORDS_AGREE = RESPECTS["shorter words"].index("3/4")


def worth_asking(
    facts: Sequence[int], against: bool, numbers: tuple[Collection[str], Collection[str]], size: tuple[str, str]
) -> str:
    """Why a person is asked in spite of a low score, in words; blank where she is not.

    `facts` are the levels of the pair, none for a pair that was not compared; `numbers` the keys of the row and of the
    part; `size` the part's designation and the row's description.
    """
    if not facts or facts[_AT["maker"]] > _MAKER_NOT_STATED:
        return ""
    if facts[_AT["number"]] == _NEAR:
        kinds = _kinds(*numbers)
        if kinds & LOOK_ALIKE or (kinds & SLIPS and not against):
            return "asked in spite of its score: the number may be a damaged one of ours"
    if facts[_AT["maker"]] < _MAKER_NOT_STATED:
        return ""
    if facts[_AT["shorter words"]] <= _WORDS_AGREE and not against:
        return "asked in spite of its score: the row names no maker, and the descriptions agree"
    asked, offered = size
    # In another language the words have little in common, which counts against a pair and means nothing.
    if asked and not _contradicted(facts) and check_size(asked, offered).verdict == "same size":
        return f"asked in spite of its score: the row names no maker, and its size is that of {asked}"
    return ""


def _contradicted(facts: Sequence[int]) -> bool:
    """Whether anything but the words contradicts: the last level of each of these respects does."""
    return any(facts[_AT[respect]] == len(RESPECTS[respect]) - 1 for respect in CONTRADICTING)


def _kinds(row: Collection[str], part: Collection[str]) -> set[Kind | None]:
    """How the keys of the row differ from those of the part."""
    return {slip_kind(key, other) for key in row for other in part}
