"""What an offer's texts say of cord, cover, cogs, side, and whether it is a piece, a pair or a set.

What is unclear is a doubt: it neither meets nor contradicts what is asked.
"""

import re
from collections.abc import Iterable, Iterator
from functools import lru_cache

from ...basics.asked import Asked
from ...basics.value import Value
from ..words.counts import counts
from ..words.sold_as import number_said
from ..words.text import LONGEST_TEXT, unaccented
from .said_words import (
    CHAIN_LINKS,
    COGS,
    CORD,
    COVER_WORDS,
    DENIED,
    EITHER_SIDE,
    GLUED_SIDE,
    LONE_SIDE,
    LOOKS,
    NO_SET,
    OPEN_SET,
    PACKING,
    REFERRED,
    SET_OF,
    SHAPE,
    SIDE,
    THREAD,
    Words,
)


class Word(Value, frozen=True, kw_only=True):
    """One thing said: its `value` ('aramid'; blank: nothing said), the text it was read from, and what is denied.

    `doubt` is why it can't be taken as said ('says aramid and polyester'); the value is then blank.
    """

    value: str = ""
    text: str = ""
    denied: tuple[str, ...] = ()
    doubt: str = ""


class Stated(Value, frozen=True, kw_only=True):
    """What texts say. `sold_as` is 'each', 'pair', 'set', 'matched set' or 'kit'; `pieces` how many, 0: not said.

    `packed` counts what is packed together where no such word stands ('VE 10', '10/pk'); 0: not said, or not one count.
    Nobody knows from it whether the price is for one or for all.
    """

    cord: Word = Word()
    cover: Word = Word()
    cogs: Word = Word()
    side: Word = Word()
    sold_as: Word = Word()
    pieces: int = 0
    packed: int = 0


LOOK_BACK = 60
"""So far before a word its denial is looked for: a whole text for each word is too long."""


def said_of(description: str, *more: str, numbers: tuple[str, ...] = ()) -> Stated:
    """Read a description (and further texts, a note for instance). `numbers` are part numbers: a letter L or R at their
    end raises a question about the side and answers none.
    """
    return _said(
        tuple(text[:LONGEST_TEXT] for text in (description, *more) if text),
        tuple(number for number in numbers if number),
    )


def asked_by(words: str) -> Asked:
    """The same words as what a list asks of the part: 'aramid cord, wrapped'. What is in doubt is left blank."""
    said = said_of(words)
    shape = said.sold_as.value
    sold_as = "matched set" if shape == "matched set" else shape if shape in ("each", "pair", "kit") else ""
    return Asked(
        cord=said.cord.value,
        cover=said.cover.value,
        cogs=said.cogs.value,  # type: ignore[arg-type]  # the word lists hold the same two words
        side=said.side.value,  # type: ignore[arg-type]
        sold_as=sold_as,  # type: ignore[arg-type]
        pieces=said.pieces if sold_as in ("matched set", "kit") else 0,
    )


@lru_cache(maxsize=50_000)
def _said(texts: tuple[str, ...], numbers: tuple[str, ...]) -> Stated:
    folded = " | ".join(unaccented(text) for text in texts)
    shape, pieces = _shape(folded)
    packed = counts(folded)[0] if not shape.value else frozenset()
    return Stated(
        cord=_one(folded, CORD),
        cover=_one(folded, COVER_WORDS),
        cogs=_one(folded, COGS),
        side=_side(folded, " | ".join(texts), numbers),
        sold_as=shape,
        pieces=pieces,
        packed=next(iter(packed)) if len(packed) == 1 else 0,
    )


class _Hit(Value, frozen=True, kw_only=True):
    value: str
    text: str
    denied: bool
    doubt: str


def _hits(text: str, words: Words) -> Iterator[_Hit]:
    for value, pattern in words:
        for match in pattern.finditer(text):
            if value == "wrapped" and _before(match, PACKING):
                continue
            doubt = ""
            if _before(match, REFERRED) or LOOKS.search(text[match.end() : match.end() + LOOK_BACK]):
                doubt = f"'{_around(text, match)}' does not say it outright"
            yield _Hit(value=value, text=_shown(match[0]), denied=_before(match, DENIED), doubt=doubt)


def _before(match: "re.Match[str]", pattern: "re.Pattern[str]") -> bool:
    """Whether the pattern, which ends with the end of a text, stands right before what was found."""
    return bool(pattern.search(match.string, max(0, match.start() - LOOK_BACK), match.start()))


