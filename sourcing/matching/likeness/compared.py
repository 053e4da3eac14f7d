"""A pair of a row and a part, compared in seventeen respects; each comparison gives one of a few levels.

Levels are named so that a person can be told; the order within a respect is from agreeing to contradicting.
"""

from collections.abc import Mapping, Sequence
from typing import NamedTuple

import numpy as np
import numpy.typing as npt
from rapidfuzz.distance import OSA

from ..numbers.slip_kinds import OTHER_ARTICLE, Kind, slip_kind
from .crowding import Crowding
from .measures import Measure, apart
from .pairs import codes_of, forms_of, stems
from .said import Said
from .words_near import Positions

RESPECTS: dict[str, tuple[str, ...]] = {
    "number": (
        "same number", "number in the words", "same code", "not stated", "ending more", "near number", "other number",
        "near among many",  # stands last so that the facts kept with earlier answers keep their meaning
    ),
    "shared code": ("long, borne by one", "short, borne by one", "borne by a few", "borne by many", "none shared"),
    "other codes": ("none left", "left on one side", "left on both sides", "the shared code with an ending more"),
    "maker": ("same maker", "maker in the words", "maker not stated", "other maker"),
    "shorter words": ("9/10", "3/4", "6/10", "45/100", "3/10", "little"),
    "longer words": ("9/10", "3/4", "6/10", "45/100", "3/10", "little"),
    "spelling": ("8/10", "6/10", "45/100", "3/10", "2/10", "little"),
    "measures": ("same measures", "measures not stated", "other measures"),
    "short numbers": ("same short numbers", "short numbers not stated", "other short numbers"),
    "colour": ("same colour", "colour not stated", "colour stated once", "other colour"),
    "side": ("same side", "side not stated", "side stated once", "other side"),
    "generation": ("same generation", "generation not stated", "generation stated once", "other generation"),
    "used": ("both or neither", "one of them used"),
    "made for another": ("both or neither", "one of them made for another"),
    "kit": ("both or neither", "one of them a kit"),
    "number and words": (
        "number and words agree", "number agrees", "number agrees, words do not", "words agree", "neither says much",
        "words do not agree", "other number, words agree", "other number", "neither agrees",
    ),
    "price": (
        "the same to the cent", "within 3 %", "within 15 %", "within 35 %", "price not stated", "within twice",
        "beyond twice", "beyond four times",
    ),
}  # fmt: skip
"""Every respect with its levels."""

WORD_STEPS = (0.9, 0.75, 0.6, 0.45, 0.3)
SPELLING_STEPS = (0.8, 0.6, 0.45, 0.3, 0.2)
NOT_DESCRIBED = 0.5
"""Where one of the two has no words, they speak neither for nor against."""
PRICE_STEPS = (1e-9, 0.03, 0.14, 0.30, 0.70, 1.39)
"""Of the difference of natural logarithms: 0.70 is twice, 1.39 four times."""


LONG_CODE = 6
"""A code of so many characters is seldom met by chance."""

BY_CHANCE: frozenset[Kind] = frozenset(
    ("neighbours swapped", "character left out", "character doubled", "character added", "one character different")
)
"""One slip, as another article's number has too where numbers are short and many; look-alikes and lost zeros not."""

Floats = npt.NDArray[np.float64]
Known = tuple[int, Mapping[str, int], Crowding]


class Compared(NamedTuple):
    """Pairs by position, with the level reached in each respect (one column a respect)."""

    row: Positions
    part: Positions
    levels: npt.NDArray[np.int8]


