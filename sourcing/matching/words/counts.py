"""How many pieces the words of a description count: 'pack of 10', '10/pk', '4er-Satz', 'VE 10', 'two dozen'.

Only what is unmistakable counts: 'M8x10' and 'UNC x10' are sizes, '8er Schraube' is a screw M8, 'Xperia X10 phone' a
name, 'PK 10' a belt. English, German, French, Spanish, Dutch. Common practice, no source.
"""

import re
from typing import Final

from .sold_as import DOZENS, HALF, KITS, NUMBERS, PACKS, PIECES, SETS, SHORT_PACKS, number_said
from .text import any_of

_PACK: Final = any_of(PACKS, SETS, KITS)
_NUMBER: Final = rf"(?:\d{{1,4}}|{any_of(NUMBERS)})"
_NO_PART: Final = r"(?<![\w.,/-])"
"""Before a number: it is not the end of another, or of a code."""
_NO_SIZE: Final = (
    r"(?![.,/*-]?\d|\w|\s?[x×]\s?\d|\s?-?\s?(?:mm|cm|m|in|inch|inches|zoll|ft|feet|v|w|a|ah|kw|hp|ps|kg|g|oz|lbs?|l|ml|cc|t)\b"
    r"|\s?[\"'″°%])"
)
"""Behind a number: no unit, and no more of it."""
_ENDS: Final = r"(?=\s*(?:$|[),;|]|\.(?!\d)))"

_PACK_OF: Final = re.compile(
    rf"\b{_PACK}\s*(?:of|de|von|mit|con|met|van|zu je|zu|à)\s*({_NUMBER})\b(?![.,/]\d|\s?[x×]\s?\d)"
)
_TO_A_PACK: Final = re.compile(
    rf"{_NO_PART}(\d{{1,4}})(?:\s*(?:/|per|par|por)\s*{any_of(PACKS, SETS, KITS, SHORT_PACKS)}"
    rf"|\s(?:pro|je)\s(?:packung|karton|beutel|satz|ve)|er[ -]?(?:{_PACK}|ve))\b"
)
_PACKED: Final = re.compile(
    rf"(?<![\w-])(?:(?:ve|vpe|colisage|conditionnement)(?:\s*[:=]\s*|\s+)(\d{{1,3}}){_NO_SIZE}"
    rf"|(?:(?:sold|packed|vendus?|verkauft|verpackt|verpakt) (?:by|per|par|zu)|(?:envase|embalaje) de) ({_NUMBER})"
    rf"{_NO_SIZE}"
    r"|(?<!battery )(?<!power )(?<!jump )(?<!starter )(?<!ice )(?<!akku )(?<!accu )(?<!\d )"
    rf"(?:pack|pkg|pkt|packung|paquete?)[ :/=]+(\d{{1,3}}){_ENDS})"
)
_IN_WORDS: Final = re.compile(rf"\b({any_of(NUMBERS)})[ -](?:{any_of(PIECES)}|packs?)\b")
_TIMES: Final = re.compile(r"\(\s*x\s?(\d{1,3})\s*\)|\(\s*(\d{1,3})\s?x\s*\)(?!\s*(?:zoom|opti|digital|speed))")
_WAYS: Final = ((_PACK_OF, ""), (_TO_A_PACK, ""), (_PACKED, ""), (_IN_WORDS, ""), (_TIMES, "("))
"""Each with a sign without which it need not be looked for."""
_DOZEN: Final = re.compile(
    rf"(?:\b(?P<half>{any_of(HALF)})[ -]|{_NO_PART}(?P<n>\d{{1,2}}|{any_of(NUMBERS)})[ -]?)?\b{any_of(DOZENS)}\b"
)
_BEGINS: Final = tuple({word[:3] for word in DOZENS})
"""Most texts hold none of these, and are not searched further for a dozen."""
_AT_THE_END: Final = re.compile(
    rf"(?<![^\W_])(?P<word>[^\W\d_]{{3,}})[\s,]+(?:x(?P<x>\d{{1,3}})|\((?P<bare>\d{{1,3}})\)|(?P<er>\d{{1,3}})er){_ENDS}"
)
"""'pin x10', 'pin (10)', 'Stift 10er'; not within the words, where '8er' may be a size and 'X10' a name."""

_THREADED: Final = frozenset(
    (
        *("bolt", "bolts", "screw", "screws", "nut", "nuts", "key", "socket", "wrench", "drill", "bit"),
        *("schraube", "schrauben", "mutter", "muttern", "schlüssel", "nuss", "bohrer", "gewinde", "ritzel", "kette"),
        *("schlussel", "tornillo", "tuerca", "boulon", "vis", "écrou", "ecrou", "bout", "moer"),
    )
)
"""German and Dutch say '8er' for the size of these."""
_SIZED: Final = _THREADED | frozenset(
    (
        *("inch", "inches", "zoll", "feet", "unc", "unf", "unef", "npt", "bsp", "thread", "hex", "long", "wide"),
        *("size", "sizes", "grade", "class", "type", "typ", "rev", "style", "series", "serie", "model", "mark"),
        *("teeth", "zoom", "optical", "dvd", "rom", "speed", "phone", "tire", "tyre", "belt", "chain", "bearing"),
    )
)
"""What stands behind these is a size or a name: '(8)' after 'size', 'x10' after 'unc'."""


def counts(text: str) -> tuple[frozenset[int], str]:
    """The counts in a plain lower-case text, and the text with a space in their place. No count: nothing is said."""
    found: set[int] = set()

    def take(match: re.Match[str]) -> str:
        said = number_said(next(filter(None, match.groups())))
        if not said:
            return match[0]
        found.add(said)
        return " "

    def dozens(match: re.Match[str]) -> str:
        many = number_said(match["n"] or "1")
        found.update({6} if match["half"] else {12 * many} if many else ())
        return " "

    def at_the_end(match: re.Match[str]) -> str:
        said = int(match["x"] or match["bare"] or match["er"])
        if said < 2 or match["word"] in (_THREADED if match["er"] else _SIZED):
            return match[0]
        found.add(said)
        return match[0] if match["x"] else match["word"]  # 'x10' may still be a name

    for pattern, sign in _WAYS:
        if sign in text:
            text = pattern.sub(take, text)
    if any(beginning in text for beginning in _BEGINS):
        text = _DOZEN.sub(dozens, text)
    rest = _AT_THE_END.sub(at_the_end, text)
    return frozenset(found), rest
