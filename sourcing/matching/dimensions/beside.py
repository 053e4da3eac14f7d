"""What the words beside a designation add to it: strands joined side by side, a snap ring, a bore by the inch.

An offer's number may say 'B36' and its description 'banded, 2 strands': read apart, a single belt would be taken for
it. The words are common practice, no source. What contradicts the designation stays in doubt.
"""

import re

import msgspec

from .size import BearingSize, BeltSize, ChainSize, Size

_NUMBERS = {
    **dict.fromkeys(("TWO", "DOUBLE", "ZWEI", "DOPPEL", "DEUX", "DOBLE", "DOS", "TWEE", "DUBBEL"), 2),
    **dict.fromkeys(("THREE", "TRIPLE", "DREI", "TROIS", "TRES", "DRIE"), 3),
    **dict.fromkeys(("FOUR", "VIER", "QUATRE", "CUATRO"), 4),
}
_NUMBER = rf"(?P<number>\b1[0-2]|(?<![\d.,/-])[2-9]|\b(?:{'|'.join(_NUMBERS)}))"
_STRANDS = re.compile(
    rf"{_NUMBER}[- ]?(?:STRANDS?|ROWS?|BAND|STR[ÄA]NGE?|STR[ÄA]NGIGE?R?|REIHIGE?R?|FACH(?:[A-Z]*KETTE)?|BRINS?|"
    r"RANG[ÉE]ES?|RAMALES?|HILERAS?|STRENG(?:EN)?|VOUDIGE?)(?![A-ZÄÖÜ0-9])"
)
_JOINED = re.compile(
    r"(?<!NOT )(?<!NON-)(?<!NICHT )\b(?:JOINED|BANDED|VERBUND[A-ZÄÖÜ]*RIEMEN|VERBUNDENE?R?|JUMEL[ÉE]+S?|UNIDAS|"
    r"BANDEADAS?|GEKOPPELDE?)\b"
)
_PLEX = (
    (
        re.compile(
            r"\bDUPLEX|CHA[IÎ]NES? DOUBLES?\b|CADENAS? DOBLES?\b|DUBBELE (?:ROL)?KETTING|DOPPEL(?:ROLLEN)?KETTE"
        ),
        2,
    ),
    (re.compile(r"\bTRIPLEX|CHA[IÎ]NES? TRIPLES?\b|CADENAS? TRIPLES?\b|DREIFACH(?:ROLLEN)?KETTE"), 3),
)
_JOINABLE = ("classical", "narrow", "metric classical", "metric narrow", "plain")

_RING = re.compile(
    r"(?<!WITHOUT )(?<!W/O )(?<!NO )(?<!OHNE )(?<!SANS )(?<!SIN )(?<!ZONDER )"
    r"\b(?:SNAP[- ]?RINGS?|CIRCLIPS?|SICHERUNGSRING(?:NUT)?|SPRENGRING|RINGNUT|SEGMENT D'ARR[ÊE]T|"
    r"ANILLO EL[ÁA]STICO|BORGRING)\b"
)
_INCH_BORE = re.compile(
    r'(?:(?<=[ (,;|])|^)(\d-\d/\d{1,2}|\d/\d{1,2})\s?(?:"|IN\b\.?|INCH|ZOLL)?[ -]?(?:I\.?D\b|BORE|BOHRUNG|'
    r"AL[ÉE]SAGE|AGUJERO|BORING|INNEN)"
)


def with_words(size: Size, text: str) -> Size:
    """The size with what the plain text beside it adds; itself where it adds nothing."""
    if isinstance(size, BearingSize):
        return _with_bearing_words(size, text)
    if isinstance(size, BeltSize) and size.section.family not in _JOINABLE:
        return size
    return _with_strands(size, text)


def joined_in(text: str) -> bool:
    """Whether a plain text speaks of V-belts joined side by side."""
    return bool(_JOINED.search(text))


def _with_strands(size: BeltSize | ChainSize, text: str) -> Size:
    said = _strands_in(text, isinstance(size, BeltSize))
    if said == 1 or said == size.strands or (said is None and size.strands != 1):
        return size
    single = isinstance(size, ChainSize) and re.search(r"-1R?$", size.designation)
    if single or size.strands not in (None, 1):
        return msgspec.structs.replace(size, strands=None)
    return msgspec.structs.replace(size, strands=said)


def _strands_in(text: str, belt: bool) -> int | None:
    """How many strands the words say: 1 nothing said, None several without a number or two that differ."""
    said = {_counted(match["number"]) for match in _STRANDS.finditer(text)}
    if not belt:
        said |= {number for pattern, number in _PLEX if pattern.search(text)}
    if not said:
        return None if belt and joined_in(text) else 1
    return said.pop() if len(said) == 1 else None


def _counted(word: str) -> int:
    return _NUMBERS[word] if word in _NUMBERS else int(word)


def _with_bearing_words(size: BearingSize, text: str) -> Size:
    if size.doubt:
        return size
    if not size.ring and _RING.search(text):
        return msgspec.structs.replace(size, doubt="a snap ring is spoken of, the number has no N or NR")
    bore = _INCH_BORE.search(text)
    if bore and size.bore_in is None and size.basic[:1] == "6":
        return msgspec.structs.replace(size, doubt=f"an inch bore of {bore[1]} is spoken of, the number is metric")
    return size
