"""How long a chain is by the text it stands in: links, pitches, feet, metres, or a single link.

One link is one pitch (common practice, no source). '#40 x 44' says neither links nor feet: the figure is kept as it is.
"""

import re
from collections.abc import Iterable
from decimal import Decimal

from ...basics.value import Value
from .size import MM_PER_INCH

COUNT = r"(?:LINKS?|GLIEDERN?|GLIED|GL|MAILLONS?|ESLABON(?:ES)?|SCHAKELS?|PITCH(?:ES)?|P)"
"""Words for a link, in English, German, French, Spanish, Dutch."""

BARE = re.compile(
    rf"\s?X\s?(\d{{2,4}})(?![A-Z0-9]|[.,/-]\d|\s?X|\s?{COUNT}(?![A-Z])|\s?(?:FT|FEET|FOOT|FUSS|M|MTR|MM|CM|IN|ZOLL)\b"
    r"|\s?['\"])"
)
"""A figure behind a designation, without a unit."""

_PITCHES = re.compile(rf"(?<![\d.,/])(\d{{1,4}})(?:\s?-?{COUNT}|L)(?![A-Z])")
_FEET = re.compile(r"(?<![\d.,/])(\d{1,3}(?:[.,]\d)?)\s?-?(?:FT|FEET|FOOT|FUSS|')(?![A-Z])")
_METRES = re.compile(r"(?<![\d.,/])(\d{1,3}(?:[.,]\d{1,3})?)\s?-?(?:M|MTR|METERS?|METRES?|METROS?)(?![A-Z0-9])")
_CONNECTING = re.compile(
    r"\b(?:CONNECTING|MASTER|REPAIR) LINKS?|VERSCHLUSSGLIED(?:ER)?|ATTACHES? RAPIDES?"
    r"|ESLAB[OÓ]N DE (?:CIERRE|UNI[OÓ]N)|SLUITSCHAKELS?"
)
_OFFSET = re.compile(r"\b(?:OFFSET|HALF) LINKS?|GEKR[ÖO]PFTES GLIED|DEMI-MAILLON|MEDIO ESLABON")


class ChainLength(Value, frozen=True, kw_only=True):
    """What a text says of the length of its chain, read once for the whole text. `links`: counted; `mm`: measured."""

    links: frozenset[Decimal]
    mm: frozenset[Decimal]
    piece: str

    def pitches(self, pitch: Decimal) -> tuple[Decimal | None, bool]:
        """Pitches, and whether they were counted; None where no length is said, or two that differ."""
        if self.links:
            return (next(iter(self.links)) if len(self.links) == 1 else None), True
        return (next(iter(self.mm)) / pitch if len(self.mm) == 1 else None), False


def length_in(text: str, designations: Iterable[re.Match[str]]) -> ChainLength:
    """The length said in a plain text outside its designations."""
    rest = list(text)
    for match in designations:
        rest[match.start() : match.end()] = " " * (match.end() - match.start())
    said = "".join(rest)
    feet = {Decimal(number.replace(",", ".")) * 12 * MM_PER_INCH for number in _FEET.findall(said)}
    metres = {Decimal(number.replace(",", ".")) * 1000 for number in _METRES.findall(said)}
    links = frozenset(Decimal(number) for number in _PITCHES.findall(said))
    return ChainLength(links=links, mm=frozenset(feet | metres), piece=_piece(text))


def bare_behind(text: str, end: int) -> Decimal | None:
    """The figure without a unit that stands behind a designation: '#40 x 44'."""
    match = BARE.match(text, end)
    return Decimal(match[1]) if match else None


def _piece(text: str) -> str:
    if _CONNECTING.search(text):
        return "connecting link"
    return "offset link" if _OFFSET.search(text) else "chain"
