"""A candidate for a page: the row's number beside ours with what differs marked, and what speaks for and against it."""

from typing import NamedTuple

from markupsafe import Markup

from ..basics.judgement import Waiting
from ..basics.part_number import PartNumber
from .plain_text import shown
from .review import worth_words
from .review_reasons import apart
from .side_by_side import Marked, marked


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
        worth=worth_words(one),
    )


def _maker(number: PartNumber) -> str:
    return number.maker or "no maker named"
