"""Why a row may be a part, in words: what agrees, what contradicts, and how it stands before its rivals."""

from collections.abc import Iterator, Sequence

from rapidfuzz.distance import OSA

from ..numbers.damage import explain
from .compared import RESPECTS
from .measures import apart
from .pairs import codes_of, stems
from .said import Said

AT = {respect: at for at, respect in enumerate(RESPECTS)}
ROW_LEAD, PART_LEAD = len(RESPECTS), len(RESPECTS) + 1
UNITS = {"length": " mm", "weight": " g", "volume": " ml", "voltage": " V", "power": " W", "current": " A"}
UNLIKE = {
    5: "near number",
    6: "other number",
    7: "near number, as many are by chance among numbers so short or so many",
}
FAR_BEFORE, AS_NEAR = 1, 4
"""Levels of a lead, see `scores.LEAD_STEPS`."""


def reasons(one: Said, other: Said, facts: Sequence[int]) -> tuple[str, ...]:
    """`one` is the row, `other` the part. Numbers are shown as keys: capitals and figures without punctuation."""
    said = {respect: facts[at] for respect, at in AT.items()}
    return tuple(
        words
        for words in (
            _number(one, other, said["number"]),
            _ending(one, other) if said["other codes"] == 3 else "",
            _maker(one, other, said["maker"]),
            _descriptions(said["shorter words"]) if one.words and other.words else "",
            *_differing(one, other, said["measures"] == 2, said["short numbers"] == 2),
            *_kinds(one, other),
            _price(said["price"]),
            *_rivals(facts),
        )
        if words
    )


def _number(one: Said, other: Said, level: int) -> str:
    own, others = codes_of(one), codes_of(other)
    if level == 0:
        return f"same number {_first(one.keys & other.keys)}"
    if level == 1:
        in_words = (one.keys & (other.codes | other.joined)) | (other.keys & (one.codes | one.joined))
        return f"number {_first(in_words)} stands in the description"
    if level == 2:
        return f"both name {_first((own & (others | other.joined)) | (others & one.joined))}"
    if level == 3:
        if one.keys and others:
            return f"{_first(one.keys)} is the supplier's own number and says nothing"
        return "no number to compare"
    if level == 4:
        return _longer(one, other)
    return _unlike(one, other, UNLIKE[level])


def _longer(one: Said, other: Said) -> str:
    own, others = codes_of(one), codes_of(other)
    pairs = [(a, b) for a in own for b in others if a in stems(b) or b in stems(a)]
    runs = [(code, code) for code in (own & other.runs) | (others & one.runs)]
    left, right = min(pairs or runs or [(_first(own), _first(others))])
    if left == right:
        return f"{left} is only the beginning or end of a longer number"
    return f"another article by its ending: {left} against {right}"


def _unlike(one: Said, other: Said, word: str) -> str:
    """The two numbers that are nearest: a part has many."""
    pairs = [(a, b) for a in one.keys or one.codes for b in other.keys or other.codes]
    left, right = min(pairs, key=lambda pair: (OSA.distance(*pair), pair))
    known = explain(left, right, left, right)
    return f"{word}: {left} against {right}" + (f" ({known.words})" if known else "")


def _ending(one: Said, other: Said) -> str:
    left = (codes_of(one) ^ codes_of(other)) - {""}
    return f"one of them also names {_first(left)}, the same number with an ending more"


def _maker(one: Said, other: Said, level: int) -> str:
    if level == 3:
        if not one.makers or not other.makers:
            return "the description names another maker"
        return f"other maker: {_first(one.makers).capitalize()} against {_first(other.makers).capitalize()}"
    return ("same maker", "the maker is named", "")[level]


def _descriptions(level: int) -> str:
    if level == len(RESPECTS["shorter words"]) - 1:
        return "descriptions have little in common"
    return "descriptions agree" if level <= 1 else "descriptions agree in part"


def _differing(one: Said, other: Said, measures: bool, short: bool) -> Iterator[str]:
    kinds = {kind for kind, _ in one.measures} & {kind for kind, _ in other.measures} if measures else set()
    for kind in sorted(kinds):
        left, right = apart(one.measures, other.measures, kind)
        if left and right:
            unit = UNITS.get(kind, "")
            yield f"{kind} differs: {_listed(left)}{unit} against {_listed(right)}{unit}"
    if short:
        yield f"short numbers differ: {_listed(one.bare - other.bare)} against {_listed(other.bare - one.bare)}"


def _kinds(one: Said, other: Said) -> Iterator[str]:
    for left, right in ((one.sides, other.sides), (one.colours, other.colours)):
        if left and right and left.isdisjoint(right):
            yield f"{_listed(left)} against {_listed(right)}"
    if one.generations != other.generations and one.generations.isdisjoint(other.generations):
        made, asked = (_listed(some) or "none named" for some in (one.generations, other.generations))
        yield f"type, version or series: {made} against {asked}"
    for thing in sorted(one.things ^ other.things):
        yield {
            "used": "only one of them is used or remanufactured",
            "made for another": "only one of them is said to be for, or in place of, something else",
            "kit": "only one of them is a kit or set",
        }[thing]


def _price(level: int) -> str:
    words = RESPECTS["price"][level]
    return "" if words == "price not stated" else f"price {words}"


def _rivals(facts: Sequence[int]) -> Iterator[str]:
    if facts[ROW_LEAD] >= AS_NEAR:
        yield "another part is as near or nearer"
    if facts[PART_LEAD] >= AS_NEAR:
        yield "another row is as near or nearer to this part"
    if max(facts[ROW_LEAD], facts[PART_LEAD]) <= FAR_BEFORE:
        yield "far before the next best"


def _listed(words: frozenset[str]) -> str:
    return ", ".join(sorted(words))


def _first(keys: frozenset[str]) -> str:
    return min(keys, key=lambda key: (-len(key), key), default="")
