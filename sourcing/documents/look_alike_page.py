"""A candidate for a page: the row's number beside ours with what differs marked, and what speaks for and against it."""

from typing import NamedTuple

from markupsafe import Markup

from ..basics.judgement import Waiting
from ..basics.part_number import PartNumber
from .plain_text import shown
from .review_reasons import apart
from .side_by_side import Marked, marked

LIKELY = ((0.9, "very likely"), (0.49995, "likely"), (0.2, "doubtful"), (0.0, "unlikely"))
"""By the least score: how likely a candidate is. As everywhere, it is likelier right than wrong from 0.5 shown on."""


class CandidateWords(NamedTuple):
    """`theirs`, `ours`: the two numbers most alike, with their makers in words; blank where the part has no number.

    `differs` says in words what is marked; blank where what speaks for it says so already.
    """

    theirs: Markup
    their_maker: str
    ours: Markup
    our_maker: str
    differs: str
    speaks_for: list[str]
    speaks_against: list[str]
    worth: str
    likely: str


def candidate_words(one: Waiting) -> CandidateWords:
    """What a person judges by, in words."""
    speaks_for, speaks_against = apart(one.kept.reasons, one.kept.against)
    numbers = Marked(Markup(), Markup(), "")
    if one.near:
        numbers = marked(*(shown(number.printed) for number in one.near))
    return CandidateWords(
        theirs=numbers.above,
        their_maker=_maker(one.near[0]) if one.near else "",
        ours=numbers.below,
        our_maker=_maker(one.near[1]) if one.near else "",
        differs="" if any(one.startswith("near number") for one in speaks_for) else numbers.words,
        speaks_for=speaks_for,
        speaks_against=speaks_against,
        worth=why_here(one),
        likely=likely_words(one),
    )


def why_here(one: Waiting) -> str:
    """Why it stands where it stands in the list: how often the part was asked for, and what a piece costs."""
    price = f"{one.price} a piece" if one.price else "no price in the shop's currency, so it comes last of its kind"
    times = {0: "nobody has asked for this part yet", 1: "asked for once", 2: "asked for twice"}
    return f"{times.get(one.asked, f'asked for {one.asked} times')}; {price}"


def likely_words(one: Waiting) -> str:
    """How likely it is the part, in a word: by its score, and by what speaks against it."""
    if one.kept.against:
        return "something against"
    return next(words for least, words in LIKELY if one.kept.score >= least)


def _maker(number: PartNumber) -> str:
    return number.maker or "no maker named"
