"""Roller chain: 25 to 80 and 41 (ANSI/ASME B29.1, now B29.100), 04C to 16A and 05B to 16B (ISO 606), motorcycle
numbers.

Digits left of the last: pitch in eighths of an inch; last digit 0 standard, 1 light and narrow, 5 without rollers;
H: side plates of the next larger size; -2, -3: strands (from memory). Sizes of the inch series: an engineering
reference page and a chain distributor's table; ISO numbers, the B series and the motorcycle numbers from memory.
081, 083 and 084 are narrow chains of 1/2 in pitch. 420, 428, 520, 530 do not follow the rule of eighths with 0/1/5.
Traps: 40 and 41 share the pitch, 41 is narrower; 40 and 08B share the pitch, the rollers are 7.92 and 8.51 mm.
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .chain_length import BARE, COUNT, ChainLength, bare_behind, length_in
from .size import ChainSize, Found, Ground, shown
from .text import NOT_COUNTED

SIZES = {  # number: series, pitch, roller diameter, width between inner plates; mm
    "25": ("ASME", "6.350", "3.30", "3.18"),
    "35": ("ASME", "9.525", "5.08", "4.78"),
    "41": ("ASME", "12.700", "7.77", "6.35"),
    "40": ("ASME", "12.700", "7.92", "7.92"),
    "50": ("ASME", "15.875", "10.16", "9.53"),
    "60": ("ASME", "19.050", "11.91", "12.70"),
    "80": ("ASME", "25.400", "15.88", "15.88"),
    "05B": ("ISO B", "8.000", "5.00", "3.00"),  # the B series and all below from memory
    "081": ("ISO", "12.700", "7.75", "3.30"),
    "083": ("ISO", "12.700", "7.75", "4.88"),
    "084": ("ISO", "12.700", "7.75", "4.88"),
    "06B": ("ISO B", "9.525", "6.35", "5.72"),
    "08B": ("ISO B", "12.700", "8.51", "7.75"),
    "10B": ("ISO B", "15.875", "10.16", "9.65"),
    "12B": ("ISO B", "19.050", "12.07", "11.68"),
    "16B": ("ISO B", "25.400", "15.88", "17.02"),
    "415": ("motorcycle", "12.700", "7.77", "4.76"),
    "420": ("motorcycle", "12.700", "7.77", "6.35"),
    "428": ("motorcycle", "12.700", "8.51", "7.94"),
    "520": ("motorcycle", "15.875", "10.16", "6.35"),
    "525": ("motorcycle", "15.875", "10.16", "7.94"),
    "530": ("motorcycle", "15.875", "10.16", "9.53"),
    "630": ("motorcycle", "19.050", "11.91", "9.53"),
}
ISO_A = {"04C": "25", "06C": "35", "085": "41", "08A": "40", "10A": "50", "12A": "60", "16A": "80"}
"""ISO 606 numbers of the inch series (from memory)."""

_NUMBER = r"(?:25|35|40|41|50|60|80|4(?:15|20|28)|5(?:20|25|30)|630)"
_LENGTH_BEHIND = re.compile(rf"\s?X\s?\d+(?!\d|\s?{COUNT}|L|\s?X?\s?(?:FT|FEET|'|(?:M|MTR|METERS?|METRES?|METROS?)\b))")
_END = rf"(?![A-WYZ0-9]|X(?!\s?\d)|[.,/]\d|-\d|-[A-Z]|\s?{COUNT}(?![A-Z]))"
_INCH = re.compile(
    rf"(?<![A-Z0-9.,$€£-])(?P<sign>#\s?|ANSI\s)?(?P<number>{_NUMBER})(?P<heavy>H)?(?:-(?P<strands>[1-4])R?)?{_END}"
)
_ISO = re.compile(
    r"(?<![A-Z0-9.,$€£#/-])(?P<number>0[68]A|1[026]A|04C|06C|08[1345]|0[568] ?B|1[026] ?B)"
    r"(?:[- ]?(?P<strands>[1-4]))?(?![A-Z0-9-]|[.,/]\d)"
)
_UNIT_BEHIND = re.compile(NOT_COUNTED)

_Read = tuple[re.Match[str], str, Ground]


def find(text: str) -> Iterator[Found]:
    """#40, 40H, 41-2, 08B-1 in a plain text with its length. A bare number needs the word chain in the text."""
    read = [*_in_inches(text), *_by_iso(text)]
    strong = [one for one in read if one[2] != "word"] or read
    length = length_in(text, [match for match, _, _ in strong]) if strong else None
    for match, number, ground in strong:
        if length is not None:
            size = _chain(match, number, length, bare_behind(text, match.end()))
            yield Found(size=size, start=match.start(), end=match.end(), ground=ground)


def _in_inches(text: str) -> Iterator[_Read]:
    for match in _INCH.finditer(text):
        marked = bool(match["sign"] or match["heavy"] or match["strands"])
        if not marked and not _UNIT_BEHIND.match(text, match.end()):
            continue
        # 'chain 40 x 60' may be centimetres; behind '#40' a figure is a length of chain.
        if _LENGTH_BEHIND.match(text, match.end()) and not (marked and BARE.match(text, match.end())):
            continue
        ground: Ground = "context" if marked else "word"
        if match["sign"] and match["sign"].startswith("ANSI") and match["strands"]:
            ground = "form"
        yield match, match["number"], ground


def _by_iso(text: str) -> Iterator[_Read]:
    for match in _ISO.finditer(text):
        number = match["number"].replace(" ", "")
        plain_digits = number.isdigit() or " " in match["number"]
        if not plain_digits or _UNIT_BEHIND.match(text, match.end()):
            yield match, ISO_A.get(number, number), "word" if plain_digits else "context"


def _chain(match: re.Match[str], number: str, length: ChainLength, bare: Decimal | None) -> ChainSize:
    series, pitch, roller, width = SIZES[number]
    pitches, counted = length.pitches(Decimal(pitch))
    return ChainSize(
        designation=match[0].replace("# ", "#").strip() + (f" x {shown(bare)}" if bare is not None else ""),
        number=number,
        standard=series,
        pitch=Decimal(pitch),
        roller=Decimal(roller),
        width=Decimal(width),
        heavy=bool(match.groupdict().get("heavy")),
        strands=int(match["strands"] or 1),
        pitches=pitches,
        counted=counted,
        bare=bare if pitches is None else None,
        piece="chain" if pitches is not None or bare is not None else length.piece,
    )
