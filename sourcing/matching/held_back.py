"""What in two descriptions keeps one number from being one part: said in words, and never accepted in bulk.

A number may be damaged so that it lands on a sister part's, may be borne by another thing of another maker, or stand
in a description because it is *not* what is sold. Nothing in the number shows that; the words beside it do.
"""

import re
from collections.abc import Iterator, Sequence

from .articles import another_article, not_named
from .likeness.compared import RESPECTS
from .likeness.said import Said
from .measures_against import bare_against, both_sides
from .numbers.slip_kinds import slip_kind
from .opposites import replaced

AT = {respect: at for at, respect in enumerate(RESPECTS)}
SAME_NUMBER, SAME_CODE = 0, 2
"""Levels of 'number': the same number; the last at which a number or code is shared."""
NEAR_PRICE = 3
"""Up to this level of 'price' the two are within 35 %: a pack does not cost what a piece costs."""

ONE_PIECE = ("each", "ea", "single", "stück", "einzeln", "pièce", "unité", "suelto", "suelta")
"""Words that say that one piece is sold (common practice, no source)."""

DISTINCTIVE = 7
"""A number of so many characters is not met by chance; a shorter one without maker and description is."""

_INSTEAD = (
    r"was|were|formerly|previously|old|prev|ex|not|no longer|replaces|replaced|replacing|supersedes|superseded|instead"
    r"|unlike|except|nicht|statt|ersetzt|ersetzen|frueher|früher|bisher|alt|siehe|neu|remplace|remplacé"
    r"|ancien|anciennement|voir|pas|sustituye|reemplaza|antes|vervangt|niet|zie"
    r"|for|fits|compatible|replacement|alternative|substitute|fuer|für|passend|pour|para|voor"
)
_JOINED_ON = r"(?:[\s(:=,]|by|to|of|with|no|nr|par|por|durch|von|vor|number|part|item|oem|p/n|#|\.)*"
_NAMED_AS_OTHER = re.compile(
    rf"(?:(?<![^\W_])(?:{_INSTEAD})|(?:^|[,;(.] *)(?:use|see|now))(?![^\W_]){_JOINED_ON}(?:[a-z]{{2,15}} )?$"
)
"""The end of the words before a number that is not the number of what is sold (common practice, no source)."""

_IN_PLACE = re.compile(
    r"(?<![^\W_])(?:compatible|kompatibel|generic|replacement|replaces|equivalent|aftermarket|ersetzt|ersatz|remplace"
    r"|remplacement|alternative|alternativ|instead|superseded|supersedes|substitute|similar|statt|sustituye|imitation"
    r"|not (?:genuine|original|oem)|nicht original|non[- ](?:genuine|original|oem))(?![^\W_])"
)
"""The article is in place of the maker's own, whatever number stands beside it."""
_FOR = re.compile(rf"{_IN_PLACE.pattern}|(?<![^\W_])(?:for|fits|fuer|für|pour|para|voor|passend)(?![^\W_])")
_LONGEST = 3000
_LOOKED_BACK = 40
_STANDARD = re.compile(r"(?<![^\W_])(?:std|standard)(?![^\W_])")
_OVERSIZE = re.compile(r"\+ ?0?[.,]\d{2,3}(?!\w)|(?<![^\W_])(?:oversized?|o/s|übermaß|uebermass)(?![^\W_])")


def held_back(one: Said, other: Said, texts: tuple[str, str], facts: Sequence[int]) -> tuple[str, ...]:
    """What in the words keeps the row `one` from being the part `other`, whose number it bears or names.

    `texts`: their descriptions. `facts`: the levels of the pair; without a number in common it is left alone.
    """
    number = facts[AT["number"]]
    if number > SAME_CODE:
        return ()
    reasons = [another_article(*texts), not_named(*texts), _counts(one, other, facts[AT["price"]] <= NEAR_PRICE)]
    if number == SAME_NUMBER:
        reasons += [_marks(one, other), *_contradicts_itself(one, texts[0]), *_contradicts_itself(other, texts[1])]
        reasons += [
            replaced(*texts),
            in_place_of_another(*texts),
            _oversize(*texts),
            both_sides(one, other),
            bare_against(one, other),
        ]
    else:
        reasons += [*_named_beside(one, other, texts[0]), *_named_beside(other, one, texts[1])]
    return tuple(dict.fromkeys(filter(None, reasons)))


def in_place_of_another(description: str, ours: str) -> str:
    """Whether only one of them is said to be in place of a maker's part: 'replacement for', 'ersetzt'. Blank if not."""
    said = [_IN_PLACE.search(text[:_LONGEST].lower()) for text in (description, ours)]
    if bool(said[0]) == bool(said[1]) or all(_FOR.search(text[:_LONGEST].lower()) for text in (description, ours)):
        return ""
    word = next(found[0] for found in said if found)
    return f"only one of them is said to be in place of another: '{word}'"


