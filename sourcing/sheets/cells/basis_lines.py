"""What a line of words says prices are for: 'Prices per carton', 'BOLTS (price per 100)', 'sold in pairs'.

The words are common practice of price sheets, no source.
"""

import re

from .basis_cells import PACK, PAIR, PAIRS, PIECE, Basis, basis_of

PRICE = r"(?:prices?|pricing|priced|net|cost|preise?|prix|tarifs?|precios?|prijs|prijzen)"
PER = re.compile(
    rf"\b{PRICE}\b.{{0,40}}?(?:\b(?:per|pro|je|par|por|by)\s+(?:the\s+|de\s+|standard\s+)?|(?<!\d)(?<!\d\s)/\s?)"
    r"(?P<words>[\w']+(?:\s+(?:of|de|à|von|van)?\s*\w+)?)"
)
SOLD = re.compile(r"\bsold\s+(?:only\s+)?(?:in|by|per)\s+(?:the\s+)?(?P<words>\w+)")
LONGEST_HEADING = 60
"""In a short line, which heads a section, 'per 100' needs no word for price beside it."""
PACK_PRICE = re.compile(r"\b(?P<words>case|carton|box|pack|pair|dozen|hundred|bag|foot)\s+(?:price|pricing|cost)s?\b")
ALONE = re.compile(
    r"(?:^|[-–—(,:]\s*|\s)(?:per|by the|pro|je)\s+(?P<words>1?00\b|1000\b|hundred|thousand|c\b|foot|feet|ft\b"
    r"|metre|meter|mtr|pair|dozen|box|case|carton|pack|pkg)|\((?P<pack>(?:box|pack|pkg|bag|case|carton)\s+of\s+\d+)\)"
)


def basis_in_line(line: str) -> Basis | None:
    """What the line says prices are for, where that is anything but one piece; None where it says nothing of it."""
    text = line.casefold()
    words = (match["words"] for pattern in (PACK_PRICE, PER, SOLD) for match in pattern.finditer(text))
    found = next((found for one in words if (found := _basis(one))), None)
    if found is None and len(text) <= LONGEST_HEADING and (alone := ALONE.search(text)):
        return _basis(alone["words"] or alone["pack"])
    return found


def _basis(words: str) -> Basis | None:
    first = words.split()[0]
    if first in PAIRS:
        return Basis(PAIR, "piece")
    found = basis_of(words) or basis_of(first) or basis_of(first.removesuffix("s"))
    if found and found.packed:
        return found
    return None if found in (None, PIECE) else PACK if found and found.unit == "pack" else found
