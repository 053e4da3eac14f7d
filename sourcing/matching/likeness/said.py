"""What the numbers, maker, description and price of a row say, taken apart once so that rows can be compared in pairs.

Codes are words with digits that may be part numbers; a code may be written with gaps ('PS LX 350'), so neighbours are
joined too. Which words speak of colour, side or another thing ('for', 'remanufactured') is common practice, no source.
"""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from math import log
from types import MappingProxyType
from typing import NamedTuple

from ..words.other_things import FOR, IN_PLACE_OF, USED
from ..words.sides import CHAIN_WORDS, SIDES
from ..words.sold_as import ASSORTED, KITS, SETS
from ..words.text import LONGEST_TEXT, plain
from .measures import Measure, measures

SHORTEST_CODE = 4
"""Shorter codes are borne by too many things to say anything."""

MOST_PARTS = 8
"""A code of more parts is no part number; its runs would be without number."""
LONGEST_CODE = 20
LONGEST_LETTERS = 6

COLOURS = {
    word: words.split(",")[0]
    for words in (
        "black,blk,schwarz,noir,negro",
        "white,wht,weiss,weiß,blanc,blanco",
        "red,rot,rouge,rojo",
        "blue,blu,blau,bleu,azul,navy",
        "green,grn,grün,vert",
        "yellow,yel,gelb,jaune",
        "gray,grey,gry,grau,gris,charcoal,graphite",
        "silver,slv,silber,chrome,titanium",
        "brown,walnut,cherry,oak",
        *("orange", "purple", "pink", "gold", "beige,almond,bisque,tan", "ivory", "bronze", "copper", "clear", "cyan"),
        *("magenta", "burgundy", "teal"),
    )
    for word in words.split(",")
}
"""A colour's word to the colour."""

LINKS, OF_CHAIN = {"links"}, {*CHAIN_WORDS, "chains", "link"}
"""'links' is left in German, and what a chain is made of in English."""

OTHER_THING = {
    **dict.fromkeys(USED, "used"),
    **dict.fromkeys((*FOR, *IN_PLACE_OF), "made for another"),
    **dict.fromkeys(
        (
            *("compatible", "kompatibel", "generic", "replacement", "equivalent", "aftermarket", "passend"),
            *("case", "cover", "pouch", "sleeve", "skin", "holder", "warranty", "protection", "adapter", "charger"),
            *("mount", "bracket", "not", "nicht", "alternative", "alternativ", "instead", "superseded", "supersedes"),
            *("substitute", "similar", "remplacé"),
        ),
        "made for another",
    ),
    **dict.fromkeys((*SETS, *KITS, *ASSORTED), "kit"),
}

ROMAN = {"i": "1", "ii": "2", "iii": "3", "iv": "4", "v": "5", "vi": "6"}
_GENERATION = re.compile(
    r"(?<![^\W_])(?:type|typ|gen|generation|version|ver|vers|mark|mk|rev|revision|series|serie|style)[. ]{0,2}"
    r"(?:no\.? ?)?([a-z]|[ivx]{1,4}|\d{1,2})(?![^\W_])|(?:(?<=\()|(?<=\s))(ii|iii|iv|vi)(?![^\W_])|(?<=\()([a-h])(?=\))"
)
_USED_ON = re.compile(r"\bused (?:on|for|with|in|to|by)\b")
_HAND = re.compile(r"\b([lr])[./ ]h\b\.?")
"""'L.H.', 'R/H': left and right hand."""
_WORD = re.compile(r"[^\W_]+(?:[-./+][^\W_]+)*")
_PART = re.compile(r"[^\W_]+")
_BARE = re.compile(r"\d+(?:[./]\d+)?")


NOBODYS: Mapping[str, frozenset[str]] = MappingProxyType({})


class Said(NamedTuple):
    """One row taken apart. Sets are of upper-case keys for codes and lower-case words else; blank sets say nothing.

    `owners`: by number its makers, where a part bears numbers of several. `joined`: codes written with a gap. Of
    'dsc-w90/b' the code is DSCW90B; DSCW90 and W90B are `runs`.
    """

    keys: frozenset[str]
    makers: frozenset[str]
    run: str
    words: frozenset[str]
    codes: frozenset[str]
    joined: frozenset[str]
    runs: frozenset[str]
    measures: frozenset[Measure]
    bare: frozenset[str]
    colours: frozenset[str]
    sides: frozenset[str]
    things: frozenset[str]
    generations: frozenset[str]
    price: float | None  # natural logarithm, only to compare magnitudes
    owners: Mapping[str, frozenset[str]] = NOBODYS

    def whose(self, key: str) -> frozenset[str]:
        """The makers the number may be of: those stated with it, else those of the row; "" among them: anybody's."""
        return self.owners.get(key, self.makers)