def named_as_other(description: str, key: str) -> str:
    """The word by which a description names a number as another's: 'was NW-40300', 'for 40300'. Blank if none does."""
    text = description[:_LONGEST].lower()
    spelled = r"[\W_]*".join(map(re.escape, key.lower()))
    for found in re.finditer(rf"(?<![^\W_]){spelled}(?![^\W_])", text):
        before = _NAMED_AS_OTHER.search(text[max(0, found.start() - _LOOKED_BACK) : found.start()])
        if before:
            return before[0].strip(" ,;(.").split()[0]
    return ""


def _oversize(description: str, ours: str) -> str:
    """Rings and bearings come in standard and ground sizes under numbers that look alike."""
    for one, other in ((description, ours), (ours, description)):
        if _STANDARD.search(one[:_LONGEST].lower()) and _OVERSIZE.search(other[:_LONGEST].lower()):
            return "standard against oversize"
    return ""


def _counts(one: Said, other: Said, near_price: bool) -> str:
    """How many a pack holds; one where nothing is said. 'Shear pin' and 'shear pin 10/pk' have two prices.

    Where only one of them says how many, the price or the number itself may show that both mean as many.
    """
    left, right = _count(one), _count(other)
    if left & right and not (left - right and right - left):  # '12 oz, 6 pack' and '6 pack' agree in what both count
        return ""
    if left == right:
        return ""
    if not (left and right) and (near_price or any(_says_count(key, left | right) for key in one.keys & other.keys)):
        return ""
    return f"holds {_listed(left) or '1'}, where ours holds {_listed(right) or '1'}"


def _count(one: Said) -> frozenset[str]:
    said = frozenset(amount for kind, amount in one.measures if kind == "count")
    return said or frozenset("1" for word in ONE_PIECE if word in one.words)


def _says_count(key: str, counts: frozenset[str]) -> bool:
    """'NW40388P10' and 'NW40388X10PK': the number itself says how many it holds, so both hold as many."""
    some = "|".join(map(re.escape, sorted(counts)))
    return bool(some and re.search(rf"[A-Z](?:{some})$|(?:{some})(?:PK|PC|PCS|CT)$", key))


def _marks(one: Said, other: Said) -> str:
    """Words of letters and figures that each has and the other lacks: 'A36' against 'A37', however short they are."""
    left, right = _marked(one) - _marked(other), _marked(other) - _marked(one)
    left, right = left - other.runs - other.joined, right - one.runs - one.joined
    return f"each names what the other does not: {_listed(left)} against {_listed(right)}" if left and right else ""


def _marked(one: Said) -> frozenset[str]:
    short = (word.upper() for word in one.words if not word.isalpha() and not word.isdigit())
    return frozenset(mark for mark in (*short, *one.codes) if not any(mark in key for key in one.keys))


def _contradicts_itself(one: Said, text: str) -> Iterator[str]:
    """Whether the description names a number a slip away from the row's own, or its own as what it is made for."""
    for key in sorted(one.keys & (one.codes | one.joined)):
        if word := named_as_other(text, key):
            yield f"its words name its own number {key} as another's: '{word}'"
    for code in sorted(code for code in one.codes - one.keys if not any(code in key for key in one.joined & one.keys)):
        for key in sorted(one.keys):
            if slip_kind(code, key) is not None:
                yield f"its words name {code}, a slip away from its own number {key}"
                return


def _named_beside(one: Said, other: Said, text: str) -> Iterator[str]:
    """Why a number in its words may not be what `one` sells: another of that scheme is its own, or a word says so."""
    shared = other.keys & (one.codes | one.joined | one.runs)
    for key in sorted(shared):
        if word := named_as_other(text, key):
            yield f"its words name {key} as another's: '{word}'"
        own = sorted(number for number in one.keys - other.keys if _of_one_scheme(number, key))
        if own:
            yield f"its own number is {own[0]}; {key} only stands in its words"
        more = sorted(code for code in one.codes - other.keys - other.codes if _of_one_scheme(code, key))
        if more:
            yield f"its words name {_listed(frozenset(more))} beside {key}"


def _of_one_scheme(one: str, other: str) -> bool:
    """'NW40388' and 'NW77120', or '40388' and '40300': letters alike and as many figures, as one maker prints them."""
    if len(one) != len(other) or one == other:
        return False
    alike = all(a == b or (a.isdigit() and b.isdigit()) for a, b in zip(one, other, strict=True))
    return alike and (not one.isdigit() or one[: len(one) // 2] == other[: len(one) // 2])


def _listed(words: frozenset[str]) -> str:
    return ", ".join(sorted(words))
