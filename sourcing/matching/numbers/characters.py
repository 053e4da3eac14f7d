"""Characters taken for one another in reading and typing, as two foldings of a key.

First: O and 0; I, L and 1 (ISMP Medication Safety Alert, 12 January 2000, quoting Bell Laboratories: I/1, O/0, Z/2 and
1/7 make more than half of misread characters; Crockford's base 32 reads O as 0, I and L as 1). Second and weaker: Z/2
(the same), S/5, B/8, G/6 (common practice, no source), Q/0 and D/0 (ISO 3779 leaves I, O and Q out of vehicle numbers;
D common practice). Never folded, two good characters each: 1/7, 0/8/9, 6/4/7 with G/A/T, U/V, C/G, E/F.
Folded keys find candidates; they never make two numbers the same.
"""

FIRST = {"O": "0", "I": "1", "L": "1"}
SECOND = {**FIRST, "Z": "2", "S": "5", "B": "8", "D": "0", "Q": "0", "G": "6"}

_FIRST = str.maketrans(FIRST)
_SECOND = str.maketrans(SECOND)


def folded(key: str) -> str:
    """The key with the letters that are easily taken for figures as those figures."""
    return key.translate(_FIRST)


def folded_further(key: str) -> str:
    """The key with the weaker pairs folded too."""
    return key.translate(_SECOND)


def without_zeros(key: str) -> str:
    """The key without the zeros it begins with, as a spreadsheet leaves a number of figures; '' where all are zeros."""
    return key.lstrip("0")


def first_difference(one: str, other: str) -> int:
    """The first place at which the texts differ; the length of the shorter where it begins the longer."""
    for at, (left, right) in enumerate(zip(one, other, strict=False)):
        if left != right:
            return at
    return min(len(one), len(other))
