"""Words for the side a part sits on, in English, German, French, Spanish and Dutch. Common practice, no source."""

from types import MappingProxyType
from typing import Final

LEFT: Final = (
    *("left", "links", "linke", "linker", "linkes", "linken", "linkem"),
    *("gauche", "izquierdo", "izquierda", "izquierdos", "izquierdas"),
)
RIGHT: Final = (
    *("right", "rechts", "rechte", "rechter", "rechtes", "rechten", "rechtem"),
    *("droite", "derecha", "derechas"),
)
ALSO_STRAIGHT: Final = ("droit", "derecho")
"""Right, but straight too: sure only behind a word for side, as in 'côté droit'."""
SIDE_OF_IT: Final = ("côté", "lado")
SHORT_LEFT, SHORT_RIGHT = ("lh", "lhs"), ("rh", "rhs")
"""Left and right hand; a careful reader sees whether they are the end of a number."""

SIDES: Final = MappingProxyType(
    {
        **dict.fromkeys((*LEFT, *SHORT_LEFT), "left"),
        **dict.fromkeys((*RIGHT, *ALSO_STRAIGHT, *SHORT_RIGHT), "right"),
        **dict.fromkeys(("front", "vorn", "vorne", "avant", "delantero"), "front"),
        **dict.fromkeys(("rear", "back", "hinten", "arrière", "trasero"), "rear"),
        **dict.fromkeys(("upper", "top", "oben"), "upper"),
        **dict.fromkeys(("lower", "bottom", "unten"), "lower"),
    }
)
"""A word to the side it says."""

CHAIN_WORDS: Final = ("chain", "connecting", "master", "offset", "half", "roller")
"""English 'links' beside these are what a chain is made of, and no side."""