def said(numbers: Iterable[str], makers: Iterable[str], description: str, price: object = None) -> Said:
    """Take a row or a part apart: the keys of its numbers, the keys of its makers, blanks left out.

    `price`: any positive number, or None where it is not known.
    """
    text = _USED_ON.sub(" for ", _HAND.sub(r"\1h ", plain(description[:LONGEST_TEXT])))
    found, rest = measures(text)
    chunks = _WORD.findall(rest)
    codes, joined, runs, bare = _codes(chunks)
    words = frozenset(part for chunk in chunks for part in _PART.findall(chunk))
    return Said(
        keys=frozenset(numbers) - {""},
        makers=frozenset(makers) - {""},
        run="".join(_PART.findall(text)),
        words=words,
        codes=codes,
        joined=joined,
        runs=runs,
        measures=found,
        bare=bare,
        colours=frozenset(COLOURS[word] for word in words if word in COLOURS),
        sides=frozenset(SIDES[word] for word in words - (LINKS if words & OF_CHAIN else set()) if word in SIDES),
        things=frozenset(OTHER_THING[word] for word in words if word in OTHER_THING),
        generations=frozenset(_generations(rest)),
        price=_log(price),
    )


def _generations(text: str) -> Iterator[str]:
    """'type 2', 'series III' and '(II)' all say which of several makes of one thing it is."""
    for found in _GENERATION.finditer(text):
        word = found[1] or found[2] or found[3]
        yield ROMAN.get(word, word)


def _codes(chunks: Sequence[str]) -> tuple[frozenset[str], frozenset[str], frozenset[str], frozenset[str]]:
    """(codes as they stand, codes joined of neighbouring words, parts of longer codes, bare short numbers)."""
    codes: set[str] = set()
    runs: set[str] = set()
    bare: set[str] = set()
    for chunk in chunks:
        if not any(character.isdigit() for character in chunk):
            continue
        parts = _PART.findall(chunk)
        whole = "".join(parts).upper()
        if _BARE.fullmatch(chunk) and len(whole) <= SHORTEST_CODE:
            bare.add(chunk)
        if len(whole) >= SHORTEST_CODE:
            codes.add(whole)
            runs |= _runs(parts) if len(parts) <= MOST_PARTS else set()
    joined = set(_with_gaps(chunks))
    return frozenset(codes), frozenset(joined - codes), frozenset(runs - codes), frozenset(bare)


def _runs(parts: Sequence[str]) -> set[str]:
    """Every run of neighbouring parts of one code that is long enough and holds a digit."""
    found = set()
    for start in range(len(parts)):
        for end in range(start + 1, len(parts) + 1):
            joined = "".join(parts[start:end]).upper()
            if len(joined) >= SHORTEST_CODE and any(character.isdigit() for character in joined):
                found.add(joined)
    return found


def _with_gaps(chunks: Sequence[str]) -> Iterator[str]:
    """'PS LX350H', 'OV 20 417' and 'W90 B': codes written with gaps. Two plain numbers side by side are none."""
    for at, chunk in enumerate(chunks[:-1]):
        following = chunks[at + 1]
        if chunk.isalpha() and len(chunk) <= LONGEST_LETTERS and _has_digit(following):
            yield from _joined(chunk, following)
            if at + 2 < len(chunks) and following.isdigit() and _has_digit(chunks[at + 2]):
                yield from _joined(chunk, following, chunks[at + 2])
        elif _has_digit(chunk) and not chunk.isdigit() and following.isalpha() and len(following) <= 2:
            yield from _joined(chunk, following)


def _has_digit(chunk: str) -> bool:
    return any(map(str.isdigit, chunk))


def _joined(*chunks: str) -> Iterator[str]:
    code = "".join(part for chunk in chunks for part in _PART.findall(chunk)).upper()
    if SHORTEST_CODE <= len(code) <= LONGEST_CODE:
        yield code


def _log(price: object) -> float | None:
    if price is None or price == "":
        return None
    amount = float(str(price))  # only to compare magnitudes
    return log(amount) if amount > 0 else None
