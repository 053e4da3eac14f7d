"""Two numbers one under the other, what differs marked: by a caret in plain text, by a mark on a page; no colour."""

from collections.abc import Iterable
from itertools import groupby, zip_longest
from typing import NamedTuple

from markupsafe import Markup, escape
from rapidfuzz.distance import Hamming, Levenshtein

LEAST_ALIKE = 0.7
"""Below this share of like characters carets would stand under nearly everything and help nobody."""
GAP = "·"
"""Stands where one of the two has no character: a blank would look like a part of the number."""
MOST_TOLD = 4
"""Of more characters that differ only the number is told."""


class Marked(NamedTuple):
    """Both texts as markup with what differs in <mark>, and the same in words for who can't see it."""

    above: Markup
    below: Markup
    words: str


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


def marked(one: str, other: str) -> Marked:
    """The two texts for a page; nothing is marked where they have little in common, which the words say."""
    above, below, carets = side_by_side(one, other)
    differs = [mark == "^" for mark in carets.ljust(max(len(above), len(below)))]
    return Marked(_runs(above, differs), _runs(below, differs), _words(above, below, differs))


def _runs(text: str, differs: Iterable[bool]) -> Markup:
    made = Markup()
    for marks, some in groupby(zip(text, differs, strict=False), key=lambda pair: pair[1]):
        run = "".join(letter for letter, _ in some)
        made += Markup("<mark>{}</mark>").format(run) if marks else escape(run)
    return made


def _words(above: str, below: str, differs: list[bool]) -> str:
    places = [at for at, one in enumerate(differs) if one]
    if above == below:
        return "They are the same."
    if not places:
        same = Levenshtein.normalized_similarity(_folded(above), _folded(below)) >= LEAST_ALIKE
        return "They do not differ but in capitals, blanks and signs." if same else "They have little in common."
    if len(places) > MOST_TOLD:
        return f"{len(places)} characters differ."
    told = (f"{_shown(above[at])} where ours has {_shown(below[at])}, character {at + 1}" for at in places)
    return f"{'; '.join(told)}."


def _shown(letter: str) -> str:
    return "nothing" if letter == GAP else letter


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
