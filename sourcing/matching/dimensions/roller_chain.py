"""Roller chain: 25 to 80 and 41 (ANSI/ASME B29.1, now B29.100), 04C to 16A and 05B to 16B (ISO 606), motorcycle
numbers.

Digits left of the last: pitch in eighths of an inch; last digit 0 standard, 1 light and narrow, 5 without rollers;
H: side plates of the next larger size; -2, -3: strands (from memory). Sizes of the inch series: an engineering
reference page and a chain distributor's table; ISO numbers, the B series and the motorcycle numbers from memory.
420, 428, 520, 530 do not follow the rule of eighths with 0/1/5. Traps: 40 and 41 share the pitch, 41 is narrower; 40
and 08B share the pitch, the rollers are 7.92 and 8.51 mm. One link is one pitch (common practice, no source).
"""

import re
from collections.abc import Iterator
from decimal import Decimal

from .size import MM_PER_INCH, ChainSize, Found, Ground
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

_COUNT = r"(?:LINKS?|GLIEDERN?|GLIED|GL|MAILLONS?|ESLABON(?:ES)?|SCHAKELS?|PITCH(?:ES)?|P)"
_NUMBER = r"(?:25|35|40|41|50|60|80|4(?:15|20|28)|5(?:20|25|30)|630)"
_LENGTH_BEHIND = rf"\s?X\s?\d+(?!\d|\s?{_COUNT}|L|\s?X?\s?(?:FT|FEET|'))"
_END = rf"(?![A-WYZ0-9]|X(?!\s?\d)|[.,/]\d|-\d{{2}}|-[A-Z]|\s?{_COUNT}(?![A-Z])|{_LENGTH_BEHIND})"
_INCH = re.compile(
    rf"(?<![A-Z0-9.,$€£-])(?P<sign>#\s?|ANSI\s)?(?P<number>{_NUMBER})(?P<heavy>H)?(?:-(?P<strands>[1-4])R?)?{_END}"
)
_ISO = re.compile(
    r"(?<![A-Z0-9.,$€£#/-])(?P<number>0[68]A|1[026]A|04C|06C|085|0[568]B|1[026]B)"
    r"(?:[- ](?P<strands>[1-4]))?(?![A-Z0-9-]|[.,/]\d)"
)
_UNIT_BEHIND = re.compile(NOT_COUNTED)

_PITCHES = re.compile(rf"(?<![\d.,/])(\d{{1,4}})(?:\s?-?{_COUNT}|L)(?![A-Z])")
_FEET = re.compile(r"(?<![\d.,/])(\d{1,3}(?:[.,]\d)?)\s?-?(?:FT|FEET|FOOT|FUSS|')(?![A-Z])")
_METRES = re.compile(r"(?<![\d.,/])(\d{1,3}(?:[.,]\d{1,3})?)\s?-?(?:M|MTR|METERS?|METRES?|METROS?)(?![A-Z0-9])")
_CONNECTING = re.compile(
    r"\b(?:CONNECTING|MASTER|REPAIR) LINKS?|VERSCHLUSSGLIED(?:ER)?|ATTACHES? RAPIDES?"
    r"|ESLAB[OÓ]N DE (?:CIERRE|UNI[OÓ]N)|SLUITSCHAKELS?"
)
_OFFSET = re.compile(r"\b(?:OFFSET|HALF) LINKS?|GEKR[ÖO]PFTES GLIED|DEMI-MAILLON|MEDIO ESLABON")


def find(text: str) -> Iterator[Found]:
    """#40, 40H, 41-2, 08B-1 in a plain text with its length. A bare number needs the word chain in the text."""
    found = [*_in_inches(text), *_by_iso(text)]
    strong = [one for one in found if one.ground != "word"]
    yield from strong or found


def _in_inches(text: str) -> Iterator[Found]:
    for match in _INCH.finditer(text):
        marked = bool(match["sign"] or match["heavy"] or match["strands"])
        if not marked and not _UNIT_BEHIND.match(text, match.end()):
            continue
        ground: Ground = "context" if marked else "word"
        if match["sign"] and match["sign"].startswith("ANSI") and match["strands"]:
            ground = "form"
        yield _found(text, match, match["number"], ground)


def _by_iso(text: str) -> Iterator[Found]:
    for match in _ISO.finditer(text):
        number = match["number"]
        yield _found(text, match, ISO_A.get(number, number), "context" if number != "085" else "word")


def _found(text: str, match: re.Match[str], number: str, ground: Ground) -> Found:
    series, pitch, roller, width = SIZES[number]
    rest = text[: match.start()] + " " + text[match.end() :]
    pitches, counted = _how_long(rest, Decimal(pitch))
    size = ChainSize(
        designation=match[0].replace("# ", "#").strip(),
        number=number,
        standard=series,
        pitch=Decimal(pitch),
        roller=Decimal(roller),
        width=Decimal(width),
        heavy=bool(match.groupdict().get("heavy")),
        strands=int(match["strands"] or 1),
        pitches=pitches,
        counted=counted,
        piece="chain" if pitches is not None else _piece(text),
    )
    return Found(size=size, start=match.start(), end=match.end(), ground=ground)


def _how_long(text: str, pitch: Decimal) -> tuple[Decimal | None, bool]:
    """Pitches, and whether they were counted; None where no length is said, or two that differ."""
    counts = {Decimal(number) for number in _PITCHES.findall(text)}
    if counts:
        return (counts.pop() if len(counts) == 1 else None), True
    lengths = {Decimal(feet.replace(",", ".")) * 12 * MM_PER_INCH for feet in _FEET.findall(text)}
    lengths |= {Decimal(metres.replace(",", ".")) * 1000 for metres in _METRES.findall(text)}
    return (lengths.pop() / pitch if len(lengths) == 1 else None), False


def _piece(text: str) -> str:
    if _CONNECTING.search(text):
        return "connecting link"
    return "offset link" if _OFFSET.search(text) else "chain"
