"""On which paper a document is printed: as the shop says, else by what is usual where it is."""

from typing import Literal

from .amounts import paper_locale
from .pdf import PaperSize

LETTER_TERRITORIES = frozenset(("BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE"))
"""Where US letter is the usual paper. Source: Unicode CLDR, supplemental data, paperSize 'US-Letter' (from memory)."""


def paper_size(said: Literal["", "letter", "A4"], locale: str) -> PaperSize:
    """The shop's word where it gave one, else letter or A4 by the locale's territory; A4 where it names none.

    Refuses a locale that does not exist.
    """
    if said:
        return said
    return "letter" if paper_locale(locale).territory in LETTER_TERRITORIES else "A4"
