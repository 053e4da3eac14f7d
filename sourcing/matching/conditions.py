"""Whether two conditions, in a person's words, cannot both hold: 'with spacer' and 'without spacer'.

Only plain opposites of one thing are seen (common practice, no source); whatever else conditions say is for a person.
"""

import re
from collections.abc import Sequence
from itertools import combinations

OPPOSITES = (
    *(("with", "without"), ("mit", "ohne"), ("avec", "sans"), ("con", "sin"), ("met", "zonder"), ("before", "after")),
    *(("inside", "outside"), ("front", "rear"), ("left", "right"), ("upper", "lower"), ("old", "new")),
)
NOT = {"not", "no", "never", "nicht", "kein", "pas", "niet"}
SAYS_NOTHING = {"only", "when", "if", "the", "a", "an", "is", "on", "nur", "wenn", "seulement", "with", "mit", "avec"}
_WORD = re.compile(r"\w+(?:[./-]\w+)*")


def contradiction(conditions: Sequence[str]) -> str:
    """The first two conditions that cannot both hold, in words; blank where none contradict."""
    for one, other in combinations(dict.fromkeys(conditions), 2):
        if _opposed(_words(one), _words(other)):
            return f"its conditions contradict each other: '{one}' and '{other}'"
    return ""


def _words(condition: str) -> frozenset[str]:
    plain = condition.casefold().replace("w/o", "without ").replace("w/", "with ")
    return frozenset(_WORD.findall(plain))


def _opposed(one: frozenset[str], other: frozenset[str]) -> bool:
    ways = [(left, right) for a, b in OPPOSITES for left, right in ((a, b), (b, a))]
    if any(left in one and right in other and _core(one - {left}) == _core(other - {right}) for left, right in ways):
        return True
    return bool(one & NOT) != bool(other & NOT) and bool(_core(one)) and _core(one) == _core(other)


def _core(words: frozenset[str]) -> frozenset[str]:
    return words - SAYS_NOTHING - NOT
