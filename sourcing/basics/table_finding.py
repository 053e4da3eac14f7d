"""What a check of the equivalence table finds: the kind, the words, and the statements involved."""

from typing import Literal

from .equivalence import MakerAlias, OurPart, Statement
from .value import Value

FindingKind = Literal[
    "same part and must not",
    "loop of supersession",
    "kit contains itself",
    "two of our parts tied together",
    "one number of two parts",
    "sizes disagree",
    "nobody sells it",
    "one alias, two makers",
    "loop of makers",
    "doubted",
    "machine without maker",
    "said before",
]

FINDING_KINDS: tuple[FindingKind, ...] = (
    "same part and must not",
    "loop of supersession",
    "kit contains itself",
    "two of our parts tied together",
    "one number of two parts",
    "sizes disagree",
    "nobody sells it",
    "one alias, two makers",
    "loop of makers",
    "doubted",
    "machine without maker",
    "said before",
)
"""The kinds in the order they are shown: what may send a wrong part first, what is only worth knowing last."""


class Finding(Value, frozen=True, kw_only=True):
    """One thing a person should look at. `statements`: those involved, in the order of the path where there is one.

    `more`: how many further statements are involved and left out, where a path or a loop is very long.
    """

    kind: FindingKind
    words: str
    statements: tuple[Statement, ...] = ()
    parts: tuple[OurPart, ...] = ()
    aliases: tuple[MakerAlias, ...] = ()
    more: int = 0
