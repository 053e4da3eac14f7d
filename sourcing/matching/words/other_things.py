"""Words for a part that is not the new part itself: used, made for another, in its place. Common practice, no source.

English, German, French, Spanish, Dutch.
"""

from typing import Final

USED: Final = (
    *("used", "refurbished", "refurb", "remanufactured", "reman", "reconditioned", "recon", "rebuilt", "recertified"),
    *("renewed", "gebraucht", "occasion", "usado"),
)

FOR: Final = ("for", "fits", "für", "pour", "para", "voor")
"""What stands behind is another thing, which this is for."""

IN_PLACE_OF: Final = ("replaces", "replacing", "ersetzt", "statt", "anstelle", "remplace", "sustituye", "vervangt")
"""What stands behind is another thing, which this is to stand in for."""