def compare(
    rows: Sequence[Said], parts: Sequence[Said], pairs: tuple[Positions, Positions], cosine: Floats, crowd: Crowding
) -> Compared:
    """Compare each pair. How much a word or a code says is learnt from how many of these rows and parts bear it."""
    row, part = pairs
    levels = np.empty((len(row), len(RESPECTS)), dtype=np.int8)
    weights, bearers = word_weights(rows, parts), code_bearers(rows, parts)
    known = frozenset(maker for table in (rows, parts) for one in table for maker in one.makers if len(maker) > 3)
    named_rows, named_parts = ([_makers_named(one, known) for one in table] for table in (rows, parts))
    heavy_rows, heavy_parts = ([sum(map(weights.__getitem__, one.words)) for one in table] for table in (rows, parts))
    for at, (i, j) in enumerate(zip(row.tolist(), part.tolist(), strict=True)):
        one, other = rows[i], parts[j]
        shared = sum(map(weights.__getitem__, one.words & other.words))
        short, long = sorted((heavy_rows[i], heavy_parts[j]))
        covers = (shared / short, shared / long) if short else (NOT_DESCRIBED, NOT_DESCRIBED)
        makers = maker_level(one, other, named_rows[i], named_parts[j])
        levels[at] = _levels(one, other, (*covers, cosine[at]), (makers, bearers, crowd))
    return Compared(row, part, levels)


def code_bearers(rows: Sequence[Said], parts: Sequence[Said]) -> dict[str, int]:
    """How many rows or parts, whichever is more, bear each code."""
    counts: list[dict[str, int]] = []
    for table in (rows, parts):
        found: dict[str, int] = {}
        for one in table:
            for code in forms_of(one):
                found[code] = found.get(code, 0) + 1
        counts.append(found)
    return {code: max(count, counts[1].get(code, 0)) for code, count in counts[0].items()}


def word_weights(*tables: Sequence[Said]) -> dict[str, float]:
    """How much each word says: the logarithm of how rare it is over both tables. No labels are needed."""
    counts: dict[str, int] = {}
    total = 0
    for table in tables:
        total += len(table)
        for one in table:
            for word in one.words:
                counts[word] = counts.get(word, 0) + 1
    logs = np.log((total + 1) / np.array(list(counts.values()), dtype=float)) if counts else np.empty(0)
    return dict(zip(counts, logs.tolist(), strict=True))


def _levels(one: Said, other: Said, alike: tuple[float, ...], known: Known) -> tuple[int, ...]:
    makers, bearers, crowd = known
    number, shared = number_level(one, other, crowd)
    return (
        number,
        _shared_level(shared, bearers),
        _left_over(one, other, shared),
        makers,
        _step(alike[0], WORD_STEPS),
        _step(alike[1], WORD_STEPS),
        _step(alike[2], SPELLING_STEPS),
        _measure_level(one.measures, other.measures),
        _set_level(one.bare, other.bare),
        _stated_level(one.colours, other.colours),
        _stated_level(one.sides, other.sides),
        _stated_level(one.generations, other.generations),
        *(int((thing in one.things) != (thing in other.things)) for thing in ("used", "made for another", "kit")),
        _both_level(number, alike[0]),
        _price_level(one.price, other.price),
    )


def _both_level(number: int, words: float) -> int:
    """Number and words together: a number that agrees beside words that do not is worth less than their sum."""
    by_number = 0 if number <= 2 else 3 if number <= 4 else 6
    return by_number + (0 if words >= WORD_STEPS[1] else 1 if words >= WORD_STEPS[3] else 2)


def number_level(one: Said, other: Said, crowd: Crowding) -> tuple[int, frozenset[str]]:
    """The level of 'number', the best any of the codes of the two reaches, and the codes shared."""
    level, shared = shared_codes(one, other)
    own, others = codes_of(one), codes_of(other)
    return _unlike_level(one, other, (own, others), crowd) if level == 3 and own and others else level, shared


def shared_codes(one: Said, other: Said) -> tuple[int, frozenset[str]]:
    """The level of 'number' as far as codes are shared, and those codes; 3 and none where none is."""
    if shared := frozenset(key for key in one.keys & other.keys if _one_makers(one.whose(key), other.whose(key))):
        return 0, shared
    if shared := (one.keys & (other.codes | other.joined)) | (other.keys & (one.codes | one.joined)):
        return 1, shared
    own, others = codes_of(one), codes_of(other)
    if shared := (own & (others | other.joined)) | (others & one.joined):
        return 2, shared
    return 3, frozenset()


def _one_makers(left: frozenset[str], right: frozenset[str]) -> bool:
    """Whether a number may be of one maker: the same, or one of them anybody's."""
    return not left or not right or "" in left or "" in right or not left.isdisjoint(right)


