"""Two numbers one under the other, with a caret under each character that differs: plain text, no colour."""

from itertools import zip_longest

from rapidfuzz.distance import Hamming, Levenshtein

LEAST_ALIKE = 0.7
"""Below this share of like characters carets would stand under nearly everything and help nobody."""
GAP = "·"
"""Stands where one of the two has no character: a blank would look like a part of the number."""


def side_by_side(one: str, other: str) -> tuple[str, str, str]:
    """Both texts drawn out so that like characters stand under one another, and the line of carets.

    Case does not count, nor do blanks and punctuation, which part numbers are compared without. The line is blank
    where nothing differs, and where the two have little in common.
    """
    low = _folded(one), _folded(other)
    if Levenshtein.normalized_similarity(*low) < LEAST_ALIKE:
        return one, other, ""
    pairs = _in_place(one, other, low) or _drawn_out(one, other, low)
    above, below = ("".join(side) for side in zip(*pairs, strict=True)) if pairs else ("", "")
    marks = "".join("^" if _differ(*pair) else " " for pair in pairs)
    return above, below, marks.rstrip()


def _folded(text: str) -> str:
    """Capitals, character for character: a letter whose capital is two stays as it is."""
    return "".join(c.upper() if len(c.upper()) == 1 else c for c in text)


def _differ(above: str, below: str) -> bool:
    return _folded(above) != _folded(below) and (above.isalnum() or below.isalnum())


def _in_place(one: str, other: str, low: tuple[str, str]) -> list[tuple[str, str]]:
    """Place by place where drawing them out would not find more that agrees: two characters swapped stay together."""
    if len(one) != len(other) or Hamming.distance(*low) > Levenshtein.distance(*low):
        return []
    return list(zip(one, other, strict=True))


def _drawn_out(one: str, other: str, low: tuple[str, str]) -> list[tuple[str, str]]:
    """Pairs of characters, a gap where one of the texts has none."""
    pairs: list[tuple[str, str]] = []
    for step in Levenshtein.opcodes(*low):
        above, below = one[step.src_start : step.src_end], other[step.dest_start : step.dest_end]
        pairs += zip_longest(above, below, fillvalue=GAP)
    return pairs