def _shown(text: str) -> str:
    """'RH' as sheets write it; longer words stay as they are."""
    return text.upper() if len(text) == 2 or (len(text) <= 4 and not text.isalpha()) else text


def _around(text: str, match: "re.Match[str]") -> str:
    return text[max(0, text.rfind(" ", 0, max(0, match.start() - 8)) + 1) : match.end() + 10].strip(" |")


def _one(text: str, words: Words) -> Word:
    return _word(list(_hits(text, words)))


def _word(hits: Iterable[_Hit]) -> Word:
    """One word from what was found: two different values, or only a doubtful one, are a doubt."""
    found = list(hits)
    denied = tuple(sorted({hit.value for hit in found if hit.denied}))
    clear = {hit.value: hit.text for hit in found if not hit.denied and not hit.doubt}
    clear = {value: text for value, text in clear.items() if value not in denied}
    if len(clear) > 1:
        return Word(denied=denied, doubt=f"its text says {' and '.join(sorted(clear))}")
    if clear:  # 'aramid cord, replaces polyester': what is said outright stands, whatever else is spoken of
        ((value, text),) = clear.items()
        return Word(value=value, text=", ".join((text, *_denied_texts(found))), denied=denied)
    doubt = next((hit.doubt for hit in found if hit.doubt), "")
    return Word(denied=denied, text=", ".join(_denied_texts(found)), doubt=doubt)


def _denied_texts(hits: Iterable[_Hit]) -> list[str]:
    return [f"not {hit.text}" for hit in hits if hit.denied]


def _side(text: str, as_written: str, numbers: Iterable[str]) -> Word:
    if EITHER_SIDE.search(text):
        return Word(doubt="its text says it serves either side")
    bare = CHAIN_LINKS.sub(" ", text)
    hits, turned = [], False
    for value, pattern in SIDE:
        for match in pattern.finditer(bare):
            if THREAD.search(bare[match.end() : match.end() + LOOK_BACK]):
                turned = True
            else:
                hits.append(_Hit(value=value, text=_shown(match[0]), denied=_before(match, DENIED), doubt=""))
    if hits:
        return _word(hits)
    if turned:
        return Word(doubt="its text speaks of a thread or a turning direction, not of a side")
    return Word(doubt=_lone_letter(as_written, numbers))


def _lone_letter(as_written: str, numbers: Iterable[str]) -> str:
    for number in numbers:
        ends = GLUED_SIDE.search(number.strip().upper())
        if ends:
            return f"the number {number} ends with {ends['side']}, which may mean a side"
    lone = LONE_SIDE.search(as_written)
    if lone:
        return f"a letter {lone['side'] or lone['glued'] or lone['last']} in its text may mean a side"
    return ""


def _shape(text: str) -> tuple[Word, int]:
    """How it is sold, and of how many pieces."""
    hits = list(_hits(text, SHAPE))
    counted = {(_set_word(match), _count(match)) for match in SET_OF.finditer(text)}
    counts = {count for _, count in counted} | {2 for hit in hits if hit.value == "pair" and not hit.denied}
    if any(word == "set" for word, _ in counted):
        hits.append(_Hit(value="set", text="set", denied=False, doubt=""))
    if any(hit.value == "matched set" and not hit.denied for hit in hits):
        # 'matched set of 2, each 40 in': what is matched is a set, whatever else is said of its pieces.
        hits = [hit for hit in hits if hit.value == "matched set"]
    elif any(hit.value == "set" for hit in hits):
        hits = [hit for hit in hits if hit.value not in ("pair", "each")]
    word = _word(hits)
    if len(counts) > 1:
        return Word(doubt=f"its text says {' and '.join(str(one) for one in sorted(counts))} pieces"), 0
    count = next(iter(counts), 0)
    if not word.value and not word.doubt and not counts and OPEN_SET.search(NO_SET.sub(" ", text)):
        return Word(denied=word.denied, text=word.text, doubt="its text speaks of a set, not of how many pieces"), 0
    return word, count if word.value in ("pair", "set", "matched set", "kit") else 0


def _set_word(match: "re.Match[str]") -> str:
    found = match["set"] or match["set2"] or match["set3"] or match["set4"]
    return "kit" if found.startswith("kit") else "set"


def _count(match: "re.Match[str]") -> int:
    return number_said(match["n"] or match["m"] or match["k"] or match["j"])