def _unlike_level(one: Said, other: Said, codes: tuple[frozenset[str], frozenset[str]], crowd: Crowding) -> int:
    own, others = codes
    if not own.isdisjoint(other.runs) or not others.isdisjoint(one.runs):
        return 4
    if any(code in stems(longer) or longer in stems(code) for code in own for longer in others):
        return 4
    kinds = {slip_kind(key, near) for key in one.keys for near in other.keys} - {None}
    if kinds & OTHER_ARTICLE:
        return 4
    if kinds - BY_CHANCE:
        return 5
    near = {code for code in own for each in others if OSA.distance(code, each, score_cutoff=1) <= 1}
    return 5 if any(map(crowd.telling, near)) else 7 if near else 6


def _shared_level(shared: frozenset[str], bearers: Mapping[str, int]) -> int:
    if not shared:
        return 4
    rarest = min(shared, key=lambda code: (bearers.get(code, 1), -len(code)))
    count = bearers.get(rarest, 1)
    if count > 1:
        return 2 if count <= 4 else 3
    return 0 if len(rarest) >= LONG_CODE else 1


def _left_over(one: Said, other: Said, shared: frozenset[str]) -> int:
    left = codes_of(one) - forms_of(other)
    right = codes_of(other) - forms_of(one)
    if any(code.startswith(tuple(shared)) for code in left | right) if shared else False:
        return 3
    return bool(left) + bool(right)


def maker_level(one: Said, other: Said, named: frozenset[str], other_named: frozenset[str]) -> int:
    """The level of 'maker'. `named`: makers of the two tables that a description names, where no maker is stated."""
    if one.makers and other.makers:
        shared = one.keys & other.keys
        if shared and (one.owners or other.owners):
            return 0 if any(_one_makers(one.whose(key), other.whose(key)) for key in shared) else 3
        if not one.makers.isdisjoint(other.makers):
            return 0
        return min(_near_maker(maker, name) for maker in one.makers for name in other.makers)
    left, right = one.makers or named, other.makers or other_named
    if left and right:
        return 1 if not left.isdisjoint(right) else 3
    return 1 if _named(one.makers, other) or _named(other.makers, one) else 2


def _makers_named(one: Said, known: frozenset[str]) -> frozenset[str]:
    return frozenset() if one.makers else one.words & known


def _near_maker(maker: str, other: str) -> int:
    """'norrowby' and 'norrowbydrives' count as named; 'nrb' may stand for 'norrowby' and says nothing."""
    shorter, longer = sorted((maker, other), key=len)
    if len(shorter) > 2 and longer.startswith(shorter):
        return 1
    letters = iter(longer)
    return 2 if len(shorter) <= 3 and longer[:1] == shorter[:1] and all(one in letters for one in shorter) else 3


def _named(makers: frozenset[str], other: Said) -> bool:
    return any(maker in other.words or (len(maker) > 3 and maker in other.run) for maker in makers)


def _measure_level(one: frozenset[Measure], other: frozenset[Measure]) -> int:
    """Only what both measure is compared: a length beside a voltage says nothing."""
    kinds = {kind for kind, _ in one} & {kind for kind, _ in other}
    if not kinds:
        return 1
    left, right = (frozenset(each for each in some if each[0] in kinds) for some in (one, other))
    return 2 if any(_contradict(left, right, kind) for kind in kinds) else 0


def _contradict(one: frozenset[Measure], other: frozenset[Measure], kind: str) -> bool:
    left, right = apart(one, other, kind)
    return bool(left and right)


def _set_level(one: frozenset[str], other: frozenset[str]) -> int:
    if not one or not other:
        return 1
    return 2 if one - other and other - one else 0


def _stated_level(one: frozenset[str], other: frozenset[str]) -> int:
    if not one and not other:
        return 1
    if not one or not other:
        return 2
    return 3 if one.isdisjoint(other) else 0


def _price_level(one: float | None, other: float | None) -> int:
    if one is None or other is None:
        return 4
    apart = abs(one - other)
    step = next((at for at, edge in enumerate(PRICE_STEPS) if apart <= edge), len(PRICE_STEPS))
    return step if step < 4 else step + 1


def _step(value: float, edges: Sequence[float]) -> int:
    return next((at for at, edge in enumerate(edges) if value >= edge), len(edges))
